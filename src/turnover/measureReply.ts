/** A measured clip as a reply for programs, with its verdict in sentences. */
import type * as z from 'zod';
import type { Bands } from '../measure/bands.ts';
import type { FixedPattern } from '../measure/fixedPattern.ts';
import { placeOfPart, type ShakePart } from '../measure/shakeParts.ts';
import type { FlickerLine, Measurement } from '../measure/types.ts';
import {
  fittingLamps,
  heldAgainst,
  pixelSize_m,
  smear_px,
  type Against,
  type FittingLamp,
  type PlannedShot,
} from './measureAgainst.ts';
import type { MEASURE_SCHEMA, MeasureReply } from './measureSchema.ts';
import { colourReply } from './colourReply.ts';
import { colourPulseWords, colourWords } from './colourWords.ts';
import { bandsOf, bandWords, faultWords, quietOf, quietWords } from './measureFaultWords.ts';
import * as words from './measureWords.ts';
import { rounded } from './planReply.ts';

type Reply = z.infer<typeof MeasureReply>;
export type ClipReply = Reply['clips'][number];
type LineReply = ClipReply['flicker']['lines'][number];

export interface MeasuredClip {
  /** As it was named. */
  readonly name: string;
  readonly codec: string;
  readonly pixelFormat: string;
  readonly measurement: Measurement;
  readonly frameRateBasis: ClipReply['frameRateBasis'];
  readonly curve: string;
  readonly curveBasis: ClipReply['curveBasis'];
  readonly isWhole: boolean;
  readonly notes: readonly string[];
  readonly shot?: PlannedShot;
}

/** Said of a clip that flashes on the screen. */
export const FLASHING_CAUTION =
  'It flashes on the screen: that can trouble photosensitive people. Have it looked at, by the rules of whoever shows it, before anyone sees it large.';

interface Told {
  readonly line: FlickerLine;
  readonly fits: readonly FittingLamp[];
  readonly screen_Hz: number;
  readonly says: string;
}

function toldLines({ flicker, frameRate_fps, playback_fps }: Measurement, shot: PlannedShot | undefined): readonly Told[] {
  return flicker.lines.map((line) => {
    const fits = shot ? fittingLamps(line, shot, frameRate_fps) : [];
    const screen_Hz = (line.beat_Hz / frameRate_fps) * playback_fps;
    return { line, fits, screen_Hz, says: words.lineWords(line, fits, screen_Hz) };
  });
} // prettier-ignore

function lineReply({ line, fits, screen_Hz, says }: Told): LineReply {
  const { bandsPerFrame, harmonicOf } = line;
  return {
    says,
    beat_Hz: line.beat_Hz,
    deviation_Hz: line.deviation_Hz,
    screen_Hz,
    depthFraction: line.depthFraction,
    depthDeviationFraction: line.depthDeviationFraction,
    swing_stops: line.swing_stops,
    chanceFraction: line.chance,
    looksLike: line.looksLike,
    coherenceFraction: line.coherenceFraction,
    extentFraction: line.extentFraction,
    where: words.placeWords(line),
    ...(bandsPerFrame !== undefined && { bandsPerFrameRatio: bandsPerFrame }),
    candidates: line.candidates.map(({ rate_Hz, mains_Hz }) => ({
      rate_Hz,
      ...(mains_Hz !== undefined && { mains_Hz }),
    })),
    fits: fits.map(({ id, title, ripple_Hz, order, plannedDepthFraction }) => ({
      id,
      title,
      ripple_Hz,
      order,
      plannedDepthFraction,
    })),
    ...(harmonicOf && { harmonicOf: { line: harmonicOf.line, order: harmonicOf.order } }),
    tileDepthFractions: line.tileDepths,
  };
}

