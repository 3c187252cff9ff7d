/** Strips of words: headings, paragraphs, cautions, things to tick, lines to fill in. */
import type {
  CautionBlock,
  HeadingBlock,
  LinesBlock,
  ParagraphBlock,
  TicksBlock,
} from '../../turnover/sheets/sheet.ts';
import { box, INK, SOFT, type Op, type Tag } from '../ops.ts';
import { lineHeight_pt, type Style } from '../pen.ts';
import { gap_pt, type Desk, type Strip } from '../strip.ts';

export const BODY_pt = 10;
export const SMALL_pt = 8.6;

export const bodyOf = ({ scale }: Pick<Desk, 'scale'>): Style => ({ size_pt: BODY_pt * scale });
export const smallOf = ({ scale }: Pick<Desk, 'scale'>): Style => ({ size_pt: SMALL_pt * scale, grey: SOFT });

/** A strip for each line, so that long words go on overleaf. */
export function lineStrips(desk: Desk, words: string, style: Style, { tag, before_pt = 0, indent_pt = 0 }: { readonly tag: Tag; readonly before_pt?: number; readonly indent_pt?: number }): readonly Strip[] {
  const { pen, left_pt, width_pt } = desk;
  return pen.lines(words, style, width_pt - indent_pt).map((line, i) => ({
    height_pt: lineHeight_pt(style),
    before_pt: i === 0 ? before_pt : 0,
    ops: pen.put([line], { ...style, x_pt: left_pt + indent_pt, y_pt: 0, tag }),
  }));
} // prettier-ignore

export function headingStrips(desk: Desk, { level, words, aside }: HeadingBlock): readonly Strip[] {
  const { pen, left_pt, width_pt, name } = desk;
  const style: Style = { size_pt: (level === 2 ? 13 : 11.5) * desk.scale, weight: 'bold' };
  const tag = [`H${level}:${name}`];
  const lines = pen.lines(words, style, width_pt);
  const end_pt = pen.width_pt(lines[lines.length - 1]!, style) + gap_pt(desk, 8);
  const quiet = smallOf(desk);
  const asideLines = aside === undefined ? [] : pen.lines(aside, quiet, width_pt - end_pt);
  const isBeside = aside !== undefined && asideLines.length === 1 && end_pt < width_pt * 0.6;
  const height = lines.length * lineHeight_pt(style);
  // Both stand on one baseline.
  const beside_pt = (lines.length - 1) * lineHeight_pt(style) + (style.size_pt - quiet.size_pt) * 0.96;
  const under = aside === undefined || isBeside ? [] : pen.lines(aside, quiet, width_pt);
  return [
    {
      height_pt: height + under.length * lineHeight_pt(quiet) + gap_pt(desk, 2.5),
      before_pt: gap_pt(desk, level === 2 ? 10 : 8.5),
      holdsNext: true,
      ops: [
        ...pen.put(lines, { ...style, x_pt: left_pt, y_pt: 0, tag }),
        ...(isBeside ? pen.put(asideLines, { ...quiet, x_pt: left_pt + end_pt, y_pt: beside_pt, tag: [`P:${name}`] }) : []),
        ...pen.put(under, { ...quiet, x_pt: left_pt, y_pt: height, tag: [`P:${name}`] }),
      ],
    },
  ];
} // prettier-ignore

export function paragraphStrips(desk: Desk, { words, tone }: ParagraphBlock): readonly Strip[] {
  const style: Style =
    tone === 'small' ? smallOf(desk) : { ...bodyOf(desk), ...(tone === 'strong' ? { weight: 'bold' as const } : {}) };
  return lineStrips(desk, words, style, { tag: [`P:${desk.name}`], before_pt: gap_pt(desk, 4) });
}

/** A heavy bar down the left side, and a triangle, so that it is seen before it is read. */
export function cautionStrips(desk: Desk, { title, says }: CautionBlock): readonly Strip[] {
  const { pen, left_pt, width_pt, name, scale } = desk;
  const bold: Style = { size_pt: 11.5 * scale, weight: 'bold' };
  const body = bodyOf(desk);
  const inset_pt = gap_pt(desk, 13);
  const bar = (height: number): Op => ({ op: 'shape', points_pt: box(left_pt, 0, gap_pt(desk, 4), height), fill: INK });
  const side = gap_pt(desk, 9);
  const [x, y] = [left_pt + inset_pt, gap_pt(desk, 2.2)];
  const sign: readonly Op[] = [
    { op: 'shape', points_pt: [[x + side / 2, y], [x + side, y + side * 0.92], [x, y + side * 0.92]], fill: INK },
    { op: 'line', from_pt: [x + side / 2, y + side * 0.36], to_pt: [x + side / 2, y + side * 0.66], width_pt: side * 0.1, grey: 1 },
    { op: 'line', from_pt: [x + side / 2, y + side * 0.73], to_pt: [x + side / 2, y + side * 0.82], width_pt: side * 0.1, grey: 1 },
  ];
  const headHeight = lineHeight_pt(bold) + gap_pt(desk, 1);
  const head: Strip = {
    height_pt: headHeight,
    before_pt: gap_pt(desk, 11),
    holdsNext: true,
    ops: [bar(headHeight), ...sign, ...pen.put([title], { ...bold, x_pt: x + side + gap_pt(desk, 5), y_pt: 0, tag: [`Sect:${name}`, `H3:${name}`] })],
  };
  const lines = says.flatMap((words, i) =>
    pen.lines(words, body, width_pt - inset_pt).map((line, n): Strip => {
      const space = n === 0 && i > 0 ? gap_pt(desk, 2) : 0;
      const height = lineHeight_pt(body) + space;
      return { height_pt: height, before_pt: 0, ops: [bar(height), ...pen.put([line], { ...body, x_pt: x, y_pt: space, tag: [`Sect:${name}`, `P:${name}.${i}`] })] };
    }),
  );
  // A few lines stay together; many may go on overleaf.
  const isKept = lines.length <= 12;
  return [head, ...lines.map((line, i) => ({ ...line, holdsNext: isKept ? i < lines.length - 1 : i < 1 }))];
} // prettier-ignore

