import { useMemo, useState } from 'react';
import type { LightingSetup, Shoot } from '../../../document/schema.ts';
import type { Vec3 } from '../../../laws/light/area/polygon.ts';
import { towards, type LightSource } from '../../../laws/light/placed/source.ts';
import { viewOf } from '../../../plan/givens.ts';
import { towardsCamera, type View, vecOf, withSetup } from '../../../plan/lighting.ts';
import { meteredLight, type MeteredLight } from '../../../plan/meter.ts';
import type { OpenShoot } from '../../state/contract.ts';
import type { LitShot, Reference } from './lightContext.ts';
import { distance_m } from './geometry.ts';
import { withThingAt } from './lightEdits.ts';
import { shotsLitBy } from './litShots.ts';
import type { Move } from './useLampMoves.ts';

/** A shoot with one lamp or flag where it is being dragged. */
function withMove(shoot: Shoot, setupId: string, move: Move | undefined): Shoot {
  if (!move || !shoot.lighting[setupId]) return shoot;
  return withSetup(shoot, setupId, (setup) => withThingAt(setup, move.thing, move.moved, move.place));
}

export interface SetupNow {
  readonly setup: LightingSetup;
  readonly light: MeteredLight;
  readonly shots: readonly LitShot[];
  readonly shot: LitShot | undefined;
  readonly onChooseShot: (shotId: string) => void;
  readonly view: View;
  readonly facing: Vec3;
  readonly facingSaid: string;
  readonly reference: Reference | undefined;
  readonly burning: readonly LightSource[];
}

const NO_SETUP: LightingSetup = { lamps: {}, flags: {} };

/** A set-up as it stands this moment, worked out for one of the shots that it lights. */
export function useSetup(open: OpenShoot, setupId: string, { move, only }: { readonly move: Move | undefined; readonly only: string | undefined }): SetupNow {
  const [chosen, onChooseShot] = useState<string>();
  const shots = useMemo(() => shotsLitBy(open, setupId), [open, setupId]);
  const shot = shots.find(({ id }) => id === chosen) ?? shots[0];
  const { azimuth_deg, elevation_deg } = viewOf(shot?.shot ?? ({} as Parameters<typeof viewOf>[0]));
  const view = useMemo(() => ({ azimuth_deg, elevation_deg }), [azimuth_deg, elevation_deg]);
  const { shoot } = open;
  const moved = useMemo(() => withMove(shoot, setupId, move), [shoot, setupId, move]);
  const light = useMemo(() => meteredLight(moved, setupId, view), [moved, setupId, view]);
  const burning = useMemo(
    () => light.lamps.flatMap(({ id, source, isOff }) => (source && !isOff && (only === undefined || only === id) ? [source] : [])),
    [light, only],
  );
  const margin = shot?.margin;
  const need_lx = margin?.kind === 'illuminance' ? margin.need : undefined;
  const whole_lx = light.lamps.reduce((sum, { illuminance_lx }) => sum + (illuminance_lx > 0 ? illuminance_lx : 0), 0);
  const reference = useMemo(
    (): Reference | undefined =>
      need_lx !== undefined && need_lx > 0 ? { value_lx: need_lx, isNeed: true } : whole_lx > 0 ? { value_lx: whole_lx, isNeed: false } : undefined,
    [need_lx, whole_lx],
  );
  const setup = moved.lighting[setupId] ?? NO_SETUP;
  const { faces } = setup;
  const facing = useMemo(
    () => (faces && distance_m(faces) > 0 ? towards([0, 0, 0], vecOf(faces)) : towardsCamera(view)),
    [faces, view],
  );
  const facingSaid = faces === undefined ? 'the camera' : 'the side that counts';
  return { setup, light, shots, shot, onChooseShot, view, facing, facingSaid, reference, burning };
} // prettier-ignore
