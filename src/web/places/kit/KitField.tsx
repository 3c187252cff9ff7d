import type { ReactNode } from 'react';
import { fieldAt } from '../../../document/fieldAt.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import type { Field } from '../../../document/shape.ts';
import { isRecord, type Written } from '../../../document/written.ts';
import { Field as FieldLine } from '../../parts/Field.tsx';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { stepWritten } from '../../parts/stepping.ts';
import { WordsField } from '../shoot/WordsField.tsx';
import { checkTyped, completeUnit, writingPatch } from '../shot/shotEdits.ts';
import { fieldId } from '../shot/shotContext.ts';
import { useShotEdits } from '../shot/useShotEdits.ts';
import { KitChecks } from './KitChecks.tsx';
import { KitChoice } from './KitChoice.tsx';
import { useKit } from './kitContext.ts';
import { labelOf } from './kinds.ts';
import { otherUnits } from './sayWritten.ts';
import { problemAt } from './problemAt.ts';

export interface KitFieldProps {
  /** JSON Pointer of what is written. */
  readonly path: string;
  readonly label: string;
  readonly placeholder?: string;
  /** Said in place of what the form says of it. */
  readonly note?: string;
}

/** Texts longer than this are written in a field of several lines. */
const LINE_LENGTH = 500;

/** "Focal length." under the label Focal length says nothing more. */
const isRepeated = (says: string, label: string) => says.replace(/\.$/, '').toLowerCase() === label.toLowerCase();

const textOf = (value: Written | undefined) =>
  value === undefined || value === null || typeof value === 'object' ? '' : String(value);

function TypedField({
  path,
  label,
  field,
  placeholder = 'not said',
  note = field.says,
}: KitFieldProps & { readonly field: Field }) {
  const { open, system } = useKit();
  const edits = useShotEdits(open);
  const value = writtenValueAt(open.written, path);
  const text = textOf(value);
  const problem = problemAt(open, path);
  const converted = value === undefined ? undefined : otherUnits(field, value, system);
  const patchOf = (typed: string) => (written: Written) => writingPatch(written, path, completeUnit(path, typed, text));
  return (
    <QuantityField
      id={fieldId(path)}
      label={label}
      text={text}
      placeholder={placeholder}
      note={isRepeated(note, label) ? undefined : note}
      after={converted !== undefined && <span className="kit-converted">{converted}</span>}
      {...(problem === undefined ? {} : { problem })}
      check={(typed) => checkTyped(path, typed, text)}
      {...(field.of.shape === 'quantity' || field.of.shape === 'number' ? { step: stepWritten } : {})}
      onDraft={(typed) => edits.draft(patchOf(typed))}
      onCommit={(typed) => {
        const said = completeUnit(path, typed, text).trim();
        edits.commit(patchOf(typed), said === '' ? `${label}: taken away` : `${label} ${said}`);
      }}
      onCancel={edits.cancel}
    />
  );
}

/** What the form of the shoot allows and no field here can show: it stands as it is written. */
function WrittenElsewhere({ path, label, says }: KitFieldProps & { readonly says: ReactNode }) {
  const { open } = useKit();
  const value = writtenValueAt(open.written, path);
  const problem = problemAt(open, path);
  return (
    <FieldLine id={fieldId(path)} label={label} note={says} {...(problem === undefined ? {} : { problem })}>
      <output id={fieldId(path)} className="kit-elsewhere">
        {value === undefined ? 'not said' : 'written in the shoot’s text'}
      </output>
    </FieldLine>
  );
}

/** One written value of the kit, whatever it is of, with its sentence of explanation. */
export function KitField({ path, label, placeholder, note }: KitFieldProps) {
  const { open } = useKit();
  const field = fieldAt(path);
  if (!field) return null;
  const { of } = field;
  const says = note ?? field.says;
  const common = { path, label };
  const stands = { ...(placeholder === undefined ? {} : { placeholder }), ...(note === undefined ? {} : { note }) };
  switch (of.shape) {
    case 'choice':
      return <KitChoice {...common} says={says} words={Object.entries(of.words)} {...(placeholder === undefined ? {} : { unsaid: placeholder })} />;
    case 'flag':
      return <KitChoice {...common} says={says} words={[['yes', 'yes'], ['no', 'no']]} />;
    case 'reference':
      return <KitChoice {...common} says={says} words={entriesAt(open.written, of.to)} />;
    case 'list':
      if (of.of.shape === 'choice') return <KitChecks {...common} says={says} words={Object.entries(of.of.words)} />;
      if (of.of.shape === 'reference') return <KitChecks {...common} says={says} words={entriesAt(open.written, of.of.to)} />;
      return <WrittenElsewhere {...common} says={says} />;
    case 'record':
      return (
        <fieldset className="kit-within">
          <legend>{label}</legend>
          <p className="kit-checks-says">{says}</p>
          {Object.keys(of.fields).map((key) => (
            <KitField key={key} path={`${path}/${key}`} label={labelOf(key)} />
          ))}
        </fieldset>
      );
    case 'map':
      return <WrittenElsewhere {...common} says={says} />;
    case 'text':
      if (of.longest > LINE_LENGTH) return <WordsField open={open} path={path} label={label} placeholder={says} />;
      return <TypedField {...common} {...stands} field={field} />;
    case 'quantity':
    case 'number':
    case 'rate':
    case 'shutter':
    case 'size':
    case 'clock':
    case 'figure':
    case 'position':
      return <TypedField {...common} {...stands} field={field} />;
  }
} // prettier-ignore

/** Entries that a reference may name, by id and title. */
function entriesAt(written: Written, to: string): readonly (readonly [string, string])[] {
  const entries = writtenValueAt(written, `/${to.replaceAll('.', '/')}`);
  if (typeof entries !== 'object' || entries === null || Array.isArray(entries)) return [];
  return Object.entries(entries).map(([id, entry]) => {
    // Files have a name where others have a title.
    const { title, name = title } = isRecord(entry) ? entry : {};
    return [id, typeof name === 'string' ? name : id] as const;
  });
}
