/** The frames of a clip one by one, as the code values that it holds. */
import type { Readable } from 'node:stream';
import { Fault } from '../base/fault.ts';
import { ratioOf } from '../base/rational.ts';
import type { Plane } from '../measure/frameReader.ts';
import type { ColourSample } from '../measure/colour/meter.ts';
import type { RowsRead } from '../measure/rowsRead.ts';
import { createAside } from './aside.ts';
import { hasChanged, type Run } from './clipFile.ts';
import { createColourSamples } from './colourSamples.ts';
import { decodeArgs, runsWithin, type Stretch } from './decodeArgs.ts';
import { createFrameCutter, createPlaces, createTelling } from './frames.ts';
import { createFinder, digestOf, notAsBefore, type Finder, type Mark } from './mark.ts';
import { bytesOf, viewOf } from './planeBytes.ts';
import type { Clip } from './probe.ts';
import { isWhole, type Wholes } from './thinning.ts';
import { stalled, startTool } from './tools.ts';
import { watchOver } from './watchdog.ts';

export type { Stretch } from './decodeArgs.ts';

export interface DecodedFrame {
  /** Valid until the next frame is asked for: its room is used again. */
  readonly plane: Plane;
  /** Its place among all frames, missing ones counted. */
  readonly place: number;
  /** Its room is not used again. */
  readonly colour?: ColourSample;
  /** Of a few frames, where only some rows are read: all of them. Its room is not used again. */
  readonly whole?: Plane;
  /** What reading can be gone on from after this frame, while it is the one before. */
  readonly mark: () => Mark;
}

export interface DecodeGiven {
  readonly clip: Clip;
  /** Only these frames. */
  readonly stretch?: Stretch;
  /** Only what comes after a frame that was read before; not together with a stretch. */
  readonly after?: Mark;
  /** Every so many frames, one comes with a sample of its colour, where the clip has any. */
  readonly colourEvery?: number;
  /** Only these rows of every picture; of the first, second, fourth, eighth … frame all as well. */
  readonly rowsRead?: RowsRead;
  readonly signal?: AbortSignal;
  /** Told at the end: what was wrong with the clip, in a sentence each. */
  readonly onNote?: (note: string) => void;
  readonly timeout_ms?: number;
  readonly env?: NodeJS.ProcessEnv;
}

/** With nothing coming for so long, the disk or the clip has failed. */
const STALL_ms = 60_000;

function changedSize(where: string, frame: number, told: string, was: string): Fault {
  return new Fault({
    code: 'media.size-changes',
    what: `The picture is ${told} from frame ${frame} on, ${was} before`,
    where,
    mend: 'Cut it there and measure the parts one by one.',
  });
}

/** Reading that is gone on with. */
interface Again {
  readonly mark: Mark;
  /** Time to look for the frame at; by counting where left out. */
  readonly pts?: number;
  /** Which frame from where reading begins it is. */
  readonly count: number;
  /** Pictures of the run that are left out before. */
  readonly before?: number;
}

interface Reading {
  readonly given: DecodeGiven;
  readonly run: Run | undefined;
  /** Places of this run begin here. */
  readonly firstPlace: number;
  /** What came of all runs so far. */
  readonly sofar: { readonly notes: Set<string>; count: number };
  readonly again?: Again;
}

/** What of a frame that was read before is to be found again, and where the clock of the file begins meanwhile. */
function lookFor({ file, fileRate, start_s = 0, tick_s }: Clip, { mark, pts, count }: Again): { readonly find: Finder; readonly begin: number } {
  const begin = pts === undefined || tick_s === 0 ? 0 : Math.round(start_s / tick_s);
  const by = pts === undefined || !fileRate ? { count } : { pts: pts + begin, ticksPerFrame: 1 / (ratioOf(fileRate) * tick_s) };
  return { find: createFinder({ mark, by, where: file.name }), begin };
} // prettier-ignore

/** Which frame from where reading begins is the first to be sampled, so that the same are as in one go. */
function firstSampled(every: number, again: Again | undefined): number {
  const before = again?.pts === undefined ? (again?.before ?? 0) : again.mark.count - 1;
  return (every - (before % every)) % every;
}

