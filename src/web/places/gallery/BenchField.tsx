import type { ReactNode } from 'react';
import { writtenValueAt } from '../../../document/patch.ts';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { stepWritten } from '../../parts/stepping.ts';
import { fieldId } from '../shot/shotContext.ts';
import { checkTyped, completeUnit, writingPatch } from '../shot/shotEdits.ts';
import type { Bench } from './useBench.ts';

export interface BenchFieldProps {
  readonly bench: Bench;
  /** Where in the gallery's shoot it is written. */
  readonly path: string;
  /** Where its value is found while nothing is written there. */
  readonly givenAt?: string;
  readonly label: string;
  readonly placeholder?: string;
  readonly note?: ReactNode;
  readonly after?: ReactNode;
}

export function textAt({ written }: Pick<Bench, 'written'>, path: string): string {
  const value = writtenValueAt(written, path);
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

/** What is wrong with what is written at a path, in words. */
export function problemAt({ problems }: Pick<Bench, 'problems'>, path: string): string | undefined {
  const found = problems.find((problem) => problem.path === path);
  return found && (found.near === undefined ? found.what : `${found.what}; did you mean ${found.near}?`);
}

/** A quantity of the gallery's shoot: what is typed is checked, planned with and taken back as in a real one. */
export function BenchField({ bench, path, givenAt, label, placeholder = '', note, after }: BenchFieldProps) {
  const own = textAt(bench, path);
  const given = givenAt === undefined ? '' : textAt(bench, givenAt);
  const text = own === '' ? given : own;
  const problem = problemAt(bench, path);
  const patchOf = (typed: string) => writingPatch(bench.written, path, completeUnit(path, typed, text));
  return (
    <QuantityField
      id={fieldId(path)}
      label={label}
      text={text}
      placeholder={placeholder}
      isGiven={own === '' && given !== ''}
      note={note}
      after={after}
      {...(problem === undefined ? {} : { problem })}
      check={(typed) => checkTyped(path, typed, text)}
      step={stepWritten}
      onDraft={(typed) => bench.draft(patchOf(typed))}
      onCommit={(typed) => bench.commit(patchOf(typed), `${label} ${typed}`)}
      onCancel={() => bench.draft([])}
    />
  );
}
