/** A sheet laid out on pages: its head, its blocks, and a foot that says what it is, of when, and which page of how many. */
import type { Block, Sheet } from '../turnover/sheets/sheet.ts';
import { box, FAINT, INK, SOFT, type Op, type Tag } from './ops.ts';
import { paginate } from './paginate.ts';
import { lineHeight_pt, type Pen, type Style } from './pen.ts';
import { gap_pt, type Desk, type Strip } from './strip.ts';
import { barStrips } from './strips/bars.ts';
import { clockStrips } from './strips/clocks.ts';
import { figureStrips } from './strips/figures.ts';
import { frameSize, frameStrips } from './strips/frames.ts';
import { blankStrips, tableStrips } from './strips/table.ts';
import { bodyOf, cautionStrips, handLineStrips, headingStrips, paragraphStrips, ruleStrip, smallOf, tickStrips } from './strips/words.ts'; // prettier-ignore

export type PaperSize = 'a4' | 'letter';

const MM_pt = 72 / 25.4;

/** ISO 216 A4 and US Letter. */
export const PAPER: Readonly<Record<PaperSize, { readonly width_pt: number; readonly height_pt: number }>> = {
  a4: { width_pt: 210 * MM_pt, height_pt: 297 * MM_pt },
  letter: { width_pt: 8.5 * 72, height_pt: 11 * 72 },
};

/** Left and right, and top and bottom: beyond what desk printers leave white. */
export const MARGIN_pt = 14 * MM_pt;
export const EDGE_pt = 11 * MM_pt;
/** The foot of a page, and what is kept free above it. */
const FOOT_pt = 8.2;
const FOOT_ROOM_pt = 18;

export interface Page {
  readonly sheet: Sheet;
  readonly ops: readonly Op[];
}

export interface LayOutOptions {
  readonly pen: Pen;
  readonly size: PaperSize;
}

function blockStrips(desk: Desk, block: Block): readonly Strip[] {
  switch (block.block) {
    case 'heading':
      return headingStrips(desk, block);
    case 'paragraph':
      return paragraphStrips(desk, block);
    case 'figures':
      return figureStrips(desk, block);
    case 'table':
      return tableStrips(desk, block);
    case 'blank':
      return blankStrips(desk, block);
    case 'bars':
      return barStrips(desk, block);
    case 'caution':
      return cautionStrips(desk, block);
    case 'ticks':
      return tickStrips(desk, block);
    case 'lines':
      return handLineStrips(desk, block);
    case 'frames':
      return frameStrips(desk, block);
    case 'clocks':
      return clockStrips(desk, block);
    case 'rule':
      return [ruleStrip(desk)];
    case 'break':
      return [{ height_pt: 0, before_pt: 0, ops: [], breaks: true }];
  }
}

/** What the head says besides its title: what it is for, and the frames of the board that it serves. */
function headWords(desk: Desk, { under, served }: Sheet): readonly { readonly words: string; readonly style: Style }[] {
  const small = smallOf(desk);
  return [
    ...(under === undefined ? [] : [{ words: under, style: { size_pt: bodyOf(desk).size_pt * 1.1 } }]),
    ...(served?.frames ?? []).map(({ number, title, seconds, words }) => ({
      words: `Frame ${number}, ${title}, ${seconds}${words === '' ? '' : `: ${words}`}`,
      style: small,
    })),
  ];
}

