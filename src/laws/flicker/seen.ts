/**
 * What the frames of a clip show of the lamps' flicker: how far they swing from dimmest to brightest, and how fast that
 * beats on the screen.
 *
 *     phases met: φ₀ + n·f/R        swing in stops log₂(max/min)        beat as in `alias.ts`, harmonic by harmonic
 *
 * Where f/R is a plain fraction p/q only q phases are met, and the swing depends on where the first frame falls: best and
 * worst are given. A clip shorter than a beat meets a part of the cycle only and looks like a slow change of exposure.
 * Lamps that keep no step with each other are taken at their worst: their swings add.
 *
 * @source exposure-mean
 * @source flicker-practice a clip shorter than a beat looks like a ramp
 */
import { requireCount, requirePositive } from '../../base/domain.ts';
import { screenFlickerOf } from './alias.ts';
import { exposureTable } from './exposure.ts';
import type { LightGroup } from './mix.ts';
import { rangesMet, type PhasesMet, type Range, type RangesMet } from './ranges.ts';
import { harmonicAmplitudes, sinc, type Waveform } from './waveform.ts';

export interface Swing {
  /** Depth, (max − min)/(max + min). */
  readonly depthFraction: number;
  /** (max − min) over the mean. */
  readonly peakToPeakRatio: number;
  /** log₂(max/min); infinite where a frame can be dark. */
  readonly peakToPeak_stops: number;
}

export interface SeenTone {
  readonly lamp_Hz: number;
  /** Beat from frame to frame, in the time of the set. */
  readonly alias_Hz: number;
  readonly screen_Hz: number;
  /** Amplitude in the frames, over the mean light. */
  readonly amplitudeFraction: number;
}

export interface SeenFlicker {
  /** Of the first frame that falls worst, and of the one that falls best. */
  readonly worst: Swing;
  readonly best: Swing;
  /** Between frames anywhere: what two takes can differ by, however short each is. */
  readonly betweenTakes: Swing;
  /** Harmonics in the frames, strongest first; those at 0 on the screen are the same in every frame. */
  readonly tones: readonly SeenTone[];
  /** The strongest that beats. */
  readonly dominant: SeenTone | undefined;
  readonly looksLike: 'steady' | 'flicker' | 'drift or ramp';
  /** Why the clip cannot tell flicker from a change of light, where it cannot. */
  readonly cannotTell?: string;
}

export interface SeenGiven {
  readonly frameRate_fps: number;
  readonly exposureTime_s: number;
  readonly playback_fps: number;
  /** Frames of the clip; a clip without end where left out. */
  readonly frameCount?: number;
}

const MOST_HARMONICS = 64;
const LEAST_AMPLITUDE = 1e-6;
/** A swing below this is none: a hundredth of what any eye or grade can find. */
const STEADY_STOPS = 1e-4;
/** Longest repeat that is looked for among the phases met. */
const MOST_PHASES_MET = 512;

/** The phases that frames meet of a ripple that turns this often a frame; undefined for all of them. */
export function phasesMet({
  cyclesPerFrame,
  frameCount = Infinity,
}: {
  readonly cyclesPerFrame: number;
  readonly frameCount?: number;
}): PhasesMet | undefined {
  const turn = cyclesPerFrame - Math.floor(cyclesPerFrame);
  const most = Math.min(MOST_PHASES_MET, frameCount);
  // Convergents of a continued fraction: p/q nearest to the turn for each q.
  let [above, below, lastAbove, lastBelow, rest] = [0, 1, 1, 0, turn];
  while (Math.abs(turn * below - above) > 1e-10 && rest > 1e-12) {
    const inverse = 1 / rest;
    const whole = Math.floor(inverse);
    if (whole * below + lastBelow > most) break;
    [above, lastAbove] = [whole * above + lastAbove, above];
    [below, lastBelow] = [whole * below + lastBelow, below];
    rest = inverse - whole;
  }
  const slip = Math.abs(turn * below - above);
  if (slip <= 1e-10) return { count: below, arcFraction: 0 };
  // Frames of one class are `count` apart; the last of them has slipped this far from the first.
  const arcFraction = slip * Math.floor((frameCount - 1) / below);
  return arcFraction * below >= 1 ? undefined : { count: below, arcFraction };
}

