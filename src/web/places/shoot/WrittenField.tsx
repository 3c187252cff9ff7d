import type { ReactNode } from 'react';
import { writtenValueAt } from '../../../document/patch.ts';
import { QuantityField } from '../../parts/QuantityField.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { checkTyped, completeUnit, writingPatch } from '../shot/shotEdits.ts';
import { useShotEdits } from '../shot/useShotEdits.ts';

export interface WrittenFieldProps {
  readonly open: OpenShoot;
  /** Its id on the page, where that is not the one of this place. */
  readonly id?: string;
  /** JSON Pointer of what is written. */
  readonly path: string;
  readonly label: string;
  readonly placeholder?: string;
  readonly note?: ReactNode;
  /** What is wrong with it is told elsewhere. */
  readonly isToldElsewhere?: boolean;
}

/** The id of the field that writes at a path, on this place. */
export const writtenFieldId = (path: string) => `written${path.replaceAll('/', '.')}`;

/** One written value of the shoot, whatever it is of, read as it is typed. */
export function WrittenField({
  open,
  path,
  id = writtenFieldId(path),
  label,
  placeholder = '',
  note,
  isToldElsewhere = false,
}: WrittenFieldProps) {
  const edits = useShotEdits(open);
  const value = writtenValueAt(open.written, path);
  const text = value === undefined || value === null || typeof value === 'object' ? '' : String(value);
  const problem = isToldElsewhere ? undefined : open.problems.find((found) => found.path === path);
  const patchOf = (typed: string) => (written: OpenShoot['written']) =>
    writingPatch(written, path, completeUnit(path, typed, text));
  return (
    <QuantityField
      id={id}
      label={label}
      text={text}
      placeholder={placeholder}
      note={note}
      {...(problem === undefined ? {} : { problem: problem.what })}
      check={(typed) => checkTyped(path, typed, text)}
      onDraft={(typed) => edits.draft(patchOf(typed))}
      onCommit={(typed) => {
        const said = typed.trim();
        edits.commit(patchOf(typed), said === '' ? `${label}: taken away` : `${label}: ${said}`);
      }}
      onCancel={edits.cancel}
    />
  );
}
