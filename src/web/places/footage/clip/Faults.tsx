import type { View } from './axis.ts';
import { columnsWith } from './stripLayout.ts';

export interface FaultsProps {
  readonly missing: readonly number[];
  readonly repeated: readonly number[];
  /** The first of each pair. */
  readonly swapped: readonly number[];
  readonly view: View;
  readonly width_px: number;
}

const ticks = (columns: readonly number[], from: number, to: number): string =>
  columns.map((column) => `M${column + 0.5} ${from}V${to}`).join('');

const said = (count: number, word: string) => (count === 0 ? `none ${word}` : `${count} ${word}`);

/** Two short strokes that step past each other. */
const steps = (columns: readonly number[]): string =>
  columns.map((column) => `M${column - 1.5} 2V11M${column + 2.5} 15V24`).join('');

/** Frames that are missing, that are the one before again, or that changed places, each where it is. */
export function Faults({ missing, repeated, swapped, view, width_px }: FaultsProps) {
  const width = Math.floor(width_px);
  const says = [said(missing.length, 'missing'), said(repeated.length, 'repeated'), ...(swapped.length > 0 ? [`${swapped.length} out of order`] : [])]; // prettier-ignore
  return (
    <div className="clip-row is-faults">
      <div className="clip-name">
        <span>
          Frames <small>{says.join(', ')}</small>
        </span>
      </div>
      <div className="clip-track" style={{ height: 26 }}>
        {width > 0 && (
          <svg
            className="clip-strip"
            width={width}
            height="26"
            viewBox={`0 0 ${width} 26`}
            preserveAspectRatio="none"
            aria-hidden="true"
          >
            <path className="clip-missing" d={ticks(columnsWith(missing, view, width), 2, 24)} />
            <path className="clip-repeated" d={ticks(columnsWith(repeated, view, width), 9, 17)} />
            <path className="clip-swapped" d={steps(columnsWith(swapped, view, width))} />
          </svg>
        )}
      </div>
    </div>
  );
}
