import { rulerOf, type View } from './axis.ts';

export interface RulerProps {
  readonly clock: 'real' | 'screen';
  readonly title: string;
  readonly view: View;
  readonly rate_fps: number;
  readonly width_px: number;
}

const LABEL_px = 84;
const HALF_LABEL_px = 30;

/** One of the two clocks along the clip. */
export function Ruler({ clock, title, view, rate_fps, width_px }: RulerProps) {
  const ticks = rulerOf({ view, rate_fps, mostCount: Math.floor(width_px / LABEL_px) });
  // A label that would stick out at either edge goes unsaid.
  const isWithin = (at: number) => (at / 100) * width_px > HALF_LABEL_px && (1 - at / 100) * width_px > HALF_LABEL_px;
  return (
    <div className={`clip-row clip-ruler is-${clock}`}>
      <span className="clip-name">{title}</span>
      <div className="clip-track" aria-hidden="true">
        {width_px > 0 &&
          ticks.map(({ at, says }) => (
            <i key={says} style={{ left: `${at.toFixed(3)}%` }}>
              {isWithin(at) && <span>{says}</span>}
            </i>
          ))}
      </div>
    </div>
  );
}
