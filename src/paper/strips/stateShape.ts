/** The shapes that say how a limit stands, told apart without colour: the same as on the screen. */
import type { BarRow } from '../../turnover/sheets/sheet.ts';
import { INK, type Op } from '../ops.ts';

/** Its sign within a square of a side, from its top left corner. */
export function stateShape(state: BarRow['state'], x: number, y: number, side: number): readonly Op[] {
  const at = (fx: number, fy: number) => [x + fx * side, y + fy * side] as const;
  switch (state) {
    case 'short':
      return [{ op: 'shape', points_pt: [at(0.9, 0.08), at(0.9, 0.92), at(0.08, 0.5)], fill: INK }];
    case 'tight':
      return [{ op: 'shape', points_pt: [at(0.5, 0.04), at(0.96, 0.5), at(0.5, 0.96), at(0.04, 0.5)], fill: INK }];
    case 'spare':
      return [{ op: 'ring', centre_pt: at(0.5, 0.5), radius_pt: 0.36 * side, width_pt: side * 0.11 }];
    case 'unknown':
      return [0.04, 0.4, 0.76].map((from) => ({
        op: 'line',
        from_pt: at(from, 0.5),
        to_pt: at(from + 0.22, 0.5),
        width_pt: side * 0.14,
        grey: INK,
      }));
  }
}
