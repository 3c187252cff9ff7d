import { useId } from 'react';
import type { Level } from './levels.ts';
import { LETTER_px, px } from './plot.ts';
import { Hatch } from './PlotFrame.tsx';
import { tint } from './tint.ts';

export interface MapLegendProps {
  readonly levels: readonly Level[];
  readonly nowAt: number | undefined;
  readonly nowLabel: string;
  readonly title: string;
  readonly hasGaps: boolean;
  readonly width: number;
}

const LEGEND = { bar: 20, height: 11, words: 46, all: 52 } as const;

/** The tints from least to most with the levels between them, and where the law stands among them. */
export function MapLegend({ levels, nowAt, nowLabel, title, hasGaps, width }: MapLegendProps) {
  const id = useId();
  const step = Math.min(76, (width - 20) / (levels.length + 1));
  const edge = (i: number) => px(10 + step * (i + 1));
  const widest = Math.max(...levels.map(({ label }) => label.length)) * LETTER_px + 10;
  const every = Math.ceil(widest / step);
  const below = nowAt === undefined ? 0 : levels.filter(({ at }) => at <= nowAt).length;
  const [from, to] = [levels[below - 1]?.at, levels[below]?.at];
  const part = nowAt === undefined || from === undefined || to === undefined ? 0.5 : (nowAt - from) / (to - from);
  const mark = px(10 + step * (below + part));
  return (
    <div className="map-legend">
      <span>{title}</span>
      <svg
        width={width}
        height={LEGEND.all}
        viewBox={`0 0 ${width} ${LEGEND.all}`}
        role="img"
        aria-label={`Tints: ${levels.map(({ label }) => label).join(', ')}; now ${nowLabel}`}
      >
        <rect className="map-ground" x="10" y={LEGEND.bar} width={step} height={LEGEND.height} />
        {levels.map(({ label }, i) => (
          <rect
            key={label}
            x={edge(i)}
            y={LEGEND.bar}
            width={px(step)}
            height={LEGEND.height}
            style={tint(i, levels.length)}
          />
        ))}
        {levels.map(
          ({ label }, i) =>
            i % every === 0 && (
              <text key={label} x={edge(i)} y={LEGEND.words} textAnchor="middle">
                {label}
              </text>
            ),
        )}
        {nowAt !== undefined && (
          <path className="map-legend-now" d={`M${mark} ${LEGEND.bar + LEGEND.height}V${LEGEND.bar - 4}l-4-6h8l-4 6`} />
        )}
      </svg>
      {hasGaps && (
        <span className="map-legend-gap">
          <svg width="22" height="12" aria-hidden="true">
            <Hatch id={id} />
            <rect width="22" height="12" fill={`url(#${id})`} />
          </svg>
          no answer
        </span>
      )}
    </div>
  );
}
