import { useMemo, type KeyboardEvent } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { InputField, ResultField } from '../../../laws/law.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { numberOf, placeOn, type Axis } from './axis.ts';
import { cursorNumber, tell, type Cursor, type Telling } from './cursor.ts';
import { levelsOf } from './levels.ts';
import { MapGround } from './MapGround.tsx';
import { MapLegend } from './MapLegend.tsx';
import { across, down, grainOf, innerHeight, innerWidth, plotOf, pointedAt, px } from './plot.ts';
import { pickText } from './settable.ts';
import type { DrawnGrid } from './useGrid.ts';

export interface LawMapProps {
  readonly drawn: DrawnGrid;
  readonly result: ResultField;
  /** Where the law stands now. */
  readonly now: { readonly over: number; readonly and: number };
  readonly telling: Telling;
  readonly system: UnitSystem;
  readonly cursor: Cursor | undefined;
  readonly onCursor: (cursor: Cursor | undefined) => void;
  readonly onStep: (field: InputField, axis: Axis, direction: 1 | -1) => void;
  readonly onPick: (texts: Readonly<Record<string, string>>) => void;
}

const HEIGHT = 372;

/** A result over two inputs, as lines of equal result on tinted ground; a click or Enter sets both. */
export function LawMap({ drawn, result, now, telling, system, cursor, onCursor, onStep, onPick }: LawMapProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const plot = useMemo(() => plotOf(width, HEIGHT), [width]);
  const { over, and, overAxis, andAxis } = drawn.across;
  const told = tell(telling);
  const nowValue = numberOf(told.value);
  const found = useMemo(() => levelsOf(drawn, { result, nowValue, system }), [drawn, result, nowValue, system]);
  const pointed = { over: cursorNumber(cursor, over), and: cursorNumber(cursor, and) };
  const x = (value: number) => px(across(plot, placeOn(overAxis, value)));
  const y = (value: number) => px(down(plot, placeOn(andAxis, value)));
  const isInside = ({ over: a, and: b }: LawMapProps['now']) =>
    [placeOn(overAxis, a), placeOn(andAxis, b)].every((at) => at >= -0.01 && at <= 1.01);

  const textsAt = (svg: Element, event: { readonly clientX: number; readonly clientY: number }) => {
    const at = pointedAt(plot, svg, event);
    return {
      [over.name]: pickText(over, { axis: overAxis, at: at.x, grain: grainOf(innerWidth(plot)), system }),
      [and.name]: pickText(and, { axis: andAxis, at: at.y, grain: grainOf(innerHeight(plot)), system }),
    };
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const { key } = event;
    if (key === 'ArrowRight' || key === 'ArrowLeft') onStep(over, overAxis, key === 'ArrowRight' ? 1 : -1);
    else if (key === 'ArrowUp' || key === 'ArrowDown') onStep(and, andAxis, key === 'ArrowUp' ? 1 : -1);
    else if (key === 'Enter' && cursor) onPick(cursor.texts);
    else if (key === 'Escape' && cursor) onCursor(undefined);
    else return;
    event.preventDefault();
  };
  const hasGaps = drawn.grid.values.some(Number.isNaN);

  return (
    <div className="picture-drawing" ref={ref}>
      {width > 0 && (
        <svg
          className="plot"
          width={width}
          height={HEIGHT}
          viewBox={`0 0 ${width} ${HEIGHT}`}
          tabIndex={0}
          role="application"
          aria-roledescription="map"
          aria-label={`${result.title} over ${over.title.toLowerCase()} across and ${and.title.toLowerCase()} up: arrow keys move, Enter sets both`}
          onKeyDown={onKeyDown}
          onPointerMove={(event) => onCursor({ texts: textsAt(event.currentTarget, event), isByKey: false })}
          onPointerLeave={(event) => event.pointerType !== 'touch' && onCursor(undefined)}
          onBlur={() => onCursor(undefined)}
          onClick={(event) => onPick(textsAt(event.currentTarget, event))}
        >
          {found && <MapGround plot={plot} drawn={drawn} now={now} system={system} nowLabel={told.says} {...found} />}
          {isInside(now) && (
            <g className="plot-now">
              <path d={`M${x(now.over)} ${plot.bottom}V${y(now.and)}H${plot.left}`} />
              <circle cx={x(now.over)} cy={y(now.and)} r="5.5" />
            </g>
          )}
          {(pointed.over !== undefined || pointed.and !== undefined) && (
            <g className="plot-cursor">
              {pointed.over !== undefined && <path d={`M${x(pointed.over)} ${plot.top}V${plot.bottom}`} />}
              {pointed.and !== undefined && <path d={`M${plot.left} ${y(pointed.and)}H${plot.right}`} />}
              {pointed.over !== undefined && pointed.and !== undefined && (
                <circle cx={x(pointed.over)} cy={y(pointed.and)} r="5" />
              )}
            </g>
          )}
        </svg>
      )}
      {width > 0 && found && found.levels.length > 0 ? (
        <MapLegend
          levels={found.levels}
          nowAt={found.nowAt}
          nowLabel={told.says}
          title={result.title}
          hasGaps={hasGaps}
          width={width}
        />
      ) : (
        <p className="picture-none">
          {found ? 'The result hardly changes over this map.' : 'Nowhere on this map does the law have an answer.'}
        </p>
      )}
    </div>
  );
}
