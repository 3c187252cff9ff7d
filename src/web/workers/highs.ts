/** The solver for the page's workers: its WebAssembly is an asset of the build, fetched when first asked for. */
import wasmUrl from 'highs/runtime?url';
import type { LoadHighs } from '../../solve/milp.ts';

export const loadHighs: LoadHighs = async () => {
  const { default: load } = await import('highs');
  return load({ locateFile: () => wasmUrl });
};
