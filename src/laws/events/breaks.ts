/** Things that break, pop and burst. */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { relaxationTime_s, stoppingDistance_m } from '../fluids/powder.ts';
import { fallSpeed_m_per_s, fallTime_s } from '../motion/fall.ts';
import { filmedEvent, said } from './event.ts';

export const balloonBurst = filmedEvent({
  id: 'balloon-burst',
  title: 'Bursting balloon',
  says: 'A pricked balloon tears open; the rubber is gone before its shape is.',
  typical: {
    speed_m_per_s: { low: 100, typical: 500, high: 600 },
    duration_s: { low: 0.0003, typical: 0.0008, high: 0.003 },
  },
  parameters: {
    balloonDiameter_m: { title: 'Diameter of the balloon', default: 0.25 },
    tear_m_per_s: { title: 'Speed of the tear', default: 500, note: 'hundreds of metres a second where it is tight' },
  },
  compute: ({ balloonDiameter_m, tear_m_per_s }) => {
    requirePositive({ balloonDiameter_m, tear_m_per_s });
    return {
      speed_m_per_s: tear_m_per_s,
      duration_s: ((Math.PI / 2) * balloonDiameter_m) / tear_m_per_s,
      reachWidth_m: 2 * balloonDiameter_m,
      reachHeight_m: 2 * balloonDiameter_m,
      reachTowardsLens_m: balloonDiameter_m,
    };
  },
  laws: [],
  frameRateReasoning:
    'Less than a millisecond: 10,000 fps gives some eight frames of the tear, 30,000 shows whether one tear or many. What the balloon held is worth more film than the rubber.',
  frameRate_fps: { low: 10_000, high: 30_000 },
  sources: ['balloon-study', 'event-practice'],
  cautions: ['pressure-and-projectiles', 'splash-and-flying-parts'],
  words: ['rubber', 'pop', 'latex', 'prick'],
});

export const waterBalloon = filmedEvent({
  id: 'water-balloon',
  title: 'Water balloon',
  says: 'The skin snaps away and the water keeps its shape for a moment before it falls.',
  typical: {
    speed_m_per_s: { low: 0.5, typical: 2, high: 50 },
    duration_s: { low: 0.01, typical: 0.015, high: 0.05 },
  },
  parameters: {
    balloonDiameter_m: { title: 'Diameter of the balloon', default: 0.1 },
    shapeTime_s: { title: 'How long the water keeps its shape', default: 0.015 },
    surface_m_per_s: {
      title: 'Speed of the water’s surface',
      default: 2,
      note: 'the skin before it is ten times faster',
    },
  },
  compute: ({ balloonDiameter_m, shapeTime_s, surface_m_per_s }) => {
    requirePositive({ balloonDiameter_m, shapeTime_s, surface_m_per_s });
    return {
      speed_m_per_s: surface_m_per_s,
      duration_s: shapeTime_s,
      reachWidth_m: 2 * balloonDiameter_m,
      reachHeight_m: 2 * balloonDiameter_m,
      reachTowardsLens_m: balloonDiameter_m,
    };
  },
  laws: [],
  frameRateReasoning:
    'Ten to twenty milliseconds of standing water: 2000 fps gives thirty frames of it, and the skin one or two.',
  frameRate_fps: { low: 2000, high: 10_000 },
  sources: ['event-practice'],
  cautions: ['liquids-near-power', 'splash-and-flying-parts'],
  words: ['rubber', 'pop', 'burst'],
});

