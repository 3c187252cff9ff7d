import type { ReactNode } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import { showNumber } from '../../../base/quantity.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { lengthRuler } from './lengthRuler.ts';
import { lengthWords, saySide } from './pictureWords.ts';
import { laySide, type SideFigures, type SideLayout, type Span } from './sideLayout.ts';

const px = (value: number) => Math.round(value * 10) / 10;

/** Heights of the drawing from top to bottom. */
const Y = { distance: 14, clearance: 38, reach: 62, axis: 92, half: 17, larger: 172, largerHalf: 9, ruler: 187, labels: 205, wanted: 223 } as const; // prettier-ignore

const LETTER_px = 7.2;

interface LineProps {
  readonly span: Span;
  readonly y: number;
  readonly text: string;
  readonly className: string;
  readonly width_px: number;
}

/** A length with its figure: in the line where there is room, else beside it. */
function Line({ span: [from, to], y, text, className, width_px }: LineProps) {
  const room = text.length * LETTER_px + 12;
  const fits = room < to - from - 26;
  const middle = (from + to) / 2;
  const isRight = !fits && to + room < width_px;
  const gap = fits ? `H${px(middle - room / 2)}M${px(middle + room / 2)} ${y}` : '';
  return (
    <g className={`side-line ${className}`}>
      <path d={`M${px(from)} ${y}${gap}H${px(to)}M${px(from)} ${y - 5}v10M${px(to)} ${y - 5}v10`} />
      <text x={px(fits ? middle : isRight ? to + 7 : from - 7)} y={y + 4} textAnchor={fits ? 'middle' : isRight ? 'start' : 'end'}>
        {text}
      </text>
    </g>
  );
} // prettier-ignore

/** The lens: a barrel with the curve of its front glass. */
function Lens({ x }: { readonly x: number }) {
  const [top, bottom] = [Y.axis - Y.half - 5, Y.axis + Y.half + 5];
  return (
    <g className="side-lens">
      <path d={`M0 ${top + 6}H${px(x) - 16}V${top}H${px(x) - 3}V${bottom}H${px(x) - 16}V${bottom - 6}H0`} />
      <path className="side-glass" d={`M${px(x) - 4} ${top + 2}q8 ${(bottom - top - 4) / 2} 0 ${bottom - top - 4}`} />
    </g>
  );
}

function Break({ span: [from, to] }: { readonly span: Span }) {
  const middle = px((from + to) / 2);
  return (
    <g className="side-break">
      {[-4, 4].map((by) => (
        <path key={by} d={`M${middle + by - 3} ${Y.axis + 12}l6-8-6-8 6-8`} />
      ))}
    </g>
  );
}

/** The sharp slice drawn larger, on a ruler of its own. */
function Enlarged({ of, from, system, wanted }: { readonly of: NonNullable<SideLayout['enlarged']>; readonly from: Span; readonly system: UnitSystem; readonly wanted: ReactNode }) {
  const { edges, sharp, subject, from_m, to_m, times } = of;
  const { ticks, unit } = lengthRuler({ from_m, to_m, most: Math.floor((edges[1] - edges[0]) / 58), system });
  const at = (along_m: number) => edges[0] + ((along_m - from_m) / (to_m - from_m)) * (edges[1] - edges[0]);
  const [start, end] = [Y.axis + Y.half, Y.larger - Y.largerHalf];
  const bend = (end - start) * 0.5;
  const threads = [0, 0.25, 0.5, 0.75, 1].map((share) => {
    const [a, b] = [from[0] + share * (from[1] - from[0]), sharp[0] + share * (sharp[1] - sharp[0])].map(px) as [number, number];
    return `M${a} ${start}C${a} ${start + bend} ${b} ${end - bend} ${b} ${end}`;
  });
  return (
    <g className="side-enlarged">
      {threads.map((d, i) => (
        <path key={i} className={i % 4 === 0 ? 'side-thread is-end' : 'side-thread'} d={d} />
      ))}
      <rect className="side-sharp" x={px(sharp[0])} y={end} width={px(sharp[1] - sharp[0])} height={2 * Y.largerHalf} />
      <path className="subject-point" d={`M${px(subject)} ${end - 5}v${2 * Y.largerHalf + 10}`} />
      <g className="ruler">
        <path d={`M${edges[0]} ${Y.ruler}H${edges[1]}`} />
        {ticks.map(({ at_m, label }) => (
          <g key={at_m}>
            <path d={`M${px(at(at_m))} ${Y.ruler}v5`} />
            <text x={px(at(at_m))} y={Y.labels} textAnchor="middle">
              {at_m === 0 ? `${label} ${unit}` : label}
            </text>
          </g>
        ))}
      </g>
      <text className="side-times" x={px(edges[0])} y={start + 22}>{showNumber(times, 2)} × larger</text>
      {wanted}
    </g>
  );
} // prettier-ignore

