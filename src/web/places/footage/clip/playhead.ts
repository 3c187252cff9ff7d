/** The frame that everything of a clip stands at. It runs as fast as the film, so only what shows it is drawn anew. */
import { useSyncExternalStore } from 'react';

export interface Playhead {
  readonly frame: () => number;
  readonly set: (frame: number) => void;
  readonly subscribe: (changed: () => void) => () => void;
}

export function createPlayhead(first: number): Playhead {
  const listeners = new Set<() => void>();
  let now = first;
  return {
    frame: () => now,
    set: (frame) => {
      if (frame === now) return;
      now = frame;
      for (const listener of [...listeners]) listener();
    },
    subscribe: (changed) => {
      listeners.add(changed);
      return () => void listeners.delete(changed);
    },
  };
}

export const usePlayhead = ({ subscribe, frame }: Playhead): number => useSyncExternalStore(subscribe, frame);
