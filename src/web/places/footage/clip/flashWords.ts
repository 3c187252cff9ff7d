/** Whether a clip may be played unasked, and what is said before it is. */
import { showNumber } from '../../../../base/quantity.ts';
import type { Measurement } from '../../../../measure/types.ts';
import { isFlashing } from '../../../../turnover/measureWords.ts';

/** What to warn of, before a clip plays as fast as the film does or slower; undefined where nothing flashes. */
export function flashWarning({ flicker, frameRate_fps, playback_fps }: Measurement): string | undefined {
  const screen_Hz = (beat_Hz: number) => (beat_Hz / frameRate_fps) * playback_fps;
  const [worst] = flicker.lines
    .filter((line) => isFlashing(line, screen_Hz(line.beat_Hz)))
    .sort((a, b) => b.depthFraction - a.depthFraction);
  if (!worst) return undefined;
  return `This clip flashes ${showNumber(screen_Hz(worst.beat_Hz), 2)} times a second on the screen, by ${showNumber(100 * worst.depthFraction, 2)} %.`;
}

export const FLASHING_HARMS =
  'Flashing light can set off seizures, migraine or sickness in people who are sensitive to it. Look away and press Escape at the first discomfort; do not play it where others cannot choose.';
