/** What no limit says and the crew should know, in a sentence each. */
import { showNumber } from '../base/quantity.ts';

/** Steps wider than this between blended exposures can be seen. */
const SEEN_px = 1;

/** Share of the picture's width a subject may cross in a frame shown: one width in seven seconds at 24 frames a second. */
const STROBE_SHARE = 1 / 168;

/** A shutter open for less of the frame than this leaves gaps where movement is wide. */
const CHOPPY_deg = 90;

/** Notes from the numbers of a shot's model; `number` is NaN for what the shot has not. */
export function notesOf(number: (name: string) => number): readonly string[] {
  return [...rampNotes(number), ...strobeNotes(number)];
}

function rampNotes(number: (name: string) => number): readonly string[] {
  const blended = number('blendedFrameCount');
  const step_px = number('rampStep_px');
  if (!(blended > 1 && step_px > SEEN_px)) return [];
  return [
    `Where the ramp runs fastest each frame shown blends about ${showNumber(blended, 2)} exposures, ${showNumber(step_px, 2)} px apart: ` +
      'edges may show as steps. A longer shutter brings them together; so does interpolation afterwards.',
  ];
}

/** @source pan-rule */
function strobeNotes(number: (name: string) => number): readonly string[] {
  const step_px = number('frameStep_px');
  const angle_deg = number('shutterAngle_deg');
  if (!(step_px > STROBE_SHARE * number('deliveredWidth0_px') && angle_deg < CHOPPY_deg)) return [];
  return [
    `The fastest part moves ${showNumber(step_px, 2)} px from frame to frame, with the shutter open for ${showNumber(angle_deg, 2)}°: ` +
      'it may look choppy. More frames a second bring the steps together; more blur fills them.',
  ];
}