interface SetTick {
  readonly height_pt: number;
  readonly ops: (x_pt: number) => readonly Op[];
}

/** Room for the box before the words, and between two columns of them. */
const TICK_INSET_pt = 16;
const TICK_GAP_pt = 14;

/** One thing to tick within a width; its remark beside it where there is room, else below. */
function setTick(desk: Desk, { words, under }: TicksBlock['items'][number], room_pt: number, tag: Tag): SetTick {
  const { pen } = desk;
  const [body, small] = [bodyOf(desk), smallOf(desk)];
  const side = gap_pt(desk, 9.5);
  const inset = gap_pt(desk, TICK_INSET_pt);
  const lines = pen.lines(words, body, room_pt - inset);
  const end = pen.width_pt(lines[lines.length - 1]!, body) + gap_pt(desk, 6);
  const beside = under === undefined ? [] : pen.lines(under, small, Math.max(1, room_pt - inset - end));
  const isBeside = beside.length === 1;
  const below = under === undefined || isBeside ? [] : pen.lines(under, small, room_pt - inset);
  const height = lines.length * lineHeight_pt(body);
  const besideAt = height - lineHeight_pt(body) + (body.size_pt - small.size_pt) * 0.96;
  return {
    height_pt: height + below.length * lineHeight_pt(small) + gap_pt(desk, 3.2),
    ops: (x) => [
      { op: 'shape', points_pt: box(x + 0.5, gap_pt(desk, 1.6), side, side), edge: { width_pt: 0.9, grey: INK } },
      ...pen.put(lines, { ...body, x_pt: x + inset, y_pt: 0, tag }),
      ...(isBeside ? pen.put(beside, { ...small, x_pt: x + inset + end, y_pt: besideAt, tag }) : []),
      ...pen.put(below, { ...small, x_pt: x + inset, y_pt: height, tag }),
    ],
  };
}

/** Things to tick, in two columns where most of them are short. */
export function tickStrips(desk: Desk, { items }: TicksBlock): readonly Strip[] {
  const { pen, left_pt, width_pt, name } = desk;
  const gap = gap_pt(desk, TICK_GAP_pt);
  const half = (width_pt - gap) / 2;
  const isShort = items.every(({ words }) => pen.width_pt(words, bodyOf(desk)) < half - gap_pt(desk, TICK_INSET_pt));
  const across = isShort && items.length > 1 ? 2 : 1;
  const room = across === 2 ? half : width_pt;
  const set = items.map((item, i) => setTick(desk, item, room, [`L:${name}`, `LI:${name}.${i}`, `LBody:${name}.${i}`]));
  // Read down the first column, then down the second.
  const rowCount = Math.ceil(set.length / across);
  return Array.from({ length: rowCount }, (_, n): Strip => {
    const row = [set[n], set[n + rowCount]].filter((tick) => tick !== undefined).slice(0, across);
    return {
      height_pt: Math.max(...row.map(({ height_pt }) => height_pt)),
      before_pt: n === 0 ? gap_pt(desk, 2) : 0,
      holdsNext: n === 0 && rowCount > 1,
      ops: row.flatMap((tick, i) => tick.ops(left_pt + i * (room + gap))),
    };
  });
}

/** Up to four lines side by side, each with its word before it and room for a name. */
export function handLineStrips(desk: Desk, { labels }: LinesBlock): readonly Strip[] {
  const { pen, left_pt, width_pt, name } = desk;
  const style = smallOf(desk);
  const across = Math.min(4, labels.length);
  const gap = gap_pt(desk, 14);
  const each = (width_pt - gap * (across - 1)) / across;
  const rows = Array.from({ length: Math.ceil(labels.length / across) }, (_, i) => labels.slice(i * across, (i + 1) * across)); // prettier-ignore
  const height = gap_pt(desk, 21);
  const drop = height - lineHeight_pt(style);
  return rows.map((row, n) => ({
    height_pt: height,
    before_pt: 0,
    holdsNext: n < rows.length - 1,
    ops: row.flatMap((label, i): readonly Op[] => {
      const x = left_pt + i * (each + gap);
      const end = x + pen.width_pt(label, style) + gap_pt(desk, 4);
      return [
        ...pen.put([label], { ...style, x_pt: x, y_pt: drop, tag: [`P:${name}.${n}.${i}`] }),
        { op: 'line', from_pt: [end, height - 2], to_pt: [x + each, height - 2], width_pt: 0.7, grey: INK },
      ];
    }),
  }));
}

export function ruleStrip({ left_pt, width_pt }: Desk): Strip {
  return {
    height_pt: 1,
    before_pt: 6,
    ops: [{ op: 'line', from_pt: [left_pt, 0.5], to_pt: [left_pt + width_pt, 0.5], width_pt: 0.8, grey: INK }],
  };
}
