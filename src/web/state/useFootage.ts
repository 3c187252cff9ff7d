/** Footage as React sees it: the clips of a shoot, and what was measured of one. */
import { useCallback, useEffect, useState, useSyncExternalStore } from 'react';
import { createFootageClient } from '../../api/footageClient.ts';
import { footageLivePath } from '../../api/footageRoutes.ts';
import type { ClipEntry, FootageEvent, FootageState, FolderListing } from '../../record/footage.ts';
import { readKept } from '../../turnover/keptMeasurement.ts';
import type { MeasuredClip } from '../../turnover/measureReply.ts';
import { after, makeId, openStorage } from './browser.ts';
import type { OpenShoot } from './contract.ts';
import { openFootage, type FootageNow, type FootageStore } from './footage.ts';
import { keepFootageIn } from './keepFootage.ts';
import { client } from './page.ts';
import { personNow } from './person.ts';
import { follow, send } from './server.ts';

const footageClient = createFootageClient({ send, client, name: () => personNow().name });
const keep = keepFootageIn(openStorage());

const stores = new Map<string, FootageStore>();

/** Kept for the life of the page: what was read once can be read again without a network. */
function storeOf(shootId: string): FootageStore {
  const known = stores.get(shootId);
  if (known) return known;
  const store = openFootage({
    shootId,
    client: footageClient,
    keep,
    listen: ({ onState, onLive }) =>
      follow({
        path: () => footageLivePath(shootId),
        onLive,
        attach: (source) =>
          source.addEventListener('footage', ({ data }: MessageEvent<string>) =>
            onState(JSON.parse(data) as FootageState),
          ),
      }),
    makeId,
    now: () => new Date().toISOString(),
    after,
  });
  stores.set(shootId, store);
  return store;
}

window.addEventListener('online', () => {
  for (const store of stores.values()) store.wake();
});

export interface Footage extends FootageNow {
  /** Shown at once, and sent under an id of its own. */
  readonly happen: (event: FootageEvent) => void;
  /** Goes on from where measuring was stopped, unless it is to be done anew. */
  readonly measure: (clipId: string, isAnew: boolean) => void;
  readonly stop: (clipId: string) => void;
  /** Has the small copy made that a browser plays. */
  readonly makeProxy: (clipId: string) => void;
  /** Puts away what was refused. */
  readonly dismiss: () => void;
  /** Tries again now. */
  readonly wake: () => void;
}

/** The footage of a shoot, followed while anything on the page shows it. */
export function useFootage({ id }: Pick<OpenShoot, 'id'>): Footage {
  const store = storeOf(id);
  const { happen, measure, stop, makeProxy, dismiss, wake } = store;
  return { ...useSyncExternalStore(store.subscribe, store.current), happen, measure, stop, makeProxy, dismiss, wake };
}

/** What lies in a folder that was opened to the server. Rejects with a Fault, or with anything else where there is no answer. */
export const listFolder = (shootId: string, at: { readonly folder: string; readonly path: string }): Promise<FolderListing> =>
  footageClient.folder(shootId, at); // prettier-ignore

/** What was measured of a clip, without its shot. Rejects as `listFolder` does. */
export const readMeasured = (shootId: string, clipId: string): Promise<MeasuredClip> =>
  footageClient.measured(shootId, clipId).then(readKept);

export interface Measured {
  /** The newest that is known, without its shot: see `plannedShot` in turnover. */
  readonly clip?: MeasuredClip;
  /** A newer one is on its way. */
  readonly isUpdating: boolean;
  readonly failed?: string;
}

interface Known {
  readonly measuredAt: string;
  readonly clip: MeasuredClip;
}

/** Clips can be long: so many are kept for going back to. */
const MOST_KEPT = 8;
const known = new Map<string, Known>();

function keepKnown(key: string, value: Known): void {
  known.delete(key);
  known.set(key, value);
  for (const oldest of known.keys()) {
    if (known.size <= MOST_KEPT) break;
    known.delete(oldest);
  }
}

/** What was measured of a clip, read again whenever that was measured anew. */
export function useMeasured(shootId: string, entry: Pick<ClipEntry, 'id' | 'brief'> | undefined): Measured {
  const key = `${shootId}/${entry?.id}`;
  const measuredAt = entry?.brief?.measuredAt;
  const clipId = entry?.id;
  const [, setReadCount] = useState(0);
  const [failed, setFailed] = useState<{ readonly key: string; readonly says: string }>();
  const read = useCallback(() => setReadCount((count) => count + 1), []);
  useEffect(() => {
    if (clipId === undefined || measuredAt === undefined || known.get(key)?.measuredAt === measuredAt) return undefined;
    let isGone = false;
    readMeasured(shootId, clipId).then(
      (clip) => {
        keepKnown(key, { measuredAt, clip });
        if (isGone) return;
        setFailed(undefined);
        read();
      },
      (error: unknown) => {
        if (!isGone) setFailed({ key, says: error instanceof Error ? error.message : String(error) });
      },
    );
    return () => {
      isGone = true;
    };
  }, [shootId, clipId, key, measuredAt, read]);
  const clip = known.get(key);
  return {
    ...(clip && measuredAt !== undefined && { clip: clip.clip }),
    isUpdating: measuredAt !== undefined && clip?.measuredAt !== measuredAt && failed?.key !== key,
    ...(failed?.key === key && { failed: failed.says }),
  };
}
