/**
 * One thing after another: a queue that serves in the order of arrival, and a memory of a few parts.
 *
 * @source queue-textbook waits that the queue must come to on average
 */

/** Serves a job on a line, first come first served: when it ends. `free_s[line]` is when the line is free again. */
export function serve_s(free_s: Float64Array, line: number, arrives_s: number, takes_s: number): number {
  const free = free_s[line]!;
  return (free_s[line] = (arrives_s > free ? arrives_s : free) + takes_s);
}

/** Parts of memories, each with when it is free again; the parts of a memory are used in turn. */
export interface Partitions {
  readonly from: Int32Array;
  readonly next: Int32Array;
  readonly free_s: Float64Array;
}

export function partitionsOf(counts: readonly number[]): Partitions {
  const from = new Int32Array(counts.length + 1);
  counts.forEach((count, i) => (from[i + 1] = from[i]! + count));
  return { from, next: new Int32Array(counts.length), free_s: new Float64Array(from.at(-1) ?? 0) };
}

/** When the part that is next in turn is free. As a line saves in the order of arrival, none is free sooner. */
export function partFree_s({ from, next, free_s }: Partitions, memory: number): number {
  return free_s[from[memory]! + next[memory]!]!;
}

/** Fills the part that is next in turn until it is saved. */
export function fillPart({ from, next, free_s }: Partitions, memory: number, until_s: number): void {
  free_s[from[memory]! + next[memory]!] = until_s;
  const following = next[memory]! + 1;
  next[memory] = from[memory]! + following === from[memory + 1]! ? 0 : following;
}

export function emptyPartitions({ next, free_s }: Partitions): void {
  next.fill(0);
  free_s.fill(0);
}
