/** A plan as text for eyes: for each shot what to set, how every limit stands, what is missing and what is assumed. */
import type { UnitSystem } from '../base/quantity.ts';
import type { Shoot } from '../document/schema.ts';
import type { SampledTiming } from '../plan/timing/types.ts';
import type { Assumption, Clocks, LampGiven, LimitId, Margin, Missing, Plan, ShotPlan, Way } from '../plan/types.ts';
import { columnsOf, onOneLine, padded, PAGE_COLUMNS, PLAIN, wrapped, type Ink } from './lines.ts';
import { flickerWords } from './flickerText.ts';
import { settingsWords } from './settingsWords.ts';
import { timingLines } from './timingText.ts';
import { wayLines } from './wayText.ts';
import { marginWords, missingWords, numberWords, said, type MarginWords } from './words.ts';

export interface PlanTextOptions {
  readonly ink?: Ink;
  /** Only the shot of this id, with the path of every assumption. */
  readonly only?: string;
  /** Ways to close short margins, by shot and limit. */
  readonly ways?: ReadonlyMap<string, ReadonlyMap<LimitId, readonly Way[]>>;
  /** Takes drawn by chance, by shot. */
  readonly sampled?: ReadonlyMap<string, SampledTiming>;
}

/** What every part of the text is made with. */
interface Page {
  readonly shoot: Shoot;
  readonly system: UnitSystem;
  readonly ink: Ink;
}

/** Lines of a whole plan, or of one shot of it, in the units the shoot prefers. */
export function planLines(plan: Plan, shoot: Shoot, options: PlanTextOptions = {}): readonly string[] {
  const { ink = PLAIN, only, ways, sampled } = options;
  const page: Page = { shoot, system: shoot.shoot.units ?? 'metric', ink };
  const shots = plan.shots.filter(({ id }) => only === undefined || id === only);
  return [
    ink.strong(onOneLine(plan.title)),
    ink.faint('Spare is in stops, its band holds eight cases in ten.  ! short  ~ tight  ? unknown'),
    ...(plan.shots.length === 0
      ? ['', 'No shots yet: they are written under shots, each under an id of its own.']
      : []),
    ...shots.flatMap((shot) => [
      '',
      ...shotLines(page, shot, { ways: ways?.get(shot.id), sampled: sampled?.get(shot.id) }),
    ]),
    ...assumptionLines(page, shots),
    ...matchLines(page, plan, shots),
    ...referenceLines(page, plan, shots),
    ...(only === undefined ? ['', ...totalLines(page, plan)] : []),
  ].map((line) => line.trimEnd());
}

const INDENT = 3;

/** What was asked for beside the plan of one shot. */
interface ShotShown {
  readonly ways: ReadonlyMap<LimitId, readonly Way[]> | undefined;
  readonly sampled: SampledTiming | undefined;
}

function shotLines(page: Page, shot: ShotPlan, { ways, sampled }: ShotShown): readonly string[] {
  const { ink, system } = page;
  const title = onOneLine(shot.title);
  const head = padded(String(shot.number), INDENT - 1);
  const name = title === shot.id ? '' : `  ${ink.faint(shot.id)}`;
  return [
    `${head} ${ink.strong(title)}${name}`,
    ...settingsLines(page, shot),
    ...(shot.timing ? ['', ...timingLines({ timing: shot.timing, sampled, ink, system, indent: INDENT })] : []),
    '',
    ...marginLines(page, shot.margins),
    ...missingLines([...shot.missing, ...shot.margins.flatMap(({ missing }) => missing)], ink),
    ...shot.notes.flatMap((says) => wrapped(onOneLine(`Note: ${says}`), INDENT, INDENT + 2)),
    ...shot.cautions.flatMap(({ says }) => wrapped(onOneLine(`Take care: ${says}`), INDENT, INDENT + 2)),
    ...shortFirst(shot.margins).flatMap((margin) => {
      const found = ways?.get(margin.id);
      return found ? ['', ...wayLines({ margin, ways: found, ink, system, indent: INDENT })] : [];
    }),
  ];
} // prettier-ignore

function settingsLines({ shoot, system }: Page, { settings, clocks, lamps, flicker }: ShotPlan): readonly string[] {
  if (!settings) return wrapped('No settings yet: what is missing stands below the limits.', INDENT);
  const words = settingsWords(settings, shoot, system);
  const camera = `${onOneLine(words.camera)} ${words.format}`;
  const lens = `${onOneLine(words.lens)} at ${words.distance}, ${words.clear} clear`;
  return [
    ...wrapped([words.rate, `shutter ${words.shutter} (${words.angle})`, words.stop, words.index].join('   '), INDENT),
    ...wrapped(`${camera}   ${lens}`, INDENT),
    ...(clocks ? wrapped(clockWords(clocks), INDENT) : []),
    ...(lamps.length > 0
      ? wrapped(`Lamps: ${lamps.map((lamp) => lampWords(lamp, system)).join(', ')}`, INDENT, INDENT + 2)
      : []),
    ...(flicker ? wrapped(flickerWords(flicker), INDENT, INDENT + 2) : []),
  ];
}

