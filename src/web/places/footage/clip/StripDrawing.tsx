import { memo, useMemo } from 'react';
import type { View } from './axis.ts';
import { bandPath, columnsOf, heightOf_px } from './stripLayout.ts';
import type { Strip } from './strips.ts';

export interface StripDrawingProps {
  readonly strip: Strip;
  readonly view: View;
  readonly width_px: number;
  readonly height_px: number;
}

/** A line is drawn this wide at the least, so that level stretches are seen. */
const LINE_px = 1.6;

/** One strip, its values as far as they are in sight; it is drawn anew only when that changes. */
export const StripDrawing = memo(function StripDrawing({ strip, view, width_px, height_px }: StripDrawingProps) {
  const inner_px = height_px - LINE_px;
  const paths = useMemo(
    () =>
      strip.drawn.map(({ look, low, high }) => {
        const below = columnsOf(low, view, width_px);
        const above = low === high ? below : columnsOf(high, view, width_px);
        return { look, path: bandPath(below.low, above.high, strip.scale, inner_px) };
      }),
    [strip, view, width_px, inner_px],
  );
  return (
    <svg className="clip-strip" width={width_px} height={height_px} viewBox={`0 0 ${width_px} ${height_px}`} preserveAspectRatio="none" aria-hidden="true">
      <g transform={`translate(0 ${LINE_px / 2})`}>
        {strip.marks.map(({ value }) => (
          <path key={value} className="clip-mark" d={`M0 ${heightOf_px(value, strip.scale, inner_px)}H${width_px}`} />
        ))}
        {paths.map(({ look, path }) => (
          <path key={look} className={`clip-drawn is-${look}`} d={path} />
        ))}
      </g>
    </svg>
  );
}); // prettier-ignore
