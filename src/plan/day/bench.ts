/** A day laid out for being worked through many times: times packed, names turned into places, columns to write to. */
import { drawKey, type DrawKey } from '../../base/randomStream.ts';
import type { DayModel } from './dayModel.ts';
import type { DayStep } from './dayStep.ts';
import { emptyRuns, type DayRuns, type Logged } from './dayRuns.ts';
import { CHANGES } from './changes.ts';
import { about, NO_TIME, packTimes, type Lasting, type PackedTimes } from './lasting.ts';
import { partitionsOf, type Partitions } from './queue.ts';

/** Numbers drawn for one take: four for its own steps, then one a job. */
export const OWN_DRAWS = 4;

/** A step as the inner loop reads it: times by their place among the packed ones. */
export interface PackedStep {
  readonly of: DayStep;
  /** Place of the time of each change, or -1. */
  readonly changes: Int32Array;
  readonly reference: number;
  readonly element: number;
  readonly jobs: Int32Array;
  readonly hands: Int32Array;
  readonly after: readonly Int32Array[];
  readonly safety: number;
  readonly roll: number;
  readonly review: number;
  readonly hold: number;
  readonly body: number;
  readonly products: Int32Array;
  readonly counts: Float64Array;
  readonly keys: Readonly<Record<'change' | 'rolls' | 'takes' | 'again', DrawKey>>;
}

/** Keys of what is drawn, kept so that days drawn again do not make them anew. */
export type DayDraws = Map<string, PackedStep['keys']>;

export interface Bench {
  readonly model: DayModel;
  readonly steps: readonly PackedStep[];
  readonly times: PackedTimes;
  readonly links: Int32Array;
  readonly partitionCounts: readonly number[];
  readonly stock: Float64Array;
  readonly rateKey: DrawKey;
  readonly bodyTimes: Int32Array;
  readonly meals_s: Float64Array;
  readonly runs: DayRuns;
  /** What changes as a day goes on. */
  readonly left: Float64Array;
  readonly linkFree_s: Float64Array;
  readonly copyFree_s: Float64Array;
  readonly memories: Partitions;
  readonly rate: Float64Array;
  readonly drawn: Float64Array;
  readonly jobEnds_s: Float64Array;
  readonly handFree_s: Float64Array;
  readonly flightEnds_s: Float64Array;
  readonly flight_B: Float64Array;
  readonly now: Float64Array;
  readonly log: ((entry: Logged) => void) | undefined;
}

/** Places of `now`: the time, the end of the last break, the next meal, the bytes on the media, and the recordings in flight. */
export const TIME = 0;
export const BREAK = 1;
export const MEAL = 2;
export const HELD = 3;
export const OLDEST = 4;
export const NEWEST = 5;
export const FULL = 6;
export const LONG = 7;

export interface DrawOptions {
  readonly dayCount: number;
  readonly seed: number;
  readonly draws?: DayDraws;
}

/** Lays a day out; `log` is told every stretch of it. */
export function benchOf(model: DayModel, { dayCount, seed, draws = new Map() }: DrawOptions, log: Bench['log']): Bench {
  const lasting: Lasting[] = [NO_TIME];
  const place = (of: Lasting): number => lasting.push(of) - 1;
  const linkNames = [...new Set(model.bodies.map(({ link }) => link))];
  const products = [...model.stock.keys()];
  const keysOf = (id: string): PackedStep['keys'] => {
    const known = draws.get(id) ?? { change: drawKey(seed, id, 'change'), rolls: drawKey(seed, id, 'rolls'), takes: drawKey(seed, id, 'takes'), again: drawKey(seed, id, 'again') };
    draws.set(id, known);
    return known;
  };
  const steps = model.steps.map((of): PackedStep => {
    const uses = of.uses.filter(({ product }) => model.stock.has(product));
    return {
      of,
      changes: Int32Array.from(CHANGES, (change) => { const found = of.changes.find(([name]) => name === change); return found ? place(found[1]) : -1; }),
      reference: place(of.reference),
      element: place(of.element),
      jobs: Int32Array.from(of.jobs, (job) => place(job.lasting)),
      hands: Int32Array.from(of.jobs, ({ hand }) => hand),
      after: of.jobs.map(({ after }) => Int32Array.from(after)),
      safety: place(of.safety),
      roll: place(of.roll),
      review: place(of.review),
      hold: of.hold ? place(of.hold) : -1,
      body: model.bodies.findIndex(({ id }) => id === of.camera),
      products: Int32Array.from(uses, ({ product }) => products.indexOf(product)),
      counts: Float64Array.from(uses, ({ count }) => count),
      keys: keysOf(of.id),
    };
  });
  const mostJobs = Math.max(1, ...model.steps.map(({ jobs }) => jobs.length));
  const mostKept = model.steps.reduce((sum, { wantedCount, elementCount }) => sum + wantedCount + elementCount, 0);
  const partitionCounts = model.bodies.map(({ partitionCount }) => partitionCount);
  return {
    model,
    steps,
    bodyTimes: Int32Array.from(model.bodies, ({ spreadFraction }) => place(about(1, spreadFraction))),
    times: packTimes(lasting),
    links: Int32Array.from(model.bodies, ({ link }) => linkNames.indexOf(link)),
    partitionCounts,
    stock: Float64Array.from(model.stock.values()),
    rateKey: drawKey(seed, 'day', 'rates'),
    meals_s: Float64Array.from(model.meals_s),
    runs: emptyRuns(dayCount, steps.length, model.bodies.length),
    left: new Float64Array(products.length),
    linkFree_s: new Float64Array(linkNames.length),
    copyFree_s: new Float64Array(1),
    memories: partitionsOf(partitionCounts),
    rate: new Float64Array(Math.ceil(model.bodies.length / 4) * 4),
    drawn: new Float64Array(Math.ceil((OWN_DRAWS + mostJobs) / 4) * 4),
    jobEnds_s: new Float64Array(mostJobs),
    handFree_s: new Float64Array(mostJobs),
    flightEnds_s: new Float64Array(mostKept),
    flight_B: new Float64Array(mostKept),
    now: new Float64Array(8),
    log,
  };
} // prettier-ignore
