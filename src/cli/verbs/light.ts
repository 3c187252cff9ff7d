/** `longsecond light`: a photometric file described, or a shoot's light by set-up, with lamps found for what is lacking. */
import { Option } from 'commander';
import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { Fault } from '../../base/fault.ts';
import { nearestName } from '../../base/nearest.ts';
import type { Shoot } from '../../document/schema.ts';
import type { ShootText } from '../../document/text.ts';
import { migrate } from '../../document/versions.ts';
import { LARGEST_B } from '../../document/yamlTree.ts';
import { photometryKind, readPhotometry } from '../../laws/light/photometry/read.ts';
import { findLight, type LightFound } from '../../solve/findLight.ts';
import { WISHES, type Wish } from '../../solve/lampProgram.ts';
import { onOneLine } from '../../turnover/lines.ts';
import { photometryFacts } from '../../turnover/photometryFacts.ts';
import type { SetUpVerb } from '../command.ts';
import { BAD_INPUT } from '../command.ts';
import { tellFilesBeside } from '../filesBeside.ts';
import { loadHighs } from '../highs.ts';
import { asText, inkOf, readDocument, tellProblems } from '../shootDocument.ts';
import { readShootSource, STANDARD_INPUT } from '../shootFile.ts';
import type { Terminal } from '../terminal.ts';
import { fileLines } from './lightFile.ts';
import { setupLines, setupReply, type SetupReply } from './lightSetups.ts';

/** Exit code with --strict when a shot lacks light. */
const SHORTFALL = 1;

const LIGHT_SCHEMA = 'longsecond.light/1';

interface LightOptions {
  readonly setup?: string;
  readonly find?: Wish;
  readonly spare?: number;
  readonly ratio?: number;
  readonly replace?: true;
  readonly json?: true;
  readonly strict?: true;
}

/** Nine digits, so that the same shoot prints the same on every machine. */
const rounded = (_: string, value: unknown): unknown =>
  typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(9)) : value;

const asJson = (reply: object): string => `${JSON.stringify({ schema: LIGHT_SCHEMA, ...reply }, rounded, 2)}\n`;

/** The bytes of a photometric file; undefined for what must be a shoot, or cannot be read and is told of as one. */
async function photometricBytes(file: string): Promise<Uint8Array | undefined> {
  if (file === STANDARD_INPUT) return undefined;
  try {
    if ((await stat(file)).size > LARGEST_B && !/\.(?:ies|ldt)$/i.test(file)) return undefined;
    const bytes = new Uint8Array(await readFile(file));
    return /\.(?:ies|ldt)$/i.test(file) || photometryKind(bytes) !== undefined ? bytes : undefined;
  } catch {
    return undefined;
  }
}

function describeFile(file: string, bytes: Uint8Array, { json }: LightOptions, terminal: Terminal): void {
  const read = readPhotometry(bytes);
  if (!read.ok) {
    const { code, what, mend, line } = read.refusal;
    throw new Fault({ code, what, where: line > 0 ? `${file}:${line}` : file, mend });
  }
  const reply = photometryFacts(basename(file), read.photometry);
  terminal.out(json ? asJson({ file: reply }) : asText(fileLines(reply, inkOf(terminal.outColour), 'metric')));
}

function requireSetup(shoot: Shoot, file: string, id: string): void {
  if (Object.hasOwn(shoot.lighting, id)) return;
  const ids = Object.keys(shoot.lighting);
  const near = nearestName(id, ids);
  throw new Fault({
    code: 'light.unknown-setup',
    what: `There is no set-up "${onOneLine(id)}"`,
    where: `longsecond light ${file} --setup ${onOneLine(id)}`,
    mend: ids.length === 0 ? 'This shoot has no set-up of the light yet.' : near === undefined ? `The set-ups are ${ids.slice(0, 40).join(', ')}.` : `Did you mean ${near}?`,
  });
} // prettier-ignore

