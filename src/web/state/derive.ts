/** What follows from the written shoot: read and planned once for each value, however often it is asked. */
import type { Problem } from '../../document/problem.ts';
import { readShoot, type Written } from '../../document/read.ts';
import type { Shoot } from '../../document/schema.ts';
import { eventProblems } from '../../plan/events.ts';
import { planShoot } from '../../plan/plan.ts';
import type { Plan } from '../../plan/types.ts';

export interface Derived {
  readonly shoot: Shoot;
  readonly problems: readonly Problem[];
  readonly plan: Plan;
}

export type Derive = (written: Written) => Derived;

const plans = new WeakMap<Shoot, Plan>();

function planOf(shoot: Shoot): Plan {
  const known = plans.get(shoot);
  if (known) return known;
  const plan = planShoot(shoot);
  plans.set(shoot, plan);
  return plan;
}

/** Reads and plans a written shoot; reading keeps the identity of what was not edited, and planning goes by it. */
export function deriveShoot(written: Written): Derived {
  const { shoot, problems } = readShoot(written);
  const ofEvents = eventProblems(shoot);
  return { shoot, problems: ofEvents.length === 0 ? problems : [...problems, ...ofEvents], plan: planOf(shoot) };
}
