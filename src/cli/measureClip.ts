/** One clip from its file to its measurement: a first look at a few stretches, then every frame. */
import { Fault } from '../base/fault.ts';
import { ratioOf } from '../base/rational.ts';
import { createMeasurer } from '../measure/measurer.ts';
import type { Coding, TransferCurve } from '../measure/transfer.ts';
import type { Measurement } from '../measure/types.ts';
import { openClipFile } from '../media/clipFile.ts';
import { decodeFrames, type Stretch } from '../media/decode.ts';
import { probeClip, type Clip } from '../media/probe.ts';

export interface MeasureGiven {
  readonly name: string;
  /** On the set; that of the file where nobody says. */
  readonly captureRate_fps?: number;
  readonly playback_fps?: number;
  readonly curve?: TransferCurve;
  /** Code value of black, where it is not that of its levels. */
  readonly blackCode?: number;
  /** Whether only a few stretches are looked at. */
  readonly isFirstLook: boolean;
  readonly signal?: AbortSignal;
  /** Told what a first look says, before all frames are read. */
  readonly onFirstLook?: (clip: Clip, measurement: Measurement) => void;
  /** Told of frames as they go by, and how many there may be. */
  readonly onProgress?: (done: number, total: number | undefined) => void;
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
/** Frames of one stretch of a first look, enough for a beat of the mains at most rates, and how many stretches. */
const STRETCH_FRAMES = 120;
const STRETCHES = 3;

interface Rates {
  readonly captureRate_fps: number;
  readonly playback_fps: number;
}

function ratesOf({ captureRate_fps, playback_fps }: MeasureGiven, { fileRate }: Clip): Rates {
  const file_fps = fileRate && ratioOf(fileRate);
  const played_fps = playback_fps ?? file_fps ?? USUAL_PLAYBACK_fps;
  return { captureRate_fps: captureRate_fps ?? file_fps ?? played_fps, playback_fps: played_fps };
}

/** The coding of a clip with another black. Throws a Fault for one that is above its white. */
function codingFor({ coding, file }: Clip, blackCode = coding.blackCode): Coding {
  if (blackCode < coding.whiteCode) return { ...coding, blackCode };
  throw new Fault({
    code: 'measure.bad-black',
    what: `Black at ${blackCode} lies above white, which is ${coding.whiteCode} in ${coding.bitDepth} bits`,
    where: file.name,
    mend: 'Give --black as a code value of the clip, such as 64.',
  });
}

/** How many frames a clip has, as far as it says: counted, or by how long it lasts. */
function framesSaid({ statedFrames, duration_s, fileRate }: Clip): number | undefined {
  if (statedFrames !== undefined) return statedFrames;
  return duration_s !== undefined && fileRate ? Math.round(duration_s * ratioOf(fileRate)) : undefined;
}

async function measureStretch(clip: Clip, given: MeasureGiven, stretch: Stretch | undefined, notes: string[]): Promise<Measurement> {
  const { captureRate_fps, playback_fps } = ratesOf(given, clip);
  const measurer = createMeasurer({
    width: clip.width,
    height: clip.height,
    coding: codingFor(clip, given.blackCode),
    // Light in floating point comes in by its root, whatever it was written with.
    curve: clip.plane.isFloat ? clip.curve.curve : (given.curve ?? clip.curve.curve),
    frameRate_fps: captureRate_fps,
    playback_fps,
  });
  const total = framesSaid(clip);
  let done = 0;
  const frames = decodeFrames({ clip, ...(stretch && { stretch }), ...(given.signal && { signal: given.signal }), onNote: (note) => notes.push(note) });
  for await (const { plane, place } of frames) {
    measurer.addFrame(plane, place);
    done += 1;
    if (!stretch) given.onProgress?.(done, total);
  }
  return measurer.finish();
} // prettier-ignore

/** Stretches spread over a clip; none where it is hardly longer than they are. */
function stretchesOf(clip: Clip): readonly Stretch[] {
  const frames = framesSaid(clip) ?? 0;
  if (frames < 2 * STRETCHES * STRETCH_FRAMES) return [];
  return Array.from({ length: STRETCHES }, (_, i) => ({
    firstFrame: Math.floor(((frames - STRETCH_FRAMES) * i) / (STRETCHES - 1)),
    frameCount: STRETCH_FRAMES,
  }));
}

/** Of several stretches, the one that shows most: the deepest flicker, else most movement. */
function mostTelling(looks: readonly Measurement[]): Measurement {
  const depth = ({ flicker }: Measurement) => flicker.lines.find(({ looksLike }) => looksLike !== 'unsure')?.depthFraction ?? 0; // prettier-ignore
  const lively = ({ frames }: Measurement) => frames.activity.reduce((sum, value) => sum + value, 0);
  return [...looks].sort((a, b) => depth(b) - depth(a) || lively(b) - lively(a))[0]!;
}

/** Measures a clip. Throws a Fault for one that cannot be read, and what the signal says. */
export async function measureClip(given: MeasureGiven): Promise<ClipMeasured> {
  const clip = await probeClip(await openClipFile(given.name), given.signal);
  const notes: string[] = [];
  const stretches = given.isFirstLook || given.onFirstLook ? stretchesOf(clip) : [];
  const { captureRate_fps } = ratesOf(given, clip);
  if (stretches.length > 0) {
    const looks: Measurement[] = [];
    const unheard: string[] = [];
    for (const stretch of stretches) looks.push(await measureStretch(clip, given, stretch, unheard));
    const measurement = mostTelling(looks);
    if (given.isFirstLook) return { clip, measurement, captureRate_fps, isWhole: false, notes: [...clip.notes, ...new Set(unheard)] }; // prettier-ignore
    given.onFirstLook?.(clip, measurement);
  }
  const measurement = await measureStretch(clip, given, undefined, notes);
  return { clip, measurement, captureRate_fps, isWhole: true, notes: [...clip.notes, ...notes] };
}