async function found({ shoot, written }: ShootText, setupId: string, options: LightOptions): Promise<LightFound | undefined> {
  const { find: wish, spare, ratio, replace } = options;
  if (wish === undefined) return undefined;
  return findLight({
    shoot,
    written: migrate(written),
    setupId,
    wish,
    keepStanding: replace !== true,
    loadHighs,
    ...(spare === undefined ? {} : { spare_stops: spare }),
    ...(ratio === undefined ? {} : { keyToFillRatio: ratio }),
  });
} // prettier-ignore

/** Whether a set-up leaves a shot short, or nothing was found for it. */
const lacksLight = ({ shots, found: of }: SetupReply): boolean =>
  of ? of.answers.length === 0 && of.needs.needs.length > 0 : shots.some(({ state }) => state === 'short');

async function describeShoot(file: string, document: ShootText, options: LightOptions, terminal: Terminal): Promise<boolean> {
  const { shoot } = document;
  if (options.setup !== undefined) requireSetup(shoot, file, options.setup);
  await tellFilesBeside(file, shoot);
  const ids = options.setup === undefined ? Object.keys(shoot.lighting) : [options.setup];
  const replies: SetupReply[] = [];
  for (const id of ids) replies.push(setupReply(shoot, id, await found(document, id, options)));
  const page = { ink: inkOf(terminal.outColour), system: shoot.shoot.units ?? 'metric' } as const;
  if (options.json) terminal.out(asJson({ setups: replies }));
  else if (ids.length === 0) terminal.out('No set-up of the light yet: they are written under lighting, each under an id of its own.\n');
  else terminal.out(replies.map((reply) => asText(setupLines(reply, page))).join('\n'));
  return replies.some(lacksLight);
} // prettier-ignore

/** A number of an option within bounds. Throws Fault `light.bad-number`. */
const numberWithin =
  (option: string, least: number, most: number) =>
  (text: string): number => {
    const value = Number(text);
    if (text.trim() !== '' && value >= least && value <= most) return value;
    throw new Fault({
      code: 'light.bad-number',
      what: `${option} takes a number from ${least} to ${most}, and got "${onOneLine(text)}"`,
      where: `longsecond light ${option} ${onOneLine(text)}`,
      mend: `Write ${option} with a plain number, such as 2.`,
    });
  };

/** Gives `light` its arguments, options and action; a shoot named `-` is read from `input`. */
export function lightVerb(input: AsyncIterable<Uint8Array>): SetUpVerb {
  return (command, { terminal, endWith }) => {
    command
      .argument('<file>', 'a photometric file, IES or EULUMDAT, or the shoot; - reads a shoot from standard input')
      .option('--setup <id>', 'only this set-up of the light')
      .addOption(new Option('--find <wish>', 'lamps for what the shots need, with the least of this').choices(WISHES))
      .option('--spare <stops>', 'spare to find, at the low end of the band', numberWithin('--spare', 0, 10))
      .option('--ratio <key to fill>', 'light on the key side over the fill side', numberWithin('--ratio', 1, 64))
      .option('--replace', 'find in place of the lamps that stand, rather than beside them')
      .option('--json', 'print for programs rather than for eyes')
      .option('--strict', 'end with 1 when a shot lacks light, or no lamps are found for it')
      .action(async (file: string, options: LightOptions) => {
        const bytes = await photometricBytes(file);
        if (bytes) {
          describeFile(file, bytes, options, terminal);
          return;
        }
        const source = await readShootSource(file, input);
        const document = readDocument(source);
        try {
          if ((await describeShoot(file, document, options, terminal)) && options.strict) endWith(SHORTFALL);
        } finally {
          if (document.problems.length > 0) {
            tellProblems(source.name, document.problems, terminal);
            endWith(BAD_INPUT);
          }
        }
      });
  };
}

export const setUpLight: SetUpVerb = (command, session) => lightVerb(process.stdin)(command, session);
