/** What measuring a clip came to, in brief: held against the plan as it now is, and whether it should be done again. */
import { sayShown, showQuantity } from '../base/quantity.ts';
import type { ClipBrief, ClipRecord } from '../record/footage.ts';
import type { KeptMeasurement } from '../store/footageTypes.ts';
import { readKept } from '../turnover/keptMeasurement.ts';
import type { PlannedShot } from '../turnover/measureAgainst.ts';
import { clipReply } from '../turnover/measureReply.ts';
import { isSameMark } from './clipMark.ts';
import type { FileMark, MeasureBasis } from './types.ts';

type Told = Pick<ClipRecord, 'captureRate_fps' | 'curve' | 'blackCode'>;

/** What a clip is measured by as things are: what was told of it first, then what its shot is planned with. */
export function basisOf(file: FileMark, { captureRate_fps, curve, blackCode }: Told, shot: PlannedShot | undefined): MeasureBasis {
  const rate_fps = captureRate_fps ?? shot?.captureRate_fps;
  return {
    file,
    ...(rate_fps !== undefined && { captureRate_fps: rate_fps }),
    rateFrom: captureRate_fps !== undefined ? 'given' : rate_fps !== undefined ? 'plan' : 'file',
    ...(shot?.playback_fps !== undefined && { playback_fps: shot.playback_fps }),
    ...(curve !== undefined && { curve }),
    ...(blackCode !== undefined && { blackCode }),
  };
} // prettier-ignore

/** Rates that were reckoned in two ways differ in their last digits. */
const isSameRate = (a: number | undefined, b: number | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && Math.abs(a / b - 1) < 1e-9);

const rate = (value: number | undefined): string =>
  value === undefined ? 'the rate of its file' : sayShown(showQuantity('rate', value));

const RATE_NOW: Readonly<Record<MeasureBasis['rateFrom'], (now: string) => string>> = {
  given: (now) => `you say ${now}`,
  plan: (now) => `its shot is planned at ${now}`,
  file: () => 'nobody says any more at what rate it was taken',
};

/** Why a measurement should be made again; undefined where all that it was made by still holds. */
export function staleness(then: MeasureBasis, now: MeasureBasis): string | undefined {
  if (!isSameMark(then.file, now.file)) return 'Its file was written to after it was measured.';
  if (!isSameRate(then.captureRate_fps, now.captureRate_fps))
    return `It was measured at ${rate(then.captureRate_fps)}, and ${RATE_NOW[now.rateFrom](rate(now.captureRate_fps))}.`;
  if (!isSameRate(then.playback_fps, now.playback_fps))
    return `It was measured as shown at ${rate(then.playback_fps)}, and is now shown at ${rate(now.playback_fps)}.`;
  if (then.curve !== now.curve) return 'Another curve was told since.';
  if (then.blackCode !== now.blackCode) return 'Another code value of black was told since.';
  return undefined;
}

/** A measurement in brief, apart from whether it still holds. Throws Fault `measure.kept-form`. */
export function briefOf({ at, isWhole, body }: KeptMeasurement, shot: PlannedShot | undefined): ClipBrief {
  const reply = clipReply({ ...readKept(body), ...(shot && { shot }) });
  const { action } = reply;
  return {
    measuredAt: at,
    isWhole,
    width: reply.widthCount,
    height: reply.heightCount,
    frameCount: reply.frameCount,
    frameRate_fps: reply.frameRate_fps,
    frameRateBasis: reply.frameRateBasis,
    playback_fps: reply.playback_fps,
    flicker: reply.flicker.verdict,
    verdict: reply.verdict,
    against: reply.against.map(({ what, says, state }) => ({ what, says, state })),
    ...(action && {
      action: {
        onset: action.onsetIndex,
        peak: action.peakIndex,
        end: action.endIndex,
        inFrame: action.inIndex,
        outFrame: action.outIndex,
      },
    }),
  };
}
