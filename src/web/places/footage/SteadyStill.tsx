import { useEffect, useRef, useState } from 'react';
import { stillPath } from '../../../api/footageRoutes.ts';
import type { StillProps } from './Still.tsx';

/** A frame that is asked for again and again while somebody scrubs: the last one stays until the next is here, one at a time. */
export function SteadyStill({ shootId, clipId, frame, width, alt }: StillProps) {
  const wanted = stillPath(shootId, clipId, frame, width);
  const newest = useRef(wanted);
  const loading = useRef<string>(undefined);
  const [shown, setShown] = useState<{ readonly address: string; readonly isMissing: boolean }>();
  useEffect(() => {
    newest.current = wanted;
    let isGone = false;
    const load = (address: string) => {
      loading.current = address;
      const picture = new Image();
      const end = (isMissing: boolean) => {
        loading.current = undefined;
        if (isGone && newest.current === address) return;
        setShown({ address, isMissing });
        if (newest.current !== address) load(newest.current);
      };
      picture.onload = () => end(false);
      picture.onerror = () => end(true);
      picture.src = address;
    };
    if (loading.current === undefined) load(wanted);
    return () => {
      isGone = true;
    };
  }, [wanted]);
  if (!shown) return <span className="footage-no-still">…</span>;
  if (shown.isMissing) return <span className="footage-no-still">no picture</span>;
  return <img className="footage-still" src={shown.address} alt={alt} aria-busy={shown.address !== wanted} />;
}
