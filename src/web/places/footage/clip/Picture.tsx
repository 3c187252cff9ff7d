import { useState, type CSSProperties, type ReactNode } from 'react';
import { proxyPath, stillPath } from '../../../../api/footageRoutes.ts';
import type { ClipEntry } from '../../../../record/footage.ts';
import { useRested } from '../../../parts/useRested.ts';
import { usePlayhead, type Playhead } from './playhead.ts';
import type { Transport } from './useTransport.ts';

export interface PictureProps {
  readonly shootId: string;
  readonly entry: ClipEntry;
  readonly width: number;
  readonly height: number;
  readonly playhead: Playhead;
  readonly transport: Transport;
  /** Laid over the picture. */
  readonly children?: ReactNode;
}

/** A picture is asked for once the playhead has rested so long: making one takes the server a moment. */
const REST_ms = 150;
const STILL_px = 960;

function StillAt({ shootId, entry, width, playhead }: PictureProps) {
  const frame = useRested(usePlayhead(playhead), REST_ms);
  const address = stillPath(shootId, entry.id, frame, Math.min(width, STILL_px));
  const [missing, setMissing] = useState<string>();
  if (missing === address) return <p className="clip-no-picture">No picture of frame {frame} can be had.</p>;
  return <img className="clip-image" src={address} alt={`Frame ${frame}`} decoding="async" onError={() => setMissing(address)} data-frame={frame} />; // prettier-ignore
}

function Copy({ shootId, entry, transport, onError }: PictureProps & { readonly onError: () => void }) {
  const shown = usePlayhead(transport.shown);
  return (
    <video
      ref={transport.video}
      className="clip-image"
      src={proxyPath(shootId, entry.id)}
      aria-label="The clip"
      muted
      playsInline
      disablePictureInPicture
      preload="auto"
      data-frame={shown}
      onError={onError}
    />
  );
}

/** The picture at the playhead: of the small copy where there is one, else a still. */
export function Picture(props: PictureProps) {
  const { entry, width, height, children } = props;
  const [isBroken, setBroken] = useState(false);
  const isCopy = entry.proxy.state === 'ready' && !isBroken;
  return (
    <div className="clip-picture" style={{ '--aspect': String(width / height) } as CSSProperties}>
      {isCopy ? <Copy {...props} onError={() => setBroken(true)} /> : <StillAt {...props} />}
      {children}
      {isBroken && <p className="clip-picture-note">This browser cannot play the small copy: stills instead.</p>}
    </div>
  );
}
