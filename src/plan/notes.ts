/** What no limit says and the crew should know, in a sentence each. */
import { showNumber } from '../base/quantity.ts';

/** Steps wider than this between blended exposures can be seen. */
const SEEN_px = 1;

/** Notes from the numbers of a shot's model; `number` is NaN for what the shot has not. */
export function notesOf(number: (name: string) => number): readonly string[] {
  const blended = number('blendedFrameCount');
  const step_px = number('rampStep_px');
  if (!(blended > 1 && step_px > SEEN_px)) return [];
  return [
    `Where the ramp runs fastest each frame shown blends about ${showNumber(blended, 2)} exposures, ${showNumber(step_px, 2)} px apart: ` +
      'edges may show as steps. A longer shutter brings them together; so does interpolation afterwards.',
  ];
}
