import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { moveFramePatch, removeFramePatch, servePatch } from './board.ts';
import { boardOrder, type FilmFrame } from '../../../turnover/film.ts';
import { FramePictureField } from './FramePictureField.tsx';
import type { Pictures } from './usePictures.ts';
import { WordsField } from './WordsField.tsx';
import { WrittenField } from './WrittenField.tsx';

export interface FrameSheetProps {
  readonly open: OpenShoot;
  readonly frame: FilmFrame | undefined;
  readonly onClose: () => void;
  readonly onSaid: (says: string) => void;
  readonly pictures: Pictures;
}

function Body({ open, frame, onClose, onSaid, pictures }: FrameSheetProps & { readonly frame: FilmFrame }) {
  const { written, shoot, plan } = open;
  const { id, title, number } = frame;
  const ids = boardOrder(shoot);
  const path = `/board/${id}`;
  const move = (by: 1 | -1) =>
    open.commit(moveFramePatch(ids, id, by), `${title} moved ${by < 0 ? 'earlier' : 'later'}`);
  const remove = () => {
    open.commit(removeFramePatch(written, id), `${title} taken off the board`);
    onSaid(`Taken off the board: ${title}`);
    onClose();
  };
  return (
    <>
      <FramePictureField open={open} frame={frame} pictures={pictures} />
      <WrittenField open={open} path={`${path}/title`} label="Title" placeholder="what people call it" />
      <WordsField open={open} path={`${path}/words`} label="What it tells" placeholder="in a sentence or two" />
      <WrittenField open={open} path={`${path}/seconds`} label="Seconds in the film" placeholder="4 s" />
      {plan.shots.length > 0 && (
        <fieldset className="frame-serves">
          <legend>Served by</legend>
          {plan.shots.map((shot) => (
            <label key={shot.id}>
              <input
                type="checkbox"
                checked={frame.shots.some((each) => each.id === shot.id)}
                onChange={(event) =>
                  open.commit(
                    servePatch(written, shot.id, id, event.currentTarget.checked),
                    `${shot.title} and ${title}`,
                  )
                }
              />
              <span>
                {shot.number} {shot.title}
              </span>
            </label>
          ))}
        </fieldset>
      )}
      <div className="frame-tools">
        <Button disabled={number === 1} onClick={() => move(-1)}>
          Earlier
        </Button>
        <Button disabled={number === ids.length} onClick={() => move(1)}>
          Later
        </Button>
        <Button look="quiet" onClick={remove}>
          Take it off the board
        </Button>
      </div>
    </>
  );
}

/** One frame of the board in full: what it tells, for how long, and which shots serve it. */
export function FrameSheet(props: FrameSheetProps) {
  const { frame, onClose } = props;
  return (
    <Sheet isOpen={frame !== undefined} title={frame ? `Frame ${frame.number} of the film` : 'Frame'} onClose={onClose}>
      {frame && <Body key={frame.id} {...props} frame={frame} />}
    </Sheet>
  );
} // prettier-ignore
