import { useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import type { CueTiming, ShotTiming } from '../../../plan/timing/types.ts';
import { sayOffset, sayPart, sayShare } from '../../../turnover/sheets/cueSheet.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { laneOf, placeOf, postAfterDrag, spanOf, ticksOf, type Reach, type Span } from './timeLayout.ts';

export interface TimeStripProps {
  readonly timing: ShotTiming;
  readonly reach: Reach;
  /** When a cue arrives after the meeting, as written. */
  readonly arrivalOf: (cueId: string) => number;
  readonly onMeets: (cueId: string, arrival_s: number, isDone: boolean) => void;
  readonly onPost: (postTriggerFraction: number, isDone: boolean) => void;
  readonly onCancel: () => void;
}

const percent = (value: number) => `${value.toFixed(3)}%`;
const between = (from: number, to: number) => ({ left: percent(from), width: percent(Math.max(0, to - from)) });

const HALF_LABEL_px = 26;

/** Half of what is seen of a grip, which stays within the strip. */
const HALF_px = 6;

interface GripProps {
  readonly label: string;
  readonly says: string;
  readonly at: number;
  readonly value: number;
  /** Seconds across the whole strip. */
  readonly span: Span;
  readonly width_px: number;
  /** What a press of an arrow key adds to the value. */
  readonly step: number;
  readonly bounds: readonly [least: number, most: number];
  /** The value after a drag by so many seconds. */
  readonly after: (dragged_s: number) => number;
  readonly onMove: (value: number, isDone: boolean) => void;
  readonly onCancel: () => void;
}

/** A thing on the strip that is moved by mouse, finger or arrow keys; Escape puts it back. */
function Grip({ label, says, at, value, span, width_px, step, bounds, after, onMove, onCancel }: GripProps) {
  const dragged = useRef<{ readonly x: number; readonly value: number; moved: number }>(undefined);
  // Keys held down are one edit, made when they are let go.
  const pressed = useRef<number>(undefined);
  const perPixel_s = (span.to_s - span.from_s) / Math.max(1, width_px);
  const [least, most] = bounds;
  const putBack = () => {
    dragged.current = pressed.current = undefined;
    onCancel();
  };
  const keep = () => {
    const moved = pressed.current;
    pressed.current = undefined;
    if (moved !== undefined) onMove(moved, true);
  };
  const keys = (event: KeyboardEvent) => {
    if (event.key === 'Escape') return putBack();
    const way = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageUp: 10, PageDown: -10 }[event.key];
    if (way === undefined || dragged.current) return undefined;
    event.preventDefault();
    const moved = (pressed.current ?? value) + way * step * (event.shiftKey ? 10 : 1);
    pressed.current = Math.min(most, Math.max(least, moved));
    return onMove(pressed.current, false);
  };
  return (
    <span
      role="slider"
      tabIndex={0}
      className="time-grip no-print"
      style={{ left: `clamp(${HALF_px}px, ${percent(at)}, 100% - ${HALF_px}px)` }}
      aria-label={label}
      aria-valuemin={least}
      aria-valuemax={most}
      aria-valuenow={value}
      aria-valuetext={says}
      onKeyDown={keys}
      onKeyUp={keep}
      onBlur={keep}
      onPointerDown={(event: PointerEvent<HTMLElement>) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        dragged.current = { x: event.clientX, value, moved: value };
      }}
      onPointerMove={(event) => {
        const start = dragged.current;
        if (!start) return;
        start.moved = after((event.clientX - start.x) * perPixel_s);
        onMove(start.moved, false);
      }}
      onPointerUp={() => {
        const start = dragged.current;
        dragged.current = undefined;
        if (start && start.moved !== start.value) onMove(start.moved, true);
        else if (start) onCancel();
      }}
      onPointerCancel={putBack}
    />
  );
}

const LEAST_STEP_s = 1e-4;

function CueLaneView({ cue, span, width_px, arrival_s, onMeets, onCancel }: { readonly cue: CueTiming; readonly span: Span; readonly width_px: number; readonly arrival_s: number } & Pick<TimeStripProps, 'onMeets' | 'onCancel'>) {
  const lane = laneOf(cue, span);
  // A drag counts from where the cue arrived when it began, not from where the draft has put it.
  const start = useRef(arrival_s);
  const isMoving = useRef(false);
  if (!isMoving.current) start.current = arrival_s;
  return (
    <div className="time-lane">
      <span className="time-name">
        {cue.title}
        <small>{cue.rigTitle}</small>
      </span>
      <div className="time-track">
        {lane ? (
          <>
            <i className="time-latency" style={between(lane.fire, lane.moves)} />
            <i className="time-travel" style={between(lane.moves, lane.arrives)} />
            <i className="time-settle" style={between(lane.arrives, lane.rests)} />
            <i className="time-spread" style={between(lane.low, lane.high)} />
            <i className="time-signal" style={{ left: percent(lane.fire) }} />
            <Grip
              label={`${cue.title} arrives, after the meeting`}
              says={`${sayOffset(arrival_s)} after the meeting; signal at ${sayOffset(cue.fire_s!)}`}
              at={lane.arrives}
              value={arrival_s}
              span={span}
              width_px={width_px}
              step={LEAST_STEP_s}
              bounds={[-3600, 3600]}
              after={(dragged_s) => start.current + dragged_s}
              onMove={(value, isDone) => {
                isMoving.current = !isDone;
                onMeets(cue.id, value, isDone);
              }}
              onCancel={() => {
                isMoving.current = false;
                onCancel();
              }}
            />
          </>
        ) : (
          <span className="time-lacks">{cue.missing.map(({ title }) => title).join('; ') || 'its time is not known'}</span>
        )}
      </div>
    </div>
  );
} // prettier-ignore

