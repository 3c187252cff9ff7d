/** One clip from its file to its measurement: a first look at a few stretches, then every frame, from where it was stopped. */
import { Fault } from '../base/fault.ts';
import { ratioOf } from '../base/rational.ts';
import type { ColourOptions } from '../measure/colour/meter.ts';
import { createMeasurer, type Measurer, type MeasurerOptions } from '../measure/measurer.ts';
import type { MeasurerState } from '../measure/measurerState.ts';
import type { Coding, TransferCurve } from '../measure/transfer.ts';
import type { Measurement } from '../measure/types.ts';
import { openClipFile } from '../media/clipFile.ts';
import type { ColourTaken } from '../media/colourTaken.ts';
import { decodeFrames, type DecodedFrame, type Stretch } from '../media/decode.ts';
import type { Mark } from '../media/mark.ts';
import { probeClip, type Clip } from '../media/probe.ts';
import { framesSaid, mostTelling, stretchesOf } from './firstLook.ts';

/** What a clip is measured by. */
export interface MeasureOptions {
  readonly name: string;
  /** On the set; that of the file where nobody says. */
  readonly captureRate_fps?: number;
  readonly playback_fps?: number;
  readonly curve?: TransferCurve;
  /** Code value of black, where it is not that of its levels. */
  readonly blackCode?: number;
  /** Whether only a few stretches are looked at. */
  readonly isFirstLook: boolean;
}

/** A measuring that was stopped: typed arrays and plain values. */
export interface MeasureSaved {
  /** As JSON: the file and how it was measured. */
  readonly basis: string;
  readonly mark: Mark;
  readonly state: MeasurerState;
}

export interface MeasureGiven extends MeasureOptions {
  readonly signal?: AbortSignal;
  /** Told what a first look says so far after each stretch, before all frames are read. */
  readonly onFirstLook?: (look: ClipMeasured) => void;
  /** Told of frames as they go by, and how many there may be. */
  readonly onProgress?: (done: number, total: number | undefined) => void;
  /** Where it was stopped before; then there is no first look. */
  readonly saved?: MeasureSaved;
  /** Told now and then what can be gone on from, and when the signal ends it. It is what is written to: put it away before returning. */
  readonly onCheckpoint?: (done: number, saved: MeasureSaved) => void;
  /** Time between two of them at least; more while putting one away would take long. */
  readonly checkpointAfter_ms?: number;
}

export interface ClipMeasured {
  readonly clip: Clip;
  readonly measurement: Measurement;
  readonly captureRate_fps: number;
  readonly isWhole: boolean;
  readonly notes: readonly string[];
}

/** Played at this rate where neither clip nor shot says. */
const USUAL_PLAYBACK_fps = 24;
const CHECKPOINT_ms = 5000;
/** What is put away grows with the clip: so much of it for each millisecond since the last. */
const PUT_AWAY_B_per_ms = 2000;
/** With no frame coming for so long after somebody asked for a stop, it is not waited for. */
const GRACE_ms = 1000;

/** The coding of a clip with another black. Throws a Fault for one that is above its white. */
function codingFor({ coding, file }: Clip, blackCode = coding.blackCode): Coding {
  if (blackCode < coding.whiteCode) return { ...coding, blackCode };
  throw new Fault({
    code: 'measure.bad-black',
    what: `Black at ${blackCode} lies above white, which is ${coding.whiteCode} in ${coding.bitDepth} bits`,
    where: file.name,
    mend: 'Give black as a code value of the clip, such as 64.',
  });
}

function colourOptionsOf({ width, height, form, primaries, own }: ColourTaken, coding: Coding, curve: TransferCurve): ColourOptions {
  return { width, height, form, primaries, coding: own?.coding ?? coding, curve: own?.curve ?? curve };
} // prettier-ignore

/** Of a short clip every frame is sampled for colour, which tells colours that pulse apart; of others some. */
const SHORT_FRAMES = 600;
const SAMPLED_EVERY = 8;
const colourEveryOf = (clip: Clip): number => ((framesSaid(clip) ?? Infinity) <= SHORT_FRAMES ? 1 : SAMPLED_EVERY);

function optionsOf({ captureRate_fps, playback_fps, curve, blackCode }: MeasureOptions, clip: Clip): MeasurerOptions {
  const file_fps = clip.fileRate && ratioOf(clip.fileRate);
  const played_fps = playback_fps ?? file_fps ?? USUAL_PLAYBACK_fps;
  return {
    width: clip.width,
    height: clip.height,
    coding: codingFor(clip, blackCode),
    // Light in floating point comes in by its root, whatever it was written with.
    curve: clip.plane.isFloat ? clip.curve.curve : (curve ?? clip.curve.curve),
    frameRate_fps: captureRate_fps ?? file_fps ?? played_fps,
    playback_fps: played_fps,
    ...(clip.colour && { colour: colourOptionsOf(clip.colour, codingFor(clip, blackCode), curve ?? clip.curve.curve) }),
  };
}

interface Stretching {
  readonly clip: Clip;
  readonly options: MeasurerOptions;
  readonly signal: AbortSignal | undefined;
  readonly onNote: (note: string) => void;
}

const rowsFor = ({ rowsRead }: Measurer) => (rowsRead ? { rowsRead } : {});

function add(measurer: Measurer, { plane, place, colour, whole }: DecodedFrame): void {
  if (whole) measurer.addWhole(whole);
  measurer.addFrame(plane, place);
  if (colour) measurer.addColour(colour);
}

