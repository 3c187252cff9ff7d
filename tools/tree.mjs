/** Trees of files made for one test and removed after it. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/**
 * Writes files below a fresh folder, hands it over, and removes it whatever happens.
 * @template Result
 * @param {Readonly<Record<string, string>>} files
 * @param {(folder: string) => Result | Promise<Result>} use
 * @returns {Promise<Result>}
 */
export async function withTree(files, use) {
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-tree-'));
  try {
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
