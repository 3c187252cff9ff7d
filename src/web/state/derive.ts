/** What follows from the written shoot: read and planned once for each value, however often it is asked. */
import type { Problem } from '../../document/problem.ts';
import { readShoot, type Written } from '../../document/read.ts';
import type { Shoot } from '../../document/schema.ts';
import { eventProblems } from '../../plan/events.ts';
import { photometryTold } from '../../plan/photometry.ts';
import { planShoot } from '../../plan/plan.ts';
import type { Plan } from '../../plan/types.ts';
import { waveformsTold } from '../../plan/waveforms.ts';

export interface Derived {
  readonly shoot: Shoot;
  readonly problems: readonly Problem[];
  readonly plan: Plan;
}

/** Tells plans what is known of a shoot's files. */
export type Tell = (shoot: Shoot) => void;

export type Derive = (written: Written, tell: Tell) => Derived;

interface Planned {
  readonly told: readonly unknown[];
  readonly plan: Plan;
}

const plans = new WeakMap<Shoot, Planned>();

/** A shoot is planned again only once more is told of its files. */
function planOf(shoot: Shoot): Plan {
  const told = [photometryTold(shoot), waveformsTold(shoot)];
  const known = plans.get(shoot);
  if (known?.told.every((of, i) => of === told[i])) return known.plan;
  const plan = planShoot(shoot);
  plans.set(shoot, { told, plan });
  return plan;
}

/** Reads and plans a written shoot; reading keeps the identity of what was not edited, and planning goes by it. */
export function deriveShoot(written: Written, tell: Tell = () => undefined): Derived {
  const { shoot, problems } = readShoot(written);
  tell(shoot);
  const ofEvents = eventProblems(shoot);
  return { shoot, problems: ofEvents.length === 0 ? problems : [...problems, ...ofEvents], plan: planOf(shoot) };
}
