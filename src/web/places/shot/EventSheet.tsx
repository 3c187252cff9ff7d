import { useRef, useState, type KeyboardEvent } from 'react';
import type { FilmedEvent } from '../../../laws/events/event.ts';
import { Button } from '../../parts/Button.tsx';
import { CAUTIONS } from '../reckoner/cautions.ts';
import { EventFacts } from './EventFacts.tsx';
import { findEvents } from './eventGroups.ts';

export interface EventSheetProps {
  /** The event that is chosen now. */
  readonly chosen: string | undefined;
  readonly onChoose: (event: FilmedEvent) => void;
}

/** The cautions that go with an event, by their titles. */
function cautionTitles({ cautions }: FilmedEvent): string {
  return cautions.map((key) => (CAUTIONS[key]?.title ?? key).toLowerCase()).join(', ');
}

function EventCard({ event, isChosen, onChoose }: { readonly event: FilmedEvent; readonly isChosen: boolean; readonly onChoose: () => void }) {
  const cautions = cautionTitles(event);
  return (
    <button type="button" className="event-card" aria-current={isChosen ? 'true' : undefined} onClick={onChoose}>
      <span className="event-title">
        {event.title}
        {isChosen && <span className="event-now">chosen</span>}
      </span>
      <span className="event-says">{event.says}</span>
      <EventFacts event={event} />
      {cautions !== '' && (
        <span className="event-care">
          <b>Take care:</b> {cautions}
        </span>
      )}
    </button>
  );
} // prettier-ignore

/** Words to try where a search finds nothing. */
const TRY = ['splash', 'pour', 'bubble', 'break', 'fire', 'robot'] as const;

/** The library of events, searched by name and by words of the trade; arrows go from one to the next. */
export function EventSheet({ chosen, onChoose }: EventSheetProps) {
  const [search, setSearch] = useState('');
  const body = useRef<HTMLDivElement>(null);
  const groups = findEvents(search);

  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (by === undefined) return;
    const stops = [...(body.current?.querySelectorAll<HTMLElement>('input, .event-card') ?? [])];
    const next = stops[stops.indexOf(document.activeElement as HTMLElement) + by];
    if (!next) return;
    event.preventDefault();
    next.focus();
  };

  return (
    <div className="event-sheet" ref={body} onKeyDown={onKeyDown}>
      <div className="event-search">
        <input
          type="search"
          aria-label="Find an event"
          placeholder="splash, honey, balloon, glass…"
          autoComplete="off"
          spellCheck={false}
          value={search}
          onChange={(event) => setSearch(event.currentTarget.value)}
        />
      </div>
      {groups.map(({ title, events }) => (
        <section key={title} className="event-group" aria-label={title}>
          <h3>{title}</h3>
          <ul>
            {events.map((event) => (
              <li key={event.id}>
                <EventCard event={event} isChosen={event.id === chosen} onChoose={() => onChoose(event)} />
              </li>
            ))}
          </ul>
        </section>
      ))}
      {groups.length === 0 && (
        <div className="event-none">
          <p role="status">No event speaks of “{search.trim()}”. Duration and speed can be written without one.</p>
          <div className="event-try">
            {TRY.map((word) => (
              <Button key={word} onClick={() => setSearch(word)}>
                {word}
              </Button>
            ))}
          </div>
        </div>
      )}
    </div>
  );
}
