import type { ReactNode } from 'react';
import { describedBy, Field } from './Field.tsx';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export interface ChoiceFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  /** The value is not this item's own. */
  readonly isGiven?: boolean;
  readonly note?: ReactNode;
  readonly problem?: string;
  readonly after?: ReactNode;
  readonly onChoose: (value: string) => void;
}

/** A field for one of a few words. A value that is not among them is kept and shown as it was written. */
export function ChoiceField({
  id,
  label,
  value,
  choices,
  isGiven = false,
  note,
  problem,
  after,
  onChoose,
}: ChoiceFieldProps) {
  const isStray = !choices.some((choice) => choice.value === value);
  return (
    <Field
      id={id}
      label={label}
      note={note}
      {...(problem === undefined ? {} : { problem })}
      {...(after === undefined ? {} : { after })}
    >
      <select
        id={id}
        className={`field-input${isGiven ? ' is-given' : ''}`}
        value={value}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(id, { note: note !== undefined, problem: problem !== undefined })}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {isStray && <option value={value}>{value}</option>}
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </Field>
  );
}
