import { showQuantity, sayShown } from '../../../base/quantity.ts';
import type { DayPlan } from '../../../plan/day/types.ts';
import { sayTime } from '../../../plan/day/words.ts';
import { workWord } from '../../../turnover/sheets/daySheet.ts';
import { sayShare } from '../../../turnover/sheets/cueSheet.ts';
import { Panel } from '../../parts/Panel.tsx';
import { StateShape } from '../../parts/StateWord.tsx';

const sayBytes = (size_B: number): string => sayShown(showQuantity('bytes', size_B));

function Path({ day }: { readonly day: DayPlan }) {
  const most = Math.max(...day.path.map(({ shareFraction }) => shareFraction));
  return (
    <Panel title="Where a late day goes">
      <ul className="day-path">
        {day.path.map(({ work, time_s, shareFraction }) => (
          <li key={work}>
            <span>{workWord(work)}</span>
            <i
              className={`day-share ${work}`}
              aria-hidden="true"
              style={{ width: `${(100 * shareFraction) / most}%` }}
            />
            <b>{sayTime(time_s)}</b>
            <small>{sayShare(shareFraction)}</small>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

function Savings({ day }: { readonly day: DayPlan }) {
  return (
    <Panel title="What would end it sooner" aside="each found by drawing the same days again">
      <ul className="day-savings">
        {day.savings.map(({ title, says, saves_s }) => (
          <li key={title}>
            <span>
              {title} <small>{says}</small>
            </span>
            <b>{sayTime(saves_s)}</b>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

function Drives({ day }: { readonly day: DayPlan }) {
  return (
    <Panel title="Drives" aside="from this day, half the days and nine in ten">
      <ul className="day-drives">
        {day.drives.map(({ drive, title, holds, free_B, middle_B, late_B, isShort }) => (
          <li key={drive}>
            <span>
              <StateShape standing={isShort ? 'short' : 'spare'} /> {title}{' '}
              <small>{holds === 'saves' ? 'what leaves the camera' : 'copies'}</small>
            </span>
            <span>
              <b>{sayBytes(middle_B)}</b> to {sayBytes(late_B)} of {sayBytes(free_B)} free
              {isShort && <small>it will not hold the day</small>}
            </span>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

/** What the time of the day goes on, what would save some, and what lies on each drive in the end. */
export function DayFacts({ day }: { readonly day: DayPlan }) {
  return (
    <div className="day-facts">
      {day.path.length > 0 && <Path day={day} />}
      {day.savings.length > 0 && <Savings day={day} />}
      {day.drives.length > 0 && <Drives day={day} />}
    </div>
  );
}
