import { memo } from 'react';
import type { Position } from '../../../document/shape.ts';
import type { LightSource } from '../../../laws/light/placed/source.ts';
import { fieldOf_deg } from './findings.ts';
import { SUBJECT, distance_m } from './geometry.ts';
import { coneOutline, cornersFlat, flatten, type Projection } from './projection.ts';
import { vecOf } from '../../../plan/lighting.ts';
import { pathOf, px, toPage, type Viewport } from './viewport.ts';

export interface LampDrawn {
  readonly id: string;
  /** Its number in the list. */
  readonly number: number;
  readonly at: Position;
  readonly aim: Position | undefined;
  readonly source: LightSource | undefined;
  /** Not lit, or not looked at now. */
  readonly isDim: boolean;
  readonly isLacking: boolean;
  readonly isSelected: boolean;
}

export interface LampMarkProps {
  readonly lamp: LampDrawn;
  readonly viewport: Viewport;
  readonly projection: Projection;
}

/** Beam and field of a lamp, as far as what it is aimed at. */
export const LampBeam = memo(function LampBeam({ lamp, viewport, projection }: LampMarkProps) {
  const { source, at, aim, isDim } = lamp;
  if (!source || isDim) return null;
  const length_m = distance_m(at, aim ?? SUBJECT);
  const cone = (angle_deg: number) =>
    pathOf(coneOutline(projection, { at: source.at, axis: source.axis, angle_deg, length_m }).map((spot) => toPage(viewport, spot)));
  return (
    <g className={`light-beam${lamp.isSelected ? ' is-selected' : ''}`}>
      {source.kind === 'beam' && (
        <>
          <path className="light-field-edge" d={cone(fieldOf_deg(source))} />
          <path className="light-beam-edge" d={cone(source.beamAngle_deg)} />
        </>
      )}
    </g>
  );
}); // prettier-ignore

/** One lamp: its face as wide as it is, the line it is aimed along, and its number. */
export const LampMark = memo(function LampMark({ lamp, viewport, projection }: LampMarkProps) {
  const { number, at, aim, source, isDim, isLacking, isSelected } = lamp;
  const spot = toPage(viewport, flatten(projection, vecOf(at)));
  const target = toPage(viewport, flatten(projection, vecOf(aim ?? SUBJECT)));
  const [dx, dy] = [target.x - spot.x, target.y - spot.y];
  const length = Math.hypot(dx, dy);
  const angle = length < 1 ? 0 : (Math.atan2(dy, dx) * 180) / Math.PI;
  const names = [isDim && 'is-dim', isLacking && 'is-lacking', isSelected && 'is-selected'].filter(Boolean).join(' ');
  return (
    <g className={`light-lamp ${names}`}>
      {length > 14 && <path className="light-aim" d={`M${px(spot.x)} ${px(spot.y)}L${px(target.x)} ${px(target.y)}`} />}
      {source?.kind === 'face' && <path className="light-face" d={pathOf(cornersFlat(projection, source.corners).map((each) => toPage(viewport, each)))} />}
      {length > 22 && source?.kind !== 'face' && <path className="light-nose" transform={`translate(${px(spot.x)} ${px(spot.y)}) rotate(${px(angle)})`} d="M9-6 17-9V9L9 6Z" />}
      <circle className="light-head" cx={px(spot.x)} cy={px(spot.y)} r={isSelected ? 12 : 10.5} />
      <text className="light-number" x={px(spot.x)} y={px(spot.y + 4.5)} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}); // prettier-ignore

/** Where the chosen lamp is aimed: a ring to drag. */
export function AimMark({ lamp, viewport, projection }: LampMarkProps) {
  const target = toPage(viewport, flatten(projection, vecOf(lamp.aim ?? SUBJECT)));
  return (
    <g className="light-aim-mark">
      <circle cx={px(target.x)} cy={px(target.y)} r="8" />
      <path d={`M${px(target.x) - 12} ${px(target.y)}h6m12 0h6M${px(target.x)} ${px(target.y) - 12}v6m0 12v6`} />
    </g>
  );
}
