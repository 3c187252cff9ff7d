import { useEffect, useRef, type KeyboardEvent, type PointerEvent } from 'react';
import type { Position } from '../../../document/shape.ts';
import { movedBy, SNAP_deg, snapPlace, snapRound, SUBJECT, tidyPlace, turnedBy } from './geometry.ts';
import type { ThingDrawn } from './drawn.ts';
import { useLight } from './lightContext.ts';
import { placeSaid } from './lightWords.ts';
import { isThing, type Moved, type Thing } from './lightEdits.ts';
import { flatten, movement, type Flat, type Projection } from './projection.ts';
import { vecOf } from '../../../plan/lighting.ts';
import { toPage, type Viewport } from './viewport.ts';

export type Snap = 'free' | 'grid' | 'round';

export interface Grip {
  readonly thing: Thing;
  readonly moved: Moved;
}

/** How near a finger or a mouse must come, in pixels: a finger's target is 44 across. */
const REACH_px = { touch: 24, pen: 18, mouse: 15 } as const;

const reachOf = (type: string): number => REACH_px[type as keyof typeof REACH_px] ?? REACH_px.mouse;

/** A key held down repeats; once it rests, where the thing is now is sent. */
const REST_ms = 700;

const STEP_m = 0.05;
const FINE_m = 0.01;

const gripPlace = ({ at, aim }: ThingDrawn, moved: Moved): Position => (moved === 'at' ? at : (aim ?? SUBJECT));

/** What became of it, in a summary and aloud. */
const DONE = {
  at: { lamp: ['moved to', 'stands'], flag: ['moved to', 'stands'] },
  aim: { lamp: ['aimed', 'is aimed'], flag: ['turned square to', 'is square to'] },
} as const;

interface Held extends Grip {
  readonly pointerId: number;
  readonly from: Flat;
  readonly start: Position;
  hasMoved: boolean;
}

export interface GripsAsk {
  readonly things: readonly ThingDrawn[];
  readonly viewport: Viewport;
  readonly projection: Projection;
  readonly snap: Snap;
  /** Somewhere on the ground was meant: where the meter is to be held. */
  readonly onGround: (page: Flat) => void;
}

const ARROWS: Readonly<Record<string, Flat>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

/** Where on its page an event lies. */
export function pagePoint(event: { readonly clientX: number; readonly clientY: number }, svg: Element, { width_px, height_px }: Viewport): Flat {
  const box = svg.getBoundingClientRect();
  return { x: ((event.clientX - box.left) * width_px) / box.width, y: ((event.clientY - box.top) * height_px) / box.height };
} // prettier-ignore

