/** How long work goes on, by how fast it went on while somebody watched; nothing is said before that is known. */

export interface Seen {
  readonly at_s: number;
  readonly done: number;
}

/** Work is watched this long before its speed is believed, and no further back than that. */
const LEAST_s = 1.5;
const MOST_s = 15;

/** What was seen with one more look at it; work that began anew is watched anew. */
export function seenNext(seen: readonly Seen[], now: Seen): readonly Seen[] {
  const last = seen.at(-1);
  if (last && now.done < last.done) return [now];
  return [...seen.filter(({ at_s }) => now.at_s - at_s <= MOST_s), now];
}

/** Seconds that are left; undefined while they cannot be told. */
export function timeLeft_s(seen: readonly Seen[], total: number | undefined): number | undefined {
  const [first, last] = [seen[0], seen.at(-1)];
  if (total === undefined || !first || !last || last.at_s - first.at_s < LEAST_s || last.done <= first.done) return undefined; // prettier-ignore
  return (Math.max(0, total - last.done) * (last.at_s - first.at_s)) / (last.done - first.done);
}

/** "12 s", "3 min": no finer than such a guess is. */
export function sayTimeLeft(left_s: number): string {
  if (left_s < 60) return `${Math.max(1, left_s < 20 ? Math.round(left_s) : 5 * Math.round(left_s / 5))} s`;
  const minutes = Math.round(left_s / 60);
  return minutes < 90 ? `${minutes} min` : `${Math.round(minutes / 60)} h`;
}
