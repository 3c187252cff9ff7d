/** One clip for `longsecond measure`: measured on a thread of its own, and told as it goes. */
import { basename } from 'node:path';
import type { Measurement } from '../measure/types.ts';
import type { TransferCurve } from '../measure/transfer.ts';
import { measuredAlone } from '../jobs/measuredAlone.ts';
import { measureInWorker, type MeasureInWorkerGiven } from '../jobs/measureInWorker.ts';
import { onOneLine } from '../turnover/lines.ts';
import type { PlannedShot } from '../turnover/measureAgainst.ts';
import { clipReply, type ClipReply, type MeasuredClip } from '../turnover/measureReply.ts';
import { flickerWords, lineWords } from '../turnover/measureWords.ts';
import type { Terminal } from './terminal.ts';

export interface MeasureOneOptions {
  readonly curve?: TransferCurve;
  readonly rate?: number;
  readonly play?: number;
  readonly black?: number;
  readonly quick?: true;
}

export interface MeasureOneGiven {
  readonly name: string;
  readonly options: MeasureOneOptions;
  readonly shot: PlannedShot | undefined;
  readonly signal: AbortSignal;
  readonly progress: Progress;
  readonly terminal: Terminal;
  /** The measuring worker's program, where it is not the one built beside. */
  readonly entry: URL | undefined;
}

export interface MeasuredOne {
  readonly reply: ClipReply;
  readonly measured: MeasuredClip;
  readonly measurement: Measurement;
}

/** What a first look says, in one sentence. */
function firstWords(measurement: Measurement): string {
  const [line] = measurement.flicker.lines;
  if (!line) return flickerWords(measurement);
  return lineWords(line, [], (line.beat_Hz / measurement.frameRate_fps) * measurement.playback_fps);
}

export interface Progress {
  readonly tell: (done: number, total: number | undefined) => void;
  readonly clear: () => void;
}

/** A line that is written over while frames go by, on a terminal alone. */
export function progressOn(terminal: Terminal, isShown: boolean): Progress {
  return {
    tell: (done, total) => {
      if (isShown) terminal.err(`\r  ${done}${total === undefined ? '' : ` of ${total}`} frames`);
    },
    clear: () => {
      if (isShown) terminal.err('\r\x1b[K');
    },
  };
}

/** Tells what the first stretch says, and of a later one whatever is then judged otherwise. */
function tellLooks({ name, progress, terminal }: MeasureOneGiven): NonNullable<MeasureInWorkerGiven['onFirstLook']> {
  let verdict: string | undefined;
  return ({ measurement }) => {
    const before = verdict;
    verdict = measurement.flicker.verdict;
    if (verdict === before) return;
    progress.clear();
    const when = before === undefined ? 'at first look' : 'at another';
    terminal.err(terminal.errColour.dim(`${onOneLine(basename(name))}, ${when}: ${firstWords(measurement)}\n`));
  };
}

/** Measures a clip. Rejects with a Fault for one that cannot be, and with the signal's reason. */
export async function measureOne(given: MeasureOneGiven): Promise<MeasuredOne> {
  const { name, options, shot, signal, progress, entry } = given;
  const { curve } = options;
  const captureRate_fps = options.rate ?? shot?.captureRate_fps;
  const playback_fps = options.play ?? shot?.playback_fps;
  const found = await measureInWorker({
    name,
    ...(captureRate_fps !== undefined && { captureRate_fps }),
    ...(playback_fps !== undefined && { playback_fps }),
    ...(curve && { curve }),
    ...(options.black !== undefined && { blackCode: options.black }),
    isFirstLook: options.quick === true,
    signal,
    onProgress: progress.tell,
    onFirstLook: tellLooks(given),
    ...(entry && { entry }),
  });
  const rateFrom = options.rate !== undefined ? 'given' : captureRate_fps !== undefined ? 'plan' : 'file';
  const alone = measuredAlone(found, { name: basename(name), rateFrom, curve, mend: 'give --rate or --shot' });
  const measured: MeasuredClip = { ...alone, ...(shot && { shot }) };
  return { reply: clipReply(measured), measured, measurement: found.measurement };
}
