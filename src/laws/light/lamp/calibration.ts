/**
 * A lamp as it is on the day: what a meter reads, over what was planned for the same place.
 *
 *     c = E measured / E planned        stops = log2 c
 *
 * The factor then multiplies all that is planned for the lamp in that setting. It takes in the age of the lamp, dirt,
 * voltage, and errors of distance and aim alike, so it holds for the place it was read at and places like it.
 *
 * @source calibration-practice scaling a plan by a reading
 */
import { requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';

export interface Calibration {
  readonly calibrationFactor: number;
  readonly difference_stops: number;
}

/** The factor between a plan and a reading. Throws RangeError unless both are positive. */
export function calibrate({
  plannedIlluminance_lx,
  measuredIlluminance_lx,
}: {
  readonly plannedIlluminance_lx: number;
  readonly measuredIlluminance_lx: number;
}): Calibration {
  requirePositive({ plannedIlluminance_lx, measuredIlluminance_lx });
  const calibrationFactor = measuredIlluminance_lx / plannedIlluminance_lx;
  return { calibrationFactor, difference_stops: Math.log2(calibrationFactor) };
}

export const lampCalibration = law(calibrate, {
  id: 'lamp-calibration',
  title: 'A lamp held against the meter',
  says: 'What to multiply a lamp’s planned light by, after reading it on the day.',
  equation: 'c = E measured / E planned',
  takes: { plannedIlluminance_lx: 'Planned there', measuredIlluminance_lx: 'Read there' },
  gives: { calibrationFactor: { title: 'Factor for this lamp', as: 'ratio' }, difference_stops: 'Difference in stops' },
  holds:
    'One lamp, one setting, the others off, the meter facing it. A stop or more of difference asks for the distance, the aim and the setting to be checked first.',
  sources: ['calibration-practice'],
  cautions: ['intense-light'],
  words: ['meter', 'reading', 'as measured', 'on the day', 'light meter'],
  example: { plannedIlluminance_lx: 40_000, measuredIlluminance_lx: 34_500 },
});
