import { useEffect, useMemo, useState } from 'react';
import { Fault } from '../../../base/fault.ts';
import { shareUnchanged, type Written } from '../../../document/written.ts';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../parts/Button.tsx';
import { StateWord, type Standing } from '../../parts/StateWord.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { deriveShoot } from '../../state/derive.ts';
import { lampShelf, server } from '../../state/page.ts';
import { differences } from './changes.ts';
import { Changes } from './RunRows.tsx';
import { thenAndNow, type Stood } from './thenAndNow.ts';

export interface LookBackProps {
  readonly open: OpenShoot;
  readonly revision: number;
  /** When it was made, in words. */
  readonly when: string;
  readonly onRestore: (revision: number) => void;
}

const MOST_DIFFERENCES = 40;

const count = (howMany: number, one: string, many: string) => (howMany === 1 ? `one ${one}` : `${howMany} ${many}`);

function Totals({ plan }: { readonly plan: Plan }) {
  const { shortCount, tightCount, unknownCount } = plan.totals;
  const told: readonly (readonly [Standing, number, string])[] = [
    ['short', shortCount, 'short'],
    ['tight', tightCount, 'tight'],
    ['unknown', unknownCount, 'not known'],
  ];
  const some = told.filter(([, howMany]) => howMany > 0);
  if (some.length === 0) return <StateWord standing="spare" word="all to spare" />;
  return some.map(([standing, howMany, word]) => (
    <StateWord key={standing} standing={standing} word={`${howMany} ${word}`} />
  ));
}

function Cell({ stood, absent }: { readonly stood: Stood | undefined; readonly absent: string }) {
  return stood ? (
    <StateWord standing={stood.standing} word={stood.says} />
  ) : (
    <span className="look-absent">{absent}</span>
  );
}

function Limits({ then, now }: { readonly then: Plan; readonly now: Plan }) {
  const shots = useMemo(() => thenAndNow(then, now), [then, now]);
  const alike = now.shots.length - shots.filter((shot) => shot.now).length;
  return (
    <section className="look-part">
      <h3>Limits</h3>
      <table className="look-limits">
        <thead>
          <tr>
            <th scope="col">Worst limit of</th>
            <th scope="col">Then</th>
            <th scope="col">Now</th>
          </tr>
        </thead>
        <tbody>
          <tr className="look-all">
            <th scope="row">all {now.shots.length} shots</th>
            <td data-when="Then">
              <Totals plan={then} />
            </td>
            <td data-when="Now">
              <Totals plan={now} />
            </td>
          </tr>
          {shots.map(({ id, title, then: was, now: is }) => (
            <tr key={id}>
              <th scope="row">{title}</th>
              <td data-when="Then">
                <Cell stood={was} absent="not there yet" />
              </td>
              <td data-when="Now">
                <Cell stood={is} absent="taken out" />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {alike > 0 && (
        <p className="look-note">
          {shots.length === 0
            ? 'The worst limit of every shot stands as it did.'
            : `${count(alike, 'shot stands', 'shots stand')} as it did then.`.replace(
                /shots stand as it did/,
                'shots stand as they did',
              )}
        </p>
      )}
    </section>
  );
}

type Fetched =
  | { readonly state: 'loading' }
  | { readonly state: 'failed'; readonly says: string }
  | { readonly state: 'here'; readonly written: Written };

const faultWords = (error: unknown) =>
  error instanceof Fault
    ? `${error.what}. ${error.mend}`
    : 'The server cannot be reached. Looking back needs the connection.';

/** The shoot as it was after one revision: what differs from now, how the limits stood, and the way back to it. */
export function LookBack({ open, revision, when, onRestore }: LookBackProps) {
  const [fetched, setFetched] = useState<Fetched>({ state: 'loading' });
  const [isSure, setSure] = useState(false);
  useEffect(() => {
    let isGone = false;
    server.at(open.id, revision).then(
      ({ written }) => isGone || setFetched({ state: 'here', written }),
      (error: unknown) => isGone || setFetched({ state: 'failed', says: faultWords(error) }),
    );
    return () => {
      isGone = true;
    };
  }, [open.id, revision]);
  // What is the same is planned once: only what differs costs anything.
  const was = fetched.state === 'here' ? fetched.written : undefined;
  const then = useMemo(() => (was === undefined ? undefined : shareUnchanged(open.written, was)), [open.written, was]);
  const plan = useMemo(() => (then === undefined ? undefined : deriveShoot(then, lampShelf.tell).plan), [then]);
  const changes = useMemo(() => (then === undefined ? [] : differences(then, open.written)), [then, open.written]);

  if (fetched.state === 'failed') return <p role="alert">{fetched.says}</p>;
  if (then === undefined || !plan) return <p role="status">Looking back…</p>;
  const isNow = revision === open.revision;
  return (
    <div className="look">
      <p className="look-when">{when}</p>
      {changes.length === 0 ? (
        <p>{isNow ? 'This is the shoot as it stands.' : 'The shoot says the same now; at most comments or the order in its text differ.'}</p>
      ) : (
        <section className="look-part">
          <h3>What is otherwise now</h3>
          <Changes changes={changes} most={MOST_DIFFERENCES} />
        </section>
      )}
      <Limits then={plan} now={open.plan} />
      {!isNow && (
        <section className="look-restore">
          {isSure ? (
            <>
              <p>
                {changes.length === 0
                  ? `The text of the shoot goes back to revision ${revision}.`
                  : `The ${count(changes.length, 'thing above goes', 'things above go')} back to what ${changes.length === 1 ? 'it was' : 'they were'} at revision ${revision}, for everybody on this shoot.`}{' '}
                The steps since stay in the history, and undo takes this back.
              </p>
              <div className="look-acts">
                <Button look="main" autoFocus onClick={() => onRestore(revision)}>
                  Restore revision {revision}
                </Button>
                <Button onClick={() => setSure(false)}>Leave it as it is</Button>
              </div>
            </>
          ) : (
            <Button onClick={() => setSure(true)}>Restore this</Button>
          )}
        </section>
      )}
    </div>
  );
} // prettier-ignore
