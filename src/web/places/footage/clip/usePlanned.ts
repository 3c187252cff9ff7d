import { useMemo } from 'react';
import { plannedShot, type PlannedShot } from '../../../../turnover/measureAgainst.ts';
import { clipReply, type ClipReply, type MeasuredClip } from '../../../../turnover/measureReply.ts';
import type { OpenShoot } from '../../../state/contract.ts';

/** What the plan of a shot says a clip must be, as the plan now is; undefined for a shot that is not there. */
export function usePlanned({ shoot, plan }: OpenShoot, shotId: string | undefined): PlannedShot | undefined {
  const of = plan.shots.find(({ id }) => id === shotId);
  return useMemo(() => of && plannedShot(shoot, of), [shoot, of]);
}

/** A clip in words, held against its shot. */
export function useReply(clip: MeasuredClip | undefined, shot: PlannedShot | undefined): ClipReply | undefined {
  return useMemo(() => clip && clipReply({ ...clip, ...(shot && { shot }) }), [clip, shot]);
}
