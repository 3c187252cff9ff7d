/** `longsecond plan`: every shot of a shoot with its settings and limits, the ways to close them, and where numbers come from. */
import { Fault } from '../../base/fault.ts';
import { nearestName } from '../../base/nearest.ts';
import type { Shoot } from '../../document/schema.ts';
import type { ShootText } from '../../document/text.ts';
import { migrate } from '../../document/versions.ts';
import { explain } from '../../plan/explain.ts';
import { planShoot } from '../../plan/plan.ts';
import { candidatesOf, prepare, workAt } from '../../plan/planShot.ts';
import { sampleShot, USUAL_SAMPLES, USUAL_SEED } from '../../plan/timing/sample.ts';
import type { SampledTiming } from '../../plan/timing/types.ts';
import { LIMITS, type LimitId, type Plan, type ShotPlan, type Trace, type Way } from '../../plan/types.ts';
import { waysFor } from '../../plan/ways/ways.ts';
import { lampWays } from '../../solve/lampWays.ts';
import { onOneLine } from '../../turnover/lines.ts';
import { planReply, traceReply } from '../../turnover/planReply.ts';
import { planLines } from '../../turnover/planText.ts';
import { traceLines } from '../../turnover/traceText.ts';
import type { SetUpVerb } from '../command.ts';
import { BAD_INPUT } from '../command.ts';
import { tellFilesBeside } from '../filesBeside.ts';
import { loadHighs } from '../highs.ts';
import { asText, inkOf, readDocument, tellProblems } from '../shootDocument.ts';
import { readShootSource } from '../shootFile.ts';
import type { Terminal } from '../terminal.ts';

/** Exit code with --strict when a margin is short. */
const SHORTFALL = 1;

interface PlanOptions {
  readonly shot?: string;
  readonly ways?: true;
  readonly explain?: string;
  readonly rolls?: string;
  readonly seed?: string;
  readonly json?: true;
  readonly strict?: true;
}

type WaysByShot = ReadonlyMap<string, ReadonlyMap<LimitId, readonly Way[]>>;

const asJson = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

function requireShot(shoot: Shoot, id: string): void {
  if (Object.hasOwn(shoot.shots, id)) return;
  const ids = Object.keys(shoot.shots);
  const near = nearestName(id, ids);
  throw new Fault({
    code: 'plan.unknown-shot',
    what: `There is no shot "${onOneLine(id)}"`,
    where: `longsecond plan --shot ${onOneLine(id)}`,
    mend:
      ids.length === 0
        ? 'This shoot has no shots yet.'
        : near === undefined
          ? `The shots are ${ids.slice(0, 40).join(', ')}${ids.length > 40 ? ' and more' : ''}.`
          : `Did you mean ${near}?`,
  });
}

/** The names that `explain` answers to for a shot. */
function namesIn(shoot: Shoot, shotId: string): readonly string[] {
  const prepared = prepare(shoot, shotId);
  const { givens } = workAt(prepared, candidatesOf(prepared).best[0]);
  return [...new Set([...prepared.model.names, ...givens.keys()])];
}

const isLimit = (name: string): name is LimitId => LIMITS.some((id) => id === name);

/** Traces of a number by its name, or of both figures of a limit by its id. */
function tracesOf(shoot: Shoot, { id, margins }: ShotPlan, name: string): readonly Trace[] {
  const margin = margins.find((one) => one.id === name);
  const names = margin ? [margin.haveName, margin.needName] : [name];
  const traces = names.flatMap((of) => explain(shoot, id, of) ?? []);
  if (traces.length > 0) return traces;
  const limits = margins.map((one) => one.id);
  const near = nearestName(name, [...limits, ...namesIn(shoot, id)]);
  throw new Fault({
    code: 'plan.unknown-number',
    what: isLimit(name) ? `${name} is no limit of this shot` : `This shot has no number "${onOneLine(name)}"`,
    where: `longsecond plan --shot ${id} --explain ${onOneLine(name)}`,
    mend: near === undefined || isLimit(name) ? `Name a limit, such as ${limits.slice(0, 8).join(', ')}, or a number by its name in --json.` : `Did you mean ${near}?`,
  });
} // prettier-ignore

/** The ways to close every short margin of these shots; after the plan's own, those that a search among the lamps finds. */
async function waysOf(shoot: Shoot, { written }: ShootText, shots: readonly ShotPlan[]): Promise<WaysByShot> {
  const current = migrate(written);
  const all = new Map<string, ReadonlyMap<LimitId, readonly Way[]>>();
  for (const { id, margins } of shots) {
    const ways = new Map<LimitId, readonly Way[]>();
    for (const margin of margins.filter(({ state }) => state === 'short')) {
      const found = margin.id === 'light' ? await lampWays({ shoot, written: current, shotId: id, loadHighs }) : [];
      ways.set(margin.id, [...waysFor(shoot, current, id, margin.id), ...found]);
    }
    all.set(id, ways);
  }
  return all;
}

/** More takes than anybody waits for. */
const MOST_ROLLS = 1_000_000;

