import { memo, useId, useMemo, type CSSProperties } from 'react';
import { areasAbove, isolines, type GridPoint, type Line } from '../reckoner/contour.ts';
import { placeLabels } from '../reckoner/labels.ts';
import { LETTER_px } from '../reckoner/plot.ts';
import { inStops, stepsOf, type Step } from './bands.ts';
import type { DrawnMap } from './useLightMap.ts';
import type { Flat } from './projection.ts';
import { px, toPage, type Viewport } from './viewport.ts';

/** How an area at or above so many stops is tinted: a pool of light, ember where it falls short, then dark. */
export function bandStyle(stops: number): CSSProperties {
  const [of, percent] = stops >= 0 ? ['--set', Math.min(74, 26 + 11 * stops)] : ['--short', Math.max(4, 36 + 6.5 * stops)];
  return { fill: `color-mix(in oklch, var(--ground), var(${of}) ${percent.toFixed(0)}%)` };
} // prettier-ignore

/** What lies below the lowest step is one band darker. */
export const groundStyle = (steps: readonly Step[]): CSSProperties =>
  steps.length === 0 ? {} : bandStyle(steps[0]!.stops - 1);

/** Hatching over what is short, so that it is told without its colour too. */
export function ShortHatch({ id }: { readonly id: string }) {
  return (
    <pattern id={id} width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path className="light-hatch" d="M0 0V8" />
    </pattern>
  );
}

const longest = (lines: readonly Line[], most: number) =>
  [...lines].sort((a, b) => b.points.length - a.points.length).slice(0, most);

export interface MapLayerProps {
  readonly drawn: DrawnMap;
  readonly viewport: Viewport;
  readonly reference_lx: number;
  readonly zeroLabel: string;
  /** Words only at rest: while something is dragged they would flicker. */
  readonly hasLabels: boolean;
  /** Where lamps stand on the page: no words there. */
  readonly avoid: readonly Flat[];
}

/** The light on a plane: tints, and a line at each stop about what is wanted. */
export const MapLayer = memo(function MapLayer({ drawn, viewport, reference_lx, zeroLabel, hasLabels, avoid }: MapLayerProps) {
  const id = useId();
  const { sheet, grid } = drawn;
  const { columns, rows, from, to } = sheet;
  const stops = useMemo(() => inStops(grid, reference_lx), [grid, reference_lx]);
  const steps = useMemo(() => stepsOf(stops, zeroLabel), [stops, zeroLabel]);
  const lines = useMemo(() => steps.map((step) => ({ step, lines: isolines(stops, step.stops) })), [steps, stops]);
  const areas = useMemo(() => steps.map(({ stops: level }) => areasAbove(stops, level)), [steps, stops]);
  const spot = ({ x, y }: GridPoint) => {
    const at = toPage(viewport, {
      x: from.x + ((to.x - from.x) * x) / (columns - 1),
      y: from.y + ((to.y - from.y) * y) / (rows - 1),
    });
    return { x: px(at.x), y: px(at.y) };
  };
  const path = (points: readonly GridPoint[]) =>
    `M${points
      .map(spot)
      .map(({ x, y }) => `${x} ${y}`)
      .join('L')}`;
  const area = (polygons: readonly (readonly GridPoint[])[]) => polygons.map((points) => `${path(points)}Z`).join('');
  const { width_px: width, height_px: height } = viewport;
  const tints = (isIn: (entry: readonly [number, Step]) => boolean) =>
    [...steps.entries()]
      .filter(isIn)
      .map(([i, step]) => <path key={step.stops} d={area(areas[i]!)} style={bandStyle(step.stops)} />);
  const labels = hasLabels
    ? placeLabels(
        lines.flatMap(({ step, lines: all }) =>
          longest(all, 2).map(({ points }) => ({ label: step.label, width: step.label.length * LETTER_px, points: points.map(spot) })),
        ),
        { left: 46, right: width - 8, top: 10, bottom: height - 34 },
        avoid.map(({ x, y }) => ({ left: x - 26, right: x + 26, top: y - 22, bottom: y + 22 })),
      )
    : [];
  const whole = `M0 0H${width}V${height}H0Z`;
  return (
    <g className="light-map">
      <defs>
        <ShortHatch id={`${id}hatch`} />
      </defs>
      <path d={whole} style={groundStyle(steps)} />
      <g shapeRendering="crispEdges">{tints(([, { stops: level }]) => level < 0)}</g>
      {/* Hatched where it is short; what is enough is laid over that. */}
      <path d={whole} fill={`url(#${id}hatch)`} />
      <g shapeRendering="crispEdges">{tints(([, { stops: level }]) => level >= 0)}</g>
      {lines.map(({ step, lines: all }) => (
        <path
          key={step.stops}
          className={`light-isoline ${step.stops === 0 ? 'is-enough' : step.stops < 0 ? 'is-short' : 'is-over'}`}
          d={all.map(({ points }) => path(points)).join('')}
        />
      ))}
      {labels.map((each) => (
        <text key={`${each.label} ${each.x} ${each.y}`} className="light-isoline-label" x={px(each.x)} y={px(each.y + 4)} textAnchor="middle">
          {each.label}
        </text>
      ))}
    </g>
  );
}); // prettier-ignore
