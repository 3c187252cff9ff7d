/** The measuring worker as a program that Node can run, for tests that start it. */
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll } from 'vitest';
import { bundle, type Bundled } from './bundled.ts';

/** Where the worker is, once tests run; it is gone after those of the file. */
export function measureWorker(): { readonly entry: () => URL } {
  let bundled: Bundled | undefined;
  beforeAll(async () => {
    bundled = await bundle('src/jobs/workers/measure.ts');
  }, 60_000);
  afterAll(() => bundled?.remove());
  return { entry: () => pathToFileURL(bundled!.file) };
}
