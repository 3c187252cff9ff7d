import { placeOn, type Axis, type Ticks } from './axis.ts';
import { across, down, px, type Plot } from './plot.ts';

export interface PlotAxisProps {
  readonly plot: Plot;
  readonly axis: Axis;
  readonly ticks: Ticks;
  readonly title: string;
  /** Whether its ticks run through the picture. */
  readonly isGrid?: boolean;
}

const withUnit = (title: string, { unit }: Ticks) => (unit === '' ? title : `${title}, ${unit}`);

/** The axis below: a hair at each tick, its word beneath, and what it is with its unit. */
export function AcrossAxis({ plot, axis, ticks, title, isGrid = true }: PlotAxisProps) {
  return (
    <g className="plot-axis">
      <path className="plot-rule" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
      {ticks.ticks.map(({ value, label }) => {
        const x = px(across(plot, placeOn(axis, value)));
        return (
          <g key={label}>
            <path className="plot-hair" d={`M${x} ${isGrid ? plot.top : plot.bottom}V${plot.bottom + 5}`} />
            <text x={x} y={plot.bottom + 19} textAnchor="middle">
              {label}
            </text>
          </g>
        );
      })}
      <text className="plot-title" x={plot.right} y={plot.bottom + 38} textAnchor="end">
        {withUnit(title, ticks)}
      </text>
    </g>
  );
}

/** The axis at the left, named above it so that its words stand upright. */
export function UpAxis({ plot, axis, ticks, title, isGrid = true }: PlotAxisProps) {
  return (
    <g className="plot-axis">
      {ticks.ticks.map(({ value, label }) => {
        const y = px(down(plot, placeOn(axis, value)));
        return (
          <g key={label}>
            <path className="plot-hair" d={`M${plot.left - 5} ${y}H${isGrid ? plot.right : plot.left}`} />
            <text x={plot.left - 9} y={y + 4} textAnchor="end">
              {label}
            </text>
          </g>
        );
      })}
      <text className="plot-title" x={2} y={13}>
        {withUnit(title, ticks)}
      </text>
    </g>
  );
}

/** Hatching for where a law has no answer. */
export function Hatch({ id }: { readonly id: string }) {
  return (
    <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <rect className="hatch-ground" width="7" height="7" />
      <path className="hatch-line" d="M0 0V7" />
    </pattern>
  );
}
