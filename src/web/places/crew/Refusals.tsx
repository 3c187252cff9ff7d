import { useState } from 'react';
import { Fault } from '../../../base/fault.ts';
import { Button } from '../../parts/Button.tsx';
import type { OpenShoot, Refusal } from '../../state/contract.ts';

/** Beyond these, the ones that wait are counted. */
const MOST_SHOWN = 3;

const USE: Readonly<Record<NonNullable<Refusal['use']>, string>> = {
  again: 'Use mine',
  'bring-back': 'Bring it back with mine',
};

const failed = (error: unknown) =>
  error instanceof Fault
    ? `${error.what}. ${error.mend}`
    : 'The server cannot be reached. What you wrote stays here; try again once there is a connection.';

function Told({ open, refusal }: { readonly open: OpenShoot; readonly refusal: Refusal }) {
  const { id, says, mend, met, use } = refusal;
  const [problem, setProblem] = useState<string>();
  const useMine = () => {
    setProblem(undefined);
    open.useMine(id).catch((error: unknown) => setProblem(failed(error)));
  };
  return (
    <li className="refusal">
      <p className="refusal-says">
        {says} {!met && mend}
      </p>
      {met && (
        <dl className="refusal-values">
          <div>
            <dt>Yours</dt>
            <dd>{met.yours}</dd>
          </div>
          <div>
            <dt>There now</dt>
            <dd>{met.theirs}</dd>
          </div>
        </dl>
      )}
      <div className="refusal-acts">
        {use !== undefined && <Button onClick={useMine}>{USE[use]}</Button>}
        <Button look="quiet" onClick={() => open.keepTheirs(id)}>
          {met ? (use === 'bring-back' ? 'Leave it out' : 'Keep theirs') : 'Put this away'}
        </Button>
      </div>
      {problem !== undefined && <p className="refusal-problem">{problem}</p>}
    </li>
  );
}

/** What was not kept because somebody else was first: both values, and the choice between them. */
export function Refusals({ open }: { readonly open: OpenShoot }) {
  const { refusals } = open;
  if (refusals.length === 0) return null;
  const waiting = refusals.length - MOST_SHOWN;
  return (
    <div className="refusals" role="alert">
      <ul>
        {refusals.slice(0, MOST_SHOWN).map((refusal) => (
          <Told key={refusal.id} open={open} refusal={refusal} />
        ))}
      </ul>
      {waiting > 0 && <p className="refusals-more">{waiting === 1 ? 'One more waits' : `${waiting} more wait`} behind these.</p>}
    </div>
  );
} // prettier-ignore
