import { useRef, type PointerEvent } from 'react';
import { pinched, type View } from './axis.ts';

export interface PinchGiven {
  readonly view: View;
  readonly setView: (next: (view: View) => View) => void;
  readonly frameCount: number;
  /** Where across the width, as a share. */
  readonly shareAt: (clientX: number) => number;
}

export interface Pinch {
  /** Each says whether two fingers have hold of the view, so that one of them means nothing else. */
  readonly onDown: (event: PointerEvent) => boolean;
  readonly onMove: (event: PointerEvent) => boolean;
  readonly onEnd: (event: PointerEvent) => void;
}

interface Held {
  readonly view: View;
  readonly at: readonly [number, number];
}

/** Two fingers on the axis: apart comes closer, together goes farther, and the frames under them stay under them. */
export function usePinch({ view, setView, frameCount, shareAt }: PinchGiven): Pinch {
  const fingers = useRef(new Map<number, number>());
  const held = useRef<Held>(undefined);
  const places = (): readonly [number, number] | undefined => {
    const [a, b] = [...fingers.current.values()];
    return a === undefined || b === undefined ? undefined : [shareAt(a), shareAt(b)];
  };
  return {
    onDown: ({ pointerType, pointerId, clientX }) => {
      if (pointerType !== 'touch') return false;
      fingers.current.set(pointerId, clientX);
      const at = places();
      if (at && fingers.current.size === 2) held.current = { view, at };
      return held.current !== undefined;
    },
    onMove: ({ pointerId, clientX }) => {
      if (fingers.current.has(pointerId)) fingers.current.set(pointerId, clientX);
      const [from, now] = [held.current, places()];
      if (from && now && fingers.current.size === 2) setView(() => pinched(from.view, { held: from.at, now, frameCount }));
      return from !== undefined;
    },
    onEnd: ({ pointerId }) => {
      fingers.current.delete(pointerId);
      // The finger that is left goes on holding, so that lifting two does not jump to where the second was.
      if (fingers.current.size === 0) held.current = undefined;
    },
  };
} // prettier-ignore
