/** Flicker of a shot at the settings found for it: its margin in its place among the others, and what plans tell of it. */
import { showNumber } from '../base/quantity.ts';
import { rollingBandsOf } from '../laws/flicker/rolling.ts';
import { flickerFound, shotFlickerOf, type FlickerAt, type FlickerFound } from './flicker.ts';
import { flickerMargin, SWING_ALLOWED } from './flickerMargin.ts';
import { missingOf } from './limits.ts';
import type { Prepared, Worked } from './prepared.ts';
import { LIMITS, type Margin, type Settings, type ShotFlicker } from './types.ts';

/** What of a shot decides how its frames meet the light. */
const ASKED = ['captureRate_fps', 'exposureTime_s', 'playRate_fps', 'recordedTime_s'] as const;

export interface FlickerWorked {
  readonly found: FlickerFound;
  readonly at: FlickerAt | undefined;
}

const kept = new WeakMap<Worked, FlickerWorked>();

/** How frames are taken and shown, once rate, shutter, length and playback are known. */
function atOf({ model }: Prepared, { values, givens }: Worked): FlickerAt | undefined {
  const [rate, exposureTime_s, play, recorded] = ASKED.map((name) => {
    const slot = model.slotOf.get(name);
    return (slot === undefined ? givens.get(name)?.value : values[slot]) ?? NaN;
  }) as [number, number, number, number];
  if (!(rate > 0 && exposureTime_s > 0 && play > 0 && recorded > 0)) return undefined;
  if (![rate, exposureTime_s, play, recorded].every(Number.isFinite)) return undefined;
  const frameCount = Math.max(1, Math.round(recorded * rate));
  return { frameRate_fps: rate, exposureTime_s, playback_fps: play, frameCount };
}

/** The flicker of a shot as worked; undefined where its set-up has no lamps. */
export function flickerWorked(prepared: Prepared, worked: Worked): FlickerWorked | undefined {
  const known = kept.get(worked);
  if (known) return known;
  const at = atOf(prepared, worked);
  const found = flickerFound(prepared.shoot, prepared.effective, at);
  if (!found) return undefined;
  const of = { found, at };
  kept.set(worked, of);
  return of;
}

const placeOf = ({ id }: Margin): number => LIMITS.indexOf(id);

/** Margins with that of flicker among them, in the order limits are read. */
export function withFlicker(prepared: Prepared, worked: Worked, margins: readonly Margin[]): readonly Margin[] {
  const of = flickerWorked(prepared, worked);
  if (!of) return margins;
  const { model } = prepared;
  const lacks = of.at ? [] : ASKED.flatMap((name) => missingOf(model, worked.values, worked.givens, name));
  const margin = flickerMargin({ ...of, allowed: worked.givens.get(SWING_ALLOWED)!, lacks: distinct(lacks) });
  const after = margins.findIndex((other) => placeOf(other) > placeOf(margin));
  return after < 0 ? [...margins, margin] : margins.toSpliced(after, 0, margin);
}

const distinct = <T extends { readonly name: string }>(all: readonly T[]): readonly T[] => [...new Map(all.map((one) => [one.name, one])).values()]; // prettier-ignore

/** What a plan tells of it. */
export function flickerTold(prepared: Prepared, worked: Worked): { readonly flicker?: ShotFlicker } {
  const of = flickerWorked(prepared, worked);
  return of ? { flicker: shotFlickerOf(of.found, of.at) } : {};
}

/** Bands of a camera that exposes its rows one after another. */
export function flickerNotes(prepared: Prepared, worked: Worked, settings: Settings | undefined): readonly string[] {
  const of = flickerWorked(prepared, worked);
  const camera = settings && prepared.shoot.kit.cameras[settings.camera];
  const [tone] = of?.found.seen?.tones ?? [];
  if (camera?.readout !== 'rolling' || !of?.at || !tone || !(tone.amplitudeFraction > SEEN_BAND)) return [];
  const depth = `${showNumber(200 * tone.amplitudeFraction, 2)} % of the light from bright to dark`;
  if (camera.rowTime_s === undefined) return [`This camera exposes its rows one after another, so that the lamps draw bands across each frame, ${depth}; rowTime in its kit says how many.`]; // prettier-ignore
  const { bandsPerFrame, rowsPerBand, rowsPerFrame } = rollingBandsOf({ ripple_Hz: tone.lamp_Hz, rowTime_s: camera.rowTime_s, rowCount: settings!.heightCount, frameRate_fps: of.at.frameRate_fps }); // prettier-ignore
  const moves = Math.abs(rowsPerFrame) < 0.5 ? 'they stand still' : `they move ${showNumber(Math.abs(rowsPerFrame), 2)} rows ${rowsPerFrame > 0 ? 'down' : 'up'} each frame`; // prettier-ignore
  return [`This camera exposes its rows one after another: the lamps draw ${showNumber(bandsPerFrame, 2)} bands across each frame, ${showNumber(rowsPerBand, 2)} rows each and ${depth}; ${moves}.`]; // prettier-ignore
}

/** Amplitude of bands, over the mean, below which none is seen: 0.01 stop from bright to dark. */
const SEEN_BAND = 0.0035;
