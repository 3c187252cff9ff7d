import fc from 'fast-check';
import { loadHighs } from '../../test/highs.ts';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Candidate } from './lampPlaces.ts';
import { chosenOf, LEAST_LEVEL, leastProblem, nearestProblem, type Choice, type LampCost, type Wish } from './lampProgram.ts'; // prettier-ignore
import { solveProblem, type Solver } from './milp.ts';

let solver: Solver;
beforeAll(async () => {
  solver = await loadHighs();
});

const PLACES = 4;
const LAMPS = 3;

interface Case {
  /** Lux at full level, lamp by lamp, place by place. */
  readonly gives: readonly (readonly number[])[];
  readonly costs: readonly LampCost[];
  readonly target: number;
}

const cost = fc.record({
  pieceCount: fc.integer({ min: 1, max: 3 }),
  isHired: fc.constant(false),
  power_W: fc.integer({ min: 50, max: 4000 }),
  efficacy_lm_per_W: fc.constantFrom(27.1, 90, 300),
  dayPrice: fc.integer({ min: 10, max: 300 }),
});

const cases: fc.Arbitrary<Case> = fc.record({
  gives: fc.array(fc.array(fc.integer({ min: 500, max: 40_000 }), { minLength: PLACES, maxLength: PLACES }), { minLength: LAMPS, maxLength: LAMPS }),
  costs: fc.array(cost, { minLength: LAMPS, maxLength: LAMPS }),
  target: fc.integer({ min: 2000, max: 90_000 }),
}); // prettier-ignore

function choiceOf({ gives, costs, target }: Case, wish: Wish): Choice {
  const candidates = gives.flatMap((row, lamp) =>
    row.map((value, place): Candidate => ({ lamp: `lamp-${lamp}`, at: { right_m: place, away_m: 0, up_m: 0 }, side: 'front', direction: `${place}`, gives: [value], illuminance_lx: [value], hand: 0 })),
  );
  return { candidates, costs: new Map(costs.map((of, lamp) => [`lamp-${lamp}`, of])), raisable: [], wish, targets: [target], standing: [0], unlike: [] };
} // prettier-ignore

/** Every way of putting one lamp or none at each place, tried one after another. */
function* everySetUp({ costs }: Case): Generator<readonly (number | undefined)[]> {
  for (let code = 0; code < (LAMPS + 1) ** PLACES; code += 1) {
    const at = Array.from({ length: PLACES }, (_, place) => {
      const lamp = Math.floor(code / (LAMPS + 1) ** place) % (LAMPS + 1);
      return lamp === LAMPS ? undefined : lamp;
    });
    if (costs.every(({ pieceCount }, lamp) => at.filter((of) => of === lamp).length <= pieceCount)) yield at;
  }
}

/** Least of what these lamps cost with levels free: all at their lowest, then up in the order of cost for light. */
function leastAt({ gives, target }: Case, at: readonly (number | undefined)[], costAtFull: (lamp: number, lux: number) => number): number {
  const lit = at.flatMap((lamp, place) => (lamp === undefined ? [] : [{ lux: gives[lamp]![place]!, cost: costAtFull(lamp, gives[lamp]![place]!) }]));
  let lack = target - lit.reduce((sum, { lux }) => sum + LEAST_LEVEL * lux, 0);
  let cost = lit.reduce((sum, lamp) => sum + LEAST_LEVEL * lamp.cost, 0);
  for (const lamp of lit.sort((a, b) => a.cost / a.lux - b.cost / b.lux)) {
    const more = Math.min(1 - LEAST_LEVEL, Math.max(0, lack) / lamp.lux);
    lack -= more * lamp.lux;
    cost += more * lamp.cost;
  }
  return lack > 1e-6 ? Infinity : cost;
} // prettier-ignore

/** What the solver's choice comes to, before levels are rounded. */
function solved(of: Case, wish: Wish) {
  const choice = choiceOf(of, wish);
  const solution = solveProblem(solver, leastProblem(choice));
  if (solution.is === 'impossible') return undefined;
  return choice.candidates.flatMap(({ lamp, gives }, i) => (solution.values.get(`b${i}`) === 1 ? [{ lamp: Number(lamp.slice(5)), lux: gives[0]!, level: solution.values.get(`l${i}`)! }] : []));
} // prettier-ignore

const FEW = { numRuns: 25 };

