/** `longsecond reckon`: lists the laws, tells what one takes, and works it out from numbers as people write them. */
import { Fault } from '../../base/fault.ts';
import { KINDS } from '../../base/kinds.ts';
import { nearestName } from '../../base/nearest.ts';
import { sayShown as said, type UnitSystem } from '../../base/quantity.ts';
import { CATALOGUE, lawNamed, speaksOf, SUBJECTS } from '../../laws/catalogue.ts';
import { exampleOf, inputsOf, resultsOf, type AnyLaw, type InputField, type LawValue } from '../../laws/law.ts';
import { reckon, showField, writeInput, type Reckoned } from '../../laws/reckon.ts';
import { isAssumed, SOURCES, type Source } from '../../laws/sources.ts';
import type { SetUpVerb } from '../command.ts';
import { columns, type Palette } from '../terminal.ts';

interface ReckonOptions {
  readonly list?: string | true;
  readonly json?: true;
  readonly imperial?: true;
  readonly help?: true;
}

const SCHEMA = 'longsecond.reckon/1';
const LIST_SCHEMA = 'longsecond.reckon-list/1';

export const HOW_SEEN: Readonly<Record<Source['seen'], string>> = {
  opened: 'read',
  excerpt: 'read in part',
  memory: 'from memory, not looked up',
  practice: 'common practice, no source',
};

