import { timesOf } from './clipTimes.ts';
import { useClip } from './clipContext.ts';
import { usePlayhead } from './playhead.ts';

/** Where the clip stands: the frame, real time on the set and screen time in the film. */
export function Readout() {
  const { playhead, measurement } = useClip();
  const frame = usePlayhead(playhead);
  const { real, screen } = timesOf(frame, measurement);
  return (
    <dl className="clip-readout">
      <div>
        <dt>Frame</dt>
        <dd>
          <b>{frame}</b> <small>of {measurement.frameCount}</small>
        </dd>
      </div>
      <div className="is-real">
        <dt>On the set</dt>
        <dd>
          <b>{real}</b>
        </dd>
      </div>
      <div className="is-screen">
        <dt>On the screen</dt>
        <dd>
          <b>{screen}</b>
        </dd>
      </div>
    </dl>
  );
}
