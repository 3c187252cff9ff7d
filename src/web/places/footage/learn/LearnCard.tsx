import { useId, type ReactNode } from 'react';
import type { LearntChange, Learning } from '../../../../turnover/learn/learnt.ts';
import { marginChangeWords, type MarginChange } from '../../../../turnover/learn/marginsChanged.ts';
import { Button } from '../../../parts/Button.tsx';
import { StateWord } from '../../../parts/StateWord.tsx';
import '../../../parts/cautions.css';
import './learn.css';

export interface LearnCardProps {
  readonly learning: Learning;
  readonly isTaken: boolean;
  /** While a file is on its way to the server. */
  readonly isSending?: boolean;
  /** Why it was not taken. */
  readonly failed?: string | undefined;
  readonly onTake: () => void;
  /** Absent where something else was done since. */
  readonly onUndo?: (() => void) | undefined;
  /** A drawing of it. */
  readonly children?: ReactNode;
}

function Changes({ changes }: { readonly changes: readonly LearntChange[] }) {
  return (
    <table className="learn-changes">
      <caption>In the shoot</caption>
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col">Now</th>
          <th scope="col">As measured</th>
        </tr>
      </thead>
      <tbody>
        {changes.map(({ path, title, before, after, says }) => (
          <tr key={path}>
            <th scope="row">{title}</th>
            <td>
              {before === '' ? 'nothing' : before}
              {says !== '' && <span className="learn-from">{says}</span>}
            </td>
            <td>
              <b>{after}</b>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const MOST_LIMITS = 8;

function Limits({ margins }: { readonly margins: readonly MarginChange[] }) {
  const id = useId();
  const more = margins.length - MOST_LIMITS;
  if (margins.length === 0) return <p className="learn-quiet">No limit changes by it.</p>;
  return (
    <section aria-labelledby={id}>
      <h3 id={id}>What it does to the limits</h3>
      <ul className="learn-limits">
        {margins.slice(0, MOST_LIMITS).map((margin) => (
          <li key={`${margin.shotId ?? ''} ${margin.name}`} className={margin.isOther ? 'is-other' : undefined}>
            {margin.after && <StateWord standing={margin.after.state} />}
            <span>{marginChangeWords(margin)}</span>
          </li>
        ))}
      </ul>
      {more > 0 && <p className="learn-quiet">and {more} more</p>}
    </section>
  );
}

function Notices({ notices }: { readonly notices: readonly string[] }) {
  if (notices.length === 0) return null;
  return (
    <ul className="learn-notices">
      {notices.map((says) => (
        <li key={says}>{says}</li>
      ))}
    </ul>
  );
}

/** What clips teach: how sure it is, old beside new, the limits that change, and one button that takes it as one edit. */
export function LearnCard({ learning, isTaken, isSending = false, failed, onTake, onUndo, children }: LearnCardProps) {
  if (!learning.ok)
    return (
      <div className="learn-card">
        <p className="learn-refused">{learning.refusal.what}.</p>
        <p>{learning.refusal.mend}</p>
        <Notices notices={learning.notices} />
      </div>
    );
  const { says, notices, cautions, changes, margins } = learning.learnt;
  return (
    <div className="learn-card">
      <ul className="learn-says">
        {says.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {children}
      <Changes changes={changes} />
      <Limits margins={margins} />
      <Notices notices={notices} />
      {cautions.length > 0 && (
        <section className="cautions" aria-label="Cautions">
          <h3>Take care</h3>
          <ul>
            {cautions.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      )}
      {failed !== undefined && (
        <p className="field-problem" role="alert">
          {failed}
        </p>
      )}
      <div className="learn-do">
        {isTaken ? (
          <>
            <p role="status">Taken into the plan.</p>
            {onUndo && <Button onClick={onUndo}>Undo</Button>}
          </>
        ) : (
          <Button look="main" disabled={isSending} onClick={onTake}>
            {isSending ? 'Sending…' : 'Take these figures into the plan'}
          </Button>
        )}
      </div>
    </div>
  );
}
