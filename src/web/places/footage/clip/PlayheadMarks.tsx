import { placeOf, type View } from './axis.ts';
import { useClip } from './clipContext.ts';
import { sayFrame } from './clipTimes.ts';
import { FrameGrip } from './FrameGrip.tsx';
import { usePlayhead } from './playhead.ts';

/** The line through all strips at the frame the clip stands at. */
export function PlayheadLine({ view }: { readonly view: View }) {
  const at = placeOf(usePlayhead(useClip().playhead) + 0.5, view);
  return at < 0 || at > 100 ? null : <i className="clip-playhead" style={{ left: `${at.toFixed(3)}%` }} aria-hidden="true" />; // prettier-ignore
}

/** The grip of the playhead, on the upper ruler. */
export function PlayheadGrip({ view, frameAt }: { readonly view: View; readonly frameAt: (clientX: number) => number }) {
  const { playhead, transport, measurement } = useClip();
  const frame = usePlayhead(playhead);
  return (
    <FrameGrip
      className="is-playhead"
      label="Where the clip stands"
      says={sayFrame(frame, measurement)}
      frame={frame}
      at={placeOf(frame + 0.5, view)}
      first={0}
      last={measurement.frameCount - 1}
      page={Math.max(1, Math.round((view.to - view.from) / 10))}
      frameAt={frameAt}
      onMove={transport.seek}
      onDone={transport.seek}
      onCancel={() => undefined}
    />
  );
} // prettier-ignore
