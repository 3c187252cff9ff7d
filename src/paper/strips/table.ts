/** Tables: columns as wide as they need, rows ruled, heads repeated overleaf; and tables to be written into by hand. */
import { fitColumns } from '../../turnover/sheets/fitColumns.ts';
import type { BlankTableBlock, Cell, Column, TableBlock } from '../../turnover/sheets/sheet.ts';
import { FAINT, INK, type Op } from '../ops.ts';
import { lineHeight_pt, type Style } from '../pen.ts';
import { gap_pt, type Desk, type Strip } from '../strip.ts';
import { stateShape } from './stateShape.ts';
import { bodyOf, smallOf } from './words.ts';

interface Styles {
  readonly plain: Style;
  readonly strong: Style;
  readonly small: Style;
  readonly head: Style;
  /** Room for the shape before a word. */
  readonly sign_pt: number;
}

function stylesOf(desk: Desk): Styles {
  const plain = { size_pt: bodyOf(desk).size_pt * 0.96 };
  const small = { ...smallOf(desk), size_pt: smallOf(desk).size_pt * 0.97 };
  return { plain, strong: { ...plain, weight: 'bold' }, small, head: small, sign_pt: plain.size_pt * 1.15 };
}

const GAP_pt = 9;
/** Most that a gap is opened where the page has room. */
const MORE_GAP_pt = 14;

interface Placed {
  readonly x_pt: number;
  readonly width_pt: number;
}

/** Where each column lies; what is left over goes to columns of words. */
function placeColumns(desk: Desk, { columns, rows, total }: TableBlock, styles: Styles): readonly Placed[] {
  const { pen, left_pt, width_pt } = desk;
  const gap = gap_pt(desk, GAP_pt);
  const all = [...rows, ...(total ? [total] : [])];
  const wishes = columns.map(({ title }, i) => {
    const wishOf = (cell: Cell) => {
      const main = pen.wish(cell.words, cell.isStrong === true ? styles.strong : styles.plain);
      const under = cell.under === undefined ? { natural: 0, least: 0 } : pen.wish(cell.under, styles.small);
      const sign = cell.state === undefined ? 0 : styles.sign_pt;
      // A remark under a cell breaks more readily than the cell itself.
      return { natural: Math.max(main.natural + sign, Math.min(under.natural, gap_pt(desk, 120))), least: Math.max(main.least + sign, under.least) };
    };
    const cells = [pen.wish(title, styles.head), ...all.map((row) => wishOf(row[i]!))];
    return { natural: Math.max(...cells.map((wish) => wish.natural)), least: Math.max(...cells.map((wish) => wish.least)) };
  });
  const gaps = columns.length - 1;
  const room = width_pt - gap * gaps;
  const fitted = fitColumns(wishes, room);
  const left = Math.max(0, room - fitted.reduce((sum, width) => sum + width, 0));
  // What is left over opens the gaps first, then goes to columns of words.
  const wider = gaps === 0 ? 0 : Math.min(gap_pt(desk, MORE_GAP_pt), left / gaps);
  const ofWords = columns.filter(({ align }) => align === 'left').length;
  const widths = fitted.map((width, i) => width + (columns[i]!.align === 'left' ? (left - wider * gaps) / ofWords : 0));
  const starts = widths.map((_, i) => widths.slice(0, i).reduce((sum, width) => sum + width + gap + wider, left_pt));
  return widths.map((width, i) => ({ x_pt: starts[i]!, width_pt: width }));
} // prettier-ignore

interface SetLine {
  readonly words: string;
  readonly style: Style;
  /** It carries the shape of the state. */
  readonly state?: Cell['state'];
  readonly indent_pt: number;
}

function cellLines(desk: Desk, cell: Cell, { width_pt }: Placed, styles: Styles): readonly SetLine[] {
  const { pen } = desk;
  const style = cell.isStrong === true ? styles.strong : styles.plain;
  const indent_pt = cell.state === undefined ? 0 : styles.sign_pt;
  const main = cell.words === '' ? [] : pen.lines(cell.words, style, width_pt - indent_pt);
  const under = cell.under === undefined ? [] : pen.lines(cell.under, styles.small, width_pt - indent_pt);
  return [
    ...main.map((words, i) => ({ words, style, indent_pt, ...(i === 0 ? { state: cell.state } : {}) })),
    ...under.map((words) => ({ words, style: styles.small, indent_pt })),
  ];
}

const heightOf = (lines: readonly SetLine[]): number => lines.reduce((sum, { style }) => sum + lineHeight_pt(style), 0);

function drawCell(desk: Desk, lines: readonly SetLine[], { x_pt, width_pt }: Placed, { align }: Column, top_pt: number, tag: readonly string[]): readonly Op[] {
  let y = top_pt;
  return lines.flatMap(({ words, style, state, indent_pt }) => {
    const at = y;
    y += lineHeight_pt(style);
    const put = desk.pen.put([words], { ...style, x_pt: x_pt + indent_pt, y_pt: at, align, width_pt: width_pt - indent_pt, tag });
    const side = style.size_pt * 0.78;
    const sign = state === undefined ? [] : stateShape(state, align === 'right' && put[0] ? put[0].x_pt - indent_pt : x_pt, at + lineHeight_pt(style) * 0.5 - side * 0.44, side);
    return [...sign, ...put];
  });
} // prettier-ignore

