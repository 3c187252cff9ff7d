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

/** Planning may take a third of the time at most, so that the drawing keeps up with the hand. */
const SHARE = 2;
const LEAST_ms = 16;

/** A lamp or a flag under way: drawn at once, planned as often as there is time for, sent when it rests. */
export function useLampMoves(setupId: string, edits: ShotEdits): LampMoves {
  const [now, setNow] = useState<Move>();
  const newest = useRef<Move>(undefined);
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);
  const cost_ms = useRef(0);
  const stop = () => {
    clearTimeout(waiting.current);
    waiting.current = undefined;
    newest.current = undefined;
    setNow(undefined);
  };
  useEffect(() => () => clearTimeout(waiting.current), []);
  const plan = () => {
    waiting.current = undefined;
    const move = newest.current;
    if (!move) return;
    const start_ms = performance.now();
    edits.draft(() => placeThing(setupId, move.thing, move.moved, move.place));
    cost_ms.current = performance.now() - start_ms;
  };
  return {
    now,
    move: (move) => {
      newest.current = { ...move, place: tidyPlace(move.place) };
      setNow(newest.current);
      waiting.current ??= setTimeout(plan, Math.max(LEAST_ms, SHARE * cost_ms.current));
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
