import { useId } from 'react';
import { sayShown, showNumber, showQuantity } from '../../../base/quantity.ts';
import { labelTick } from '../../parts/ticks.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { layFrames, type FrameFigures, type LightRange } from './frameClocks.ts';
import { FrameCells } from './FrameCells.tsx';

const Y = {
  realLabel: 14,
  realRule: 22,
  lightTop: 30,
  lightBottom: 96,
  frameTop: 146,
  frameBottom: 190,
  cells: 198,
  cellsEnd: 214,
  screenRule: 222,
  screenLabel: 240,
  all: 246,
} as const;

const px = (value: number) => Math.round(value * 10) / 10;

/** How much of the light a drawing shows: "from dark", or "a close-up of 1.5 %". */
function rangeWords({ least, most }: LightRange): string {
  return least <= 0 ? 'from dark' : `close-up, ${showNumber(100 * (most - least), 2)} % from foot to head`;
}

export interface FrameClocksProps extends FrameFigures {
  /** The drawing in a sentence. */
  readonly says: string;
}

/** The lamps' light with the shutter laid on it in real time, above the frames as they play in screen time. */
export function FrameClocks({ says, ...figures }: FrameClocksProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const paint = useId();
  const edge = width < 560 ? 10 : 26;
  const laid = layFrames(figures, {
    left_px: edge,
    right_px: Math.max(edge + 40, width - edge),
    lightTop_px: Y.lightTop,
    lightBottom_px: Y.lightBottom,
    frameTop_px: Y.frameTop,
    frameBottom_px: Y.frameBottom,
  });
  const { real, screen } = laid;
  const bend = (Y.frameTop - Y.lightBottom) * 0.55;
  const [left, right] = [edge, Math.max(edge + 40, width - edge)];
  const frames_s = sayShown(showQuantity('time', figures.frames.length / figures.play_fps, { digits: 2 }));
  return (
    <div className="frame-clocks">
      <p className="frame-clocks-real">
        On the set <span>the lamps’ light, and when the shutter is open on it; {rangeWords(laid.lightRange)}</span>
      </p>
      <div className="clock-drawing" ref={ref}>
        {width > 0 && (
          <svg width={width} height={Y.all} viewBox={`0 0 ${width} ${Y.all}`} role="img" aria-label={says}>
            <linearGradient id={paint} gradientUnits="userSpaceOnUse" x1="0" y1={Y.lightBottom} x2="0" y2={Y.frameTop}>
              <stop className="stop-real" offset="0" />
              <stop className="stop-screen" offset="1" />
            </linearGradient>
            <g className="real">
              <path className="rule" d={`M${px(real.from_px)} ${Y.realRule}H${px(real.to_px)}`} />
              {real.ticks.map(({ time_s, at_px }) => (
                <g key={time_s}>
                  <path className="rule" d={`M${px(at_px)} ${Y.realRule - 5}v5`} />
                  <text x={px(at_px)} y={Y.realLabel} textAnchor="middle">
                    {labelTick({ time_s, step_s: real.step_s, secondsFrom_s: 0.5 })}
                  </text>
                </g>
              ))}
              {laid.windows.map(({ from_px, to_px }) => (
                <rect
                  key={from_px}
                  className="frame-window"
                  x={px(from_px)}
                  y={Y.realRule}
                  width={Math.max(0.8, px(to_px - from_px))}
                  height={Y.lightBottom - Y.realRule}
                />
              ))}
              <path className="frame-mean" d={`M${px(real.from_px)} ${px(laid.lightMean_px)}H${px(real.to_px)}`} />
              <path className="frame-light" d={laid.lightLine} />
            </g>
            {laid.threads.map(({ real_px, screen_px }) => (
              <path
                key={screen_px}
                className="thread"
                stroke={`url(#${paint})`}
                d={`M${px(real_px)} ${Y.lightBottom}C${px(real_px)} ${Y.lightBottom + bend} ${px(screen_px)} ${Y.frameTop - 6 - bend} ${px(screen_px)} ${Y.frameTop - 6}`}
              />
            ))}
            <g className="screen">
              <path className="frame-mean" d={`M${left} ${px(laid.frameMean_px)}H${right}`} />
              <path className="frame-level" d={laid.frameLine} />
              <FrameCells cells={laid.cells} top={Y.cells} bottom={Y.cellsEnd} />
              <path className="rule" d={`M${left} ${Y.screenRule}H${right}`} />
              {screen.ticks.map(({ time_s, at_px }) => (
                <g key={time_s}>
                  <path className="rule" d={`M${px(at_px)} ${Y.screenRule}v5`} />
                  <text x={px(at_px)} y={Y.screenLabel} textAnchor={at_px > right - 20 ? 'end' : at_px < left + 20 ? 'start' : 'middle'}>
                    {labelTick({ time_s, step_s: screen.step_s })}
                  </text>
                </g>
              ))}
            </g>
          </svg>
        )}
      </div>
      <p className="frame-clocks-screen">
        On screen{' '}
        <span>
          {figures.frames.length} frames, {frames_s}; {rangeWords(laid.frameRange)}, and each as light as it is
        </span>
      </p>
    </div>
  );
} // prettier-ignore
