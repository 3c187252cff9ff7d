/** What a printed page is made of: texts and drawn shapes at their places, in points from the top left of the page. */

export type Weight = 'regular' | 'bold';

/**
 * Where a text belongs in what is read aloud, from the sheet down: `['Table:3', 'TR:3.1', 'TD:3.1.2']`. The word before
 * the colon is the kind of element; the whole is its name, so that a part that goes on overleaf stays one.
 */
export type Tag = readonly string[];

export interface TextOp {
  readonly op: 'text';
  readonly words: string;
  readonly x_pt: number;
  /** Top of its line. */
  readonly y_pt: number;
  readonly width_pt: number;
  readonly size_pt: number;
  readonly weight: Weight;
  readonly grey: number;
  /** Absent for what is only drawn: a page number, a head repeated. */
  readonly tag?: Tag;
}

export interface LineOp {
  readonly op: 'line';
  readonly from_pt: readonly [x: number, y: number];
  readonly to_pt: readonly [x: number, y: number];
  readonly width_pt: number;
  readonly grey: number;
}

/** A closed shape, filled or outlined. */
export interface ShapeOp {
  readonly op: 'shape';
  readonly points_pt: readonly (readonly [x: number, y: number])[];
  readonly fill?: number;
  readonly edge?: { readonly width_pt: number; readonly grey: number };
}

export interface RingOp {
  readonly op: 'ring';
  readonly centre_pt: readonly [x: number, y: number];
  readonly radius_pt: number;
  readonly width_pt: number;
}

export type Op = TextOp | LineOp | ShapeOp | RingOp;

/** How dark ink is, from 0 for black to 1 for the paper. */
export const INK = 0;
export const SOFT = 0.28;
export const FAINT = 0.62;
export const WASH = 0.9;

export const LINE_HEIGHT = 1.26;
/** From the top of a line to its baseline. */
export const BASELINE = 0.96;

export const box = (x: number, y: number, width: number, height: number): ShapeOp['points_pt'] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

function movedBy(op: Op, dy_pt: number): Op {
  const down = ([x, y]: readonly [number, number]) => [x, y + dy_pt] as const;
  switch (op.op) {
    case 'text':
      return { ...op, y_pt: op.y_pt + dy_pt };
    case 'line':
      return { ...op, from_pt: down(op.from_pt), to_pt: down(op.to_pt) };
    case 'shape':
      return { ...op, points_pt: op.points_pt.map(down) };
    case 'ring':
      return { ...op, centre_pt: down(op.centre_pt) };
  }
}

/** The same drawing further down the page. */
export const moved = (ops: readonly Op[], dy_pt: number): readonly Op[] => ops.map((op) => movedBy(op, dy_pt));

/** The same drawing for eyes alone: what is read aloud has it already. */
export const unread = (ops: readonly Op[]): readonly Op[] =>
  ops.map((op) => {
    if (op.op !== 'text') return op;
    const { tag: _tag, ...rest } = op;
    return rest;
  });
