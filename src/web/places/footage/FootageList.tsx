import { useState } from 'react';
import type { ClipEntry, FootageEvent } from '../../../record/footage.ts';
import { footageHref, shotHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyPlace } from '../../parts/EmptyPlace.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import type { Footage } from '../../state/useFootage.ts';
import { GoLink } from '../GoLink.tsx';
import { zoneOf } from '../history/journal.ts';
import { AddClips } from './AddClips.tsx';
import { groupClips, type ClipGroup } from './clipGroups.ts';
import { ClipRow } from './ClipRow.tsx';
import { summaryOf } from './clipStanding.ts';
import { CorrectClip, type ClipChange } from './CorrectClip.tsx';
import { FfmpegLack, FolderLack, NoFolder } from './Lacking.tsx';
import { LearnSheet } from './learn/LearnSheet.tsx';
import { teachable } from './learn/teaching.ts';
import { whenWords } from './when.ts';

export interface FootageListProps {
  readonly open: OpenShoot;
  readonly footage: Footage;
  readonly onGo: (href: string) => void;
}

interface Said {
  readonly says: string;
  /** What takes it back. */
  readonly back?: FootageEvent;
}

/** What takes back what is told of a clip: all that was known of the same before. */
function backFrom(clip: ClipEntry, change: ClipChange): FootageEvent {
  const before = Object.keys(change).map((key) => [key, clip[key as keyof ClipChange] ?? null]);
  return { kind: 'told', clipId: clip.id, ...Object.fromEntries(before) } as FootageEvent;
}

function GroupHead({
  group,
  shootId,
  onLearn,
  onGo,
}: {
  readonly group: ClipGroup;
  readonly shootId: string;
  /** Absent where no clip of it was measured whole. */
  readonly onLearn: (() => void) | undefined;
  readonly onGo: (href: string) => void;
}) {
  const { shot, title, clips, key } = group;
  return (
    <div className="footage-group-head">
      <h2 id={`footage-of-${key}`}>
        {shot ? (
          <GoLink href={shotHref(shootId, shot.id)} onGo={onGo}>
            {title}
          </GoLink>
        ) : (
          title
        )}
      </h2>
      <span className="footage-quiet">{clips.length === 1 ? '1 clip' : `${clips.length} clips`}</span>
      {onLearn && (
        <Button look="quiet" className="no-print" aria-label={`What they teach: ${title}`} onClick={onLearn}>
          What they teach
        </Button>
      )}
    </div>
  );
}

