/** Percentiles of a sample of code values, by counting. */

/** Shares of pixels below the values told of a frame. */
export const TOLD = [0.01, 0.5, 0.99] as const;

/** Finds codes below which these shares of a sample lie. Makes the room it needs once. */
export function createPercentiles(bitDepth: number): (sample: Uint16Array) => readonly [number, number, number] {
  const counts = new Uint32Array(2 ** bitDepth);
  return (sample) => {
    counts.fill(0);
    for (let i = 0; i < sample.length; i += 1) counts[sample[i]!]! += 1;
    const found: [number, number, number] = [0, 0, 0];
    let [below, told] = [0, 0];
    for (let code = 0; code < counts.length && told < TOLD.length; code += 1) {
      below += counts[code]!;
      while (told < TOLD.length && below >= TOLD[told]! * sample.length && below > 0) {
        found[told] = code;
        told += 1;
      }
    }
    return found;
  };
}
