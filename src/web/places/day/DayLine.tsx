import { useEffect, useRef, useState, type PointerEvent } from 'react';
import { writeClock } from '../../../document/write.ts';
import type { DayBlock, DayPlan, DayShot } from '../../../plan/day/types.ts';
import { sayTime, WORK_NAMES } from '../../../plan/day/words.ts';
import { shotHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import { useEdgeScroll } from '../../parts/edgeScroll.ts';
import { focusMover } from '../../parts/focusMover.ts';
import { Icon } from '../../parts/Icon.tsx';
import { useWidth } from '../../parts/useWidth.ts';
import type { OpenShoot } from '../../state/contract.ts';
import { GoLink } from '../GoLink.tsx';
import { barOf, hoursOf, joined, placeOf, spanOf, type Span } from './dayLayout.ts';
import { movedTo } from './dayEdits.ts';

export interface DayLineProps {
  readonly open: Pick<OpenShoot, 'id' | 'plan' | 'shoot'>;
  readonly day: DayPlan;
  /** The day is of an earlier plan, and is being drawn anew. */
  readonly isUpdating: boolean;
  readonly onGo: (href: string) => void;
  /** The order of the day with one shot moved. */
  readonly onMove: (order: readonly string[], title: string) => void;
}

const percent = (value: number) => `${value.toFixed(3)}%`;

const HALF_LABEL_px = 22;

function Hours({ span, width_px }: { readonly span: Span; readonly width_px: number }) {
  // What would stick out at the edge goes unsaid.
  const isWithin = ({ at }: { readonly at: number }) => (1 - at / 100) * width_px > HALF_LABEL_px;
  const marks = hoursOf(span, Math.max(2, Math.floor(width_px / 62))).filter(isWithin);
  return (
    <div className="day-hours" aria-hidden="true">
      {marks.map(({ at, says }) => (
        <span key={says} style={{ left: percent(at) }}>
          {says}
        </span>
      ))}
    </div>
  );
}

/** What holds for every row: hours, meals, the call and the wrap. */
function Ground({ day, span, width_px }: { readonly day: DayPlan; readonly span: Span; readonly width_px: number }) {
  const meals = joined(day.blocks, 'floor').filter(({ work }) => work === 'meal');
  const late = day.wrap.late_s;
  return (
    <div className="day-ground" aria-hidden="true">
      {hoursOf(span, Math.max(2, Math.floor(width_px / 62))).map(({ at, says }) => (
        <i key={says} className="day-hour" style={{ left: percent(at) }} />
      ))}
      {meals.map(({ from_s, to_s }) => (
        <i key={from_s} className="day-meal" style={{ left: percent(placeOf(from_s, span)), right: percent(100 - placeOf(to_s, span)) }} />
      ))}
      {day.wrapsBy_s !== undefined && <i className={late > day.wrapsBy_s ? 'day-wrap is-short' : 'day-wrap'} style={{ left: percent(placeOf(day.wrapsBy_s, span)) }} />}
    </div>
  );
} // prettier-ignore

function sayShot({ starts, ends, takes, isDone }: DayShot): string {
  if (isDone) return 'done';
  const range = takes.early === takes.late ? String(takes.middle) : `${takes.early} to ${takes.late}`;
  return `${writeClock(starts.middle_s)} to ${writeClock(ends.middle_s)}, nine days in ten by ${writeClock(ends.late_s)}; ${range} ${takes.late === 1 ? 'take' : 'takes'}`;
} // prettier-ignore

function Bar({ shot, span }: { readonly shot: DayShot; readonly span: Span }) {
  const bar = barOf(shot, span);
  if (!bar) return null;
  return (
    <div className="day-track" aria-hidden="true">
      <i className="day-bar" style={{ left: percent(bar.from), width: percent(Math.max(0.2, bar.to - bar.from)) }} />
      <i className="day-whisker" style={{ left: percent(bar.early), width: percent(Math.max(0.2, bar.late - bar.early)) }} />
    </div>
  );
} // prettier-ignore

const LANES = [
  { lane: 'floor', title: 'On the floor' },
  { lane: 'save', title: 'Saving' },
  { lane: 'copy', title: 'Copying' },
] as const;

function Lane({ lane, title, day, span }: { readonly lane: DayBlock['lane']; readonly title: string; readonly day: DayPlan; readonly span: Span }) {
  const blocks = joined(day.blocks, lane);
  if (blocks.length === 0) return null;
  const total_s = blocks.reduce((sum, { from_s, to_s }) => sum + to_s - from_s, 0);
  return (
    <div className="day-row day-lane">
      <span className="day-name">
        {title} <small>{sayTime(total_s)} on a middling day</small>
      </span>
      <div className="day-track" aria-hidden="true">
        {blocks.map((block, i) => (
          <i key={i} className={`day-block ${block.work}`} title={`${block.says}, ${writeClock(block.from_s)}`} style={{ left: percent(placeOf(block.from_s, span)), width: percent(placeOf(block.to_s, span) - placeOf(block.from_s, span)) }} />
        ))}
      </div>
    </div>
  );
} // prettier-ignore

interface Dragging {
  readonly id: string;
  readonly to: number;
}

/** The day from call to wrap: a row a shot, in the order of the day, with how far its end varies. */
export function DayLine({ open, day, isUpdating, onGo, onMove }: DayLineProps) {
  const { shots } = day;
  // A shot stays where it was put while the day is drawn with it there.
  const [put, setPut] = useState<{ readonly order: readonly string[]; readonly on: DayPlan }>();
  const order = isUpdating && put?.on === day ? put.order : day.order;
  const span = spanOf(day);
  const [ground, width_px] = useWidth<HTMLDivElement>();
  const list = useRef<HTMLOListElement>(null);
  const [dragged, setDragged] = useState<Dragging>();
  const [moved, setMoved] = useState<{ readonly id: string; readonly by: number }>();
  // By what it says: each day drawn brings a new list, mostly with the same order.
  const inOrder = order.join('\n');
  useEffect(() => {
    if (moved && list.current) focusMover(list.current, moved.id, moved.by);
  }, [moved, inOrder]);

  const titleOf = (id: string) => shots.find(({ shotId }) => shotId === id)?.title ?? id;
  const move = (id: string, to: number) => {
    const next = movedTo(order, id, to);
    if (next === order) return;
    setPut({ order: next, on: day });
    onMove(next, titleOf(id));
  };
  const shown = dragged ? movedTo(order, dragged.id, dragged.to) : order;

  /** The row under the pointer, counted in the order as it stands. */
  const rowAt = (y: number): number => {
    const rows = [...(list.current?.children ?? [])];
    const found = rows.findIndex((row) => y < row.getBoundingClientRect().bottom);
    return found < 0 ? rows.length - 1 : found;
  };
  const follow = (y: number) => {
    const to = rowAt(y);
    setDragged((was) => (was === undefined || was.to === to ? was : { id: was.id, to }));
  };
  const isDragging = dragged !== undefined;
  const pointerY_px = useEdgeScroll({ isDragging, within: list, onScrolled: follow });
  useEffect(() => {
    if (!isDragging) return;
    const putBack = (event: KeyboardEvent) => event.key === 'Escape' && setDragged(undefined);
    document.addEventListener('keydown', putBack);
    return () => document.removeEventListener('keydown', putBack);
  }, [isDragging]);
  // The list hears the pointer, not the row: a row that is put elsewhere in the page loses hold of it.
  const dragging = {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      const id = (event.target as HTMLElement).dataset.grip;
      if (id === undefined || !event.isPrimary || event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      setDragged({ id, to: order.indexOf(id) });
    },
    onPointerMove: ({ clientY }: PointerEvent<HTMLElement>) => {
      if (!dragged) return;
      pointerY_px.current = clientY;
      follow(clientY);
    },
    onPointerUp: () => {
      if (dragged) move(dragged.id, dragged.to);
      setDragged(undefined);
    },
    onPointerCancel: () => setDragged(undefined),
  };

  return (
    <div className="day-line">
      <div className="day-row day-top">
        <span className="day-name" />
        <div className="day-track" ref={ground}>
          <Hours span={span} width_px={width_px} />
        </div>
        <span className="day-move" />
      </div>
      <div className="day-rows">
        <div className="day-behind">
          <Ground day={day} span={span} width_px={width_px} />
        </div>
        <ol ref={list} aria-label="Shots in the order of the day" className={isDragging ? 'is-dragging' : undefined} {...dragging}>
          {shown.map((id, i) => {
            const shot = shots.find(({ shotId }) => shotId === id);
            if (!shot) return null;
            return (
              <li key={id} className={dragged?.id === id ? 'day-row is-dragged' : 'day-row'}>
                <span className="day-name">
                  <GoLink className="day-title" href={shotHref(open.id, id)} onGo={() => onGo(shotHref(open.id, id))}>
                    {shot.title}
                  </GoLink>
                  <small>{sayShot(shot)}</small>
                </span>
                <Bar shot={shot} span={span} />
                <span className="day-move no-print">
                  <span className="day-grip" title={`Drag ${shot.title} to another place`} aria-hidden="true" data-grip={id} />
                  <Button look="sign" data-move={`${id} -1`} disabled={i === 0} aria-label={`Move ${shot.title} earlier`} onClick={() => { move(id, i - 1); setMoved({ id, by: -1 }); }}>
                    <Icon name="up" />
                  </Button>
                  <Button look="sign" data-move={`${id} 1`} disabled={i === shown.length - 1} aria-label={`Move ${shot.title} later`} onClick={() => { move(id, i + 1); setMoved({ id, by: 1 }); }}>
                    <Icon name="down" />
                  </Button>
                </span>
              </li>
            );
          })}
        </ol>
        <div className="day-lanes">
          {LANES.map((lane) => (
            <Lane key={lane.lane} {...lane} day={day} span={span} />
          ))}
        </div>
      </div>
      <ul className="day-legend" aria-label="What the blocks mean">
        {(['change', 'reset', 'roll', 'review', 'meal'] as const).map((work) => (
          <li key={work}>
            <i className={`day-block ${work}`} aria-hidden="true" />
            {WORK_NAMES[work]}
          </li>
        ))}
        <li>
          <i className="day-block" aria-hidden="true" />
          calls, references, elements and waiting
        </li>
      </ul>
      <p className="hidden-text" role="status">
        {moved ? `${titleOf(moved.id)} is now ${order.indexOf(moved.id) + 1} of ${order.length}` : ''}
      </p>
    </div>
  );
} // prettier-ignore
