/**
 * The order of shots with the least time for changing over: an open way through all of them, where going there may take
 * another time than coming back, and some must come after others.
 *
 * Up to fifteen shots the best is found and proven, by Held and Karp: the least for every set of shots done and every
 * last one, each from the sets that lack it. Beyond, each shot is put where it adds least, then runs of shots are taken
 * out and put where they cost less, and the best of several beginnings is the best found.
 *
 * @source held-karp
 */

/** Beyond this many shots the table of all sets is too large to fill. */
export const MOST_PROVEN = 15;

/** Less than this is rounding, not time saved. */
const GAIN = 1e-9;

export interface OrderProblem {
  readonly count: number;
  /** Time from shot to shot, row by row: `costs[from * count + to]`. */
  readonly costs: Float64Array;
  /** Time to begin with each. */
  readonly starts: Float64Array;
  /** The first of each pair comes before the second. They must hold together. */
  readonly pairs: readonly (readonly [before: number, after: number])[];
}

export interface OrderFound {
  readonly order: readonly number[];
  readonly cost: number;
  readonly isProven: boolean;
}

export function orderCost({ costs, starts, count }: OrderProblem, order: readonly number[]): number {
  return order.reduce((sum, to, i) => sum + (i === 0 ? starts[to]! : costs[order[i - 1]! * count + to]!), 0);
}

/** For each shot, the set of those that must come before it, a bit each. */
function beforeSets({ count, pairs }: OrderProblem): Int32Array {
  const before = new Int32Array(count);
  for (const [first, second] of pairs) before[second]! |= 1 << first;
  return before;
}

/**
 * The best order, proven; of equals, the one that begins with the shots listed first. Throws RangeError for more than
 * `MOST_PROVEN` shots.
 */
export function provenOrder(problem: OrderProblem): OrderFound {
  const { count, costs, starts } = problem;
  if (count > MOST_PROVEN) throw new RangeError(`count must be at most ${MOST_PROVEN}, got ${count}`);
  if (count === 0) return { order: [], cost: 0, isProven: true };
  const before = beforeSets(problem);
  const all = (1 << count) - 1;
  const mayFollow = (done: number, to: number): boolean => (done & (1 << to)) === 0 && (before[to]! & ~done) === 0;
  // What is still to be spent when these are done and that one was the last: from the end backwards.
  const left = new Float64Array((all + 1) * count).fill(Infinity);
  left.fill(0, all * count);
  for (let done = all - 1; done > 0; done -= 1)
    for (let last = 0; last < count; last += 1) {
      if ((done & (1 << last)) === 0) continue;
      let least = Infinity;
      for (let to = 0; to < count; to += 1) {
        if (!mayFollow(done, to)) continue;
        const cost = costs[last * count + to]! + left[(done | (1 << to)) * count + to]!;
        if (cost < least) least = cost;
      }
      left[done * count + last] = least;
    }
  const order: number[] = [];
  for (let done = 0; done !== all; done |= 1 << order.at(-1)!) {
    const last = order.at(-1);
    let next = { to: -1, cost: Infinity };
    for (let to = 0; to < count; to += 1) {
      if (!mayFollow(done, to)) continue;
      const step = last === undefined ? starts[to]! : costs[last * count + to]!;
      const cost = step + left[(done | (1 << to)) * count + to]!;
      if (cost < next.cost - GAIN) next = { to, cost };
    }
    if (next.to < 0) throw new RangeError('pairs must hold together, and go round in a circle');
    order.push(next.to);
  }
  return { order, cost: orderCost(problem, order), isProven: true };
}

/** For each shot which others must come before it, also by way of others: `must[after * count + before]`. */
function closure({ count, pairs }: OrderProblem): Uint8Array {
  const must = new Uint8Array(count * count);
  for (const [first, second] of pairs) must[second * count + first] = 1;
  for (let by = 0; by < count; by += 1)
    for (let after = 0; after < count; after += 1)
      if (must[after * count + by]) for (let first = 0; first < count; first += 1) if (must[by * count + first]) must[after * count + first] = 1; // prettier-ignore
  for (let shot = 0; shot < count; shot += 1)
    if (must[shot * count + shot]) throw new RangeError('pairs must hold together, and go round in a circle');
  return must;
}

