/**
 * Several lamps at one point of the set, gathered by what they keep step with: lamps on the mains become one waveform, each
 * delayed by its phase; a lamp with a rate of its own stays apart, since its phase against the others is anybody's guess.
 *
 * @source flicker-practice which lamps keep step with the mains
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { exposureTable, meanLight, threePhaseDelays_s } from './exposure.ts';
import { isMainsLocked, waveformOf, type LampFlicker } from './lamp.ts';
import { CELLS, waveformOfSamples, type Waveform } from './waveform.ts';

export interface MixedLamp {
  readonly waveform: Waveform;
  /** Share of the light at the point; shares are made to add up to 1. */
  readonly shareRatio: number;
  /** How much later than time 0 its period begins. */
  readonly delay_s?: number;
  readonly isMainsLocked: boolean;
}

/** Light that repeats together. */
export interface LightGroup {
  readonly waveform: Waveform;
  readonly shareFraction: number;
}

/** A described lamp as a part of the light, on one of three mains phases. Throws RangeError as `waveformOf`. */
export function mixedLamp(given: {
  readonly lamp: LampFlicker;
  readonly shareRatio?: number;
  readonly mainsPhase?: 0 | 1 | 2;
}): MixedLamp {
  const { lamp, shareRatio = 1, mainsPhase = 0 } = given;
  const hasMains = 'mains_Hz' in lamp;
  return {
    waveform: waveformOf(lamp),
    shareRatio,
    delay_s: hasMains ? threePhaseDelays_s(lamp)[mainsPhase] : 0,
    isMainsLocked: isMainsLocked(lamp),
  };
}

/** How many of the shorter period fill the longer, where it is a whole number of no more than 32. */
function timesWithin(longer_s: number, shorter_s: number): number | undefined {
  const times = Math.round(longer_s / shorter_s);
  return times <= 32 && Math.abs(longer_s / shorter_s - times) < 1e-9 * times ? times : undefined;
}

function together(lamps: readonly MixedLamp[], period_s: number): LightGroup {
  const share = lamps.reduce((sum, { shareRatio }) => sum + shareRatio, 0);
  if (lamps.length === 1 && (lamps[0]!.delay_s ?? 0) === 0)
    return { waveform: lamps[0]!.waveform, shareFraction: share };
  const samples = new Float64Array(CELLS);
  const exposureTime_s = period_s / CELLS;
  for (const { waveform, shareRatio, delay_s = 0 } of lamps) {
    const table = exposureTable(waveform);
    for (let i = 0; i < CELLS; i += 1) {
      const light = meanLight(table, { start_s: i * exposureTime_s - delay_s, exposureTime_s });
      samples[i] = samples[i]! + (shareRatio / share) * Math.max(0, light);
    }
  }
  return { waveform: waveformOfSamples({ period_s, samples }), shareFraction: share };
}

/** Lamps gathered by what they keep step with, brightest group first. Throws RangeError for no light or a share below 0. */
export function gatherLamps(lamps: readonly MixedLamp[]): readonly LightGroup[] {
  let whole = 0;
  for (const { shareRatio, delay_s = 0 } of lamps) {
    requireNotNegative({ shareRatio });
    requireFinite({ delay_s });
    whole += shareRatio;
  }
  requirePositive({ sumOfShares: whole });
  const groups: { readonly period_s: number; readonly isLocked: boolean; readonly lamps: MixedLamp[] }[] = [];
  const longestFirst = lamps
    .filter(({ shareRatio }) => shareRatio > 0)
    .map((lamp) => ({ ...lamp, shareRatio: lamp.shareRatio / whole }))
    .sort((a, b) => b.waveform.period_s - a.waveform.period_s);
  for (const lamp of longestFirst) {
    const { period_s } = lamp.waveform;
    const group = groups.find((of) => of.isLocked && lamp.isMainsLocked && timesWithin(of.period_s, period_s));
    if (group) group.lamps.push(lamp);
    else groups.push({ period_s, isLocked: lamp.isMainsLocked, lamps: [lamp] });
  }
  return groups
    .map(({ lamps: of, period_s }) => together(of, period_s))
    .sort((a, b) => b.shareFraction - a.shareFraction);
}
