/**
 * A plugin of the build: the catalogue of laws gets modules of its own, apart from those that the plan works with. A law's
 * file holds its function and its description; chunks are made of whole modules, so without this every description would
 * be in the first screen's script because a later place shows it.
 */
import { dirname, resolve } from 'node:path';
import { readFile } from 'node:fs/promises';

const MARK = '?described';
const CATALOGUE = /[\\/]src[\\/]laws[\\/]catalogue\.ts$/;
const LAWS = /[\\/]src[\\/]laws[\\/]/;

/** @returns {import('vite').Plugin} */
export function describedLaws() {
  return {
    name: 'described-laws',
    enforce: 'pre',
    apply: 'build',
    resolveId(source, importer) {
      if (!source.startsWith('.') || importer === undefined) return null;
      const isDescribed = importer.endsWith(MARK);
      const path = resolve(dirname(importer.replace(MARK, '')), source);
      return (isDescribed && LAWS.test(path)) || (!LAWS.test(importer) && CATALOGUE.test(path)) ? path + MARK : null;
    },
    load(id) {
      return id.endsWith(MARK) ? readFile(id.slice(0, -MARK.length), 'utf8') : null;
    },
  };
}