interface Search {
  readonly problem: OrderProblem;
  readonly must: Uint8Array;
  /** Whether a shot must come before or after any other. */
  readonly isBound: readonly boolean[];
  /** Time of a step, `from` being -1 at the beginning and `to` -1 at the end. */
  readonly step: (from: number, to: number) => number;
}

/** Between which places of an order a run may stand, its own shots taken out. */
function range({ problem: { count }, must, isBound }: Search, order: readonly number[], run: readonly number[]): readonly [number, number] {
  let [low, high] = [0, order.length];
  if (!run.some((shot) => isBound[shot])) return [low, high];
  order.forEach((other, place) => {
    if (!isBound[other]) return;
    if (run.some((shot) => must[shot * count + other])) low = Math.max(low, place + 1);
    if (run.some((shot) => must[other * count + shot])) high = Math.min(high, place);
  });
  return [low, high];
} // prettier-ignore

interface Place {
  readonly at: number;
  readonly cost: number;
}

/** Where a run adds least to an order. */
function cheapestPlace(search: Search, order: readonly number[], run: readonly number[]): Place {
  const [low, high] = range(search, order, run);
  let best: Place = { at: -1, cost: Infinity };
  for (let at = low; at <= high; at += 1) {
    const [from, to] = [order[at - 1] ?? -1, order[at] ?? -1];
    const cost = search.step(from, run[0]!) + search.step(run.at(-1)!, to) - search.step(from, to);
    if (cost < best.cost) best = { at, cost };
  }
  return best;
}

/** Puts in each shot that is left where it adds least, the one that adds least of all first. */
function inserted(search: Search, begun: readonly number[]): readonly number[] {
  let order = begun;
  const left = new Set(Array.from({ length: search.problem.count }, (_, i) => i).filter((shot) => !begun.includes(shot))); // prettier-ignore
  while (left.size > 0) {
    let next = { shot: -1, at: -1, cost: Infinity };
    for (const shot of left) {
      const place = cheapestPlace(search, order, [shot]);
      if (place.cost < next.cost) next = { shot, ...place };
    }
    order = order.toSpliced(next.at, 0, next.shot);
    left.delete(next.shot);
  }
  return order;
}

/** Takes runs out and puts them where they cost less, until none does. */
function improved(search: Search, begun: readonly number[]): readonly number[] {
  const { step } = search;
  let order = begun;
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (let length = 1; length < order.length; length += 1)
      for (let from = 0; from + length <= order.length; from += 1) {
        const run = order.slice(from, from + length);
        const [before, after] = [order[from - 1] ?? -1, order[from + length] ?? -1];
        const saved = step(before, run[0]!) + step(run.at(-1)!, after) - step(before, after);
        const rest = order.toSpliced(from, length);
        const place = cheapestPlace(search, rest, run);
        if (place.at < 0 || place.cost >= saved - GAIN) continue;
        order = rest.toSpliced(place.at, 0, ...run);
        isBetter = true;
      }
  }
  return order;
}

/** Orders begun with different shots; more find little more. */
const BEGINNINGS = 8;

/** The best order found, not proven. */
export function foundOrder(problem: OrderProblem): OrderFound {
  const { count, costs, starts, pairs } = problem;
  const step = (from: number, to: number): number => (to < 0 ? 0 : from < 0 ? starts[to]! : costs[from * count + to]!);
  const isBound = Array.from(starts, (_, shot) => pairs.some((pair) => pair.includes(shot)));
  const search: Search = { problem, must: closure(problem), isBound, step };
  const spacing = Math.max(1, Math.floor(count / BEGINNINGS));
  let best: OrderFound = { order: [], cost: Infinity, isProven: false };
  for (let first = 0; first < count; first += spacing) {
    const order = improved(search, inserted(search, [first]));
    const cost = orderCost(problem, order);
    if (cost < best.cost - GAIN) best = { order, cost, isProven: false };
  }
  return count === 0 ? { order: [], cost: 0, isProven: true } : best;
}

/** The best order there is for few shots; for more, the best found. */
export function bestOrder(problem: OrderProblem): OrderFound {
  return problem.count <= MOST_PROVEN ? provenOrder(problem) : foundOrder(problem);
}
