/** Things of which some must come after others: an order that keeps to it, and the circles that no order can. */

export interface Precedence {
  /** Pairs that hold together: the first before the second, by their place in the list. */
  readonly pairs: readonly (readonly [before: number, after: number])[];
  /** An order that keeps every pair and otherwise stays as near to the list as it can. */
  readonly order: readonly number[];
  /** Circles that were asked for, each in turn "after" the next; what they ask among themselves is left out of the pairs. */
  readonly circles: readonly (readonly number[])[];
}

/** A circle among those not placed yet, each of which waits for another of them. */
function circleIn(waitsFor: readonly ReadonlySet<number>[], isPlaced: readonly boolean[], first: number): readonly number[] {
  const path: number[] = [];
  for (let at = first; ; ) {
    const seen = path.indexOf(at);
    if (seen >= 0) return path.slice(seen);
    path.push(at);
    at = [...waitsFor[at]!].find((before) => !isPlaced[before])!;
  }
} // prettier-ignore

/** Sorts out what must come after what. Names that are not in the list, and a thing after itself alone, are passed over. */
export function inOrder(ids: readonly string[], afterOf: (id: string) => readonly string[]): Precedence {
  const placeOf = new Map(ids.map((id, i) => [id, i]));
  const waitsFor = ids.map((id) => new Set(afterOf(id).flatMap((before) => placeOf.get(before) ?? [])));
  const order: number[] = [];
  const circles: number[][] = [];
  waitsFor.forEach((before, i) => {
    if (before.delete(i)) circles.push([i]);
  });
  const isPlaced = ids.map(() => false);
  while (order.length < ids.length) {
    const next = ids.findIndex((_, i) => !isPlaced[i] && [...waitsFor[i]!].every((before) => isPlaced[before]));
    if (next >= 0) {
      isPlaced[next] = true;
      order.push(next);
      continue;
    }
    const circle = [...circleIn(waitsFor, isPlaced, isPlaced.indexOf(false))];
    circles.push(circle);
    for (const one of circle) for (const other of circle) waitsFor[one]!.delete(other);
  }
  return { pairs: waitsFor.flatMap((before, i) => [...before].map((one) => [one, i] as const)), order, circles };
}
