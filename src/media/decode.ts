/** The frames of a clip one by one, as the code values that it holds. */
import { Fault } from '../base/fault.ts';
import { ratioOf } from '../base/rational.ts';
import type { Plane } from '../measure/frameReader.ts';
import { hasChanged, inputArgs, type Run } from './clipFile.ts';
import { createFrameCutter, createPlaces, createTelling } from './frames.ts';
import { codesOfFloats } from './pixels.ts';
import type { Clip } from './probe.ts';
import { stalled, startTool } from './tools.ts';

export interface DecodedFrame {
  /** Valid until the next frame is asked for: its room is used again. */
  readonly plane: Plane;
  /** Its place among all frames, missing ones counted. */
  readonly place: number;
}

/** A stretch of a clip. */
export interface Stretch {
  readonly firstFrame: number;
  readonly frameCount: number;
}

export interface DecodeGiven {
  readonly clip: Clip;
  /** Only these frames. */
  readonly stretch?: Stretch;
  readonly signal?: AbortSignal;
  /** Told at the end: what was wrong with the clip, in a sentence each. */
  readonly onNote?: (note: string) => void;
  readonly timeout_ms?: number;
  readonly env?: NodeJS.ProcessEnv;
}

/** With nothing coming for so long, the disk or the clip has failed. */
const STALL_ms = 60_000;

/** The stretches of pictures of a sequence that a stretch of the clip takes in; places are by number, gaps counted. */
function runsWithin(runs: readonly Run[], stretch: Stretch | undefined): readonly Run[] {
  if (!stretch) return runs;
  const from = runs[0]!.first + stretch.firstFrame;
  const to = from + stretch.frameCount;
  return runs.flatMap(({ first, count }): readonly Run[] => {
    const [begin, end] = [Math.max(first, from), Math.min(first + count, to)];
    return end > begin ? [{ first: begin, count: end - begin }] : [];
  });
}

function argsOf(clip: Clip, run: Run | undefined, stretch: Stretch | undefined): readonly string[] {
  const { filter, pixelFormat } = clip.plane;
  const seek = stretch && clip.fileRate && stretch.firstFrame > 0 ? ['-ss', ((stretch.firstFrame - 0.25) / ratioOf(clip.fileRate)).toFixed(9)] : []; // prettier-ignore
  const most = run ? ['-frames:v', String(run.count)] : stretch ? ['-frames:v', String(stretch.frameCount)] : [];
  return ['-hide_banner', '-nostdin', '-nostats', '-v', 'info', '-noautorotate', ...seek, ...inputArgs(clip.file, run), '-map', '0:V:0', ...most, '-vf', `showinfo=checksum=0,${filter}`, '-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', pixelFormat, 'pipe:1']; // prettier-ignore
}

function changedSize(where: string, frame: number, told: string, was: string): Fault {
  return new Fault({
    code: 'media.size-changes',
    what: `The picture is ${told} from frame ${frame} on, ${was} before`,
    where,
    mend: 'Cut it there and measure the parts one by one.',
  });
}

interface Reading {
  readonly given: DecodeGiven;
  readonly run: Run | undefined;
  /** Places of this run begin here. */
  readonly firstPlace: number;
  readonly notes: Set<string>;
}

/** Calls for a stop once nothing has been seen for too long. */
function watch(timeout_ms: number, stop: () => void): { readonly see: () => void; readonly hasStalled: () => boolean; readonly end: () => void } {
  let isSeen = true;
  let isStalled = false;
  const timer = setInterval(() => {
    if (!isSeen) {
      isStalled = true;
      stop();
    }
    isSeen = false;
  }, timeout_ms);
  return { see: () => (isSeen = true), hasStalled: () => isStalled, end: () => clearInterval(timer) };
} // prettier-ignore

/** What views the bytes of a frame as code values. */
function viewOf(buffer: ArrayBuffer, { plane, width, height }: Clip): () => Plane {
  if (plane.isFloat) {
    const light = new Float32Array(buffer);
    const data = new Uint16Array(light.length);
    return () => {
      codesOfFloats(light, data);
      return { data, width, height };
    };
  }
  const data = plane.bitDepth > 8 ? new Uint16Array(buffer) : new Uint8Array(buffer);
  return () => ({ data, width, height });
}

