import { useId } from 'react';
import { inStops, stepsOf } from './bands.ts';
import { bandStyle, groundStyle, ShortHatch } from './MapLayer.tsx';
import type { DrawnMap } from './useLightMap.ts';

export interface LegendProps {
  readonly drawn: DrawnMap;
  readonly reference_lx: number;
  readonly zeroLabel: string;
  readonly width_px: number;
}

const BAR = { height: 12, words: 30, all: 36 } as const;

/** The tints of the map with the steps between them, from dark to bright. */
export function Legend({ drawn, reference_lx, zeroLabel, width_px }: LegendProps) {
  const id = useId();
  const steps = stepsOf(inStops(drawn.grid, reference_lx), zeroLabel);
  if (steps.length === 0) return null;
  const step = Math.min(64, (width_px - 40) / (steps.length + 1));
  const edge = (i: number) => 20 + step * i;
  const enough = steps.findIndex(({ stops }) => stops >= 0);
  const shortTo = edge(enough < 0 ? steps.length + 1 : enough + 1);
  const every = step < 34 ? 2 : 1;
  const isSaid = (i: number) => steps[i]!.stops === 0 || (Math.abs(i - enough) % every === 0 && Math.abs(i - enough) * step > 60) || (enough < 0 && i % every === 0);
  const width = edge(steps.length + 1) + 20;
  return (
    <svg className="light-legend" width={width} height={BAR.all} viewBox={`0 0 ${width} ${BAR.all}`} role="img" aria-label={`Tints in stops: ${steps.map(({ label }) => label).join(', ')}; hatched where it is short`}>
      <defs>
        <ShortHatch id={id} />
      </defs>
      <rect x={edge(0)} width={step} height={BAR.height} style={groundStyle(steps)} />
      {steps.map(({ stops }, i) => (
        <rect key={stops} x={edge(i + 1)} width={step} height={BAR.height} style={bandStyle(stops)} />
      ))}
      {(enough < 0 || steps[enough]!.stops < 1) && <rect x={edge(0)} width={shortTo - edge(0)} height={BAR.height} fill={`url(#${id})`} />}
      {steps.map(({ stops, label }, i) => (
        <g key={stops}>
          <path className={stops === 0 ? 'light-isoline is-enough' : 'light-isoline'} d={`M${edge(i + 1)} 0v${BAR.height + (stops === 0 ? 4 : 0)}`} />
          {isSaid(i) && (
            <text x={edge(i + 1)} y={BAR.words} textAnchor="middle">
              {label}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
} // prettier-ignore
