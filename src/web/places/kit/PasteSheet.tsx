import { useId, useMemo, useRef, useState } from 'react';
import type { PatchOperation } from '../../../plan/types.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { changesOf, changesPatch, sayChanges, type RowChange, type WrittenMode } from './modeEdits.ts';
import { MODE_KEYS, MODE_TITLES, type ModeKey } from './modeKeys.ts';
import { readPasted, type PastedRow } from './pasteModes.ts';

export interface PasteSheetProps {
  readonly cameraId: string;
  readonly modes: readonly WrittenMode[];
  readonly pasted: { readonly text: string; readonly row?: number; readonly key?: ModeKey } | undefined;
  readonly onApply: (patch: readonly PatchOperation[], summary: string) => void;
  readonly onClose: () => void;
}

const WORDS: Readonly<Record<RowChange['kind'], string>> = { added: 'new', changed: 'changed', same: 'as it is' };

function Cell({
  cell,
  before,
  typed,
  problem,
}: Readonly<Record<'cell' | 'before' | 'typed' | 'problem', string | undefined>>) {
  return (
    <td className={problem === undefined ? undefined : 'is-wrong'} title={problem}>
      {cell ?? ''}
      {before !== undefined && <small>{before === '' ? 'was empty' : `was ${before}`}</small>}
      {typed !== undefined && <small>from “{typed}”</small>}
      {problem !== undefined && <small className="field-problem">kept as typed</small>}
    </td>
  );
}

function Preview({ changes, typed }: { readonly changes: readonly RowChange[]; readonly typed: readonly PastedRow[] }) {
  const keys = MODE_KEYS.filter((key) => changes.some(({ cells }) => cells[key] !== undefined));
  return (
    <div className="paste-preview">
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="hidden-text">What happens</span>
            </th>
            {keys.map((key) => (
              <th key={key} scope="col">
                {MODE_TITLES[key]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {changes.map(({ kind, id, cells, before, problems }, i) => (
            <tr key={id} className={`is-${kind}`}>
              <th scope="row">{WORDS[kind]}</th>
              {keys.map((key) => (
                <Cell
                  key={key}
                  cell={cells[key]}
                  before={before[key]}
                  typed={typed[i]?.[key]}
                  problem={problems[key]}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** A table of formats from elsewhere: what it would add and change is shown before it is done, as one edit. */
export function PasteSheet({ cameraId, modes, pasted, onApply, onClose }: PasteSheetProps) {
  const id = useId();
  const area = useRef<HTMLTextAreaElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const [text, setText] = useState(pasted?.text ?? '');
  const table = useMemo(() => readPasted(text, pasted?.key), [text, pasted?.key]);
  const onto = table.isLaid ? pasted?.row : undefined;
  const changes = useMemo(
    () => changesOf({ modes, rows: table.rows, ...(onto === undefined ? {} : { onto }) }),
    [modes, table, onto],
  );
  const patch = changesPatch(cameraId, changes);
  const wrongCount = changes.flatMap(({ kind, problems }) => (kind === 'same' ? [] : Object.keys(problems))).length;
  return (
    <Sheet isOpen={pasted !== undefined} title="Paste a table of formats" onClose={onClose} startAt={pasted?.text ? button : area}>
      <div className="paste">
        <label htmlFor={id}>
          The table, from a spreadsheet, a data sheet or a message. Tabs, commas or semicolons between cells; headings or
          none; columns in any order.
        </label>
        <textarea
          ref={area}
          id={id}
          rows={7}
          spellCheck={false}
          value={text}
          placeholder={'Format\tPixels\tMax fps\tBits\nFull\t4096 x 2304\t1062\t12'}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        {changes.length > 0 && (
          <>
            <p className="paste-says" role="status">
              <strong>{sayChanges(changes)}</strong>
              {onto !== undefined && `, from line ${onto + 1} on`}
              {wrongCount > 0 && `; ${wrongCount === 1 ? 'one cell' : `${wrongCount} cells`} cannot be read and will be kept as typed`}.
            </p>
            {table.leftOut.length > 0 && (
              <p className="paste-left">Left out, as no column here means it: {table.leftOut.join('; ')}.</p>
            )}
            <Preview changes={changes} typed={table.typed} />
          </>
        )}
        {text.trim() !== '' && changes.length === 0 && (
          <p className="field-problem" role="alert">
            No format was found in this. A line needs pixels such as 1920 x 1080, or a highest rate.
          </p>
        )}
        <div className="paste-buttons">
          <Button
            ref={button}
            look="main" disabled={patch.length === 0} onClick={() => onApply(patch, `Table of formats: ${sayChanges(changes)}`)}>
            Put it in
          </Button>
          <Button onClick={onClose}>Leave it</Button>
        </div>
      </div>
    </Sheet>
  );
} // prettier-ignore