/** Which frames come whole, so that the same do as in one go. */
function wholesOf({ run, sofar, again }: Reading): Wholes {
  if (!again) return { before: sofar.count, from: 0 };
  const isAtMark = again.pts !== undefined || run !== undefined;
  return { before: isAtMark ? again.mark.count - 1 : 0, from: again.mark.count };
}

function complaintsOf({ count, first }: { readonly count: number; readonly first: string }): readonly string[] {
  if (count === 0) return [];
  return [`ffmpeg complained while reading it: ${first}${count > 1 ? `, and ${count - 1} times more` : ''}.`];
}

/** The frames of one process of ffmpeg. */
async function* framesOfRun(reading: Reading): AsyncGenerator<DecodedFrame> {
  const { given, run, firstPlace, sofar, again } = reading;
  const { clip, stretch, rowsRead, signal, timeout_ms = STALL_ms, env } = given;
  const { width, height, fileRate, tick_s } = clip;
  const where = clip.file.name;
  const cutter = createFrameCutter(bytesOf(clip, rowsRead));
  const view = viewOf(cutter.buffer, clip, rowsRead);
  // It looks for pictures past the end of a run, where there are none: the run says itself how many it has.
  const telling = createTelling(run && /Could not open file|Input\/output error/);
  const isTimed = !run && fileRate !== undefined && tick_s > 0;
  const ticksPerFrame = isTimed ? 1 / (ratioOf(fileRate) * tick_s) : undefined;
  let places = createPlaces({ ticksPerFrame });
  let lastPlace = again?.mark.place ?? -1;
  const { find, begin } = again ? lookFor(clip, again) : { find: undefined, begin: 0 };
  const { notes } = sofar;
  let isFound = find === undefined;
  const sampled = clip.colour && given.colourEvery !== undefined ? { every: given.colourEvery, first: firstSampled(given.colourEvery, again) } : undefined;
  const colours = clip.colour && sampled && createColourSamples({ colour: clip.colour, ...sampled });
  const rows = rowsRead && { read: rowsRead, wholes: wholesOf(reading) };
  const wholes = rows && createAside({ frame_B: bytesOf(clip, undefined), isTaken: (frame) => isWhole(rows.wholes, frame), view: (bytes) => viewOf(bytes, clip, undefined)() });
  const { child, ended } = startTool('ffmpeg', decodeArgs({ clip, run, stretch, from_ticks: again?.pts, sampled, rows }), env, [...(colours ? [3] : []), ...(wholes ? [4] : [])]);
  const stop = (): boolean => child.kill('SIGKILL');
  const watched = watchOver(timeout_ms, stop);
  signal?.addEventListener('abort', stop);
  child.stderr!.setEncoding('utf8').on('data', telling.hear);
  // Read as it comes, whether frames are waited for or not: ffmpeg stands still while either pipe is full.
  const asides = [child.stdio[3], child.stdio[4]] as readonly (Readable | null | undefined)[];
  [colours, wholes].forEach((of, i) => asides[i]?.on('data', (chunk: Buffer) => of?.take(chunk)));
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
        if (!isFound) {
          watched.see();
          isFound = find!({ buffer: cutter.buffer, pts: told?.pts, count });
          count += 1;
          if (!isFound) continue;
          const { mark } = again!;
          // To begin in the middle of a group of pictures costs some of those before.
          telling.forgive();
          places = createPlaces({ ticksPerFrame, after: { place: mark.place - firstPlace, pts: told?.pts, isVariable: mark.isVariable } });
          continue;
        }
        const place = firstPlace + places.next(told?.pts);
        lastPlace = place;
        const planes = await colours?.of(count);
        const whole = await wholes?.of(count);
        signal?.throwIfAborted();
        const pts = told?.pts === undefined ? undefined : told.pts - begin;
        sofar.count += 1;
        const read = sofar.count;
        yield {
          plane: view(),
          place,
          ...(planes && { colour: { place, planes } }),
          ...(whole && { whole }),
          mark: () => ({ count: read, place, ...(pts !== undefined && { pts }), isVariable: places.isVariable(), digest: digestOf(cutter.buffer), notes: [...notes, ...complaintsOf(telling.complaints())] }),
        };
        // However long that took, it was not ffmpeg that did.
        watched.see();
        count += 1;
      }
    }
    const code = await ended;
    signal?.throwIfAborted();
    if (watched.hasStalled()) throw stalled(where, timeout_ms);
    const complaints = telling.complaints();
    if (!isFound) throw notAsBefore(where);
    if (count === 0 && !stretch) throw noFrames(where, complaints.first);
    const isCutOff = complaints.count === 0 && code !== 0 && code !== undefined;
    for (const note of complaintsOf(isCutOff ? { count: 1, first: 'it ended early' } : complaints)) notes.add(note);
    if (run && count < run.count) notes.add(`Of ${run.count} pictures from number ${run.first} on, ${count} could be read.`);
    if (cutter.left_B() > 0) notes.add('It breaks off within a frame.');
    if (places.isVariable()) notes.add('Its frames come at varying times: places are counted, not timed.');
    if (!stretch && !run && clip.statedFrames !== undefined && sofar.count < clip.statedFrames && lastPlace + 1 < clip.statedFrames)
      notes.add(`It says that it has ${clip.statedFrames} frames, and ${sofar.count} could be read: ${places.isVariable() ? 'some were left out when it was written, or it was cut short' : 'it was cut short, or its copy was'}.`);
  } finally {
    watched.end();
    signal?.removeEventListener('abort', stop);
    stop();
    child.stdout!.destroy();
    child.stderr!.destroy();
    for (const of of asides) of?.destroy();
    await ended.catch(() => undefined);
  }
} // prettier-ignore

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

