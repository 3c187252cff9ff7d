import { useEffect, useMemo, useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { Sheet } from '../parts/Sheet.tsx';
import type { OpenShoot } from '../state/contract.ts';
import { client } from '../state/page.ts';
import { usePerson } from '../state/person.ts';
import { NameSheet } from './crew/NameSheet.tsx';
import './history/history.css';
import { daysOf, takenBack, zoneOf } from './history/journal.ts';
import { LookBack } from './history/LookBack.tsx';
import { RunRows } from './history/RunRows.tsx';
import { useJournal } from './history/useJournal.ts';

export interface HistoryProps {
  readonly open: OpenShoot;
}

/** "Tuesday 9 March 2027", from a calendar day without a zone of its own. */
const sayDate = (date: string) =>
  new Intl.DateTimeFormat(undefined, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  }).format(new Date(`${date}T12:00:00Z`));

/** A restore that was asked for: at which revision, and of which. */
interface Restoring {
  readonly to: number;
  readonly from: number;
}

/** All that was done to the shoot, the newest first: by whom, when, and what it changed; and the way back. */
export function History({ open }: HistoryProps) {
  const { told, hasOlder, state, older, again } = useJournal(open.id, open.revision);
  const { name } = usePerson();
  const [looked, setLooked] = useState<number>();
  const [isNaming, setNaming] = useState(false);
  const [restoring, setRestoring] = useState<Restoring>();
  const timeZone = zoneOf(open.shoot.shoot.timeZone);
  const clock = useMemo(() => {
    const format = new Intl.DateTimeFormat(undefined, { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
    return (at: string) => format.format(new Date(at));
  }, [timeZone]);
  const days = useMemo(() => daysOf(told, { timeZone, me: client }), [told, timeZone]);
  const gone = useMemo(() => takenBack(told.map(({ row }) => row)), [told]);

  const { saving, revision } = open;
  const isRefused = restoring !== undefined && saving === 'refused';
  useEffect(() => {
    if (isRefused) setRestoring(undefined);
  }, [isRefused]);
  const isRestored = restoring !== undefined && saving === 'saved' && revision > restoring.from;

  const restore = (to: number) => {
    setLooked(undefined);
    setRestoring({ to, from: revision });
    open.restore(to);
  };
  const when = (number: number): string => {
    const row = told.find((each) => each.row.number === number)?.row;
    if (!row) return 'As it was brought in.';
    const day = days.find(({ runs }) => runs.some((run) => run.told.some((each) => each.row === row)));
    return `${day ? sayDate(day.date) : ''}, ${clock(row.at)}: after “${row.summary}”.`;
  };

  return (
    <div className="history">
      <header className="history-head">
        <h1>History</h1>
        <p>
          Times are those of {timeZone === undefined ? 'this device' : `${timeZone}, the shoot’s own zone`}. Your steps stand
          under {name === undefined ? '“somebody on another device” for others' : `“${name}”`}.{' '}
          <Button look="quiet" className="history-name no-print" onClick={() => setNaming(true)}>
            {name === undefined ? 'Say your name' : 'Change your name'}
          </Button>
        </p>
      </header>
      {state === 'loading' && told.length === 0 && <p role="status">Opening…</p>}
      {state === 'failed' && (
        <p className="history-failed" role="alert">
          The history cannot be read: the server cannot be reached. <Button onClick={again}>Try again</Button>
        </p>
      )}
      {days.map(({ date, runs }) => (
        <section key={date} className="history-day">
          <h2>{sayDate(date)}</h2>
          {runs.map((run) => (
            <RunRows key={run.key} run={run} clock={clock} takenBack={gone} onLook={setLooked} />
          ))}
        </section>
      ))}
      {hasOlder && (
        <Button className="history-older no-print" onClick={older}>
          Older
        </Button>
      )}
      {state === 'ready' && !hasOlder && (
        <p className="history-first">
          <span>{told.length === 0 ? 'Nothing was done yet: the shoot stands as it was brought in. Change a value anywhere, and it stands here with who changed it, to be looked back at or restored.' : 'The shoot was brought in.'}</span>
          {told.length > 0 && (
            <Button look="quiet" className="journal-look no-print" aria-label="Look at revision 0, as it was brought in" onClick={() => setLooked(0)}>
              revision 0
            </Button>
          )}
        </p>
      )}
      <Sheet isOpen={looked !== undefined} title={`Revision ${looked ?? ''}`} onClose={() => setLooked(undefined)}>
        {looked !== undefined && <LookBack key={looked} open={open} revision={looked} when={when(looked)} onRestore={restore} />}
      </Sheet>
      <NameSheet isOpen={isNaming} onClose={() => setNaming(false)} />
      {restoring && !isRefused && (
        <Notice
          says={isRestored ? `Revision ${restoring.to} is restored` : saving === 'unsent' ? `Revision ${restoring.to} is restored once there is a connection` : `Restoring revision ${restoring.to}…`}
          {...(isRestored
            ? {
                action: {
                  label: 'Undo',
                  onPress: () => {
                    open.undo();
                    setRestoring(undefined);
                  },
                },
              }
            : {})}
          onDismiss={() => setRestoring(undefined)}
        />
      )}
    </div>
  );
} // prettier-ignore
