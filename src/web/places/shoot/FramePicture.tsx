import { useState } from 'react';
import { filePath } from '../../../api/routes.ts';
import type { Shoot } from '../../../document/schema.ts';

export interface FramePictureProps {
  readonly shootId: string;
  readonly shoot: Shoot;
  readonly frameId: string;
  readonly words: string;
}

const WIDTH = 160;

/** The shape of a deliverable laid into a frame as large as it goes. */
function cropIn(height: number, aspect: number) {
  const width = Math.min(WIDTH, height * aspect);
  return { x: (WIDTH - width) / 2, y: (height - width / aspect) / 2, width, height: width / aspect };
}

interface Pictured {
  readonly name: string;
  /** Absent where the shoot does not say which bytes it is. */
  readonly src?: string;
}

/** The picture of a frame as the shoot names it. */
export function pictureOf({ shootId, shoot, frameId }: Omit<FramePictureProps, 'words'>): Pictured | undefined {
  const fileId = shoot.board[frameId]?.picture;
  if (fileId === undefined) return undefined;
  const { name = fileId, sha256 } = shoot.files[fileId] ?? {};
  return sha256 === undefined ? { name } : { name, src: filePath(shootId, sha256) };
}

/** A frame nobody has drawn yet: the shape of the film, the other cuts marked in it, and what it tells. */
function Placeholder({
  height,
  crops,
  words,
}: {
  readonly height: number;
  readonly crops: readonly number[];
  readonly words: string;
}) {
  return (
    <>
      <svg viewBox={`0 0 ${WIDTH} ${height}`} aria-hidden="true">
        {crops.map((crop) => (
          <rect key={crop} className="frame-crop" {...cropIn(height, crop)} />
        ))}
      </svg>
      <span className="frame-words">{words}</span>
    </>
  );
}

/** The picture of a board frame, whole in the shape of the film; without one, what it tells. */
export function FramePicture(props: FramePictureProps) {
  const { shoot, words } = props;
  const picture = pictureOf(props);
  const [missingSrc, setMissingSrc] = useState<string>();
  const aspects = Object.values(shoot.deliverables).flatMap(({ pixels }) =>
    pixels === undefined ? [] : [pixels.widthCount / pixels.heightCount],
  );
  const [aspect = 16 / 9, ...others] = aspects;
  const crops = [...new Set(others)].filter((other) => Math.abs(other - aspect) > 0.01);
  const isShown = picture?.src !== undefined && picture.src !== missingSrc;
  return (
    <span className={isShown ? 'frame-picture has-picture' : 'frame-picture'} style={{ aspectRatio: String(aspect) }}>
      {isShown && <img src={picture.src} alt={words === '' ? picture.name : words} loading="lazy" decoding="async" onError={() => setMissingSrc(picture.src)} />}
      {!isShown && !picture && <Placeholder height={WIDTH / aspect} crops={crops} words={words} />}
      {!isShown && picture && (
        <span className="frame-missing">
          <span>The picture is not here</span>
          <span>{picture.name}</span>
        </span>
      )}
    </span>
  );
} // prettier-ignore
