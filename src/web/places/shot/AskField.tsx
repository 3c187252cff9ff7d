import type { ReactNode } from 'react';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { checkTyped, completeUnit, findWritten, writingPatch } from './shotEdits.ts';
import { fieldId, useShot } from './shotContext.ts';
import { stepFor } from './steps.ts';

export interface AskFieldProps {
  /** Key in the shot: `frameWidth`, `action/speed`. */
  readonly name: string;
  readonly label: string;
  /** Shown while nothing is written. */
  readonly placeholder?: string;
  readonly note?: ReactNode;
  readonly after?: ReactNode;
}

/** One quantity that the shot asks for, written into the shot; what only the defaults say is shown as theirs. */
export function AskField({ name, label, placeholder = 'not asked', note, after }: AskFieldProps) {
  const { open, shotId, edits, problemAt } = useShot();
  const { text, holder, path } = findWritten(open.written, shotId, name);
  const pointer = `/shots/${shotId}/${name}`;
  const problem = problemAt(path);
  const patchOf = (typed: string) => (written: typeof open.written) =>
    writingPatch(written, pointer, completeUnit(pointer, typed, text));
  return (
    <QuantityField
      key={pointer}
      id={fieldId(pointer)}
      label={label}
      text={text}
      placeholder={placeholder}
      isGiven={holder === 'defaults'}
      note={note}
      after={after ?? (holder === 'defaults' && <span className="ask-origin">default</span>)}
      {...(problem === undefined ? {} : { problem })}
      check={(typed) => checkTyped(pointer, typed, text)}
      step={stepFor(name)}
      onDraft={(typed) => edits.draft(patchOf(typed))}
      onCommit={(typed) => {
        const said = completeUnit(pointer, typed, text).trim();
        edits.commit(patchOf(typed), said === '' ? `${label}: taken away` : `${label} ${said}`);
      }}
      onCancel={edits.cancel}
    />
  );
}
