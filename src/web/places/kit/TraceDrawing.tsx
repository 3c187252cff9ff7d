import { labelTick, ticksWithin, tickStep_s } from '../../parts/ticks.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { px } from '../reckoner/plot.ts';
import type { Trace } from './recordTrace.ts';

export interface TraceDrawingProps {
  readonly trace: Trace;
  /** Reading with the sensor covered, drawn where it is within sight. */
  readonly dark: number;
  /** The drawing in words. */
  readonly says: string;
}

const HEIGHT = 132;
const EDGE = { left: 46, right: 14, top: 10, bottom: 30 } as const;
const TICK_px = 74;

/** A light record as it came from the meter, its gaps left open. */
export function TraceDrawing({ trace, dark, says }: TraceDrawingProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const { from_s, to_s, runs, gaps } = trace;
  const isDarkNear = dark !== 0 && Number.isFinite(dark);
  const low = Math.min(trace.least, 0, isDarkNear ? dark : 0);
  const high = Math.max(trace.most, isDarkNear ? dark : trace.most);
  const [left, right, bottom] = [EDGE.left, width - EDGE.right, HEIGHT - EDGE.bottom];
  const span_s = to_s - from_s || 1;
  const x = (time_s: number) => px(left + ((time_s - from_s) / span_s) * (right - left));
  const y = (value: number) => px(bottom - ((value - low) / (high - low || 1)) * (bottom - EDGE.top));
  const step_s = tickStep_s({ span_s, most: Math.max(2, (right - left) / TICK_px) });
  return (
    <div className="period-drawing trace-drawing" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={says}>
          {gaps.map((gap) => (
            <rect
              key={gap.from_s}
              className="trace-gap"
              x={x(gap.from_s)}
              y={EDGE.top}
              width={Math.max(1, px(x(gap.to_s) - x(gap.from_s)))}
              height={bottom - EDGE.top}
            />
          ))}
          <path className="period-mean" d={`M${left} ${y(isDarkNear ? dark : 0)}H${right}`} />
          {runs.map(({ times_s, values }, i) => (
            <path
              key={i}
              className="trace-line"
              d={`M${times_s.map((time_s, at) => `${x(time_s)} ${y(values[at]!)}`).join('L')}`}
            />
          ))}
          <text x={left - 8} y={y(isDarkNear ? dark : 0) + 4} textAnchor="end">
            {isDarkNear ? 'dark' : '0'}
          </text>
          <path className="period-rule" d={`M${left} ${bottom}H${right}`} />
          {ticksWithin({ from_s, to_s, step_s }).map((time_s) => (
            <g key={time_s}>
              <path className="period-rule" d={`M${x(time_s)} ${bottom}v5`} />
              {time_s > 0 && (
                <text x={x(time_s)} y={bottom + 20} textAnchor={x(time_s) > right - 20 ? 'end' : 'middle'}>
                  {labelTick({ time_s, step_s, secondsFrom_s: 0.5 })}
                </text>
              )}
            </g>
          ))}
        </svg>
      )}
    </div>
  );
}
