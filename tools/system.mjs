/** The programs that tests need beside Node: Chromium for journeys, ffmpeg for footage. */
import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from './run.mjs';

/**
 * The path of a program on PATH, if it is there.
 * @param {string} name
 */
function onPath(name) {
  for (const folder of (process.env['PATH'] ?? '').split(delimiter)) {
    const path = join(folder, name);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // Not here: the next folder is asked.
    }
  }
  return undefined;
}

/** The Chromium that journeys run in: the one CHROMIUM names, or Debian's. */
export function findChromium() {
  const named = process.env['CHROMIUM'];
  if (named) return existsSync(named) ? named : undefined;
  return existsSync('/usr/bin/chromium') ? '/usr/bin/chromium' : onPath('chromium');
}

export const findFfmpeg = () => onPath('ffmpeg');

/** Whether this is root on Debian, which installs what is missing. */
export function mayInstall() {
  const isDebian = existsSync('/etc/os-release') && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));
  return isDebian && process.getuid?.() === 0 && onPath('apt-get') !== undefined;
}

/**
 * Installs Chromium and ffmpeg where they are missing and this is root on Debian. Anywhere else, and when it fails, the
 * reasons are returned and whoever needs the program says what it does without.
 * @returns {Promise<Readonly<Record<'chromium' | 'ffmpeg', string | undefined>>>} why each is missing, if it is
 */
export async function ensurePrograms() {
  const named = process.env['CHROMIUM'];
  const absent = [...(named || findChromium() ? [] : ['chromium']), ...(findFfmpeg() ? [] : ['ffmpeg'])];
  let why = 'it is not installed, and only root on Debian installs it here';
  if (absent.length > 0 && mayInstall()) {
    console.log(`Installing ${absent.join(' and ')} by apt-get.`);
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    const updated = await run('apt-get', ['update', '-q'], { env });
    const installed = await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...absent], { env });
    const said = `${updated.output}\n${installed.output}`.trim().split('\n').slice(-12).join('\n');
    why = `apt-get could not install it\n${said}`;
  }
  const whyNoChromium = named ? `CHROMIUM names ${named}, and there is nothing` : why;
  return {
    chromium: findChromium() ? undefined : whyNoChromium,
    ffmpeg: findFfmpeg() ? undefined : why,
  };
}
