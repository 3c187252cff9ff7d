import { expect, test } from 'vitest';
import { loadHighs } from '../../test/highs.ts';
import { lpText, solveProblem, type Problem, type Solver } from './milp.ts';

const knapsack = (least: number): Problem => ({
  variables: [
    { name: 'xa', low: 0, high: 1, isInteger: true, cost: 3 },
    { name: 'xb', low: 0, high: 1, isInteger: true, cost: 2 },
    { name: 'share', low: 0, high: 1, cost: 1 },
  ],
  rows: [{ terms: [['xa', 10], ['xb', 7], ['share', 4]], least }, { terms: [['xb', 1], ['share', -1]], most: 0.5 }],
}); // prettier-ignore

test('the cheapest whole choice is found, with the fraction that tops it up', async () => {
  const solution = solveProblem(await loadHighs(), knapsack(9));
  // xb and half of share give 9 for 2.5; xa alone would cost 3.
  expect(solution).toMatchObject({ is: 'found', isProven: true, cost: expect.closeTo(2.5, 6) as number });
  expect(solution.is === 'found' && [...solution.values]).toEqual([
    ['xa', 0],
    ['xb', 1],
    ['share', expect.closeTo(0.5, 6)],
  ]);
});

test('a problem that nothing solves is told to be impossible', async () => {
  expect(solveProblem(await loadHighs(), knapsack(22))).toEqual({ is: 'impossible' });
});

test('a row of nothing counts: one that cannot hold makes it impossible, one that holds changes nothing', async () => {
  const solver = await loadHighs();
  const { variables } = knapsack(0);
  expect(solveProblem(solver, { variables, rows: [{ terms: [], least: 1 }] })).toEqual({ is: 'impossible' });
  expect(solveProblem(solver, { variables, rows: [{ terms: [['xa', 0]], most: 1 }] })).toMatchObject({ cost: 0 });
});

test('the problem is written as text that says every bound, row and whole number', () => {
  expect(lpText(knapsack(9))).toBe(`Minimize
  cost: + 3 xa + 2 xb + 1 share
Subject To
  + 10 xa + 7 xb + 4 share >= 9
  + 1 xb - 1 share <= 0.5
Bounds
  0 <= xa <= 1
  0 <= xb <= 1
  0 <= share <= 1
General
  xa
  xb
End
`);
});

test.each([
  [{ variables: [{ name: '1a', low: 0, high: 1, cost: 0 }], rows: [] }, /cannot be a variable/],
  [{ variables: [{ name: 'e1', low: 0, high: 1, cost: 0 }], rows: [] }, /cannot be a variable/],
  [{ variables: [{ name: 'a', low: 2, high: 1, cost: 0 }], rows: [] }, /bounds in order/],
  [{ variables: [{ name: 'a', low: 0, high: 1, cost: 0 }, { name: 'a', low: 0, high: 1, cost: 0 }], rows: [] }, /one name/],
  [{ variables: [{ name: 'a', low: 0, high: 1, cost: 0 }], rows: [{ terms: [['b', 1]], least: 0 }] }, /no variable/],
  [{ variables: [{ name: 'a', low: 0, high: 1, cost: 0 }], rows: [{ terms: [['a', NaN]], least: 0 }] }, /no number/],
  [{ variables: [{ name: 'a', low: 0, high: 1, cost: 0 }], rows: [{ terms: [['a', 1]], least: NaN }] }, /no number/],
] as const satisfies readonly (readonly [Problem, RegExp])[])('what is no problem is refused by name: %#', (problem, says) => {
  expect(() => lpText(problem)).toThrow(says);
}); // prettier-ignore

const answering = (answer: () => unknown): Solver => ({ solve: answer }) as unknown as Solver;

test.each<[string, () => unknown]>([
  ['that throws', () => { throw new Error('out of memory'); }],
  ['that cannot read the model', () => ({ Status: 'Model error', Columns: {}, Rows: [] })],
  ['that was stopped with nothing found', () => ({ Status: 'Iteration limit reached', Columns: {}, Rows: [] })],
  ['whose answer breaks a row', () => ({ Status: 'Optimal', Columns: { xa: { Primal: 0 }, xb: { Primal: 0 }, share: { Primal: 0 } }, Rows: [] })],
])('a solver %s ends in a fault, never in an answer', (_, solve) => {
  expect(() => solveProblem(answering(solve), knapsack(9))).toThrow(expect.objectContaining({ code: 'solve.failed' }));
}); // prettier-ignore

test('what was found when the count of nodes ran out is taken, and said not to be proven', () => {
  const columns = { xa: { Primal: 1 }, xb: { Primal: 0 }, share: { Primal: 0 } };
  const stopped = answering(() => ({ Status: 'Iteration limit reached', Columns: columns, Rows: [] }));
  expect(solveProblem(stopped, knapsack(9))).toMatchObject({ is: 'found', isProven: false, cost: 3 });
});