export interface SideDrawingProps {
  readonly figures: SideFigures;
  readonly system: UnitSystem;
}

/** The set from the side, to scale: lens, subject, what must stay clear, what flies, and the slice that is sharp. */
export function SideDrawing({ figures, system }: SideDrawingProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>();
  const { workingDistance_m, clearanceWanted_m, reachTowardsLens_m, depthWanted_m } = figures;
  const laid = laySide(figures, { width_px, lens_px: width_px < 500 ? 44 : 64 });
  const { lensFront, subject, broken, clearance, reach, sharp, enlarged, runsOff } = laid;
  const height = enlarged ? (depthWanted_m === undefined ? Y.labels + 6 : Y.wanted + 8) : Y.axis + Y.half + 30;
  const words = (length_m: number) => lengthWords(length_m, system);
  const isUnder = (wanted_m: number | undefined) => wanted_m !== undefined && wanted_m > workingDistance_m * (1 + 1e-9);
  return (
    <div className="side-drawing" ref={ref}>
      {width_px > 0 && (
        <svg width={width_px} height={height} viewBox={`0 0 ${width_px} ${height}`} role="img" aria-label={saySide(figures, system)}>
          {sharp && <rect className="side-sharp" x={px(sharp[0])} y={Y.axis - Y.half} width={px(Math.max(sharp[1] - sharp[0], 1))} height={2 * Y.half} />}
          <path className="side-axis" d={broken ? `M${px(lensFront)} ${Y.axis}H${px(broken[0] + 8)}M${px(broken[1] - 8)} ${Y.axis}H${width_px}` : `M${px(lensFront)} ${Y.axis}H${width_px}`} />
          {broken && <Break span={broken} />}
          <Lens x={lensFront} />
          <path className="side-rise" d={`M${px(lensFront)} ${Y.distance}V${Y.axis - Y.half - 8}M${px(subject)} ${Y.distance}V${Y.axis + Y.half}`} />
          <Line span={[lensFront, subject]} y={Y.distance} text={`lens to subject ${words(workingDistance_m)}`} className="is-distance" width_px={width_px} />
          {clearance && <Line span={clearance} y={Y.clearance} text={`keep ${words(clearanceWanted_m!)} clear${isUnder(clearanceWanted_m) ? ', short' : ''}`} className={isUnder(clearanceWanted_m) ? 'is-clearance is-short' : 'is-clearance'} width_px={width_px} />}
          {reach && <Line span={reach} y={Y.reach} text={`flies ${words(reachTowardsLens_m!)}${isUnder(reachTowardsLens_m) ? ', into the lens' : ''}`} className={isUnder(reachTowardsLens_m) ? 'is-reach is-short' : 'is-reach'} width_px={width_px} />}
          <path className="subject-point" d={`M${px(subject) - 7} ${Y.axis}h14M${px(subject)} ${Y.axis - 7}v14`} />
          {runsOff && <path className="side-axis" d={`M${width_px - 7} ${Y.axis - 4}l6 4-6 4`} />}
          {enlarged && sharp && (
            <Enlarged
              of={enlarged}
              from={sharp}
              system={system}
              wanted={enlarged.wanted && <Line span={enlarged.wanted} y={Y.wanted} text={`${words(depthWanted_m!)} asked`} className="is-wanted" width_px={width_px} />}
            />
          )}
        </svg>
      )}
    </div>
  );
} // prettier-ignore
