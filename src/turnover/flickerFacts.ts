/** A measured lamp in figures: how good its record is, how it ripples, what rooms say of it and what a camera sees. */
import { lockedRates_fps, nullShutters } from '../laws/flicker/cures.ts';
import type { MeasuredQuality } from '../laws/flicker/measured.ts';
import { depthOf, flickerIndexOf, ieee1789Levels, stroboscopicVisibility } from '../laws/flicker/metrics.ts';
import { seenFlicker, type SeenGiven } from '../laws/flicker/seen.ts';
import { judgeFlicker } from '../laws/flicker/visible.ts';
import { harmonicAmplitudes, type Waveform } from '../laws/flicker/waveform.ts';
import { swingSaid } from '../plan/flickerMargin.ts';
import { flickerReply } from './flickerReply.ts';

export interface MeasuredLamp {
  readonly name: string;
  readonly waveform: Waveform;
  readonly quality: MeasuredQuality;
  readonly notices: readonly string[];
  /** Reading with the sensor covered, in the unit of the record. */
  readonly dark: number;
}

/** What is said of figures made for people in a room. */
export const FOR_PEOPLE = 'for people in a room, not for footage';

/** Harmonics told, and the least of them. */
const MOST_HARMONICS = 8;
const LEAST_AMPLITUDE = 0.001;

/** Null shutters and locked rates told, nearest to what is asked first. */
const MOST_CURES = 8;

/** How far mains are usually off. @source flicker-practice */
const USUAL_DRIFT = 0.002;

/** Rates that anything is filmed at. */
const SLOWEST_fps = 1;

/** What a measured lamp comes to, in the form of `longsecond.flicker/1`. */
export function measuredFacts({ name, waveform, quality, notices, dark }: MeasuredLamp) {
  const { sampleRate_Hz, sampleCount, periodCount, periodErrorFraction, residualFraction, jitterFraction } = quality;
  const ripple_Hz = 1 / waveform.period_s;
  const depthFraction = depthOf(waveform);
  const { lowRiskFraction, noEffectFraction } = ieee1789Levels({ ripple_Hz });
  const count = Math.min(64, Math.floor(waveform.samples.length / 2) - 1);
  const harmonics = [...harmonicAmplitudes(waveform, count)].map((amplitudeFraction, i) => ({ rate_Hz: (i + 1) * ripple_Hz, amplitudeFraction })); // prettier-ignore
  return {
    name,
    record: { sampleRate_Hz, sampleCount, periodCount, periodErrorFraction, residualFraction, jitterFraction, darkRatio: dark }, // prettier-ignore
    period_s: waveform.period_s,
    ripple_Hz,
    depthFraction,
    swing_stops: swingSaid({ depthFraction, peakToPeakRatio: NaN, peakToPeak_stops: Math.log2((1 + depthFraction) / (1 - depthFraction)) }), // prettier-ignore
    harmonics: harmonics.filter(({ amplitudeFraction }) => amplitudeFraction >= LEAST_AMPLITUDE).sort((a, b) => b.amplitudeFraction - a.amplitudeFraction).slice(0, MOST_HARMONICS), // prettier-ignore
    room: {
      says: FOR_PEOPLE,
      percentFlickerFraction: depthFraction,
      flickerIndexRatio: flickerIndexOf(waveform),
      stroboscopicRatio: stroboscopicVisibility(waveform),
      ieee1789: {
        lowRiskFraction,
        noEffectFraction,
        isWithinLowRisk: depthFraction <= lowRiskFraction,
        isWithinNoEffect: depthFraction <= noEffectFraction,
      },
    },
    notices,
  };
}

export type MeasuredFacts = ReturnType<typeof measuredFacts>;

/** What a camera sees of a lamp alone, and which shutters and rates would not. */
export function cameraFacts(waveform: Waveform, given: SeenGiven) {
  const { frameRate_fps, exposureTime_s, playback_fps, frameCount } = given;
  const ripple_Hz = 1 / waveform.period_s;
  const seen = seenFlicker([{ waveform, shareFraction: 1 }], given);
  const { seen: told, verdict } = flickerReply({ lamps: [], seen, verdict: judgeFlicker(seen) }, () => undefined);
  const near = (value: number) => Math.abs(Math.log(value / exposureTime_s));
  const nulls = nullShutters({ ripple_Hz, frameRate_fps, driftFraction: USUAL_DRIFT });
  const rates = lockedRates_fps({ ripple_Hz, slowest_fps: SLOWEST_fps, fastest_fps: 1 / waveform.period_s });
  return {
    frameRate_fps,
    exposureTime_s,
    playback_fps,
    ...(frameCount === undefined ? {} : { frameCount }),
    seen: told!,
    verdict: verdict!,
    nullShutters: [...nulls].sort((a, b) => near(a.exposureTime_s) - near(b.exposureTime_s)).slice(0, MOST_CURES).sort((a, b) => a.exposureTime_s - b.exposureTime_s).map(({ exposureTime_s: null_s, periodCount, leftFraction }) => ({ exposureTime_s: null_s, periodCount, leftFraction })), // prettier-ignore
    lockedRates_fps: [...rates].sort((a, b) => Math.abs(Math.log(a / frameRate_fps)) - Math.abs(Math.log(b / frameRate_fps))).slice(0, MOST_CURES).sort((a, b) => a - b), // prettier-ignore
  };
}

export type CameraFacts = ReturnType<typeof cameraFacts>;
