import { useRef, type MouseEvent, type ReactNode } from 'react';
import { Button } from './Button.tsx';
import { Icon } from './Icon.tsx';
import { Mark } from './Mark.tsx';
import { PlaceRow, type PlaceLink } from './PlaceRow.tsx';
import { isPlainClick } from './pointer.ts';
import { ThemeMenu } from './ThemeMenu.tsx';
import { useKeptFocus } from './useKeptFocus.ts';
import { useRested } from './useRested.ts';
import './shell.css';

/** One step back or forward: what it would take back or do again, and how. */
export interface HistoryStep {
  /** Absent when there is nothing to take back. */
  readonly summary?: string;
  readonly onPress: () => void;
}

export interface ShellProps {
  readonly places: readonly PlaceLink[];
  /** Goes to another place without loading the page anew. */
  readonly onGo: (href: string) => void;
  /** What is open. */
  readonly title?: string;
  /** How its edits stand, in words that lead to all of them; `isSettled` when nothing is on its way. */
  readonly standing?: {
    readonly word: string;
    readonly isSettled: boolean;
    readonly href: string;
    readonly isCurrent: boolean;
  };
  /** Who else is here. */
  readonly people?: ReactNode;
  /** Something that must be read on whatever place one is. */
  readonly notices?: ReactNode;
  readonly undo?: HistoryStep;
  readonly redo?: HistoryStep;
  readonly children: ReactNode;
}

/** Every edit is saved at once, and said to be: whoever hears it hears how things stand, not every step there. */
const REST_ms = 1500;

function HistoryButton({
  step,
  word,
  sign,
}: {
  readonly step: HistoryStep;
  readonly word: string;
  readonly sign: 'undo' | 'redo';
}) {
  const says = step.summary === undefined ? `Nothing to ${word.toLowerCase()}` : `${word}: ${step.summary}`;
  return (
    <Button
      look="sign"
      // It keeps the focus when there is nothing left to take back.
      aria-disabled={step.summary === undefined}
      aria-label={says}
      title={says}
      onClick={() => step.summary !== undefined && step.onPress()}
    >
      <Icon name={sign} />
    </Button>
  );
}

/** The frame around every place: the mark, the places, how the edits stand, and one step back or forward. */
export function Shell({ places, onGo, title, standing, people, notices, undo, redo, children }: ShellProps) {
  const shell = useRef<HTMLDivElement>(null);
  const place = useRef<HTMLElement>(null);
  useKeptFocus(shell, place);
  const told = useRested(standing?.word, REST_ms);
  const follow = (href: string) => (event: MouseEvent) => {
    if (!isPlainClick(event)) return;
    event.preventDefault();
    onGo(href);
  };
  return (
    <div className="shell" ref={shell}>
      <a className="shell-skip" href="#place">
        Skip to the place
      </a>
      <header className="shell-head">
        <div className="shell-name">
          <Mark />
          <span>Longsecond</span>
        </div>
        <PlaceRow places={places} label="Places" onGo={onGo} />
        <div className="shell-open">
          {title !== undefined && <span className="shell-title">{title}</span>}
          {standing && (
            <span className={standing.isSettled ? 'shell-standing' : 'shell-standing is-moving'}>
              <a
                href={standing.href}
                title="History"
                aria-current={standing.isCurrent ? 'page' : undefined}
                onClick={follow(standing.href)}
              >
                {standing.word}
              </a>
            </span>
          )}
          <span className="hidden-text" role="status">
            {told}
          </span>
        </div>
        <div className="shell-tools no-print">
          {people}
          {undo && <HistoryButton step={undo} word="Undo" sign="undo" />}
          {redo && <HistoryButton step={redo} word="Redo" sign="redo" />}
          <ThemeMenu />
        </div>
      </header>
      {notices}
      <main className="shell-place" id="place" tabIndex={-1} ref={place}>
        {children}
      </main>
    </div>
  );
}
