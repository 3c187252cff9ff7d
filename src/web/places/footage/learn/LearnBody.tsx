import { useId, useState } from 'react';
import type { ClipEntry } from '../../../../record/footage.ts';
import type { LearnKind } from '../../../../turnover/learn/learnt.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { ChoiceField } from '../../../parts/ChoiceField.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import { LearnEvent } from './LearnEvent.tsx';
import { LearnLamp } from './LearnLamp.tsx';
import { LearnRig } from './LearnRig.tsx';
import { guessedKind, teachable, whyNot } from './teaching.ts';
import { useMeasuredClips } from './useMeasuredClips.ts';
import './learn.css';

export interface LearnBodyProps {
  readonly open: OpenShoot;
  /** All clips of the shoot. */
  readonly clips: readonly ClipEntry[];
  readonly shotId: string | undefined;
  /** Clips that are ticked at first. */
  readonly ticked: readonly string[];
}

const KINDS: readonly { readonly value: LearnKind; readonly label: string }[] = [
  { value: 'event', label: 'takes of a shot' },
  { value: 'rig', label: 'a rig being fired' },
  { value: 'lamp', label: 'a grey card under one lamp' },
];

const TEACHES: Readonly<Record<LearnKind, string>> = {
  event: 'How long it lasts, how fast it goes and how far it reaches.',
  rig: 'Its latency and jitter.',
  lamp: 'How deep and how fast it pulses.',
};

interface TaughtProps {
  readonly open: OpenShoot;
  readonly clips: readonly MeasuredClip[];
  readonly shotId: string | undefined;
  readonly kind: LearnKind;
}

function Taught({ open, clips, shotId, kind }: TaughtProps) {
  const [only, ...more] = clips;
  if (!only) return <p>Tick the clips that show it.</p>;
  if (kind === 'event') return <LearnEvent open={open} clips={clips} shotId={shotId} />;
  if (kind === 'rig') {
    const cues = shotId === undefined ? undefined : open.shoot.shots[shotId]?.cues;
    return <LearnRig open={open} clips={clips} rigId={Object.values(cues ?? {})[0]?.rig} />;
  }
  if (more.length > 0) return <p>One lamp is learnt from one clip: tick the card that it lit.</p>;
  return <LearnLamp open={open} clip={only} shotId={shotId} />;
}

/** Which clips, what they show, and what that would change. */
export function LearnBody({ open, clips, shotId, ticked: atFirst }: LearnBodyProps) {
  const id = useId();
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set(atFirst));
  const [chosen, setChosen] = useState<LearnKind>();
  const [isChoosing, setChoosing] = useState(atFirst.length !== 1);
  const able = teachable(clips, shotId);
  const entries = able.filter((clip) => ticked.has(clip.id) && whyNot(clip) === undefined);
  const { clips: measured, isReading, failed } = useMeasuredClips(open.id, entries);
  const kind = chosen ?? guessedKind(measured);
  const tick = (clipId: string, isOn: boolean) =>
    setTicked(new Set(isOn ? [...ticked, clipId] : [...ticked].filter((each) => each !== clipId)));
  const titleOf = (of: string | undefined) => open.plan.shots.find((shot) => shot.id === of)?.title;
  return (
    <div className="learn">
      <p>
        What clips show can take the place of what was written or assumed. Nothing changes before it is taken; it is then
        one edit, dated and with its clips named, and undone like any other.
      </p>
      <details className="learn-clips" open={isChoosing} onToggle={(event) => setChoosing(event.currentTarget.open)}>
        <summary>{entries.length === 1 ? '1 clip' : `${entries.length} clips`} of {able.length} measured whole</summary>
        <fieldset aria-label="Clips">
          {able.map((clip) => {
            const why = whyNot(clip) ?? (clip.shotId === shotId ? undefined : (titleOf(clip.shotId) ?? 'of no shot'));
            return (
              <label key={clip.id}>
                <input
                  type="checkbox"
                  checked={ticked.has(clip.id) && whyNot(clip) === undefined}
                  disabled={whyNot(clip) !== undefined}
                  onChange={(event) => tick(clip.id, event.currentTarget.checked)}
                />
                <span>{clip.name}</span>
                {why !== undefined && <span className="learn-quiet">{why}</span>}
              </label>
            );
          })}
        </fieldset>
      </details>
      <ChoiceField
        id={id}
        label="They show"
        value={kind}
        choices={KINDS}
        note={`${TEACHES[kind]}${chosen === undefined && measured.length > 0 ? ' As far as the clips tell; choose otherwise where it is wrong.' : ''}`}
        onChoose={(value) => setChosen(value as LearnKind)}
      />
      {failed !== undefined ? (
        <p className="field-problem" role="alert">What was measured cannot be read: {failed}</p>
      ) : isReading ? (
        <p role="status">Reading what was measured…</p>
      ) : (
        <Taught key={`${kind} ${entries.map((clip) => clip.id).join(' ')}`} open={open} clips={measured} shotId={shotId} kind={kind} />
      )}
    </div>
  );
} // prettier-ignore
