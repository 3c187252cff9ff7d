import type { FilmedEvent } from '../../../laws/events/event.ts';
import { lawNamed } from '../../../laws/catalogue.ts';
import { reckonerHref } from '../../hrefs.ts';
import { GoLink } from '../GoLink.tsx';
import { CAUTIONS } from '../reckoner/cautions.ts';
import { EventFacts } from './EventFacts.tsx';
import { useShot } from './shotContext.ts';

/** What the library knows of an event: its usual figures, the rates it asks for and why, its cautions and its laws. */
export function EventAbout({ event }: { readonly event: FilmedEvent }) {
  const { open, go } = useShot();
  return (
    <div className="event-about">
      <p>{event.says}</p>
      <EventFacts event={event} />
      <p>{event.frameRateReasoning}</p>
      {event.cautions.length > 0 && (
        <div className="event-cautions">
          <h3>Take care</h3>
          <ul>
            {event.cautions.map((key) => (
              <li key={key}>
                <b>{CAUTIONS[key]?.title ?? key}.</b> {CAUTIONS[key]?.says} {CAUTIONS[key]?.points[0]}
              </li>
            ))}
          </ul>
        </div>
      )}
      {event.laws.length > 0 && (
        <p className="event-laws">
          Worked out by{' '}
          {event.laws.map((id) => (
            <GoLink key={id} href={reckonerHref({ shootId: open.id, lawId: id })} onGo={go}>
              {lawNamed(id)?.title ?? id}
            </GoLink>
          ))}
        </p>
      )}
    </div>
  );
}
