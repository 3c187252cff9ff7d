import { memo, useId } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import { placeOn, ticksOf } from './axis.ts';
import { areasAbove, areasWithout, isolines, type GridPoint, type Line } from './contour.ts';
import { placeLabels } from './labels.ts';
import type { Levels } from './levels.ts';
import { across, down, innerHeight, innerWidth, LETTER_px, px, ticksAcross, ticksDown, type Plot } from './plot.ts';
import { AcrossAxis, Hatch, UpAxis } from './PlotFrame.tsx';
import { tint } from './tint.ts';
import type { DrawnGrid } from './useGrid.ts';

/** A level that falls to pieces is not labelled on each of them. */
const MOST_LABELS = 2;

const longest = (lines: readonly Line[]) =>
  [...lines].sort((a, b) => b.points.length - a.points.length).slice(0, MOST_LABELS);

/** Levels nearer than this part of the axis are one line to the eye. */
const SAME_LEVEL = 0.004;

export interface MapGroundProps extends Levels {
  readonly plot: Plot;
  readonly drawn: DrawnGrid;
  readonly now: { readonly over: number; readonly and: number };
  readonly system: UnitSystem;
  readonly nowLabel: string;
}

/** All of the map that does not move with the pointer. */
export const MapGround = memo(function MapGround({
  plot,
  drawn,
  places,
  levels,
  nowAt,
  now,
  system,
  nowLabel,
}: MapGroundProps) {
  const id = useId();
  const { over, and, overAxis, andAxis, columns, rows } = drawn.across;
  const spot = ({ x, y }: GridPoint) => ({ x: px(across(plot, x / (columns - 1))), y: px(down(plot, y / (rows - 1))) });
  const path = (points: readonly GridPoint[]) =>
    `M${points.map((point) => `${spot(point).x} ${spot(point).y}`).join('L')}`;
  const area = (polygons: readonly (readonly GridPoint[])[]) => polygons.map((polygon) => `${path(polygon)}Z`).join('');
  const lines = levels.map(({ at, label }) => ({ label, lines: isolines(places, at) }));
  const same = nowAt === undefined ? [] : isolines(places, nowAt);
  const [x, y] = [across(plot, placeOn(overAxis, now.over)), down(plot, placeOn(andAxis, now.and))];
  const labelled = (label: string, all: typeof same) =>
    longest(all).map(({ points }) => ({ label, width: label.length * LETTER_px, points: points.map(spot) }));
  const isNow = (at: number) => nowAt !== undefined && Math.abs(at - nowAt) < SAME_LEVEL;
  const others = lines.filter((_, i) => !isNow(levels[i]!.at));
  const labels = placeLabels(
    [...labelled(nowLabel, same), ...others.flatMap(({ label, lines: all }) => labelled(label, all))],
    plot,
    [{ left: x - 16, right: x + 16, top: y - 16, bottom: y + 16 }],
  );
  return (
    <>
      <defs>
        <Hatch id={`${id}hatch`} />
      </defs>
      <rect className="map-ground" x={plot.left} y={plot.top} width={innerWidth(plot)} height={innerHeight(plot)} />
      <g shapeRendering="crispEdges">
        {levels.map(({ at, label }, i) => (
          <path key={label} d={area(areasAbove(places, at))} style={tint(i, levels.length)} />
        ))}
        <path d={area(areasWithout(places))} fill={`url(#${id}hatch)`} />
      </g>
      <UpAxis
        plot={plot}
        axis={andAxis}
        ticks={ticksOf(and, andAxis, { most: ticksDown(plot), system })}
        title={and.title}
        isGrid={false}
      />
      <AcrossAxis
        plot={plot}
        axis={overAxis}
        ticks={ticksOf(over, overAxis, { most: ticksAcross(plot), system })}
        title={over.title}
        isGrid={false}
      />
      {lines.map(({ label, lines: all }) => (
        <path key={label} className="isoline" d={all.map(({ points }) => path(points)).join('')} />
      ))}
      <path className="isoline is-now" d={same.map(({ points }) => path(points)).join('')} />
      {labels.map((each) => (
        <text
          key={`${each.label} ${each.x} ${each.y}`}
          className={each.label === nowLabel ? 'isoline-label is-now' : 'isoline-label'}
          x={px(each.x)}
          y={px(each.y + 4)}
          textAnchor="middle"
        >
          {each.label}
        </text>
      ))}
    </>
  );
});