describe('the optimum is that of trying every set-up of 3 lamps at 4 places', () => {
  test('for the least power', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const least = Math.min(...[...everySetUp(of)].map((at) => leastAt(of, at, (lamp) => of.costs[lamp]!.power_W)));
        const found = solved(of, 'least-power');
        const power = found?.reduce((sum, { lamp, level }) => sum + level * of.costs[lamp]!.power_W, 0) ?? Infinity;
        if (least === Infinity) expect(found).toBeUndefined();
        else expect(power / least).toBeCloseTo(1, 3);
      }),
      FEW,
    );
  });

  test('for the least heat on the subject', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const heat = (lamp: number, lux: number) => lux / of.costs[lamp]!.efficacy_lm_per_W;
        const least = Math.min(...[...everySetUp(of)].map((at) => leastAt(of, at, heat)));
        const found = solved(of, 'least-heat')?.reduce((sum, { lamp, lux, level }) => sum + level * heat(lamp, lux), 0) ?? Infinity;
        if (least === Infinity) expect(found).toBe(Infinity);
        else expect(found / least).toBeCloseTo(1, 3);
      }),
      FEW,
    ); // prettier-ignore
  });

  test('for the fewest lamps', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const counts = [...everySetUp(of)].flatMap((at) => (leastAt(of, at, () => 0) === 0 ? [at.filter((lamp) => lamp !== undefined).length] : []));
        expect(solved(of, 'fewest')?.length ?? Infinity).toBe(Math.min(Infinity, ...counts));
      }),
      FEW,
    ); // prettier-ignore
  });

  test('for the least money, where everything is hired', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const of = { ...given, costs: given.costs.map((each) => ({ ...each, isHired: true })) };
        const prices = [...everySetUp(of)].flatMap((at) => (leastAt(of, at, () => 0) === 0 ? [at.reduce<number>((sum, lamp) => sum + (lamp === undefined ? 0 : of.costs[lamp]!.dayPrice), 0)] : []));
        const found = solved(of, 'least-money')?.reduce((sum, { lamp }) => sum + of.costs[lamp]!.dayPrice, 0) ?? Infinity;
        const least = Math.min(Infinity, ...prices);
        if (least === Infinity) expect(found).toBe(Infinity);
        else expect(found / least).toBeCloseTo(1, 3);
      }),
      FEW,
    ); // prettier-ignore
  });
});

test('what comes nearest gives as much as all there is, where the target is out of reach', () => {
  fc.assert(
    fc.property(cases, (of) => {
      const most = Math.max(...[...everySetUp(of)].map((at) => at.reduce<number>((sum, lamp, place) => sum + (lamp === undefined ? 0 : of.gives[lamp]![place]!), 0)));
      const choice = choiceOf({ ...of, target: 2 * most }, 'fewest');
      const solution = solveProblem(solver, nearestProblem(choice));
      const placed = solution.is === 'found' ? chosenOf(choice, solution.values).placed : [];
      const sum = placed.reduce((all, { candidate, levelFraction }) => all + levelFraction * candidate.gives[0]!, 0);
      expect(sum / most).toBeCloseTo(1, 3);
    }),
    FEW,
  ); // prettier-ignore
});

describe('levels', () => {
  const one = (target: number): Choice => choiceOf({ gives: [[10_000, 1, 1, 1], [1, 1, 1, 1], [1, 1, 1, 1]], costs: [1, 2, 3].map((power_W) => ({ pieceCount: 1, isHired: false, power_W, efficacy_lm_per_W: 90, dayPrice: 1 })), target }, 'fewest'); // prettier-ignore
  const levels = (choice: Choice) => {
    const solution = solveProblem(solver, leastProblem(choice));
    return solution.is === 'found' ? chosenOf(choice, solution.values).placed.map(({ levelFraction }) => levelFraction) : undefined; // prettier-ignore
  };

  test('are whole hundredths, rounded up so that no light is lost', () => {
    expect(levels(one(6421))).toEqual([0.65]);
    expect(levels(one(6500))).toEqual([0.65]);
  });

  test('never lie below what a lamp can be dimmed to, nor above full', () => {
    expect(levels(one(12))).toEqual([LEAST_LEVEL]);
    expect(levels(one(10_000))).toEqual([1]);
    expect(levels(one(10_010))).toBeUndefined();
  });
});
