import { useEffect, useRef, type RefObject } from 'react';

/** Nearer than this to the top or the foot of the window, the page goes along. */
const EDGE_px = 56;
/** At the very edge, and beyond it. */
const FASTEST_px_per_s = 900;

/** How fast the page goes, down where positive, for a pointer so far below the top of a window so high. */
export function edgeSpeed_px_per_s(y_px: number, height_px: number): number {
  // Of a low window no more than a third belongs to each edge.
  const edge_px = Math.min(EDGE_px, height_px / 3);
  const over = Math.max(0, Math.min(1, (y_px - (height_px - edge_px)) / edge_px));
  const under = Math.max(0, Math.min(1, (edge_px - y_px) / edge_px));
  return FASTEST_px_per_s * (over - under);
}

/** How far the page may go, from up (negative) to down, until an end of something is under the pointer. */
function reach_px(element: HTMLElement | null, y_px: number): readonly [up_px: number, down_px: number] {
  if (!element) return [0, 0];
  const { top, bottom } = element.getBoundingClientRect();
  return [Math.min(0, Math.floor(top - y_px)), Math.max(0, Math.ceil(bottom - y_px))];
}

export interface EdgeScroll {
  readonly isDragging: boolean;
  /** What is dragged stays in here: once its end is under the pointer, the page has gone far enough. */
  readonly within: RefObject<HTMLElement | null>;
  readonly onScrolled: (y_px: number) => void;
}

/** While something is dragged, the page goes along at the edges of the window; what is returned is told where the pointer is. */
export function useEdgeScroll({ isDragging, within, onScrolled }: EdgeScroll): RefObject<number | undefined> {
  const y_px = useRef<number>(undefined);
  const told = useRef(onScrolled);
  useEffect(() => {
    told.current = onScrolled;
  });
  useEffect(() => {
    if (!isDragging) return undefined;
    let last_ms = performance.now();
    let rest_px = 0;
    let frame = requestAnimationFrame(function go(now_ms) {
      // After a stall it goes on from where it is, and does not leap.
      const passed_s = Math.min(0.1, Math.max(0, (now_ms - last_ms) / 1000));
      last_ms = now_ms;
      frame = requestAnimationFrame(go);
      const at_px = y_px.current;
      if (at_px === undefined) return;
      const speed_px_per_s = edgeSpeed_px_per_s(at_px, window.innerHeight);
      rest_px = speed_px_per_s === 0 ? 0 : rest_px + speed_px_per_s * passed_s;
      const whole_px = Math.trunc(rest_px);
      rest_px -= whole_px;
      const [up_px, down_px] = reach_px(within.current, at_px);
      const top = Math.max(up_px, Math.min(down_px, whole_px));
      if (top === 0) return;
      window.scrollBy({ top, behavior: 'instant' });
      told.current(at_px);
    });
    return () => {
      cancelAnimationFrame(frame);
      y_px.current = undefined;
    };
  }, [isDragging, within]);
  return y_px;
}
