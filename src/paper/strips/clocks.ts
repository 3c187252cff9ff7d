/** The two clocks of a shot: real time above, time on screen below, joined by lines that fan out. */
import type { ClocksBlock } from '../../turnover/sheets/sheet.ts';
import { box, INK, SOFT, type Op } from '../ops.ts';
import { lineHeight_pt, type Style } from '../pen.ts';
import { gap_pt, type Desk, type Strip } from '../strip.ts';
import { smallOf } from './words.ts';

export function clockStrips(desk: Desk, { real, handles, screen, stretch, kept, action, threads }: ClocksBlock): readonly Strip[] {
  const { pen, left_pt, width_pt, name, scale } = desk;
  const small = smallOf(desk);
  const bold: Style = { size_pt: 10.5 * scale, weight: 'bold' };
  const tag = [`P:${name}`];
  const at = (fraction: number) => left_pt + fraction * width_pt;
  const bar = gap_pt(desk, 5);
  const realTop = lineHeight_pt(bold) + gap_pt(desk, 1);
  const screenTop = realTop + bar + gap_pt(desk, 16);
  const height = screenTop + bar + gap_pt(desk, 1) + lineHeight_pt(bold);
  const shape = ([from, to]: readonly [number, number], y: number, fill: number): Op => ({ op: 'shape', points_pt: box(at(from), y, at(to) - at(from), bar), fill });
  const label = `${real} on the set`;
  const screenLabel = `${screen} on screen`;
  const realWidth = pen.width_pt(label, bold);
  // Over the action where there is room, else from the left.
  const over = Math.min(Math.max(left_pt, at((action[0] + action[1]) / 2) - realWidth / 2), left_pt + width_pt - realWidth);
  const stretchAt = left_pt + width_pt - pen.width_pt(stretch, bold);
  const handlesLines = handles === '' ? [] : pen.lines(handles, small, Math.max(gap_pt(desk, 60), left_pt + width_pt - (over + realWidth + gap_pt(desk, 8))));
  const tall = Math.max(height, screenTop + bar + gap_pt(desk, 1) + Math.max(1, pen.lines(screenLabel, bold, stretchAt - left_pt - 8).length) * lineHeight_pt(bold));
  return [
    {
      height_pt: tall,
      before_pt: gap_pt(desk, 8),
      ops: [
        ...pen.put([label], { ...bold, x_pt: over, y_pt: 0, tag }),
        ...pen.put(handlesLines.slice(0, 1), { ...small, x_pt: over + realWidth + gap_pt(desk, 8), y_pt: (bold.size_pt - small.size_pt) * 0.96, tag }),
        ...threads.map(({ real: from, screen: to }, i): Op => ({ op: 'line', from_pt: [at(from), realTop + bar], to_pt: [at(to), screenTop], width_pt: i === 0 || i === threads.length - 1 ? 0.8 : 0.35, grey: i === 0 || i === threads.length - 1 ? INK : SOFT })),
        shape(kept, realTop, 0.78),
        shape(action, realTop, INK),
        { op: 'line', from_pt: [left_pt, realTop + bar / 2], to_pt: [at(kept[0]), realTop + bar / 2], width_pt: 0.6, grey: SOFT },
        { op: 'line', from_pt: [at(kept[1]), realTop + bar / 2], to_pt: [left_pt + width_pt, realTop + bar / 2], width_pt: 0.6, grey: SOFT },
        shape([0, 1], screenTop, INK),
        ...pen.put(pen.lines(screenLabel, bold, Math.max(40, stretchAt - left_pt - 8)), { ...bold, x_pt: left_pt, y_pt: screenTop + bar + gap_pt(desk, 1), tag }),
        ...pen.put([stretch], { ...bold, x_pt: stretchAt, y_pt: screenTop + bar + gap_pt(desk, 1), tag }),
      ],
    },
  ];
} // prettier-ignore
