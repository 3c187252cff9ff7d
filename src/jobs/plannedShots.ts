/** Shots of shoots as they are planned, for holding clips against: planned once for a revision, and only when asked for. */
import { readShoot } from '../document/read.ts';
import type { Shoot } from '../document/schema.ts';
import { migrate } from '../document/versions.ts';
import { planShoot } from '../plan/plan.ts';
import type { ShotPlan } from '../plan/types.ts';
import type { ShootStore } from '../store/types.ts';
import { plannedShot, type PlannedShot } from '../turnover/measureAgainst.ts';
import { tellStoredFiles } from './lampFiles.ts';

/** Shoots of which the newest plan is kept; people work on one or two in a day. */
const MOST_KEPT = 4;

export interface PlannedShots {
  /** Undefined for a shot that the shoot has not, or not any more. */
  readonly shot: (shotId: string | undefined) => PlannedShot | undefined;
}

interface Planned {
  readonly shoot: Shoot;
  readonly shots: ReadonlyMap<string, ShotPlan>;
}

async function planned(store: ShootStore, shootId: string): Promise<Planned> {
  const { shoot } = readShoot(migrate(store.open(shootId).written));
  await tellStoredFiles(store, shootId, shoot);
  return { shoot, shots: new Map(planShoot(shoot).shots.map((shot) => [shot.id, shot])) };
}

function lookIn({ shoot, shots }: Planned): PlannedShots {
  const known = new Map<string, PlannedShot>();
  return {
    shot: (shotId) => {
      const plan = shotId === undefined ? undefined : shots.get(shotId);
      if (!plan) return undefined;
      const found = known.get(plan.id) ?? plannedShot(shoot, plan);
      known.set(plan.id, found);
      return found;
    },
  };
}

/** What tells of the shots of a shoot as it now is. That rejects with Fault `shoot.unknown`. */
export function planShots(store: ShootStore): (shootId: string) => Promise<PlannedShots> {
  const kept = new Map<string, { readonly of: string; readonly shots: Promise<PlannedShots> }>();
  return async (shootId) => {
    const { revision } = store.open(shootId);
    // A file that the shoot names may come in without an edit.
    const here = store.filesOf(shootId).map(({ sha256, size_B }) => (size_B === undefined ? '' : sha256));
    const of = [revision, ...here].join(' ');
    const before = kept.get(shootId);
    if (before?.of === of) return before.shots;
    const shots = planned(store, shootId).then(lookIn);
    kept.delete(shootId);
    kept.set(shootId, { of, shots });
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return shots;
  };
}
