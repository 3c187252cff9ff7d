import { useState } from 'react';
import { writeClock } from '../../document/write.ts';
import { dayCsv } from '../../turnover/dayCsv.ts';
import { cuesCsv } from '../../turnover/cuesCsv.ts';
import { Button } from '../parts/Button.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import { Notice } from '../parts/Notice.tsx';
import { Panel } from '../parts/Panel.tsx';
import { shootHref } from '../hrefs.ts';
import type { OpenShoot } from '../state/contract.ts';
import { useDay } from '../state/useDay.ts';
import { DayFacts } from './day/DayFacts.tsx';
import { DayLine } from './day/DayLine.tsx';
import { DaySettings } from './day/DaySettings.tsx';
import { findOrderPatch, fixOrderPatch } from './day/dayEdits.ts';
import { saveText } from './day/saveText.ts';
import './day/day.css';

export interface DayProps {
  readonly open: OpenShoot;
  readonly onGo: (href: string) => void;
}

const ORDER = {
  fixed: 'The order is fixed.',
  proven: 'The order takes the least time for changing over: proven.',
  found: 'The best order found; it is not proven to be the best.',
} as const;

/** The day as it may go: when each shot starts and ends, when it is a wrap nine days in ten, and what would end it sooner. */
export function Day({ open, onGo }: DayProps) {
  const { plan, written } = open;
  const { day, isUpdating, failed } = useDay(open);
  const [said, setSaid] = useState<string>();
  if (plan.shots.length === 0)
    return (
      <EmptyPlace title="No shots yet" says="A day is made of shots. Write the first one, then see when it is a wrap.">
        <Button look="main" onClick={() => onGo(shootHref(open.id))}>
          To the shoot
        </Button>
      </EmptyPlace>
    );
  if (!day)
    return (
      <div className="day">
        <h1>The day</h1>
        <p role="status">{failed === undefined ? 'Drawing days…' : `The day could not be worked out: ${failed}`}</p>
      </div>
    );

  const fix = (order: readonly string[], title: string) => {
    open.commit(fixOrderPatch(order), `${title} moved in the day`);
    setSaid(`Moved: ${title}`);
  };
  const { wrap, says, warnings, missing, assumed, orderBy, dayCount, seedCount } = day;
  const [first, ...more] = says;
  return (
    <div className="day" aria-busy={isUpdating}>
      <header className="day-head">
        <div>
          <h1>The day</h1>
          <p className="day-says">{first ?? `Nine days in ten, wrap by ${writeClock(wrap.late_s)}.`}</p>
          <ul className="day-more">
            {more.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
        <div className="day-tools no-print">
          <Button onClick={() => saveText(`${open.id}-day.csv`, dayCsv(day))}>Save the day as CSV</Button>
          <Button look="quiet" onClick={() => saveText(`${open.id}-cues.csv`, cuesCsv(plan))}>
            Save the cues as CSV
          </Button>
        </div>
      </header>
      {warnings.length > 0 && (
        <ul className="day-warnings" aria-label="What will not do">
          {warnings.map((warning) => (
            <li key={warning.says}>{warning.says}</li>
          ))}
        </ul>
      )}
      <Panel
        title="Shots in the order of the day"
        aside={
          <span role="status">
            {isUpdating ? 'updating…' : `${dayCount} days drawn from seed ${seedCount}`}
          </span>
        }
      >
        <p className="day-order">
          {ORDER[orderBy]}{' '}
          {orderBy === 'fixed' && (
            <Button look="quiet" onClick={() => open.commit(findOrderPatch(written), 'Order of the day left to be found')}>
              Let it be found
            </Button>
          )}
        </p>
        <DayLine open={open} day={day} isUpdating={isUpdating} onGo={onGo} onMove={fix} />
      </Panel>
      <DaySettings open={open} />
      <DayFacts day={day} />
      {missing.length > 0 && <p className="day-note">Missing: {missing.map(({ title }) => title).join('; ')}.</p>}
      {assumed.length > 0 && (
        <p className="day-note">
          Taken as usual, because nobody wrote it: {[...new Set(assumed.map(({ title }) => title))].join('; ')}.
        </p>
      )}
      {said !== undefined && (
        <Notice
          says={said}
          action={{
            label: 'Undo',
            onPress: () => {
              open.undo();
              setSaid(undefined);
            },
          }}
          onDismiss={() => setSaid(undefined)}
        />
      )}
    </div>
  );
} // prettier-ignore
