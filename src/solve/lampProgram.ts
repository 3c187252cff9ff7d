/**
 * Choosing lamps, places and levels as a mixed-integer linear problem: light is linear in the levels, and whether a lamp
 * stands somewhere is yes or no.
 *
 *     Σ give[i] · level[i] + standing ≥ target        0.1 · stands[i] ≤ level[i] ≤ stands[i]
 *     Σ stands of one lamp ≤ its pieces left          Σ stands in one direction ≤ 1
 *
 * The band of a reading does not add linearly: the caller raises the targets until the plan keeps its spare.
 */
import type { Problem, Row, Variable } from './milp.ts';
import type { Candidate } from './lampPlaces.ts';

/** Dimmed below this, a lamp changes colour or flickers, and a smaller one does its work; common practice, no source. */
export const LEAST_LEVEL = 0.1;

/** Stands round one table; common practice, no source. */
export const MOST_LAMPS = 12;

export const WISHES = ['least-power', 'least-heat', 'fewest', 'least-money'] as const;
export type Wish = (typeof WISHES)[number];

/** What one lamp of the kit costs in the ways that can be wished for. */
export interface LampCost {
  readonly pieceCount: number;
  readonly isHired: boolean;
  readonly power_W: number;
  /** Of its radiation, lm/W: how much heat comes with its light. */
  readonly efficacy_lm_per_W: number;
  readonly dayPrice: number;
}

/** A lamp that stands already and may be turned up. */
export interface Raisable {
  readonly id: string;
  readonly levelFraction: number;
  /** At full level, for each need. */
  readonly gives: readonly number[];
  readonly power_W: number;
}

/** Light wanted on the key side over that on the fill side, and what stands there already. */
export interface RatioWanted {
  readonly keyToFillRatio: number;
  readonly keyHand: -1 | 1;
  readonly need: number;
  readonly standingKey_lx: number;
  readonly standingFill_lx: number;
}

/** Lamps, or lamps on sides, of which there must be fewer than an earlier answer has of them together. */
export interface Unlike {
  readonly by: Likeness;
  readonly kinds: ReadonlySet<string>;
  readonly count: number;
}

export interface Choice {
  readonly candidates: readonly Candidate[];
  readonly costs: ReadonlyMap<string, LampCost>;
  readonly raisable: readonly Raisable[];
  readonly wish: Wish;
  /** For each need: light to be reached, and what lamps that stay give whatever is chosen. */
  readonly targets: readonly number[];
  readonly standing: readonly number[];
  readonly ratio?: RatioWanted;
  /** What earlier answers have. */
  readonly unlike: readonly Unlike[];
}

/** How far from the ratio wanted an answer may lie: a sixth of a stop each way. */
const RATIO_SLACK = 2 ** (1 / 6);

/** Of the light, what comes from key and fill at least; the rest may come from near the camera's axis. */
const FROM_SIDES = 0.5;

/** Weighs what only breaks ties. */
const TIE = 1e-6;

/** A hired lamp weighs more than all that can be wished of those that are here. */
const HIRED = MOST_LAMPS + 1;

/** What makes two answers alike: the same lamps, or the same lamps on the same sides. */
export type Likeness = 'lamp' | 'side';

export const kindOf = ({ lamp, side }: Pick<Candidate, 'lamp' | 'side'>, by: Likeness): string =>
  by === 'lamp' ? lamp : `${lamp} ${side}`;

const stands = (i: number) => `b${i}`;
const level = (i: number) => `l${i}`;
const raised = (i: number) => `r${i}`;

