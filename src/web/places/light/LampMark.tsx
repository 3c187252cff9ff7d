import { memo } from 'react';
import type { LampDrawn, ThingDrawn } from './drawn.ts';
import { fieldOf_deg } from './findings.ts';
import { SUBJECT, distance_m } from './geometry.ts';
import type { Vec3 } from '../../../laws/light/area/polygon.ts';
import type { Door } from '../../../laws/light/placed/doors.ts';
import { coneOutline, cornersFlat, flatten, type Flat, type Projection } from './projection.ts';
import { vecOf } from '../../../plan/lighting.ts';
import { pathOf, px, toPage, type Viewport } from './viewport.ts';

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
  const doors = source.kind === 'face' ? undefined : source.doors;
  const cone = (angle_deg: number) =>
    pathOf(coneOutline(projection, { at: source.at, axis: source.axis, angle_deg, length_m, ...(doors ? { doors } : {}) }).map((spot) => toPage(viewport, spot)));
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

/** A door seen more nearly from its flat side than this is not drawn: it would lie along the beam. */
const LEAST_ACROSS = 0.35;
const LEAF_px = { from: 12, to: 36 } as const;

/** Its doors, each a short leaf at the angle that it cuts at. */
function LampDoors({ doors, axis, spot, projection }: { readonly doors: readonly Door[]; readonly axis: Vec3; readonly spot: Flat; readonly projection: Projection }) {
  const leaf = ({ towards, cos, sin }: Door) => {
    const { x, y } = flatten(projection, [cos * axis[0] + sin * towards[0], cos * axis[1] + sin * towards[1], cos * axis[2] + sin * towards[2]]);
    return `M${px(spot.x + LEAF_px.from * x)} ${px(spot.y - LEAF_px.from * y)}L${px(spot.x + LEAF_px.to * x)} ${px(spot.y - LEAF_px.to * y)}`;
  };
  const seen = doors.filter(({ towards }) => {
    const { x, y } = flatten(projection, towards);
    return Math.hypot(x, y) > LEAST_ACROSS;
  });
  return <path className="light-door" d={seen.map(leaf).join('')} />;
} // prettier-ignore

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
      {source && source.kind !== 'face' && source.doors && <LampDoors doors={source.doors} axis={source.axis} spot={spot} projection={projection} />}
      <circle className="light-head" cx={px(spot.x)} cy={px(spot.y)} r={isSelected ? 12 : 10.5} />
      <text className="light-number" x={px(spot.x)} y={px(spot.y + 4.5)} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}); // prettier-ignore

export interface AimMarkProps extends Omit<LampMarkProps, 'lamp'> {
  readonly thing: ThingDrawn;
}

/** What the chosen lamp is aimed at, or the chosen flag is square to: a ring to drag. */
export function AimMark({ thing, viewport, projection }: AimMarkProps) {
  const target = toPage(viewport, flatten(projection, vecOf(thing.aim ?? SUBJECT)));
  return (
    <g className="light-aim-mark">
      <circle cx={px(target.x)} cy={px(target.y)} r="8" />
      <path d={`M${px(target.x) - 12} ${px(target.y)}h6m12 0h6M${px(target.x)} ${px(target.y) - 12}v6m0 12v6`} />
    </g>
  );
}
