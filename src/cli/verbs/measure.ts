/** `longsecond measure`: clips held against the eye, the meter and the plan while the set still stands. */
import { writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Fault } from '../../base/fault.ts';
import { nearestName } from '../../base/nearest.ts';
import { parseQuantity } from '../../base/quantity.ts';
import type { Measurement } from '../../measure/types.ts';
import type { TransferCurve } from '../../measure/transfer.ts';
import { planShoot } from '../../plan/plan.ts';
import { onOneLine } from '../../turnover/lines.ts';
import { plannedShot, type PlannedShot } from '../../turnover/measureAgainst.ts';
import { measureCsv } from '../../turnover/measureCsv.ts';
import { clipReply, measureReply, type ClipReply } from '../../turnover/measureReply.ts';
import { clipLines } from '../../turnover/measureText.ts';
import { flickerWords, lineWords } from '../../turnover/measureWords.ts';
import { BAD_INPUT, type SetUpVerb } from '../command.ts';
import { CURVE_FORMS, parseCurve } from '../curveOption.ts';
import { tellFilesBeside } from '../filesBeside.ts';
import { measureClip, type MeasureGiven } from '../measureClip.ts';
import { asText, inkOf, readDocument, tellProblems } from '../shootDocument.ts';
import { readShootSource } from '../shootFile.ts';
import type { Terminal } from '../terminal.ts';

/** Exit code when somebody stopped it. */
const STOPPED = 130;

interface MeasureOptions {
  readonly shot?: string;
  readonly curve?: TransferCurve;
  readonly rate?: number;
  readonly play?: number;
  readonly black?: number;
  readonly quick?: true;
  readonly json?: true;
  readonly csv?: string;
}

const rate =
  (option: string) =>
  (text: string): number => {
    const parsed = parseQuantity('rate', text);
    if (parsed.ok && parsed.value > 0) return parsed.value;
    throw new Fault({
      code: 'measure.bad-rate',
      what: `${option} takes a frame rate, and got "${onOneLine(text)}"${parsed.ok ? '' : `: ${parsed.why}`}`,
      where: `longsecond measure ${option} ${onOneLine(text)}`,
      mend: `Write the rate such as ${option} 1000fps or ${option} 24000/1001.`,
    });
  };

function codeValue(text: string): number {
  const value = Number(text);
  if (/^\d{1,5}$/.test(text.trim()) && value < 2 ** 16) return value;
  throw new Fault({
    code: 'measure.bad-black',
    what: `--black takes a code value, and got "${onOneLine(text)}"`,
    where: `longsecond measure --black ${onOneLine(text)}`,
    mend: 'Write it as a whole number, such as --black 64.',
  });
}

/** The shot that `SHOOT.yaml#shot` names, as it is planned. */
async function shotNamed(text: string, input: AsyncIterable<Uint8Array>, terminal: Terminal): Promise<PlannedShot> {
  const cut = text.lastIndexOf('#');
  const [file, id] = cut < 0 ? [text, ''] : [text.slice(0, cut), text.slice(cut + 1)];
  const where = `longsecond measure --shot ${onOneLine(text)}`;
  if (id === '' || file === '')
    throw new Fault({ code: 'measure.bad-shot', what: 'A shot is named by its file and its id', where, mend: 'Write them with a # between, such as --shot shoot.yaml#pour-1.' }); // prettier-ignore
  const source = await readShootSource(file, input);
  const { shoot, problems } = readDocument(source);
  await tellFilesBeside(file, shoot);
  if (problems.length > 0) tellProblems(source.name, problems, terminal);
  const planned = planShoot(shoot).shots.find((shot) => shot.id === id);
  if (planned) return plannedShot(shoot, planned);
  const ids = Object.keys(shoot.shots);
  const near = nearestName(id, ids);
  throw new Fault({
    code: 'measure.unknown-shot',
    what: `There is no shot "${onOneLine(id)}"`,
    where,
    mend: near === undefined ? (ids.length === 0 ? 'This shoot has no shots yet.' : `The shots are ${ids.slice(0, 40).join(', ')}.`) : `Did you mean ${near}?`, // prettier-ignore
  });
}

async function writeCsv(path: string, text: string): Promise<void> {
  try {
    await writeFile(path, text);
  } catch (cause) {
    const { message } = cause as Error;
    throw new Fault({ code: 'measure.unwritable', what: `The table cannot be written: ${message}`, where: path, mend: 'Check the folder and its permissions, or give another name with --csv.', cause }); // prettier-ignore
  }
}

/** What a first look says, in one sentence. */
function firstWords(measurement: Measurement): string {
  const [line] = measurement.flicker.lines;
  if (!line) return flickerWords(measurement);
  return lineWords(line, [], (line.beat_Hz / measurement.frameRate_fps) * measurement.playback_fps);
}

