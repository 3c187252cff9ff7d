import { writtenValueAt } from '../../../document/patch.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { clearingPatch } from '../shot/shotEdits.ts';
import { fieldId } from '../shot/shotContext.ts';
import { useShotEdits } from '../shot/useShotEdits.ts';
import { useKit } from './kitContext.ts';
import { problemAt } from './problemAt.ts';

export interface KitChoiceProps {
  readonly path: string;
  readonly label: string;
  readonly says: string;
  /** Each as it is written, and what it means. */
  readonly words: readonly (readonly [string, string])[];
  /** What stands where nothing is written. */
  readonly unsaid?: string;
}

/** One word out of a few, with what each means. */
export function KitChoice({ path, label, says, words, unsaid = 'not said' }: KitChoiceProps) {
  const { open } = useKit();
  const edits = useShotEdits(open);
  const written = writtenValueAt(open.written, path);
  const value = written === true ? 'yes' : written === false ? 'no' : typeof written === 'object' ? '' : String(written ?? '');
  const problem = problemAt(open, path);
  return (
    <ChoiceField
      id={fieldId(path)}
      label={label}
      value={value}
      choices={[{ value: '', label: unsaid }, ...words.map(([word, means]) => ({ value: word, label: means }))]}
      isGiven={value === ''}
      note={says}
      {...(problem === undefined ? {} : { problem })}
      onChoose={(next) =>
        edits.commit(
          (now) => (next === '' ? clearingPatch(now, [path]) : [{ op: 'add', path, value: next }]),
          next === '' ? `${label}: taken away` : `${label}: ${words.find(([word]) => word === next)?.[1] ?? next}`,
        )
      }
    />
  );
} // prettier-ignore
