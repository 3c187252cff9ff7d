import { useEffect, useRef, useState } from 'react';
import { writtenValueAt } from '../../../document/patch.ts';
import { describedBy, Field } from '../../parts/Field.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { checkTyped, writingPatch } from '../shot/shotEdits.ts';
import { useShotEdits } from '../shot/useShotEdits.ts';
import { writtenFieldId } from './WrittenField.tsx';

export interface WordsFieldProps {
  readonly open: OpenShoot;
  /** JSON Pointer of what is written. */
  readonly path: string;
  readonly label: string;
  readonly placeholder?: string;
}

const PAUSE_ms = 2000;

/** Words of more than a line: kept on leaving the field or after a pause, taken back by Escape. */
export function WordsField({ open, path, label, placeholder }: WordsFieldProps) {
  const edits = useShotEdits(open);
  const value = writtenValueAt(open.written, path);
  const text = typeof value === 'string' ? value : '';
  const [typed, setTyped] = useState<string>();
  const pause = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(pause.current), []);
  const checked = typed === undefined ? undefined : checkTyped(path, typed, text);
  const problem = checked?.ok === false ? checked.why : undefined;
  const id = writtenFieldId(path);

  const commit = (next: string) => {
    clearTimeout(pause.current);
    edits.commit((written) => writingPatch(written, path, next), `${label} written`);
  };
  return (
    <Field id={id} label={label} {...(problem === undefined ? {} : { problem })}>
      <textarea
        id={id}
        className="field-input words-input"
        rows={4}
        value={typed ?? text}
        placeholder={placeholder}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(id, { note: false, problem: problem !== undefined })}
        onChange={({ currentTarget: { value: next } }) => {
          setTyped(next);
          clearTimeout(pause.current);
          if (!checkTyped(path, next, text).ok) return;
          edits.draft((written) => writingPatch(written, path, next));
          pause.current = setTimeout(() => commit(next), PAUSE_ms);
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || typed === undefined) return;
          event.stopPropagation();
          clearTimeout(pause.current);
          setTyped(undefined);
          edits.cancel();
        }}
        onBlur={() => {
          if (typed === undefined) return;
          commit(typed);
          setTyped(undefined);
        }}
      />
    </Field>
  );
}
