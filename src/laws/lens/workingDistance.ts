/**
 * Room between the lens and the subject: what is left of the distance once the camera and the lens have taken theirs.
 *
 *     A = D − L − x
 *
 * A front of the lens to subject, m      D sensor to subject, m
 * L sensor to front of the lens at this focus, without tubes, m      x length of tubes behind and of hoods or glass in front, m
 *
 * Negative where the subject would have to stand inside the lens.
 *
 * @source field-angle-note names the distances between sensor, tube, lens and subject
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/**
 * Front of the lens to subject; negative where there is no room, for the caller to judge. Throws RangeError unless the
 * distances are positive and the added length is zero or above.
 */
export function workingDistance_m(given: {
  readonly sensorToSubject_m: number;
  readonly frontToSensor_m: number;
  readonly addedLength_m?: number;
}): number {
  const { sensorToSubject_m, frontToSensor_m, addedLength_m = 0 } = given;
  requirePositive({ sensorToSubject_m, frontToSensor_m });
  requireNotNegative({ addedLength_m });
  return sensorToSubject_m - frontToSensor_m - addedLength_m;
}

export const workingDistance = law(workingDistance_m, {
  id: 'working-distance',
  title: 'Room before the lens',
  says: 'How much room is left between the front of the lens and the subject, for lamps, hands and splashes.',
  equation: 'A = D − L − x',
  takes: {
    sensorToSubject_m: 'Sensor to subject',
    frontToSensor_m: { title: 'Front of the lens to the sensor', note: 'at the focus used, without tubes' },
    addedLength_m: {
      title: 'Length added',
      default: 0,
      note: 'tubes behind the lens; hood, filter or splash glass before it',
    },
  },
  gives: { workingDistance_m: 'Front of the lens to subject' },
  holds: 'Along the axis of the lens. Negative means the subject would stand inside the lens.',
  sources: ['field-angle-note'],
  words: ['clearance', 'splash', 'front element', 'probe'],
  example: { sensorToSubject_m: 0.45, frontToSensor_m: 0.14, addedLength_m: 0.036 },
});
