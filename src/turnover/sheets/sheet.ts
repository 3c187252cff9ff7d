/** What a sheet of paper says, in blocks: one model for the printed page, the screen's preview and the terminal. */
import type { UnitSystem } from '../../base/quantity.ts';
import type { Shoot } from '../../document/schema.ts';
import type { DayPlan } from '../../plan/day/types.ts';
import type { MarginState, Plan } from '../../plan/types.ts';

/** What every sheet is made from. */
export interface Source {
  readonly shoot: Shoot;
  readonly plan: Plan;
  /** The day as it may go, worked out when a sheet asks for it. */
  readonly day?: () => DayPlan;
  readonly system: UnitSystem;
}

/** A part of a sheet under its own words. */
export interface HeadingBlock {
  readonly block: 'heading';
  readonly level: 2 | 3;
  readonly words: string;
  /** Said beside it, smaller. */
  readonly aside?: string;
}

export interface ParagraphBlock {
  readonly block: 'paragraph';
  readonly words: string;
  readonly tone: 'plain' | 'strong' | 'small';
}

export interface KeyFigure {
  readonly label: string;
  readonly number: string;
  readonly unit: string;
  readonly note?: string;
}

/** Numbers to be read from a step away. */
export interface FiguresBlock {
  readonly block: 'figures';
  readonly size: 'large' | 'small';
  readonly figures: readonly KeyFigure[];
}

export interface Cell {
  readonly words: string;
  /** A second, smaller line. */
  readonly under?: string;
  /** Drawn as a shape before the words, which say it too. */
  readonly state?: MarginState;
  readonly isStrong?: boolean;
}

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
}

export interface TableBlock {
  readonly block: 'table';
  /** What the table is of, for whoever hears it. */
  readonly name: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** What the rows come to. */
  readonly total?: readonly Cell[];
}

/** A table to be written into by hand. */
export interface BlankTableBlock {
  readonly block: 'blank';
  readonly name: string;
  /** Titles with the share of the width each takes. */
  readonly columns: readonly { readonly title: string; readonly share: number }[];
  readonly rowCount: number;
  /** More rows where the page has room for them. */
  readonly fills: boolean;
  /** Left out rather than begin a page of its own. */
  readonly isOptional?: boolean;
}

/** A bar on the axis of stops, in fractions of the axis from left to right. */
export interface BarPlace {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  /** The side on which it runs off the axis. */
  readonly beyond?: 'left' | 'right';
}

export interface BarRow {
  readonly name: string;
  /** "41 klx for 96 klx"; what is lacking where it is not known. */
  readonly figures: string;
  /** "−1.2" stops; empty where it is not known. */
  readonly spare: string;
  readonly state: MarginState;
  readonly stateWord: string;
  readonly isHard: boolean;
  readonly isAssumed: boolean;
  readonly place?: BarPlace;
}

export interface BarsBlock {
  readonly block: 'bars';
  readonly name: string;
  /** Where the line of just enough lies, and the whole stops beside it. */
  readonly zero: number;
  readonly marks: readonly { readonly at: number; readonly words: string }[];
  readonly rows: readonly BarRow[];
}

export interface CautionBlock {
  readonly block: 'caution';
  readonly title: string;
  readonly says: readonly string[];
}

export interface TickItem {
  readonly words: string;
  readonly under?: string;
}

/** Things to be ticked off by hand. */
export interface TicksBlock {
  readonly block: 'ticks';
  readonly name: string;
  readonly items: readonly TickItem[];
}

/** Lines to be filled in by hand, each after its word. */
export interface LinesBlock {
  readonly block: 'lines';
  readonly labels: readonly string[];
}

export interface BoardFrame {
  readonly number: string;
  readonly title: string;
  readonly words: string;
  /** "7 s", or that nobody said. */
  readonly seconds: string;
  /** Which shots serve it, or a remark on its length; empty for none. */
  readonly note: string;
}

/** Frames of the board, each with room for its picture. */
export interface FramesBlock {
  readonly block: 'frames';
  /** Width over height of the picture. */
  readonly aspect: number;
  readonly frames: readonly BoardFrame[];
}

/** Both rulers of a shot, in fractions of the width. */
export interface ClocksBlock {
  readonly block: 'clocks';
  readonly says: string;
  readonly real: string;
  readonly handles: string;
  readonly screen: string;
  readonly stretch: string;
  /** What is kept, and the action within it, on the ruler of real time. */
  readonly kept: readonly [from: number, to: number];
  readonly action: readonly [from: number, to: number];
  readonly threads: readonly { readonly real: number; readonly screen: number }[];
}

export interface RuleBlock {
  readonly block: 'rule';
}

/** What follows is better on a new page. */
export interface BreakBlock {
  readonly block: 'break';
}

export type Block =
  | HeadingBlock
  | ParagraphBlock
  | FiguresBlock
  | TableBlock
  | BlankTableBlock
  | BarsBlock
  | CautionBlock
  | TicksBlock
  | LinesBlock
  | FramesBlock
  | ClocksBlock
  | RuleBlock
  | BreakBlock;

export type SheetKind = 'card' | 'plan' | 'morning' | 'cues' | 'day' | 'dressing';

export interface Sheet {
  readonly id: string;
  readonly kind: SheetKind;
  /** What kind of sheet it is, in words. */
  readonly over: string;
  /** What the shoot is called. */
  readonly shoot: string;
  /** The place and the day; empty where neither is written. */
  readonly about: string;
  /** Before the title, as large: the number of a shot. */
  readonly number?: string;
  readonly title: string;
  /** A line or two under the title. */
  readonly under?: string;
  /** The frames of the board it is for, shown beside the title. */
  readonly served?: FramesBlock;
  readonly blocks: readonly Block[];
}

export const heading = (words: string, aside?: string): HeadingBlock => ({
  block: 'heading',
  level: 2,
  words,
  ...(aside === undefined || aside === '' ? {} : { aside }),
});

export const subheading = (words: string, aside?: string): HeadingBlock => ({ ...heading(words, aside), level: 3 });

export const paragraph = (words: string, tone: ParagraphBlock['tone'] = 'plain'): ParagraphBlock => ({
  block: 'paragraph',
  words,
  tone,
});

/** A block, unless there is nothing in it. */
export const unlessEmpty = <B extends Block>(items: readonly unknown[], block: B): readonly B[] =>
  items.length === 0 ? [] : [block];
