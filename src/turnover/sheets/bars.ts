/** Margins as bars on the one axis of stops. */
import type { Figure, Margin } from '../../plan/types.ts';
import { marginWords } from '../words.ts';
import { STATE_WORDS } from './say.ts';
import type { BarPlace, BarRow, BarsBlock, Source } from './sheet.ts';

/** The same axis as on the screen, so that a place on it is learnt once. */
export const PAPER_AXIS = { least: -2.4, most: 2.6 } as const;

const { least, most } = PAPER_AXIS;

export function placeOnAxis(value_stops: number): number {
  return (Math.min(most, Math.max(least, value_stops)) - least) / (most - least);
}

function placeOf({ value, low, high }: Figure): BarPlace {
  const [zero, at] = [placeOnAxis(0), placeOnAxis(value)];
  const beyond = value < least ? 'left' : value > most ? 'right' : undefined;
  return {
    from: Math.min(zero, at),
    to: Math.max(zero, at),
    low: placeOnAxis(low),
    high: placeOnAxis(high),
    ...(beyond === undefined ? {} : { beyond }),
  };
}

const RANK = { short: 0, unknown: 1, tight: 2, spare: 3 } as const;

/** Short ones first, the shortest at the top; then what is not known, what is tight, and the rest in their order. */
export function worstFirst(margins: readonly Margin[]): readonly Margin[] {
  return [...margins].sort(
    (a, b) =>
      RANK[a.state] - RANK[b.state] || (a.state === 'short' ? (a.stops?.value ?? 0) - (b.stops?.value ?? 0) : 0),
  );
}

/** The margin that binds, and undefined where nothing is judged. */
export function worstOf(margins: readonly Margin[]): Margin | undefined {
  const [first] = worstFirst(margins);
  if (first?.state === 'short' || first?.state === 'unknown') return first;
  const known = margins.filter(({ state }) => state === first?.state);
  return [...known].sort((a, b) => (a.stops?.value ?? 0) - (b.stops?.value ?? 0))[0];
}

function barRow(margin: Margin, { system }: Pick<Source, 'system'>): BarRow {
  const { name, figures, spare, state, missing } = marginWords(margin, system);
  return {
    name,
    figures: figures === '' ? `lacks ${missing.map((one) => one.name).join(', ')}` : figures,
    spare,
    state,
    stateWord: STATE_WORDS[state],
    isHard: margin.isHard,
    isAssumed: margin.assumed.length > 0,
    ...(margin.stops ? { place: placeOf(margin.stops) } : {}),
  };
}

const MARKS = [-2, -1, 0, 1, 2] as const;

export function barsOf(name: string, margins: readonly Margin[], source: Pick<Source, 'system'>): BarsBlock {
  return {
    block: 'bars',
    name,
    zero: placeOnAxis(0),
    marks: MARKS.map((mark) => ({
      at: placeOnAxis(mark),
      words: mark === 0 ? 'just enough' : mark < 0 ? `−${-mark}` : `+${mark}`,
    })),
    rows: worstFirst(margins).map((margin) => barRow(margin, source)),
  };
}

/** "Light short 1.3 stops": one margin in a phrase. */
export function sayMargin(margin: Margin): string {
  const { name, state } = marginWords(margin);
  if (margin.stops === undefined) return `${name} not known`;
  const size = Math.abs(margin.stops.value).toFixed(1);
  const by = Number(size) === 0 ? '' : `${size} stops`;
  if (state === 'short') return `${name} short${by === '' ? '' : ` ${by}`}`;
  if (by === '') return state === 'tight' ? `${name} tight, just enough` : `${name} just enough`;
  return state === 'tight' ? `${name} tight, ${by} over` : `${name} ${by} to spare`;
}
