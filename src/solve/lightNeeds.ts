/** What the shots of a set-up ask of its light, as their plans say it, and the settings they ask it at. */
import type { Shoot } from '../document/schema.ts';
import { readsLuminance, viewOf, withDefaults } from '../plan/givens.ts';
import { withSetup, type View } from '../plan/lighting.ts';
import { shotOrder } from '../plan/plan.ts';
import { planShot } from '../plan/planShot.ts';
import type { Margin, Missing, Settings, ShotPlan } from '../plan/types.ts';

/** How much light one shot needs, and in which words. */
export interface LightNeed {
  readonly shotId: string;
  readonly title: string;
  /** Light that falls on the subject, in lux, or the face seen behind it, in cd/m². */
  readonly kind: 'illuminance' | 'luminance';
  readonly need: number;
  readonly view: View;
  /** What the need is stated for. */
  readonly settings: Settings;
  /** The scene across and up the recorded picture at the subject, where it is known. */
  readonly fieldWidth_m?: number;
  readonly fieldHeight_m?: number;
}

/** A shot whose need nobody can tell, and why. */
export interface UnknownNeed {
  readonly shotId: string;
  readonly title: string;
  readonly says: string;
  readonly missing: readonly Missing[];
}

export interface LightNeeds {
  readonly needs: readonly LightNeed[];
  readonly unknown: readonly UnknownNeed[];
}

/** Rounds after which a need that still rises is taken as it is. */
const MOST_ROUNDS = 12;

export const lightMargin = ({ margins }: Pick<ShotPlan, 'margins'>): Margin | undefined => margins.find(({ id }) => id === 'light'); // prettier-ignore

/** The shoot with the settings of a shot held: what its need was stated for. */
export function holding(shoot: Shoot, { shotId, settings }: Pick<LightNeed, 'shotId' | 'settings'>): Shoot {
  const { camera, mode, lens, stop, isoSpeed } = settings;
  return { ...shoot, shots: { ...shoot.shots, [shotId]: { ...shoot.shots[shotId]!, camera, mode, lens, stop, isoSpeed } } }; // prettier-ignore
}

/** The shots that a set-up lights, in their order. */
export function shotsLitBy(shoot: Shoot, setupId: string): readonly string[] {
  return shotOrder(shoot).filter((id) => withDefaults(shoot, id).shot.lighting === setupId);
}

/**
 * What each shot of a set-up needs. A plan that lacks light gives some way in its stop; so it is planned again with what
 * it asked for, until that is enough for it. Shots that mirror something are among the unknown: no lamp is that mirror.
 */
export function lightNeeds(shoot: Shoot, setupId: string, only?: readonly string[]): LightNeeds {
  const needs: LightNeed[] = [];
  const unknown: UnknownNeed[] = [];
  for (const shotId of shotsLitBy(shoot, setupId)) {
    if (only && !only.includes(shotId)) continue;
    const { shot } = withDefaults(shoot, shotId);
    const title = shot.title ?? shotId;
    const kind = readsLuminance(shot) ? 'luminance' : 'illuminance';
    if (shot.seen === 'by-reflection') {
      unknown.push({ shotId, title, says: 'It mirrors something, and no lamp is worked out as what is mirrored: read the luminance of that.', missing: [] });
      continue;
    }
    const plan = neededPlan(shoot, setupId, shotId, kind);
    const margin = lightMargin(plan);
    const { settings, picture } = plan;
    if (!settings || margin?.need === undefined || !(margin.need > 0)) {
      const missing = (margin?.missing ?? plan.missing).filter(({ path }) => !path.startsWith(`/lighting/${setupId}`));
      const [first] = missing;
      unknown.push({ shotId, title, says: first ? `What it needs is unknown: ${first.title} is missing.` : 'What it needs is unknown.', missing });
      continue;
    }
    const field = picture ? { fieldWidth_m: picture.fieldWidth_m, fieldHeight_m: picture.fieldHeight_m } : {};
    needs.push({ shotId, title, kind, need: margin.need, view: viewOf(shot), settings, ...field });
  }
  return { needs, unknown };
} // prettier-ignore

/** The plan of a shot with as much light as it then asks for. */
function neededPlan(shoot: Shoot, setupId: string, shotId: string, kind: LightNeed['kind']): ShotPlan {
  let plan = planShot(shoot, shotId, 1);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const margin = lightMargin(plan);
    const { need } = margin ?? {};
    if (need === undefined || (margin!.stops !== undefined && margin!.state !== 'short')) break;
    const stated = kind === 'illuminance' ? { illuminance_lx: need } : { luminance_cd_per_m2: need };
    plan = planShot(withSetup(shoot, setupId, ({ illuminance_lx: _e, luminance_cd_per_m2: _l, unread: _u, ...rest }) => ({ ...rest, ...stated })), shotId, 1);
  }
  return plan;
} // prettier-ignore
