import type { Shoot } from '../../../document/schema.ts';

export interface FramePictureProps {
  readonly shoot: Shoot;
  readonly words: string;
}

const WIDTH = 160;

/** The shape of a deliverable laid into a frame as large as it goes. */
function cropIn(height: number, aspect: number) {
  const width = Math.min(WIDTH, height * aspect);
  return { x: (WIDTH - width) / 2, y: (height - width / aspect) / 2, width, height: width / aspect };
}

/** A frame nobody has drawn yet: the shape of the film, the other cuts marked in it, and what it tells. */
export function FramePicture({ shoot, words }: FramePictureProps) {
  const aspects = Object.values(shoot.deliverables).flatMap(({ pixels }) =>
    pixels === undefined ? [] : [pixels.widthCount / pixels.heightCount],
  );
  const [aspect = 16 / 9, ...others] = aspects;
  const height = WIDTH / aspect;
  const crops = [...new Set(others)].filter((other) => Math.abs(other - aspect) > 0.01);
  return (
    <span className="frame-picture" style={{ aspectRatio: String(aspect) }}>
      <svg viewBox={`0 0 ${WIDTH} ${height}`} aria-hidden="true">
        {crops.map((crop) => (
          <rect key={crop} className="frame-crop" {...cropIn(height, crop)} />
        ))}
      </svg>
      <span className="frame-words">{words}</span>
    </span>
  );
}
