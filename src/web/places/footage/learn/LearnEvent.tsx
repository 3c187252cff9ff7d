import { useId, useMemo, useState } from 'react';
import { learnEvent } from '../../../../turnover/learn/learnEvent.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { ChoiceField } from '../../../parts/ChoiceField.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import { LearnCard } from './LearnCard.tsx';
import { dayOf } from './teaching.ts';
import { useTaking } from './useTaking.ts';

export interface LearnEventProps {
  readonly open: OpenShoot;
  readonly clips: readonly MeasuredClip[];
  /** The shot that the clips are takes of, where somebody said so. */
  readonly shotId: string | undefined;
}

function Card({ open, clips, shotId }: LearnEventProps & { readonly shotId: string }) {
  const { written } = open;
  const learning = useMemo(() => learnEvent({ written, shotId, clips, date: dayOf(new Date()) }), [written, shotId, clips]); // prettier-ignore
  const { shown, isTaken, take, onUndo } = useTaking(open, learning);
  return (
    <LearnCard learning={shown} isTaken={isTaken} onTake={() => learning.ok && take(learning.learnt)} onUndo={onUndo} />
  );
}

/** What takes teach of the event that they show. */
export function LearnEvent({ open, clips, shotId }: LearnEventProps) {
  const id = useId();
  const shots = open.plan.shots.map((shot) => ({ value: shot.id, label: `${shot.number} ${shot.title}` }));
  const [chosen, setChosen] = useState(shotId);
  const shot = shots.find(({ value }) => value === chosen) ?? shots[0];
  if (!shot) return <p>This shoot has no shots yet.</p>;
  return (
    <>
      <ChoiceField id={id} label="Takes of" value={shot.value} choices={shots} onChoose={setChosen} />
      <Card key={shot.value} open={open} clips={clips} shotId={shot.value} />
    </>
  );
}
