/** `longsecond flicker`: a lamp's light over time as it was measured, its figures, and what a camera sees of it. */
import { Option } from 'commander';
import { basename } from 'node:path';
import { Fault } from '../../base/fault.ts';
import { parseQuantity } from '../../base/quantity.ts';
import { exposureTimeOfAngle_s } from '../../laws/exposure/shutter.ts';
import type { SeenGiven } from '../../laws/flicker/seen.ts';
import type { KindName } from '../../base/kinds.ts';
import { cameraFacts, measuredFacts } from '../../turnover/flickerFacts.ts';
import { onOneLine } from '../../turnover/lines.ts';
import type { SetUpVerb } from '../command.ts';
import { readMeasuredFile } from '../measuredFile.ts';
import { asText, inkOf } from '../shootDocument.ts';
import { STANDARD_INPUT } from '../shootFile.ts';
import { flickerLines } from './flickerFile.ts';

const SCHEMA = 'longsecond.flicker/1';

const UNITS_s: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, us: 1e-6 };

interface FlickerOptions {
  readonly unit?: string;
  readonly dark: number;
  readonly at?: number;
  readonly shutter?: string;
  readonly play: number;
  readonly frames?: number;
  readonly json?: true;
}

/** Nine digits, so that the same record prints the same on every machine. */
const rounded = (_: string, value: unknown): unknown =>
  typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(9)) : value;

function malformed(option: string, text: string, what: string, mend: string): Fault {
  return new Fault({
    code: 'flicker.bad-option',
    what,
    where: `longsecond flicker ${option} ${onOneLine(text)}`,
    mend,
  });
}

const quantity =
  (option: string, kind: KindName, example: string) =>
  (text: string): number => {
    const parsed = parseQuantity(kind, text);
    if (!parsed.ok) throw malformed(option, text, `${option} takes ${parsed.why}`, `Write ${option} ${example}.`);
    if (!(parsed.value > 0)) throw malformed(option, text, `${option} takes more than nothing, and got ${onOneLine(text)}`, `Write ${option} ${example}.`); // prettier-ignore
    return parsed.value;
  };

function plainNumber(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw malformed('--dark', text, `--dark takes a plain number, and got "${onOneLine(text)}"`, 'Write the reading with the sensor covered, in the unit of the record, such as --dark 0.012.'); // prettier-ignore
}

function frameCount(text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value >= 1 && value <= 1e9) return value;
  throw malformed('--frames', text, `--frames takes a whole number from 1, and got "${onOneLine(text)}"`, 'Write how many frames the clip has, such as --frames 600.'); // prettier-ignore
}

/** The exposure of a shutter written as a time or as an angle; half of each frame where nobody says. */
function exposureOf(frameRate_fps: number, text = '180°'): number {
  const isAngle = /°|deg/i.test(text);
  const value = quantity('--shutter', isAngle ? 'angle' : 'time', '1/2000s, or --shutter 180°')(text);
  const exposureTime_s = isAngle ? exposureTimeOfAngle_s({ shutterAngle_deg: Math.min(360, value), frameRate_fps }) : value; // prettier-ignore
  if (exposureTime_s * frameRate_fps > 1 + 1e-9) throw malformed('--shutter', text, `The shutter is open for longer than a frame of 1/${frameRate_fps} s`, 'Write a shorter one.'); // prettier-ignore
  return exposureTime_s;
}

function seenGiven({ at, shutter, play, frames }: FlickerOptions): SeenGiven | undefined {
  if (at === undefined) {
    if (shutter !== undefined) throw malformed('--shutter', shutter, '--shutter says nothing without a frame rate', 'Write --at with it, such as --at 1000fps.'); // prettier-ignore
    return undefined;
  }
  return { frameRate_fps: at, exposureTime_s: exposureOf(at, shutter), playback_fps: play, ...(frames === undefined ? {} : { frameCount: frames }) }; // prettier-ignore
}

/** Gives `flicker` its arguments, options and action; a record named `-` is read from `input`. */
export function flickerVerb(input: AsyncIterable<Uint8Array>): SetUpVerb {
  return (command, { terminal }) => {
    command
      .argument('<file>', 'time and light as text, a line a sample, as a photodiode or a meter wrote them; - reads standard input')
      .addOption(new Option('--unit <unit>', 'unit of its times, where its header does not say').choices(Object.keys(UNITS_s)))
      .option('--dark <reading>', 'reading with the sensor covered, in the unit of the record', plainNumber, 0)
      .option('--at <rate>', 'what a camera sees at this frame rate', quantity('--at', 'rate', '1000fps'))
      .option('--shutter <time or angle>', 'its shutter, 1/2000s or 180°; left out, 180°')
      .option('--play <rate>', 'the rate it is played at', quantity('--play', 'rate', '25fps'), 25)
      .option('--frames <count>', 'frames of the clip; left out, a clip without end', frameCount)
      .option('--json', 'print for programs rather than for eyes')
      .action(async (file: string, options: FlickerOptions) => {
        const given = seenGiven(options);
        const unit_s = options.unit === undefined ? undefined : UNITS_s[options.unit]!;
        const read = await readMeasuredFile(file, input, { dark: options.dark, ...(unit_s === undefined ? {} : { unit_s }) });
        const shown = file === STANDARD_INPUT ? 'standard input' : file;
        if (!read.ok) {
          const { code, what, mend, line } = read.refusal;
          throw new Fault({ code, what, where: line > 0 ? `${shown}:${line}` : shown, mend });
        }
        const { waveform, quality, notices } = read;
        const name = file === STANDARD_INPUT ? shown : basename(file);
        const facts = measuredFacts({ name, waveform, quality, notices, dark: options.dark });
        const camera = given && cameraFacts(waveform, given);
        const reply = { schema: SCHEMA, ...facts, ...(camera ? { camera } : {}) };
        terminal.out(options.json ? `${JSON.stringify(reply, rounded, 2)}\n` : asText(flickerLines(facts, camera, inkOf(terminal.outColour))));
      }); // prettier-ignore
  };
}

export const setUpFlicker: SetUpVerb = (command, session) => flickerVerb(process.stdin)(command, session);
