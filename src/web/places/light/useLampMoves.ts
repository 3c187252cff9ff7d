import { useEffect, useRef, useState } from 'react';
import type { Position } from '../../../document/shape.ts';
import type { ShotEdits } from '../shot/useShotEdits.ts';
import { tidyPlace } from './geometry.ts';
import { placeThing, type Moved, type Thing } from './lightEdits.ts';

export interface Move {
  readonly thing: Thing;
  readonly moved: Moved;
  readonly place: Position;
}

export interface LampMoves {
  /** What is being moved now, and where it is. */
  readonly now: Move | undefined;
  /** Moves and plans, without sending. */
  readonly move: (move: Move) => void;
  /** Sends where it came to rest, as one edit. */
  readonly finish: (summary: (place: Position) => string) => void;
  readonly cancel: () => void;
}

/** Planning every shot takes longer than a frame: it waits until the hand has rested for so long. */
const PAUSE_ms = 120;

/** A lamp or a flag under way: it and its light drawn at once, the shots planned as the hand pauses, sent when it is let go. */
export function useLampMoves(setupId: string, edits: ShotEdits): LampMoves {
  const [now, setNow] = useState<Move>();
  const newest = useRef<Move>(undefined);
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);
  const stop = () => {
    clearTimeout(waiting.current);
    newest.current = undefined;
    setNow(undefined);
  };
  useEffect(() => () => clearTimeout(waiting.current), []);
  const plan = () => {
    const move = newest.current;
    if (move) edits.draft(() => placeThing(setupId, move.thing, move.moved, move.place));
  };
  return {
    now,
    move: (move) => {
      newest.current = { ...move, place: tidyPlace(move.place) };
      setNow(newest.current);
      clearTimeout(waiting.current);
      waiting.current = setTimeout(plan, PAUSE_ms);
    },
    finish: (summary) => {
      const move = newest.current;
      stop();
      if (move) edits.commit(() => placeThing(setupId, move.thing, move.moved, move.place), summary(move.place));
    },
    cancel: () => {
      stop();
      edits.cancel();
    },
  };
}
