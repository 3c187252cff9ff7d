/** A rate and a shutter picked from the chart as a way of the plan: fixed in the shot, and planned again in full. */
import { applyPatch, withParents } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { planShot } from '../../../plan/planShot.ts';
import type { PatchOperation, ShotPlan, Way } from '../../../plan/types.ts';
import { effectsOf } from '../../../plan/ways/ways.ts';

export interface Picked {
  /** Frames a second, a whole number as typed. */
  readonly rate: string;
  /** `1/2000 s`. */
  readonly shutter: string;
}

export interface PickedFrom {
  readonly written: Written;
  readonly shotId: string;
  /** The shot as it stands. */
  readonly plan: ShotPlan;
}

export function pickedPatch(written: Written, shotId: string, { rate, shutter }: Picked): readonly PatchOperation[] {
  return withParents(written, [
    { op: 'add', path: `/shots/${shotId}/rate`, value: Number(rate) },
    { op: 'add', path: `/shots/${shotId}/shutter`, value: shutter },
  ]);
}

/** What fixing both does to every limit of the shot. */
export function pickedWay({ written, shotId, plan }: PickedFrom, picked: Picked): Way {
  const patch = pickedPatch(written, shotId, picked);
  const { shoot } = readShoot(applyPatch(written, patch));
  const { margins, settings } = planShot(shoot, shotId, plan.number);
  const before = plan.margins.find(({ id }) => id === 'flicker');
  const after = margins.find(({ id }) => id === 'flicker');
  const stops = after?.stops?.value ?? 0;
  const isShort = (all: ShotPlan['margins'], id: string) => all.some((margin) => margin.id === id && margin.state === 'short'); // prettier-ignore
  return {
    move: 'picked',
    title: `Fix ${picked.rate} fps and ${picked.shutter}`,
    says: '',
    patch,
    stops,
    gain_stops: stops - (before?.stops?.value ?? 0),
    closes: after?.state === 'tight' || after?.state === 'spare',
    breaks: margins
      .filter(({ id, isHard }) => isHard && isShort(margins, id) && !isShort(plan.margins, id))
      .map(({ id, title }) => ({ id, title })),
    touchesFixed: ['captureRate_fps', 'exposureTime_s'].some(
      (name) => plan.reasons[name as 'captureRate_fps' | 'exposureTime_s']?.isFixed === true,
    ),
    gives_stops: 0,
    margins,
    effects: effectsOf(plan.margins, margins, 'flicker'),
    ...(settings ? { settings } : {}),
    cost: 0,
  };
}
