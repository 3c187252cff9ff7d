/** Accept more movement blur: a longer exposure, where blur is what shortens it. */
import { roundedUp } from '../settable.ts';
import { apart_stops, setQuantity, type Move } from './move.ts';
import { say } from './words.ts';

export const acceptBlur: Move = {
  id: 'accept-blur',
  closes: ['light', 'noise', 'blur'],
  propose(context) {
    const { margin, lack_stops, number } = context;
    const wanted_px = number('blurWanted_px');
    if (!(wanted_px > 0)) return [];
    const isLimiting = number('exposureByBlur_s') < number('exposureByAngle_s');
    if (margin.id !== 'blur' && !isLimiting) return [];
    const factor = margin.id === 'blur' ? number('blur_px') / wanted_px : 2 ** lack_stops;
    const room = margin.id === 'blur' ? Infinity : number('exposureByAngle_s') / number('exposureByBlur_s');
    const blur_px = roundedUp(wanted_px * Math.min(factor * 1.02, room * 1.02));
    return [
      {
        title: `Accept ${say('pixels', blur_px)} of blur`,
        patch: [setQuantity(context, 'blur', 'pixels', blur_px)],
        gives_stops: apart_stops(blur_px, wanted_px),
      },
    ];
  },
};
