import { useMemo, useState } from 'react';
import { showQuantity } from '../../../base/quantity.ts';
import { shotHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { GoLink } from '../GoLink.tsx';
import { saidShown } from '../shot/showValue.ts';
import { newFrame } from './board.ts';
import { boardOrder, filmFrames, filmLength, type FilmFrame, type FilmLength } from './film.ts';
import { FramePicture } from './FramePicture.tsx';
import { FrameSheet } from './FrameSheet.tsx';

export interface BoardProps {
  readonly open: OpenShoot;
  readonly onShot: (shotId: string) => void;
  readonly onSaid: (says: string) => void;
}

const seconds = (time_s: number) => saidShown(showQuantity('time', time_s, { digits: 4 }));

/** Whether the frames fill the film, in words. */
function sayLength({ screenTime_s, openCount, target, left_s = 0, verdict }: FilmLength): string {
  const open =
    openCount === 0 ? '' : `; ${openCount === 1 ? 'one frame does' : `${openCount} frames do`} not say how long`;
  if (!target) return `${seconds(screenTime_s)}; no deliverable says how long it runs${open}`;
  const of = `${seconds(screenTime_s)} of ${seconds(target.length_s)} (${target.title})`;
  if (verdict === 'over') return `${of}: ${seconds(-left_s)} too long${open}`;
  if (verdict === 'open') return `${of} so far${open}`;
  return verdict === 'fits' ? `${of}: it fits` : `${of}: ${seconds(left_s)} still free`;
}

/** Frames are as wide as they are long in the film, within reason; one that does not say counts as a short one. */
const UNSAID_s = 2;

function Frame({ open, frame, onShot, onEdit }: { readonly open: OpenShoot; readonly frame: FilmFrame; readonly onShot: (shotId: string) => void; readonly onEdit: () => void }) {
  const { title, words, number, screenTime_s, shots, given_s } = frame;
  return (
    <li className="frame" style={{ flexGrow: screenTime_s ?? UNSAID_s }}>
      <span className={screenTime_s === undefined ? 'frame-time is-open' : 'frame-time'}>
        {screenTime_s === undefined ? 'no length yet' : seconds(screenTime_s)}
      </span>
      <button type="button" className="frame-open" onClick={onEdit} aria-label={`Frame ${number}: ${title}. ${words}`}>
        <FramePicture shoot={open.shoot} words={words} />
        <span className="frame-title">
          <span className="frame-number">{number}</span> {title}
        </span>
      </button>
      {given_s !== undefined && <span className="frame-given">its shot gives {seconds(given_s)}</span>}
      <span className="frame-shots">
        {shots.length === 0 && <span className="frame-unserved">no shot serves it yet</span>}
        {shots.map((shot) => (
          <GoLink key={shot.id} href={shotHref(open.id, shot.id)} onGo={() => onShot(shot.id)}>
            shot {shot.number}
            <span className="hidden-text"> {shot.title}</span>
          </GoLink>
        ))}
      </span>
    </li>
  );
} // prettier-ignore

/** The board in the order of the film, its seconds laid end to end and held against what is to be delivered. */
export function Board({ open, onShot, onSaid }: BoardProps) {
  const { shoot, plan } = open;
  const frames = useMemo(() => filmFrames(shoot, plan), [shoot, plan]);
  const length = useMemo(() => filmLength(shoot), [shoot]);
  const [editedId, setEditedId] = useState<string>();
  const add = () => {
    const { frameId, patch } = newFrame(open.written, boardOrder(shoot));
    open.commit(patch, 'New frame');
    setEditedId(frameId);
  };
  const left_s = length.verdict === 'over' ? 0 : (length.left_s ?? 0);
  return (
    <Panel
      title="Board"
      className="board"
      aside={
        <>
          {frames.length > 0 && (
            <span className={length.verdict === 'over' ? 'film-length is-over' : 'film-length'}>
              {sayLength(length)}
            </span>
          )}
          {frames.length > 0 && (
            <Button look="quiet" className="no-print" onClick={add}>
              Add a frame
            </Button>
          )}
        </>
      }
    >
      {frames.length === 0 && (
        <div className="shoot-none">
          <p>No frames yet. They say what the film tells, in its order, and for how long.</p>
          <Button onClick={add}>Write the first frame</Button>
        </div>
      )}
      <ol className="board-frames">
        {frames.map((frame) => (
          <Frame key={frame.id} open={open} frame={frame} onShot={onShot} onEdit={() => setEditedId(frame.id)} />
        ))}
        {frames.length > 0 && left_s > 0 && length.verdict === 'free' && (
          <li className="frame is-free" style={{ flexGrow: left_s }}>
            <span className="frame-time is-open">{seconds(left_s)} free</span>
          </li>
        )}
      </ol>
      <FrameSheet
        open={open}
        frame={frames.find(({ id }) => id === editedId)}
        onClose={() => setEditedId(undefined)}
        onSaid={onSaid}
      />
    </Panel>
  );
}