/** The sentences, what matters most first. */
function verdictOf(clip: Measurement, told: readonly Told[], speed_m_per_s: number | undefined, smear: number | undefined): readonly string[] {
  const main = told.filter(({ line }) => line.harmonicOf === undefined);
  const bands = bandsOf(clip);
  const isSteady = clip.flicker.verdict === 'steady';
  const isFlashing = main.some(({ line, screen_Hz }) => words.isFlashing(line, screen_Hz));
  return [
    ...(isSteady && bands.length > 0 ? [] : isSteady || main.length === 0 ? [words.flickerWords(clip)] : main.map(({ says }) => says)),
    ...bands.map(bandWords),
    ...(isFlashing ? [FLASHING_CAUTION] : []),
    words.driftWords(clip),
    words.exposureWords(clip),
    colourWords(clip),
    ...colourPulseWords(clip),
    words.focusWords(clip),
    words.motionWords(clip, speed_m_per_s, smear),
    words.actionWords(clip),
    words.signalWords(clip),
    quietWords(clip),
    words.shakeWords(clip),
    words.noiseWords(clip),
    ...faultWords(clip),
  ].filter((says) => says !== undefined);
} // prettier-ignore

const againstReply = (against: Against) => ({ what: against.what, says: words.againstWords(against), planned: against.planned, measured: against.measured, unit: against.unit, state: against.state }); // prettier-ignore

const fixedPatternReply = ({ columnsFraction, rowsFraction }: FixedPattern) => ({ ...(columnsFraction !== undefined && { columnsFraction }), ...(rowsFraction !== undefined && { rowsFraction }) }); // prettier-ignore

const bandReply = (bands: Bands) => ({
  says: bandWords(bands),
  bandsPerFrameRatio: bands.bandsPerFrame,
  depthFraction: bands.depthFraction,
  stepFraction: bands.stepFraction,
  coherenceFraction: bands.coherenceFraction,
  candidates: bands.candidates.map(({ rate_Hz, rowTime_s, mains_Hz }) => ({ rate_Hz, rowTime_s, ...(mains_Hz !== undefined && { mains_Hz }) })),
}); // prettier-ignore

const shakePartReply = ({ centre, isStill, rms_px, rate_Hz, onset }: ShakePart) => ({ where: placeOfPart(centre), isStill, rms_px, ...(rate_Hz !== undefined && { rate_Hz }), ...(onset !== undefined && { onsetIndex: onset }) }); // prettier-ignore

