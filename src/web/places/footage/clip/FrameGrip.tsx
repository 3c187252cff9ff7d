import { useRef, type KeyboardEvent, type PointerEvent } from 'react';

export interface FrameGripProps {
  readonly label: string;
  readonly says: string;
  readonly className: string;
  readonly frame: number;
  /** In hundredths of the width. */
  readonly at: number;
  readonly first: number;
  readonly last: number;
  /** Frames that a page key moves it by. */
  readonly page: number;
  readonly frameAt: (clientX: number) => number;
  readonly onMove: (frame: number) => void;
  readonly onDone: (frame: number) => void;
  readonly onCancel: () => void;
}

/** Something on the axis that is moved from frame to frame by mouse, finger or keys; Escape puts it back. */
export function FrameGrip({ label, says, className, frame, at, first, last, page, frameAt, onMove, onDone, onCancel }: FrameGripProps) {
  const dragged = useRef<{ readonly by: number; moved: number | undefined }>(undefined);
  // Keys held down are one change, made when they are let go.
  const pressed = useRef<number>(undefined);
  const within = (to: number) => Math.min(last, Math.max(first, to));
  const putBack = () => {
    dragged.current = pressed.current = undefined;
    onCancel();
  };
  const keep = () => {
    const moved = pressed.current;
    pressed.current = undefined;
    if (moved !== undefined) onDone(moved);
  };
  const keys = (event: KeyboardEvent) => {
    if (event.key === 'Escape') {
      if (dragged.current || pressed.current !== undefined) putBack();
      return;
    }
    const many = event.shiftKey ? 10 : 1;
    const now = pressed.current ?? frame;
    const to = { ArrowLeft: now - many, ArrowDown: now - many, ArrowRight: now + many, ArrowUp: now + many, PageUp: now + page, PageDown: now - page, Home: first, End: last }[event.key]; // prettier-ignore
    if (to === undefined || dragged.current) return;
    event.preventDefault();
    pressed.current = within(to);
    onMove(pressed.current);
  };
  return (
    <span
      role="slider"
      tabIndex={0}
      className={`clip-grip no-print ${className}`}
      style={{ left: `${at.toFixed(3)}%` }}
      aria-label={label}
      aria-valuemin={first}
      aria-valuemax={last}
      aria-valuenow={frame}
      aria-valuetext={says}
      hidden={at < -0.01 || at > 100.01}
      onKeyDown={keys}
      onKeyUp={keep}
      onBlur={keep}
      onPointerDown={(event: PointerEvent<HTMLElement>) => {
        if (event.button !== 0) return;
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        // What is seen of it need not lie under the pointer: it is moved by as much as the pointer is.
        dragged.current = { by: frame - frameAt(event.clientX), moved: undefined };
      }}
      onPointerMove={(event) => {
        const drag = dragged.current;
        if (!drag) return;
        const to = within(frameAt(event.clientX) + drag.by);
        if (to === (drag.moved ?? frame)) return;
        drag.moved = to;
        onMove(to);
      }}
      onPointerUp={() => {
        const moved = dragged.current?.moved;
        dragged.current = undefined;
        if (moved !== undefined) onDone(moved);
      }}
      onPointerCancel={putBack}
    />
  );
} // prettier-ignore
