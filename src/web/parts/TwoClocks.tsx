import type { ReactNode } from 'react';
import { useId } from 'react';
import { layClocks, type ClockFigures, type ClockLayout } from './clockLayout.ts';
import { labelTick } from './ticks.ts';
import { useWidth } from './useWidth.ts';
import './twoClocks.css';

export interface ClockWords {
  readonly real: string;
  readonly screen: string;
  /** What is held, said on its bracket. */
  readonly held?: string;
  /** Held is less than what must be kept. */
  readonly isHeldShort?: boolean;
  /** The whole picture in a sentence, for whoever hears it. */
  readonly says: string;
}

export interface TwoClocksProps extends ClockFigures {
  readonly words: ClockWords;
  /** The figure of each clock. */
  readonly realFigure: ReactNode;
  readonly screenFigure: ReactNode;
  /** Between them: how far time is stretched. */
  readonly stretchFigure: ReactNode;
}

/** Heights of the drawing from top to bottom. */
const Y = {
  bracket: 9,
  realLabel: 32,
  realRule: 42,
  realBar: 44,
  realEnd: 53,
  screenStart: 106,
  screenEnd: 112,
  screenLabel: 130,
  all: 136,
} as const;

const at = (px: number) => Math.round(px * 10) / 10;

function Threads({ threads, paint }: { readonly threads: ClockLayout['threads']; readonly paint: string }) {
  const bend = (Y.screenStart - Y.realEnd) * 0.55;
  return threads.map(({ real_px, screen_px, isMain }, i) => (
    <path
      key={i}
      className={isMain ? 'thread is-main' : 'thread'}
      stroke={`url(#${paint})`}
      d={`M${at(real_px)} ${Y.realEnd}C${at(real_px)} ${Y.realEnd + bend} ${at(screen_px)} ${Y.screenStart - bend} ${at(screen_px)} ${Y.screenStart}`}
    />
  ));
}

function Held({ held, word, isShort }: { readonly held: NonNullable<ClockLayout['held']>; readonly word: string | undefined; readonly isShort: boolean }) {
  const [from, to] = held.at;
  const turn = held.runsOff
    ? `M${at(from) + 6} ${Y.bracket - 4}l-5 4 5 4M${at(to) - 6} ${Y.bracket - 4}l5 4-5 4`
    : `M${at(from)} ${Y.bracket + 6}v-6M${at(to)} ${Y.bracket + 6}v-6`;
  return (
    <g className={isShort ? 'held is-short' : 'held'}>
      <path d={`M${at(from)} ${Y.bracket}H${at(to)}${turn}`} />
      {word !== undefined && (
        <text x={at((from + to) / 2)} y={Y.bracket + 4} textAnchor="middle">
          {word}
        </text>
      )}
    </g>
  );
} // prettier-ignore

/** The same action on two rulers: real time above, screen time below, joined by threads that fan out as time is stretched. */
export function TwoClocks(props: TwoClocksProps) {
  const { words, realFigure, screenFigure, stretchFigure, ...figures } = props;
  const [ref, width_px] = useWidth<HTMLDivElement>();
  const paint = useId();
  const edge_px = width_px < 560 ? 10 : 26;
  const laid = layClocks(figures, { left_px: edge_px, right_px: Math.max(edge_px + 40, width_px - edge_px) });
  const { real, screen, span, kept, film, held, threads } = laid;
  return (
    <div className="two-clocks">
      <div className="clock-figures">
        <div className="clock-figure real">
          <span>{words.real}</span>
          {realFigure}
        </div>
        <div className="clock-figure stretch">{stretchFigure}</div>
        <div className="clock-figure screen">
          <span>{words.screen}</span>
          {screenFigure}
        </div>
      </div>
      <div className="clock-drawing" ref={ref}>
        {width_px > 0 && (
          <svg width={width_px} height={Y.all} viewBox={`0 0 ${width_px} ${Y.all}`} role="img" aria-label={words.says}>
            <linearGradient id={paint} gradientUnits="userSpaceOnUse" x1="0" y1={Y.realEnd} x2="0" y2={Y.screenStart}>
              <stop className="stop-real" offset="0" />
              <stop className="stop-screen" offset="1" />
            </linearGradient>
            {held && <Held held={held} word={words.held} isShort={words.isHeldShort ?? false} />}
            <g className="real">
              <path className="rule" d={`M${film[0]} ${Y.realRule}H${film[1]}`} />
              {real.ticks.map(({ time_s, at_px }) => (
                <g key={time_s}>
                  <path className="rule" d={`M${at(at_px)} ${Y.realRule - 5}v5`} />
                  <text x={at(at_px)} y={Y.realLabel} textAnchor="middle">
                    {labelTick({ time_s, step_s: real.step_s, secondsFrom_s: 0.5 })}
                  </text>
                </g>
              ))}
              <rect className="kept" x={at(kept[0])} y={Y.realBar} width={at(kept[1] - kept[0])} height="9" rx="2" />
              <rect className="span" x={at(span[0])} y={Y.realBar} width={at(span[1] - span[0])} height="9" rx="2" />
            </g>
            <Threads threads={threads} paint={paint} />
            <g className="screen">
              <rect
                className="span"
                x={film[0]}
                y={Y.screenStart}
                width={at(film[1] - film[0])}
                height={Y.screenEnd - Y.screenStart}
                rx="2"
              />
              {screen.ticks.map(({ time_s, at_px }) => (
                <g key={time_s}>
                  <path className="rule" d={`M${at(at_px)} ${Y.screenEnd}v5`} />
                  <text x={at(at_px)} y={Y.screenLabel} textAnchor="middle">
                    {labelTick({ time_s, step_s: screen.step_s })}
                  </text>
                </g>
              ))}
            </g>
          </svg>
        )}
      </div>
    </div>
  );
}
