import { useId, useMemo, useState } from 'react';
import { learnRig } from '../../../../turnover/learn/learnRig.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { ChoiceField } from '../../../parts/ChoiceField.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import { LearnCard } from './LearnCard.tsx';
import { dayOf, kitChoices } from './teaching.ts';
import { useTaking } from './useTaking.ts';

export interface LearnRigProps {
  readonly open: OpenShoot;
  readonly clips: readonly MeasuredClip[];
  /** The rig that is most likely meant. */
  readonly rigId?: string | undefined;
}

function Card({ open, clips, rigId }: LearnRigProps & { readonly rigId: string }) {
  const { written } = open;
  const learning = useMemo(() => learnRig({ written, rigId, clips, date: dayOf(new Date()) }), [written, rigId, clips]); // prettier-ignore
  const { shown, isTaken, take, onUndo } = useTaking(open, learning);
  return (
    <LearnCard learning={shown} isTaken={isTaken} onTake={() => learning.ok && take(learning.learnt)} onUndo={onUndo} />
  );
}

/** What clips of a rig being fired teach of it. */
export function LearnRig({ open, clips, rigId }: LearnRigProps) {
  const id = useId();
  const rigs = kitChoices(open.shoot.kit.rigs);
  const [chosen, setChosen] = useState(rigId);
  const rig = rigs.find(({ value }) => value === chosen) ?? rigs[0];
  if (!rig) return <p>The kit has no rigs yet: add it there, and what these clips show of it can be taken.</p>;
  return (
    <>
      <ChoiceField
        id={id}
        label="Rig"
        value={rig.value}
        choices={rigs}
        note="A small light in the picture, dark before, comes on as it is fired."
        onChoose={setChosen}
      />
      <Card key={rig.value} open={open} clips={clips} rigId={rig.value} />
    </>
  );
}
