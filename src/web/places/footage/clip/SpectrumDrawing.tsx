import { useMemo, useState, type KeyboardEvent } from 'react';
import { showNumber } from '../../../../base/quantity.ts';
import type { Spectrum } from '../../../../measure/flicker/spectrum.ts';
import type { FlickerLine } from '../../../../measure/types.ts';
import { useWidth } from '../../../parts/useWidth.ts';
import { acrossOf, decadesOf, depthTicks, downOf, rateTicks, spectrumPath, type LampTick } from './spectrumLayout.ts';

export interface SpectrumDrawingProps {
  readonly spectrum: Spectrum;
  readonly frameRate_fps: number;
  readonly lines: readonly FlickerLine[];
  readonly chosen: number;
  readonly lamps: readonly LampTick[];
}

const HEIGHT_px = 190;
const LEFT_px = 64;
const RIGHT_px = 14;
const TOP_px = 24;
const FOOT_px = 44;
const LABEL_px = 84;
/** Numbers of lines nearer than this stand on one another: they are put one above the other. */
const NUMBER_px = 16;

/** The deepest near a rate: what the eye takes for the depth there. */
function depthNear({ step_Hz, depthFraction }: Spectrum, rate_Hz: number, reach_Hz: number): number {
  const [from, to] = [rate_Hz - reach_Hz, rate_Hz + reach_Hz].map((at) => Math.round(at / step_Hz));
  return depthFraction.slice(Math.max(0, from!), Math.max(1, to! + 1)).reduce((a, b) => Math.max(a, b), 0);
}

/** The light's spectrum: depth of a wave of each rate, lines that were found, and where the lamps of the plan would lie. */
export function SpectrumDrawing({ spectrum, frameRate_fps, lines, chosen, lamps }: SpectrumDrawingProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>();
  const [cursor_Hz, setCursor_Hz] = useState<number>();
  const inner_px = Math.max(0, Math.floor(width_px - LEFT_px - RIGHT_px));
  const plot_px = HEIGHT_px - TOP_px - FOOT_px;
  const decades = useMemo(() => decadesOf(spectrum), [spectrum]);
  const path = useMemo(() => spectrumPath(spectrum, decades, inner_px, plot_px), [spectrum, decades, inner_px, plot_px]);
  const half_Hz = frameRate_fps / 2;
  const x = (rate_Hz: number) => (acrossOf(rate_Hz, frameRate_fps) / 100) * inner_px;
  const pixel_Hz = inner_px > 0 ? half_Hz / inner_px : half_Hz;
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowLeft: -1, PageUp: 20, PageDown: -20 }[event.key];
    if (event.key === 'Escape' && cursor_Hz !== undefined) setCursor_Hz(undefined);
    else if (by === undefined) return;
    else {
      const from = cursor_Hz ?? lines[chosen]?.beat_Hz ?? 0;
      setCursor_Hz(Math.min(half_Hz, Math.max(0, from + by * (event.shiftKey ? 10 : 1) * pixel_Hz)));
    }
    event.preventDefault();
  };
  const told_Hz = cursor_Hz ?? lines[chosen]?.beat_Hz;
  const raised = lines.map((line, i) => lines.slice(0, i).filter((other) => Math.abs(x(other.beat_Hz) - x(line.beat_Hz)) < NUMBER_px).length); // prettier-ignore
  return (
    <>
      <p className="clip-spectrum-at" aria-live="off">
        {told_Hz === undefined
          ? 'Point at the drawing, or move along it with the arrow keys.'
          : `${showNumber(told_Hz, 4)} Hz: ${showNumber(100 * depthNear(spectrum, told_Hz, pixel_Hz), 2)} % deep in the light of the whole picture.`}
      </p>
      <div className="clip-spectrum" ref={ref}>
        {width_px > 0 && (
          <svg
            width={width_px}
            height={HEIGHT_px}
            viewBox={`0 0 ${width_px} ${HEIGHT_px}`}
            tabIndex={0}
            role="application"
            aria-roledescription="chart"
            aria-label={`Spectrum of the light, 0 to ${showNumber(half_Hz, 4)} Hz: arrow keys move along it`}
            onKeyDown={onKeyDown}
            onPointerMove={(event) => {
              const { left } = event.currentTarget.getBoundingClientRect();
              setCursor_Hz(Math.min(half_Hz, Math.max(0, (event.clientX - left - LEFT_px) * pixel_Hz)));
            }}
            onPointerLeave={() => setCursor_Hz(undefined)}
            onBlur={() => setCursor_Hz(undefined)}
          >
            <g transform={`translate(${LEFT_px} ${TOP_px})`}>
              {depthTicks(decades).map(({ down, says }) => (
                <g key={says} className="spectrum-depth">
                  <path d={`M0 ${(down / 100) * plot_px}H${inner_px}`} />
                  <text x="-8" y={(down / 100) * plot_px + 4} textAnchor="end">
                    {says}
                  </text>
                </g>
              ))}
              <rect className="spectrum-slow" width={x(Math.min(spectrum.slowest_Hz, half_Hz))} height={plot_px} />
              <path className="spectrum-light" d={path} />
              {rateTicks(frameRate_fps, Math.floor(inner_px / LABEL_px)).map(({ at, says }) => (
                <g key={says} className="spectrum-rate">
                  <path d={`M${(at / 100) * inner_px} ${plot_px}v5`} />
                  <text x={(at / 100) * inner_px} y={plot_px + 20} textAnchor={at < 3 ? 'start' : at > 97 ? 'end' : 'middle'}>
                    {says}
                  </text>
                </g>
              ))}
              {lamps.map(({ at, beat_Hz, ripple_Hz }) => (
                <path key={ripple_Hz} className="spectrum-lamp" d={`M${(at / 100) * inner_px} ${plot_px + 26}l-5 9h10z`}>
                  <title>{`${showNumber(beat_Hz, 4)} Hz`}</title>
                </path>
              ))}
              {lines.map((line, i) => (
                <g key={i} className={`spectrum-line${i === chosen ? ' is-chosen' : ''}`}>
                  <path d={`M${x(line.beat_Hz)} 0V${(downOf(depthNear(spectrum, line.beat_Hz, pixel_Hz), decades) / 100) * plot_px}`} />
                  <text x={x(line.beat_Hz) + raised[i]! * NUMBER_px} y="-7" textAnchor="middle">
                    {i + 1}
                  </text>
                </g>
              ))}
              {cursor_Hz !== undefined && <path className="spectrum-cursor" d={`M${x(cursor_Hz)} 0V${plot_px}`} />}
            </g>
          </svg>
        )}
      </div>
    </>
  );
} // prettier-ignore