/** Costs of a lamp that stands, and of its level, each at most about 1. */
function weights({ candidates, costs, wish }: Choice): readonly { readonly fixed: number; readonly atFull: number }[] {
  const of = candidates.map(({ lamp }) => costs.get(lamp)!);
  const heat = candidates.map(({ illuminance_lx }, i) => Math.max(...illuminance_lx) / of[i]!.efficacy_lm_per_W);
  const powers = of.map(({ power_W }) => power_W);
  const prices = of.map(({ isHired, dayPrice }) => (isHired ? dayPrice : 0));
  const shares = (values: readonly number[]) => {
    const most = Math.max(...values.filter(Number.isFinite), 0);
    return values.map((value) => (most > 0 && Number.isFinite(value) ? value / most : 0));
  };
  const [power, hot, price] = [shares(powers), shares(heat), shares(prices)];
  return candidates.map((_, i) => {
    const hire = of[i]!.isHired ? HIRED : 0;
    switch (wish) {
      case 'least-power':
        return { fixed: TIE + hire, atFull: power[i]! };
      case 'least-heat':
        return { fixed: TIE + hire, atFull: hot[i]! + TIE * power[i]! };
      case 'fewest':
        return { fixed: 1 + hire, atFull: 1e-3 * power[i]! };
      case 'least-money':
        return { fixed: HIRED * price[i]! + 1e-3, atFull: 1e-4 * power[i]! };
    }
  });
}

const lightTerms = ({ candidates, raisable }: Choice, need: number): Row['terms'] => [
  ...candidates.map(({ gives }, i) => [level(i), gives[need]!] as const),
  ...raisable.map(({ gives }, i) => [raised(i), gives[need]!] as const),
];

function rowsOf(choice: Choice): readonly Row[] {
  const { candidates, costs, ratio, unlike } = choice;
  const indices = candidates.map((_, i) => i);
  const atMost = (which: readonly number[], most: number): Row => ({ terms: which.map((i) => [stands(i), 1] as const), most });
  const groups = (keyOf: (candidate: Candidate) => string) => [...new Set(candidates.map(keyOf))].map((key) => [key, indices.filter((i) => keyOf(candidates[i]!) === key)] as const);
  return [
    ...indices.flatMap((i): readonly Row[] => [
      { terms: [[level(i), 1], [stands(i), -1]], most: 0 },
      { terms: [[level(i), 1], [stands(i), -LEAST_LEVEL]], least: 0 },
    ]),
    ...groups(({ lamp }) => lamp).map(([lamp, which]) => atMost(which, costs.get(lamp)!.pieceCount)),
    ...groups(({ direction }) => direction).filter(([, which]) => which.length > 1).map(([, which]) => atMost(which, 1)),
    ...(candidates.length > 0 ? [atMost(indices, MOST_LAMPS)] : []),
    ...(ratio ? ratioRows(choice, ratio) : []),
    ...unlike.map(({ by, kinds, count }) => atMost(indices.filter((i) => kinds.has(kindOf(candidates[i]!, by))), count - 1)),
  ].filter(({ terms }) => terms.length > 0);
} // prettier-ignore

function ratioRows({ candidates, targets }: Choice, ratio: RatioWanted): readonly Row[] {
  const { keyToFillRatio, keyHand, need, standingKey_lx, standingFill_lx } = ratio;
  const row = (times: number): Row['terms'] =>
    candidates.flatMap(({ hand, illuminance_lx }, i) => (hand === 0 ? [] : [[level(i), illuminance_lx[need]! * (hand === keyHand ? 1 : -times)] as const]));
  const [most, least] = [keyToFillRatio * RATIO_SLACK, keyToFillRatio / RATIO_SLACK];
  const fill: Row['terms'] = candidates.flatMap(({ hand, illuminance_lx }, i) => (hand === -keyHand ? [[level(i), illuminance_lx[need]!] as const] : []));
  return [
    { terms: row(most), most: most * standingFill_lx - standingKey_lx },
    { terms: row(least), least: least * standingFill_lx - standingKey_lx },
    // A ratio of nothing to nothing is none.
    { terms: fill.length > 0 ? fill : candidates.slice(0, 1).map((_, i) => [stands(i), 0] as const), least: (FROM_SIDES * targets[need]!) / (1 + most) - standingFill_lx },
  ];
} // prettier-ignore