/** Lamps and flags, and what they point at, moved by mouse, finger and keyboard. */
export function useGrips({ things, viewport, projection, snap, onGround }: GripsAsk) {
  const { moves, onSelect, selected, say, system, title: setupTitle } = useLight();
  const held = useRef<Held>(undefined);
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(rest.current), []);

  const find = ({ kind, id }: Thing) => things.find((thing) => isThing(thing, kind, id));
  const nameOf = (thing: Thing) => find(thing)?.name ?? thing.id;
  const summary = ({ thing, moved }: Grip) => (place: Position) =>
    `${nameOf(thing)} of ${setupTitle} ${DONE[moved][thing.kind][0]} ${placeSaid(place, system)}`;
  const tell = ({ thing, moved }: Grip, place: Position) => say(`${nameOf(thing)} ${DONE[moved][thing.kind][1]} ${placeSaid(place, system)}`);

  const gripAt = (page: Flat, reach_px: number): Grip | undefined => {
    const all = things.flatMap((thing): readonly (Grip & { readonly away: number })[] =>
      (['at', 'aim'] as const)
        .filter((moved) => moved === 'at' || isThing(selected, thing.kind, thing.id))
        .map((moved) => {
          const spot = toPage(viewport, flatten(projection, vecOf(gripPlace(thing, moved))));
          // Where both lie together the thing itself is meant.
          return { thing, moved, away: Math.hypot(spot.x - page.x, spot.y - page.y) + (moved === 'aim' ? 0.5 : 0) };
        }),
    );
    return all.filter(({ away }) => away <= reach_px).sort((a, b) => a.away - b.away)[0];
  };

  const snapped = (place: Position, { start, moved }: Pick<Held, 'start' | 'moved'>, event: { readonly shiftKey: boolean; readonly altKey: boolean; readonly ctrlKey: boolean }) => {
    const way: Snap = event.shiftKey ? 'grid' : event.altKey || event.ctrlKey ? 'round' : snap;
    if (way === 'grid') return snapPlace(place);
    if (way === 'round' && moved === 'at' && projection.looking === 'above') return snapRound(start, place);
    return tidyPlace(place);
  };

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return;
    const page = pagePoint(event, event.currentTarget, viewport);
    const grip = gripAt(page, reachOf(event.pointerType));
    const thing = grip && find(grip.thing);
    if (!grip || !thing) {
      onGround(page);
      return;
    }
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    const { kind, id } = thing;
    held.current = { thing: { kind, id }, moved: grip.moved, pointerId: event.pointerId, from: page, start: gripPlace(thing, grip.moved), hasMoved: false };
    onSelect({ kind, id });
  };

  const onPointerMove = (event: PointerEvent<SVGSVGElement>): boolean => {
    const of = held.current;
    if (!of || of.pointerId !== event.pointerId) return false;
    const page = pagePoint(event, event.currentTarget, viewport);
    if (!of.hasMoved && Math.hypot(page.x - of.from.x, page.y - of.from.y) < 3) return true;
    of.hasMoved = true;
    const by = { x: (page.x - of.from.x) / viewport.perMetre_px, y: (of.from.y - page.y) / viewport.perMetre_px };
    const place = snapped(movedBy(of.start, movement(projection, by)), of, event);
    moves.move({ thing: of.thing, moved: of.moved, place });
    return true;
  };

  const letGo = (event: PointerEvent<SVGSVGElement>, isMeant: boolean) => {
    const of = held.current;
    if (!of || of.pointerId !== event.pointerId) return;
    held.current = undefined;
    if (!of.hasMoved) return;
    if (!isMeant) moves.cancel();
    else {
      if (moves.now) tell(of, moves.now.place);
      moves.finish(summary(of));
    }
  };

  /** True where the key was for a grip. */
  const onKey = (event: KeyboardEvent, grip: Grip): void => {
    const thing = find(grip.thing);
    if (!thing) return;
    if (event.key === 'Escape' && moves.now) {
      event.stopPropagation();
      clearTimeout(rest.current);
      held.current = undefined;
      moves.cancel();
      return;
    }
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onSelect(grip.thing);
      return;
    }
    const place = gripPlace(thing, grip.moved);
    const step = event.shiftKey ? FINE_m : STEP_m;
    const arrow = ARROWS[event.key];
    let next: Position | undefined;
    if (arrow && !event.altKey && !event.ctrlKey && !event.metaKey) {
      const by = movement(projection, { x: arrow.x * step, y: arrow.y * step });
      next = Object.values(by).some((value) => value !== 0) ? movedBy(place, by) : undefined;
    } else if (event.key === 'PageUp' || event.key === 'PageDown')
      next = movedBy(place, { up_m: event.key === 'PageUp' ? step : -step });
    else if ((event.key === '[' || event.key === ']') && grip.moved === 'at')
      next = turnedBy(place, event.key === ']' ? SNAP_deg : -SNAP_deg);
    if (!next) return;
    event.preventDefault();
    const tidy = tidyPlace(next);
    moves.move({ ...grip, place: tidy });
    tell(grip, tidy);
    clearTimeout(rest.current);
    rest.current = setTimeout(() => newestFinish.current(grip), REST_ms);
  };
  const newestFinish = useRef<(grip: Grip) => void>(() => undefined);
  useEffect(() => {
    newestFinish.current = (grip) => moves.finish(summary(grip));
  });

  return {
    gripAt,
    onPointerDown,
    onPointerMove,
    onPointerUp: (event: PointerEvent<SVGSVGElement>) => letGo(event, true),
    onPointerCancel: (event: PointerEvent<SVGSVGElement>) => letGo(event, false),
    onKey,
    /** Leaving a grip sends what its keys moved. */
    onBlurGrip: (grip: Grip) => {
      clearTimeout(rest.current);
      if (!held.current && isThing(moves.now?.thing, grip.thing.kind, grip.thing.id)) moves.finish(summary(grip));
    },
  };
} // prettier-ignore
