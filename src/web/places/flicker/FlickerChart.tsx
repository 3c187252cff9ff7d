import { useMemo, useState, type KeyboardEvent } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { InputField } from '../../../laws/law.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { placeOn, type Axis } from '../reckoner/axis.ts';
import { across, down, grainOf, innerHeight, innerWidth, plotOf, pointedAt, px } from '../reckoner/plot.ts';
import { pickText, stepAlong } from '../reckoner/settable.ts';
import { ChartGround } from './ChartGround.tsx';
import { RATE, SHUTTER, type ChartAxes, type Standing } from './chartGrid.ts';
import { standingOf, tellAt, type Viewed } from './chartWords.ts';
import { HeatMap } from './HeatMap.tsx';
import type { Picked } from './pickedWay.ts';
import { useChart } from './useChart.ts';

export interface FlickerChartProps extends Viewed {
  readonly axes: ChartAxes;
  /** Where the shot stands. */
  readonly now: Standing;
  readonly allowed_stops: number | undefined;
  readonly highest_fps: number | undefined;
  readonly system: UnitSystem;
  /** Marked as picked. */
  readonly picked: Picked | undefined;
  readonly onPick: (picked: Picked) => void;
}

const HEIGHT = 360;
/** Shutters have long names, and the last rate stands half outside. */
const LEFT_px = 70;
const RIGHT_px = 20;

interface Cursor extends Picked {
  readonly isByKey: boolean;
}

const nowText = ({ rate_fps, exposureTime_s }: Standing): Picked => ({
  rate: String(Math.round(rate_fps)),
  shutter: exposureTime_s < 0.25 ? `1/${Math.round(1 / exposureTime_s)} s` : `${exposureTime_s} s`,
});

/** How far frames swing over rate and shutter, the shot's own among them; a click or Enter picks both. */
export function FlickerChart(props: FlickerChartProps) {
  const { groups, playback_fps, axes, now, allowed_stops, highest_fps, system, picked, onPick } = props;
  const [ref, width] = useWidth<HTMLDivElement>();
  const plot = useMemo(() => ({ ...plotOf(width, HEIGHT), left: LEFT_px, right: width - RIGHT_px }), [width]);
  const charting = useChart({ groups, axes, now, playback_fps });
  const [cursor, setCursor] = useState<Cursor>();
  const drawn = charting.state === 'failed' ? undefined : charting.drawn;
  const at = useMemo(() => standingOf(cursor ?? nowText(now)) ?? now, [cursor, now]);
  const told = useMemo(() => tellAt({ groups, playback_fps }, cursor ? at : now), [groups, playback_fps, cursor, at, now]);
  const where = cursor ?? nowText(now);
  // What is drawn has its own axes until the newer chart is whole.
  const on = drawn?.axes ?? axes;
  const x = (value: number) => px(across(plot, placeOn(on.rate, value)));
  const y = (value: number) => px(down(plot, placeOn(on.shutter, value)));
  const avoid = useMemo(() => ({ x: x(now.rate_fps), y: y(now.exposureTime_s) }), [plot, on, now]);

  const pickAt = (svg: Element, event: { readonly clientX: number; readonly clientY: number }): Picked => {
    const spot = pointedAt(plot, svg, event);
    return {
      rate: pickText(RATE, { axis: on.rate, at: spot.x, grain: grainOf(innerWidth(plot)), system }),
      shutter: pickText(SHUTTER, { axis: on.shutter, at: spot.y, grain: grainOf(innerHeight(plot)), system }),
    };
  };
  const pick = (what: Picked) => {
    const standing = standingOf(what);
    if (standing && tellAt({ groups, playback_fps }, standing).fits) onPick(what);
  };
  const step = (of: 'rate' | 'shutter', field: InputField, axis: Axis, direction: 1 | -1) => {
    const from = cursor ?? nowText(now);
    setCursor({ ...from, [of]: stepAlong(field, from[of], { axis, direction, system }), isByKey: true });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const { key } = event;
    if (key === 'ArrowRight' || key === 'ArrowLeft') step('rate', RATE, on.rate, key === 'ArrowRight' ? 1 : -1);
    else if (key === 'ArrowUp' || key === 'ArrowDown') step('shutter', SHUTTER, on.shutter, key === 'ArrowUp' ? 1 : -1);
    else if (key === 'Enter' && cursor) pick(cursor);
    else if (key === 'Escape' && cursor) setCursor(undefined);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const mark = picked && standingOf(picked);
  return (
    <>
      <p className="picture-read" aria-live={cursor?.isByKey ? 'polite' : 'off'}>
        {!cursor && <span className="picture-now">as it stands, </span>}
        <b>
          {where.rate} fps, {where.shutter}
        </b>{' '}
        {told.says}
        {cursor && told.fits && <span className="picture-hint no-print"> {cursor.isByKey ? 'Enter picks it' : 'click to pick it'}</span>}
      </p>
      <div className="picture-drawing chart" ref={ref}>
        {width > 0 && drawn && <HeatMap plot={plot} drawn={drawn} />}
        {width > 0 && (
          <svg
            className="plot"
            width={width}
            height={HEIGHT}
            viewBox={`0 0 ${width} ${HEIGHT}`}
            tabIndex={0}
            role="application"
            aria-roledescription="chart"
            aria-label="How far frames swing, over frame rate across and shutter up: arrow keys move, Enter picks both"
            onKeyDown={onKeyDown}
            onPointerMove={(event) => setCursor({ ...pickAt(event.currentTarget, event), isByKey: false })}
            onPointerLeave={(event) => event.pointerType !== 'touch' && setCursor(undefined)}
            onBlur={() => setCursor(undefined)}
            onClick={(event) => pick(pickAt(event.currentTarget, event))}
          >
            {drawn && <ChartGround plot={plot} drawn={drawn} system={system} allowed_stops={allowed_stops} highest_fps={highest_fps} avoid={avoid} />}
            {drawn && (
              <g className="plot-now">
                <path d={`M${avoid.x} ${plot.bottom}V${avoid.y}H${plot.left}`} />
                <circle cx={avoid.x} cy={avoid.y} r="5.5" />
              </g>
            )}
            {mark && drawn && (
              <path className="chart-picked" d={`M${x(mark.rate_fps)} ${y(mark.exposureTime_s)}m-8 0a8 8 0 1 0 16 0a8 8 0 1 0-16 0`} />
            )}
            {cursor && (
              <g className="plot-cursor">
                <path d={`M${x(at.rate_fps)} ${plot.top}V${plot.bottom}M${plot.left} ${y(at.exposureTime_s)}H${plot.right}`} />
                <circle cx={x(at.rate_fps)} cy={y(at.exposureTime_s)} r="5" />
              </g>
            )}
          </svg>
        )}
        {charting.state === 'failed' && <p className="picture-none">The chart could not be worked out: {charting.says}</p>}
        {charting.state === 'working' && !drawn && <p className="picture-none" role="status">Working out the chart…</p>}
      </div>
    </>
  );
} // prettier-ignore
