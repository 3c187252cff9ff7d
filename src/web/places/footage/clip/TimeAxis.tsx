import { useMemo, type PointerEvent } from 'react';
import { pixelSize_m } from '../../../../turnover/measureAgainst.ts';
import { Panel } from '../../../parts/Panel.tsx';
import { useWidth } from '../../../parts/useWidth.ts';
import { placeOf, type View } from './axis.ts';
import { useClip } from './clipContext.ts';
import { Faults } from './Faults.tsx';
import type { Kept } from './kept.ts';
import { KeptLine, KeptRow } from './KeptRow.tsx';
import { PlayheadGrip, PlayheadLine } from './PlayheadMarks.tsx';
import { Ruler } from './Ruler.tsx';
import { StripRow, type StripMark } from './StripRow.tsx';
import { stripsOf } from './strips.ts';
import { useView } from './useView.ts';
import { ViewTools } from './ViewTools.tsx';

const HEIGHTS_px = { light: 96, clipped: 56, focus: 56, motion: 64, activity: 64 } as const;

/** What is not kept lies in shade. */
function Shade({ kept, view }: { readonly kept: Kept; readonly view: View }) {
  const before = Math.min(100, Math.max(0, placeOf(kept.inFrame, view)));
  const after = Math.min(100, Math.max(0, 100 - placeOf(kept.outFrame + 1, view)));
  return (
    <>
      <i className="clip-shade" style={{ left: 0, width: `${before}%` }} />
      <i className="clip-shade" style={{ right: 0, width: `${after}%` }} />
    </>
  );
}

/** Everything that was measured of each frame on one axis: real time above, screen time below, one playhead through all. */
export function TimeAxis() {
  const { measurement, shot, playhead, transport, kept } = useClip();
  const { frameCount, frameRate_fps, playback_fps, action, missingFrames, repeatedFrames, swappedFrames = [] } = measurement;
  const [track, width_px] = useWidth<HTMLDivElement>();
  const { view, setView, frameAtX, pinch } = useView(track, playhead, frameCount);
  const pixel_m = shot && pixelSize_m(shot, measurement);
  const strips = useMemo(() => stripsOf(measurement, pixel_m), [measurement, pixel_m]);
  const moments = useMemo(
    (): readonly StripMark[] =>
      action
        ? [
            { frame: action.onset, says: action.isBegun ? 'begins' : 'begun before' },
            { frame: action.peak, says: 'most' },
            { frame: action.end, says: action.isEnded ? 'ends' : 'runs on' },
          ]
        : [],
    [action],
  );
  const follow = (event: PointerEvent<HTMLElement>) => transport.seek(frameAtX(event.clientX));
  return (
    <Panel
      title="Along the clip"
      className="clip-time"
      aside={<ViewTools view={view} setView={setView} />}
    >
      <KeptLine />
      <div className="clip-axis">
        <Ruler clock="real" title="On the set" view={view} rate_fps={frameRate_fps} width_px={width_px} />
        <KeptRow view={view} frameAt={frameAtX} />
        {strips.map((strip) => (
          <StripRow
            key={strip.id}
            strip={strip}
            view={view}
            width_px={Math.floor(width_px)}
            height_px={HEIGHTS_px[strip.id]}
            playhead={playhead}
            {...(strip.id === 'activity' && { marks: moments })}
          />
        ))}
        <Faults missing={missingFrames} repeated={repeatedFrames} swapped={swappedFrames} view={view} width_px={width_px} />
        <Ruler clock="screen" title="On the screen" view={view} rate_fps={playback_fps} width_px={width_px} />
        <div className="clip-over">
          <div
            className="clip-ground"
            ref={track}
            onPointerDown={(event) => {
              if (event.button !== 0) return;
              event.currentTarget.setPointerCapture(event.pointerId);
              if (!pinch.onDown(event)) follow(event);
            }}
            onPointerMove={(event) => {
              if (!pinch.onMove(event) && event.currentTarget.hasPointerCapture(event.pointerId)) follow(event);
            }}
            onPointerUp={pinch.onEnd}
            onPointerCancel={pinch.onEnd}
          >
            <Shade kept={kept} view={view} />
            <PlayheadLine view={view} />
            <PlayheadGrip view={view} frameAt={frameAtX} />
          </div>
        </div>
      </div>
    </Panel>
  );
} // prettier-ignore
