/** What would end the day sooner: each change made to the day, and the very same days drawn again. */
import type { Shoot } from '../../document/schema.ts';
import type { ShotPlan } from '../types.ts';
import { compileDay, type Compiled, type DayModel } from './dayModel.ts';
import type { DayStep } from './dayStep.ts';
import type { DayRuns } from './dayRuns.ts';
import { quantileOf, sortedColumn } from './moments.ts';
import { simulateDays } from './simulate.ts';
import type { DayDraws } from './bench.ts';
import type { DaySaving } from './types.ts';
import { sayTime } from './words.ts';

/** Days drawn for each: enough to tell changes apart on the same draws. */
const SAVING_DAYS = 100;

/** Below this nobody would change anything, and what is told is chance. */
const WORTH_s = 60;

/** Of each sort of change, so many are tried: those that most time goes on. */
const OF_A_SORT = 2;

const MOST_TOLD = 8;

interface Candidate extends Pick<DaySaving, 'title' | 'says'> {
  readonly model: DayModel;
}

export interface OtherOrder extends Pick<DaySaving, 'title' | 'says'> {
  readonly order: readonly string[];
}

export interface SavingsAsked {
  readonly shoot: Shoot;
  readonly shots: readonly ShotPlan[];
  readonly compiled: Compiled;
  readonly runs: DayRuns;
  readonly seed: number;
  readonly draws: DayDraws;
  readonly otherOrders: readonly OtherOrder[];
}

const withStep = (model: DayModel, changed: DayStep): DayModel => ({ ...model, steps: model.steps.map((step) => (step.id === changed.id ? changed : step)) }); // prettier-ignore

const most = (steps: readonly DayStep[], of: (step: DayStep) => number): readonly DayStep[] =>
  steps.filter((step) => of(step) > 0).toSorted((a, b) => of(b) - of(a)).slice(0, OF_A_SORT); // prettier-ignore

/** Mean time that the takes of a shot need. */
const takesTime_s = ({ wantedCount, goodFraction, cycle_s }: DayStep): number =>
  goodFraction > 0 ? (wantedCount / goodFraction) * cycle_s : 0;

/** A memory that holds up the floor: divided once more where the takes still fit, or emptied faster. */
function memoryCandidates({ shoot, compiled: { model }, runs }: SavingsAsked): readonly Candidate[] {
  return model.bodies.flatMap((body, i) => {
    const wait_s = runs.memoryWait_s[i]! / runs.dayCount;
    if (wait_s < WORTH_s) return [];
    const { title = body.id, memory_B = 0 } = shoot.kit.cameras[body.id] ?? {};
    const largest_B = Math.max(...model.steps.map(({ camera, size_B }) => (camera === body.id ? size_B : 0)));
    const parts = body.partitionCount + 1;
    const bodies = (changed: Partial<typeof body>): DayModel => ({ ...model, bodies: model.bodies.map((other, j) => (i === j ? { ...other, ...changed } : other)) });
    const faster: Candidate = { title: `Save from ${title} twice as fast`, says: `The floor waits ${sayTime(wait_s)} for its memory on average.`, model: bodies({ save_s_per_B: body.save_s_per_B / 2 }) };
    if (largest_B * parts > memory_B) return [faster];
    return [{ title: `Divide the memory of ${title} into ${parts}`, says: 'The next take is rolled while the one before is saved; every kept take still fits a part.', model: bodies({ partitionCount: parts }) }, faster];
  });
} // prettier-ignore

/** Resets in which one hand does several jobs. */
function handCandidates({ compiled: { model } }: SavingsAsked): readonly Candidate[] {
  const isShared = ({ jobs }: DayStep): boolean => new Set(jobs.map(({ hand }) => hand)).size < jobs.length;
  return most(model.steps.filter(isShared), takesTime_s).map((step) => ({
    title: `Another hand at the reset of ${step.title}`,
    says: 'Jobs that one person does in turn are done side by side, as far as none must come after another.',
    model: withStep(model, { ...step, jobs: step.jobs.map((job, hand) => ({ ...job, hand })) }),
  }));
}

function takeCandidates({ compiled: { model } }: SavingsAsked): readonly Candidate[] {
  return most(model.steps.filter(({ wantedCount }) => wantedCount > 1), ({ goodFraction, cycle_s }) => cycle_s / goodFraction).map((step) => ({
    title: `One kept take fewer of ${step.title}`,
    says: `${step.wantedCount - 1} instead of ${step.wantedCount}, at the same chance that a take is good.`,
    model: withStep(model, { ...step, wantedCount: step.wantedCount - 1 }),
  }));
} // prettier-ignore

/** Shots left to another day, and other orders: the changes between shots are then others. */
function shotCandidates({ shoot, shots, compiled: { model, order }, otherOrders }: SavingsAsked): readonly Candidate[] {
  const moved = model.steps.length < 2 ? [] : most(model.steps, (step) => takesTime_s(step) + step.change_s);
  return [
    ...moved.map(({ id, title }) => ({ title: `${title} on another day`, says: 'With the change over to it, and all its takes.', model: compileDay(shoot, shots, order, id).model })),
    ...otherOrders.map(({ title, says, order: other }) => ({ title, says, model: compileDay(shoot, shots, other).model })),
  ];
} // prettier-ignore

function earlyCandidates({ compiled: { model } }: SavingsAsked): readonly Candidate[] {
  const [first] = model.steps;
  if (!first || first.changes.length === 0) return [];
  return [
    {
      title: `${first.title} set up before the call`,
      says: 'Set, light and camera stand when work starts.',
      model: withStep(model, { ...first, changes: [], change_s: 0 }),
    },
  ];
}

/** Changes that end the late day sooner, the one that saves most first. */
export function savingsOf(asked: SavingsAsked): readonly DaySaving[] {
  const { runs, seed, draws } = asked;
  const dayCount = Math.min(runs.dayCount, SAVING_DAYS);
  const late_s = (wrap_s: Float64Array): number => quantileOf(sortedColumn(wrap_s, 0, 1, dayCount), 0.9);
  const now_s = late_s(runs.wrap_s);
  const candidates = [memoryCandidates, handCandidates, takeCandidates, shotCandidates, earlyCandidates].flatMap((sort) => sort(asked)); // prettier-ignore
  return candidates
    .map(({ title, says, model }) => ({
      title,
      says,
      saves_s: now_s - late_s(simulateDays(model, { dayCount, seed, draws }).wrap_s),
    })) // prettier-ignore
    .filter(({ saves_s }) => saves_s >= WORTH_s)
    .sort((a, b) => b.saves_s - a.saves_s)
    .slice(0, MOST_TOLD);
}
