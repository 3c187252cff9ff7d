/** The solver for commands: its WebAssembly lies beside its loader in the package, and Node finds it there. */
import type { LoadHighs } from '../solve/milp.ts';

export const loadHighs: LoadHighs = async () => {
  const { default: load } = await import('highs');
  // highs 1.15 types its ES module as if it were CommonJS, one `default` too deep; drop the cast when `load()` compiles.
  return (load as unknown as typeof load.default)();
};
