import { useEffect, useRef, type KeyboardEvent, type PointerEvent } from 'react';
import type { Position } from '../../../document/shape.ts';
import { movedBy, SNAP_deg, snapPlace, snapRound, SUBJECT, tidyPlace, turnedBy } from './geometry.ts';
import type { LampDrawn } from './LampMark.tsx';
import { useLight } from './lightContext.ts';
import { placeSaid } from './lightWords.ts';
import type { Moved } from './lightEdits.ts';
import { flatten, movement, type Flat, type Projection } from './projection.ts';
import { vecOf } from '../../../plan/lighting.ts';
import { toPage, type Viewport } from './viewport.ts';

export type Snap = 'free' | 'grid' | 'round';

export interface Grip {
  readonly lampId: string;
  readonly moved: Moved;
}

/** How near a finger or a mouse must come, in pixels: a finger's target is 44 across. */
const REACH_px = { touch: 24, pen: 18, mouse: 15 } as const;

const reachOf = (type: string): number => REACH_px[type as keyof typeof REACH_px] ?? REACH_px.mouse;

/** A key held down repeats; once it rests, where the lamp is now is sent. */
const REST_ms = 700;

const STEP_m = 0.05;
const FINE_m = 0.01;

export const gripPlace = (lamp: LampDrawn, moved: Moved): Position =>
  moved === 'at' ? lamp.at : (lamp.aim ?? SUBJECT);

interface Held extends Grip {
  readonly pointerId: number;
  readonly from: Flat;
  readonly start: Position;
  hasMoved: boolean;
}

export interface GripsAsk {
  readonly lamps: readonly LampDrawn[];
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

/** Lamps and their aims moved by mouse, finger and keyboard. */
export function useGrips({ lamps, viewport, projection, snap, onGround }: GripsAsk) {
  const { moves, onSelect, selected, say, system, title: setupTitle, setup } = useLight();
  const held = useRef<Held>(undefined);
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(rest.current), []);

  const nameOf = (lampId: string) => {
    const at = lamps.findIndex(({ id }) => id === lampId);
    return `${setup.lamps[lampId]?.title ?? `Lamp ${(lamps[at]?.number ?? 0).toString()}`}`;
  };
  const summary = ({ lampId, moved }: Grip) => (place: Position) =>
    `${nameOf(lampId)} of ${setupTitle} ${moved === 'at' ? 'moved to' : 'aimed'} ${placeSaid(place, system)}`;
  const tell = (grip: Grip, place: Position) => say(`${nameOf(grip.lampId)} ${grip.moved === 'at' ? 'stands' : 'is aimed'} ${placeSaid(place, system)}`);

  const gripAt = (page: Flat, reach_px: number): Grip | undefined => {
    const all = lamps.flatMap((lamp): readonly (Grip & { readonly away: number })[] =>
      (['at', 'aim'] as const)
        .filter((moved) => moved === 'at' || lamp.id === selected)
        .map((moved) => {
          const spot = toPage(viewport, flatten(projection, vecOf(gripPlace(lamp, moved))));
          // Where both lie together the lamp itself is meant.
          return { lampId: lamp.id, moved, away: Math.hypot(spot.x - page.x, spot.y - page.y) + (moved === 'aim' ? 0.5 : 0) };
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
    const lamp = grip && lamps.find(({ id }) => id === grip.lampId);
    if (!grip || !lamp) {
      onGround(page);
      return;
    }
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { ...grip, pointerId: event.pointerId, from: page, start: gripPlace(lamp, grip.moved), hasMoved: false };
    onSelect(grip.lampId);
  };

  const onPointerMove = (event: PointerEvent<SVGSVGElement>): boolean => {
    const of = held.current;
    if (!of || of.pointerId !== event.pointerId) return false;
    const page = pagePoint(event, event.currentTarget, viewport);
    if (!of.hasMoved && Math.hypot(page.x - of.from.x, page.y - of.from.y) < 3) return true;
    of.hasMoved = true;
    const by = { x: (page.x - of.from.x) / viewport.perMetre_px, y: (of.from.y - page.y) / viewport.perMetre_px };
    const place = snapped(movedBy(of.start, movement(projection, by)), of, event);
    moves.move({ lampId: of.lampId, moved: of.moved, place });
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
    const lamp = lamps.find(({ id }) => id === grip.lampId);
    if (!lamp) return;
    if (event.key === 'Escape' && moves.now) {
      event.stopPropagation();
      clearTimeout(rest.current);
      held.current = undefined;
      moves.cancel();
      return;
    }
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onSelect(grip.lampId);
      return;
    }
    const place = gripPlace(lamp, grip.moved);
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
      if (!held.current && moves.now?.lampId === grip.lampId) moves.finish(summary(grip));
    },
  };
} // prettier-ignore