/** The pictures of a sequence, each run of them by a process of its own. */
async function* framesOfPictures(given: DecodeGiven, runs: readonly Run[], sofar: Reading['sofar']): AsyncGenerator<DecodedFrame> {
  const { stretch, after } = given;
  const begin = runs[0]!.first + (stretch?.firstFrame ?? 0);
  const left = after ? { firstFrame: after.place, frameCount: Infinity } : stretch;
  for (const [i, run] of runsWithin(runs, left).entries()) {
    const before = run.first - runs.findLast(({ first }) => first <= run.first)!.first;
    yield* framesOfRun({ given, run, firstPlace: run.first - begin, sofar, ...(after && i === 0 && { again: { mark: after, count: 1, before } }) });
  }
} // prettier-ignore

/** What comes after a frame: found by its time, and where that leads elsewhere, by reading again all that lies before. */
async function* framesAfter(given: DecodeGiven, mark: Mark, sofar: Reading['sofar']): AsyncGenerator<DecodedFrame> {
  const reading = { given, run: undefined, firstPlace: 0, sofar };
  const { count, pts } = mark;
  let isAtPlace = false;
  if (pts !== undefined && given.clip.fileRate && given.clip.tick_s > 0) {
    try {
      for await (const frame of framesOfRun({ ...reading, again: { mark, count, pts } })) {
        isAtPlace = true;
        yield frame;
      }
      return;
    } catch (error) {
      if (isAtPlace || !(error instanceof Fault) || error.code !== 'media.not-as-before') throw error;
    }
  }
  yield* framesOfRun({ ...reading, again: { mark, count } });
}

/**
 * The frames of a clip in order. Leaving the loop, or the signal, ends ffmpeg at once. Throws a Fault for a picture that
 * changes its size, for a clip of no frames, for one that stalls and for one that is not as it was, and what the signal says.
 */
export async function* decodeFrames(given: DecodeGiven): AsyncGenerator<DecodedFrame> {
  const { clip, after, signal, onNote } = given;
  signal?.throwIfAborted();
  const sofar = { notes: new Set(after?.notes), count: after?.count ?? 0 };
  if (clip.file.kind === 'sequence') yield* framesOfPictures(given, clip.file.runs, sofar);
  else if (after) yield* framesAfter(given, after, sofar);
  else yield* framesOfRun({ given, run: undefined, firstPlace: 0, sofar });
  if (await hasChanged(clip.file))
    sofar.notes.add('It was written to while it was read: measure it again when it is whole.');
  for (const note of sofar.notes) onNote?.(note);
}