/** A whole number as it was typed after an option. */
function wholeNumber(option: string, text: string, most: number, least: number): number {
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= least && value <= most) return value;
  throw new Fault({
    code: 'plan.not-a-count',
    what: `Found "${onOneLine(text)}" after ${option}, expected a whole number from ${least} to ${most}`,
    where: `longsecond plan ${option} ${onOneLine(text)}`,
    mend: `Write a whole number, such as ${option} ${option === '--seed' ? USUAL_SEED : USUAL_SAMPLES}.`,
  });
}

/** Every shot with cues or a trigger rolled many times by chance. */
function rolled(shoot: Shoot, shots: readonly ShotPlan[], { rolls = '', seed }: PlanOptions): ReadonlyMap<string, SampledTiming> {
  const sampleCount = wholeNumber('--rolls', rolls, MOST_ROLLS, 1);
  const from = seed === undefined ? (shoot.shoot.seedCount ?? USUAL_SEED) : wholeNumber('--seed', seed, 2 ** 32 - 1, 0);
  const sampled = shots.flatMap((shot) => {
    const timing = sampleShot(shoot, shot, { sampleCount, seed: from });
    return timing ? [[shot.id, timing] as const] : [];
  });
  return new Map(sampled);
} // prettier-ignore

/** Whether anything that was asked for is short: the shots shown, and with all of them the whole shoot. */
function hasShortfall(shots: readonly ShotPlan[], { margins }: Plan, isWhole: boolean): boolean {
  const judged = [...shots.flatMap((shot) => shot.margins), ...(isWhole ? margins : [])];
  return judged.some(({ state }) => state === 'short');
}

interface Asked {
  readonly document: ShootText;
  readonly options: PlanOptions;
  readonly terminal: Terminal;
}

/** Prints what was asked for; true when a margin of it is short. */
async function print({ document, options, terminal }: Asked): Promise<boolean> {
  const { shoot, problems } = document;
  if (options.shot !== undefined) requireShot(shoot, options.shot);
  const plan = planShoot(shoot);
  const shots = plan.shots.filter(({ id }) => options.shot === undefined || id === options.shot);
  const ink = inkOf(terminal.outColour);
  if (options.explain !== undefined) {
    const traces = tracesOf(shoot, shots[0]!, options.explain);
    const system = shoot.shoot.units ?? 'metric';
    const parts = traces.map((trace) => asText(traceLines(trace, { ink, system })));
    terminal.out(options.json ? asJson(traceReply(shots[0]!.id, traces)) : parts.join('\n'));
  } else {
    const shown = {
      ...(options.shot === undefined ? {} : { only: options.shot }),
      ...(options.ways ? { ways: await waysOf(shoot, document, shots) } : {}),
      ...(options.rolls === undefined ? {} : { sampled: rolled(shoot, shots, options) }),
    };
    terminal.out(options.json ? asJson(planReply(plan, problems, shown)) : asText(planLines(plan, shoot, { ...shown, ink })));
  }
  return hasShortfall(shots, plan, options.shot === undefined);
} // prettier-ignore

/** Gives `plan` its arguments, options and action; a shoot named `-` is read from `input`. */
export function planVerb(input: AsyncIterable<Uint8Array>): SetUpVerb {
  return (command, { terminal, endWith }) => {
    command
      .argument('<file>', 'the shoot, as YAML or JSON; - reads standard input')
      .option('--shot <id>', 'only this shot')
      .option('--ways', 'the ways to close what is short, each planned again')
      .option('--explain <name>', 'where a number of the shot, or a limit such as light, comes from')
      .option('--rolls <count>', 'roll each shot with cues or a trigger so many times by chance')
      .option('--seed <number>', 'start the draws of --rolls here rather than at the seed of the shoot')
      .option('--json', 'print for programs rather than for eyes')
      .option('--strict', 'end with 1 when a limit is short')
      .action(async (file: string, options: PlanOptions) => {
        if (options.explain !== undefined && options.shot === undefined)
          throw new Fault({
            code: 'plan.explain-without-shot',
            what: 'Numbers are explained for one shot, and none is named',
            where: `longsecond plan ${file} --explain ${options.explain}`,
            mend: 'Add --shot and the id of the shot.',
          });
        if (options.seed !== undefined && options.rolls === undefined)
          throw new Fault({
            code: 'plan.seed-without-rolls',
            what: 'A seed starts what --rolls draws, and nothing is drawn',
            where: `longsecond plan ${file} --seed ${options.seed}`,
            mend: `Add --rolls and how many takes to draw, such as --rolls ${USUAL_SAMPLES}.`,
          });
        const source = await readShootSource(file, input);
        const document = readDocument(source);
        await tellFilesBeside(file, document.shoot);
        try {
          if ((await print({ document, options, terminal })) && options.strict) endWith(SHORTFALL);
        } finally {
          if (document.problems.length > 0) {
            tellProblems(source.name, document.problems, terminal);
            endWith(BAD_INPUT);
          }
        }
      });
  };
}

export const setUpPlan: SetUpVerb = (command, session) => planVerb(process.stdin)(command, session);
