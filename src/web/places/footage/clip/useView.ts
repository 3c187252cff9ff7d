import { useCallback, useEffect, useRef, useState, type RefObject } from 'react';
import { frameAt, movedBy, showing, wholeOf, zoomed, type View } from './axis.ts';
import type { Playhead } from './playhead.ts';
import { usePinch, type Pinch } from './usePinch.ts';

export interface Viewing {
  readonly view: View;
  readonly setView: (next: (view: View) => View) => void;
  /** The frame at a place across the window. */
  readonly frameAtX: (clientX: number) => number;
  readonly pinch: Pinch;
}

/** A notch of a wheel doubles in so many. */
const PER_PIXEL = 1 / 300;

/** Which frames are in sight: it follows the playhead, and a wheel with Control, or two fingers on a pad or the glass, comes closer. */
export function useView(track: RefObject<HTMLElement | null>, playhead: Playhead, frameCount: number): Viewing {
  const [view, setView] = useState(() => wholeOf(frameCount));
  const newest = useRef(view);
  useEffect(() => {
    newest.current = view;
  });
  useEffect(() => setView(wholeOf(frameCount)), [frameCount]);
  useEffect(
    () => playhead.subscribe(() => setView((was) => showing(was, playhead.frame(), frameCount))),
    [playhead, frameCount],
  );
  const shareAt = useCallback(
    (clientX: number) => {
      const box = track.current?.getBoundingClientRect();
      return box && box.width > 0 ? (clientX - box.left) / box.width : 0;
    },
    [track],
  );
  useEffect(() => {
    const element = track.current;
    if (!element) return undefined;
    const onWheel = (event: WheelEvent) => {
      const isZoom = event.ctrlKey || event.metaKey;
      const sideways = event.shiftKey ? event.deltaY : event.deltaX;
      if (!isZoom && Math.abs(sideways) <= Math.abs(event.shiftKey ? 0 : event.deltaY)) return;
      event.preventDefault();
      const { from, to } = newest.current;
      const at = from + shareAt(event.clientX) * (to - from);
      setView((was) =>
        isZoom
          ? zoomed(was, { factor: 2 ** (-event.deltaY * PER_PIXEL), about: at, frameCount })
          : movedBy(was, (sideways / element.clientWidth) * (was.to - was.from), frameCount),
      );
    };
    // React listens passively, and a passive listener cannot keep the page where it is.
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [track, shareAt, frameCount]);
  const frameAtX = useCallback((clientX: number) => frameAt(shareAt(clientX), newest.current, frameCount), [shareAt, frameCount]); // prettier-ignore
  const pinch = usePinch({ view, setView, frameCount, shareAt });
  return { view, setView, frameAtX, pinch };
}
