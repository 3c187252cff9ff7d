import { useEffect, useState } from 'react';

const loaded = new Map<() => Promise<unknown>, unknown>();

/**
 * What a part needs that need not be in the first screen's script: undefined until it is here, then there at once for
 * every part that asks. A load that fails is tried again by the next part that is shown.
 */
export function useLater<Of extends object>(load: () => Promise<Of>): Of | undefined {
  const [here, setHere] = useState<{ readonly it: Of } | undefined>(() => {
    const it = loaded.get(load) as Of | undefined;
    return it && { it };
  });
  useEffect(() => {
    if (here) return undefined;
    let isGone = false;
    void load().then(
      (it) => {
        loaded.set(load, it);
        if (!isGone) setHere({ it });
      },
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [here, load]);
  return here?.it;
}
