import { useEffect, useRef } from 'react';
import { MOST_PLAY_s } from './patchPlay.ts';
import { paintLevel } from './patchPixels.ts';

export interface PatchPlayerProps {
  /** Relative luminance of each frame. */
  readonly levels: Float64Array;
  readonly play_fps: number;
  readonly onEnd: () => void;
}

/** Smaller than the area that the threshold forgives, a quarter of 341 × 256 CSS pixels. */
const SIDE_px = 128;

/** A patch of light that plays a flicker as fast as the film will; it ends by itself, by Escape, or when out of sight. */
export function PatchPlayer({ levels, play_fps, onEnd }: PatchPlayerProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const end = useRef(onEnd);
  useEffect(() => {
    end.current = onEnd;
  });
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return undefined;
    const image = context.createImageData(SIDE_px, SIDE_px);
    let [asked, shown, start_ms] = [0, -1, NaN];
    const draw = (now_ms: number) => {
      if (Number.isNaN(start_ms)) start_ms = now_ms;
      const time_s = (now_ms - start_ms) / 1000;
      const frame = Math.floor(time_s * play_fps);
      if (time_s >= MOST_PLAY_s || frame >= levels.length) {
        end.current();
        return;
      }
      if (frame !== shown) {
        shown = frame;
        paintLevel(image.data, SIDE_px, levels[frame]!);
        context.putImageData(image, 0, 0);
      }
      asked = requestAnimationFrame(draw);
    };
    asked = requestAnimationFrame(draw);
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      end.current();
    };
    const onHidden = () => document.visibilityState === 'hidden' && end.current();
    window.addEventListener('keydown', onKey, { capture: true });
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      cancelAnimationFrame(asked);
      window.removeEventListener('keydown', onKey, { capture: true });
      document.removeEventListener('visibilitychange', onHidden);
    };
  }, [levels, play_fps]);
  return (
    <canvas
      ref={canvas}
      className="patch-light"
      width={SIDE_px}
      height={SIDE_px}
      role="img"
      aria-label="The flicker as it will play"
    />
  );
}
