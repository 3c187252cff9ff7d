import { memo } from 'react';
import { vecOf } from '../../../plan/lighting.ts';
import type { FlagDrawn } from './drawn.ts';
import { SUBJECT } from './geometry.ts';
import { cornersFlat, flatten, type Projection } from './projection.ts';
import { pathOf, px, toPage, type Viewport } from './viewport.ts';

export interface FlagMarkProps {
  readonly flag: FlagDrawn;
  readonly viewport: Viewport;
  readonly projection: Projection;
}

/** Half the side of the plate with its letter. */
const HALF_px = 9;

/** One flag: its plate as large as it is, a heavy line where it is met edge on, and its letter. */
export const FlagMark = memo(function FlagMark({ flag: drawn, viewport, projection }: FlagMarkProps) {
  const { at, aim, letter, flag, isDim, isLacking, isSelected } = drawn;
  const spot = toPage(viewport, flatten(projection, vecOf(at)));
  const target = toPage(viewport, flatten(projection, vecOf(aim ?? SUBJECT)));
  const names = [isDim && 'is-dim', isLacking && 'is-lacking', isSelected && 'is-selected'].filter(Boolean).join(' ');
  return (
    <g className={`light-flag ${names}`}>
      {isSelected && <path className="light-square-to" d={`M${px(spot.x)} ${px(spot.y)}L${px(target.x)} ${px(target.y)}`} />}
      {flag && <path className="light-plate" d={pathOf(cornersFlat(projection, flag.corners).map((corner) => toPage(viewport, corner)))} />}
      <rect className="light-letter-plate" x={px(spot.x - HALF_px)} y={px(spot.y - HALF_px)} width={2 * HALF_px} height={2 * HALF_px} rx="2.5" />
      <text className="light-number" x={px(spot.x)} y={px(spot.y + 4.5)} textAnchor="middle">
        {letter}
      </text>
    </g>
  );
}); // prettier-ignore
