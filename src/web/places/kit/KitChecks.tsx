import { writtenValueAt } from '../../../document/patch.ts';
import { isList, type Written } from '../../../document/written.ts';
import { clearingPatch } from '../shot/shotEdits.ts';
import { fieldId } from '../shot/shotContext.ts';
import { useShotEdits } from '../shot/useShotEdits.ts';
import { useKit } from './kitContext.ts';
import { problemAt } from './problemAt.ts';

export interface KitChecksProps {
  readonly path: string;
  readonly label: string;
  readonly says: string;
  readonly words: readonly (readonly [string, string])[];
}

/** Any of a few words, each ticked or not; what is written and is none of them is kept. */
export function KitChecks({ path, label, says, words }: KitChecksProps) {
  const { open } = useKit();
  const edits = useShotEdits(open);
  const value = writtenValueAt(open.written, path);
  const listed: readonly Written[] = isList(value) ? value : [];
  const problem = problemAt(open, path) ?? listed.map((_, i) => problemAt(open, `${path}/${i}`)).find(Boolean);
  const tick = (word: string, means: string, isOn: boolean) => {
    const next = isOn ? [...listed, word] : listed.filter((each) => each !== word);
    edits.commit(
      (written) => (next.length === 0 ? clearingPatch(written, [path]) : [{ op: 'add', path, value: next }]),
      `${label}: ${means} ${isOn ? 'added' : 'taken away'}`,
    );
  };
  return (
    <fieldset className="kit-checks" id={fieldId(path)} tabIndex={-1}>
      <legend>{label}</legend>
      <p className="kit-checks-says">{says}</p>
      {words.map(([word, means]) => (
        <label key={word}>
          <input
            type="checkbox"
            checked={listed.includes(word)}
            onChange={(event) => tick(word, means, event.currentTarget.checked)}
          />
          {means}
        </label>
      ))}
      {problem !== undefined && (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
    </fieldset>
  );
}
