import { useState, type ClipboardEvent, type KeyboardEvent } from 'react';

export interface ModeCellProps {
  readonly label: string;
  /** Row and column in the grid, for moving about. */
  readonly at: string;
  /** The mode the cell belongs to; undefined in the line for a new one. */
  readonly modeId: string | undefined;
  readonly text: string;
  readonly placeholder?: string;
  readonly problem: string | undefined;
  readonly describedBy?: string;
  readonly inputMode: 'text' | 'numeric';
  readonly onType: (modeId: string | undefined, text: string) => void;
  /** Meant: Enter, or leaving the cell. */
  readonly onMean: (modeId: string | undefined, text: string) => void;
  readonly onCancel: () => void;
  readonly onMove: (down: number, across: number) => void;
  /** True when the text was a block, which is dealt with elsewhere. */
  readonly onPaste: (text: string) => boolean;
}

interface Typed {
  readonly text: string;
  /** The mode it was typed for: rows may shift under the cursor when somebody else edits. */
  readonly modeId: string | undefined;
  /** What stood there before: what is typed is planned with at once, and then stands there itself. */
  readonly before: string;
}

const isAtStart = ({ selectionStart, selectionEnd }: HTMLInputElement) => selectionStart === 0 && selectionEnd === 0;
const isAtEnd = ({ selectionStart, selectionEnd, value }: HTMLInputElement) =>
  selectionStart === value.length && selectionEnd === value.length;
const isWhole = ({ selectionStart, selectionEnd, value }: HTMLInputElement) =>
  selectionStart === 0 && selectionEnd === value.length;

/** One cell of the grid: it keeps what is typed, and arrows leave it where the text ends. */
export function ModeCell(props: ModeCellProps) {
  const { label, at, modeId, text, placeholder, problem, describedBy, inputMode, onType, onMean, onCancel, onMove } = props;
  const [typed, setTyped] = useState<Typed>();
  const mean = () => {
    if (typed === undefined) return;
    setTyped(undefined);
    if (typed.text !== typed.before) onMean(typed.modeId, typed.text);
    else onCancel();
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const go = (down: number, across: number) => {
      event.preventDefault();
      onMove(down, across);
    };
    switch (event.key) {
      case 'Enter':
        mean();
        return go(event.shiftKey ? -1 : 1, 0);
      case 'ArrowDown':
        return go(1, 0);
      case 'ArrowUp':
        return go(-1, 0);
      case 'ArrowLeft':
        return isAtStart(input) || isWhole(input) ? go(0, -1) : undefined;
      case 'ArrowRight':
        return isAtEnd(input) || isWhole(input) ? go(0, 1) : undefined;
      case 'Escape':
        if (typed === undefined) return undefined;
        event.stopPropagation();
        setTyped(undefined);
        return onCancel();
      default:
        return undefined;
    }
  };
  const onPaste = (event: ClipboardEvent<HTMLInputElement>) => {
    if (props.onPaste(event.clipboardData.getData('text/plain'))) event.preventDefault();
  };
  return (
    <input
      className="field-input"
      data-at={at}
      aria-label={label}
      aria-invalid={problem !== undefined}
      aria-describedby={describedBy}
      title={problem}
      inputMode={inputMode}
      autoComplete="off"
      autoCapitalize="off"
      spellCheck={false}
      placeholder={placeholder}
      value={typed?.text ?? text}
      onFocus={(event) => event.currentTarget.select()}
      onChange={({ currentTarget: { value } }) => {
        const next = { ...(typed ?? { modeId, before: text }), text: value };
        setTyped(next);
        onType(next.modeId, value);
      }}
      onKeyDown={onKeyDown}
      onPaste={onPaste}
      onBlur={mean}
    />
  );
} // prettier-ignore
