/**
 * Clips that people filmed, for tests of footage: three that come with the documentation of a picture library, in a package
 * of Debian's that is fetched and taken apart, and not installed. They are kept in `.cache/realClips/` and are no part of
 * this repository.
 */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { ROOT, run } from './run.mjs';
import { mayInstall } from './system.mjs';

const PACKAGE = 'opencv-doc';
const CACHE = join(ROOT, '.cache');
export const REAL_CLIPS = join(CACHE, 'realClips');

/** What tests count on is in these very bytes. */
const DIGESTS = /** @type {const} */ ({
  'cup.mp4': '37db9cee98f70b1458985a15ad2e5b0183e90e24c281b534afcf812e5986154f',
  'box.mp4': '62b744b99403f899707c43398a3822441add6160379ab6dd6c12bde9e3075f8d',
  'tree.avi': '4666099d0f704e310047b2f0a5ec9f936cb76a7271de9a2e70a0c57f82ac82dc',
});
const NAMES = Object.keys(DIGESTS);

/** Whether all of them are there; they were checked before they came there. */
export const hasRealClips = () => NAMES.every((name) => existsSync(join(REAL_CLIPS, name)));

/** @param {Buffer} bytes */
const digestOf = (bytes) => createHash('sha256').update(bytes).digest('hex');

/**
 * Writes the clips found below one folder into another; the reason where one is not there, or is not the one meant.
 * @param {string} from
 * @param {string} to
 * @returns {string | undefined}
 */
export function takeClips(from, to) {
  const files = readdirSync(from, { recursive: true, encoding: 'utf8' });
  for (const [name, digest] of Object.entries(DIGESTS)) {
    const found = files.find((file) => basename(file) === name || basename(file) === `${name}.gz`);
    if (found === undefined) return `${PACKAGE} holds no ${name}`;
    const packed = readFileSync(join(from, found));
    const bytes = found.endsWith('.gz') ? gunzipSync(packed) : packed;
    if (digestOf(bytes) !== digest) return `the ${name} of ${PACKAGE} is another than the one the tests know`;
    writeFileSync(join(to, name), bytes);
  }
  return undefined;
}

/**
 * Fetches the package into a folder and takes it apart there.
 * @param {string} folder
 * @returns {Promise<string | undefined>} why it could not be, if it could not
 */
async function fetchInto(folder) {
  const updated = await run('apt-get', ['update', '-q']);
  const fetched = await run('apt-get', ['download', '-q', PACKAGE], { cwd: folder });
  const file = readdirSync(folder).find((name) => name.endsWith('.deb'));
  const opened =
    file === undefined ? fetched : await run('dpkg-deb', ['-x', join(folder, file), join(folder, 'opened')]);
  if (file !== undefined && opened.code === 0) return undefined;
  const said = `${updated.output}\n${fetched.output}\n${opened === fetched ? '' : opened.output}`.trim();
  return `apt-get could not fetch ${PACKAGE}\n${said.split('\n').slice(-8).join('\n')}`;
}

/**
 * Fetches the clips where they are missing and this is root on Debian.
 * @returns {Promise<string | undefined>} why they are missing, if they are
 */
export async function ensureRealClips() {
  if (hasRealClips()) return undefined;
  if (!mayInstall()) return `they are not in ${REAL_CLIPS}, and only root on Debian fetches them`;
  console.log(`Fetching real clips, in ${PACKAGE}, 96 MB, by apt-get.`);
  mkdirSync(CACHE, { recursive: true });
  const folder = mkdtempSync(join(CACHE, 'fetching-'));
  try {
    const why = await fetchInto(folder);
    if (why !== undefined) return why;
    const taken = join(folder, 'taken');
    mkdirSync(taken);
    const whyNot = takeClips(join(folder, 'opened'), taken);
    if (whyNot !== undefined) return whyNot;
    rmSync(REAL_CLIPS, { recursive: true, force: true });
    renameSync(taken, REAL_CLIPS);
    return undefined;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