/** Every clip of the shoot, by shot, with what was found in it. */
export function FootageList({ open, footage, onGo }: FootageListProps) {
  const { state, failed, refused, unsentCount } = footage;
  const [isAdding, setAdding] = useState(false);
  const [lastShot, setLastShot] = useState<string>();
  const [correcting, setCorrecting] = useState<string>();
  const [pairing, setPairing] = useState<string>();
  const [learning, setLearning] = useState<{ readonly group: ClipGroup; readonly isOpen: boolean }>();
  const [isAsideShown, setAsideShown] = useState(false);
  const [said, setSaid] = useState<Said>();

  if (!state)
    return (
      <div className="footage">
        <h1>Footage</h1>
        {failed === undefined ? <p role="status">Looking for clips…</p> : <p role="alert">{failed} <Button onClick={footage.wake}>Try again now</Button></p>}
      </div>
    );

  const { clips, folders, ffmpegMissing } = state;
  const add = (events: readonly FootageEvent[], shotId: string | undefined) => {
    for (const event of events) footage.happen(event);
    setLastShot(shotId);
    setAdding(false);
    setSaid({ says: `${events.length === 1 ? '1 clip' : `${events.length} clips`} added: a first look comes first, then every frame is measured` });
  };
  const adding = (
    <Sheet isOpen={isAdding} title="Add clips" onClose={() => setAdding(false)}>
      <AddClips open={open} state={state} shotId={lastShot} onAdd={add} />
    </Sheet>
  );
  const notices = refused === undefined
    ? said && (
        <Notice
          says={said.says}
          {...(said.back && {
            action: {
              label: 'Undo',
              onPress: () => {
                footage.happen(said.back!);
                setSaid(undefined);
              },
            },
          })}
          onDismiss={() => setSaid(undefined)}
        />
      )
    : <Notice says={refused} onDismiss={footage.dismiss} />;

  if (clips.length === 0)
    return (
      <>
        {folders.length === 0 ? (
          <NoFolder />
        ) : (
          <EmptyPlace title="No clips yet" says="A clip is measured where it lies: whether it pulses and which lamp that may be, how it is exposed, whether it is sharp, how fast things moved, where the action is, and how all that stands against the plan.">
            <FfmpegLack {...(ffmpegMissing && { ffmpegMissing })} />
            <FolderLack folders={folders} />
            {failed !== undefined && <p className="footage-lack" role="status">{failed}</p>}
            <Button look="main" onClick={() => setAdding(true)}>
              Add clips
            </Button>
          </EmptyPlace>
        )}
        {adding}
        {notices}
      </>
    );

  const asideCount = clips.filter(({ isAside }) => isAside).length;
  const shown = isAsideShown ? clips : clips.filter(({ isAside }) => !isAside);
  const timeZone = zoneOf(open.shoot.shoot.timeZone);
  const now = new Date();
  const corrected = clips.find(({ id }) => id === correcting);
  const paired = clips.find(({ id }) => id === pairing);
  const aside = ({ id, name }: ClipEntry, isAside: boolean) => {
    footage.happen({ kind: 'aside', clipId: id, isAside });
    setSaid({ says: isAside ? `Set aside: ${name}` : `Taken back: ${name}`, back: { kind: 'aside', clipId: id, isAside: !isAside } });
  };
  const pair = (clip: ClipEntry) => {
    if (paired && paired.id !== clip.id) onGo(footageHref(open.id, paired.id, clip.id));
    else setPairing(paired ? undefined : clip.id);
  };
  const tell = (clip: ClipEntry, change: ClipChange) => {
    const back = backFrom(clip, change);
    footage.happen({ kind: 'told', clipId: clip.id, ...change });
    setSaid({ says: `Corrected: ${clip.name}`, back });
  };

  return (
    <div className="footage">
      <header className="footage-head">
        <div>
          <h1>Footage</h1>
          <p className="footage-summary" role="status">{summaryOf(clips)}</p>
        </div>
        <div className="footage-tools no-print">
          {asideCount > 0 && (
            <Button look="quiet" aria-pressed={isAsideShown} onClick={() => setAsideShown(!isAsideShown)}>
              {isAsideShown ? 'Hide what was set aside' : `Show ${asideCount} set aside`}
            </Button>
          )}
          {folders.length > 0 && (
            <Button look="main" onClick={() => setAdding(true)}>
              Add clips
            </Button>
          )}
        </div>
      </header>
      {failed !== undefined && <p className="footage-lack" role="status">{failed}{unsentCount > 0 && ` ${unsentCount === 1 ? 'One thing' : `${unsentCount} things`} done here ${unsentCount === 1 ? 'is' : 'are'} kept in this browser until then.`}</p>}
      <FfmpegLack {...(ffmpegMissing && { ffmpegMissing })} />
      <FolderLack folders={folders} />
      {paired && (
        <p className="footage-pairing no-print" role="status">
          {paired.name} is to stand beside another: press “Beside the other” at that one.{' '}
          <Button look="quiet" onClick={() => setPairing(undefined)}>
            Leave it
          </Button>
        </p>
      )}
      {groupClips(shown, open.plan.shots).map((group) => (
        <section key={group.key} className="footage-group" aria-labelledby={`footage-of-${group.key}`}>
          <GroupHead group={group} shootId={open.id} onLearn={teachable(group.clips, undefined).length > 0 ? () => setLearning({ group, isOpen: true }) : undefined} onGo={onGo} />
          <ul>
            {group.clips.map((clip) => (
              <ClipRow
                key={clip.id}
                shootId={open.id}
                clip={clip}
                when={`added ${whenWords(clip.addedAt, now, { timeZone })}`}
                pairing={paired}
                onGo={onGo}
                onPair={() => pair(clip)}
                onCorrect={() => setCorrecting(clip.id)}
                onMeasure={(isAnew) => footage.measure(clip.id, isAnew)}
                onStop={() => footage.stop(clip.id)}
                onAside={(isAside) => aside(clip, isAside)}
              />
            ))}
          </ul>
        </section>
      ))}
      {adding}
      <Sheet isOpen={corrected !== undefined} title={corrected?.name ?? ''} onClose={() => setCorrecting(undefined)}>
        {corrected && <CorrectClip key={corrected.id} open={open} clip={corrected} onTell={(change) => tell(corrected, change)} />}
      </Sheet>
      {learning && (
        <LearnSheet
          open={open}
          clips={clips}
          shotId={learning.group.shot?.id}
          ticked={learning.group.clips.map(({ id }) => id)}
          isOpen={learning.isOpen}
          onClose={() => setLearning({ ...learning, isOpen: false })}
        />
      )}
      {notices}
    </div>
  );
} // prettier-ignore
