import { useMemo, useState } from 'react';
import { applyPatch, withParents } from '../../../document/patch.ts';
import type { Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { dayOf } from '../../../solve/day.ts';
import { deriveShoot } from '../../state/derive.ts';
import { fixOrderPatch } from '../day/dayEdits.ts';
import { DayLine } from '../day/DayLine.tsx';
import '../day/day.css';
import '../time/time.css';
import { meetsPatch, postPatch } from '../time/timeEdits.ts';
import type { Reach } from '../time/timeLayout.ts';
import { TimeStrip } from '../time/TimeStrip.tsx';
import { Exhibit, State } from './Exhibit.tsx';
import { TIME_SHOOT } from './timeShoot.ts';

const STRIPS: readonly (readonly [says: string, shotId: string, reach: Reach])[] = [
  ['two cues that meet, and a hand on the button', 'meets', 'action'],
  ['all that the memory holds', 'meets', 'memory'],
  ['a cue that cannot be timed', 'lacks', 'action'],
  ['a memory that can never hold it', 'never', 'action'],
];

/** Enough for a picture of a day. */
const DAYS = 60;

const DONE: readonly PatchOperation[] = [
  { op: 'add', path: '/shots/meets/soFar', value: { done: true, takes: 3, good: 1 } },
  { op: 'add', path: '/shoot/day/now', value: '09:40' },
];

const laidOn = (written: Written, patch: readonly PatchOperation[]) => applyPatch(written, withParents(written, patch));

function Day({ written, onMove }: { readonly written: Written; readonly onMove: (order: readonly string[]) => void }) {
  const { shoot, plan, day } = useMemo(() => {
    const derived = deriveShoot(written);
    return { ...derived, day: dayOf(derived.shoot, derived.plan, { dayCount: DAYS }) };
  }, [written]);
  return (
    <DayLine
      open={{ id: 'gallery', plan, shoot }}
      day={day}
      isUpdating={false}
      onGo={() => undefined}
      onMove={onMove}
    />
  );
}

/** A shot and a day on their strips of time; what is dragged there is kept in this page alone. */
export function InTime() {
  const [kept, setKept] = useState<Written>(TIME_SHOOT);
  const [drafted, setDrafted] = useState<Written>();
  const { shoot, plan } = useMemo(() => deriveShoot(drafted ?? kept), [drafted, kept]);
  const begun = useMemo(() => laidOn(kept, DONE), [kept]);
  const lay = (patch: readonly PatchOperation[], isDone: boolean) => {
    if (isDone) setKept(laidOn(kept, patch));
    setDrafted(isDone ? undefined : laidOn(kept, patch));
  };
  return (
    <>
      <Exhibit of="TimeStrip" isWide says="What fires, flies and meets, and the part of the memory that is kept. Drag a grip, or move it with the arrows; Escape puts it back.">
        {STRIPS.map(([says, shotId, reach]) => {
          const timing = plan.shots.find(({ id }) => id === shotId)?.timing;
          const cues = shoot.shots[shotId]?.cues ?? {};
          return (
            timing && (
              <State key={says} says={says}>
                <div className="in-time">
                  <TimeStrip
                    timing={timing}
                    reach={reach}
                    arrivalOf={(id) => cues[id]?.arrival_s ?? 0}
                    onMeets={(id, arrival_s, isDone) => lay(meetsPatch(shotId, id, arrival_s), isDone)}
                    onPost={(post, isDone) => lay(postPatch(shotId, post), isDone)}
                    onCancel={() => setDrafted(undefined)}
                  />
                  {timing.impossible.map((never) => (
                    <p key={never.says}>{never.says}</p>
                  ))}
                </div>
              </State>
            )
          );
        })}
      </Exhibit>
      <Exhibit of="DayLine" isWide says="A day from call to wrap, a row a shot, with how far its end varies. Drag a handle, or press the arrows, to change the order.">
        <State says="nothing shot yet">
          <Day written={kept} onMove={(order) => lay(fixOrderPatch(order), true)} />
        </State>
        <State says="a shot done, planned again from now">
          <Day written={begun} onMove={(order) => lay(fixOrderPatch(order), true)} />
        </State>
      </Exhibit>
    </>
  );
} // prettier-ignore
