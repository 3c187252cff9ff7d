/**
 * How late a rig moves after it is fired, and how much that varies, from clips in which a light shows when it was fired.
 *
 *     latency = (first frame that moves − first frame lit)/R        both are told to a frame: σq² = (1/12 + 1/12)/R²
 *     jitter² = s² − σq²        s standard deviation of the takes        R frames a second
 *
 * @source cue-practice some thirty takes tell a spread well
 */
import type { FaultDetails } from '../../base/fault.ts';
import { bulkSpreadOf, medianOf } from '../../base/median.ts';
import { chiSquareQuantile, deviationBand, middleReach } from '../../laws/chance/fewTakes.ts';
import { NINETIETH_SPREADS } from '../../laws/chance/normal.ts';
import type { Measurement } from '../types.ts';

export interface RigClip {
  readonly name: string;
  readonly measurement: Pick<Measurement, 'signal' | 'frameRate_fps'>;
}

export interface RigTake {
  readonly name: string;
  readonly latency_s: number;
  readonly frameRate_fps: number;
  /** Far from the others: a misfire, or another way of firing. It counts all the same. */
  readonly isFar: boolean;
}

export interface RigTimes {
  readonly takes: readonly RigTake[];
  /** Clips that tell nothing, and why. */
  readonly leftOut: readonly { readonly name: string; readonly why: string }[];
  /** The middle of the takes, and how far either way that of all takes may lie in eight cases of ten. */
  readonly latency_s: number;
  readonly latencyReach_s: number;
  /** One standard deviation, what telling only to a frame adds taken off; the most it may be where that hides it. */
  readonly jitter_s: number;
  readonly jitterLow_s: number;
  readonly jitterHigh_s: number;
  readonly isJitterTold: boolean;
  /** Nine takes in ten have moved by then. */
  readonly ninetieth_s: number;
  /** What telling only to a frame adds to the takes, one standard deviation. */
  readonly quantised_s: number;
}

export type RigReading =
  | { readonly ok: true; readonly rig: RigTimes }
  | {
      readonly ok: false;
      readonly refusal: Pick<FaultDetails, 'code' | 'what' | 'mend'>;
      readonly leftOut: RigTimes['leftOut'];
    };

const FEWEST_TAKES = 3;
/** Fewer takes than these tell a spread badly. */
export const FEW_TAKES = 8;
/** Sooner than this many frames after the light, movement cannot be told from it. */
const SOONEST = 2;
/** Spreads of the bulk, and frames, beyond which a take lies far from the others; and takes that tell a bulk. */
const FAR = 4;
const FAR_FRAMES = 3;
const FEWEST_OF_BULK = 4;
/** How sure bands are. */
const SURE = 0.8;
/** A spread must be larger than frames alone would show in all but a tenth of cases, to be told. */
const TOLD = 0.9;

type Looked = Omit<RigTake, 'isFar'> | { readonly name: string; readonly why: string };

function lookedAt({ name, measurement: { signal, frameRate_fps } }: RigClip): Looked {
  if (!signal) return { name, why: 'no light comes on in it' };
  if (signal.movement === undefined) return { name, why: 'nothing moves after the light, or too little is seen before it' }; // prettier-ignore
  const frames = signal.movement - signal.frame;
  if (frames <= SOONEST) return { name, why: `it moves within ${SOONEST} frames of the light, too soon to be told at ${frameRate_fps} fps` }; // prettier-ignore
  return { name, latency_s: frames / frameRate_fps, frameRate_fps };
}

function isFarFrom(all: Float64Array, { latency_s, frameRate_fps }: Omit<RigTake, 'isFar'>): boolean {
  if (all.length < FEWEST_OF_BULK) return false;
  return Math.abs(latency_s - medianOf(all)) > Math.max(FAR * bulkSpreadOf(all), FAR_FRAMES / frameRate_fps);
}

const deviationOf = (values: Float64Array): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
};

const less = (whole: number, part: number): number => Math.sqrt(Math.max(0, whole ** 2 - part ** 2));

/** The spread of takes with what frames add taken off. */
function jitterOf(deviation: number, quantised_s: number, takeCount: number): Pick<RigTimes, 'jitter_s' | 'jitterLow_s' | 'jitterHigh_s' | 'isJitterTold'> {
  const degreeCount = takeCount - 1;
  const byFrames = quantised_s * Math.sqrt(chiSquareQuantile({ shareFraction: TOLD, degreeCount }) / degreeCount);
  const isJitterTold = deviation > byFrames;
  // Takes that happen to agree better than frames can tell are no proof of less.
  const { low, high } = deviationBand({ deviation: Math.max(deviation, quantised_s), takeCount, sureFraction: SURE });
  const jitterHigh_s = less(high, quantised_s);
  return {
    jitter_s: isJitterTold ? less(deviation, quantised_s) : jitterHigh_s,
    jitterLow_s: isJitterTold ? less(low, quantised_s) : 0,
    jitterHigh_s,
    isJitterTold,
  };
} // prettier-ignore

/** Latency and jitter of a rig from clips of it being fired; or why not, and what to do. */
export function rigTimesOf(clips: readonly RigClip[]): RigReading {
  const looked = clips.map(lookedAt);
  const told = looked.filter((of): of is Omit<RigTake, 'isFar'> => 'latency_s' in of);
  const leftOut = looked.filter((of): of is { readonly name: string; readonly why: string } => 'why' in of);
  if (told.length < FEWEST_TAKES) {
    const what = `${told.length} of ${clips.length} ${clips.length === 1 ? 'clip tells' : 'clips tell'} when the rig was fired and when it moved; ${FEWEST_TAKES} are the fewest that say how it varies`;
    return { ok: false, leftOut, refusal: { code: 'rig.few-takes', what, mend: 'Put a small light in the picture that comes on as the rig is fired, dark before, and take it eight times or more.' } }; // prettier-ignore
  }
  const all = Float64Array.from(told, ({ latency_s }) => latency_s);
  const takeCount = told.length;
  const deviation = deviationOf(all);
  const quantised_s = Math.sqrt(told.reduce((sum, { frameRate_fps }) => sum + 1 / (6 * frameRate_fps ** 2), 0) / takeCount);
  const latency_s = medianOf(all);
  const jitter = jitterOf(deviation, quantised_s, takeCount);
  return {
    ok: true,
    rig: {
      takes: told.map((take) => ({ ...take, isFar: isFarFrom(all, take) })),
      leftOut,
      latency_s,
      latencyReach_s: middleReach({ deviation: Math.max(deviation, quantised_s), takeCount, sureFraction: SURE }),
      ...jitter,
      ninetieth_s: latency_s + NINETIETH_SPREADS * jitter.jitter_s,
      quantised_s,
    },
  };
} // prettier-ignore
