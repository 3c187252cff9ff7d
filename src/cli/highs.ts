/** The solver for commands: its WebAssembly lies beside its loader in the package, and Node finds it there. */
import type { LoadHighs } from '../solve/milp.ts';

export const loadHighs: LoadHighs = async () => {
  const { default: load } = await import('highs');
  return load();
};
