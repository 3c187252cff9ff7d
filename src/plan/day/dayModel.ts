/** A shoot and its plan as one day to be worked through: every step with how long it lasts, in the order of the shots. */
import type { Shoot } from '../../document/schema.ts';
import { referencesOf } from '../references.ts';
import type { ShotPlan } from '../types.ts';
import { isUnread } from '../unread.ts';
import { standingOf, type Standing } from './changes.ts';
import { dataOf, type DayData } from './data.ts';
import { clockOf, type DayClock } from './dayClock.ts';
import { dayOrderOf, isDone, rolledSoFar } from './dayOrder.ts';
import { stepOf, usesOf, type DayStep } from './dayStep.ts';
import type { Warning } from './resetJobs.ts';
import { gathering, miss, type Gathered } from './usual.ts';

export interface DayBody {
  readonly id: string;
  readonly partitionCount: number;
  /** Seconds to save a byte, in the middle; zero where it is not known. */
  readonly save_s_per_B: number;
  readonly spreadFraction: number;
  /** Bodies of the same link save one after the other. */
  readonly link: string;
}

export interface DayModel extends DayClock {
  readonly steps: readonly DayStep[];
  readonly bodies: readonly DayBody[];
  /** Pieces on hand that are left, by product. */
  readonly stock: ReadonlyMap<string, number>;
  readonly copy_s_per_B: number;
  /** Room on what is saved to; infinite where it is not known. */
  readonly room_B: number;
  /** Whether somebody may clear what is verified twice, when there is no more room. */
  readonly mayClear: boolean;
}

export interface Compiled {
  readonly model: DayModel;
  readonly data: DayData;
  readonly gathered: Gathered;
  readonly warnings: readonly Warning[];
  /** Every shot in the order judged: done ones, the one in hand, the rest. */
  readonly order: readonly string[];
  readonly done: ReadonlySet<string>;
}

/** Copies, each verified, before what was saved may be cleared by somebody. */
const COPIES_TO_CLEAR = 2;

/** Pieces that are left of every product whose number is known: those on hand, less what takes used by now. */
function stockOf(shoot: Shoot, standings: readonly Standing[]): ReadonlyMap<string, number> {
  const stock = new Map<string, number>();
  for (const [id, { pieceCount }] of Object.entries(shoot.kit.products)) if (pieceCount !== undefined) stock.set(id, pieceCount);
  for (const standing of standings)
    for (const { product, count } of usesOf(standing)) {
      const left = stock.get(product);
      if (left !== undefined) stock.set(product, Math.max(0, left - count * rolledSoFar(shoot, standing.id)));
    }
  return stock;
} // prettier-ignore

/** Puts together the rest of a day, its shots in this order; one may be left to another day. */
export function compileDay(shoot: Shoot, shots: readonly ShotPlan[], wanted: readonly string[], leftOut?: string): Compiled {
  const gathered = gathering();
  const order = dayOrderOf(shoot, wanted).filter((id) => id !== leftOut);
  const plans = new Map(shots.map((shot) => [shot.id, shot]));
  const ordered = order.flatMap((id) => plans.get(id) ?? []);
  const standings = ordered.map((shot) => standingOf(shoot, shot));
  const owed = new Map<string, number>();
  for (const { shotId } of referencesOf(shoot, ordered)) owed.set(shotId, (owed.get(shotId) ?? 0) + 1);
  const data = dataOf(shoot, gathered);
  const warnings: Warning[] = [];
  const steps: DayStep[] = [];
  let from: Standing | undefined;
  ordered.forEach((shotPlan, i) => {
    const standing = standings[i]!;
    if (!isDone(shoot, shotPlan.id)) {
      if (isUnread(standing.shot, 'after')) miss(gathered, { name: 'after', title: `What ${shotPlan.title} must come after`, path: `/shots/${shotPlan.id}/after`, because: 'unread' });
      const isInHand = rolledSoFar(shoot, shotPlan.id) > 0 && steps.length === 0;
      const { keptSize_B } = shotPlan;
      const made = stepOf(shoot, standing, keptSize_B ?? 0, { standing: from, isInHand }, owed.get(shotPlan.id) ?? 0, gathered);
      steps.push(made.step);
      warnings.push(...made.warnings);
      if (keptSize_B === undefined && made.step.wantedCount > 0) miss(gathered, { name: 'keptSize_B', title: `What a take of ${shotPlan.title} weighs`, path: `/shots/${shotPlan.id}`, because: 'absent' });
    }
    from = standing;
  });
  return {
    model: {
      steps,
      bodies: bodiesOf(shoot, steps, data, gathered),
      stock: stockOf(shoot, standings),
      ...clockOf(shoot, gathered),
      copy_s_per_B: data.copy_s_per_B,
      room_B: data.saves.length === 0 ? Infinity : data.saves.reduce((sum, { free_B }) => sum + (Number.isNaN(free_B) ? Infinity : free_B), 0),
      mayClear: data.copies.length >= COPIES_TO_CLEAR,
    },
    data,
    gathered,
    warnings,
    order,
    done: new Set(order.filter((id) => isDone(shoot, id))),
  };
} // prettier-ignore

/** The bodies in use, each with how fast its memory is emptied. */
function bodiesOf(shoot: Shoot, steps: readonly DayStep[], data: DayData, gathered: Gathered): readonly DayBody[] {
  const used = [...new Set(steps.flatMap(({ camera }) => camera ?? []))];
  return used.map((id) => {
    const camera = shoot.kit.cameras[id];
    const { rate_B_per_s, spreadFraction } = data.saveRateOf(id);
    if (Number.isNaN(rate_B_per_s)) miss(gathered, { name: 'saveRate_B_per_s', title: `Rate of saving of ${camera?.title ?? id}`, path: `/kit/cameras/${id}/saveRate`, because: camera && isUnread(camera, 'saveRate') ? 'unread' : 'absent' });
    return { id, partitionCount: Math.max(1, camera?.partitionCount ?? 1), save_s_per_B: Number.isNaN(rate_B_per_s) ? 0 : 1 / rate_B_per_s, spreadFraction, link: data.linkOf(id) };
  });
} // prettier-ignore
