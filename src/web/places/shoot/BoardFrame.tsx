import { shotHref } from '../../hrefs.ts';
import { useFieldMark } from '../../parts/fieldMarks.ts';
import type { OpenShoot } from '../../state/contract.ts';
import type { FilmFrame } from '../../../turnover/film.ts';
import { GoLink } from '../GoLink.tsx';
import { useDrop } from './dropPictures.ts';
import { FramePicture } from './FramePicture.tsx';
import { seconds } from './seconds.ts';
import { writtenFieldId } from './WrittenField.tsx';

export interface BoardFrameProps {
  readonly open: OpenShoot;
  readonly frame: FilmFrame;
  readonly onShot: (shotId: string) => void;
  readonly onEdit: () => void;
  /** Pictures were dropped onto the frame, or pasted while it had the focus. */
  readonly onPictures: (files: readonly File[]) => void;
}

/** Frames are as wide as they are long in the film, within reason; one that does not say counts as a short one. */
const UNSAID_s = 2;

/** One frame of the board: its seconds, its picture or what it tells, and the shots that serve it. */
export function BoardFrame({ open, frame, onShot, onEdit, onPictures }: BoardFrameProps) {
  const { id, title, words, number, screenTime_s, shots, given_s } = frame;
  const drop = useDrop(onPictures);
  const mark = useFieldMark(writtenFieldId(`/board/${id}`));
  return (
    <li className={drop.isOver ? 'frame is-over' : 'frame'} style={{ flexGrow: screenTime_s ?? UNSAID_s }} {...drop.handlers}>
      <span className={screenTime_s === undefined ? 'frame-time is-open' : 'frame-time'}>
        {screenTime_s === undefined ? 'no length yet' : seconds(screenTime_s)}
      </span>
      <button type="button" className="frame-open" onClick={onEdit}>
        <span className="frame-title">
          <span className="hidden-text">Frame </span>
          <span className="frame-number">{number}</span> {title}
        </span>
        <FramePicture shootId={open.id} shoot={open.shoot} frameId={id} words={words} />
      </button>
      {mark !== undefined && <span className="here-mark">{mark}</span>}
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
