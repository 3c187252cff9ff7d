import type { ReactNode } from 'react';
import { ChoiceField, type Choice } from '../../parts/ChoiceField.tsx';
import { findWritten, writingPatch } from './shotEdits.ts';
import { fieldId, useShot } from './shotContext.ts';

export interface AskChoiceProps {
  readonly name: string;
  readonly label: string;
  readonly choices: readonly Choice[];
  /** What stands where the shot says nothing and the defaults neither. */
  readonly unsaid: string;
  readonly note?: ReactNode;
  readonly after?: ReactNode;
}

/** One word that the shot asks for, out of a few. */
export function AskChoice({ name, label, choices, unsaid, note, after }: AskChoiceProps) {
  const { open, shotId, edits, problemAt } = useShot();
  const { text, holder, path } = findWritten(open.written, shotId, name);
  const pointer = `/shots/${shotId}/${name}`;
  const problem = problemAt(path);
  const shared = holder === 'defaults' ? (choices.find(({ value }) => value === text)?.label ?? text) : undefined;
  return (
    <ChoiceField
      id={fieldId(pointer)}
      label={label}
      value={holder === 'shot' ? text : ''}
      choices={[{ value: '', label: shared ?? unsaid }, ...choices]}
      isGiven={holder !== 'shot'}
      note={note}
      after={after ?? (holder === 'defaults' && <span className="ask-origin">default</span>)}
      {...(problem === undefined ? {} : { problem })}
      onChoose={(value) =>
        edits.commit(
          (written) => writingPatch(written, pointer, value),
          value === '' ? `${label}: taken away` : `${label}: ${choices.find((c) => c.value === value)?.label ?? value}`,
        )
      }
    />
  );
}
