/** Widths of a table's columns in any unit: what each would like, cut down from the widest until all of it fits. */
export interface ColumnWish {
  /** Its longest line unbroken. */
  readonly natural: number;
  /** Its longest word. */
  readonly least: number;
}

/** Halvings of the search for the common ceiling. */
const STEPS = 50;

/** Widths that sum to at most `room`, where the longest words allow; below that all are cut in proportion. */
export function fitColumns(wishes: readonly ColumnWish[], room: number): readonly number[] {
  const sum = (widths: readonly number[]): number => widths.reduce((total, width) => total + width, 0);
  const natural = wishes.map((wish) => wish.natural);
  if (sum(natural) <= room) return natural;
  const least = wishes.map((wish) => Math.min(wish.least, wish.natural));
  const leastSum = sum(least);
  if (leastSum >= room) return least.map((width) => (leastSum === 0 ? 0 : (width * room) / leastSum));
  const under = (ceiling: number) => natural.map((width, i) => Math.max(least[i]!, Math.min(width, ceiling)));
  let [low, high] = [0, Math.max(...natural)];
  for (let i = 0; i < STEPS; i += 1) {
    const middle = (low + high) / 2;
    if (sum(under(middle)) > room) high = middle;
    else low = middle;
  }
  return under(low);
}
