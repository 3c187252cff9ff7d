import { useId, useState, type RefObject } from 'react';
import { textOfBytes } from '../../../laws/light/photometry/text.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { QuantityField, type Checked } from '../../parts/QuantityField.tsx';
import { useDrop } from '../shoot/dropPictures.ts';

/** A light record as it was chosen, dropped, pasted or typed. */
export interface RecordSource {
  readonly name: string;
  readonly text: string;
  /** Absent where it was typed or pasted as text. */
  readonly bytes?: Uint8Array<ArrayBuffer>;
}

/** What the record does not say itself. */
export interface RecordOptions {
  readonly dark?: number;
  readonly unit_s?: number;
}

export interface RecordSourceFieldsProps {
  readonly source: RecordSource | undefined;
  readonly options: RecordOptions;
  readonly startAt: RefObject<HTMLInputElement | null>;
  readonly onSource: (source: RecordSource | undefined) => void;
  readonly onOptions: (options: RecordOptions) => void;
}

const LARGEST_B = 32_000_000;

const UNITS = [
  { value: '', label: 'as the record says' },
  { value: '1', label: 'seconds' },
  { value: '0.001', label: 'milliseconds' },
  { value: '0.000001', label: 'microseconds' },
] as const;

function darkIn(text: string): number | undefined {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(plain) ? Number(plain) : undefined;
}

const checkDark = (text: string): Checked =>
  text.trim() === '' || darkIn(text) !== undefined
    ? { ok: true }
    : { ok: false, why: 'Expected a plain number in the unit of the record, such as 0.012' };

/** Where a record comes from, and what is to be told beside it. */
export function RecordSourceFields({ source, options, startAt, onSource, onOptions }: RecordSourceFieldsProps) {
  const id = useId();
  const [says, setSays] = useState<string>();
  const take = async ([file]: readonly File[]) => {
    if (!file) return;
    if (file.size > LARGEST_B) {
      setSays(`${file.name} is larger than 32 MB. Save a second or two of the record; nothing was taken.`);
      return;
    }
    setSays(undefined);
    const bytes = new Uint8Array(await file.arrayBuffer());
    onSource({ name: file.name, text: textOfBytes(bytes).text, bytes });
  };
  const drop = useDrop((files) => void take(files));
  const isFile = source?.bytes !== undefined;
  const { dark, unit_s } = options;
  const without = (key: keyof RecordOptions): RecordOptions => ({ ...options, [key]: undefined });
  return (
    <div className={drop.isOver ? 'record-source is-over' : 'record-source'} {...drop.handlers}>
      <div className="record-choose">
        <label className="file-button button plain" htmlFor={id}>
          {isFile ? 'Another file' : 'Choose a file'}
          <input
            ref={startAt}
            id={id}
            className="hidden-text"
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            aria-describedby={`${id}-says`}
            onChange={(event) => {
              const files = [...(event.currentTarget.files ?? [])];
              event.currentTarget.value = '';
              void take(files);
            }}
          />
        </label>
        <p id={`${id}-says`}>
          Time and light, a line a sample, a second or so of it: from a photodiode, a light meter or an oscilloscope. Or
          drop it here.
        </p>
      </div>
      {says !== undefined && (
        <p className="field-problem" role="alert">
          {says}
        </p>
      )}
      {isFile ? (
        <p className="record-name">
          <b>{source.name}</b>
        </p>
      ) : (
        <div className="paste">
          <label htmlFor={`${id}-text`}>Or paste its lines</label>
          <textarea
            id={`${id}-text`}
            rows={4}
            spellCheck={false}
            value={source?.text ?? ''}
            placeholder={'time (ms);light (V)\n0;1.204\n0.05;1.198'}
            onChange={({ currentTarget: { value } }) =>
              onSource(value === '' ? undefined : { name: 'light.csv', text: value })
            }
          />
        </div>
      )}
      <ChoiceField
        id={`${id}-unit`}
        label="Unit of time"
        value={unit_s === undefined ? '' : String(unit_s)}
        choices={UNITS}
        isGiven={unit_s === undefined}
        onChoose={(value) => onOptions(value === '' ? without('unit_s') : { ...options, unit_s: Number(value) })}
      />
      <QuantityField
        id={`${id}-dark`}
        label="Dark reading"
        text={dark === undefined ? '' : String(dark)}
        placeholder="none"
        note="With the sensor covered, in the unit of the record. It is taken away before the record is kept."
        inputMode="decimal"
        check={checkDark}
        onDraft={() => undefined}
        onCommit={(text) => {
          const value = darkIn(text);
          onOptions(value === undefined || value === 0 ? without('dark') : { ...options, dark: value });
        }}
        onCancel={() => undefined}
      />
    </div>
  );
}
