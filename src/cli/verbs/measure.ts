/** `longsecond measure`: clips held against the eye, the meter and the plan while the set still stands. */
import { writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Fault } from '../../base/fault.ts';
import { parseQuantity } from '../../base/quantity.ts';
import { learnLines } from '../../turnover/learn/learnText.ts';
import { learntReply } from '../../turnover/learn/learnReply.ts';
import { onOneLine } from '../../turnover/lines.ts';
import { measureCsv } from '../../turnover/measureCsv.ts';
import { measurePair, pairLines, pairReply, type MeasuredPair } from '../../turnover/measurePair.ts';
import { measureReply } from '../../turnover/measureReply.ts';
import { clipLines } from '../../turnover/measureText.ts';
import { BAD_INPUT, type SetUpVerb } from '../command.ts';
import { CURVE_FORMS, parseCurve } from '../../measure/curveText.ts';
import {
  learnFrom,
  parseLearn,
  parsePositive,
  requireLearnable,
  type LearnDone,
  type LearnOptions,
} from '../learnFrom.ts';
import { measureOne, progressOn, type MeasuredOne, type MeasureOneOptions } from '../measureOne.ts';
import { asText, inkOf } from '../shootDocument.ts';
import { shotNamed, type NamedShot } from '../shotNamed.ts';

/** Exit code when somebody stopped it. */
const STOPPED = 130;

interface MeasureOptions extends LearnOptions, MeasureOneOptions {
  readonly shot?: string;
  readonly pair?: true;
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

async function writeCsv(path: string, text: string, option = '--csv'): Promise<void> {
  try {
    await writeFile(path, text);
  } catch (cause) {
    const { message } = cause as Error;
    throw new Fault({ code: 'measure.unwritable', what: `The table cannot be written: ${message}`, where: path, mend: `Check the folder and its permissions, or give another name with ${option}.`, cause }); // prettier-ignore
  }
}

function requireTwo(names: readonly string[]): void {
  if (names.length === 2) return;
  throw new Fault({
    code: 'measure.bad-pair',
    what: `--pair takes two clips, and got ${names.length}`,
    where: `longsecond measure ${names.map(onOneLine).join(' ')} --pair`,
    mend: 'Name the clip to go by first, and the other after it.',
  });
}

/** The second against the first, where both could be measured. */
function pairOf([first, second]: readonly MeasuredOne[]): MeasuredPair | undefined {
  return first && second && measurePair([first.measured, second.measured]);
}

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** Today where the command runs, YYYY-MM-DD. */
function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${twoDigits(now.getMonth() + 1)}-${twoDigits(now.getDate())}`;
}

/** What all clips together teach of what was asked. */
const learntOf = ({ written, planned }: NamedShot, options: MeasureOptions, done: readonly MeasuredOne[]): LearnDone =>
  learnFrom({ asked: options.learn!, options, written, shotId: planned.id, plannedExposure_s: planned.exposureTime_s, clips: done.map(({ measured }) => measured), date: today() }); // prettier-ignore

/** Gives `measure` its arguments, options and action. A shoot named `-` is read from `input`; `entry` is the worker's program, where it is not the one that was built. */
export function measureVerb(input: AsyncIterable<Uint8Array>, isTerminal: boolean, entry?: URL): SetUpVerb {
  return (command, { terminal, complain, endWith }) => {
    command
      .argument('<clip...>', 'a movie, or the first of numbered pictures')
      .option('--shot <shoot#shot>', 'hold it against a shot, such as shoot.yaml#pour-1')
      .option('--rate <rate>', 'at which it was taken; left out, that of the shot', rate('--rate'))
      .option('--play <rate>', 'at which it is shown; left out, that of the shot or of the file', rate('--play'))
      .option('--curve <curve>', `it was written with: ${CURVE_FORMS}`, parseCurve)
      .option('--black <code>', 'code value of black, where the camera lifts it', codeValue)
      .option('--quick', 'only a first look at a few stretches')
      .option('--pair', 'hold the second of two clips against the first')
      .option('--learn <what>', 'what all clips together teach of the shoot: event, rig=ID or lamp=ID', parseLearn)
      .option('--shutter <time>', 'exposure time of a grey card, such as 1/2000s; left out, that of the shot', parsePositive('--shutter', 'time', '1/2000s'))
      .option('--ripple <rate>', 'at which the lamp pulses, where it is not the mains', parsePositive('--ripple', 'frequency', '2kHz'))
      .option('--level <share>', 'that the lamp was set to; left out, full')
      .option('--colour <temperature>', 'that the lamp was set to, such as 4300K; left out, as the kit says')
      .option('--supply <supply>', 'that it ran on: grid, generator or battery; left out, the grid')
      .option('--out <file>', 'write the light of the lamp to this file, to lie beside the shoot')
      .option('--json', 'print for programs rather than for eyes')
      .option('--csv <file>', 'write the values of every frame to this file')
      .action(async (names: string[], options: MeasureOptions) => {
        if (options.pair) requireTwo(names);
        requireLearnable({ ...options, shot: options.shot !== undefined, quick: options.quick === true, clips: names.length });
        const named = options.shot === undefined ? undefined : await shotNamed(options.shot, input, terminal);
        const shot = named?.planned;
        const stop = new AbortController();
        const onSignal = (): void => stop.abort();
        process.once('SIGINT', onSignal);
        const progress = progressOn(terminal, isTerminal);
        const done: MeasuredOne[] = [];
        const failed: { clip: string; code: string; what: string; where: string; mend: string }[] = [];
        try {
          for (const name of names) {
            try {
              done.push(await measureOne({ name, options, shot, signal: stop.signal, progress, terminal, entry }));
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
        const pair = options.pair ? pairOf(done) : undefined;
        const learnt = named && options.learn && done.length > 0 ? learntOf(named, options, done) : undefined;
        const ink = inkOf(terminal.outColour);
        if (options.json) terminal.out(`${JSON.stringify({ ...measureReply(replies, failed, pair && pairReply(pair)), ...(learnt && { learnt: learntReply(options.learn!.kind, learnt.learning) }) }, null, 2)}\n`);
        else terminal.out([...replies.map((reply) => clipLines(reply, ink)), ...(pair ? [pairLines(pair, [replies[0]!.clip, replies[1]!.clip], ink)] : []), ...(learnt ? [learnLines(learnt.learning, ink)] : [])].map(asText).join('\n'));
        if (options.out !== undefined && learnt?.csv !== undefined) await writeCsv(options.out, learnt.csv, '--out');
        if (learnt?.learning.ok === false) complain(new Fault({ ...learnt.learning.refusal, where: `longsecond measure --learn ${options.learn!.kind}` }));
        if (failed.length > 0 || learnt?.learning.ok === false) endWith(BAD_INPUT);
      });
  };
} // prettier-ignore

export const setUpMeasure: SetUpVerb = (command, session) =>
  measureVerb(process.stdin, process.stderr.isTTY)(command, session);
