/** The state as React sees it. */
import { createContext, use, useCallback, useEffect, useState, useSyncExternalStore } from 'react';
import { Fault } from '../../base/fault.ts';
import type { Present, ShootEntry } from '../../api/replies.ts';
import type { OpenShoot } from './contract.ts';
import { retainStore, server, shootPresence, shootStore } from './page.ts';
import type { Opening, ShootStore } from './shootStore.ts';

export interface Opened {
  readonly opening: Opening;
  readonly store: ShootStore;
}

/** The shoot of an id, opened while anything on the page shows it. */
export function useOpening(shootId: string): Opened {
  const store = shootStore(shootId);
  const subscribe = useCallback(
    (changed: () => void) => {
      const release = retainStore(shootId);
      const unsubscribe = shootStore(shootId).subscribe(changed);
      return () => {
        unsubscribe();
        release();
      };
    },
    [shootId],
  );
  return { opening: useSyncExternalStore(subscribe, store.current), store };
}

/** Everybody else who has the shoot open, while it is open here. */
export function useOthers(shootId: string): readonly Present[] {
  const desk = shootPresence(shootId);
  return useSyncExternalStore(desk.subscribe, desk.others);
}

const OpenContext = createContext<OpenShoot | undefined>(undefined);

export const OpenShootProvider = OpenContext.Provider;

/** The open shoot, for places shown inside one. */
export function useOpenShoot(): OpenShoot {
  const open = use(OpenContext);
  if (!open) throw new Error('This place is shown outside a shoot');
  return open;
}

export type ShootList =
  | { readonly state: 'loading' }
  | { readonly state: 'failed'; readonly fault: Fault }
  | { readonly state: 'listed'; readonly shoots: readonly ShootEntry[] };

const awayFault = (cause: unknown) =>
  new Fault({
    code: 'server.away',
    what: 'The server cannot be reached',
    where: 'the list of shoots',
    mend: 'Check that Longsecond is running, then try again.',
    retry: true,
    cause,
  });

/** Every shoot the server has, the one changed last first; `again` asks anew. */
export function useShootList(): { readonly list: ShootList; readonly again: () => void } {
  const [list, setList] = useState<ShootList>({ state: 'loading' });
  const [askedCount, setAskedCount] = useState(0);
  useEffect(() => {
    let isGone = false;
    server.list().then(
      ({ shoots }) => isGone || setList({ state: 'listed', shoots }),
      (error: unknown) =>
        isGone || setList({ state: 'failed', fault: error instanceof Fault ? error : awayFault(error) }),
    );
    return () => {
      isGone = true;
    };
  }, [askedCount]);
  return { list, again: () => setAskedCount((count) => count + 1) };
}
