import { useEffect, useMemo, useState } from 'react';
import type { MeasuredOptions } from '../../../laws/flicker/measured.ts';
import { useRested } from '../../parts/useRested.ts';
import { isDropped } from '../../workers/connect.ts';
import { flickerWorker } from '../flicker/flickerWorker.ts';
import type { LightRecord } from './lightRecord.ts';

export type Reading =
  | { readonly state: 'none' | 'reading' }
  | { readonly state: 'failed'; readonly says: string }
  | { readonly state: 'read'; readonly record: LightRecord };

/** Typing rests this long before the record is read anew. */
const REST_ms = 200;

/** A light record read in the worker; while a newer one is read it is `reading`. */
export function useLightRecord(text: string, options: MeasuredOptions): Reading {
  const { dark, unit_s } = options;
  const ask = useMemo(
    () => ({ text, options: { ...(dark === undefined ? {} : { dark }), ...(unit_s === undefined ? {} : { unit_s }) } }),
    [text, dark, unit_s],
  );
  const rested = useRested(ask, REST_ms);
  const [answered, setAnswered] = useState<{ readonly of: typeof ask; readonly reading: Reading }>();
  useEffect(() => {
    if (rested.text.trim() === '') return undefined;
    const called = flickerWorker.call('record', rested);
    called.answer.then(
      (record) => setAnswered({ of: rested, reading: { state: 'read', record } }),
      (error: unknown) => {
        if (isDropped(error)) return;
        const says = error instanceof Error ? error.message : String(error);
        setAnswered({ of: rested, reading: { state: 'failed', says } });
      },
    );
    return called.cancel;
  }, [rested]);
  if (text.trim() === '') return { state: 'none' };
  return answered?.of === ask ? answered.reading : { state: 'reading' };
}