async function measureStretch({ clip, options, signal, onNote }: Stretching, stretch: Stretch): Promise<Measurement> {
  const measurer = createMeasurer(options);
  for await (const frame of decodeFrames({ clip, stretch, colourEvery: SAMPLED_EVERY, ...rowsFor(measurer), ...(signal && { signal }), onNote })) add(measurer, frame); // prettier-ignore
  return measurer.finish();
}

/** Looks at a few stretches, and tells after each what shows most so far. Undefined for a clip that is short. */
async function lookAt(stretching: Stretching, tell: (measurement: Measurement, notes: readonly string[]) => void): Promise<void> {
  const looks: Measurement[] = [];
  const notes = new Set<string>();
  for (const stretch of stretchesOf(stretching.clip)) {
    looks.push(await measureStretch({ ...stretching, onNote: (note) => notes.add(note) }, stretch));
    tell(mostTelling(looks), [...notes]);
  }
} // prettier-ignore

/** Goes off a while after another, and never where there is none. */
function softened(signal: AbortSignal | undefined): { readonly signal: AbortSignal; readonly end: () => void } {
  const late = new AbortController();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const begin = (): void => {
    timer = setTimeout(() => late.abort(signal?.reason), GRACE_ms);
  };
  if (signal?.aborted) begin();
  signal?.addEventListener('abort', begin);
  return {
    signal: late.signal,
    end: () => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', begin);
    },
  };
}

const sizeOf_B = ({ rows }: MeasurerState): number =>
  Object.values(rows).reduce((sum, { byteLength }) => sum + byteLength, 0);

/** Tells what can be gone on from when it is time, and in any case when asked to stop. */
function checkpoints({ onCheckpoint, checkpointAfter_ms = CHECKPOINT_ms, signal }: MeasureGiven, basis: string) {
  let last_ms = performance.now();
  return (measurer: Measurer, frame: DecodedFrame): void => {
    if (!onCheckpoint) return;
    const since_ms = performance.now() - last_ms;
    if (!signal?.aborted && since_ms < checkpointAfter_ms) return;
    const state = measurer.save();
    if (!signal?.aborted && since_ms < sizeOf_B(state) / PUT_AWAY_B_per_ms) return;
    const mark = frame.mark();
    onCheckpoint(mark.count, { basis, mark, state });
    last_ms = performance.now();
  };
}

const basisOf = ({ file }: Clip, options: MeasurerOptions): string =>
  JSON.stringify([file.path, file.kind === 'movie' ? [file.size_B, file.modified_ms] : [], options]);

/** A clip that is not as it was, or was measured in another way, cannot be gone on with. */
const isOther = (error: unknown): boolean =>
  error instanceof Fault && (error.code === 'measure.other-state' || error.code === 'media.not-as-before');

const BEGUN_ANEW = 'Measuring was stopped, and could not be gone on with: it was begun anew.';

async function measureWhole(given: MeasureGiven, { clip, options, signal, onNote }: Stretching, saved: MeasureSaved | undefined): Promise<Measurement> {
  const basis = basisOf(clip, options);
  const measurer = createMeasurer(options, saved?.state);
  const checkpoint = checkpoints(given, basis);
  const total = framesSaid(clip);
  // A reading that is cut off leaves no frame to go on from, so that it may come to the end of one.
  const soft = given.onCheckpoint ? softened(signal) : undefined;
  const of = soft?.signal ?? signal;
  let done = saved?.mark.count ?? 0;
  try {
    for await (const frame of decodeFrames({ clip, colourEvery: colourEveryOf(clip), ...rowsFor(measurer), ...(saved && { after: saved.mark }), ...(of && { signal: of }), onNote })) {
      add(measurer, frame);
      done += 1;
      checkpoint(measurer, frame);
      signal?.throwIfAborted();
      given.onProgress?.(done, total);
    }
  } finally {
    soft?.end();
  }
  signal?.throwIfAborted();
  return measurer.finish();
} // prettier-ignore

/** Measures a clip. Throws a Fault for one that cannot be read, and what the signal says. */
export async function measureClip(given: MeasureGiven): Promise<ClipMeasured> {
  const { signal, saved, isFirstLook, onFirstLook } = given;
  const clip = await probeClip(await openClipFile(given.name), signal);
  const options = optionsOf(given, clip);
  const captureRate_fps = options.frameRate_fps;
  let notes: string[] = [];
  const stretching: Stretching = { clip, options, signal, onNote: (note) => notes.push(note) };
  if (!saved && (isFirstLook || onFirstLook)) {
    let look: ClipMeasured | undefined;
    await lookAt(stretching, (measurement, heard) => {
      look = { clip, measurement, captureRate_fps, isWhole: false, notes: [...clip.notes, ...heard] };
      onFirstLook?.(look);
    });
    if (isFirstLook && look) return look;
  }
  const known = saved?.basis === basisOf(clip, options) ? saved : undefined;
  const isAnew = saved !== undefined && !known;
  let measurement: Measurement | undefined;
  if (known)
    measurement = await measureWhole(given, stretching, known).catch((error: unknown) => {
      if (isOther(error)) return undefined;
      throw error;
    });
  if (!measurement) {
    notes = known || isAnew ? [BEGUN_ANEW] : [];
    measurement = await measureWhole(given, stretching, undefined);
  }
  return { clip, measurement, captureRate_fps, isWhole: true, notes: [...clip.notes, ...notes] };
}
