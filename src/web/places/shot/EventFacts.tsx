import type { FilmedEvent } from '../../../laws/events/event.ts';
import { surenessOf, type Sureness } from '../../../laws/events/sureness.ts';
import { AssumedMark } from '../../parts/AssumedMark.tsx';
import { HOW_SEEN } from '../reckoner/sourceWords.ts';
import { spanWords } from './eventEdits.ts';
import { useShot } from './shotContext.ts';

/** Where only the least sure of several sources was not read. */
const PARTLY: Readonly<Partial<Record<Sureness['seen'], string>>> = {
  memory: 'from memory',
  practice: 'common practice',
};

/** How fast, how long and at what rates an event is usually filmed, and how its figures are known. */
export function EventFacts({ event }: { readonly event: FilmedEvent }) {
  const { system } = useShot();
  const { typical, frameRate_fps } = event;
  const { seen, isAssumed } = surenessOf(event);
  return (
    <span className="event-facts">
      <span>
        <i>speed</i> {spanWords('speed', typical.speed_m_per_s, system)}
      </span>
      <span>
        <i>lasts</i> {spanWords('time', typical.duration_s, system)}
      </span>
      <span>
        <i>rate</i> {spanWords('rate', frameRate_fps, system)}
      </span>
      <span>
        <i>figures</i> {isAssumed || PARTLY[seen] === undefined ? HOW_SEEN[seen] : `in part ${PARTLY[seen]}`}
        {isAssumed && (
          <>
            {' '}
            <AssumedMark />
          </>
        )}
      </span>
    </span>
  );
}
