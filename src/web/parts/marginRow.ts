/** What a margin chart draws: one limit with its figures, already put into words and units by whoever shows it. */
import { sayShown, type Shown } from '../../base/quantity.ts';
import type { Span } from './marginScale.ts';
import type { Standing } from './StateWord.tsx';

export interface ChartRow {
  readonly id: string;
  readonly title: string;
  /** Which of several it is for. */
  readonly detail?: string;
  /** Ends in a wall; otherwise in a fade. */
  readonly isHard: boolean;
  readonly standing: Standing;
  readonly have?: Shown;
  readonly need?: Shown;
  /** The word between the two figures. */
  readonly joint: string;
  readonly stops?: Span;
  /** What is lacking when it is not known. */
  readonly missing: readonly { readonly title: string; readonly path: string; readonly says: string }[];
  /** It rests on something nobody measured or published. */
  readonly isAssumed: boolean;
}

/** Where a row would stand after a change. */
export interface Ghost {
  readonly stops: Span;
  readonly standing: Standing;
  readonly have?: Shown;
  readonly need?: Shown;
}

/** Smaller changes are not worth an outline. */
const LEAST_CHANGE_stops = 0.05;

/** How far a row would move, or undefined when it would stay where it is. */
export function changeOf(row: ChartRow, ghost: Ghost | undefined): number | undefined {
  if (!ghost || !row.stops) return undefined;
  const change = ghost.stops.value - row.stops.value;
  return Math.abs(change) < LEAST_CHANGE_stops ? undefined : change;
}

/** "41 klx for 96 klx". */
export function sayFigures({ have, need, joint }: Pick<ChartRow, 'have' | 'need' | 'joint'>): string {
  if (!have || !need) return '';
  return `${sayShown(have)} ${joint} ${sayShown(need)}`;
}

/** The row in one sentence, for whoever hears it. */
export function sayRow(row: ChartRow): string {
  const name = row.detail === undefined ? row.title : `${row.title}, ${row.detail}`;
  if (!row.stops) return `${name}: not known`;
  const size = Math.abs(row.stops.value).toFixed(1);
  const stands = { short: `short by ${size} stops`, tight: `tight, ${size} stops over`, spare: `${size} stops to spare`, unknown: 'not known' }[row.standing]; // prettier-ignore
  return `${name}: ${stands}, ${sayFigures(row)}${row.isAssumed ? '; rests on an assumption' : ''}`;
}