export const glassCrack = filmedEvent({
  id: 'glass-crack',
  title: 'Crack running through glass',
  says: 'The crack itself, from one end of the glass to the other, before anything moves.',
  typical: {
    speed_m_per_s: { low: 700, typical: 1458, high: 1900 },
    duration_s: { low: 2e-5, typical: 7e-5, high: 5e-4 },
  },
  parameters: {
    crackLength_m: { title: 'Way the crack runs', default: 0.1 },
    crack_m_per_s: { title: 'Speed of the crack', default: 1458, note: 'measured in tempered glass' },
  },
  compute: ({ crackLength_m, crack_m_per_s }) => {
    requirePositive({ crackLength_m, crack_m_per_s });
    return { speed_m_per_s: crack_m_per_s, duration_s: crackLength_m / crack_m_per_s, reachWidth_m: crackLength_m };
  },
  laws: [],
  frameRateReasoning:
    'Twenty frames across 0.1 m would take about 290,000 fps: out of reach of full pictures and of their light. Plan the shards instead.',
  frameRate_fps: { low: 80_000, high: 500_000 },
  sources: ['glass-crack-film'],
  cautions: ['glass', 'splash-and-flying-parts'],
  words: ['break', 'shatter', 'pane', 'bottle'],
});

export const glassShards = filmedEvent({
  id: 'glass-shards',
  title: 'Flying shards',
  says: 'Broken glass, china or ice parts and its pieces fly.',
  typical: {
    speed_m_per_s: { low: 1, typical: 3, high: 5 },
    duration_s: { low: 0.03, typical: 0.1, high: 0.5 },
  },
  parameters: {
    shard_m_per_s: { title: 'Speed of the pieces', default: 3 },
    flight_m: { title: 'Flight in the picture', default: 0.3 },
    dropHeight_m: { title: 'Height above the floor', default: 0.9 },
  },
  compute: ({ shard_m_per_s, flight_m, dropHeight_m }) => {
    requirePositive({ shard_m_per_s, flight_m });
    const landing_m = shard_m_per_s * fallTime_s({ fallHeight_m: dropHeight_m });
    return {
      speed_m_per_s: shard_m_per_s,
      duration_s: flight_m / shard_m_per_s,
      reachWidth_m: 2 * flight_m,
      reachHeight_m: 2 * flight_m,
      reachTowardsLens_m: landing_m,
      remark: `Pieces that leave level land up to ${said('length', landing_m)} away, before they bounce.`,
    };
  },
  laws: ['fall-time'],
  frameRateReasoning: 'Pieces at a few metres a second turn and part visibly at 1000 to 2000 fps.',
  frameRate_fps: { low: 1000, high: 2000 },
  sources: ['event-practice', 'falling-with-drag'],
  cautions: ['glass', 'splash-and-flying-parts', 'moving-rigs'],
  words: ['break', 'shatter', 'bottle', 'plate', 'ice', 'smash'],
});

export const popcorn = filmedEvent({
  id: 'popcorn',
  title: 'Popcorn',
  says: 'A kernel bursts and jumps.',
  typical: {
    speed_m_per_s: { low: 0.5, typical: 1.4, high: 3 },
    duration_s: { low: 0.02, typical: 0.03, high: 0.2 },
  },
  parameters: {
    jumpHeight_m: { title: 'Height of the jump', default: 0.1 },
    burstTime_s: { title: 'How long the burst takes', default: 0.03 },
  },
  compute: ({ jumpHeight_m, burstTime_s }) => {
    requirePositive({ jumpHeight_m, burstTime_s });
    return {
      speed_m_per_s: fallSpeed_m_per_s({ fallHeight_m: jumpHeight_m }),
      duration_s: burstTime_s,
      reachWidth_m: jumpHeight_m,
      reachHeight_m: jumpHeight_m,
      reachTowardsLens_m: 2 * jumpHeight_m,
      remark: 'Which kernel goes next cannot be told: keep a long buffer and trigger after the burst.',
    };
  },
  laws: ['fall-speed'],
  frameRateReasoning: 'The burst takes hundredths of a second; the study that timed it filmed at 2900 fps.',
  frameRate_fps: { low: 2000, high: 5000 },
  sources: ['popcorn-study', 'event-practice'],
  cautions: ['heat', 'flames', 'splash-and-flying-parts'],
  words: ['corn', 'kernel', 'pop', 'pan', 'oil'],
});

