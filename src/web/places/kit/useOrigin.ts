import { useEffect, useState } from 'react';
import type { JournalRow } from '../../../api/replies.ts';
import type { Patch } from '../../../document/patch.ts';
import type { Written, WrittenRecord } from '../../../document/written.ts';
import { server } from '../../state/page.ts';
import { itemAt } from './kitEdits.ts';
import { readOrigin, type Origin } from './library.ts';

/** The shoot a piece came from, as it is now, and what happened to it since the copy. */
export interface OriginNow {
  readonly origin: Origin;
  readonly title: string;
  readonly revision: number;
  readonly theirs: WrittenRecord;
  readonly patches: readonly Patch[];
}

/** A shoot edited more often than this since is not followed row by row. */
const MOST_ROWS = 5000;

async function rowsSince(shootId: string, after: number): Promise<readonly JournalRow[]> {
  const rows: JournalRow[] = [];
  for (let from = after; rows.length < MOST_ROWS;) {
    const reply = await server.journal(shootId, from);
    rows.push(...reply.rows);
    const last = reply.rows.at(-1)?.number ?? reply.revision;
    if (last >= reply.revision) break;
    from = last;
  }
  return rows;
}

async function look(origin: Origin): Promise<OriginNow> {
  const { shootId, kindKey, itemId, revision } = origin;
  const shoot = await server.open(shootId);
  const rows = shoot.revision > revision ? await rowsSince(shootId, revision) : [];
  const theirs = itemAt(shoot.written, kindKey, itemId);
  return { origin, title: shoot.title, revision: shoot.revision, theirs, patches: rows.map(({ patch }) => patch) };
}

/**
 * Looks where a piece came from, once for each origin. Undefined until that is known, and where it came from nowhere, from
 * this very shoot, or from one that is gone or cannot be reached: then there is nothing to offer.
 */
export function useOrigin(text: Written | undefined, here: string): OriginNow | undefined {
  const [now, setNow] = useState<OriginNow>();
  const key = typeof text === 'string' ? text : '';
  useEffect(() => {
    let isGone = false;
    setNow(undefined);
    const origin = readOrigin(key);
    if (!origin || origin.shootId === here) return undefined;
    look(origin).then(
      (found) => isGone || setNow(found),
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [key, here]);
  return now;
}
