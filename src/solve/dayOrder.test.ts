import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestOrder, foundOrder, MOST_PROVEN, orderCost, provenOrder, type OrderProblem } from './dayOrder.ts';

function problem(costs: readonly (readonly number[])[], starts: readonly number[], pairs: OrderProblem['pairs'] = []): OrderProblem {
  return { count: starts.length, costs: Float64Array.from(costs.flat()), starts: Float64Array.from(starts), pairs };
} // prettier-ignore

/** Five shots, from an exhaustive reckoning in another language. */
const C = [
  [0, 12, 35, 20, 40],
  [10, 0, 30, 25, 45],
  [38, 28, 0, 15, 22],
  [18, 27, 14, 0, 30],
  [42, 44, 20, 28, 0],
];
const START = [15, 25, 30, 20, 40];

describe('five shots reckoned beforehand', () => {
  test('as listed they cost 102', () => {
    expect(orderCost(problem(C, START), [0, 1, 2, 3, 4])).toBe(102);
  });

  test.each([
    ['free', [], [0, 1, 3, 2, 4], 88],
    ['the last before the first', [[4, 0]], [4, 2, 3, 0, 1], 105],
  ] as const)('%s', (_, pairs, order, cost) => {
    expect(provenOrder(problem(C, START, pairs))).toEqual({ order, cost, isProven: true });
    expect(foundOrder(problem(C, START, pairs))).toMatchObject({ cost, isProven: false });
  });
});

test('of equals, the one that begins with what is listed first', () => {
  const same = Array.from({ length: 5 }, () => [3, 3, 3, 3, 3]);
  expect(provenOrder(problem(same, [1, 1, 1, 1, 1])).order).toEqual([0, 1, 2, 3, 4]);
  expect(provenOrder(problem(same, [1, 1, 1, 1, 1], [[4, 0]])).order).toEqual([1, 2, 3, 4, 0]);
});

test('none and one are in order as they are', () => {
  expect(bestOrder(problem([], []))).toEqual({ order: [], cost: 0, isProven: true });
  expect(bestOrder(problem([[0]], [7]))).toEqual({ order: [0], cost: 7, isProven: true });
});

const minutes = fc.integer({ min: 0, max: 90 });

/** A problem of so many shots; of two shots the lower may have to come before the higher, by a hidden order. */
const problems = (least: number, most: number): fc.Arbitrary<OrderProblem> =>
  fc.integer({ min: least, max: most }).chain((count) =>
    fc.record({
      count: fc.constant(count),
      costs: fc.array(minutes, { minLength: count * count, maxLength: count * count }).map((all) => Float64Array.from(all)), // prettier-ignore
      starts: fc.array(minutes, { minLength: count, maxLength: count }).map((all) => Float64Array.from(all)),
      pairs: fc
        .tuple(fc.shuffledSubarray(Array.from({ length: count }, (_, i) => i), { minLength: count }), fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: count })) // prettier-ignore
        .map(([hidden, all]) => all.filter(([a, b]) => a !== b).map(([a, b]) => (hidden.indexOf(a) < hidden.indexOf(b) ? ([a, b] as const) : ([b, a] as const)))), // prettier-ignore
    }),
  );

function* permutations(items: readonly number[]): Generator<readonly number[]> {
  if (items.length === 0) yield [];
  for (const item of items) for (const rest of permutations(items.filter((one) => one !== item))) yield [item, ...rest];
}

const keeps = (order: readonly number[], { pairs }: OrderProblem): boolean =>
  pairs.every(([before, after]) => order.indexOf(before) < order.indexOf(after));

const all = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);

test('the proven order is the best of every order that keeps what must come after what', () => {
  fc.assert(
    fc.property(problems(1, 6), (of) => {
      const { order, cost } = provenOrder(of);
      const lawful = [...permutations(all(of.count))].filter((other) => keeps(other, of));
      expect(keeps(order, of)).toBe(true);
      expect(orderCost(of, order)).toBe(cost);
      expect(cost).toBe(Math.min(...lawful.map((other) => orderCost(of, other))));
    }),
    { numRuns: 60 },
  );
});

test('the order found has every shot once, keeps what must come after what, and is never better than the proven', () => {
  fc.assert(
    fc.property(problems(1, 11), (of) => {
      const { order, cost } = foundOrder(of);
      expect(order.toSorted((a, b) => a - b)).toEqual(all(of.count));
      expect(keeps(order, of)).toBe(true);
      expect(orderCost(of, order)).toBeCloseTo(cost, 9);
      expect(cost).toBeGreaterThanOrEqual(provenOrder(of).cost - 1e-9);
    }),
    { numRuns: 60 },
  );
});

test('what is found comes near what is proven', () => {
  const ratios: number[] = [];
  fc.assert(
    fc.property(problems(10, 12), (of) => {
      const proven = provenOrder(of).cost;
      if (proven > 0) ratios.push(foundOrder(of).cost / proven);
    }),
    { numRuns: 30, seed: 5 },
  );
  const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length;
  expect(mean).toBeLessThan(1.05);
});

test('more shots than can be proven are ordered so that moving any one of them gains nothing', () => {
  fc.assert(
    fc.property(problems(MOST_PROVEN + 1, 30), (of) => {
      const { order, cost, isProven } = bestOrder(of);
      expect(isProven).toBe(false);
      expect(new Set(order).size).toBe(of.count);
      expect(keeps(order, of)).toBe(true);
      order.forEach((shot, from) =>
        order.forEach((_, to) => {
          const moved = order.toSpliced(from, 1).toSpliced(to, 0, shot);
          if (keeps(moved, of)) expect(orderCost(of, moved)).toBeGreaterThanOrEqual(cost - 1e-6);
        }),
      );
    }),
    { numRuns: 8 },
  );
});

test('more than the table holds is refused by name', () => {
  const row = Array.from({ length: MOST_PROVEN + 1 }, () => 1);
  expect(() =>
    provenOrder(
      problem(
        row.map(() => row),
        row,
      ),
    ),
  ).toThrow('count must be at most 15');
});

test.each([provenOrder, foundOrder])('pairs that go round in a circle are refused by name: %o', (order) => {
  const same = [[1, 1, 1], [1, 1, 1], [1, 1, 1]]; // prettier-ignore
  expect(() => order(problem(same, [1, 1, 1], [[0, 1], [1, 2], [2, 0]]))).toThrow('pairs must hold together'); // prettier-ignore
});
