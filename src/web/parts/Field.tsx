import type { ReactNode } from 'react';
import './field.css';
import { useFieldMark } from './fieldMarks.ts';

export interface FieldProps {
  /** Id of the control inside, which the label and the notes belong to. */
  readonly id: string;
  readonly label: string;
  /** Quietly beneath: where the value comes from, what it means. */
  readonly note?: ReactNode;
  /** What is wrong with it, and what would fit. */
  readonly problem?: string;
  /** Beside the control. */
  readonly after?: ReactNode;
  readonly children: ReactNode;
}

/** A labelled line of a form: label left, value right, anything to be said about it beneath. */
export function Field({ id, label, note, problem, after, children }: FieldProps) {
  const mark = useFieldMark(id);
  return (
    <div className={`field${problem === undefined ? '' : ' is-wrong'}`}>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <div className="field-control">
        {children}
        {after}
      </div>
      {mark !== undefined && <div className="field-mark here-mark">{mark}</div>}
      {note !== undefined && (
        <div className="field-note" id={`${id}-note`}>
          {note}
        </div>
      )}
      {problem !== undefined && (
        <div className="field-problem" id={`${id}-problem`} role="alert">
          {problem}
        </div>
      )}
    </div>
  );
}

/** Ids for `aria-describedby`, as `Field` gives them out. */
export function describedBy(id: string, { note, problem }: { readonly note: boolean; readonly problem: boolean }) {
  return [note && `${id}-note`, problem && `${id}-problem`].filter(Boolean).join(' ') || undefined;
}
