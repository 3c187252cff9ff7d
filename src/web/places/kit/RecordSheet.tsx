import { useEffect, useRef, useState } from 'react';
import { sayShown, showQuantity } from '../../../base/quantity.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { itemAt, titleOf } from './kitEdits.ts';
import { useKit } from './kitContext.ts';
import { MeasuredFields } from './MeasuredFields.tsx';
import { mainsOfRate, takeRecordPatch, type MeasuredAs } from './recordEdits.ts';
import { RecordPreview } from './RecordPreview.tsx';
import { RecordSourceFields, type RecordOptions, type RecordSource } from './RecordSource.tsx';
import { useLightRecord } from './useLightRecord.ts';
import { useSendRecord } from './useSendRecord.ts';
import './record.css';

const EMPTY: MeasuredAs = { level: '', colour: '', supply: '', hasOwnRate: false };

function rateWords(rate_Hz: number, mains_Hz: number | undefined): string {
  const say = (value: number) => sayShown(showQuantity('frequency', value, { digits: 4 }));
  const of_Hz = mainsOfRate({ rate_Hz, mains_Hz });
  if (of_Hz === undefined) return `${say(rate_Hz)} goes with no mains.`;
  if (mains_Hz === undefined || of_Hz === mains_Hz) return `${say(rate_Hz)} goes with mains of ${say(of_Hz)}.`;
  return `${say(rate_Hz)} goes with mains of ${say(of_Hz)}, and these are of ${say(mains_Hz)}: a lamp on them ripples otherwise, unless its rate is its own.`;
}

function Bringing({ lampId, onClose }: { readonly lampId: string; readonly onClose: () => void }) {
  const kit = useKit();
  const newest = useRef(kit);
  useEffect(() => {
    newest.current = kit;
  });
  const [source, setSource] = useState<RecordSource>();
  const [options, setOptions] = useState<RecordOptions>({});
  const [as, setAs] = useState<Partial<MeasuredAs>>({});
  const reading = useLightRecord(source?.text ?? '', options);
  const sending = useSendRecord();
  const startAt = useRef<HTMLInputElement>(null);
  useEffect(() => startAt.current?.focus(), []);

  const measured = reading.state === 'read' ? reading.record.measured : undefined;
  const { frequency_Hz: mains_Hz } = kit.open.shoot.shoot.mains;
  const rate_Hz = measured?.ok ? 1 / measured.waveform.period_s : undefined;
  const meant: MeasuredAs = {
    ...EMPTY,
    hasOwnRate: rate_Hz !== undefined && mainsOfRate({ rate_Hz, mains_Hz }) === undefined,
    ...as,
  };
  const take = async () => {
    if (!source) return;
    const file = await sending.send(kit.open.id, source, options);
    if (!file) return;
    const { open, edit } = newest.current;
    const lamp = titleOf(lampId, itemAt(open.written, 'lamps', lampId));
    edit(takeRecordPatch(open.written, { lampId, file, as: meant }), `${lamp}: light measured, ${file.name}`);
    onClose();
  };
  return (
    <div className="record">
      <RecordSourceFields
        source={source}
        options={options}
        startAt={startAt}
        onSource={setSource}
        onOptions={setOptions}
      />
      {reading.state === 'reading' && <p role="status">Reading the record…</p>}
      {reading.state === 'failed' && <p className="field-problem">{reading.says}</p>}
      {reading.state === 'read' && <RecordPreview record={reading.record} dark={options.dark ?? 0} />}
      {measured?.ok && (
        <section className="record-part" aria-label="What it was measured of">
          <h3>What it was measured of</h3>
          <MeasuredFields
            as={meant}
            rateSays={rateWords(rate_Hz!, mains_Hz)}
            onChange={(change) => setAs({ ...as, ...change })}
          />
        </section>
      )}
      {sending.says !== undefined && (
        <p className="field-problem" role="alert">
          {sending.says}
        </p>
      )}
      <div className="paste-buttons">
        <Button look="main" disabled={!measured?.ok || sending.isSending} onClick={() => void take()}>
          {sending.isSending ? 'Sending…' : 'Take it'}
        </Button>
        <Button onClick={onClose}>Leave it</Button>
      </div>
    </div>
  );
}

/** A light record brought in for a lamp: seen as it is before it is taken, as one edit. */
export function RecordSheet({ lampId, isOpen, onClose }: { readonly lampId: string; readonly isOpen: boolean; readonly onClose: () => void }) {
  return (
    <Sheet isOpen={isOpen} title="Bring in a light record" onClose={onClose}>
      {isOpen && <Bringing lampId={lampId} onClose={onClose} />}
    </Sheet>
  );
} // prettier-ignore
