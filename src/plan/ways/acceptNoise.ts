/** Accept a noisier picture: the index may rise, so less light is needed. */
import { midGreySignalToNoise_dB } from '../../laws/exposure/noise.ts';
import { roundedDown, settableIndexAtOrAbove } from '../settable.ts';
import { setQuantity, type Move } from './move.ts';
import { say } from './words.ts';

const DECIBELS_A_STOP = 20 * Math.log10(2);

export const acceptNoise: Move = {
  id: 'accept-noise',
  closes: ['light', 'noise', 'highlights'],
  propose(context) {
    const { margin, lack_stops, settings, number, effective } = context;
    const wanted_dB = number('signalToNoiseWanted_dB');
    if (Number.isNaN(wanted_dB) || (effective.shot.isoSpeed !== undefined && margin.id !== 'noise')) return [];
    let signal_dB = number('signalToNoise_dB');
    if (margin.id !== 'noise') {
      const highest = number('highestIsoSpeed') || Infinity;
      const isoSpeed = Math.min(settableIndexAtOrAbove(settings.isoSpeed * 2 ** lack_stops), highest);
      if (!(isoSpeed > settings.isoSpeed)) return [];
      const pixel = { pixelPitch_m: number('pixelPitch_m'), binningCount: number('binningCount') };
      const sensor = {
        quantumEfficiencyFraction: number('quantumEfficiencyFraction'),
        readNoise_e: number('readNoise_e'),
      };
      signal_dB = midGreySignalToNoise_dB({ isoSpeed, ...pixel, ...sensor });
    }
    const ask_dB = roundedDown(signal_dB, 3);
    if (!(ask_dB < wanted_dB)) return [];
    return [
      {
        title: `Accept ${say('decibels', ask_dB, 3)} of signal over noise`,
        patch: [setQuantity(context, 'signalToNoise', 'decibels', ask_dB)],
        gives_stops: (wanted_dB - ask_dB) / DECIBELS_A_STOP,
      },
    ];
  },
};
