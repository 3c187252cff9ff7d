import { useDeferredValue, useId, useMemo, useState } from 'react';
import { parseQuantity, sayShown, showShutter } from '../../../../base/quantity.ts';
import type { KindName } from '../../../../base/kinds.ts';
import { learnLamp, type FileOf, type LampSetAs } from '../../../../turnover/learn/learnLamp.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { ChoiceField } from '../../../parts/ChoiceField.tsx';
import { QuantityField } from '../../../parts/QuantityField.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import { PeriodDrawing } from '../../flicker/PeriodDrawing.tsx';
import { SetAsFields } from '../../kit/MeasuredFields.tsx';
import { useSendRecord } from '../../kit/useSendRecord.ts';
import { usePlanned } from '../clip/usePlanned.ts';
import { LearnCard } from './LearnCard.tsx';
import { dayOf, kitChoices } from './teaching.ts';
import { useTaking } from './useTaking.ts';

export interface LearnLampProps {
  readonly open: OpenShoot;
  /** Of a grey card under one lamp. */
  readonly clip: MeasuredClip;
  /** The shot that it was taken for, whose shutter it may have. */
  readonly shotId?: string | undefined;
}

/** Until it is taken the file has no hash yet: this one stands for it, in the plan that is shown and nowhere else. */
const notKept: FileOf = (text, name) => ({ name, sha256: '0'.repeat(64), size_B: text.length });

const valueOf = (kind: KindName, text: string): number | undefined => {
  const read = parseQuantity(kind, text);
  return read.ok && read.value > 0 ? read.value : undefined;
};

interface TypedProps {
  readonly label: string;
  readonly kind: 'time' | 'frequency';
  readonly text: string;
  readonly placeholder: string;
  readonly example: string;
  readonly note: string;
  readonly onText: (text: string) => void;
}

function Typed({ label, kind, text, placeholder, example, note, onText }: TypedProps) {
  const id = useId();
  return (
    <QuantityField
      id={id}
      label={label}
      text={text}
      placeholder={placeholder}
      note={note}
      check={(typed) =>
        typed.trim() === '' || valueOf(kind, typed) !== undefined ? { ok: true } : { ok: false, why: `Write it such as ${example}` }
      }
      onDraft={() => undefined}
      onCommit={(typed) => onText(typed.trim())}
      onCancel={() => undefined}
    />
  );
} // prettier-ignore

interface CardProps extends LearnLampProps {
  readonly lampId: string;
  readonly exposureTime_s: number | undefined;
  readonly rate_Hz: number | undefined;
  readonly as: LampSetAs;
}

function Card({ open, clip, lampId, exposureTime_s, rate_Hz, as }: CardProps) {
  const { written } = open;
  const given = useMemo(
    () => ({
      written,
      lampId,
      clip,
      ...(exposureTime_s !== undefined && { exposureTime_s }),
      ...(rate_Hz !== undefined && { rate_Hz }),
      as,
      date: dayOf(new Date()),
    }),
    [written, lampId, clip, exposureTime_s, rate_Hz, as],
  );
  const learning = useMemo(() => learnLamp(given, notKept), [given]);
  const { shown, isTaken, take, onUndo } = useTaking(open, learning);
  const sending = useSendRecord();
  const [failed, setFailed] = useState<string>();
  const send = async () => {
    if (!learning.ok) return;
    const file = await sending.send(open.id, learning.learnt.csv, {});
    if (!file) return;
    const kept = learnLamp(given, () => file);
    if (kept.ok) take(kept.learnt);
    else setFailed(`${kept.refusal.what}. ${kept.refusal.mend}`);
  };
  return (
    <LearnCard
      learning={shown}
      isTaken={isTaken}
      isSending={sending.isSending}
      failed={sending.says ?? failed}
      onTake={() => void send()}
      onUndo={onUndo}
    >
      {learning.ok && (
        <PeriodDrawing
          waveform={learning.learnt.wave.period}
          says={`One period of its light: ${learning.learnt.says[0]!}`}
        />
      )}
    </LearnCard>
  );
}

/** What a clip of a grey card teaches of the lamp that lit it. */
export function LearnLamp({ open, clip, shotId }: LearnLampProps) {
  const id = useId();
  const lamps = kitChoices(open.shoot.kit.lamps);
  const planned = usePlanned(open, shotId)?.exposureTime_s;
  const [chosen, setChosen] = useState<string>();
  const [shutter, setShutter] = useState('');
  const [ripple, setRipple] = useState('');
  const [as, setAs] = useState<LampSetAs>({ level: '', colour: '', supply: '' });
  const settled = useDeferredValue(as);
  const lamp = lamps.find(({ value }) => value === chosen) ?? lamps[0];
  if (!lamp) return <p>The kit has no lamps yet: add it there, and what this clip shows of it can be taken.</p>;
  return (
    <>
      <ChoiceField
        id={id}
        label="Lamp"
        value={lamp.value}
        choices={lamps}
        note="It alone lights a grey card, daylight kept out, everything still, for two seconds."
        onChoose={setChosen}
      />
      <Typed
        label="Shutter"
        kind="time"
        text={shutter}
        placeholder={planned === undefined ? 'not known' : sayShown(showShutter(planned))}
        example="1/2000 s"
        note={planned === undefined ? 'How long each frame was exposed.' : 'How long each frame was exposed; as the shot was planned, where nothing is written.'}
        onText={setShutter}
      />
      <Typed
        label="Pulse rate"
        kind="frequency"
        text={ripple}
        placeholder="as the mains make it"
        example="2 kHz"
        note="Where the lamp keeps a rate of its own, as its maker states it."
        onText={setRipple}
      />
      <SetAsFields as={as} onChange={(change) => setAs({ ...as, ...change })} />
      <Card
        key={`${lamp.value} ${clip.name}`}
        open={open}
        clip={clip}
        lampId={lamp.value}
        exposureTime_s={shutter === '' ? planned : valueOf('time', shutter)}
        rate_Hz={ripple === '' ? undefined : valueOf('frequency', ripple)}
        as={settled}
      />
    </>
  );
} // prettier-ignore
