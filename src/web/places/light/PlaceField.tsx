import { writtenValueAt } from '../../../document/patch.ts';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { problemAt } from '../kit/problemAt.ts';
import { checkTyped, writingPatch } from '../shot/shotEdits.ts';
import { fieldId } from '../shot/shotContext.ts';
import { useLight } from './lightContext.ts';

export interface PlaceFieldProps {
  /** JSON Pointer of what is written. */
  readonly path: string;
  readonly label: string;
  readonly placeholder: string;
  readonly note: string | undefined;
}

/** A place as it is written: right, away and up of the subject. */
export function PlaceField({ path, label, placeholder, note }: PlaceFieldProps) {
  const { open, edits } = useLight();
  const value = writtenValueAt(open.written, path);
  const text = typeof value === 'string' ? value : value === undefined || value === null || typeof value === 'object' ? '' : String(value);
  const problem = problemAt(open, path);
  return (
    <QuantityField
      id={fieldId(path)}
      label={label}
      text={text}
      placeholder={placeholder}
      note={note}
      {...(problem === undefined ? {} : { problem })}
      check={(typed) => checkTyped(path, typed, text)}
      onDraft={(typed) => edits.draft((written) => writingPatch(written, path, typed))}
      onCommit={(typed) => edits.commit((written) => writingPatch(written, path, typed), `${label} ${typed.trim() || 'taken away'}`)}
      onCancel={edits.cancel}
    />
  );
} // prettier-ignore
