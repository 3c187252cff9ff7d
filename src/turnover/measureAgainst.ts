/** A measured clip held against the shot it was planned as. */
import { alias_Hz } from '../laws/flicker/alias.ts';
import { sinc } from '../laws/flicker/waveform.ts';
import type { FlickerLine, Measurement } from '../measure/types.ts';
import { explain } from '../plan/explain.ts';
import type { Shoot } from '../document/schema.ts';
import type { ShotPlan } from '../plan/types.ts';
import { present } from './planReply.ts';

/** A lamp of the shot as far as its ripple goes. */
export interface PlannedLamp {
  readonly id: string;
  readonly title: string;
  readonly ripple_Hz: number;
  /** In the frames, where it shines alone as planned: its depth by its share of the light. */
  readonly depthFraction: number;
}

/** What a plan says that a clip can be held against; what it does not say is left out. */
export interface PlannedShot {
  readonly id: string;
  readonly title: string;
  readonly captureRate_fps?: number;
  readonly playback_fps?: number;
  readonly exposureTime_s?: number;
  readonly fieldWidth_m?: number;
  /** What a pixel of what is delivered shows of the scene. */
  readonly deliveredPixel_m?: number;
  readonly speed_m_per_s?: number;
  /** As delivered. */
  readonly blur_px?: number;
  readonly actionTime_s?: number;
  readonly swing_stops?: number;
  /** Spare above the highlights. */
  readonly highlights_stops?: number;
  readonly lamps: readonly PlannedLamp[];
}

/** What the plan of a shot says. */
export function plannedShot(shoot: Shoot, shot: ShotPlan): PlannedShot {
  const { id, title, settings, clocks, picture, flicker, margins } = shot;
  const lamps = (flicker?.lamps ?? []).filter(({ ripple_Hz, unknown }) => ripple_Hz > 0 && unknown === undefined);
  const swing_stops = flicker?.seen?.worst.peakToPeak_stops;
  return {
    id,
    title,
    ...present({
      captureRate_fps: settings?.captureRate_fps,
      playback_fps: clocks && clocks.playRate.num / clocks.playRate.den,
      exposureTime_s: settings?.exposureTime_s,
      fieldWidth_m: picture?.fieldWidth_m,
      deliveredPixel_m: picture?.deliveredPixel_m,
      speed_m_per_s: explain(shoot, id, 'speed_m_per_s')?.value,
      blur_px: margins.find((margin) => margin.id === 'blur')?.have,
      actionTime_s: clocks?.actionTime_s,
      swing_stops: swing_stops !== undefined && Number.isFinite(swing_stops) ? swing_stops : undefined,
      highlights_stops: margins.find((margin) => margin.id === 'highlights')?.stops?.value,
    }),
    lamps: lamps.map(({ id: lamp, title: name, ripple_Hz, depthFraction, shareFraction }) => ({ id: lamp, title: name, ripple_Hz, depthFraction: depthFraction * shareFraction })),
  };
} // prettier-ignore

/** A lamp whose ripple, or a harmonic of it, would beat as a line does. */
export interface FittingLamp {
  readonly id: string;
  readonly title: string;
  readonly ripple_Hz: number;
  /** 1 for the ripple itself. */
  readonly order: number;
  /** Depth it was planned to have in the frames. */
  readonly plannedDepthFraction: number;
}

const MOST_ORDER = 3;
/** How far a ripple strays from what its lamp is taken to be: the mains by a hertz in a hundred. */
const STRAYS = 0.01;

/** Lamps of a shot that a line may come from, the deepest in the plan first. */
export function fittingLamps(line: FlickerLine, { lamps, exposureTime_s = 0 }: PlannedShot, frameRate_fps: number): readonly FittingLamp[] {
  return lamps
    .flatMap(({ id, title, ripple_Hz, depthFraction }): readonly FittingLamp[] => {
      for (let order = 1; order <= MOST_ORDER; order += 1) {
        const off_Hz = Math.abs(alias_Hz({ ripple_Hz: order * ripple_Hz, frameRate_fps }) - line.beat_Hz);
        // A rate far above the frame rate strays by more than the whole spectrum: it fits anything, and says nothing.
        const reach_Hz = STRAYS * order * ripple_Hz + 4 * line.deviation_Hz;
        if (reach_Hz < frameRate_fps / 8 && off_Hz <= reach_Hz)
          return [{ id, title, ripple_Hz, order, plannedDepthFraction: depthFraction * Math.abs(sinc(ripple_Hz * exposureTime_s)) }];
      }
      return [];
    })
    .sort((a, b) => a.order - b.order || b.plannedDepthFraction - a.plannedDepthFraction);
} // prettier-ignore

