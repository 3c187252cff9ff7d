/** Sources made into something that a process of its own can run, as Node 20 cannot run them as they are. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from 'vite';

const ROOT = resolve(import.meta.dirname, '..');

export interface Bundled {
  readonly file: string;
  readonly remove: () => void;
}

/** The program of an entry, named from the package's root. */
export async function bundle(entry: string): Promise<Bundled> {
  // Below the package, so that what was built finds the packages that it uses.
  const cache = join(ROOT, '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'bundle-'));
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'error',
    // One file is read in half the time of the many that this package has, and tests start hundreds of processes.
    ssr: { noExternal: ['yaml'] },
    build: {
      ssr: join(ROOT, entry),
      outDir: folder,
      rollupOptions: { output: { entryFileNames: 'entry.mjs' } },
    },
  });
  return { file: join(folder, 'entry.mjs'), remove: () => rmSync(folder, { recursive: true, force: true }) };
}
