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

/** While something is dragged, the page goes along at the edges of the window; what is returned holds where the pointer is. */
export function useEdgeScroll(isDragging: boolean, onScrolled: (y_px: number) => void): RefObject<number | undefined> {
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
      const at_px = y_px.current;
      const speed_px_per_s = at_px === undefined ? 0 : edgeSpeed_px_per_s(at_px, window.innerHeight);
      rest_px = speed_px_per_s === 0 ? 0 : rest_px + speed_px_per_s * passed_s;
      const whole_px = Math.trunc(rest_px);
      if (whole_px !== 0) {
        rest_px -= whole_px;
        const before_px = window.scrollY;
        window.scrollBy({ top: whole_px, behavior: 'instant' });
        if (window.scrollY !== before_px) told.current(at_px!);
      }
      frame = requestAnimationFrame(go);
    });
    return () => {
      cancelAnimationFrame(frame);
      y_px.current = undefined;
    };
  }, [isDragging]);
  return y_px;
}
