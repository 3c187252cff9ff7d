/** Flicker as screens draw it: the lamps' light over time, the exposures laid on it, and the frames that come of them. */
import type { Shoot } from '../document/schema.ts';
import { ratioOf } from '../base/rational.ts';
import { exposureTable, frameLights, type LightPart } from '../laws/flicker/exposure.ts';
import { rangesMet } from '../laws/flicker/ranges.ts';
import { phasesMet } from '../laws/flicker/seen.ts';
import type { Waveform } from '../laws/flicker/waveform.ts';
import { flickerFound, type FlickerAt } from './flicker.ts';
import { delayOf, gather, lampAt, waveformAt, type LitLamp, type SetupGroup } from './flickerGroups.ts';
import { withDefaults } from './givens.ts';
import { candidatesOf, prepare, workAt } from './planShot.ts';
import { flickerWorked } from './shotFlicker.ts';
import type { ShotPlan } from './types.ts';

export interface FlickerPicture {
  readonly lamps: readonly {
    readonly id: string;
    readonly title: string;
    readonly waveform: Waveform;
    /** How much later than time 0 its period begins, where the first frame falls worst. */
    readonly delay_s: number;
    readonly shareFraction: number;
  }[];
  /** Their light together, 1 the mean; each value is the mean from its time to the next. */
  readonly mixed: { readonly t_s: Float64Array; readonly light: Float64Array };
  readonly windows: readonly { readonly from_s: number; readonly to_s: number }[];
  /** Light of successive frames, 1 the mean. */
  readonly frames: Float64Array;
  readonly play_fps: number;
}

/** Points of the light over time. */
const MIXED_COUNT = 2048;

/** Most frames drawn in one go. */
const MOST_FRAMES = 100_000;

/**
 * The lamps of a shot gathered by what keeps step, as its plan works with them; undefined while one that counts is
 * unknown, or its set-up has none.
 */
export function lightGroupsOf(shoot: Shoot, shotId: string): readonly SetupGroup[] | undefined {
  if (shoot.shots[shotId] === undefined) return undefined;
  const prepared = prepare(shoot, shotId);
  const worked = workAt(prepared, candidatesOf(prepared).best[0]);
  return flickerWorked(prepared, worked)?.found.gathered?.groups;
}

/** The phase of a light, as seconds, at which a clip that swings furthest begins. */
function worstStart_s(waveform: Waveform, { frameRate_fps, exposureTime_s, frameCount }: FlickerAt): number {
  const phases = phasesMet({ cyclesPerFrame: 1 / (frameRate_fps * waveform.period_s), ...(frameCount === undefined ? {} : { frameCount }) }); // prettier-ignore
  return rangesMet(exposureTable(waveform), exposureTime_s, phases).worstFirst * waveform.period_s;
}

/** When each lamp's period begins so that the first frame falls worst: lamps that keep step are moved together. */
function placedInTime(lit: readonly LitLamp[], at: FlickerAt, mains_Hz: number): FlickerPicture['lamps'] {
  return lit.map((each) => {
    const { taken, shareFraction } = each;
    const lamp = lampAt(each, 'lamp', at);
    const waveform = waveformAt(lamp, taken.inStepWith);
    const inStep = lit.filter((other) => other.taken.inStepWith === taken.inStepWith);
    const { groups } = gather(inStep, 'lamp', at, mains_Hz);
    const isTogether = groups.length === 1 && groups[0]!.isMainsLocked;
    const start_s = worstStart_s(isTogether ? groups[0]!.waveform : waveform, at);
    return { id: taken.id, title: taken.title, waveform, delay_s: delayOf(each, lamp, mains_Hz) - start_s, shareFraction }; // prettier-ignore
  });
}

/** Flicker of a planned shot over its first frames; undefined while its lamps, rate or shutter are not known. */
export function flickerPicture(
  shoot: Shoot,
  plan: ShotPlan,
  { frameCount }: { readonly frameCount: number },
): FlickerPicture | undefined {
  const { settings, clocks, id } = plan;
  if (!settings || !clocks || shoot.shots[id] === undefined || !(frameCount >= 1 && frameCount <= MOST_FRAMES)) return undefined; // prettier-ignore
  const { captureRate_fps: frameRate_fps, exposureTime_s } = settings;
  const play_fps = ratioOf(clocks.playRate);
  const at: FlickerAt = { frameRate_fps, exposureTime_s, playback_fps: play_fps, frameCount: Math.round(frameCount) };
  const found = flickerFound(shoot, withDefaults(shoot, id), at);
  if (!found?.gathered) return undefined;
  const lamps = placedInTime(found.lit, at, found.mains_Hz);
  const parts: readonly LightPart[] = lamps.map(({ waveform, delay_s, shareFraction }) => ({ table: exposureTable(waveform), delay_s, shareRatio: shareFraction })); // prettier-ignore
  const frames = frameLights(parts, { start_s: 0, exposureTime_s, frameRate_fps, frameCount: Math.round(frameCount) });
  const step_s = frames.length / frameRate_fps / MIXED_COUNT;
  return {
    lamps,
    mixed: {
      t_s: Float64Array.from({ length: MIXED_COUNT }, (_, i) => i * step_s),
      light: frameLights(parts, { start_s: 0, exposureTime_s: step_s, frameRate_fps: 1 / step_s, frameCount: MIXED_COUNT }), // prettier-ignore
    },
    windows: Array.from(frames, (_, i) => ({ from_s: i / frameRate_fps, to_s: i / frameRate_fps + exposureTime_s })),
    frames,
    play_fps,
  };
}
