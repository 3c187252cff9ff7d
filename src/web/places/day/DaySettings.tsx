import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { WrittenField } from '../shoot/WrittenField.tsx';

const TIMES = [
  ['call', 'Call', '07:30'],
  ['wrap', 'Wrap', '19:30'],
  ['mealLength', 'Length of a meal', '45 min'],
  ['mealWithin', 'A meal within', '6 h'],
  ['overtimePrice', 'Price of an hour over', '900'],
  ['copies', 'Verified copies', '2'],
] as const;

const USUAL = [
  ['set', 'Building a set', '20 min ± 6 min'],
  ['light', 'Changing the light', '18 min ± 6 min'],
  ['camera', 'Changing the camera', '15 min ± 4 min'],
  ['lens', 'Changing the lens', '6 min ± 2 min'],
  ['mode', 'Changing the format', '3 min ± 1 min'],
  ['reset', 'A reset', '7 min ± 2 min'],
  ['safety', 'Safety call', '1 min'],
  ['roll', 'Arming and rolling', '1 min'],
  ['review', 'Looking at a take', '2 min'],
  ['reference', 'A reference roll', '2 min'],
  ['element', 'An element or plate', '5 min'],
] as const;

/** The times that the day is worked out from, and what has been shot by now. */
export function DaySettings({ open }: { readonly open: OpenShoot }) {
  const [isOpen, setOpen] = useState(false);
  const { plan } = open;
  return (
    <Panel
      title="What the day is made of"
      aside={
        <Button look="quiet" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? 'Close' : 'Change'}
        </Button>
      }
      className="day-settings no-print"
    >
      {isOpen ? (
        <>
          <div className="day-fields">
            {TIMES.map(([key, label, placeholder]) => (
              <WrittenField key={key} open={open} path={`/shoot/day/${key}`} label={label} placeholder={placeholder} />
            ))}
          </div>
          <h3>How long things usually take</h3>
          <div className="day-fields">
            {USUAL.map(([key, label, placeholder]) => (
              <WrittenField
                key={key}
                open={open}
                path={`/shoot/day/usual/${key}`}
                label={label}
                placeholder={placeholder}
              />
            ))}
          </div>
          <h3>The rest of the day again</h3>
          <p>Say what time it is and what has been rolled: the day is then planned from here.</p>
          <div className="day-fields">
            <WrittenField open={open} path="/shoot/day/now" label="It is now" placeholder="14:20" />
          </div>
          <ul className="day-so-far">
            {plan.shots.map(({ id, title }) => (
              <li key={id}>
                <span>{title}</span>
                <WrittenField open={open} path={`/shots/${id}/soFar/takes`} label="Takes rolled" placeholder="0" />
                <WrittenField open={open} path={`/shots/${id}/soFar/good`} label="Good ones" placeholder="0" />
                <WrittenField open={open} path={`/shots/${id}/soFar/done`} label="Done" placeholder="no" />
              </li>
            ))}
          </ul>
        </>
      ) : (
        <p>Call, meals and wrap, how long things usually take, and what has been shot by now.</p>
      )}
    </Panel>
  );
}