function variablesOf(choice: Choice): readonly Variable[] {
  const { candidates, raisable } = choice;
  const weight = weights(choice);
  const mostPower = Math.max(1, ...raisable.map(({ power_W }) => (Number.isFinite(power_W) ? power_W : 0)));
  return [
    ...candidates.map((_, i): Variable => ({ name: stands(i), low: 0, high: 1, isInteger: true, cost: weight[i]!.fixed })),
    ...candidates.map((_, i): Variable => ({ name: level(i), low: 0, high: 1, cost: weight[i]!.atFull })),
    ...raisable.map(({ levelFraction, power_W }, i): Variable => ({ name: raised(i), low: levelFraction, high: 1, cost: Number.isFinite(power_W) ? Math.max(TIE, power_W / mostPower) : TIE })),
  ];
} // prettier-ignore

/** The cheapest lamps that reach every target. */
export function leastProblem(choice: Choice): Problem {
  const { targets, standing } = choice;
  const reach = targets.map((target, need): Row => ({
    terms: lightTerms(choice, need),
    least: target - standing[need]!,
  }));
  return { variables: variablesOf(choice), rows: [...reach, ...rowsOf(choice)] };
}

/**
 * The least levels for lamps that are settled: a search may stop with lamps brighter than they need be, where what is
 * wished for hardly weighs their level.
 */
export function levelsProblem(choice: Choice, values: ReadonlyMap<string, number>): Problem {
  const { candidates, costs, wish } = choice;
  const { variables, rows } = leastProblem({ ...choice, unlike: [] });
  const dimmed = new Map(candidates.map(({ lamp, illuminance_lx, gives }, i) => {
    const { power_W, efficacy_lm_per_W } = costs.get(lamp)!;
    const byLight = Math.max(...illuminance_lx, ...gives);
    return [level(i), wish === 'least-heat' ? byLight / efficacy_lm_per_W : Number.isFinite(power_W) ? power_W : byLight] as const;
  }));
  const most = Math.max(1, ...dimmed.values());
  const fixed = variables.map((variable): Variable => {
    const { name, isInteger } = variable;
    if (isInteger === true) return { name, low: values.get(name)!, high: values.get(name)!, cost: 0 };
    const weight = dimmed.get(name);
    return weight === undefined ? variable : { ...variable, cost: Math.max(1e-3, weight / most) };
  });
  return { variables: fixed, rows };
} // prettier-ignore

/** The lamps that come nearest to every target, by the same share of each; `share` holds how near, at most 1. */
export function nearestProblem(choice: Choice): Problem {
  const { targets, standing } = choice;
  const reach = targets.map((target, need): Row => ({ terms: [...lightTerms(choice, need).map(([name, gives]) => [name, gives / target] as const), ['share', -1]], least: -standing[need]! / target }));
  const variables = variablesOf(choice).map((variable) => ({ ...variable, cost: variable.cost * 1e-5 }));
  return { variables: [...variables, { name: 'share', low: 0, high: 1, cost: -1 }], rows: [...reach, ...rowsOf(choice)] };
} // prettier-ignore

/** Which candidates a solution sets up, at which level, and how far it turns up what stands. */
export interface Chosen {
  readonly placed: readonly { readonly candidate: Candidate; readonly levelFraction: number }[];
  readonly raised: readonly { readonly id: string; readonly levelFraction: number }[];
}

/** Levels are set to whole hundredths, upwards, so that rounding takes no light away. */
const settable = (share: number): number => Math.min(1, Math.max(0, Math.ceil(share * 100 - 1e-4) / 100));

export function chosenOf({ candidates, raisable }: Choice, values: ReadonlyMap<string, number>): Chosen {
  return {
    placed: candidates.flatMap((candidate, i) =>
      values.get(stands(i))! > 0.5 ? [{ candidate, levelFraction: Math.max(LEAST_LEVEL, settable(values.get(level(i))!)) }] : [],
    ),
    raised: raisable.flatMap(({ id, levelFraction }, i) => {
      const to = settable(values.get(raised(i))!);
      return to > levelFraction + 1e-9 ? [{ id, levelFraction: to }] : [];
    }),
  };
} // prettier-ignore
