import { useEffect, useState } from 'react';
import type { ClipEntry } from '../../../../record/footage.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { readMeasured } from '../../../state/useFootage.ts';

export interface MeasuredClips {
  /** In the order asked for; empty until all are there. */
  readonly clips: readonly MeasuredClip[];
  readonly isReading: boolean;
  readonly failed?: string;
}

const keyOf = ({ id, brief }: ClipEntry): string => `${id} ${brief?.measuredAt}`;

/** What was measured of several clips, each read once. */
export function useMeasuredClips(shootId: string, entries: readonly ClipEntry[]): MeasuredClips {
  const [read, setRead] = useState<ReadonlyMap<string, MeasuredClip>>(new Map());
  const [failed, setFailed] = useState<string>();
  const wanted = entries.map(keyOf).join('\n');
  useEffect(() => {
    let isGone = false;
    for (const key of wanted === '' ? [] : wanted.split('\n')) {
      if (read.has(key)) continue;
      readMeasured(shootId, key.slice(0, key.indexOf(' '))).then(
        (clip) => {
          if (isGone) return;
          setFailed(undefined);
          setRead((before) => new Map(before).set(key, clip));
        },
        (error: unknown) => {
          if (!isGone) setFailed(error instanceof Error ? error.message : String(error));
        },
      );
    }
    return () => {
      isGone = true;
    };
  }, [shootId, wanted, read]);
  const found = entries.map((entry) => read.get(keyOf(entry)));
  const isReading = found.includes(undefined);
  return {
    clips: isReading ? [] : found.filter((clip) => clip !== undefined),
    isReading: isReading && failed === undefined,
    ...(failed !== undefined && { failed }),
  };
}
