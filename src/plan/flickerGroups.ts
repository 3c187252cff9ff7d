/** The lamps of a set-up gathered by what keeps step, and what frames show of them; kept, as planning asks again and again. */
import { threePhaseDelays_s } from '../laws/flicker/exposure.ts';
import { isMainsLocked, waveformOf, type LampFlicker } from '../laws/flicker/lamp.ts';
import { gatherLamps, type LightGroup } from '../laws/flicker/mix.ts';
import { seenFlicker, swingsOf, type SeenFlicker, type SeenGiven } from '../laws/flicker/seen.ts';
import { waveformAtDrift, type Waveform } from '../laws/flicker/waveform.ts';
import type { LampTaken } from './flickerLamps.ts';

/** Which end of what a lamp's figures may be. */
export type End = 'lamp' | 'atBest' | 'atWorst';

/** How frames are taken. */
export type FramesTaken = Pick<SeenGiven, 'exposureTime_s' | 'frameRate_fps'>;

/** A lamp that gives light there, known. */
export interface LitLamp {
  readonly taken: LampTaken & { readonly lamp: LampFlicker };
  readonly shareFraction: number;
}

/** Light that keeps step, and whether the mains set its pace. */
export interface SetupGroup extends LightGroup {
  readonly isMainsLocked: boolean;
}

/** Keeps the newest of what was made, by name. */
function keeper<T>(most: number) {
  const kept = new Map<string, T>();
  return (key: string, make: () => T): T => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    if (kept.size >= most) kept.clear();
    const made = make();
    kept.set(key, made);
    return made;
  };
}

const keepWaveform = keeper<Waveform>(256);
const keepGroups = keeper<readonly SetupGroup[]>(512);
const keepSeen = keeper<SeenFlicker>(1024);
const keepSwings = keeper<ReturnType<typeof swingsOf>>(4096);

/** How far from half a period an exposure may end and still show pulses nearly as much. */
const NEAR_HALF = 0.05;

const fromWhole = (value: number): number => Math.abs(value - Math.round(value));

/**
 * The pulses near an assumed rate that frames show most, as nobody knows which they are: an exposure holds so many of them
 * and about a half, and no frame rate keeps step with them.
 */
function worstNear(lamp: LampFlicker, { exposureTime_s, frameRate_fps }: FramesTaken): LampFlicker {
  if (!('pulse_Hz' in lamp)) return lamp;
  const periods = lamp.pulse_Hz * exposureTime_s;
  const half = periods < 1 ? periods : Math.floor(periods) + 0.5;
  const perFrame = 1 / (exposureTime_s * frameRate_fps);
  const [worst] = [-1, -0.5, 0, 0.5, 1].map((step) => half + step * NEAR_HALF * Math.min(1, periods)).sort((a, b) => fromWhole(b * perFrame) - fromWhole(a * perFrame)); // prettier-ignore
  return { ...lamp, pulse_Hz: worst! / exposureTime_s };
}

/** How a lamp is worked with at one end of its figures. */
export function lampAt({ taken }: LitLamp, end: End, frames: FramesTaken): LampFlicker {
  const lamp = taken[end] ?? taken.lamp;
  return taken.hasUnknownRate === true ? worstNear(lamp, frames) : lamp;
}

const keyOf = (lamp: LampFlicker, inStepWith: string): string =>
  lamp.kind === 'measured' ? `${inStepWith} ${lamp.waveform.period_s} ${lamp.isMainsLocked}` : JSON.stringify(lamp);

/** The light of a lamp over one period. */
export function waveformAt(lamp: LampFlicker, inStepWith: string): Waveform {
  return keepWaveform(keyOf(lamp, inStepWith), () => waveformOf(lamp));
}

/** How much later a lamp's period begins, for the phase of the mains that it burns on. */
export function delayOf({ taken }: LitLamp, lamp: LampFlicker, mains_Hz: number): number {
  return isMainsLocked(lamp) && mains_Hz > 0 ? threePhaseDelays_s({ mains_Hz })[taken.phase] : 0;
}

export interface Gathered {
  readonly groups: readonly SetupGroup[];
  /** Names them: the same name, the same groups. */
  readonly key: string;
}

/** Lamps gathered by what keeps step. Throws RangeError for no light. */
export function gather(lit: readonly LitLamp[], end: End, frames: FramesTaken, mains_Hz: number): Gathered {
  const parts = lit.map((each) => {
    const lamp = lampAt(each, end, frames);
    const { inStepWith } = each.taken;
    return { ...each, lamp, inStepWith, delay_s: delayOf(each, lamp, mains_Hz), key: keyOf(lamp, inStepWith) };
  });
  const key = parts.map((part) => `${part.key} ${part.inStepWith} ${part.delay_s} ${part.shareFraction}`).join('\n');
  const groups = keepGroups(key, () => {
    const names = [...new Set(parts.map(({ inStepWith }) => inStepWith))];
    return names.flatMap((name) => {
      const of = parts.filter(({ inStepWith }) => inStepWith === name);
      const share = of.reduce((sum, { shareFraction }) => sum + shareFraction, 0);
      const isLocked = of.every(({ lamp }) => isMainsLocked(lamp));
      const mixed = of.map(({ lamp, inStepWith, shareFraction, delay_s }) => ({
        waveform: waveformAt(lamp, inStepWith),
        shareRatio: shareFraction,
        delay_s,
        isMainsLocked: isMainsLocked(lamp),
      }));
      return gatherLamps(mixed).map((group) => ({ ...group, shareFraction: group.shareFraction * share, isMainsLocked: isLocked })); // prettier-ignore
    });
  });
  return { groups, key };
}

const keyAt = ({ frameRate_fps, exposureTime_s, playback_fps, frameCount = Infinity }: SeenGiven, key: string): string => `${frameRate_fps} ${exposureTime_s} ${playback_fps} ${frameCount}\n${key}`; // prettier-ignore

/** What frames show of gathered lamps. Throws RangeError as `seenFlicker`. */
export function seenOf({ groups, key }: Gathered, given: SeenGiven): SeenFlicker {
  return keepSeen(keyAt(given, key), () => seenFlicker(groups, given));
}

/** How far frames swing under them, and no more. Throws RangeError as `seenFlicker`. */
export function swingsUnder({ groups, key }: Gathered, given: SeenGiven): ReturnType<typeof swingsOf> {
  return keepSwings(keyAt(given, key), () => swingsOf(groups, given));
}

/** The same lamps with their rates off by a share: of the mains for those on them, else of their own. */
export function drifted({ groups, key }: Gathered, name: string, driftOf: (group: SetupGroup) => number): Gathered {
  const moved = groups.map((group) => ({ ...group, waveform: waveformAtDrift({ waveform: group.waveform, driftRatio: driftOf(group) }) })); // prettier-ignore
  return { groups: moved, key: `${name} ${groups.map(driftOf).join()}\n${key}` };
}