export type AgainstWhat = 'flicker' | 'blur' | 'speed' | 'duration' | 'highlights';

/** One figure of the plan and of the clip, both in the unit that ends their names in a reply. */
export interface Against {
  readonly what: AgainstWhat;
  readonly planned: number;
  readonly measured: number;
  readonly unit: 'stops' | 'px' | 'm_per_s' | 's';
  /** as planned, within what measuring and planning can tell; better or worse where one is; else it differs. */
  readonly state: 'as planned' | 'better' | 'worse' | 'differs';
}

/** Share by which a figure may differ and still be as planned. */
const NEAR = 0.25;
/** Swings nearer than this are the same to any eye. */
const SAME_SWING_stops = 0.02;
/** Below this share of clipped pixels nothing is called burnt out. */
export const SOME_CLIPPED = 0.001;

const nearOf = (planned: number, measured: number): Against['state'] => (Math.abs(measured / planned - 1) <= NEAR ? 'as planned' : 'differs'); // prettier-ignore

/** Metres that a pixel of the clip shows at the subject, where the plan says how wide the picture is. */
export function pixelSize_m({ fieldWidth_m }: Pick<PlannedShot, 'fieldWidth_m'>, { width }: Pick<Measurement, 'width'>): number | undefined {
  return fieldWidth_m === undefined ? undefined : fieldWidth_m / width;
} // prettier-ignore

/** Length of the smear of what moves fastest, in pixels of the clip. */
export function smear_px(
  { motion, frameRate_fps }: Measurement,
  exposureTime_s: number | undefined,
): number | undefined {
  return motion === undefined || exposureTime_s === undefined ? undefined : motion.fastest_px * exposureTime_s * frameRate_fps; // prettier-ignore
}

/** What of a clip can be held against its plan. */
export function heldAgainst(clip: Measurement, planned: PlannedShot): readonly Against[] {
  const { flicker, motion, action, exposure, frameRate_fps } = clip;
  const found: Against[] = [];
  const strongest = flicker.lines.find(({ looksLike }) => looksLike !== 'unsure');
  if (planned.swing_stops !== undefined && flicker.verdict !== 'cannot tell') {
    const measured = strongest?.swing_stops ?? 0;
    const off = measured - planned.swing_stops;
    const state = Math.abs(off) <= SAME_SWING_stops ? 'as planned' : off > 0 ? 'worse' : 'better';
    found.push({ what: 'flicker', planned: planned.swing_stops, measured, unit: 'stops', state });
  }
  const smear = smear_px(clip, planned.exposureTime_s);
  const pixel_m = pixelSize_m(planned, clip);
  const { blur_px, deliveredPixel_m } = planned;
  if (
    blur_px !== undefined &&
    blur_px > 0 &&
    smear !== undefined &&
    pixel_m !== undefined &&
    deliveredPixel_m !== undefined
  ) {
    // The plan asks for blur in pixels of what is delivered; the clip may have more, or fewer, than the camera recorded.
    const measured = (smear * pixel_m) / deliveredPixel_m;
    const state = nearOf(blur_px, measured);
    found.push({ what: 'blur', planned: blur_px, measured, unit: 'px', state: state === 'as planned' ? state : measured < blur_px ? 'better' : 'worse' }); // prettier-ignore
  }
  if (planned.speed_m_per_s !== undefined && planned.speed_m_per_s > 0 && pixel_m !== undefined && motion) {
    const measured = motion.fastest_px * pixel_m * frameRate_fps;
    found.push({ what: 'speed', planned: planned.speed_m_per_s, measured, unit: 'm_per_s', state: nearOf(planned.speed_m_per_s, measured) }); // prettier-ignore
  }
  if (planned.actionTime_s !== undefined && planned.actionTime_s > 0 && action?.isBegun && action.isEnded) {
    const measured = (action.end - action.onset + 1) / frameRate_fps;
    found.push({ what: 'duration', planned: planned.actionTime_s, measured, unit: 's', state: nearOf(planned.actionTime_s, measured) }); // prettier-ignore
  }
  if (planned.highlights_stops !== undefined && exposure.brightest > 0) {
    const measured = Math.log2(1 / exposure.brightest);
    const isBurnt = exposure.clippedFraction > SOME_CLIPPED;
    const state = isBurnt && planned.highlights_stops >= 0 ? 'worse' : !isBurnt && planned.highlights_stops < 0 ? 'better' : 'as planned'; // prettier-ignore
    found.push({ what: 'highlights', planned: planned.highlights_stops, measured, unit: 'stops', state });
  }
  return found;
}