/** "Key 32 klx, 52 %, at 1.8 m". */
function lampWords({ title, illuminance_lx, shareFraction, distance_m }: LampGiven, system: UnitSystem): string {
  const light = said(numberWords({ name: 'illuminance_lx', value: illuminance_lx, kind: 'illuminance', system }));
  const away = said(numberWords({ name: 'distance_m', value: distance_m, kind: 'length', system }));
  return `${onOneLine(title)} ${light}, ${Math.round(shareFraction * 100)} %, at ${away}`;
}

const seconds = (value: number): string => said(numberWords({ name: 'time_s', value, kind: 'time' }));

/** The shot on its two clocks: "280 ms of action with 150 ms before and after; 7 s on screen, 25 times slower". */
function clockWords({ actionTime_s, handles_s, screenTime_s, slowestFraction, fastestFraction }: Clocks): string {
  const handles = handles_s > 0 ? ` with ${seconds(handles_s)} before and after` : '';
  return `${seconds(actionTime_s)} of action${handles}; ${seconds(screenTime_s)} on screen, ${slowness(slowestFraction, fastestFraction)}`;
}

function slowness(slowest: number, fastest: number): string {
  const times = (fraction: number): string =>
    said(numberWords({ name: 'ratio', value: 1 / fraction, kind: undefined }));
  if (Math.abs(slowest / fastest - 1) > 1e-9) return `at its slowest ${times(slowest)} times slower`;
  return Math.abs(slowest - 1) < 1e-9 ? 'in real time' : `${times(slowest)} times slower`;
}

const MARKS = { short: '!', tight: '~', unknown: '?', spare: ' ' } as const;

/** Short ones first, the shortest at the top; then the rest in the order limits are read. */
function shortFirst(margins: readonly Margin[]): readonly Margin[] {
  const short = margins.filter(({ state }) => state === 'short');
  return [
    ...[...short].sort((a, b) => (a.stops?.value ?? 0) - (b.stops?.value ?? 0)),
    ...margins.filter(({ state }) => state !== 'short'),
  ];
}

const widest = (texts: readonly string[]): number => Math.max(0, ...texts.map(columnsOf));

/** Bands line up from shot to shot unless one of them is unusually wide. */
const USUAL_BAND = '−0.1 to +0.7'.length;

/** What a row takes besides its name, its figures and its band: mark, spare, state, and whether it is hard. */
const REST_COLUMNS = INDENT + 2 + '  −12.3  '.length + '  short  taste  '.length;

function marginLines({ system, ink }: Page, margins: readonly Margin[]): readonly string[] {
  const rows = shortFirst(margins).map((margin) => {
    const words = marginWords(margin, system);
    return { ...words, name: onOneLine(words.name), isHard: margin.isHard };
  });
  const known = rows.filter((row) => row.figures !== '');
  const figures = widest(known.map((row) => row.figures));
  const band = Math.max(USUAL_BAND, widest(known.map((row) => row.band)));
  const name = Math.min(widest(known.map((row) => row.name)), PAGE_COLUMNS - REST_COLUMNS - figures - band);
  return rows.flatMap((row) => marginRow(row, { name, figures, band }, ink));
}

interface Widths {
  readonly name: number;
  readonly figures: number;
  readonly band: number;
}

function marginRow(row: MarginWords & { readonly isHard: boolean }, widths: Widths, ink: Ink): readonly string[] {
  const { name, figures, spare, band, state, missing, isHard } = row;
  const mark = `${' '.repeat(INDENT)}${ink[state](MARKS[state])} `;
  if (state === 'unknown') {
    const lack = `unknown  lacks ${missing.map((one) => onOneLine(one.name)).join(', ')}`;
    const [first = '', ...more] = wrapped(lack, INDENT + 4 + Math.max(widths.name, columnsOf(name)), INDENT + 6);
    return [`${mark}${padded(name, widths.name)}  ${ink.unknown(first.trimStart())}`, ...more];
  }
  const rest = `${padded(figures, widths.figures)}  ${spare.padStart(5)}  ${padded(band, widths.band)}  ${ink[state](padded(state, 5))}  ${isHard ? 'hard' : 'taste'}`;
  if (columnsOf(name) <= widths.name) return [`${mark}${padded(name, widths.name)}  ${rest}`];
  const [first = '', ...more] = wrapped(name, INDENT + 2, INDENT + 4);
  return [mark + first.slice(INDENT + 2), ...more, `${' '.repeat(INDENT + 2 + widths.name)}  ${rest}`];
}

