import { memo, useId } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import { FLICKER_GATES_stops } from '../../../laws/flicker/visible.ts';
import { placeOn, ticksOf } from '../reckoner/axis.ts';
import { areasAbove, isolines, type GridPoint, type Line } from '../reckoner/contour.ts';
import { placeLabels } from '../reckoner/labels.ts';
import { across, down, innerHeight, innerWidth, LETTER_px, px, ticksAcross, ticksDown, type Plot } from '../reckoner/plot.ts'; // prettier-ignore
import { AcrossAxis, Hatch, UpAxis } from '../reckoner/PlotFrame.tsx';
import { fractionAt, placeOfSwing, RATE, SHUTTER } from './chartGrid.ts';
import { swingWords } from './chartWords.ts';
import type { DrawnChart } from './useChart.ts';

export interface ChartGroundProps {
  readonly plot: Plot;
  readonly drawn: DrawnChart;
  readonly system: UnitSystem;
  /** Swing that the shot allows, in stops. */
  readonly allowed_stops: number | undefined;
  /** Highest rate there is, where one is known. */
  readonly highest_fps: number | undefined;
  readonly avoid: { readonly x: number; readonly y: number };
}

const MOST_LABELS = 2;

const longest = (lines: readonly Line[]) =>
  [...lines].sort((a, b) => b.points.length - a.points.length).slice(0, MOST_LABELS);

const { passes, look, repair } = FLICKER_GATES_stops;

/** All of the chart that does not move with the pointer, over its tints. */
export const ChartGround = memo(function ChartGround(props: ChartGroundProps) {
  const { plot, drawn, system, allowed_stops, highest_fps, avoid } = props;
  const id = useId();
  const { axes, rates_fps, exposures_s, places } = drawn;
  const spot = ({ x, y }: GridPoint) => ({
    x: px(across(plot, fractionAt(axes.rate, rates_fps, x))),
    y: px(down(plot, fractionAt(axes.shutter, exposures_s, y))),
  });
  const path = (points: readonly GridPoint[]) => `M${points.map(spot).map(({ x, y }) => `${x} ${y}`).join('L')}`; // prettier-ignore
  const allowed = allowed_stops === undefined ? [] : [allowed_stops];
  const levels = [...new Set([passes, look, repair, ...allowed])].sort((a, b) => a - b);
  const lines = levels.map((stops) => ({
    stops,
    label: `${swingWords(stops)} stop${stops === allowed_stops ? ', allowed' : ''}`,
    lines: isolines(places, placeOfSwing(stops)),
  }));
  const over = allowed_stops === undefined ? [] : areasAbove(places, placeOfSwing(allowed_stops));
  // A frame's length falls with its rate: over both by doublings, a straight line.
  const edgeAt = (rate_fps: number) => px(down(plot, placeOn(axes.shutter, 1 / rate_fps)));
  const edge = `M${plot.left} ${edgeAt(axes.rate.from)}L${plot.right} ${edgeAt(axes.rate.to)}`;
  const labels = placeLabels(
    lines.flatMap(({ label, lines: all }) =>
      longest(all).map(({ points }) => ({ label, width: label.length * LETTER_px, points: points.map(spot) })),
    ),
    plot,
    [{ left: avoid.x - 18, right: avoid.x + 18, top: avoid.y - 18, bottom: avoid.y + 18 }],
  ).filter(({ x, y }) => y > edgeAtPixel(plot, drawn, x) + 10);
  const highestX = highest_fps === undefined ? undefined : px(across(plot, placeOn(axes.rate, highest_fps)));
  return (
    <>
      <defs>
        <Hatch id={`${id}long`} />
        <pattern id={`${id}over`} width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="chart-over" d="M0 0V8" />
        </pattern>
        <clipPath id={`${id}fits`}>
          <path d={`${edge}V${plot.bottom}H${plot.left}Z`} />
        </clipPath>
      </defs>
      <g clipPath={`url(#${id}fits)`}>
        <path d={over.map((points) => `${path(points)}Z`).join('')} fill={`url(#${id}over)`} />
        {lines.map(({ stops, lines: all }) => (
          <path
            key={stops}
            className={`isoline${stops === allowed_stops ? ' is-allowed' : ''}`}
            d={all.map(({ points }) => path(points)).join('')}
          />
        ))}
      </g>
      <path d={`${edge}V${plot.top}H${plot.left}Z`} fill={`url(#${id}long)`} />
      <path className="chart-edge" d={edge} />
      <text className="chart-long" x={plot.right - 10} y={plot.top + 18} textAnchor="end">
        longer than a frame
      </text>
      {highestX !== undefined && highestX > plot.left && highestX < plot.right && (
        <g className="chart-highest">
          <path d={`M${highestX} ${Math.max(plot.top, edgeAt(highest_fps!))}V${plot.bottom}`} />
          <text x={highestX - 6} y={plot.bottom - 8} textAnchor="end">
            highest of this format
          </text>
        </g>
      )}
      <rect
        className="chart-frame"
        x={plot.left}
        y={plot.top}
        width={innerWidth(plot)}
        height={innerHeight(plot)}
      />
      <UpAxis plot={plot} axis={axes.shutter} ticks={ticksOf(SHUTTER, axes.shutter, { most: ticksDown(plot), system })} title={SHUTTER.title} isGrid={false} />
      <AcrossAxis plot={plot} axis={axes.rate} ticks={ticksOf(RATE, axes.rate, { most: ticksAcross(plot), system })} title={RATE.title} isGrid={false} />
      {labels.map((each) => (
        <text key={`${each.label} ${each.x} ${each.y}`} className="isoline-label" x={px(each.x)} y={px(each.y + 4)} textAnchor="middle">
          {each.label}
        </text>
      ))}
    </>
  );
}); // prettier-ignore

/** Height of the longest shutter that fits, at a place across the chart. */
function edgeAtPixel(plot: Plot, { axes }: DrawnChart, x: number): number {
  const rate_fps = axes.rate.from * (axes.rate.to / axes.rate.from) ** ((x - plot.left) / innerWidth(plot));
  return down(plot, placeOn(axes.shutter, 1 / rate_fps));
}
