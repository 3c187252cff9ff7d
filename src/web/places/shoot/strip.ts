/** All limits of a shot on one short axis: a small mark each, stacked where they would cover one another. */
import type { Margin, MarginState } from '../../../plan/types.ts';
import { AXIS, placeOnAxis } from '../../parts/marginScale.ts';

export interface StripMark {
  readonly id: string;
  readonly says: string;
  readonly standing: MarginState;
  /** Across the axis, from 0 to 1. */
  readonly at: number;
  /** Steps above (positive) or below the middle. */
  readonly level: number;
}

export interface Strip {
  readonly marks: readonly StripMark[];
  /** Where the worst short margin lies; the bar runs from there to just enough. */
  readonly worstShort?: number;
  /** Limits beyond either end of the axis. */
  readonly beyond: { readonly left: readonly string[]; readonly right: readonly string[] };
  readonly unknown: readonly string[];
}

/** Just enough lies between two places, so that no mark sits on it and leaves open which side it is on. */
const PLACE_stops = 0.16;

/** Marks that one place holds; more move on towards spare. */
const MOST_LEVELS = 5;

/** Kept free at either end for the count of what lies beyond. */
const END_stops = 0.25;

const FIRST = Math.ceil((AXIS.least + END_stops) / PLACE_stops);
const LAST = Math.floor((AXIS.most - END_stops) / PLACE_stops) - 1;

/** 0, 1, −1, 2, −2: from the middle outwards. */
const levelOf = (nth: number) => Math.ceil(nth / 2) * (nth % 2 === 1 ? 1 : -1) + 0;

const RANK: Readonly<Record<MarginState, number>> = { short: 0, tight: 1, spare: 2, unknown: 3 };

export function sayMargin({ title, detail, state, stops }: Margin): string {
  const name = detail === undefined ? title : `${title}, ${detail}`;
  if (!stops) return `${name}: not known`;
  const size = Math.abs(stops.value).toFixed(1);
  if (state === 'short') return `${name}: short ${size} stops`;
  if (size === '0.0') return `${name}: ${state === 'tight' ? 'tight, ' : ''}just enough`;
  return state === 'tight' ? `${name}: tight, ${size} stops over` : `${name}: ${size} stops to spare`;
}

export function layStrip(margins: readonly Margin[]): Strip {
  const known = margins
    .flatMap((margin) => (margin.stops ? [{ margin, stops: margin.stops.value }] : []))
    .sort((a, b) => RANK[a.margin.state] - RANK[b.margin.state] || a.stops - b.stops);
  const taken = new Map<number, number>();
  const marks: StripMark[] = [];
  const beyond = { left: [] as string[], right: [] as string[] };
  for (const { margin, stops } of known) {
    const says = sayMargin(margin);
    // A figure may miss just enough by a rounding error; how it stands says which side it is on.
    const isShort = margin.state === 'short';
    let place = isShort ? Math.min(-1, Math.floor(stops / PLACE_stops)) : Math.max(0, Math.floor(stops / PLACE_stops));
    // A full place sends the next mark away from just enough, never across it.
    while (place >= FIRST && place <= LAST && (taken.get(place) ?? 0) >= MOST_LEVELS) place += isShort ? -1 : 1;
    if (place < FIRST) {
      beyond.left.push(says);
      continue;
    }
    if (place > LAST) {
      beyond.right.push(says);
      continue;
    }
    const nth = taken.get(place) ?? 0;
    taken.set(place, nth + 1);
    const at = placeOnAxis((place + 0.5) * PLACE_stops);
    marks.push({ id: margin.id, says, standing: margin.state, at, level: levelOf(nth) });
  }
  const [worst] = known;
  return {
    marks,
    ...(worst && worst.margin.state === 'short' ? { worstShort: placeOnAxis(worst.stops) } : {}),
    beyond,
    unknown: margins.filter(({ stops }) => !stops).map(sayMargin),
  };
}

/** "light short 1.3 stops": the limit that binds, and how many others are short, tight or not known. */
export function sayWorst(margins: readonly Margin[]): { readonly standing: MarginState; readonly worst: string; readonly others: string } {
  const known = margins.flatMap((margin) => (margin.stops ? [{ margin, stops: margin.stops.value }] : []));
  const of = (state: MarginState) => margins.filter((margin) => margin.state === state);
  const [short, tight, unknown] = [of('short'), of('tight'), of('unknown')];
  const least = (standing: MarginState) =>
    known.filter(({ margin }) => margin.state === standing).sort((a, b) => a.stops - b.stops)[0]?.margin;
  const worst = least('short') ?? least('tight') ?? unknown[0] ?? least('spare');
  if (!worst) return { standing: 'unknown', worst: 'nothing to judge yet', others: '' };
  const others = (
    [
      [short, 'short'],
      [tight, 'tight'],
      [unknown, 'not known'],
    ] as const
  )
    .map(([list, word]) => [list.filter((margin) => margin !== worst).length, word] as const)
    .filter(([howMany]) => howMany > 0)
    .map(([howMany, word]) => `${howMany} ${word}`)
    .join(', ');
  const name = worst.title.toLowerCase();
  const size = worst.stops ? Math.abs(worst.stops.value).toFixed(1) : '';
  const words: Readonly<Record<MarginState, string>> = {
    short: `${name} short ${size} stops`,
    tight: size === '0.0' ? `${name} tight, just enough` : `${name} tight, ${size} stops over`,
    unknown: `${name} not known`,
    spare: `all to spare; least is ${name}, ${size} stops`,
  };
  return { standing: worst.state, worst: words[worst.state], others: others === '' ? '' : `also ${others}` };
} // prettier-ignore
