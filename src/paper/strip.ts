/** A strip of a page: as wide as the page, cut nowhere, placed one under the other. */
import type { Op } from './ops.ts';
import type { Pen } from './pen.ts';

export interface Strip {
  readonly height_pt: number;
  /** Kept free above it, except at the top of a page. */
  readonly before_pt: number;
  /** As if the strip began at the top of the page. */
  readonly ops: readonly Op[];
  /** Not to be the last of its page. */
  readonly holdsNext?: boolean;
  /** Put above it again where it begins a page. */
  readonly head?: Strip;
  /** Repeated while the page has room. */
  readonly fills?: boolean;
  /** Left out, with what it holds on to, where the page has no room for it. */
  readonly isOptional?: boolean;
  /** Begins a new page. */
  readonly breaks?: boolean;
}

/** What every block is laid out with. */
export interface Desk {
  readonly pen: Pen;
  readonly left_pt: number;
  readonly width_pt: number;
  /** Tallest strip that a page holds. */
  readonly page_pt: number;
  /** Everything on the sheet larger or smaller. */
  readonly scale: number;
  /** Name of the block in the tree of what is read aloud. */
  readonly name: string;
}

export const gap_pt = ({ scale }: Pick<Desk, 'scale'>, points: number): number => points * scale;
