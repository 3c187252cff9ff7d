import type { View } from './axis.ts';
import { columnsWith } from './stripLayout.ts';

export interface FaultsProps {
  readonly missing: readonly number[];
  readonly repeated: readonly number[];
  readonly view: View;
  readonly width_px: number;
}

const ticks = (columns: readonly number[], from: number, to: number): string =>
  columns.map((column) => `M${column + 0.5} ${from}V${to}`).join('');

const said = (count: number, word: string) => (count === 0 ? `none ${word}` : `${count} ${word}`);

/** Frames that are missing, and frames that are the one before again, each where it is. */
export function Faults({ missing, repeated, view, width_px }: FaultsProps) {
  const width = Math.floor(width_px);
  return (
    <div className="clip-row is-faults">
      <div className="clip-name">
        <span>
          Frames <small>{`${said(missing.length, 'missing')}, ${said(repeated.length, 'repeated')}`}</small>
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
          </svg>
        )}
      </div>
    </div>
  );
}
