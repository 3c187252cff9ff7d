/** How sure the figures of an event are: apart from the events, as the list of sources is long. */
import { isAssumed, SOURCES, type Source } from '../sources.ts';
import type { FilmedEvent } from './event.ts';

const SUREST_LAST: readonly Source['seen'][] = ['practice', 'memory', 'excerpt', 'opened'];

/** How the least sure of some sources was seen. Throws RangeError for a key that is not listed, or none at all. */
export function leastSure(keys: readonly string[]): Source['seen'] {
  const places = keys.map((key) => {
    const source = SOURCES[key];
    if (!source) throw new RangeError(`sources must be listed, got ${key}`);
    return SUREST_LAST.indexOf(source.seen);
  });
  const least = SUREST_LAST[Math.min(...places)];
  if (!least) throw new RangeError('sources must be at least 1, got 0');
  return least;
}

export interface Sureness {
  /** How the least sure of its sources was seen. */
  readonly seen: Source['seen'];
  /** Whether none of its sources was read, whole or in part. */
  readonly isAssumed: boolean;
}

/** How an event's figures are known. Throws RangeError where it cites a source that is not listed. */
export function surenessOf({ sources }: Pick<FilmedEvent, 'sources'>): Sureness {
  return { seen: leastSure(sources), isAssumed: isAssumed(sources) };
}
