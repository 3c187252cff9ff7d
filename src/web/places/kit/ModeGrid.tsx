import { useId, useRef } from 'react';
import { pointerTo } from '../../../document/pointer.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useShotEdits } from '../shot/useShotEdits.ts';
import { addMode, cellPatch, cellProblem, modesPath, type WrittenMode } from './modeEdits.ts';
import { usesOfMode } from './kitEdits.ts';
import { MODE_KEYS, MODE_TITLES, type ModeKey } from './modeKeys.ts';
import type { TimingGroup } from './modeTiming.ts';
import { ModeCell } from './ModeCell.tsx';
import { useKit } from './kitContext.ts';
import { isBlock } from './pasteModes.ts';
import { problemAt } from './problemAt.ts';

export interface ModeGridProps {
  readonly cameraId: string;
  readonly modes: readonly WrittenMode[];
  readonly groups: readonly TimingGroup[];
  readonly onPasteBlock: (pasted: { readonly text: string; readonly row: number; readonly key: ModeKey }) => void;
}

const EMPTY: Readonly<Record<ModeKey, string>> = { title: '', pixels: '', rate: '', binning: '', bits: '' };

const PLACEHOLDERS: Readonly<Record<ModeKey, string>> = {
  title: 'New format',
  pixels: '1920 x 1080',
  rate: '1000 fps',
  binning: '1',
  bits: '12',
};

/** Formats as a grid: a line each and one for the next; arrows, Enter and Tab move, blocks are pasted. */
export function ModeGrid({ cameraId, modes, groups, onPasteBlock }: ModeGridProps) {
  const { open, onRemove } = useKit();
  const edits = useShotEdits(open);
  const id = useId();
  const table = useRef<HTMLTableElement>(null);
  const off = new Set(groups.flatMap(({ fits }) => fits.filter(({ isOff }) => isOff).map((fit) => fit.id)));
  const pathOf = (modeId: string) => modesPath(cameraId) + pointerTo([modeId]);
  const problemOf = (modeId: string, key: ModeKey) => problemAt(open, `${pathOf(modeId)}/${key}`);

  const moveTo = (row: number, column: number) =>
    table.current?.querySelector<HTMLInputElement>(`[data-at="${row}:${column}"]`)?.focus();
  const move = (row: number, column: number, down: number, across: number) => {
    const next = column + across;
    // Beyond the last column the next line begins, and the other way round.
    if (next >= MODE_KEYS.length) moveTo(row + 1, 0);
    else if (next < 0) moveTo(row - 1, MODE_KEYS.length - 1);
    else moveTo(row + down, next);
  };

  const type = (modeId: string | undefined, key: ModeKey, text: string) => {
    if (modeId === undefined || cellProblem(key, text) !== undefined) edits.cancel();
    else edits.draft((written) => cellPatch(written, pathOf(modeId), key, text));
  };
  const mean = (modeId: string | undefined, key: ModeKey, text: string) => {
    const said = text.trim();
    const name = MODE_TITLES[key];
    if (modeId === undefined) {
      if (said === '') return;
      edits.commit((written) => addMode(written, cameraId, { [key]: said }).patch, `Format added: ${said}`);
    } else
      edits.commit(
        (written) => cellPatch(written, pathOf(modeId), key, text),
        said === '' ? `${name} of a format: taken away` : `${name} of a format: ${said}`,
      );
  };

  const wrong = modes.flatMap((mode, row) =>
    MODE_KEYS.flatMap((key) => {
      const problem = problemOf(mode.id, key);
      return problem === undefined ? [] : [{ id: `${id}-${row}-${key}`, row, key, problem }];
    }),
  );

  return (
    <div className="mode-grid">
      <table ref={table}>
        <thead>
          <tr>
            {MODE_KEYS.map((key) => (
              <th key={key} scope="col">
                {MODE_TITLES[key]}
              </th>
            ))}
            <th className="mode-end">
              <span className="hidden-text">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {[...modes, undefined].map((mode, row) => (
            <tr key={row} className={mode ? undefined : 'is-new'}>
              {MODE_KEYS.map((key, column) => {
                const told = wrong.find((each) => each.row === row && each.key === key);
                return (
                  <td key={key} className={`mode-${key}`} data-label={MODE_TITLES[key]}>
                    <ModeCell
                      label={mode ? `Format ${row + 1}: ${MODE_TITLES[key].toLowerCase()}` : `New format: ${MODE_TITLES[key].toLowerCase()}`}
                      at={`${row}:${column}`}
                      modeId={mode?.id}
                      text={(mode?.cells ?? EMPTY)[key]}
                      placeholder={mode ? (key === 'title' ? mode.cells.pixels : key === 'binning' ? '1' : '–') : PLACEHOLDERS[key]}
                      problem={told?.problem}
                      {...(told ? { describedBy: told.id } : {})}
                      inputMode={key === 'binning' || key === 'bits' ? 'numeric' : 'text'}
                      onType={(modeId, text) => type(modeId, key, text)}
                      onMean={(modeId, text) => mean(modeId, key, text)}
                      onCancel={edits.cancel}
                      onMove={(down, across) => move(row, column, down, across)}
                      onPaste={(text) => {
                        if (!isBlock(text)) return false;
                        onPasteBlock({ text, row, key });
                        return true;
                      }}
                    />
                  </td>
                );
              })}
              <td className="mode-end">
                {mode && off.has(mode.id) && <span className="mode-off">check</span>}
                {mode && (
                  <Button
                    look="sign"
                    aria-label={`Take out format ${row + 1}`}
                    onClick={() =>
                      onRemove({
                        path: pathOf(mode.id),
                        title: mode.cells.title || mode.cells.pixels || mode.id,
                        uses: usesOfMode(open.written, cameraId, mode.id),
                      })
                    }
                  >
                    <Icon name="close" />
                  </Button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {wrong.length > 0 && (
        <ul className="mode-wrong">
          {wrong.map((each) => (
            <li key={each.id} id={each.id} className="field-problem">
              Format {each.row + 1}, {MODE_TITLES[each.key].toLowerCase()}: {each.problem}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
} // prettier-ignore
