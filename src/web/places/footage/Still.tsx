import { useState } from 'react';
import { stillPath } from '../../../api/footageRoutes.ts';

export interface StillProps {
  readonly shootId: string;
  readonly clipId: string;
  readonly frame: number;
  /** Of the picture asked for, in pixels. */
  readonly width: number;
  readonly alt: string;
}

/** One frame of a clip; where it cannot be had, its place says so. */
export function Still({ shootId, clipId, frame, width, alt }: StillProps) {
  const address = stillPath(shootId, clipId, frame, width);
  const [missing, setMissing] = useState<string>();
  if (missing === address) return <span className="footage-no-still">no picture</span>;
  return (
    <img className="footage-still" src={address} alt={alt} loading="lazy" decoding="async" onError={() => setMissing(address)} />
  );
} // prettier-ignore
