/** Margins as bars on one axis of stops: short grows left and is hatched, spare grows right, hard ends in a wall. */
import type { BarRow, BarsBlock } from '../../turnover/sheets/sheet.ts';
import { box, FAINT, INK, SOFT, type Op } from '../ops.ts';
import { lineHeight_pt, type Style } from '../pen.ts';
import { gap_pt, type Desk, type Strip } from '../strip.ts';
import { stateShape } from './stateShape.ts';
import { bodyOf, smallOf } from './words.ts';

const HATCH_pt = 3.2;

/** Slanting lines within a box: what is short, also on a copy of a copy. */
function hatch(x: number, y: number, width: number, height: number): readonly Op[] {
  const ops: Op[] = [{ op: 'shape', points_pt: box(x, y, width, height), edge: { width_pt: 1, grey: INK } }];
  for (let at = x - height + HATCH_pt; at < x + width; at += HATCH_pt) {
    const from = Math.max(at, x);
    const to = Math.min(at + height, x + width);
    if (to <= from) continue;
    ops.push({ op: 'line', from_pt: [from, y + height - (from - at)], to_pt: [to, y + height - (to - at)], width_pt: 0.9, grey: INK }); // prettier-ignore
  }
  return ops;
}

interface Track {
  readonly x_pt: number;
  readonly width_pt: number;
}

function barOps(row: BarRow, { x_pt, width_pt }: Track, middle: number, tall: number): readonly Op[] {
  const { place, state, isHard } = row;
  if (!place) return [];
  const at = (fraction: number) => x_pt + fraction * width_pt;
  const [from, to] = [at(place.from), at(place.to)];
  const y = middle - tall / 2;
  const fill = state === 'tight' ? 0.45 : 0.68;
  const bar: readonly Op[] =
    to - from < 0.4
      ? []
      : state === 'short'
        ? hatch(from, y, to - from, tall)
        : [{ op: 'shape', points_pt: box(from, y, to - from, tall), fill }];
  const end = state === 'short' ? from : to;
  const outwards = state === 'short' ? -1 : 1;
  const wall: readonly Op[] = isHard && !place.beyond ? [{ op: 'line', from_pt: [end, y - 1.6], to_pt: [end, y + tall + 1.6], width_pt: 1.6, grey: INK }] : []; // prettier-ignore
  const beyond: readonly Op[] = place.beyond ? [{ op: 'shape', points_pt: [[end, y], [end + outwards * tall * 0.7, middle], [end, y + tall]], fill: state === 'short' ? INK : fill }] : []; // prettier-ignore
  const [low, high] = [at(place.low), at(place.high)];
  const hasBand = !place.beyond && high - low > width_pt * 0.008;
  const whisker: readonly Op[] = hasBand
    ? [
        { op: 'line', from_pt: [low, middle], to_pt: [high, middle], width_pt: 0.8, grey: INK },
        ...[low, high].map((x): Op => ({ op: 'line', from_pt: [x, middle - tall * 0.34], to_pt: [x, middle + tall * 0.34], width_pt: 0.8, grey: INK })),
      ]
    : []; // prettier-ignore
  return [...bar, ...wall, ...beyond, ...whisker];
}

export function barStrips(desk: Desk, { rows, marks, zero }: BarsBlock): readonly Strip[] {
  const { pen, left_pt, width_pt, name } = desk;
  const small = smallOf(desk);
  const body: Style = { size_pt: bodyOf(desk).size_pt * 0.96 };
  const bold: Style = { ...body, weight: 'bold' };
  const gap = gap_pt(desk, 8);
  const spareWidth = pen.width_pt('−12.3', bold);
  const sign = body.size_pt;
  const stateWidth = sign + Math.max(...rows.map(({ stateWord }) => pen.width_pt(stateWord, bold)));
  const nameWidth = Math.min(width_pt * 0.27, Math.max(...rows.map((row) => pen.width_pt(row.name, bold))));
  const mark = (row: BarRow): string => (row.isAssumed ? `${row.figures} ≈` : row.figures);
  const known = rows.filter(({ place }) => place !== undefined);
  const figureWidth = Math.min(width_pt * 0.3, Math.max(gap_pt(desk, 90), ...known.map((row) => pen.width_pt(mark(row), body))));
  const trackWidth = width_pt - nameWidth - figureWidth - spareWidth - stateWidth - 4 * gap;
  const track: Track = { x_pt: left_pt + nameWidth + gap, width_pt: trackWidth };
  const figuresAt = track.x_pt + trackWidth + gap;
  const spareAt = figuresAt + figureWidth + gap;
  const stateAt = spareAt + spareWidth + gap;
  const grid = (height: number): readonly Op[] =>
    marks.map(({ at }) => {
      const x = track.x_pt + at * trackWidth;
      const isZero = at === zero;
      return { op: 'line', from_pt: [x, 0], to_pt: [x, height], width_pt: isZero ? 1.3 : 0.4, grey: isZero ? INK : FAINT };
    });
  const headHeight = lineHeight_pt(small) + gap_pt(desk, 1);
  const rule = (y: number, grey: number): Op => ({ op: 'line', from_pt: [left_pt, y], to_pt: [left_pt + width_pt, y], width_pt: 0.4, grey });
  const head: Strip = {
    height_pt: headHeight,
    before_pt: gap_pt(desk, 2),
    holdsNext: true,
    ops: [
      ...marks.flatMap(({ at, words }) => {
        const half = pen.width_pt(words, small) / 2;
        return pen.put([words], { ...small, x_pt: track.x_pt + at * trackWidth - half, y_pt: 0 });
      }),
      rule(headHeight, SOFT),
    ],
  };
  const strips = rows.map((row, i): Strip => {
    const tag = (column: string) => [`Table:${name}`, `TR:${name}.${i}`, `TD:${name}.${i}.${column}`];
    const isShort = row.state === 'short';
    const main = isShort || row.state === 'unknown' ? bold : body;
    const names = pen.lines(row.name, main, nameWidth);
    const lacks = row.place === undefined;
    const figures = pen.lines(mark(row), lacks ? small : body, lacks ? trackWidth + gap + figureWidth : figureWidth);
    const lines = Math.max(names.length * lineHeight_pt(main), figures.length * lineHeight_pt(lacks ? small : body));
    const height = lines + gap_pt(desk, 1.8);
    const middle = height / 2;
    const top = (count: number, style: Style) => middle - (count * lineHeight_pt(style)) / 2;
    return {
      height_pt: height,
      before_pt: 0,
      head,
      ops: [
        ...(lacks ? [] : grid(height)),
        ...barOps(row, track, middle, gap_pt(desk, 7)),
        ...pen.put(names, { ...main, x_pt: left_pt, y_pt: top(names.length, main), tag: tag('name') }),
        ...pen.put(figures, { ...(lacks ? small : body), x_pt: lacks ? track.x_pt : figuresAt, y_pt: top(figures.length, lacks ? small : body), tag: tag('figures'), ...(lacks ? {} : { align: 'right', width_pt: figureWidth }) }),
        ...pen.put([row.spare], { ...main, x_pt: spareAt, y_pt: top(1, main), align: 'right', width_pt: spareWidth, tag: tag('spare') }),
        ...stateShape(row.state, stateAt - gap_pt(desk, 1), middle - sign * 0.36, sign * 0.74),
        ...pen.put([row.stateWord], { ...(isShort ? bold : body), x_pt: stateAt + sign, y_pt: top(1, main), tag: tag('state') }),
        rule(height, FAINT),
      ],
    };
  });
  return [head, ...strips];
} // prettier-ignore
