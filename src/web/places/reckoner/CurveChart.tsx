import { memo, useId, useMemo, type KeyboardEvent } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { InputField, ResultField } from '../../../laws/law.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { numberOf, placeOn, ticksOf, type Axis } from './axis.ts';
import { cursorNumber, tell, type Cursor, type Telling } from './cursor.ts';
import {
  across,
  down,
  grainOf,
  heldPlace,
  innerWidth,
  plotOf,
  pointedAt,
  px,
  ticksAcross,
  ticksDown,
  type Plot,
} from './plot.ts';
import { AcrossAxis, Hatch, UpAxis } from './PlotFrame.tsx';
import type { Curve } from './sample.ts';
import { pickText } from './settable.ts';

export interface CurveChartProps {
  readonly over: InputField;
  readonly result: ResultField;
  readonly overAxis: Axis;
  readonly resultAxis: Axis;
  readonly curve: Curve;
  /** Where the law stands now. */
  readonly now: number;
  readonly telling: Telling;
  readonly system: UnitSystem;
  readonly cursor: Cursor | undefined;
  readonly onCursor: (cursor: Cursor | undefined) => void;
  readonly onStep: (field: InputField, axis: Axis, direction: 1 | -1) => void;
  readonly onPick: (texts: Readonly<Record<string, string>>) => void;
}

const HEIGHT = 268;

type GroundProps = Pick<CurveChartProps, 'over' | 'result' | 'overAxis' | 'resultAxis' | 'curve' | 'system'> & {
  readonly plot: Plot;
};

/** All of the chart that does not move with the pointer. */
const Ground = memo(function Ground({ plot, over, result, overAxis, resultAxis, curve, system }: GroundProps) {
  const id = useId();
  const acrossTicks = ticksOf(over, overAxis, { most: ticksAcross(plot), system });
  const upTicks = ticksOf(result, resultAxis, { most: ticksDown(plot), system });
  return (
    <>
      <defs>
        <clipPath id={`${id}clip`}>
          <rect x={plot.left} y={plot.top - 2} width={innerWidth(plot)} height={plot.bottom - plot.top + 4} />
        </clipPath>
        <Hatch id={`${id}hatch`} />
      </defs>
      {curve.gaps.map(({ from, to }) => {
        const width = px(across(plot, to) - across(plot, from));
        return width < 3 ? null : (
          <rect
            key={from}
            x={px(across(plot, from))}
            y={plot.top}
            width={width}
            height={plot.bottom - plot.top}
            fill={`url(#${id}hatch)`}
          />
        );
      })}
      <UpAxis plot={plot} axis={resultAxis} ticks={upTicks} title={result.title} />
      <AcrossAxis plot={plot} axis={overAxis} ticks={acrossTicks} title={over.title} />
      <g clipPath={`url(#${id}clip)`}>
        {curve.runs.map((run) => (
          <path
            key={run[0]!.at}
            className="curve"
            d={`M${run.map(({ at, value }) => `${px(across(plot, at))} ${px(down(plot, heldPlace(resultAxis, value)))}`).join('L')}`}
          />
        ))}
      </g>
    </>
  );
});

/** A result along one input: read by pointing or by arrow keys, set by a click or Enter. */
export function CurveChart(props: CurveChartProps) {
  const { over, result, overAxis, resultAxis, curve, now, telling, system, cursor, onCursor, onStep, onPick } = props;
  const [ref, width] = useWidth<HTMLDivElement>();
  const plot = useMemo(() => plotOf(width, HEIGHT), [width]);
  const isBoth = Object.keys(cursor?.texts ?? {}).length > 1;
  const read = tell(telling, isBoth ? {} : cursor?.texts);
  const pointed = cursorNumber(cursor, over);
  const at = (value: number) => px(across(plot, placeOn(overAxis, value)));
  const height = (value: number | undefined) =>
    value === undefined ? undefined : px(down(plot, heldPlace(resultAxis, value)));
  const nowValue = numberOf(tell(telling).value);
  const nowHeight = height(nowValue);
  const pointedHeight = isBoth ? undefined : height(numberOf(read.value));
  const isInside = (y: number | undefined): y is number => y !== undefined && y >= plot.top - 3 && y <= plot.bottom + 3;

  const textAt = (svg: Element, event: { readonly clientX: number; readonly clientY: number }) =>
    pickText(over, { axis: overAxis, at: pointedAt(plot, svg, event).x, grain: grainOf(innerWidth(plot)), system });
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (by !== undefined) onStep(over, overAxis, by as 1 | -1);
    else if (event.key === 'Home' || event.key === 'End')
      onCursor({
        texts: {
          [over.name]: pickText(over, {
            axis: overAxis,
            at: event.key === 'Home' ? 0 : 1,
            grain: grainOf(innerWidth(plot)),
            system,
          }),
        },
        isByKey: true,
      });
    else if (event.key === 'Enter' && cursor) onPick(cursor.texts);
    else if (event.key === 'Escape' && cursor) onCursor(undefined);
    else return;
    event.preventDefault();
  };

  return (
    <div className="picture-drawing" ref={ref}>
      {width > 0 && (
        <svg
          className="plot"
          width={width}
          height={HEIGHT}
          viewBox={`0 0 ${width} ${HEIGHT}`}
          tabIndex={0}
          role="slider"
          aria-label={`${result.title} over ${over.title.toLowerCase()}: arrow keys read it, Enter sets it`}
          aria-valuemin={overAxis.from}
          aria-valuemax={overAxis.to}
          aria-valuenow={pointed ?? now}
          aria-valuetext={`${read.where}: ${read.says}`}
          onKeyDown={onKeyDown}
          onPointerMove={(event) =>
            onCursor({ texts: { [over.name]: textAt(event.currentTarget, event) }, isByKey: false })
          }
          onPointerLeave={(event) => event.pointerType !== 'touch' && onCursor(undefined)}
          onBlur={() => onCursor(undefined)}
          onClick={(event) => onPick({ [over.name]: textAt(event.currentTarget, event) })}
        >
          <Ground
            plot={plot}
            over={over}
            result={result}
            overAxis={overAxis}
            resultAxis={resultAxis}
            curve={curve}
            system={system}
          />
          {isInside(nowHeight) && (
            <g className="plot-now">
              <path d={`M${at(now)} ${plot.bottom}V${nowHeight}H${plot.left}`} />
              <circle cx={at(now)} cy={nowHeight} r="5.5" />
            </g>
          )}
          {pointed !== undefined && (
            <g className="plot-cursor">
              <path d={`M${at(pointed)} ${plot.top}V${plot.bottom}`} />
              {isInside(pointedHeight) && <circle cx={at(pointed)} cy={pointedHeight} r="5" />}
            </g>
          )}
        </svg>
      )}
    </div>
  );
}