/** Lines of a cell in parts of at most a height, each at least a line. */
function partsOf(lines: readonly SetLine[], most_pt: number): readonly (readonly SetLine[])[] {
  const parts: SetLine[][] = [[]];
  for (const line of lines) {
    const open = parts[parts.length - 1]!;
    if (open.length > 0 && heightOf([...open, line]) > most_pt) parts.push([line]);
    else open.push(line);
  }
  return parts;
}

/** Rows taller than this share of a page go on overleaf. */
const MOST_OF_PAGE = 0.4;

export function tableStrips(desk: Desk, table: TableBlock): readonly Strip[] {
  const { name, left_pt, width_pt } = desk;
  const { columns, rows, total } = table;
  const styles = stylesOf(desk);
  const placed = placeColumns(desk, table, styles);
  const pad = gap_pt(desk, 2.6);
  const rule = (y: number, width: number, grey: number): Op => ({ op: 'line', from_pt: [left_pt, y], to_pt: [left_pt + width_pt, y], width_pt: width, grey });
  const heads = columns.map(({ title }, i) => desk.pen.lines(title, styles.head, placed[i]!.width_pt).map((words) => ({ words, style: styles.head, indent_pt: 0 })));
  const headTall = Math.max(...heads.map(heightOf));
  const headHeight = headTall + pad;
  const head: Strip = {
    height_pt: headHeight,
    before_pt: gap_pt(desk, 7),
    holdsNext: true,
    ops: [
      // Titles stand on the rule, however many lines they take.
      ...heads.flatMap((lines, i) => drawCell(desk, lines, placed[i]!, columns[i]!, headTall - heightOf(lines), [`Table:${name}`, `TR:${name}.head`, `TH:${name}.head.${i}`])),
      rule(headHeight, 1.1, INK),
    ],
  };
  const rowStrips = (row: readonly Cell[], id: string, last: Op): readonly Strip[] => {
    const cells = row.map((cell, i) => partsOf(cellLines(desk, cell, placed[i]!, styles), desk.page_pt * MOST_OF_PAGE));
    const count = Math.max(...cells.map((parts) => parts.length));
    return Array.from({ length: count }, (_, n) => {
      const height = Math.max(lineHeight_pt(styles.plain), ...cells.map((parts) => heightOf(parts[n] ?? []))) + pad * (n === count - 1 ? 2 : 1);
      return {
        height_pt: height,
        before_pt: 0,
        head,
        ops: [
          ...cells.flatMap((parts, i) => drawCell(desk, parts[n] ?? [], placed[i]!, columns[i]!, pad, [`Table:${name}`, `TR:${name}.${id}`, `TD:${name}.${id}.${i}`])),
          ...(n === count - 1 ? moveDown(last, height) : []),
        ],
      };
    });
  };
  const body = rows.flatMap((row, i) => rowStrips(row, String(i), rule(0, i === rows.length - 1 && total ? 1.1 : 0.5, i === rows.length - 1 && total ? INK : FAINT)));
  const sum = total ? rowStrips(total, 'total', rule(0, 0.5, FAINT)) : [];
  // The total does not stand alone on a page.
  const held = sum.length > 0 && body.length > 0 ? [...body.slice(0, -1), { ...body[body.length - 1]!, holdsNext: true }] : body;
  return [head, ...held, ...sum];
} // prettier-ignore

function moveDown(op: Op, dy: number): readonly Op[] {
  if (op.op !== 'line') return [];
  return [{ ...op, from_pt: [op.from_pt[0], op.from_pt[1] + dy], to_pt: [op.to_pt[0], op.to_pt[1] + dy] }];
}

/** Rows as high as handwriting. */
const HAND_ROW_pt = 20;

export function blankStrips(desk: Desk, { columns, rowCount, fills, isOptional = false }: BlankTableBlock): readonly Strip[] {
  const { name, left_pt, width_pt, pen } = desk;
  const style = smallOf(desk);
  const starts = columns.map((_, i) => left_pt + width_pt * columns.slice(0, i).reduce((sum, { share }) => sum + share, 0));
  const headHeight = lineHeight_pt(style) + gap_pt(desk, 2);
  const head: Strip = {
    height_pt: headHeight,
    before_pt: gap_pt(desk, 12),
    holdsNext: true,
    isOptional,
    ops: [
      ...columns.flatMap(({ title, share }, i) => pen.put([pen.cut(title, style, width_pt * share - 4)], { ...style, x_pt: starts[i]! + (i === 0 ? 0 : 4), y_pt: 0, tag: [`Table:${name}`, `TR:${name}.head`, `TH:${name}.head.${i}`] })),
      { op: 'line', from_pt: [left_pt, headHeight], to_pt: [left_pt + width_pt, headHeight], width_pt: 1.1, grey: INK },
    ],
  };
  const row: Strip = {
    height_pt: HAND_ROW_pt,
    before_pt: 0,
    head,
    ops: [
      { op: 'line', from_pt: [left_pt, HAND_ROW_pt], to_pt: [left_pt + width_pt, HAND_ROW_pt], width_pt: 0.6, grey: FAINT },
      ...starts.slice(1).map((x): Op => ({ op: 'line', from_pt: [x, 0], to_pt: [x, HAND_ROW_pt], width_pt: 0.6, grey: FAINT })),
    ],
  };
  return [head, ...Array.from({ length: rowCount }, (_, i): Strip => ({ ...row, holdsNext: i < rowCount - 1, ...(i === rowCount - 1 ? { fills } : {}) }))];
} // prettier-ignore
