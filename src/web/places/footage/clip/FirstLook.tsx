import { useState } from 'react';
import type { ClipEntry } from '../../../../record/footage.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import type { OpenShoot } from '../../../state/contract.ts';
import { Still } from '../Still.tsx';
import { SpectrumPanel } from './SpectrumPanel.tsx';
import { usePlanned, useReply } from './usePlanned.ts';
import { Verdict } from './Verdict.tsx';

export interface FirstLookProps {
  readonly open: OpenShoot;
  readonly entry: ClipEntry;
  /** Of a stretch, or nothing yet. */
  readonly clip: MeasuredClip | undefined;
  readonly onGo: (href: string) => void;
}

const STILL_px = 960;

/** What can be said before every frame was measured. Its frames are counted from the stretch, so no axis is drawn yet. */
export function FirstLook({ open, entry, clip, onGo }: FirstLookProps) {
  const shot = usePlanned(open, entry.shotId);
  const reply = useReply(clip, shot);
  const [line, setLine] = useState(0);
  return (
    <>
      <div className="clip-top">
        <div className="clip-player">
          <div className="clip-picture">
            {entry.isUnsent ? (
              <p className="clip-no-picture">It was not sent yet.</p>
            ) : entry.isHere ? (
              <Still shootId={open.id} clipId={entry.id} frame={0} width={STILL_px} alt="The first frame" />
            ) : (
              <p className="clip-no-picture">Its file is not here.</p>
            )}
          </div>
          <p className="clip-hint">
            {entry.isHere ? 'Player, strips and contact sheet come when every frame was measured.' : 'Bring the file back to where it was, and measure it.'}
          </p>
        </div>
        {reply ? (
          <Verdict open={open} reply={reply} note={`A first look at ${reply.frameCount} frames of it, counted from the first of those. All of it may show more.`} onGo={onGo} />
        ) : (
          <p className="clip-hint">Nothing was measured of it yet.</p>
        )}
      </div>
      {clip && reply && <SpectrumPanel open={open} measurement={clip.measurement} reply={reply} shot={shot} chosen={line} onChoose={setLine} onGo={onGo} />}
    </>
  );
} // prettier-ignore
