/** Things that fall, in air and into deep liquid. */
import { requirePositive } from '../../base/domain.ts';
import { pinchOffTime_s } from '../fluids/cavity.ts';
import { LIQUIDS } from '../fluids/liquids.ts';
import { dragFallSpeed_m_per_s, dragFallTime_s, fallSpeed_m_per_s, fallTime_s } from '../motion/fall.ts';
import { filmedEvent, said } from './event.ts';

const HEIGHT = { title: 'Height of the fall', default: 0.5 } as const;
const SEEN = {
  title: 'Stretch of the fall in the picture',
  default: 0.1,
  note: 'the last of it; the whole height for all of it',
} as const;

/** Height above the picture's upper edge, which is passed unseen. */
const unseen_m = (fallHeight_m: number, seenHeight_m: number): number => Math.max(0, fallHeight_m - seenHeight_m);

export const fall = filmedEvent({
  id: 'fall',
  title: 'Fall',
  says: 'Something solid drops from rest through the picture.',
  typical: {
    speed_m_per_s: { low: 1, typical: 3.1, high: 6.3 },
    duration_s: { low: 0.01, typical: 0.034, high: 0.7 },
  },
  parameters: { fallHeight_m: HEIGHT, seenHeight_m: SEEN },
  compute: ({ fallHeight_m, seenHeight_m }) => {
    requirePositive({ fallHeight_m, seenHeight_m });
    const before_m = unseen_m(fallHeight_m, seenHeight_m);
    return {
      speed_m_per_s: fallSpeed_m_per_s({ fallHeight_m }),
      duration_s: fallTime_s({ fallHeight_m }) - fallTime_s({ fallHeight_m: before_m }),
      reachHeight_m: fallHeight_m - before_m,
    };
  },
  laws: ['fall-speed', 'fall-time'],
  frameRateReasoning:
    'Crossing a picture 0.1 m high takes about 34 ms: 1000 fps is 34 frames, or a second and a half on screen at 24.',
  frameRate_fps: { low: 500, high: 2000 },
  sources: ['falling-with-drag'],
  cautions: ['splash-and-flying-parts'],
  words: ['drop', 'let go', 'release'],
});

export const fallThroughAir = filmedEvent({
  id: 'fall-through-air',
  title: 'Fall of something small or light',
  says: 'A berry, crumb or drop falls, held back by the air.',
  typical: {
    speed_m_per_s: { low: 0.5, typical: 3, high: 9 },
    duration_s: { low: 0.01, typical: 0.035, high: 0.7 },
  },
  parameters: {
    fallHeight_m: HEIGHT,
    seenHeight_m: SEEN,
    diameter_m: { title: 'Diameter', default: 0.004 },
    density_kg_per_m3: { title: 'Density', default: LIQUIDS.water.density_kg_per_m3 },
  },
  compute: ({ fallHeight_m, seenHeight_m, ...sphere }) => {
    requirePositive({ fallHeight_m, seenHeight_m });
    const before_m = unseen_m(fallHeight_m, seenHeight_m);
    return {
      speed_m_per_s: dragFallSpeed_m_per_s({ fallHeight_m, ...sphere }),
      duration_s: dragFallTime_s({ fallHeight_m, ...sphere }) - dragFallTime_s({ fallHeight_m: before_m, ...sphere }),
      reachHeight_m: fallHeight_m - before_m,
    };
  },
  laws: ['drag-fall-speed', 'drag-fall-time'],
  frameRateReasoning:
    'As any fall; air takes less than two hundredths of the speed of fruit below two metres, and much of that of powder and fine drops.',
  frameRate_fps: { low: 500, high: 2000 },
  sources: ['clift-gauvin', 'falling-with-drag', 'air-20c'],
  cautions: ['splash-and-flying-parts'],
  words: ['berry', 'crumb', 'drop', 'droplet', 'leaf', 'fruit'],
});

/** From contact to the first jet falling back, in times of the pinch-off. @source event-practice */
const TANK_FACTOR = 4;

export const fruitIntoTank = filmedEvent({
  id: 'fruit-into-tank',
  title: 'Fruit into a tank',
  says: 'A fruit plunges into deep liquid, draws a column of air down with it, and jets rise where it closes.',
  typical: {
    speed_m_per_s: { low: 1.4, typical: 2.4, high: 5 },
    duration_s: { low: 0.2, typical: 0.4, high: 1 },
  },
  parameters: {
    fallHeight_m: { title: 'Height above the surface', default: 0.3 },
    fruitDiameter_m: { title: 'Diameter of the fruit', default: 0.05 },
    density_kg_per_m3: { title: 'Density of the fruit', default: 900, note: 'above that of the liquid it sinks on' },
  },
  compute: ({ fallHeight_m, fruitDiameter_m, density_kg_per_m3 }) => {
    requirePositive({ fallHeight_m });
    const pinchOff_s = pinchOffTime_s({ radius_m: fruitDiameter_m / 2 });
    const speed_m_per_s = dragFallSpeed_m_per_s({ fallHeight_m, diameter_m: fruitDiameter_m, density_kg_per_m3 });
    return {
      speed_m_per_s,
      duration_s: TANK_FACTOR * pinchOff_s,
      reachWidth_m: 2 * fruitDiameter_m,
      // Nothing goes deeper by then than it would unslowed.
      reachHeight_m: speed_m_per_s * pinchOff_s + 2 * fruitDiameter_m,
      remark: `The air behind it pinches off ${said('time', pinchOff_s)} after contact, whatever its speed.`,
    };
  },
  laws: ['drag-fall-speed', 'pinch-off-time'],
  frameRateReasoning:
    'Half a second at 1000 fps lasts twenty on screen at 25; more only for the edge of the first splash.',
  frameRate_fps: { low: 500, high: 2000 },
  sources: ['duclaux', 'water-entry', 'clift-gauvin', 'event-practice'],
  cautions: ['splash-and-flying-parts', 'liquids-near-power', 'glass'],
  words: ['berry', 'strawberry', 'lime', 'aquarium', 'plunge', 'splash'],
});
