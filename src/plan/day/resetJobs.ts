/** A reset as a short list of jobs: side by side, unless one hand does both or one must come after the other. */
import type { ResetJob, Shoot } from '../../document/schema.ts';
import { sayList } from '../../base/sayList.ts';
import { withDefaults } from '../givens.ts';
import { isUnread } from '../unread.ts';
import { inOrder } from './inOrder.ts';
import { exactly, meanOf_s, varianceOf, type Lasting } from './lasting.ts';
import { miss, stepTime, written, type Gathered } from './usual.ts';
import type { DayPlan } from './types.ts';

/** One job, in an order in which all can be done. */
export interface Job {
  readonly id: string;
  readonly title: string;
  readonly lasting: Lasting;
  /** The same number, the same hand. */
  readonly hand: number;
  readonly by: ResetJob['by'];
  /** Places of the jobs that must be done before it. */
  readonly after: readonly number[];
}

export type Warning = DayPlan['warnings'][number];

interface Drafted extends Omit<Job, 'after' | 'hand'> {
  readonly waitsFor: readonly string[];
}

/** Making its rigs ready again is a job of the reset, where it is known how long that takes. */
function reloads(shoot: Shoot, shotId: string, gathered: Gathered): readonly Drafted[] {
  const { shot } = withDefaults(shoot, shotId);
  const cued = Object.values(shot.cues).flatMap(({ rig }) => rig ?? []);
  return [...new Set([...shot.rigs, ...cued])].flatMap((id) => {
    const rig = shoot.kit.rigs[id];
    const lasting = rig && written(rig, 'reload_s', gathered);
    const waitsFor: readonly string[] = [];
    return lasting ? [{ id: `rig ${id}`, title: `Reload ${rig.title ?? id}`, lasting, by: 'rigs' as const, waitsFor }] : [];
  });
} // prettier-ignore

function writtenJobs(shoot: Shoot, shotId: string, gathered: Gathered): readonly Drafted[] {
  const { shot, at } = withDefaults(shoot, shotId);
  return Object.entries(shot.reset).map(([id, job]) => {
    const { title = id, by, after } = job;
    let lasting = written(job, 'duration_s', gathered);
    if (!lasting) {
      miss(gathered, { name: 'duration_s', title: `How long "${title}" takes`, path: `${at('reset')}/reset/${id}/time`, because: isUnread(job, 'time') ? 'unread' : 'absent' });
      lasting = exactly(0);
    }
    return { id, title, lasting, by, waitsFor: after };
  });
} // prettier-ignore

export interface Reset {
  readonly jobs: readonly Job[];
  readonly warnings: readonly Warning[];
}

/** The jobs of a shot's reset; one job of the usual length where none is written. */
export function resetOf(shoot: Shoot, shotId: string, gathered: Gathered): Reset {
  const drafted = writtenJobs(shoot, shotId, gathered);
  const all = [...drafted, ...reloads(shoot, shotId, gathered)];
  if (drafted.length === 0) {
    const usual: Drafted = { id: 'reset', title: 'Reset', lasting: stepTime(shoot, shotId, 'reset', gathered), by: undefined, waitsFor: [] };
    all.unshift(usual);
  }
  const { order, pairs, circles } = inOrder(all.map(({ id }) => id), (id) => all.find((job) => job.id === id)!.waitsFor);
  const placeOf = new Map(order.map((job, place) => [job, place]));
  const hands = new Map<string, number>();
  const jobs = order.map((i): Job => {
    const { id, title, lasting, by } = all[i]!;
    const whose = by ?? `own ${id}`;
    if (!hands.has(whose)) hands.set(whose, hands.size);
    const after = pairs.flatMap(([before, one]) => (one === i ? [placeOf.get(before)!] : []));
    return { id, title, lasting, by, hand: hands.get(whose)!, after };
  });
  const at = withDefaults(shoot, shotId).at('reset');
  const titleOf = shoot.shots[shotId]!.title ?? shotId;
  const warnings = circles.map((circle): Warning => {
    const names = circle.map((i) => `"${all[i]!.title}"`);
    const says = names.length === 1 ? `${names[0]} of ${titleOf} is to be done after itself` : `${sayList(names)} of ${titleOf} each wait for another of them`;
    return { says: `${says}: take one "after" away. Until then they are taken as if none waited for the others.`, path: `${at}/reset/${all[circle[0]!]!.id}/after` };
  });
  return { jobs, warnings };
} // prettier-ignore

/** When each job ends, given how long each takes: each as soon as its hand is free and what it waits for is done. */
export function jobEnds_s(jobs: readonly Job[], times_s: readonly number[]): readonly number[] {
  const free = new Map<number, number>();
  const ends: number[] = [];
  jobs.forEach(({ hand, after }, i) => {
    const starts_s = Math.max(free.get(hand) ?? 0, ...after.map((before) => ends[before]!));
    ends.push(starts_s + times_s[i]!);
    free.set(hand, ends[i]!);
  });
  return ends;
}

/** About how long a reset takes, and its variance: along the chain of jobs that takes longest on average. */
export function resetMoments(jobs: readonly Job[]): { readonly mean_s: number; readonly variance: number } {
  const means = jobs.map(({ lasting }) => meanOf_s(lasting));
  const ends = jobEnds_s(jobs, means);
  const mean_s = Math.max(0, ...ends);
  let variance = 0;
  const isHeldUpBy = (i: number, j: number): boolean =>
    j < i && (jobs[j]!.hand === jobs[i]!.hand || jobs[i]!.after.includes(j));
  for (let at = ends.indexOf(mean_s); at >= 0;) {
    const [i, starts_s] = [at, ends[at]! - means[at]!];
    variance += varianceOf(jobs[i]!.lasting);
    at = ends.findIndex((end, j) => isHeldUpBy(i, j) && Math.abs(end - starts_s) < 1e-6);
  }
  return { mean_s, variance };
}
