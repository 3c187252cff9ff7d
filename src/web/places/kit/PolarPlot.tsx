import { useMemo } from 'react';
import { showNumber } from '../../../base/quantity.ts';
import type { Photometry } from '../../../laws/light/photometry/photometry.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { polarLayout, polarTable, type PolarLayout } from './polarLayout.ts';

export interface PolarPlotProps {
  readonly photometry: Photometry;
  /** The drawing in words. */
  readonly says: string;
}

const DIGITS = 3;

const cd = (intensity_cd: number) => `${showNumber(intensity_cd, DIGITS)} cd`;

function Circles({ layout }: { readonly layout: PolarLayout }) {
  const { centre, circles, isHalf } = layout;
  return circles.map(({ intensity_cd, radius }) => (
    <g key={intensity_cd}>
      {isHalf ? (
        <path className="polar-circle" d={`M${centre.x} ${centre.y - radius}A${radius} ${radius} 0 0 1 ${centre.x} ${centre.y + radius}`} />
      ) : (
        <circle className="polar-circle" cx={centre.x} cy={centre.y} r={radius} />
      )}
    </g>
  ));
} // prettier-ignore

/** What each circle stands for, up the line across the axis. */
function CircleLabels({ layout }: { readonly layout: PolarLayout }) {
  const { centre, circles, isHalf } = layout;
  return circles.map(({ intensity_cd, radius }) => (
    <text
      key={intensity_cd}
      className="polar-label"
      x={isHalf ? centre.x - 7 : centre.x}
      y={centre.y - radius + (isHalf ? 4 : 14)}
      textAnchor={isHalf ? 'end' : 'middle'}
    >
      {cd(intensity_cd)}
    </text>
  ));
}

function Drawing({ layout, says }: { readonly layout: PolarLayout; readonly says: string }) {
  const { width, height, centre, radius, spokes, paths, isHalf } = layout;
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says}>
      <Circles layout={layout} />
      {spokes.map(({ angle_deg, x, y, labelX, labelY, anchor }) => (
        <g key={`${x} ${y}`}>
          <path className={angle_deg === 0 ? 'polar-axis' : 'polar-spoke'} d={`M${centre.x} ${centre.y}L${x} ${y}`} />
          {!(isHalf && angle_deg === 90) && (
            <text x={labelX} y={labelY} textAnchor={anchor}>
              {angle_deg === 0 ? 'axis' : `${angle_deg}°`}
            </text>
          )}
        </g>
      ))}
      {paths.toReversed().map(({ plane_deg, d }) => (
        <path key={plane_deg} className={plane_deg === 0 ? 'polar-c0' : 'polar-c90'} d={d} />
      ))}
      <circle className="polar-lamp" cx={centre.x} cy={centre.y} r={Math.max(3, radius / 40)} />
      <CircleLabels layout={layout} />
    </svg>
  );
}

function Legend({ isAllRound }: { readonly isAllRound: boolean }) {
  const line = (className: string) => (
    <svg width="30" height="8" aria-hidden="true">
      <path className={className} d="M1 4H29" />
    </svg>
  );
  if (isAllRound) return <p className="polar-legend">{line('polar-c0')} every plane through the axis</p>;
  return (
    <p className="polar-legend">
      <span>{line('polar-c0')} C0–C180, level as the lamp stands</span>{' '}
      <span>{line('polar-c90')} C90–C270, upright</span>
    </p>
  );
}

/** Light off the axis in figures, for whoever would rather read, hear or print it. */
function Figures({ photometry }: { readonly photometry: Photometry }) {
  const { sides, rows } = useMemo(() => polarTable(photometry), [photometry]);
  return (
    <details className="polar-figures">
      <summary>The same as a table</summary>
      <table>
        <caption className="hidden-text">Candela by angle off the axis</caption>
        <thead>
          <tr>
            <th scope="col">Off the axis</th>
            {sides.map(({ title }) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ angle_deg, intensities_cd }) => (
            <tr key={angle_deg}>
              <th scope="row">{angle_deg}°</th>
              {intensities_cd.map((intensity_cd, i) => (
                <td key={sides[i]!.title}>{cd(intensity_cd)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** How much light a lamp sends each way, in two planes through its axis, drawn and in figures. */
export function PolarPlot({ photometry, says }: PolarPlotProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const layout = useMemo(() => (width > 0 ? polarLayout(photometry, width) : undefined), [photometry, width]);
  return (
    <div className="polar">
      <div className="polar-drawing" ref={ref}>
        {layout ? (
          <Drawing layout={layout} says={says} />
        ) : (
          width > 0 && <p className="kit-says">It sends no light in these planes: there is nothing to draw.</p>
        )}
      </div>
      {layout && <Legend isAllRound={layout.paths.length === 1} />}
      <Figures photometry={photometry} />
    </div>
  );
}
