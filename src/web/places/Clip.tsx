import { Button } from '../parts/Button.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import { Notice } from '../parts/Notice.tsx';
import { footageHref } from '../hrefs.ts';
import type { OpenShoot } from '../state/contract.ts';
import { useMeasured, type Footage } from '../state/useFootage.ts';
import { ClipHead } from './footage/clip/ClipHead.tsx';
import { FirstLook } from './footage/clip/FirstLook.tsx';
import { WholeClip } from './footage/clip/WholeClip.tsx';
import './footage/clip/clip.css';
import './footage/clip/clipAxis.css';
import './footage/clip/clipPaper.css';
import './footage/clip/playing.css';

export interface ClipProps {
  readonly open: OpenShoot;
  readonly footage: Footage;
  readonly clipId: string;
  readonly onGo: (href: string) => void;
}

/** One clip: played frame by frame, with what was measured of it along two clocks, and how it stands against its plan. */
export function Clip({ open, footage, clipId, onGo }: ClipProps) {
  const { state, failed, refused, dismiss, measure, stop } = footage;
  const entry = state?.clips.find(({ id }) => id === clipId);
  const measured = useMeasured(open.id, entry);
  if (!state)
    return (
      <div className="clip">
        <h1>Footage</h1>
        <p role="status">{failed ?? 'Reading the footage…'}</p>
      </div>
    );
  if (!entry)
    return (
      <EmptyPlace title="No such clip" says="It was never added to this shoot. All that was are in the list.">
        <Button look="main" onClick={() => onGo(footageHref(open.id))}>
          All footage
        </Button>
      </EmptyPlace>
    );
  const { clip, isUpdating } = measured;
  return (
    <div className="clip" aria-busy={isUpdating}>
      <ClipHead
        shootId={open.id}
        entry={entry}
        clip={clip}
        onMeasure={(isAnew) => measure(clipId, isAnew)}
        onStop={() => stop(clipId)}
        onGo={onGo}
      />
      {failed !== undefined && <p className="clip-note">{failed}</p>}
      {measured.failed !== undefined && <p className="clip-note">What was measured cannot be read: {measured.failed}</p>}
      {clip?.isWhole ? (
        <WholeClip key={clipId} open={open} footage={footage} entry={entry} clip={clip} onGo={onGo} />
      ) : isUpdating && !clip ? (
        <p className="clip-reading" role="status">
          Reading what was measured…
        </p>
      ) : (
        <FirstLook key={clipId} open={open} entry={entry} clip={clip} onGo={onGo} />
      )}
      {refused !== undefined && <Notice says={refused} onDismiss={dismiss} />}
    </div>
  );
} // prettier-ignore