const toJson = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
const quoted = (text: string): string => (/^[\w./:%+-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`);

function unknownLaw(id: string): Fault {
  const near = nearestName(
    id,
    CATALOGUE.map((law) => law.id),
  );
  const about = CATALOGUE.filter((law) => speaksOf(law, id)).map((law) => law.id);
  const meant = near ?? (about.length > 0 ? about.slice(0, 3).join(' or ') : undefined);
  const list = '`longsecond reckon --list` shows every law.';
  return new Fault({
    code: 'reckon.unknown-law',
    what: id.includes('=') ? `The law comes before its numbers, and "${id}" is a number` : `There is no law "${id}"`,
    where: `longsecond reckon ${id}`,
    mend: meant === undefined || id.includes('=') ? list : `Did you mean ${meant}? ${list}`,
  });
}

function findLaw(id: string): AnyLaw {
  const law = lawNamed(id);
  if (law) return law;
  throw unknownLaw(id);
}

/** `name=value` pairs by input name; a name may leave out its unit, which the value carries anyway. */
function readPairs(law: AnyLaw, pairs: readonly string[]): Readonly<Record<string, string>> {
  const names = inputsOf(law).map(({ name }) => name);
  const texts = new Map<string, string>();
  for (const pair of pairs) {
    const at = pair.indexOf('=');
    const typed = pair.slice(0, Math.max(at, 0));
    const bare = names.filter((name) => name.split('_')[0] === typed);
    const name = !names.includes(typed) && bare.length === 1 ? bare[0]! : typed;
    const where = `longsecond reckon ${law.id} ${pair}`;
    if (at < 1)
      throw new Fault({
        code: 'reckon.not-a-pair',
        what: `"${pair}" is not written as name=value`,
        where,
        mend: `Write for example ${pairsOf(exampleTexts(law))[0] ?? 'name=value'}, and put quotes around a value with spaces.`,
      });
    if (texts.has(name))
      throw new Fault({
        code: 'reckon.given-twice',
        what: `${name} is given twice: "${texts.get(name)!}" and "${pair.slice(at + 1)}"`,
        where,
        mend: 'Leave one of them out.',
      });
    texts.set(name, pair.slice(at + 1));
  }
  return Object.fromEntries(texts);
}

/** A law's example as a person would type it: stops by their nearest engraved mark. */
function exampleTexts(law: AnyLaw): Readonly<Record<string, string>> {
  const example = exampleOf(law);
  const texts = inputsOf(law).flatMap((field) => {
    const value = example[field.name];
    if (value === undefined) return [];
    const isStop = field.kind === 'fStop' || field.kind === 'tStop';
    return [[field.name, isStop ? said(showField(field, value)) : writeInput(field, value)] as const];
  });
  return Object.fromEntries(texts);
}

const pairsOf = (texts: Readonly<Record<string, string>>): readonly string[] =>
  Object.entries(texts).map(([name, text]) => `${name}=${quoted(text)}`);

export const exampleLine = (law: AnyLaw): string =>
  ['longsecond reckon', law.id, ...pairsOf(exampleTexts(law))].join(' ');

function sourceRows(law: AnyLaw): readonly (readonly [string, string])[] {
  return law.sources.map((key) => {
    const source = SOURCES[key];
    return [key, source ? `${source.title} (${HOW_SEEN[source.seen]})` : 'not listed'];
  });
}

export function whatItTakes({ kind, as, choices }: InputField, example: string | undefined): string {
  if (kind) return `${KINDS[kind].name}, like ${example ?? KINDS[kind].example}`;
  if (choices) return `one of ${Object.keys(choices).join(', ')}`;
  if (as === 'rational') return 'an exact rate, like 25 or 24000/1001';
  if (as === 'timecode') return 'a timecode, like 01:00:10:00';
  if (as === 'flag') return 'yes or no';
  if (as === 'count') return 'a whole number';
  if (as === 'fraction') return 'a fraction, like 0.3 or 30%';
  return 'a number';
}

function inputLines(field: InputField, example: string | undefined, width: number): string {
  const { name, title, note, choices } = field;
  const fallback = field.default === undefined ? '' : `; ${writeInput(field, field.default)} if left out`;
  const more = [...(note === undefined ? [] : [note]), ...Object.entries(choices ?? {}).map((pair) => pair.join(': '))];
  const head = `  ${name.padEnd(width)}   ${title}: ${whatItTakes(field, example)}${fallback}\n`;
  return head + more.map((line) => `  ${''.padEnd(width)}   ${line}\n`).join('');
}

/** What one law takes, gives and rests on, with an example worked out. */
function describeLaw(law: AnyLaw, system: UnitSystem, { bold, dim }: Palette): string {
  const inputs = inputsOf(law);
  const results = resultsOf(law);
  const width = Math.max(...inputs.map(({ name }) => name.length), ...results.map(({ name }) => name.length));
  const texts = exampleTexts(law);
  const worked = reckon(law, texts, system);
  const example =
    'results' in worked
      ? worked.results.map(({ title, shown }) => `  ${title}  ${said(shown)}\n`)
      : worked.map(({ what }) => `  ${what}\n`);
  const part = (title: string, body: string): string => `\n${bold(title)}\n${body}`;
  return [
    `${bold(law.title)}  ${dim(law.id)}\n${law.says}\n\n  ${law.equation}\n`,
    part('Takes', inputs.map((field) => inputLines(field, texts[field.name], width)).join('')),
    part('Gives', results.map(({ name, title }) => `  ${name.padEnd(width)}   ${title}\n`).join('')),
    part('Holds', `  ${law.holds}\n`),
    part(isAssumed(law.sources) ? 'Sources, none of them looked up' : 'Sources', columns(sourceRows(law))),
    law.cautions ? part('Cautions, in docs/safety.md', law.cautions.map((key) => `  ${key}\n`).join('')) : '',
    part('Example', `  ${exampleLine(law)}\n${example.join('')}`),
  ].join('');
}

function listLaws(word: string): string {
  return SUBJECTS.map(({ title, laws }) => ({ title, laws: laws.filter((law) => speaksOf(law, word)) }))
    .filter(({ laws }) => laws.length > 0)
    .map(({ title, laws }) => `${title}\n${columns(laws.map((law) => [law.id, law.title] as const))}`)
    .join('\n');
}

function listAsJson(word: string): string {
  const laws = SUBJECTS.flatMap(({ title: subject, laws }) =>
    laws.filter((law) => speaksOf(law, word)).map(({ id, title, says }) => ({ id, title, says, subject })),
  );
  return toJson({ schema: LIST_SCHEMA, laws });
}

/** The value of an input whether given or left to its default. */
const valueOf = (field: InputField, { given }: Reckoned): LawValue | undefined => given[field.name] ?? field.default;

function printReckoned(
  law: AnyLaw,
  texts: Readonly<Record<string, string>>,
  reckoned: Reckoned,
  system: UnitSystem,
  { bold, dim }: Palette,
): string {
  const inputs = inputsOf(law).flatMap((field) => {
    const value = valueOf(field, reckoned);
    if (value === undefined) return [];
    const read = said(showField(field, value, system));
    const typed = texts[field.name]?.trim();
    const beside = typed === undefined ? 'left to its default' : typed === read ? '' : `from ${typed}`;
    return [[field.title, beside === '' ? read : `${read}  ${dim(beside)}`] as const];
  });
  const results = reckoned.results.map(({ title, shown }) => [title, said(shown)] as const);
  const width = Math.max(...[...inputs, ...results].map(([title]) => title.length));
  const rows = (list: readonly (readonly [string, string])[]) =>
    columns(list.map(([title, value]) => [title.padEnd(width), value] as const));
  const assumed = isAssumed(law.sources) ? `\n${dim('Assumed: no source of this law was looked up.')}\n` : '';
  return [
    `${bold(law.title)}  ${dim(law.equation)}\n\n${rows(inputs)}\n`,
    rows(results.map(([title, value]) => [title, bold(value)] as const)),
    assumed,
  ].join('');
}

function reckonedAsJson(law: AnyLaw, reckoned: Reckoned): string {
  return toJson({
    schema: SCHEMA,
    law: law.id,
    title: law.title,
    equation: law.equation,
    given: reckoned.given,
    defaulted: Object.fromEntries(
      inputsOf(law)
        .filter(({ name }) => reckoned.defaulted.includes(name))
        .map((field) => [field.name, field.default]),
    ),
    results: Object.fromEntries(reckoned.results.map(({ name, value }) => [name, value])),
    shown: Object.fromEntries(reckoned.results.map(({ name, shown }) => [name, said(shown)])),
    assumed: isAssumed(law.sources),
    sources: law.sources.map((key) => ({ key, ...SOURCES[key] })),
    cautions: law.cautions ?? [],
  });
}

/** Gives `reckon` its arguments, options and action. */
export const setUpReckon: SetUpVerb = (command, { terminal, complain }) => {
  const list = (word: string, asJson: boolean): void => {
    if (!CATALOGUE.some((law) => speaksOf(law, word)))
      throw new Fault({
        code: 'reckon.no-such-word',
        what: `No law speaks of "${word}"`,
        where: `longsecond reckon --list ${quoted(word)}`,
        mend: 'Try a shorter word, or --list alone for every law.',
      });
    terminal.out(asJson ? listAsJson(word) : listLaws(word));
  };
  const work = (law: AnyLaw, pairs: readonly string[], system: UnitSystem, asJson: boolean): void => {
    const texts = readPairs(law, pairs);
    const reckoned = reckon(law, texts, system);
    if ('results' in reckoned) {
      terminal.out(
        asJson ? reckonedAsJson(law, reckoned) : printReckoned(law, texts, reckoned, system, terminal.outColour),
      );
      return;
    }
    for (const { where, what } of reckoned) {
      const at = where === law.id ? law.id : `${law.id}, ${where}`;
      const mend = `\`longsecond reckon ${law.id} --help\` shows what it takes, with an example.`;
      complain(new Fault({ code: 'reckon.bad-input', what, where: at, mend }));
    }
  };
  command
    .argument('[law]', 'the law, by its name in --list')
    .argument('[inputs...]', "what it takes, as name=value: exposureTime='1/2000 s'")
    .helpOption(false)
    .option('-l, --list [word]', 'list the laws, all or those that speak of a word')
    .option('--json', 'print for programs rather than for eyes')
    .option('--imperial', 'show feet, inches and footcandles')
    .option('-h, --help', 'show this, or what a law takes and rests on')
    .action((id: string | undefined, pairs: readonly string[], options: ReckonOptions) => {
      const system = options.imperial ? 'imperial' : 'metric';
      const asJson = options.json ?? false;
      if (options.list !== undefined) list(options.list === true ? '' : options.list, asJson);
      else if (options.help && id === undefined) terminal.out(command.helpInformation());
      else if (id === undefined)
        throw new Fault({
          code: 'reckon.no-law',
          what: 'No law is named',
          where: 'longsecond reckon',
          mend: '`longsecond reckon --list` shows every law, `longsecond reckon <law> --help` what one takes.',
        });
      else if (options.help) terminal.out(describeLaw(findLaw(id), system, terminal.outColour));
      else work(findLaw(id), pairs, system, asJson);
    });
};
