/** Frames of the board, each with an outline for its picture: to draw into, or to stick a print on. */
import type { BoardFrame, FramesBlock } from '../../turnover/sheets/sheet.ts';
import { box, INK, type Op } from '../ops.ts';
import { lineHeight_pt, type Style } from '../pen.ts';
import { gap_pt, type Desk, type Strip } from '../strip.ts';
import { bodyOf, smallOf } from './words.ts';

/** Narrowest picture, and the tallest. */
const LEAST_pt = 120;
const TALLEST_pt = 110;

interface FrameSize {
  readonly width_pt: number;
  readonly height_pt: number;
}

/** As wide as there is room, and no taller than the tallest. */
export function frameSize(width_pt: number, aspect: number, tallest_pt: number): FrameSize {
  const height = Math.min(tallest_pt, width_pt / aspect);
  return { width_pt: Math.min(width_pt, height * aspect), height_pt: height };
}

/** One frame from a place down: its outline, then what it is and tells. */
export function drawFrame(desk: Desk, frame: BoardFrame, size: FrameSize, at: { readonly x_pt: number; readonly room_pt: number; readonly id: string }): { readonly ops: readonly Op[]; readonly height_pt: number } {
  const { pen, name } = desk;
  const bold: Style = { ...bodyOf(desk), weight: 'bold' };
  const small = smallOf(desk);
  const tag = [`P:${name}.${at.id}`];
  const titles = pen.lines(`${frame.number} ${frame.title}`, bold, at.room_pt);
  const lengths = pen.lines([frame.seconds, frame.note].filter((part) => part !== '').join(', '), small, at.room_pt);
  const words = frame.words === '' ? [] : pen.lines(frame.words, small, at.room_pt);
  const titleTop = size.height_pt + gap_pt(desk, 3);
  const lengthTop = titleTop + titles.length * lineHeight_pt(bold);
  const wordsTop = lengthTop + lengths.length * lineHeight_pt(small);
  return {
    height_pt: wordsTop + words.length * lineHeight_pt(small),
    ops: [
      { op: 'shape', points_pt: box(at.x_pt, 0, size.width_pt, size.height_pt), edge: { width_pt: 0.8, grey: INK } },
      ...pen.put(titles, { ...bold, x_pt: at.x_pt, y_pt: titleTop, tag }),
      ...pen.put(lengths, { ...small, x_pt: at.x_pt, y_pt: lengthTop, tag }),
      ...pen.put(words, { ...small, x_pt: at.x_pt, y_pt: wordsTop, tag }),
    ],
  };
} // prettier-ignore

export function frameStrips(desk: Desk, { aspect, frames }: FramesBlock): readonly Strip[] {
  const { left_pt, width_pt } = desk;
  const gap = gap_pt(desk, 14);
  const across = Math.max(1, Math.min(4, Math.floor((width_pt + gap) / (LEAST_pt * desk.scale + gap))));
  const each = (width_pt - gap * (across - 1)) / across;
  const size = frameSize(each, aspect, TALLEST_pt * desk.scale);
  const rows = Array.from({ length: Math.ceil(frames.length / across) }, (_, i) => frames.slice(i * across, (i + 1) * across)); // prettier-ignore
  return rows.map((row, n) => {
    const drawn = row.map((frame, i) =>
      drawFrame(desk, frame, size, { x_pt: left_pt + i * (each + gap), room_pt: each, id: `${n}.${i}` }),
    );
    const height = Math.max(...drawn.map(({ height_pt }) => height_pt));
    return { height_pt: height, before_pt: gap_pt(desk, n === 0 ? 6 : 12), ops: drawn.flatMap(({ ops }) => ops) };
  });
}
