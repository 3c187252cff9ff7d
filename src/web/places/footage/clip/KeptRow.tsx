import { Button } from '../../../parts/Button.tsx';
import { placeOf, type View } from './axis.ts';
import { useClip } from './clipContext.ts';
import { sayFrame } from './clipTimes.ts';
import { FrameGrip } from './FrameGrip.tsx';
import { frameOfEnd, isSame, sayKept, withEnd, type End } from './kept.ts';

export interface KeptRowProps {
  readonly view: View;
  readonly frameAt: (clientX: number) => number;
}

const ENDS: readonly { readonly end: End; readonly label: string }[] = [
  { end: 'in', label: 'First frame kept' },
  { end: 'out', label: 'Last frame kept' },
];

const clampPercent = (at: number) => Math.min(100, Math.max(0, at));

/** What is kept of the clip: a bar on the axis, whose ends are dragged. */
export function KeptRow({ view, frameAt }: KeptRowProps) {
  const { measurement, kept, transport, onDraft, onKeep } = useClip();
  const { frameCount } = measurement;
  const page = Math.max(1, Math.round((view.to - view.from) / 10));
  const [from, to] = [clampPercent(placeOf(kept.inFrame, view)), clampPercent(placeOf(kept.outFrame + 1, view))];
  return (
    <div className="clip-row clip-kept">
      <span className="clip-name">Kept</span>
      <div className="clip-track">
        <i className="clip-kept-bar" style={{ left: `${from}%`, width: `${Math.max(0, to - from)}%` }} aria-hidden="true" />
        {ENDS.map(({ end, label }) => {
          const frame = frameOfEnd(kept, end);
          const moved = (to: number) => withEnd(kept, end, to, frameCount);
          return (
            <FrameGrip
              key={end}
              className={`is-${end}`}
              label={label}
              says={sayFrame(frame, measurement)}
              frame={frame}
              at={placeOf(end === 'in' ? frame : frame + 1, view)}
              first={end === 'in' ? 0 : kept.inFrame}
              last={end === 'in' ? kept.outFrame : frameCount - 1}
              page={page}
              frameAt={frameAt}
              onMove={(to) => {
                onDraft(moved(to));
                // One sees what one cuts at.
                transport.seek(to);
              }}
              onDone={(to) => onKeep(moved(to))}
              onCancel={() => onDraft(undefined)}
            />
          );
        })}
      </div>
    </div>
  );
} // prettier-ignore

/** What is kept, in frames and in both times, and how it came to be that. */
export function KeptLine() {
  const { kept, suggested, entry, measurement, onKeep } = useClip();
  const { frames, real, screen } = sayKept(kept, measurement);
  const isSuggested = isSame(kept, suggested);
  return (
    <p className="clip-kept-line">
      <span>
        Kept: frames {kept.inFrame} to {kept.outFrame}, <b>{frames}</b>, <b className="is-real">{real}</b> on the set,{' '}
        <b className="is-screen">{screen}</b> on the screen.
      </span>{' '}
      <small>
        {isSuggested
          ? measurement.action
            ? 'As suggested, the action with a little before and after it. '
            : 'All of it: no action was found. '
          : `Suggested: ${suggested.inFrame} to ${suggested.outFrame}. `}
        Nothing is trimmed.
      </small>
      {(entry.kept !== undefined || !isSuggested) && (
        <Button look="quiet" className="no-print" onClick={() => onKeep(undefined)}>
          Back to the suggestion
        </Button>
      )}
    </p>
  );
}
