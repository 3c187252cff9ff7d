/** Circles among shots that must follow one another. */
import type { Refusal } from './readValue.ts';

export interface AfterEdge {
  readonly to: string;
  /** Where the reference is written. */
  readonly pointer: string;
}

/**
 * The references to leave out so that what must come after what has no circle: for each circle the one that closes it,
 * found in the order written. Keyed by where it is written.
 */
export function acyclicAfter(edges: ReadonlyMap<string, readonly AfterEdge[]>): ReadonlyMap<string, Refusal> {
  const closing = new Map<string, Refusal>();
  const done = new Set<string>();
  for (const start of edges.keys()) walkFrom(start, edges, done, closing);
  return closing;
}

/** A depth-first walk without recursion: a day may hold more shots than a stack holds calls. */
function walkFrom(
  start: string,
  edges: ReadonlyMap<string, readonly AfterEdge[]>,
  done: Set<string>,
  closing: Map<string, Refusal>,
): void {
  if (done.has(start)) return;
  const path = [{ id: start, next: 0 }];
  const onPath = new Set([start]);
  while (path.length > 0) {
    const here = path.at(-1)!;
    const edge = edges.get(here.id)?.[here.next];
    here.next += 1;
    if (!edge) {
      onPath.delete(here.id);
      done.add(here.id);
      path.pop();
    } else if (onPath.has(edge.to)) {
      const ids = path.map(({ id }) => id);
      const circle = [...ids.slice(ids.indexOf(edge.to)), edge.to].slice(0, 12).join(' after ');
      closing.set(edge.pointer, { code: 'after.circle', what: `Found ${circle}, expected an order without a circle` });
    } else if (!done.has(edge.to) && !closing.has(edge.pointer)) {
      path.push({ id: edge.to, next: 0 });
      onPath.add(edge.to);
    }
  }
}
