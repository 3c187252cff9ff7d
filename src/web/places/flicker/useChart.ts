import { useEffect, useMemo, useState } from 'react';
import type { SetupGroup } from '../../../plan/flickerGroups.ts';
import { isDropped } from '../../workers/connect.ts';
import { exposuresAlong, placesOf, ratesAlong, type ChartAxes, type Standing } from './chartGrid.ts';
import { flickerWorker } from './flickerWorker.ts';
import type { Grid } from '../reckoner/contour.ts';

export interface DrawnChart {
  readonly axes: ChartAxes;
  readonly rates_fps: Float64Array;
  readonly exposures_s: Float64Array;
  /** Swings as places on the chart's scale. */
  readonly places: Grid;
}

export type Charting =
  | { readonly state: 'working'; readonly drawn: DrawnChart | undefined }
  | { readonly state: 'done'; readonly drawn: DrawnChart }
  | { readonly state: 'failed'; readonly says: string };

export interface ChartAsk {
  readonly groups: readonly SetupGroup[];
  readonly axes: ChartAxes;
  /** Where the shot stands. */
  readonly now: Standing;
  readonly playback_fps: number;
}

/** The swing over rate and shutter, worked out in the worker; the chart before stays until the new one is whole. */
export function useChart({ groups, axes, now, playback_fps }: ChartAsk): Charting {
  const ask = useMemo(
    () => ({
      axes,
      rates_fps: ratesAlong(axes.rate, groups, now.rate_fps),
      exposures_s: exposuresAlong(axes.shutter, groups, now.exposureTime_s),
      groups,
      playback_fps,
    }),
    [groups, axes, now, playback_fps],
  );
  const [answered, setAnswered] = useState<{ readonly of: typeof ask; readonly drawn?: DrawnChart; readonly says?: string }>(); // prettier-ignore
  useEffect(() => {
    const { rates_fps, exposures_s } = ask;
    const given = { rates_fps, exposures_s, playback_fps: ask.playback_fps };
    const called = flickerWorker.call('chart', { groups: ask.groups, given });
    called.answer.then(
      (stops) =>
        setAnswered({
          of: ask,
          drawn: { axes: ask.axes, rates_fps, exposures_s, places: placesOf({ rates_fps, exposures_s, stops }) },
        }),
      (error: unknown) => {
        if (!isDropped(error)) setAnswered({ of: ask, says: error instanceof Error ? error.message : String(error) });
      },
    );
    return called.cancel;
  }, [ask]);
  if (answered?.of !== ask) return { state: 'working', drawn: answered?.drawn };
  if (!answered.drawn) return { state: 'failed', says: answered.says ?? '' };
  return { state: 'done', drawn: answered.drawn };
}
