import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { onTheme, themeNow } from '../../parts/theme.ts';
import { valueAt } from '../reckoner/axis.ts';
import { innerHeight, innerWidth, type Plot } from '../reckoner/plot.ts';
import { between, indexOf } from './chartGrid.ts';
import type { DrawnChart } from './useChart.ts';

const TINTS = 128;

const DARK = '(prefers-color-scheme: dark)';

/** What decides the colours of the page: the theme, and the system where nobody chose one. */
const lookNow = () => `${themeNow()} ${String(matchMedia(DARK).matches)}`;

function onLook(changed: () => void): () => void {
  const forget = onTheme(changed);
  const system = matchMedia(DARK);
  system.addEventListener('change', changed);
  return () => {
    forget();
    system.removeEventListener('change', changed);
  };
}

/** The colours between the faint and the strong tint, as the page's theme has them now. */
function tintsOf(low: string, high: string): Uint8ClampedArray {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [TINTS, 1];
  const context = canvas.getContext('2d', { willReadFrequently: true })!;
  for (let i = 0; i < TINTS; i += 1) {
    context.fillStyle = `color-mix(in oklch, ${low}, ${high} ${((i / (TINTS - 1)) * 100).toFixed(1)}%)`;
    context.fillRect(i, 0, 1, 1);
  }
  return context.getImageData(0, 0, TINTS, 1).data;
}

export interface HeatMapProps {
  readonly plot: Plot;
  readonly drawn: DrawnChart;
}

/** The swing as tints, from faint for none to strong. */
export function HeatMap({ plot, drawn }: HeatMapProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const ends = useRef<HTMLSpanElement>(null);
  const look = useSyncExternalStore(onLook, lookNow);
  const [width, height] = [Math.round(innerWidth(plot)), Math.round(innerHeight(plot))];
  const [isDrawn, setDrawn] = useState(false);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || !ends.current || width < 1) return;
    const { color, backgroundColor } = getComputedStyle(ends.current);
    const tints = tintsOf(backgroundColor, color);
    const { axes, rates_fps, exposures_s, places } = drawn;
    const image = context.createImageData(width, height);
    const columns = Float64Array.from({ length: width }, (_, x) => indexOf(rates_fps, valueAt(axes.rate, x / (width - 1)))); // prettier-ignore
    for (let y = 0; y < height; y += 1) {
      const row = indexOf(exposures_s, valueAt(axes.shutter, 1 - y / (height - 1)));
      for (let x = 0; x < width; x += 1) {
        const place = between(places, columns[x]!, row);
        const tint = 4 * Math.round((Number.isNaN(place) ? 0 : place) * (TINTS - 1));
        const at = 4 * (y * width + x);
        for (let part = 0; part < 3; part += 1) image.data[at + part] = tints[tint + part]!;
        image.data[at + 3] = 255;
      }
    }
    context.putImageData(image, 0, 0);
    setDrawn(true);
  }, [drawn, width, height, look]);
  return (
    <>
      <span ref={ends} className="heat-ends" hidden />
      <canvas
        ref={canvas}
        className="heat-map"
        width={width}
        height={height}
        style={{ left: plot.left, top: plot.top, width, height, visibility: isDrawn ? 'visible' : 'hidden' }}
        aria-hidden="true"
      />
    </>
  );
}
