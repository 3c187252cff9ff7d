/**
 * Lines of equal value and the areas above them, over a grid of samples. Coordinates count grid points from the first:
 * x along a row, y from row to row. Where a cell has a corner without a value, nothing is drawn in it.
 */

/** Row after row; NaN where there is no value. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
}

export interface GridPoint {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly points: readonly GridPoint[];
  readonly isClosed: boolean;
}

/** Corners of a cell in the order in which they are walked. */
const CORNERS = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly corners: readonly number[];
}

function cellAt({ columns, values }: Grid, x: number, y: number): Cell | undefined {
  const corners = CORNERS.map(([right, up]) => values[(y + up) * columns + x + right]!);
  return corners.every((value) => Number.isFinite(value)) ? { x, y, corners } : undefined;
}

function* cellsOf(grid: Grid): Generator<Cell> {
  for (let y = 0; y < grid.rows - 1; y += 1)
    for (let x = 0; x < grid.columns - 1; x += 1) {
      const cell = cellAt(grid, x, y);
      if (cell) yield cell;
    }
}

/** Where a level crosses the side from corner `i` to the next. */
function crossing({ x, y, corners }: Cell, i: number, level: number): GridPoint {
  const j = (i + 1) % 4;
  const [a, b] = [corners[i]!, corners[j]!];
  const part = (level - a) / (b - a);
  const [fromX, fromY] = CORNERS[i]!;
  const [toX, toY] = CORNERS[j]!;
  return { x: x + fromX + (toX - fromX) * part, y: y + fromY + (toY - fromY) * part };
}

const crossedSides = (corners: readonly number[], level: number): readonly number[] =>
  [0, 1, 2, 3].filter((i) => corners[i]! >= level !== corners[(i + 1) % 4]! >= level);

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Pairs of sides that a level joins through a cell; a saddle is told apart by what lies in its middle. */
function joinedSides(corners: readonly number[], level: number): readonly (readonly [number, number])[] {
  const sides = crossedSides(corners, level);
  if (sides.length === 2) return [[sides[0]!, sides[1]!]];
  if (sides.length === 0) return [];
  const isMiddleAbove = mean(corners) >= level;
  return corners[0]! >= level === isMiddleAbove
    ? [
        [0, 1],
        [2, 3],
      ]
    : [
        [3, 0],
        [1, 2],
      ];
}

/** One number for each side of the grid, so that neighbours know the side they share. */
function sideId(columns: number, { x, y }: Cell, side: number): number {
  const horizontal = (row: number) => 2 * (row * columns + x);
  const vertical = (column: number) => 2 * (y * columns + column) + 1;
  return [horizontal(y), vertical(x + 1), horizontal(y + 1), vertical(x)][side]!;
}

interface Piece {
  readonly ends: readonly [number, number];
  readonly points: readonly [GridPoint, GridPoint];
}

/** Lines along which the values equal a level, as long as they go. */
export function isolines(grid: Grid, level: number): readonly Line[] {
  const pieces: Piece[] = [];
  for (const cell of cellsOf(grid))
    for (const [a, b] of joinedSides(cell.corners, level))
      pieces.push({
        ends: [sideId(grid.columns, cell, a), sideId(grid.columns, cell, b)],
        points: [crossing(cell, a, level), crossing(cell, b, level)],
      });
  const at = new Map<number, Piece[]>();
  for (const piece of pieces) for (const end of piece.ends) at.set(end, [...(at.get(end) ?? []), piece]);
  const isUsed = new Set<Piece>();
  const walk = (first: Piece, from: 0 | 1): Line => {
    const start = first.ends[from];
    const points = [first.points[from]];
    let piece: Piece | undefined = first;
    let entry = start;
    while (piece) {
      isUsed.add(piece);
      const exit: 0 | 1 = piece.ends[0] === entry ? 1 : 0;
      points.push(piece.points[exit]);
      entry = piece.ends[exit];
      piece = at.get(entry)!.find((next) => !isUsed.has(next));
    }
    return { points, isClosed: entry === start };
  };
  const lines: Line[] = [];
  for (const piece of pieces) {
    if (isUsed.has(piece)) continue;
    const loose = piece.ends.findIndex((end) => at.get(end)!.length === 1);
    if (loose >= 0) lines.push(walk(piece, loose as 0 | 1));
  }
  for (const piece of pieces) if (!isUsed.has(piece)) lines.push(walk(piece, 0));
  return lines;
}

function aboveInCell(cell: Cell, level: number): readonly (readonly GridPoint[])[] {
  const { x, y, corners } = cell;
  const isAbove = corners.map((value) => value >= level);
  const corner = (i: number): GridPoint => ({ x: x + CORNERS[i]![0], y: y + CORNERS[i]![1] });
  const isSplit = crossedSides(corners, level).length === 4 && mean(corners) < level;
  if (isSplit)
    return [0, 1, 2, 3]
      .filter((i) => isAbove[i])
      .map((i) => [crossing(cell, (i + 3) % 4, level), corner(i), crossing(cell, i, level)]);
  const polygon = [0, 1, 2, 3].flatMap((i) => [
    ...(isAbove[i] ? [corner(i)] : []),
    ...(isAbove[i] !== isAbove[(i + 1) % 4] ? [crossing(cell, i, level)] : []),
  ]);
  return polygon.length > 2 ? [polygon] : [];
}

const rectangle = (fromX: number, toX: number, y: number): readonly GridPoint[] => [
  { x: fromX, y },
  { x: toX, y },
  { x: toX, y: y + 1 },
  { x: fromX, y: y + 1 },
];

/** Rectangles over every run of cells in a row for which something holds. */
function rowRuns(grid: Grid, holds: (x: number, y: number) => boolean): (readonly GridPoint[])[] {
  const runs: (readonly GridPoint[])[] = [];
  for (let y = 0; y < grid.rows - 1; y += 1) {
    let from: number | undefined;
    for (let x = 0; x < grid.columns; x += 1) {
      const isIn = x < grid.columns - 1 && holds(x, y);
      if (isIn) from ??= x;
      else if (from !== undefined) {
        runs.push(rectangle(from, x, y));
        from = undefined;
      }
    }
  }
  return runs;
}

/** Polygons that together cover where the values are at or above a level. */
export function areasAbove(grid: Grid, level: number): readonly (readonly GridPoint[])[] {
  const isWhole = (cell: Cell) => cell.corners.every((value) => value >= level);
  const whole = rowRuns(grid, (x, y) => {
    const cell = cellAt(grid, x, y);
    return cell !== undefined && isWhole(cell);
  });
  for (const cell of cellsOf(grid)) if (!isWhole(cell)) whole.push(...aboveInCell(cell, level));
  return whole;
}

/** Polygons that cover the cells with a corner that has no value. */
export function areasWithout(grid: Grid): readonly (readonly GridPoint[])[] {
  return rowRuns(grid, (x, y) => cellAt(grid, x, y) === undefined);
}
