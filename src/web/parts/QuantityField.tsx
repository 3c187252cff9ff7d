import { useEffect, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import { describedBy, Field } from './Field.tsx';

/** What a typed text would mean: fine, perhaps with a remark, or not, with what would fit. */
export type Checked = { readonly ok: true; readonly says?: string } | { readonly ok: false; readonly why: string };

export interface QuantityFieldProps {
  readonly id: string;
  readonly label: string;
  /** As written; empty when nothing is. */
  readonly text: string;
  /** Shown in its place when nothing is written. */
  readonly placeholder?: string;
  /** The text is not this item's own: it is shown, and typing gives the item its own. */
  readonly isGiven?: boolean;
  readonly note?: ReactNode;
  /** What is wrong with the text as written. */
  readonly problem?: string;
  readonly after?: ReactNode;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
  readonly check: (text: string) => Checked;
  /** The next sensible value up or down. */
  readonly step?: (text: string, direction: 1 | -1) => string | undefined;
  /** Typed and right so far, not yet meant. */
  readonly onDraft: (text: string) => void;
  /** Typed and not right, for whoever shows what follows from the text as it stands. */
  readonly onWrong?: (text: string) => void;
  /** Meant: Enter, leaving the field, or a pause while it is right. */
  readonly onCommit: (text: string) => void;
  /** Taken back before it was meant. */
  readonly onCancel: () => void;
}

const PAUSE_ms = 2000;

/** A field for a written quantity: it keeps what is typed, says at once what would fit, and plans while one types. */
export function QuantityField(props: QuantityFieldProps) {
  const { id, label, text, placeholder, isGiven = false, note, after, inputMode = 'text', check, step } = props;
  const [typed, setTyped] = useState<string>();
  const before = useRef(text);
  const meant = useRef(text);
  const pause = useRef<ReturnType<typeof setTimeout>>(undefined);
  const newest = useRef(props);
  useEffect(() => {
    newest.current = props;
  });
  const pending = useRef<string>(undefined);
  useEffect(
    () => () => {
      clearTimeout(pause.current);
      if (pending.current !== undefined) newest.current.onCommit(pending.current);
    },
    [],
  );

  const checked = typed === undefined ? undefined : check(typed);
  const problem = checked ? (checked.ok ? undefined : checked.why) : props.problem;
  const remark = checked?.ok ? checked.says : undefined;
  const isWrong = problem !== undefined;

  const commit = (next: string) => {
    clearTimeout(pause.current);
    pending.current = undefined;
    if (next === meant.current) return;
    meant.current = next;
    newest.current.onCommit(next);
  };

  const type = (next: string) => {
    setTyped(next);
    clearTimeout(pause.current);
    const hadDraft = pending.current !== undefined;
    pending.current = undefined;
    if (!check(next).ok) {
      // What is planned is never something other than what stands in the field.
      if (hadDraft) newest.current.onCancel();
      newest.current.onWrong?.(next);
      return;
    }
    pending.current = next;
    newest.current.onDraft(next);
    pause.current = setTimeout(() => commit(next), PAUSE_ms);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      commit(event.currentTarget.value);
      setTyped(undefined);
    } else if (event.key === 'Escape' && typed !== undefined) {
      event.stopPropagation();
      setTyped(undefined);
      newest.current.onCancel();
      commit(before.current);
    } else if ((event.key === 'ArrowUp' || event.key === 'ArrowDown') && step) {
      const next = step(event.currentTarget.value || placeholder || '', event.key === 'ArrowUp' ? 1 : -1);
      if (next === undefined) return;
      event.preventDefault();
      type(next);
    }
  };

  return (
    <Field
      id={id}
      label={label}
      note={remark ?? note}
      {...(problem === undefined ? {} : { problem })}
      {...(after === undefined ? {} : { after })}
    >
      <input
        id={id}
        className={`field-input${isGiven && typed === undefined ? ' is-given' : ''}`}
        type="text"
        inputMode={inputMode}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        value={typed ?? text}
        placeholder={placeholder}
        aria-invalid={isWrong}
        aria-describedby={describedBy(id, { note: (remark ?? note) !== undefined, problem: isWrong })}
        onFocus={(event) => {
          before.current = text;
          meant.current = text;
          event.currentTarget.select();
        }}
        onChange={(event) => type(event.currentTarget.value)}
        onKeyDown={onKeyDown}
        onBlur={(event) => {
          if (typed === undefined) return;
          commit(event.currentTarget.value);
          setTyped(undefined);
        }}
      />
    </Field>
  );
}
