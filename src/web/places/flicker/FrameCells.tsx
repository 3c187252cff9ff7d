import { patchLevels } from './patchPlay.ts';
import { greyOf } from './patchPixels.ts';
import { useBrightest } from './useBrightest.ts';

export interface FrameCellsProps {
  readonly cells: readonly { readonly from_px: number; readonly to_px: number; readonly light: number }[];
  readonly top: number;
  readonly bottom: number;
}

/** Frame beside frame, each as light as it is; nothing in it moves. */
export function FrameCells({ cells, top, bottom }: FrameCellsProps) {
  const levels = patchLevels({ frames: cells.map(({ light }) => light), brightest: useBrightest() });
  return cells.map(({ from_px, to_px }, i) => (
    <rect
      key={from_px}
      className="frame-cell"
      x={from_px}
      y={top}
      width={Math.max(0, to_px - from_px)}
      height={bottom - top}
      fill={greyOf(levels[i]!)}
    />
  ));
}