export const powderBurst = filmedEvent({
  id: 'powder-burst',
  title: 'Burst of powder',
  says: 'Flour, cocoa or spice is thrown, dropped or struck, and hangs as a cloud.',
  typical: {
    speed_m_per_s: { low: 1, typical: 5, high: 15 },
    duration_s: { low: 0.3, typical: 0.5, high: 1 },
  },
  parameters: {
    throw_m_per_s: { title: 'Speed of the throw', default: 5 },
    cloudTime_s: { title: 'How long it is watched', default: 0.5 },
    cloudWidth_m: {
      title: 'Width of the cloud',
      default: 0.4,
      note: 'a cloud carries air along, far beyond one grain',
    },
    grainDiameter_m: { title: 'Diameter of a grain', default: 50e-6 },
    grainDensity_kg_per_m3: { title: 'Density of a grain', default: 1500 },
  },
  compute: ({ throw_m_per_s, cloudTime_s, cloudWidth_m, grainDiameter_m, grainDensity_kg_per_m3 }) => {
    requirePositive({ cloudTime_s, cloudWidth_m });
    const grain = { diameter_m: grainDiameter_m, density_kg_per_m3: grainDensity_kg_per_m3 };
    const following_s = relaxationTime_s(grain);
    const alone_m = stoppingDistance_m({ ...grain, speed_m_per_s: throw_m_per_s });
    return {
      speed_m_per_s: throw_m_per_s,
      duration_s: cloudTime_s,
      reachWidth_m: cloudWidth_m,
      reachHeight_m: cloudWidth_m,
      reachTowardsLens_m: cloudWidth_m / 2,
      remark: `A grain alone moves with the air after ${said('time', following_s)} and stops within ${said('length', alone_m)}.`,
    };
  },
  laws: ['relaxation-time', 'stopping-distance'],
  frameRateReasoning: 'Fast only in its first hundredths of a second: 1000 fps for the throw, less for the cloud.',
  frameRate_fps: { low: 500, high: 2000 },
  sources: ['relaxation-time', 'stopping-formula', 'dust-flames', 'event-practice'],
  cautions: ['powders-and-dust', 'splash-and-flying-parts'],
  words: ['flour', 'cocoa', 'spice', 'sugar', 'dust', 'cloud'],
});

/** Corks were measured from 4 to 18 °C. @source cork-speed */
const COLD = { temperature_degC: 4, speed_m_per_s: 40 / 3.6 };
const WARM = { temperature_degC: 18, speed_m_per_s: 55 / 3.6 };

export const cork = filmedEvent({
  id: 'cork',
  title: 'Cork',
  says: 'A cork leaves a bottle of sparkling wine, with a puff of mist behind it.',
  typical: {
    speed_m_per_s: { low: 11, typical: 13.5, high: 28 },
    duration_s: { low: 0.0015, typical: 0.01, high: 0.03 },
  },
  parameters: {
    bottle_degC: { title: 'Temperature of the bottle', default: 12, note: '4 to 18 °C; never shaken' },
    neck_m: { title: 'Cork still in the neck', default: 0.02 },
    flight_m: { title: 'Flight in the picture', default: 0.1 },
  },
  compute: ({ bottle_degC, neck_m, flight_m }) => {
    requireWithin(COLD.temperature_degC, WARM.temperature_degC, { bottle_degC });
    requirePositive({ neck_m, flight_m });
    const share = (bottle_degC - COLD.temperature_degC) / (WARM.temperature_degC - COLD.temperature_degC);
    const speed_m_per_s = COLD.speed_m_per_s + share * (WARM.speed_m_per_s - COLD.speed_m_per_s);
    return {
      speed_m_per_s,
      // Evenly faster in the neck, so at half the speed on average.
      duration_s: (2 * neck_m) / speed_m_per_s + flight_m / speed_m_per_s,
      reachHeight_m: flight_m,
      remark: 'Shaken or warm bottles are faster: 28 m/s is the most their pressure could do.',
    };
  },
  laws: [],
  frameRateReasoning:
    'It is out of the neck in about three milliseconds, and the shocks in the mist last one: 4000 to 10,000 fps.',
  frameRate_fps: { low: 4000, high: 10_000 },
  sources: ['cork-speed', 'event-practice'],
  cautions: ['pressure-and-projectiles', 'glass'],
  words: ['champagne', 'sparkling wine', 'bottle', 'pop', 'stopper'],
});