/** The head of a sheet: what it is of, its title as large as can be, and room for the picture of its frame. */
function headStrips(desk: Desk, sheet: Sheet): readonly Strip[] {
  const { pen, left_pt, width_pt, scale } = desk;
  const { over, shoot, about, number, title, served } = sheet;
  const small = smallOf(desk);
  const big: Style = { size_pt: 24 * scale, weight: 'bold' };
  const gap = gap_pt(desk, 16);
  const size = served ? frameSize(width_pt * 0.24, served.aspect, gap_pt(desk, 70)) : undefined;
  const room = width_pt - (size ? size.width_pt + gap : 0);
  const overLines = pen.lines([over, ...(shoot === title ? [] : [shoot]), about].filter((part) => part !== '').join(', '), small, room);
  const top = overLines.length * lineHeight_pt(small) + gap_pt(desk, 4);
  const pad = gap_pt(desk, 7);
  const numberWidth = number === undefined ? 0 : pen.width_pt(number, big) + 2 * pad;
  const titleAt = left_pt + numberWidth + (number === undefined ? 0 : gap_pt(desk, 10));
  const titles = pen.lines(title, big, room - (titleAt - left_pt));
  const tag: Tag = [`H1:${desk.name}`];
  let y = top + titles.length * lineHeight_pt(big) + gap_pt(desk, 3);
  const said = headWords(desk, sheet).flatMap(({ words, style }, i) => {
    const lines = pen.lines(words, style, room);
    const put = pen.put(lines, { ...style, x_pt: left_pt, y_pt: y, tag: [`P:${desk.name}.${i}`] });
    y += lines.length * lineHeight_pt(style);
    return put;
  });
  const height = Math.max(y, size?.height_pt ?? 0) + gap_pt(desk, 6);
  const block = box(left_pt, top + gap_pt(desk, 1), numberWidth, lineHeight_pt(big) - gap_pt(desk, 1));
  return [
    {
      height_pt: height,
      before_pt: 0,
      ops: [
        ...pen.put(overLines, { ...small, x_pt: left_pt, y_pt: 0, tag: [`P:${desk.name}.over`] }),
        ...(number === undefined ? [] : [{ op: 'shape', points_pt: block, fill: INK } as const, ...pen.put([number], { ...big, grey: 1, x_pt: left_pt + pad, y_pt: top, tag })]),
        ...pen.put(titles, { ...big, x_pt: titleAt, y_pt: top, tag }),
        ...said,
        ...(size ? [{ op: 'shape', points_pt: box(left_pt + width_pt - size.width_pt, 0, size.width_pt, size.height_pt), edge: { width_pt: 0.8, grey: INK } } as const] : []),
        { op: 'line', from_pt: [left_pt, height], to_pt: [left_pt + width_pt, height], width_pt: 1.6, grey: INK },
      ],
    },
  ];
} // prettier-ignore

/** A card is made smaller, down to this, if it then fits on one page. */
const CARD_SCALES = [1, 0.95, 0.9, 0.85] as const;

function pagesAt(sheet: Sheet, { pen, size }: LayOutOptions, scale: number): readonly Page[] {
  const { width_pt, height_pt } = PAPER[size];
  const bottom_pt = height_pt - EDGE_pt - FOOT_ROOM_pt;
  const desk = (name: string): Desk => ({
    pen,
    left_pt: MARGIN_pt,
    width_pt: width_pt - 2 * MARGIN_pt,
    page_pt: bottom_pt - EDGE_pt,
    scale,
    name: `${sheet.id}.${name}`,
  });
  const strips = [
    ...headStrips(desk('head'), sheet),
    ...sheet.blocks.flatMap((block, i) => blockStrips(desk(String(i)), block)),
  ];
  return paginate(strips, { top_pt: EDGE_pt, bottom_pt }).map((ops) => ({ sheet, ops }));
}

/** Pages of sheets, each sheet beginning on its own, without feet. */
export function layOut(sheets: readonly Sheet[], options: LayOutOptions): readonly Page[] {
  return sheets.flatMap((sheet) => {
    const whole = pagesAt(sheet, options, 1);
    if (sheet.kind !== 'card' || whole.length === 1) return whole;
    for (const scale of CARD_SCALES.slice(1)) {
      const smaller = pagesAt(sheet, options, scale);
      if (smaller.length === 1) return smaller;
    }
    return whole;
  });
}

export interface Foot {
  /** The revision and when it was printed. */
  readonly says: string;
}

/** The foot of each page: what it is, of which revision and when, and its number of how many. */
export function withFeet(pages: readonly Page[], { pen, size }: LayOutOptions, { says }: Foot): readonly Page[] {
  const { width_pt, height_pt } = PAPER[size];
  const style: Style = { size_pt: FOOT_pt, grey: SOFT };
  const y_pt = height_pt - EDGE_pt - lineHeight_pt(style);
  const right_pt = width_pt - MARGIN_pt;
  const room_pt = right_pt - MARGIN_pt;
  return pages.map(({ sheet, ops }, i) => {
    const count = `${i + 1} of ${pages.length}`;
    const countAt = right_pt - pen.width_pt(count, style);
    const saysAt = countAt - 18 - pen.width_pt(says, style);
    const name = [`${sheet.number === undefined ? '' : `${sheet.number} `}${sheet.title}`, ...(sheet.shoot === sheet.title ? [] : [sheet.shoot])].join(', ');
    return {
      sheet,
      ops: [
        ...ops,
        { op: 'line', from_pt: [MARGIN_pt, y_pt - 4], to_pt: [right_pt, y_pt - 4], width_pt: 0.5, grey: FAINT },
        ...pen.put([pen.cut(name, style, Math.max(60, saysAt - 18 - MARGIN_pt))], { ...style, x_pt: MARGIN_pt, y_pt }),
        ...pen.put([pen.cut(says, style, room_pt * 0.6)], { ...style, x_pt: Math.max(MARGIN_pt + 78, saysAt), y_pt }),
        ...pen.put([count], { ...style, weight: 'bold', grey: INK, x_pt: countAt - 2, y_pt }),
      ],
    };
  });
} // prettier-ignore
