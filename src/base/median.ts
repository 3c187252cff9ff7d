/** The middle of numbers, and their spread judged from the middle, so that a few wild ones change nothing. */

/** Above the median distance from the middle, in a normal spread. */
const NORMAL = 1.482602218505602;

/** The value below which `shareFraction` of the values lie, between neighbours in proportion. Sorts what it is given. Throws RangeError when empty. */
export function quantileInPlace(values: Float64Array, shareFraction: number): number {
  if (values.length === 0) throw new RangeError('values must not be empty');
  values.sort();
  const at = shareFraction * (values.length - 1);
  const below = Math.floor(at);
  const low = values[below]!;
  const high = values[Math.min(below + 1, values.length - 1)]!;
  return low + (high - low) * (at - below);
}

/** Half of the values lie below it. Throws RangeError when empty. */
export function medianOf(values: ArrayLike<number>): number {
  return quantileInPlace(Float64Array.from(values), 0.5);
}

/** Standard deviation of the bulk of values, taken to be normal, from their median distance from their median. Throws RangeError when empty. */
export function bulkSpreadOf(values: ArrayLike<number>): number {
  const middle = medianOf(values);
  return NORMAL * medianOf(Float64Array.from(values, (value) => Math.abs(value - middle)));
}
