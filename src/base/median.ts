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

/** Orders values so far that the one of a rank stands at its place, none larger before it and none smaller after. */
function select(values: Float64Array, rank: number): void {
  for (let [from, to] = [0, values.length - 1]; from < to;) {
    const middle = values[(from + to) >> 1]!;
    let low = from;
    let high = to;
    while (low <= high) {
      while (values[low]! < middle) low += 1;
      while (values[high]! > middle) high -= 1;
      if (low > high) break;
      const value = values[low]!;
      values[low] = values[high]!;
      values[high] = value;
      low += 1;
      high -= 1;
    }
    if (rank <= high) to = high;
    else if (rank >= low) from = low;
    else return;
  }
}

/** Half of the values lie below it. Throws RangeError when empty. */
export function medianOf(values: ArrayLike<number>): number {
  if (values.length === 0) throw new RangeError('values must not be empty');
  const own = new Float64Array(values);
  const rank = own.length >> 1;
  select(own, rank);
  const high = own[rank]!;
  if (own.length % 2 === 1) return high;
  let low = own[0]!;
  for (let i = 1; i < rank; i += 1) if (own[i]! > low) low = own[i]!;
  return low + (high - low) / 2;
}

/** Standard deviation of the bulk of values, taken to be normal, from their median distance from their median. Throws RangeError when empty. */
export function bulkSpreadOf(values: ArrayLike<number>): number {
  const middle = medianOf(values);
  return NORMAL * medianOf(Float64Array.from(values, (value) => Math.abs(value - middle)));
}
