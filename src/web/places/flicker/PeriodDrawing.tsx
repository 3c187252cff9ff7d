import type { Waveform } from '../../../laws/flicker/waveform.ts';
import { labelTick, ticksWithin, tickStep_s } from '../../parts/ticks.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { px } from '../reckoner/plot.ts';
import { periodPath } from './periodPath.ts';
import './period.css';

export interface PeriodDrawingProps {
  readonly waveform: Waveform;
  /** The drawing in words. */
  readonly says: string;
}

const HEIGHT = 168;
const EDGE = { left: 46, right: 14, top: 12, bottom: 30 } as const;
const TICK_px = 74;

/** One period of a lamp's light over real time, with its mean. */
export function PeriodDrawing({ waveform, says }: PeriodDrawingProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const { samples, period_s } = waveform;
  const most = Math.max(1.25, samples.reduce((high, light) => Math.max(high, light), 0) * 1.06);
  const box = { left: EDGE.left, right: width - EDGE.right, top: EDGE.top, bottom: HEIGHT - EDGE.bottom, most };
  const y = (light: number) => px(box.bottom - (light / most) * (box.bottom - box.top));
  const step_s = tickStep_s({ span_s: period_s, most: Math.max(2, (box.right - box.left) / TICK_px) });
  const line = width > 0 ? periodPath(samples, box) : '';
  return (
    <div className="period-drawing" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={says}>
          <path className="period-area" d={`${line}V${box.bottom}H${box.left}Z`} />
          <path className="period-mean" d={`M${box.left} ${y(1)}H${box.right}`} />
          <path className="period-line" d={line} />
          <path className="period-rule" d={`M${box.left} ${box.bottom}H${box.right}`} />
          <text x={box.left - 8} y={y(1) + 4} textAnchor="end">
            mean
          </text>
          <text x={box.left - 8} y={box.bottom + 4} textAnchor="end">
            dark
          </text>
          {ticksWithin({ from_s: 0, to_s: period_s, step_s }).map((time_s) => {
            const x = px(box.left + (time_s / period_s) * (box.right - box.left));
            return (
              <g key={time_s}>
                <path className="period-rule" d={`M${x} ${box.bottom}v5`} />
                {time_s > 0 && (
                  <text x={x} y={box.bottom + 20} textAnchor={x > box.right - 20 ? 'end' : 'middle'}>
                    {labelTick({ time_s, step_s, secondsFrom_s: 0.5 })}
                  </text>
                )}
              </g>
            );
          })}
        </svg>
      )}
    </div>
  );
}