/** The frames of one process of ffmpeg. */
async function* framesOfRun({ given, run, firstPlace, notes }: Reading): AsyncGenerator<DecodedFrame> {
  const { clip, stretch, signal, timeout_ms = STALL_ms, env } = given;
  const { width, height, plane, fileRate, tick_s } = clip;
  const where = clip.file.name;
  const perPixel_B = plane.isFloat ? 4 : plane.bitDepth > 8 ? 2 : 1;
  const cutter = createFrameCutter(width * height * perPixel_B);
  const view = viewOf(cutter.buffer, clip);
  const telling = createTelling();
  const isTimed = !run && fileRate !== undefined && tick_s > 0;
  const places = createPlaces({ ticksPerFrame: isTimed ? 1 / (ratioOf(fileRate) * tick_s) : undefined });
  const { child, ended } = startTool('ffmpeg', argsOf(clip, run, stretch), env);
  const stop = (): boolean => child.kill('SIGKILL');
  const watched = watch(timeout_ms, stop);
  signal?.addEventListener('abort', stop);
  child.stderr!.setEncoding('utf8').on('data', telling.hear);
  let count = 0;
  try {
    for await (const chunk of child.stdout! as AsyncIterable<Buffer>) {
      watched.see();
      for (let at = 0; at < chunk.length;) {
        const { to, isWhole } = cutter.take(chunk, at);
        at = to;
        if (!isWhole) continue;
        // What is told of a frame was written before its bytes, but may be read after them.
        let told = telling.frame(count);
        for (let turn = 0; !told && turn < 50; turn += 1) {
          await new Promise((resolve) => (turn < 10 ? setImmediate(resolve) : setTimeout(resolve, 2)));
          told = telling.frame(count);
        }
        if (told && (told.width !== width || told.height !== height))
          throw changedSize(where, firstPlace + count, `${told.width} × ${told.height}`, `${width} × ${height}`);
        signal?.throwIfAborted();
        yield { plane: view(), place: firstPlace + places.next(told?.pts) };
        // However long that took, it was not ffmpeg that did.
        watched.see();
        count += 1;
      }
    }
    const code = await ended;
    signal?.throwIfAborted();
    if (watched.hasStalled()) throw stalled(where, timeout_ms);
    const complaints = telling.complaints();
    if (count === 0 && !stretch) throw noFrames(where, complaints.first);
    if (complaints.count > 0 || (code !== 0 && code !== undefined))
      notes.add(`ffmpeg complained while reading it: ${complaints.first === '' ? 'it ended early' : complaints.first}${complaints.count > 1 ? `, and ${complaints.count - 1} times more` : ''}.`); // prettier-ignore
    if (cutter.left_B() > 0) notes.add('It breaks off within a frame.');
    if (places.isVariable()) notes.add('Its frames come at varying times: places are counted, not timed.');
    if (!stretch && !run && clip.statedFrames !== undefined && count < clip.statedFrames) notes.add(`It says that it has ${clip.statedFrames} frames, and ${count} could be read: it was cut short, or its copy was.`); // prettier-ignore
  } finally {
    watched.end();
    signal?.removeEventListener('abort', stop);
    stop();
    child.stdout!.destroy();
    child.stderr!.destroy();
    await ended.catch(() => undefined);
  }
}

function noFrames(where: string, complaint: string): Fault {
  if (/unrecognized option|option not found/i.test(complaint))
    return new Fault({
      code: 'media.old-ffmpeg',
      what: `This ffmpeg is too old (${complaint})`,
      where,
      mend: 'Install ffmpeg 5.1 or newer.',
    });
  return new Fault({
    code: 'media.no-frames',
    what: `Not one frame of it can be read${complaint === '' ? '' : ` (${complaint})`}`,
    where,
    mend: 'Copy it again from the camera, or save it as ProRes, DNxHR, TIFF or EXR.',
  });
}

/**
 * The frames of a clip in order. Leaving the loop, or the signal, ends ffmpeg at once. Throws a Fault for a picture that
 * changes its size, for a clip of no frames and for one that stalls, and what the signal says.
 */
export async function* decodeFrames(given: DecodeGiven): AsyncGenerator<DecodedFrame> {
  const { clip, stretch, signal, onNote } = given;
  signal?.throwIfAborted();
  const notes = new Set<string>();
  if (clip.file.kind === 'sequence') {
    const [{ first }] = clip.file.runs as readonly [Run, ...Run[]];
    const begin = first + (stretch?.firstFrame ?? 0);
    for (const run of runsWithin(clip.file.runs, stretch)) yield* framesOfRun({ given, run, firstPlace: run.first - begin, notes }); // prettier-ignore
  } else {
    yield* framesOfRun({ given, run: undefined, firstPlace: 0, notes });
  }
  if (await hasChanged(clip.file)) notes.add('It was written to while it was read: measure it again when it is whole.');
  for (const note of notes) onNote?.(note);
}