/** A line that is written over while frames go by, on a terminal alone. */
function progressOn(terminal: Terminal, isShown: boolean) {
  const STEP = 25;
  return {
    tell: (done: number, total: number | undefined): void => {
      if (isShown && done % STEP === 0) terminal.err(`\r  ${done}${total === undefined ? '' : ` of ${total}`} frames`);
    },
    clear: (): void => {
      if (isShown) terminal.err('\r\x1b[K');
    },
  };
}

interface Done {
  readonly reply: ClipReply;
  readonly measurement: Measurement;
}

async function measureOne(name: string, options: MeasureOptions, shot: PlannedShot | undefined, more: Pick<MeasureGiven, 'signal' | 'onProgress' | 'onFirstLook'>): Promise<Done> {
  const planned_fps = options.rate === undefined ? shot?.captureRate_fps : undefined;
  const captureRate_fps = options.rate ?? planned_fps;
  const playback_fps = options.play ?? shot?.playback_fps;
  const { clip, measurement, isWhole, notes } = await measureClip({
    name,
    ...(captureRate_fps !== undefined && { captureRate_fps }),
    ...(playback_fps !== undefined && { playback_fps }),
    ...(options.curve && { curve: options.curve }),
    ...(options.black !== undefined && { blackCode: options.black }),
    isFirstLook: options.quick === true,
    ...more,
  });
  const isGiven = options.curve !== undefined && !clip.plane.isFloat;
  const isByFile = captureRate_fps === undefined;
  const reply = clipReply({
    name: basename(name),
    codec: clip.codec,
    pixelFormat: clip.pixelFormat,
    measurement,
    frameRateBasis: options.rate !== undefined ? 'given' : planned_fps !== undefined ? 'plan' : 'file',
    curve: isGiven ? options.curve.kind : clip.curve.says,
    curveBasis: isGiven ? 'given' : clip.curve.basis,
    isWhole,
    notes: [
      ...notes.filter((note) => !isGiven || !note.startsWith('The curve is taken')),
      ...(isByFile ? ['At what rate it was taken is not known: give --rate or --shot, or every rate and speed here is that of the screen.'] : []),
    ],
    ...(shot && { shot }),
  });
  return { reply, measurement };
} // prettier-ignore

/** Gives `measure` its arguments, options and action. A shoot named `-` is read from `input`. */
export function measureVerb(input: AsyncIterable<Uint8Array>, isTerminal: boolean): SetUpVerb {
  return (command, { terminal, complain, endWith }) => {
    command
      .argument('<clip...>', 'a movie, or the first of numbered pictures')
      .option('--shot <shoot#shot>', 'hold it against a shot, such as shoot.yaml#pour-1')
      .option('--rate <rate>', 'at which it was taken; left out, that of the shot', rate('--rate'))
      .option('--play <rate>', 'at which it is shown; left out, that of the shot or of the file', rate('--play'))
      .option('--curve <curve>', `it was written with: ${CURVE_FORMS}`, parseCurve)
      .option('--black <code>', 'code value of black, where the camera lifts it', codeValue)
      .option('--quick', 'only a first look at a few stretches')
      .option('--json', 'print for programs rather than for eyes')
      .option('--csv <file>', 'write the values of every frame to this file')
      .action(async (names: string[], options: MeasureOptions) => {
        const shot = options.shot === undefined ? undefined : await shotNamed(options.shot, input, terminal);
        const stop = new AbortController();
        const onSignal = (): void => stop.abort();
        process.once('SIGINT', onSignal);
        const progress = progressOn(terminal, isTerminal);
        const { errColour } = terminal;
        const done: Done[] = [];
        const failed: { clip: string; code: string; what: string; where: string; mend: string }[] = [];
        try {
          for (const name of names) {
            try {
              done.push(
                await measureOne(name, options, shot, {
                  signal: stop.signal,
                  onProgress: progress.tell,
                  onFirstLook: (_, look) => terminal.err(errColour.dim(`${onOneLine(basename(name))}, at first look: ${firstWords(look)}\n`)),
                }),
              );
            } catch (error) {
              if (!(error instanceof Fault)) throw error;
              progress.clear();
              complain(error);
              const { code, what, where, mend } = error;
              failed.push({ clip: basename(name), code, what, where, mend });
            }
            progress.clear();
          }
        } catch (error) {
          if (!stop.signal.aborted) throw error;
          progress.clear();
          terminal.err('Stopped.\n');
          endWith(STOPPED);
          return;
        } finally {
          process.removeListener('SIGINT', onSignal);
        }
        const replies = done.map(({ reply }) => reply);
        if (options.csv !== undefined) await writeCsv(options.csv, measureCsv(done.map(({ reply, measurement }) => ({ name: reply.clip, measurement }))));
        if (options.json) terminal.out(`${JSON.stringify(measureReply(replies, failed), null, 2)}\n`);
        else terminal.out(replies.map((reply) => asText(clipLines(reply, inkOf(terminal.outColour)))).join('\n'));
        if (failed.length > 0) endWith(BAD_INPUT);
      });
  };
} // prettier-ignore

export const setUpMeasure: SetUpVerb = (command, session) =>
  measureVerb(process.stdin, process.stderr.isTTY)(command, session);