/** A range as a depth, over its mean and in stops. */
export function swingOf({ least, most }: Range): Swing {
  const low = Math.max(0, least);
  return {
    depthFraction: most + low > 0 ? (most - low) / (most + low) : 0,
    peakToPeakRatio: most - low,
    peakToPeak_stops: Math.log2(most / low),
  };
}

function rangesOf({ waveform }: LightGroup, { frameRate_fps, exposureTime_s, frameCount }: SeenGiven): RangesMet {
  const cyclesPerFrame = 1 / (frameRate_fps * waveform.period_s);
  const phases = phasesMet({ cyclesPerFrame, ...(frameCount !== undefined && { frameCount }) });
  return rangesMet(exposureTable(waveform), exposureTime_s, phases);
}

function addRanges(groups: readonly LightGroup[], ranges: readonly Range[]): Range {
  const sum = (of: keyof Range) =>
    groups.reduce((total, { shareFraction }, i) => total + shareFraction * ranges[i]![of], 0);
  return { least: sum('least'), most: sum('most') };
}

/** Kept for as long as the waveform: a screen asks for the same lamps at many rates and shutters. */
const amplitudes = new WeakMap<Float64Array, Float64Array>();

function amplitudesOf({ samples }: Waveform): Float64Array {
  let known = amplitudes.get(samples);
  if (!known) {
    known = harmonicAmplitudes({ samples }, Math.min(MOST_HARMONICS, Math.floor(samples.length / 2) - 1));
    amplitudes.set(samples, known);
  }
  return known;
}

function tonesOf(groups: readonly LightGroup[], given: SeenGiven): readonly SeenTone[] {
  return groups
    .flatMap(({ waveform, shareFraction }) =>
      [...amplitudesOf(waveform)].map((amplitude, i) => {
        const lamp_Hz = (i + 1) / waveform.period_s;
        const left = Math.abs(sinc(lamp_Hz * given.exposureTime_s));
        return {
          lamp_Hz,
          ...screenFlickerOf({ ripple_Hz: lamp_Hz, ...given }),
          amplitudeFraction: shareFraction * amplitude * left,
        };
      }),
    )
    .filter(({ amplitudeFraction }) => amplitudeFraction > LEAST_AMPLITUDE)
    .sort((a, b) => b.amplitudeFraction - a.amplitudeFraction);
}

/** Seconds with three figures, for a sentence. */
const seconds = (time_s: number) => `${Number(time_s.toPrecision(3))} s`;

/** How far a clip swings, without what it looks like. Throws RangeError as `seenFlicker`. */
export function swingsOf(groups: readonly LightGroup[], given: SeenGiven): Pick<SeenFlicker, 'worst' | 'best' | 'betweenTakes'> {
  const { frameRate_fps, exposureTime_s, playback_fps, frameCount } = given;
  requirePositive({ frameRate_fps, exposureTime_s, playback_fps });
  if (frameCount !== undefined) requireCount({ frameCount }, 1);
  requireCount({ groupCount: groups.length }, 1);
  const ranges = groups.map((group) => rangesOf(group, given));
  const [worst, best, betweenTakes] = (['worst', 'best', 'all'] as const).map((of) =>
    swingOf(
      addRanges(
        groups,
        ranges.map((range) => range[of]),
      ),
    ),
  ) as [Swing, Swing, Swing];
  return { worst, best, betweenTakes };
} // prettier-ignore

/** What a clip shows of the lamps' flicker. Throws RangeError for a rate or exposure that is not positive, or no lamps. */
export function seenFlicker(groups: readonly LightGroup[], given: SeenGiven): SeenFlicker {
  const { frameRate_fps, frameCount } = given;
  const { worst, best, betweenTakes } = swingsOf(groups, given);
  const tones = tonesOf(groups, given);
  const dominant = tones.find((tone) => tone.alias_Hz > 0);
  const common = { worst, best, betweenTakes, tones, dominant };
  if (worst.peakToPeak_stops < STEADY_STOPS || !dominant) return { ...common, looksLike: 'steady' };
  const clip_s = (frameCount ?? Infinity) / frameRate_fps;
  const beat_s = 1 / dominant.alias_Hz;
  if (clip_s >= beat_s) return { ...common, looksLike: 'flicker' };
  return {
    ...common,
    looksLike: 'drift or ramp',
    cannotTell: `The clip lasts ${seconds(clip_s)} and one beat ${seconds(beat_s)}: it looks like a drift or a ramp, and cannot be told from one.`,
  };
}