function ActionLane({ timing, span }: { readonly timing: ShotTiming; readonly span: Span }) {
  const { action_s, handle_s } = timing;
  return (
    <div className="time-lane">
      <span className="time-name">
        The action <small>with its handles</small>
      </span>
      <div className="time-track">
        <i className="time-handle" style={between(placeOf(-handle_s, span), placeOf(action_s + handle_s, span))} />
        <i className="time-action" style={between(placeOf(0, span), placeOf(action_s, span))} />
      </div>
    </div>
  );
}

function MemoryLane({ timing, span, width_px, onPost, onCancel }: { readonly timing: ShotTiming; readonly span: Span; readonly width_px: number } & Pick<TimeStripProps, 'onPost' | 'onCancel'>) {
  const { trigger, memory } = timing;
  const start = useRef(0);
  const [isMoving, setMoving] = useState(false);
  if (!trigger || !memory) return null;
  const { set, keepsFrom_s, keepsTo_s, comes_s, comesLow_s, comesHigh_s } = trigger;
  if (!isMoving) start.current = set.postTriggerFraction;
  const [from, to] = [placeOf(keepsFrom_s, span), placeOf(keepsTo_s, span)];
  const runsOff = `${keepsFrom_s < span.from_s ? ' from-before' : ''}${keepsTo_s > span.to_s ? ' to-after' : ''}`;
  return (
    <div className="time-lane">
      <span className="time-name">
        Memory keeps <small>{sayPart(set.postTriggerFraction)} after the trigger</small>
      </span>
      <div className="time-track">
        <i className={`time-kept${runsOff}`} style={between(from, to)} />
        <i className="time-spread is-trigger" style={between(placeOf(comesLow_s, span), placeOf(comesHigh_s, span))} />
        <i className="time-trigger" style={{ left: percent(placeOf(comes_s, span)) }} />
        <Grip
          label="Share of the memory kept after the trigger"
          says={`${sayPart(set.postTriggerFraction)}; whole action kept ${sayShare(set.caughtFraction)}`}
          at={to}
          value={Math.round(set.postTriggerFraction * 100)}
          span={span}
          width_px={width_px}
          step={1}
          bounds={[0, 100]}
          after={(dragged_s) => 100 * postAfterDrag(start.current, dragged_s, memory.recordTime_s)}
          onMove={(value, isDone) => {
            setMoving(!isDone);
            onPost(value / 100, isDone);
          }}
          onCancel={() => {
            setMoving(false);
            onCancel();
          }}
        />
      </div>
    </div>
  );
} // prettier-ignore

/** The shot on one strip: real time above, screen time below, and between them what fires, flies, meets and is kept. */
export function TimeStrip({ timing, reach, arrivalOf, onMeets, onPost, onCancel }: TimeStripProps) {
  const [track, width_px] = useWidth<HTMLDivElement>();
  const [held, setHeld] = useState<Span>();
  const span = held ?? spanOf(timing, reach);
  const { cues, meeting } = timing;
  // A label that would stick out at the edge goes unsaid, with its line.
  const ticks = ticksOf(timing, span, Math.floor(width_px / 70)).filter(({ at }) => (1 - at / 100) * width_px > HALF_LABEL_px);
  // The rulers hold still while something is moved along them.
  const hold = (isDone: boolean) => setHeld(isDone ? undefined : (was) => was ?? span);
  const cancel = () => {
    setHeld(undefined);
    onCancel();
  };
  const half_s = (meeting?.tolerance_s ?? 0) / 2;
  return (
    <div className="time-strip">
      <div className="time-lane time-ruler is-real">
        <span className="time-name">On the set</span>
        <div className="time-track" ref={track} aria-hidden="true">
          {ticks.map(({ at, real }) => (
            <span key={real} style={{ left: percent(at) }}>
              {real}
            </span>
          ))}
        </div>
      </div>
      <div className="time-lanes">
        <div className="time-behind" aria-hidden="true">
          <div className="time-ground">
            {ticks.map(({ at, real }) => (
              <i key={real} className="time-tick" style={{ left: percent(at) }} />
            ))}
            {meeting && <i className="time-meeting" style={between(placeOf(meeting.at_s - half_s, span), placeOf(meeting.at_s + half_s, span))} />}
          </div>
        </div>
        {cues.map((cue) => (
          <CueLaneView
            key={cue.id}
            cue={cue}
            span={span}
            width_px={width_px}
            arrival_s={arrivalOf(cue.id)}
            onMeets={(id, arrival_s, isDone) => {
              hold(isDone);
              onMeets(id, arrival_s, isDone);
            }}
            onCancel={cancel}
          />
        ))}
        <ActionLane timing={timing} span={span} />
        <MemoryLane
          timing={timing}
          span={span}
          width_px={width_px}
          onPost={(post, isDone) => {
            hold(isDone);
            onPost(post, isDone);
          }}
          onCancel={cancel}
        />
      </div>
      <div className="time-lane time-ruler is-screen">
        <span className="time-name">On screen</span>
        <div className="time-track" aria-hidden="true">
          {ticks.map(({ at, real, screen }) => (
            <span key={real} style={{ left: percent(at) }}>
              {screen}
            </span>
          ))}
        </div>
      </div>
    </div>
  );
} // prettier-ignore
