import { useCallback, useEffect, useState } from 'react';
import { Fault } from '../../../base/fault.ts';
import type { FolderListing } from '../../../record/footage.ts';
import { listFolder } from '../../state/useFootage.ts';

export interface FolderPlace {
  readonly folder: string;
  readonly path: string;
}

/** A camera goes on saving while somebody looks at its folder. */
const LOOK_AGAIN_ms = 4000;

interface Looked {
  readonly at: FolderPlace;
  readonly listing?: FolderListing;
  readonly failed?: string;
}

const says = (error: unknown): string =>
  error instanceof Fault ? `${error.what}. ${error.mend}` : 'The server cannot be reached.';

/** What lies in a folder, looked at again and again while it is shown. */
export function useFolder(shootId: string, at: FolderPlace | undefined): Omit<Looked, 'at'> & { readonly again: () => void } {
  const [looked, setLooked] = useState<Looked>();
  const [count, setCount] = useState(0);
  useEffect(() => {
    if (!at) return undefined;
    let isGone = false;
    const look = () => {
      if (document.hidden) return;
      listFolder(shootId, at).then(
        (listing) => isGone || setLooked({ at, listing }),
        (error: unknown) => isGone || setLooked((before) => ({ ...(before?.at === at ? before : {}), at, failed: says(error) })),
      );
    };
    look();
    const timer = setInterval(look, LOOK_AGAIN_ms);
    return () => {
      isGone = true;
      clearInterval(timer);
    };
  }, [shootId, at, count]);
  const again = useCallback(() => setCount((before) => before + 1), []);
  if (!at || looked?.at !== at) return { again };
  const { listing, failed } = looked;
  return { ...(listing && { listing }), ...(failed !== undefined && { failed }), again };
} // prettier-ignore
