/**
 * Installs the packages of package-lock.json when they are missing or the lockfile is another than the one installed.
 * Run by itself with `--stamp` (npm does, after each install) it only notes what is installed.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isProgram, ROOT, run } from './run.mjs';

const MODULES = join(ROOT, 'node_modules');
const STAMP = join(MODULES, '.longsecond-installed');

/** Native modules are built for one Node, system and processor, so these are part of what is installed. */
function wanted() {
  const lock = readFileSync(join(ROOT, 'package-lock.json'));
  const { platform, arch, versions } = process;
  return `${createHash('sha256').update(lock).digest('hex')} ${platform} ${arch} ${versions.modules}\n`;
}

export function isInstalled() {
  return existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted();
}

export function noteInstalled() {
  if (existsSync(MODULES)) writeFileSync(STAMP, wanted());
}

/** Throws when npm fails; what npm said is already on the terminal. */
export async function ensureInstalled() {
  if (isInstalled()) return;
  console.log('Installing the packages of package-lock.json; better-sqlite3 may take a minute to compile.');
  const args = ['ci', '--include=dev', '--no-progress', '--loglevel=warn'];
  const npm = process.env['npm_execpath'];
  const { code } = npm
    ? await run(process.execPath, [npm, ...args], { show: true })
    : await run('npm', args, { show: true });
  if (code !== 0) throw new Error(`npm ci failed with code ${code}`);
  noteInstalled();
}

if (isProgram(import.meta.url) && process.argv.includes('--stamp')) noteInstalled();
