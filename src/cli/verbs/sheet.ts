/** `longsecond sheet`: shot cards, the plan, morning sheets, cues, the day and what must be camera-ready, as text on the terminal or as a PDF to print. */
import { Option } from 'commander';
import { writeFile } from 'node:fs/promises';
import { Fault } from '../../base/fault.ts';
import type { UnitSystem } from '../../base/quantity.ts';
import { planShoot } from '../../plan/plan.ts';
import { dayOf } from '../../solve/day.ts';
import { sheetsFor, type Asked } from '../../turnover/sheets/sheets.ts';
import { sheetLines } from '../../turnover/sheets/sheetText.ts';
import type { SetUpVerb } from '../command.ts';
import { BAD_INPUT } from '../command.ts';
import { tellFilesBeside } from '../filesBeside.ts';
import { asText, inkOf, readDocument, tellProblems } from '../shootDocument.ts';
import { readShootSource } from '../shootFile.ts';

/** Exit code with --strict when a margin is short. */
const SHORTFALL = 1;

interface SheetOptions {
  /** True where every one is meant. */
  readonly card?: string | true;
  readonly plan?: true;
  readonly morning?: string | true;
  readonly cues?: string | true;
  readonly day?: true;
  readonly dressing?: true;
  readonly size: 'a4' | 'letter';
  readonly units?: UnitSystem;
  readonly out?: string;
  readonly strict?: true;
}

const one = (word: string | true): string | undefined => (word === true ? undefined : word);

/** The one kind of sheet asked for. Throws Fault `sheet.which` for none or several. */
function askedOf({ card, plan, morning, cues, day, dressing }: SheetOptions, file: string): Asked {
  const asked: readonly Asked[] = [
    ...(card === undefined ? [] : [{ sheet: 'card', shot: one(card) } as const]),
    ...(plan === undefined ? [] : [{ sheet: 'plan' } as const]),
    ...(morning === undefined ? [] : [{ sheet: 'morning', duty: one(morning) } as const]),
    ...(cues === undefined ? [] : [{ sheet: 'cues', shot: one(cues) } as const]),
    ...(day === undefined ? [] : [{ sheet: 'day' } as const]),
    ...(dressing === undefined ? [] : [{ sheet: 'dressing' } as const]),
  ];
  const [only, another] = asked;
  if (only && !another) return only;
  throw new Fault({
    code: 'sheet.which',
    what: only ? 'Several kinds of sheet are asked for at once' : 'No sheet is asked for',
    where: `longsecond sheet ${file}`,
    mend: 'Give one of --card, --plan, --morning, --cues, --day and --dressing.',
  });
}

async function writeOut(path: string, bytes: Uint8Array): Promise<void> {
  try {
    await writeFile(path, bytes);
  } catch (cause) {
    const { message } = cause as Error;
    throw new Fault({
      code: 'sheet.unwritable',
      what: `The PDF cannot be written: ${message}`,
      where: path,
      mend: 'Check the folder and its permissions, or give another name with -o.',
      cause,
    });
  }
}

/** Gives `sheet` its arguments, options and action; a shoot named `-` is read from `input`, the time from `now`. */
export function sheetVerb(input: AsyncIterable<Uint8Array>, now: () => Date): SetUpVerb {
  return (command, { terminal, endWith }) => {
    command
      .argument('<file>', 'the shoot, as YAML or JSON; - reads standard input')
      .option('--card [shot]', 'the card of a shot by its id, or of every shot')
      .option('--plan', 'the whole plan: shots, what is short, totals, board')
      .option('--morning [duty]', 'the morning sheet of a duty or person: production, camera, light, rigs, product, data; or of everybody')
      .option('--cues [shot]', 'the cue sheet of a shot by its id, or of every shot with cues or a trigger')
      .option('--day', 'the day: when each shot starts and ends nine days in ten')
      .option('--dressing', 'what must be camera-ready when')
      .addOption(new Option('--size <paper>', 'paper of the PDF').choices(['a4', 'letter']).default('a4'))
      .addOption(new Option('--units <system>', 'rather than those the shoot prefers').choices(['metric', 'imperial']))
      .option('-o, --out <file>', 'write a PDF rather than text on the terminal')
      .option('--strict', 'end with 1 when a limit of the shoot is short')
      .action(async (file: string, options: SheetOptions) => {
        const asked = askedOf(options, file);
        const read = await readShootSource(file, input);
        const { shoot, problems } = readDocument(read);
        await tellFilesBeside(file, shoot);
        const plan = planShoot(shoot);
        try {
          const sheets = sheetsFor({ shoot, plan, day: () => dayOf(shoot, plan), system: options.units ?? shoot.shoot.units ?? 'metric' }, asked);
          if (options.out === undefined) {
            const ink = inkOf(terminal.outColour);
            terminal.out(sheets.map((sheet) => asText(sheetLines(sheet, ink))).join('\n\n'));
          } else {
            const { printSheets } = await import('../../paper/printSheets.ts');
            await writeOut(options.out, await printSheets(sheets, { size: options.size, printedAt: now() }));
            terminal.out(`${sheets.length === 1 ? '1 sheet' : `${sheets.length} sheets`} written to ${options.out}\n`);
          }
          if (options.strict && plan.totals.shortCount > 0) endWith(SHORTFALL);
        } finally {
          if (problems.length > 0) {
            tellProblems(read.name, problems, terminal);
            endWith(BAD_INPUT);
          }
        }
      });
  };
} // prettier-ignore

export const setUpSheet: SetUpVerb = (command, session) => sheetVerb(process.stdin, () => new Date())(command, session);
