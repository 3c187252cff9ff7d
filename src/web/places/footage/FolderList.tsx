import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { Icon } from '../../parts/Icon.tsx';
import type { FolderRow } from './folderRows.ts';
import { saySize } from './saySize.ts';

export interface FolderListProps {
  readonly rows: readonly FolderRow[];
  readonly ticked: ReadonlySet<string>;
  readonly sayWhen: (at: string) => string;
  readonly onTick: (at: string, isTicked: boolean) => void;
  readonly onInto: (at: string) => void;
  /** Whoever came here goes on in the list. */
  readonly isEntered: boolean;
  /** Absent at the top. */
  readonly onUp: (() => void) | undefined;
}

function About({ row, sayWhen }: { readonly row: FolderRow; readonly sayWhen: (at: string) => string }) {
  const { size_B, modified, pictures, isAdded } = row;
  const facts = [
    isAdded && 'added already',
    pictures !== undefined && `${pictures} pictures`,
    size_B !== undefined && saySize(size_B),
    modified !== undefined && sayWhen(modified),
  ].filter(Boolean);
  return <span className="folder-about">{facts.join(' · ')}</span>;
}

/** Folders to go into and clips to tick. One stop for the keyboard: arrows go along it, left goes up and right into a folder. */
export function FolderList({ rows, ticked, sayWhen, isEntered, onTick, onInto, onUp }: FolderListProps) {
  const list = useRef<HTMLUListElement>(null);
  const [current, setCurrent] = useState<string>();
  const here = rows.some(({ at }) => at === current) ? current : rows[0]?.at;
  /** The row that led here is gone with its folder: the next list takes the focus, once it is known. */
  const isMoving = useRef(isEntered);
  const first = rows[0]?.at;
  useEffect(() => {
    const row = list.current?.querySelector<HTMLElement>('[tabindex="0"]');
    if (!isMoving.current || !row) return;
    isMoving.current = false;
    row.focus();
  }, [first]);
  const move = (to: () => void) => {
    isMoving.current = true;
    to();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    const row = rows.find(({ at }) => at === here);
    if (step !== 0) {
      const controls = [...list.current!.querySelectorAll<HTMLElement>('[data-row]')];
      const next = controls[controls.findIndex((control) => control.dataset['row'] === here) + step];
      next?.focus();
    } else if (event.key === 'ArrowRight' && row?.kind === 'folder') move(() => onInto(row.at));
    else if ((event.key === 'ArrowLeft' || event.key === 'Backspace') && onUp) move(onUp);
    else return;
    event.preventDefault();
  };
  const control = (at: string) => ({ 'data-row': at, tabIndex: at === here ? 0 : -1, onFocus: () => setCurrent(at) });
  return (
    <ul className="folder-list" ref={list} onKeyDown={onKeyDown}>
      {rows.map((row) => (
        <li key={row.at}>
          {row.kind === 'folder' ? (
            <button
              type="button"
              className="folder-row"
              {...control(row.at)}
              onClick={() => move(() => onInto(row.at))}
            >
              <span className="folder-sign">
                <Icon name="forward" />
              </span>
              <span className="folder-name">{row.name}</span>
              <About row={row} sayWhen={sayWhen} />
            </button>
          ) : (
            <label className={`folder-row${row.isAdded ? ' is-added' : ''}`}>
              <input
                type="checkbox"
                {...control(row.at)}
                checked={row.isAdded || ticked.has(row.at)}
                aria-disabled={row.isAdded}
                onChange={(event) => row.isAdded || onTick(row.at, event.currentTarget.checked)}
              />
              <span className="folder-name">{row.name}</span>
              <About row={row} sayWhen={sayWhen} />
            </label>
          )}
        </li>
      ))}
    </ul>
  );
}