/** One clip in the form of `docs/schema/measure.schema.json`. */
export function clipReply({ measurement, shot, ...clip }: MeasuredClip): ClipReply {
  const { exposure, flicker, colour, focus, motion, action, signal, reach, shake, noise, frameRate_fps, playback_fps } = measurement;
  const told = toldLines(measurement, shot);
  const pixel_m = shot && pixelSize_m(shot, measurement);
  const speed_m_per_s = motion && pixel_m !== undefined ? motion.fastest_px * pixel_m * frameRate_fps : undefined;
  const smear = smear_px(measurement, shot?.exposureTime_s);
  const actionCount = action ? action.end - action.onset + 1 : 0;
  const quiet = quietOf(measurement);
  return rounded({
    clip: clip.name,
    verdict: verdictOf(measurement, told, speed_m_per_s, smear),
    codec: clip.codec,
    pixelFormat: clip.pixelFormat,
    widthCount: measurement.width,
    heightCount: measurement.height,
    frameCount: measurement.frameCount,
    missingFrameIndexes: measurement.missingFrames,
    repeatedFrameIndexes: measurement.repeatedFrames,
    frameRate_fps,
    frameRateBasis: clip.frameRateBasis,
    playback_fps,
    curve: clip.curve,
    curveBasis: clip.curveBasis,
    isWhole: clip.isWhole,
    tileColumnCount: measurement.tileColumns,
    tileRowCount: measurement.tileRows,
    flicker: {
      verdict: flicker.verdict,
      why: flicker.why,
      lines: told.map(lineReply),
      ...(flicker.slowest_Hz !== undefined && { slowest_Hz: flicker.slowest_Hz }),
      blindTo_Hz: flicker.blindTo_Hz,
      ...(flicker.leastDepthFraction !== undefined && { leastDepthFraction: flicker.leastDepthFraction }),
      ...(flicker.leastDepthFrom_Hz !== undefined && { leastDepthFrom_Hz: flicker.leastDepthFrom_Hz }),
      drift_stops: flicker.drift_stops,
    },
    exposure: {
      meanFraction: exposure.mean,
      darkestFraction: exposure.darkest,
      middleFraction: exposure.middle,
      brightestFraction: exposure.brightest,
      clippedFraction: exposure.clippedFraction,
      clippedFrameIndex: exposure.clippedFrame,
      crushedFraction: exposure.crushedFraction,
      crushedFrameIndex: exposure.crushedFrame,
    },
    ...(colour && { colour: colourReply(colour) }),
    focus: {
      verdict: focus.verdict,
      sharpestFrameIndex: focus.sharpestFrame,
      changeRatio: focus.changeRatio,
      reversalCount: focus.reversals,
      tileSharpnessFractions: [...focus.tileSharpness],
    },
    ...(motion && {
      motion: {
        typical_px: motion.typical_px,
        fastest_px: motion.fastest_px,
        direction_deg: motion.direction_deg,
        frameCount: motion.frames,
        ...(speed_m_per_s !== undefined && { speed_m_per_s }),
        ...(smear !== undefined && { smear_px: smear }),
      },
    }),
    ...(action && {
      action: {
        onsetIndex: action.onset,
        peakIndex: action.peak,
        endIndex: action.end,
        inIndex: action.in,
        outIndex: action.out,
        captureTime_s: actionCount / frameRate_fps,
        screenTime_s: actionCount / playback_fps,
        isBegun: action.isBegun,
        isEnded: action.isEnded,
        headFraction: quiet!.head / measurement.frameCount,
        tailFraction: quiet!.tail / measurement.frameCount,
        confidence: action.confidence,
      },
    }),
    ...(signal && {
      signal: {
        frameIndex: signal.frame,
        ...(signal.lastFrame !== undefined && { lastFrameIndex: signal.lastFrame }),
        ...(signal.movement !== undefined && { movementIndex: signal.movement }),
        tileIndex: signal.tile,
        rise_stops: signal.rise_stops,
        litFraction: signal.litFraction,
      },
    }),
    ...(reach && { reach: { left_px: reach.left_px, top_px: reach.top_px, right_px: reach.right_px, bottom_px: reach.bottom_px } }),
    shake: {
      verdict: shake.verdict,
      why: shake.why,
      rms_px: shake.rms_px,
      drift_px: shake.drift_px,
      ...(shake.rate_Hz !== undefined && { rate_Hz: shake.rate_Hz }),
      ...(shake.onset !== undefined && { onsetIndex: shake.onset }),
      ...(shake.whose !== undefined && { whose: shake.whose }),
      ...(shake.parts && { parts: shake.parts.map(shakePartReply) }),
    },
    ...(noise && { noise: { deviationFraction: noise.deviationFraction, levels: noise.levels.map(({ light, deviation }) => ({ lightFraction: light, deviationFraction: deviation })) } }),
    fixedPixels: measurement.fixedPixels.map(({ x, y, kind }) => ({ x, y, kind })),
    ...(measurement.dust && { dust: measurement.dust.map(({ x, y, size_px, depthFraction }) => ({ x, y, size_px, depthFraction })) }),
    ...(measurement.fixedPattern && { fixedPattern: fixedPatternReply(measurement.fixedPattern) }),
    ...(measurement.bands && { bands: measurement.bands.map(bandReply) }),
    ...(measurement.swappedFrames && { swappedFrameIndexes: measurement.swappedFrames }),
    ...(shot && { shot: { id: shot.id, title: shot.title } }),
    against: shot ? heldAgainst(measurement, shot).map(againstReply) : [],
    notes: clip.notes,
  });
} // prettier-ignore

/** The whole reply, with the pair that its clips were compared as, where they were. */
export function measureReply(clips: readonly ClipReply[], failed: Reply['failed'], pair?: Reply['pair']): Reply {
  const schema: typeof MEASURE_SCHEMA = 'longsecond.measure/1';
  return { schema, clips, failed, ...(pair && { pair }) };
}
