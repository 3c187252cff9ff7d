/** The solver as the command loads it, for tests of what is solved with it. */
export { loadHighs } from '../src/cli/highs.ts';
