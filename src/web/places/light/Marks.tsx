import type { UnitSystem } from '../../../base/quantity.ts';
import { lengthRuler } from '../shot/lengthRuler.ts';
import { flatten, projectionOf, type Flat, type Projection } from './projection.ts';
import type { Vec3 } from '../../../laws/light/area/polygon.ts';
import { towardsCamera, type View } from '../../../plan/lighting.ts';
import { fromPage, pathOf, px, toPage, type Viewport } from './viewport.ts';

/** Rulers along the foot and the left edge, zero at the subject, in the person's units. */
export function Rulers({ viewport, system }: { readonly viewport: Viewport; readonly system: UnitSystem }) {
  const { width_px, height_px } = viewport;
  const low = fromPage(viewport, { x: 0, y: height_px });
  const high = fromPage(viewport, { x: width_px, y: 0 });
  const across = lengthRuler({ from_m: low.x, to_m: high.x, most: Math.max(2, width_px / 62), system });
  const up = lengthRuler({ from_m: low.y, to_m: high.y, most: Math.max(2, height_px / 62), system });
  const x = (at_m: number) => px(toPage(viewport, { x: at_m, y: 0 }).x);
  const y = (at_m: number) => px(toPage(viewport, { x: 0, y: at_m }).y);
  return (
    <g className="light-ruler" aria-hidden="true">
      <path d={`M0 ${height_px - 22}H${width_px}`} />
      {across.ticks
        .filter(({ at_m }) => x(at_m) > 30 && x(at_m) < width_px - 22)
        .map(({ at_m, label }) => (
          <g key={at_m}>
            <path d={`M${x(at_m)} ${height_px - 22}v5`} />
            <text x={x(at_m)} y={height_px - 5} textAnchor="middle">
              {at_m === 0 ? `${label} ${across.unit}` : label}
            </text>
          </g>
        ))}
      {up.ticks
        .filter(({ at_m }) => y(at_m) > 14 && y(at_m) < height_px - 34)
        .map(({ at_m, label }) => (
          <g key={at_m}>
            <path d={`M0 ${y(at_m)}h6`} />
            <text x={10} y={y(at_m) + 4}>
              {label}
            </text>
          </g>
        ))}
    </g>
  );
}

/** A table top of a usual size about the subject: a hint of scale, not something that anybody measured. */
export const TABLE = { width_m: 1.2, depth_m: 0.8 } as const;

export function TableHint({ viewport, projection }: { readonly viewport: Viewport; readonly projection: Projection }) {
  const [half, deep] = [TABLE.width_m / 2, TABLE.depth_m / 2];
  const corners: readonly Vec3[] = [
    [-half, -deep, 0],
    [half, -deep, 0],
    [half, deep, 0],
    [-half, deep, 0],
  ];
  const spots = corners.map((corner) => toPage(viewport, flatten(projection, corner)));
  if (projection.looking === 'above') return <path className="light-table" d={pathOf(spots)} />;
  const xs = spots.map(({ x }) => x);
  return <path className="light-table" d={`M${px(Math.min(...xs))} ${px(spots[0]!.y)}H${px(Math.max(...xs))}`} />;
}

export interface SubjectProps {
  readonly viewport: Viewport;
  readonly projection: Projection;
  readonly azimuth_deg: number;
  /** How far the action reaches, where somebody said. */
  readonly reach: { readonly width_m?: number; readonly height_m?: number; readonly towardsLens_m?: number };
}

/** The subject point, and how far the action reaches about it. */
export function Subject({ viewport, projection, azimuth_deg, reach }: SubjectProps) {
  const { x, y } = toPage(viewport, { x: 0, y: 0 });
  const camera = projectionOf('camera', azimuth_deg);
  const half = (reach.width_m ?? 0) / 2;
  const rise = (reach.height_m ?? 0) / 2;
  const fly = reach.towardsLens_m ?? 0;
  const away = projectionOf('side', azimuth_deg).across;
  const spot = (across: number, near: number, up: number): Flat =>
    toPage(
      viewport,
      flatten(projection, [camera.across[0] * across - away[0] * near, camera.across[1] * across - away[1] * near, up]),
    );
  const box =
    projection.looking === 'above'
      ? [spot(-half, 0, 0), spot(half, 0, 0), spot(half, fly, 0), spot(-half, fly, 0)]
      : projection.looking === 'camera'
        ? [spot(-half, 0, -rise), spot(half, 0, -rise), spot(half, 0, rise), spot(-half, 0, rise)]
        : [spot(0, fly, -rise), spot(0, 0, -rise), spot(0, 0, rise), spot(0, fly, rise)];
  return (
    <g className="light-subject">
      {half + rise + fly > 0 && <path className="light-reach" d={pathOf(box)} />}
      <path className="light-cross-under" d={`M${px(x) - 8} ${px(y)}h16M${px(x)} ${px(y) - 8}v16`} />
      <path className="light-cross" d={`M${px(x) - 8} ${px(y)}h16M${px(x)} ${px(y) - 8}v16`} />
    </g>
  );
}

export interface CameraProps {
  readonly viewport: Viewport;
  readonly projection: Projection;
  readonly view: View;
  /** From the front of the lens to the subject. */
  readonly distance_m: number;
  readonly fieldWidth_m: number;
}

/** The camera with its lens towards the subject, and the edges of what it sees there. */
export function Camera({ viewport, projection, view, distance_m, fieldWidth_m }: CameraProps) {
  const facing = towardsCamera(view);
  const out = (m: number): Vec3 => [facing[0] * m, facing[1] * m, facing[2] * m];
  const at = toPage(viewport, flatten(projection, out(distance_m)));
  const subject = toPage(viewport, { x: 0, y: 0 });
  const [dx, dy] = [subject.x - at.x, subject.y - at.y];
  const length = Math.hypot(dx, dy);
  const isEndOn = length < 18;
  const angle = (Math.atan2(dy, dx) * 180) / Math.PI;
  const side = projectionOf('camera', view.azimuth_deg).across;
  const edges = [-0.5, 0.5].map((share) =>
    toPage(viewport, flatten(projection, [side[0] * fieldWidth_m * share, side[1] * fieldWidth_m * share, 0])),
  );
  return (
    <g className="light-camera">
      {!isEndOn && edges.map((edge, i) => <path key={i} className="light-sees" d={`M${px(at.x)} ${px(at.y)}L${px(edge.x)} ${px(edge.y)}`} />)}
      {isEndOn ? (
        <circle className="light-camera-end" cx={px(at.x)} cy={px(at.y)} r="13" />
      ) : (
        <path
          className="light-camera-body"
          transform={`translate(${px(at.x)} ${px(at.y)}) rotate(${px(angle)})`}
          d="M0-6h-9V-10h-22V10h22V6h9Z"
        />
      )}
    </g>
  );
} // prettier-ignore
