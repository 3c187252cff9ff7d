/** Let it last less long on screen: fewer frames a second, longer exposures, less memory. */
import { rational } from '../../base/rational.ts';
import { roundedDown, roundedUp } from '../settable.ts';
import { apart_stops, setKey, setQuantity, type Move, type MoveContext, type Proposal } from './move.ts';
import { memoryTimes } from './triggerRoom.ts';
import { say } from './words.ts';

export const shorterOnScreen: Move = {
  id: 'shorter-on-screen',
  closes: ['frame-rate', 'light', 'buffer', 'trigger-catch', 'screen-time'],
  propose(context) {
    const { margin, lack_stops, effective, number } = context;
    const { shot } = effective;
    if (margin.id === 'light' && number('exposureByBlur_s') < number('exposureByAngle_s')) return [];
    if (margin.id === 'screen-time') return margin.have === undefined ? [] : [screenTime(context, roundedDown(margin.have))];
    const isMemory = margin.id === 'trigger-catch';
    // The memory holds as many frames at any rate: fewer a second fill it for longer.
    const factor = isMemory ? 1 / (memoryTimes(context) ?? NaN) : 2 ** -lack_stops;
    if (shot.rate || Number.isNaN(factor)) return [];
    if (shot.speed.knots.length > 0) return [slowKnots(context, 1 / factor)];
    if (shot.speed.constantFraction !== undefined) {
      const over = Math.floor((1 / shot.speed.constantFraction) * factor);
      return over < 1 ? [] : [{ title: `Play it at 1/${over} of real time`, patch: [setKey(context, 'speed/constant', `1/${over}`)], gives_stops: -Math.log2(factor) }];
    }
    const wanted_s = number('screenTimeWanted_s');
    return wanted_s > 0 ? [screenTime(context, roundedDown(wanted_s * factor))] : [];
  },
}; // prettier-ignore

function screenTime(context: MoveContext, screenTime_s: number): Proposal {
  return {
    title: `Let it last ${say('time', screenTime_s)} on screen`,
    patch: [setQuantity(context, 'screenTime', 'time', screenTime_s)],
    gives_stops: apart_stops(screenTime_s, context.number('screenTimeWanted_s')),
  };
}

/** Every knot slower than the rate allows is brought up to the slowest that can be shown. */
function slowKnots(context: MoveContext, factor: number): Proposal {
  const { knots } = context.effective.shot.speed;
  const slowest = Math.min(...knots.map(({ speedFraction = 1 }) => speedFraction));
  const over = Math.floor(1 / (slowest * factor));
  const limit = over >= 1 ? 1 / over : roundedUp(slowest * factor);
  const written = knots.map(({ screenTime_s = 0, speedFraction = 1 }) => ({
    at: `${screenTime_s} s`,
    speed: speedFraction < limit ? (over >= 1 ? `1/${over}` : limit) : writtenRatio(speedFraction),
  }));
  return {
    title: over >= 1 ? `Slow down to 1/${over} and no further` : `Run it no slower than ${limit} × real time`,
    patch: [setKey(context, 'speed/knots', written)],
    gives_stops: apart_stops(limit, slowest),
  };
}

function writtenRatio(fraction: number): number | string {
  const over = Math.round(1 / fraction);
  return fraction < 1 && Math.abs(1 / over - fraction) < 1e-9 ? `1/${rational(over).num}` : fraction;
}
