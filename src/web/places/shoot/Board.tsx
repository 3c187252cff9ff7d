import { lazy, Suspense, useMemo, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { newFrame } from './board.ts';
import { boardOrder, filmFrames, filmLength, type FilmLength } from '../../../turnover/film.ts';
import { BoardFrame } from './BoardFrame.tsx';
import { useDrop } from './dropPictures.ts';
import { seconds } from './seconds.ts';
import { usePictures } from './usePictures.ts';

const FrameSheet = lazy(() => import('./FrameSheet.tsx').then(({ FrameSheet: sheet }) => ({ default: sheet })));

export interface BoardProps {
  readonly open: OpenShoot;
  readonly onShot: (shotId: string) => void;
  readonly onSaid: (says: string) => void;
}

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
  const pictures = usePictures(open);
  const drop = useDrop(pictures.addFrames);
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
      {pictures.says !== undefined && (
        <p className="board-pictures" role="status">
          {pictures.says}
          {pictures.again && <Button onClick={pictures.again}>Try again</Button>}
          {!pictures.says.endsWith('…') && (
            <Button look="quiet" onClick={pictures.putAway}>
              Put this away
            </Button>
          )}
        </p>
      )}
      {frames.length === 0 && (
        <div className={drop.isOver ? 'shoot-none is-over' : 'shoot-none'} {...drop.handlers}>
          <p>
            No frames yet. They say what the film tells, in its order, and for how long. Pictures dropped here become
            frames.
          </p>
          <Button onClick={add}>Write the first frame</Button>
        </div>
      )}
      <ol className={drop.isOver ? 'board-frames is-over' : 'board-frames'} {...drop.handlers}>
        {frames.map((frame) => (
          <BoardFrame
            key={frame.id}
            open={open}
            frame={frame}
            onShot={onShot}
            onEdit={() => setEditedId(frame.id)}
            onPictures={([first, ...more]) => {
              if (first) pictures.give(frame.id, frame.title, first);
              if (more.length > 0) pictures.addFrames(more);
            }}
          />
        ))}
        {frames.length > 0 && left_s > 0 && length.verdict === 'free' && (
          <li className="frame is-free" style={{ flexGrow: left_s }}>
            <span className="frame-time is-open">{seconds(left_s)} free</span>
          </li>
        )}
      </ol>
      <Suspense fallback={null}>
        <FrameSheet
          open={open}
          frame={frames.find(({ id }) => id === editedId)}
          onClose={() => setEditedId(undefined)}
          onSaid={onSaid}
          pictures={pictures}
        />
      </Suspense>
    </Panel>
  );
}
