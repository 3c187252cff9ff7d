/** The light part of a morning sheet: for each set-up what there is, what every shot needs, and how long it burns. */
import { lampNotes } from '../../plan/lampTimes.ts';
import type { Margin, ShotPlan } from '../../plan/types.ts';
import { showSigned } from '../../base/quantity.ts';
import { sayMargin } from './bars.ts';
import { cell, NOT_KNOWN, sayNumber, sayShots, STATE_WORDS, strong, titleOf } from './say.ts';
import { effectiveShot, marginNamed, shotsBy, sideOf } from './shotWords.ts';
import { paragraph, subheading, unlessEmpty, type Block, type Cell, type Source } from './sheet.ts';

const SEEN: Readonly<Record<string, string>> = {
  'lit-on': 'lit on',
  'lit-through': 'lit through',
  'by-reflection': 'by reflection',
};

/** What the set-up gives, and whether anybody has read it. */
function setupWords(source: Source, id: string): string {
  const { illuminance_lx, luminance_cd_per_m2, reading } = source.shoot.lighting[id] ?? {};
  const figures = [
    ...(illuminance_lx === undefined ? [] : [`${sayNumber(source, 'illuminance_lx', illuminance_lx)} at the subject`]),
    ...(luminance_cd_per_m2 === undefined ? [] : [`${sayNumber(source, 'luminance_cd_per_m2', luminance_cd_per_m2)} seen through or mirrored`]),
  ];
  const how = reading === 'metered' ? 'metered' : reading === 'stated' ? 'stated, not read yet' : 'nobody said whether it was read';
  return figures.length === 0 ? 'no reading yet' : `${figures.join(', ')}, ${how}`;
} // prettier-ignore

function stopsCell(margin: Margin | undefined): Cell {
  if (!margin?.stops) return { ...cell(STATE_WORDS.unknown), state: 'unknown' };
  return { ...strong(showSigned(margin.stops.value), STATE_WORDS[margin.state]), state: margin.state };
}

function shotRow(source: Source, shot: ShotPlan): readonly Cell[] {
  const own = effectiveShot(source.shoot, shot);
  const light = marginNamed(shot, 'light');
  const isNotMuch = light?.missing.map(({ title }) => title).join(', ');
  return [
    strong(String(shot.number)),
    strong(shot.title, own.seen === undefined ? undefined : SEEN[own.seen]),
    strong(sideOf(light, 'need', source) ?? NOT_KNOWN, light?.stops ? undefined : `lacks ${isNotMuch ?? 'a light reading'}`),
    cell(sideOf(light, 'have', source) ?? NOT_KNOWN),
    stopsCell(light),
    cell(own.hero.lightOn_s === undefined ? NOT_KNOWN : sayNumber(source, 'lightOn_s', own.hero.lightOn_s)),
  ];
} // prettier-ignore

const COLUMNS = [
  { title: '', align: 'right' },
  { title: 'Shot', align: 'left' },
  { title: 'Needs', align: 'right' },
  { title: 'There is', align: 'right' },
  { title: 'Stops', align: 'left' },
  { title: 'Light on, a take', align: 'right' },
] as const;

/** The shot that asks for most beyond what there is. */
function hardest(shots: readonly ShotPlan[]): string {
  const known = shots.flatMap((shot) => {
    const margin = marginNamed(shot, 'light');
    return margin?.stops ? [{ shot, margin, stops: margin.stops.value }] : [];
  });
  const [worst] = known.sort((a, b) => a.stops - b.stops);
  return worst ? `Hardest is shot ${worst.shot.number}: ${sayMargin(worst.margin).toLowerCase()}.` : '';
}

function setup(source: Source, id: string | undefined, shots: readonly ShotPlan[]): readonly Block[] {
  const note = id === undefined ? undefined : source.shoot.lighting[id]?.note;
  const says = hardest(shots);
  const lampSays = shots[0] ? lampNotes(shots[0].lampTimes) : [];
  return [
    id === undefined
      ? subheading('No set-up written', sayShots(shots))
      : subheading(titleOf(source.shoot.lighting[id], id), setupWords(source, id)),
    ...(shots.length === 0 ? [paragraph('No shot uses it.', 'small')] : says === '' ? [] : [paragraph(says)]),
    ...unlessEmpty(shots, { block: 'table', name: 'Light for each shot', columns: COLUMNS, rows: shots.map((shot) => shotRow(source, shot)) }),
    ...lampSays.map((words) => paragraph(words, 'small')),
    ...(note === undefined ? [] : [paragraph(note, 'small')]),
  ];
} // prettier-ignore

function longestOn(source: Source): string {
  const known = source.plan.shots.flatMap((shot) => {
    const { lightOn_s } = effectiveShot(source.shoot, shot).hero;
    return lightOn_s === undefined ? [] : [{ shot, lightOn_s }];
  });
  const [longest] = known.sort((a, b) => b.lightOn_s - a.lightOn_s);
  if (!longest) return 'No shot says how long its light burns.';
  return `Longest light-on is ${sayNumber(source, 'lightOn_s', longest.lightOn_s)} a take, shot ${longest.shot.number}.`;
}

export function lightPart(source: Source): readonly Block[] {
  const groups = shotsBy(source, ({ lighting }) => (lighting === undefined ? [] : [lighting]));
  const unlit = source.plan.shots.filter((shot) => effectiveShot(source.shoot, shot).lighting === undefined);
  const used = [...groups.keys()];
  const idle = Object.keys(source.shoot.lighting).filter((id) => !groups.has(id));
  return [
    paragraph(longestOn(source), 'strong'),
    ...[...used, ...idle].flatMap((id) => setup(source, id, groups.get(id) ?? [])),
    ...(unlit.length === 0 ? [] : setup(source, undefined, unlit)),
  ];
}
