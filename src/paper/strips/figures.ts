/** Key figures: the number large, what it is above it, a remark below. */
import type { FiguresBlock, KeyFigure } from '../../turnover/sheets/sheet.ts';
import { FAINT, type Op } from '../ops.ts';
import { lineHeight_pt, type Style } from '../pen.ts';
import { gap_pt, type Desk, type Strip } from '../strip.ts';
import { smallOf } from './words.ts';

interface Wide {
  readonly figure: KeyFigure;
  readonly lines: readonly string[];
  readonly notes: readonly string[];
  readonly unitWidth_pt: number;
}

const GAP_pt = 16;
/** Words among small figures are broken rather than take more of the row than this. */
const LEAST_SHARE = 0.165;

/** How many stand side by side: as many as their numbers allow, at most six. */
function perRow(desk: Desk, figures: readonly KeyFigure[], { number, unit, isLarge }: { readonly number: Style; readonly unit: Style; readonly isLarge: boolean }): number {
  const { pen, width_pt } = desk;
  const widest = Math.max(
    ...figures.map((figure) => pen.width_pt(figure.number, number) + (figure.unit === '' ? 0 : pen.width_pt(` ${figure.unit}`, unit))),
  );
  const gap = gap_pt(desk, GAP_pt);
  const most = Math.floor((width_pt + gap) / (Math.min(widest, width_pt * (isLarge ? 0.3 : LEAST_SHARE)) + gap));
  const across = Math.max(1, Math.min(6, most, figures.length));
  // Rows as even as can be: five of four a row stand three and two.
  return Math.ceil(figures.length / Math.ceil(figures.length / across));
} // prettier-ignore

export function figureStrips(desk: Desk, { figures, size }: FiguresBlock): readonly Strip[] {
  const { pen, left_pt, width_pt, scale, name } = desk;
  if (figures.length === 0) return [];
  const number: Style = { size_pt: (size === 'large' ? 25 : 12.5) * scale, weight: 'bold' };
  const unit: Style = { size_pt: (size === 'large' ? 12 : 10) * scale };
  const small = smallOf(desk);
  const across = perRow(desk, figures, { number, unit, isLarge: size === 'large' });
  const gap = gap_pt(desk, GAP_pt);
  const each = (width_pt - gap * (across - 1)) / across;
  const rows = Array.from({ length: Math.ceil(figures.length / across) }, (_, i) => figures.slice(i * across, (i + 1) * across));
  return rows.map((row, n) => {
    const wide: readonly Wide[] = row.map((figure) => {
      const unitWidth_pt = figure.unit === '' ? 0 : pen.width_pt(figure.unit, unit) + gap_pt(desk, 3);
      return {
        figure,
        unitWidth_pt,
        lines: pen.lines(figure.number, number, each - unitWidth_pt),
        notes: figure.note === undefined ? [] : pen.lines(figure.note, small, each),
      };
    });
    const labels = wide.map(({ figure }) => pen.lines(figure.label, small, each));
    const labelHeight = Math.max(...labels.map((lines) => lines.length)) * lineHeight_pt(small);
    const tallest = Math.max(...wide.map(({ lines, notes }) => lines.length * lineHeight_pt(number) + notes.length * lineHeight_pt(small)));
    const ops = wide.flatMap(({ figure, lines, notes, unitWidth_pt }, i): readonly Op[] => {
      const x = left_pt + i * (each + gap);
      const tag = [`P:${name}.${n}.${i}`];
      const bottom = labelHeight + lines.length * lineHeight_pt(number);
      const end = pen.width_pt(lines[lines.length - 1]!, number);
      return [
        ...pen.put(labels[i]!, { ...small, x_pt: x, y_pt: labelHeight - labels[i]!.length * lineHeight_pt(small), tag }),
        ...pen.put(lines, { ...number, x_pt: x, y_pt: labelHeight, tag }),
        ...(unitWidth_pt === 0 ? [] : pen.put([figure.unit], { ...unit, x_pt: x + end + gap_pt(desk, 3), y_pt: bottom - lineHeight_pt(number) + (number.size_pt - unit.size_pt) * 0.96, tag })),
        ...pen.put(notes, { ...small, x_pt: x, y_pt: bottom - gap_pt(desk, size === 'large' ? 2 : 0), tag }),
        ...(i === 0 ? [] : [{ op: 'line', from_pt: [x - gap / 2, gap_pt(desk, 2)], to_pt: [x - gap / 2, labelHeight + tallest - gap_pt(desk, 2)], width_pt: 0.5, grey: FAINT } as const]),
      ];
    });
    return { height_pt: labelHeight + tallest, before_pt: gap_pt(desk, n === 0 ? 7.5 : 6), ops };
  });
} // prettier-ignore
