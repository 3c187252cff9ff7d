/**
 * Shutter times and frame rates that a periodic light cannot flicker at.
 *
 *     null shutters    t = k/f, as far as 1/R        left at a mains drift d: about d·m
 *     locked rates     R = f/n; none above f
 *
 * f ripple, Hz      k, n 1, 2, 3 …      R frame rate, fps      m depth of the ripple
 *
 * A null shutter takes out every harmonic at once and forgives a drift of the mains. A locked rate gives every frame the
 * same light, not an average one, and turns a drift into a slow change of the picture. Above the ripple's own rate neither
 * exists: there it takes steady lamps, large filaments, three phases, or pulses many times an exposure.
 *
 * @source null-shutter-page whole cycles of light in each exposure
 * @source flicker-practice locked rates, and what drift does to them
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { sinc } from './waveform.ts';

export interface NullShutter {
  readonly exposureTime_s: number;
  /** Whole periods in it. */
  readonly periodCount: number;
  /** Share of the ripple left when the mains is off by the drift. */
  readonly leftFraction: number;
}

/** Most shutter times or rates listed; a set has no use for more. */
const MOST_LISTED = 1000;
/** A frame this little too short for a whole period still counts as long enough: rounding, not physics. */
const ROUNDING = 1e-9;

/** Exposure times that null a ripple within a frame, shortest first. Throws RangeError outside positive rates. */
export function nullShutters(given: {
  readonly ripple_Hz: number;
  readonly frameRate_fps: number;
  readonly driftFraction?: number;
}): readonly NullShutter[] {
  const { ripple_Hz, frameRate_fps, driftFraction = 0 } = given;
  requirePositive({ ripple_Hz, frameRate_fps });
  requireWithin(0, 0.5, { driftFraction });
  const most = Math.min(MOST_LISTED, Math.floor((ripple_Hz / frameRate_fps) * (1 + ROUNDING)));
  return Array.from({ length: most }, (_, i) => ({
    exposureTime_s: (i + 1) / ripple_Hz,
    periodCount: i + 1,
    leftFraction: Math.abs(sinc((i + 1) * (1 + driftFraction))),
  }));
}

/** Exposure times that null several ripples at once, each within a share of a period. Throws RangeError for no ripples. */
export function sharedNullShutters(given: {
  readonly ripples_Hz: readonly number[];
  readonly frameRate_fps: number;
  readonly toleranceFraction?: number;
}): readonly number[] {
  const { ripples_Hz, frameRate_fps, toleranceFraction = 0.01 } = given;
  requireNotNegative({ toleranceFraction });
  const slowest_Hz = Math.min(...ripples_Hz);
  for (const ripple_Hz of ripples_Hz) requirePositive({ ripple_Hz });
  return nullShutters({ ripple_Hz: slowest_Hz, frameRate_fps })
    .map(({ exposureTime_s }) => exposureTime_s)
    .filter((exposureTime_s) =>
      ripples_Hz.every((ripple_Hz) => {
        const periods = ripple_Hz * exposureTime_s;
        return Math.abs(periods - Math.round(periods)) <= toleranceFraction + ROUNDING * periods;
      }),
    );
}

/** Frame rates that give every frame the same light, slowest first; none above the ripple. Throws RangeError as named. */
export function lockedRates_fps(given: {
  readonly ripple_Hz: number;
  readonly slowest_fps: number;
  readonly fastest_fps: number;
}): readonly number[] {
  const { ripple_Hz, slowest_fps, fastest_fps } = given;
  requirePositive({ ripple_Hz, slowest_fps, fastest_fps });
  const least = Math.max(1, Math.ceil((ripple_Hz / fastest_fps) * (1 - ROUNDING)));
  const most = Math.min(Math.floor((ripple_Hz / slowest_fps) * (1 + ROUNDING)), least + MOST_LISTED - 1);
  return Array.from({ length: Math.max(0, most - least + 1) }, (_, i) => ripple_Hz / (most - i));
}

/** One null shutter. Throws RangeError outside positive inputs. */
export function nullShutterOf({
  ripple_Hz,
  periodCount = 1,
  driftFraction = 0.002,
}: {
  readonly ripple_Hz: number;
  readonly periodCount?: number;
  readonly driftFraction?: number;
}) {
  requirePositive({ ripple_Hz, periodCount });
  requireWithin(0, 0.5, { driftFraction });
  const exposureTime_s = periodCount / ripple_Hz;
  const leftFraction = Math.abs(sinc(periodCount * (1 + driftFraction)));
  return { exposureTime_s, fastest_fps: 1 / exposureTime_s, leftFraction };
}

/** Beat of a locked camera on mains that drift. Throws RangeError outside its domain. */
export function lockDrift_Hz({
  mains_Hz,
  driftFraction,
  harmonicCount = 1,
}: {
  readonly mains_Hz: number;
  readonly driftFraction: number;
  readonly harmonicCount?: number;
}): number {
  requirePositive({ mains_Hz, harmonicCount });
  requireNotNegative({ driftFraction });
  return 2 * mains_Hz * driftFraction * harmonicCount;
}

const WORDS = ['flicker', 'flicker-free', 'shutter', 'mains', '50 Hz', '60 Hz', 'safe frame rate', 'HMI'];
const DRIFT = {
  title: 'Drift of the mains',
  as: 'fraction',
  note: 'assumed: 0.002 of a normal grid, 0.01 disturbed, 0.02 and more of generators',
} as const;

export const nullShutter = law(nullShutterOf, {
  id: 'null-shutter',
  title: 'Shutter that takes out a ripple',
  says: 'The exposure that holds whole periods of a lamp’s ripple, so that every frame gets the same light.',
  equation: 't = k / f; left at a drift d: |sinc(k · (1 + d))|',
  takes: {
    ripple_Hz: { title: 'Ripple', note: 'twice the mains, for most lamps on them' },
    periodCount: { title: 'Periods in the exposure', as: 'count', default: 1 },
    driftFraction: { ...DRIFT, default: 0.002 },
  },
  gives: {
    exposureTime_s: 'Exposure time',
    fastest_fps: 'Frame rate it allows at most',
    leftFraction: { title: 'Share of the ripple left', as: 'fraction' },
  },
  holds: 'Any waveform that repeats. Wandering arcs and lamps with two rates at once keep their flicker.',
  sources: ['null-shutter-page', 'flicker-practice'],
  words: WORDS,
  example: { ripple_Hz: 100, periodCount: 2 },
});

export const lockDrift = law(lockDrift_Hz, {
  id: 'lock-drift',
  title: 'Beat of a locked camera on drifting mains',
  says: 'How fast the light creeps through its ripple, when the frame rate divides it but the mains are a little off.',
  equation: '2 · f · d · n',
  takes: { mains_Hz: 'Mains', driftFraction: DRIFT, harmonicCount: { title: 'Harmonic', as: 'count', default: 1 } },
  gives: { beat_Hz: 'Beat in the time of the set' },
  holds: 'A camera on its own crystal. One locked to the mains does not beat.',
  sources: ['flicker-practice'],
  words: [...WORDS, 'genlock', 'crystal', 'generator'],
  example: { mains_Hz: 50, driftFraction: 0.002 },
});
