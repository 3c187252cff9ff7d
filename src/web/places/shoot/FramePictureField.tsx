import { useId } from 'react';
import { Button } from '../../parts/Button.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import type { FilmFrame } from '../../../turnover/film.ts';
import { PICTURE_TYPES, takePicturePatch } from './boardPictures.ts';
import { useDrop } from './dropPictures.ts';
import { FramePicture, pictureOf } from './FramePicture.tsx';
import type { Pictures } from './usePictures.ts';

export interface FramePictureFieldProps {
  readonly open: OpenShoot;
  readonly frame: FilmFrame;
  readonly pictures: Pictures;
}

/** The picture of a frame in its sheet: chosen, dropped, pasted, or taken out. */
export function FramePictureField({ open, frame, pictures }: FramePictureFieldProps) {
  const id = useId();
  const { id: frameId, title, words } = frame;
  const give = ([file]: readonly File[]) => file && pictures.give(frameId, title, file);
  const drop = useDrop(give);
  const picture = pictureOf({ shootId: open.id, shoot: open.shoot, frameId });
  return (
    <div className={drop.isOver ? 'frame-picture-field is-over' : 'frame-picture-field'} {...drop.handlers}>
      <FramePicture shootId={open.id} shoot={open.shoot} frameId={frameId} words={words} />
      <div>
        <div className="frame-picture-acts">
          <label className="file-button button plain" htmlFor={id}>
            {picture ? 'Another picture' : 'Choose a picture'}
            <input
              id={id}
              className="hidden-text"
              type="file"
              accept={PICTURE_TYPES.join(',')}
              aria-describedby={`${id}-says`}
              onChange={(event) => {
                const files = [...(event.currentTarget.files ?? [])];
                event.currentTarget.value = '';
                give(files);
              }}
            />
          </label>
          {picture && (
            <Button look="quiet" onClick={() => open.commit(takePicturePatch(open.written, frameId), `${title}: picture taken out`)}>
              Take it out
            </Button>
          )}
        </div>
        <p id={`${id}-says`}>PNG, JPEG, WebP or GIF, or drop or paste one here. It is made at most 1600 px long.</p>
        {pictures.says !== undefined && (
          <p role="status">
            {pictures.says} {pictures.again && <Button onClick={pictures.again}>Try again</Button>}
          </p>
        )}
      </div>
    </div>
  );
} // prettier-ignore
