/** Change a setting that was fixed to the value that closes the margin. */
import { writeQuantity } from '../../base/quantity.ts';
import { settableExposureAtOrBelow, settableIndexAtOrAbove, settableIndexAtOrBelow, settableStopAtOrAbove, settableStopAtOrBelow } from '../settable.ts'; // prettier-ignore
import { setKey, type Move, type Proposal } from './move.ts';
import { say } from './words.ts';
import { showShutter } from '../../base/quantity.ts';

export const setFixed: Move = {
  id: 'set-fixed',
  closes: ['light', 'depth', 'diffraction', 'blur', 'shutter', 'stop-range', 'index-range', 'noise', 'highlights'],
  propose(context) {
    const { margin, lack_stops, settings, effective, number } = context;
    const { shot } = effective;
    const proposals: Proposal[] = [];
    const fixed = (title: string, key: string, value: string | number) =>
      proposals.push({ title, says: 'changes what was fixed', patch: [setKey(context, key, value)], gives_stops: lack_stops / 2, touchesFixed: true });
    const bound = margin.need;
    if (bound !== undefined && margin.id === 'stop-range') fixed(`Set ${say('tStop', bound)}`, 'stop', writeQuantity('tStop', bound));
    if (bound !== undefined && margin.id === 'index-range') fixed(`Rate it at EI ${bound}`, 'index', bound);
    if (bound !== undefined && margin.needName === 'shortestExposure_s') {
      fixed(`Set the shutter to ${showShutter(bound).number} s`, 'shutter', writeQuantity('time', bound));
      return proposals;
    }
    if (shot.stop !== undefined) {
      const root = Math.SQRT2 ** lack_stops;
      const stop = margin.id === 'light' ? settableStopAtOrBelow(settings.stop / root) : margin.id === 'depth' ? settableStopAtOrAbove(settings.stop * root ** 2 * 1.05) : margin.id === 'diffraction' ? settableStopAtOrBelow(settings.stop / root ** 2) : margin.id === 'highlights' ? settableStopAtOrAbove(settings.stop * root) : NaN;
      const [widest, narrowest] = [number('widestStop'), number('narrowestStop')];
      if (stop >= (widest || 0) * 0.999 && stop <= (narrowest || Infinity) * 1.001) fixed(`Set ${say('tStop', stop)}`, 'stop', writeQuantity('tStop', stop));
    }
    if (shot.isoSpeed !== undefined) {
      const index = margin.id === 'light' || margin.id === 'highlights' ? settableIndexAtOrAbove(settings.isoSpeed * 2 ** lack_stops) : margin.id === 'noise' ? settableIndexAtOrBelow(settings.isoSpeed / 4 ** lack_stops) : NaN;
      if (index >= (number('lowestIsoSpeed') || 0) && index <= (number('highestIsoSpeed') || Infinity)) fixed(`Rate it at EI ${index}`, 'index', index);
    }
    if (shot.shutter !== undefined && (margin.id === 'blur' || margin.id === 'shutter')) {
      const time_s = settableExposureAtOrBelow(settings.exposureTime_s / 2 ** lack_stops);
      fixed(`Set the shutter to ${showShutter(time_s).number} s`, 'shutter', writeQuantity('time', time_s));
    }
    return proposals;
  },
}; // prettier-ignore
