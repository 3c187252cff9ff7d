import type { JournalRow } from '../../../api/replies.ts';
import { Button } from '../../parts/Button.tsx';
import { sayChange, type Change } from './changes.ts';
import type { Run, Told } from './journal.ts';

export interface RunRowsProps {
  readonly run: Run;
  readonly clock: (at: string) => string;
  readonly takenBack: ReadonlySet<number>;
  readonly onLook: (revision: number) => void;
}

const KIND: Readonly<Record<JournalRow['kind'], string>> = {
  edit: 'edit',
  undo: 'taken back',
  redo: 'made again',
  restore: 'restored',
};

/** Of an edit that changes many things, the first are enough to know it by. */
const MOST_CHANGES = 4;

export function Changes({ changes, most = MOST_CHANGES }: { readonly changes: readonly Change[]; readonly most?: number }) {
  const left = changes.length - most;
  return (
    <ul className="changes">
      {changes.slice(0, most).map((change) => (
        <li key={change.path}>
          <span className="change-where">{change.where}</span> <span className="change-values">{sayChange(change)}</span>
        </li>
      ))}
      {left > 0 && <li className="changes-more">and {left} more</li>}
    </ul>
  );
} // prettier-ignore

function Row({ told: { row, changes }, clock, isTakenBack, onLook }: { readonly told: Told; readonly clock: (at: string) => string; readonly isTakenBack: boolean; readonly onLook: (revision: number) => void }) {
  const { number, at, kind, summary } = row;
  const summaryShown = kind === 'restore' ? `Revision ${row.restores ?? 0} brought back` : summary;
  return (
    <li className={`journal-row is-${kind}`}>
      <time className="journal-time" dateTime={at}>
        {clock(at)}
      </time>
      <span className="journal-kind">{KIND[kind]}</span>
      <div className="journal-what">
        <p className="journal-summary">
          {summaryShown}
          {isTakenBack && <span className="journal-gone"> taken back since</span>}
        </p>
        {changes.length === 0 ? <p className="changes-more">nothing that the plan reads: words, order or layout</p> : <Changes changes={changes} />}
      </div>
      <Button look="quiet" className="journal-look no-print" onClick={() => onLook(number)} aria-label={`Look at revision ${number}, after ${summary}`}>
        revision {number}
      </Button>
    </li>
  );
} // prettier-ignore

/** What one person did without a longer pause, the newest first. */
export function RunRows({ run, clock, takenBack, onLook }: RunRowsProps) {
  const [newest, oldest] = [run.told[0]!.row, run.told.at(-1)!.row];
  const [from, to] = [clock(oldest.at), clock(newest.at)];
  const count = run.told.length;
  return (
    <section className="journal-run">
      <h3>
        {run.who}
        <span>
          {from === to ? from : `${from} to ${to}`}, {count === 1 ? 'one step' : `${count} steps`}
        </span>
      </h3>
      <ol>
        {run.told.map((told) => (
          <Row key={told.row.number} told={told} clock={clock} isTakenBack={takenBack.has(told.row.number)} onLook={onLook} />
        ))}
      </ol>
    </section>
  );
} // prettier-ignore
