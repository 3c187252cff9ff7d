/** `longsecond day`: when the day of a shoot will end, drawn many times, and what would end it sooner. */
import { Option } from 'commander';
import { Fault } from '../../base/fault.ts';
import { planShoot } from '../../plan/plan.ts';
import { dayOf, USUAL_DAYS } from '../../solve/day.ts';
import { dayCsv } from '../../turnover/dayCsv.ts';
import { dayReply } from '../../turnover/dayReply.ts';
import { dayLines } from '../../turnover/dayText.ts';
import { onOneLine } from '../../turnover/lines.ts';
import type { SetUpVerb } from '../command.ts';
import { BAD_INPUT } from '../command.ts';
import { tellFilesBeside } from '../filesBeside.ts';
import { asText, inkOf, readDocument, tellProblems } from '../shootDocument.ts';
import { readShootSource } from '../shootFile.ts';

/** Exit code with --strict when fewer than nine days in ten end by the wrap. */
const SHORTFALL = 1;
const ENOUGH_FRACTION = 0.9;

/** More days than this say no more, and take a while. */
const MOST_DAYS = 100_000;
const MOST_SEED = 2 ** 32 - 1;

interface DayVerbOptions {
  readonly days: number;
  readonly seed?: number;
  readonly json?: true;
  readonly csv?: true;
  readonly strict?: true;
}

/** A whole number of an option within bounds. Throws Fault `day.bad-number`. */
const wholeWithin =
  (option: string, least: number, most: number) =>
  (text: string): number => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new Fault({
      code: 'day.bad-number',
      what: `${option} takes a whole number from ${least} to ${most}, and got "${onOneLine(text)}"`,
      where: `longsecond day ${option} ${onOneLine(text)}`,
      mend: `Write ${option} with a plain number, such as ${Math.max(least, 200)}.`,
    });
  };

/** Gives `day` its arguments, options and action; a shoot named `-` is read from `input`. */
export function dayVerb(input: AsyncIterable<Uint8Array>): SetUpVerb {
  return (command, { terminal, endWith }) => {
    command
      .argument('<file>', 'the shoot, as YAML or JSON; - reads standard input')
      .addOption(
        new Option('--days <count>', 'days to draw').default(USUAL_DAYS).argParser(wholeWithin('--days', 1, MOST_DAYS)),
      )
      .option('--seed <number>', 'rather than the seed of the shoot', wholeWithin('--seed', 0, MOST_SEED))
      .option('--json', 'print for programs rather than for eyes')
      .addOption(new Option('--csv', 'print a table, a row a shot').conflicts('json'))
      .option('--strict', 'end with 1 when fewer than nine days in ten end by the wrap that was set')
      .action(async (file: string, { days, seed, json, csv, strict }: DayVerbOptions) => {
        const source = await readShootSource(file, input);
        const { shoot, problems } = readDocument(source);
        try {
          await tellFilesBeside(file, shoot);
          const plan = planShoot(shoot);
          const day = dayOf(shoot, plan, { dayCount: days, ...(seed === undefined ? {} : { seed }) });
          if (json) terminal.out(`${JSON.stringify(dayReply(plan.title, day, problems), null, 2)}\n`);
          else if (csv) terminal.out(dayCsv(day));
          else terminal.out(asText(dayLines(plan.title, day, inkOf(terminal.outColour))));
          if (strict && (day.inTimeFraction ?? 1) < ENOUGH_FRACTION) endWith(SHORTFALL);
        } finally {
          if (problems.length > 0) {
            tellProblems(source.name, problems, terminal);
            endWith(BAD_INPUT);
          }
        }
      });
  };
}

export const setUpDay: SetUpVerb = (command, session) => dayVerb(process.stdin)(command, session);