/** Everything that is missing, once, with where it would be written. */
function missingLines(missing: readonly Missing[], ink: Ink): readonly string[] {
  const once = [...new Map(missing.map((one) => [`${one.name} ${one.path}`, one])).values()];
  if (once.length === 0) return [];
  return [
    `${' '.repeat(INDENT)}${ink.unknown('Missing')}`,
    ...once.flatMap((one) => {
      const { name, says, path } = missingWords(one);
      return wrapped(`${onOneLine(name)}, ${onOneLine(says)}: ${path}`, INDENT + 2, INDENT + 4);
    }),
  ];
}

interface SharedAssumption {
  readonly title: string;
  readonly shown: string;
  readonly why: string;
  readonly paths: Set<string>;
  readonly numbers: Set<number>;
}

/** What the figures rest on that nobody wrote: once for all shots that share it. */
function assumptionLines({ ink, system }: Page, shots: readonly ShotPlan[]): readonly string[] {
  const shared = new Map<string, SharedAssumption>();
  for (const { assumed, number } of shots)
    for (const assumption of assumed) {
      const { name, title, why } = assumption;
      const shown = said(numberWords({ ...assumption, kind: assumption.kind, system }));
      const key = JSON.stringify([name, title, shown, why]);
      const entry = shared.get(key) ?? { title, shown, why, paths: new Set(), numbers: new Set() };
      entry.paths.add(pathWords(assumption, shots.length));
      entry.numbers.add(number);
      shared.set(key, entry);
    }
  if (shared.size === 0) return [];
  const whose = (numbers: ReadonlySet<number>): string =>
    shots.length === 1 ? '' : numbers.size === shots.length ? 'all shots; ' : `${numbers.size === 1 ? 'shot' : 'shots'} ${[...numbers].join(', ')}; `;
  return [
    '',
    ink.strong('Assumed, as nobody wrote it'),
    ...[...shared.values()].flatMap(({ title, shown, why, paths, numbers }) =>
      wrapped(`${onOneLine(title)} ${shown}: ${why}; ${whose(numbers)}to change it write ${[...paths].join(' or ')}`, INDENT, INDENT + 2),
    ),
  ];
} // prettier-ignore

/** Plates and elements of the shots shown, with what keeps each from matching. */
function matchLines({ ink }: Page, { matches, shots: all }: Plan, shots: readonly ShotPlan[]): readonly string[] {
  const titleOf = (id: string) => onOneLine(all.find((shot) => shot.id === id)?.title ?? id);
  const told = matches.filter(({ shotId }) => shots.some(({ id }) => id === shotId));
  if (told.length === 0) return [];
  return [
    '',
    ink.strong('Plates and elements'),
    ...told.flatMap(({ shotId, matchesId, differences }) => {
      const head = `${titleOf(shotId)} for ${titleOf(matchesId)}`;
      if (differences.length === 0) return wrapped(`${head}: matches`, INDENT, INDENT + 2);
      const words = differences.map(({ what, here, there }) => `${what} ${onOneLine(here)}, not ${onOneLine(there)}`);
      return wrapped(`${head}: ${ink.short('does not match')}: ${words.join('; ')}`, INDENT, INDENT + 2);
    }),
  ];
} // prettier-ignore

/** Reference rolls of the shots shown. */
function referenceLines({ ink }: Page, { references }: Plan, shots: readonly ShotPlan[]): readonly string[] {
  const told = references.filter(({ shotId }) => shots.some(({ id }) => id === shotId));
  if (told.length === 0) return [];
  const numberOf = (shotId: string) => shots.find(({ id }) => id === shotId)!.number;
  return [
    '',
    ink.strong('Reference rolls, before the first take'),
    ...told.flatMap(({ shotId, what, because }) =>
      wrapped(`shot ${numberOf(shotId)}: ${onOneLine(what)}, ${onOneLine(because)}`, INDENT, INDENT + 2),
    ),
  ];
}

/** Where it would be written; with several shots, the same key of any of them. */
function pathWords({ path }: Assumption, shotCount: number): string {
  return shotCount === 1 ? path : path.replace(/^\/shots\/[^/]+/, '/shots/*');
}

function totalLines(page: Page, { totals, margins }: Plan): readonly string[] {
  const { screenTime_s, takeCount, keptSize_B, saveTime_s, shortCount, tightCount, unknownCount } = totals;
  const size = said(numberWords({ name: 'keptSize_B', value: keptSize_B, kind: 'bytes' }));
  const takes = takeCount === 1 ? '1 take' : `${takeCount} takes`;
  return [
    page.ink.strong('The whole shoot'),
    ...wrapped(`${seconds(screenTime_s)} on screen from ${takes}; what is kept weighs ${size} and takes ${seconds(saveTime_s)} to save`, INDENT, INDENT + 2),
    `${' '.repeat(INDENT)}limits of the shots: ${shortCount} short, ${tightCount} tight, ${unknownCount} unknown`,
    ...marginLines(page, margins),
    ...missingLines(margins.flatMap(({ missing }) => missing), page.ink),
  ];
} // prettier-ignore
