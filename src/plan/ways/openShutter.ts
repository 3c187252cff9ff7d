/** Open the shutter further round, where its angle is what shortens the exposure. */
import { apart_stops, setQuantity, type Move } from './move.ts';

/** Angles are set in steps of this. */
const STEP_deg = 6;

export const openShutter: Move = {
  id: 'open-shutter',
  closes: ['light', 'noise'],
  propose(context) {
    const { lack_stops, number, effective } = context;
    const angle_deg = number('shutterAngle_deg');
    const byBlur_s = number('exposureByBlur_s');
    if (!(angle_deg > 0) || byBlur_s <= number('exposureByAngle_s')) return [];
    const longest_deg = 360 * number('longestExposure_s') * number('captureRate_fps');
    const wanted_deg = Math.ceil((angle_deg * 2 ** lack_stops * 1.02) / STEP_deg) * STEP_deg;
    const open_deg = Math.min(wanted_deg, Math.floor(longest_deg / STEP_deg) * STEP_deg);
    if (open_deg <= angle_deg) return [];
    const isFixed = effective.shot.shutter !== undefined;
    return [
      {
        title: `Open the shutter to ${open_deg}°`,
        says: isFixed ? 'changes the shutter that was fixed' : 'movement trails longer than looks natural',
        patch: [setQuantity(context, 'shutter', 'angle', open_deg)],
        gives_stops: apart_stops(open_deg, angle_deg) / 2,
        touchesFixed: isFixed,
      },
    ];
  },
};
