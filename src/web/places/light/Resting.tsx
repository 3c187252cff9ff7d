import { useEffect, useRef, type ReactNode } from 'react';
import { LightProvider, useLight } from './lightContext.ts';

/** What nobody looks at while a lamp moves stays as it was until the hand lets go, so that the drawing keeps up. */
export function Resting({ children }: { readonly children: ReactNode }) {
  const light = useLight();
  const now = { light, children };
  const rested = useRef(now);
  const isMoving = light.moves.now !== undefined;
  useEffect(() => {
    if (!isMoving) rested.current = now;
  });
  // The very same children as before are not rendered again.
  const shown = isMoving ? rested.current : now;
  return <LightProvider value={shown.light}>{shown.children}</LightProvider>;
}
