import type { CSSProperties } from 'react';

import { placeOf, type View } from './axis.ts';
import { usePlayhead, type Playhead } from './playhead.ts';
import { StripDrawing } from './StripDrawing.tsx';
import { heightOf_px } from './stripLayout.ts';
import type { Strip } from './strips.ts';

export interface StripMark {
  readonly frame: number;
  readonly says: string;
}

export interface StripRowProps {
  readonly strip: Strip;
  readonly view: View;
  readonly width_px: number;
  readonly height_px: number;
  readonly playhead: Playhead;
  /** Frames that are pointed out on it. */
  readonly marks?: readonly StripMark[];
}

function ValueAt({ strip, playhead }: Pick<StripRowProps, 'strip' | 'playhead'>) {
  const { main, more } = strip.at(usePlayhead(playhead));
  return (
    <>
      <b className="clip-value">{main}</b>
      {more !== undefined && <small>{more}</small>}
    </>
  );
}

/** One strip with its name, its unit, and what it is at the playhead. */
export function StripRow({ strip, view, width_px, height_px, playhead, marks = [] }: StripRowProps) {
  const seen = marks.map((mark) => ({ ...mark, at: placeOf(mark.frame + 0.5, view) })).filter(({ at }) => at >= 0 && at <= 100); // prettier-ignore
  return (
    <div className={`clip-row is-${strip.id}`}>
      <div className="clip-name">
        <span>
          {strip.title} <small>{strip.unit}</small>
        </span>
        <ValueAt strip={strip} playhead={playhead} />
      </div>
      <div className="clip-track" style={{ height: height_px }}>
        {width_px > 0 && <StripDrawing strip={strip} view={view} width_px={width_px} height_px={height_px} />}
        {strip.marks.map(({ value, says }) => (
          <span key={says} className="clip-scale" style={{ top: heightOf_px(value, strip.scale, height_px) }} aria-hidden="true">
            {says}
          </span>
        ))}
        {seen.map(({ at, says, frame }, i) => (
          <span key={says} className="clip-moment" style={{ left: `${at.toFixed(3)}%`, '--line': String(i) } as CSSProperties} title={`${says}: frame ${frame}`} aria-hidden="true">
            <i>{says}</i>
          </span>
        ))}
      </div>
    </div>
  );
} // prettier-ignore
