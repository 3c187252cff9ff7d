/** What rigs do: throw, shoot and move. */
import { requirePositive } from '../../base/domain.ts';
import { arcOf } from '../motion/circle.ts';
import { airLaunchSpeed_m_per_s, springLaunchSpeed_m_per_s, throwReachOf } from '../motion/launcher.ts';
import { moveOf } from '../motion/move.ts';
import { filmedEvent, said, type EventFigures } from './event.ts';

const FLIGHT = { title: 'Flight in the picture', default: 0.3 } as const;
const MASS = { title: 'Mass thrown', default: 0.1, note: 'with the carriage or piston that moves along' } as const;

/** What a thing thrown at a speed asks of a plan. */
function thrown(speed_m_per_s: number, flight_m: number): EventFigures {
  requirePositive({ flight_m });
  const { distance_m } = throwReachOf({ speed_m_per_s });
  return {
    speed_m_per_s,
    duration_s: flight_m / speed_m_per_s,
    reachHeight_m: flight_m,
    remark: `Thrown free it could land ${said('length', distance_m)} away: nobody stands within that and its bounce.`,
  };
}

export const springLaunch = filmedEvent({
  id: 'spring-launch',
  title: 'Spring launcher',
  says: 'A spring throws fruit, ice or pieces through the picture.',
  typical: {
    speed_m_per_s: { low: 2, typical: 4.5, high: 10 },
    duration_s: { low: 0.02, typical: 0.067, high: 0.3 },
  },
  parameters: {
    stiffness_N_per_m: { title: 'Stiffness of the spring', default: 800 },
    compression_m: { title: 'Compression', default: 0.05 },
    mass_kg: MASS,
    efficiencyFraction: { title: 'Share of the work left', default: 1, as: 'fraction' },
    flight_m: FLIGHT,
  },
  compute: ({ flight_m, ...spring }) => thrown(springLaunchSpeed_m_per_s(spring), flight_m),
  laws: ['spring-launch-speed', 'throw-reach'],
  frameRateReasoning: 'Crossing 0.3 m takes well under a tenth of a second: 1000 fps is three seconds at 24.',
  frameRate_fps: { low: 500, high: 2000 },
  sources: ['spring-exercises', 'throw-textbook', 'event-practice'],
  cautions: ['moving-rigs', 'pressure-and-projectiles', 'splash-and-flying-parts'],
  words: ['catapult', 'throw', 'toss', 'rig'],
});

export const airLaunch = filmedEvent({
  id: 'air-launch',
  title: 'Air launcher',
  says: 'Compressed air throws fruit, powder or liquid through the picture.',
  typical: {
    speed_m_per_s: { low: 3, typical: 11, high: 25 },
    duration_s: { low: 0.01, typical: 0.027, high: 0.2 },
  },
  parameters: {
    pressure_Pa: { title: 'Pressure above the air’s', default: 5e5 },
    bore_m: { title: 'Diameter of the bore', default: 0.02 },
    stroke_m: { title: 'Length of the push', default: 0.1 },
    mass_kg: MASS,
    efficiencyFraction: {
      title: 'Share of the work left',
      default: 0.4,
      as: 'fraction',
      note: 'a guess until measured',
    },
    flight_m: FLIGHT,
  },
  compute: ({ flight_m, ...air }) => thrown(airLaunchSpeed_m_per_s(air), flight_m),
  laws: ['air-launch-speed', 'throw-reach'],
  frameRateReasoning: 'Crossing 0.3 m takes some 30 ms: 1000 fps is a second or more at 24, 4000 fps five.',
  frameRate_fps: { low: 1000, high: 4000 },
  sources: ['launch-energy', 'throw-textbook', 'event-practice'],
  cautions: ['pressure-and-projectiles', 'moving-rigs', 'splash-and-flying-parts'],
  words: ['pneumatic', 'cannon', 'throw', 'rig', 'valve'],
});

export const projectile = filmedEvent({
  id: 'projectile',
  title: 'Projectile',
  says: 'A pellet or ball passes through or into something. Only licensed armourers plan and fire it.',
  typical: {
    speed_m_per_s: { low: 50, typical: 90, high: 300 },
    duration_s: { low: 0.001, typical: 0.0033, high: 0.02 },
  },
  parameters: {
    muzzle_m_per_s: { title: 'Speed, as the armourer states it', default: 90 },
    flight_m: FLIGHT,
  },
  compute: ({ muzzle_m_per_s, flight_m }) => {
    requirePositive({ muzzle_m_per_s, flight_m });
    return {
      speed_m_per_s: muzzle_m_per_s,
      duration_s: flight_m / muzzle_m_per_s,
      reachWidth_m: flight_m,
      remark: 'Whether, what and how to shoot is for a licensed armourer; these figures are for the camera alone.',
    };
  },
  laws: [],
  frameRateReasoning: 'At 90 m/s a metre takes 11 ms: 10,000 fps is a frame every 9 mm.',
  frameRate_fps: { low: 10_000, high: 25_000 },
  sources: ['event-practice'],
  cautions: ['pressure-and-projectiles', 'moving-rigs', 'splash-and-flying-parts'],
  words: ['bullet', 'pellet', 'paintball', 'gun', 'ballistic'],
});

const MOVE = {
  topSpeed_m_per_s: { title: 'Top speed of the camera', default: 2 },
  acceleration_m_per_s2: { title: 'Acceleration and braking', default: 10 },
} as const;

export const railTravel = filmedEvent({
  id: 'rail-travel',
  title: 'Rail or robot move',
  says: 'The camera travels along a straight line from rest to rest.',
  typical: {
    speed_m_per_s: { low: 0.2, typical: 2, high: 4 },
    duration_s: { low: 0.2, typical: 0.6, high: 2 },
  },
  parameters: { distance_m: { title: 'Distance', default: 0.8 }, ...MOVE },
  compute: (move) => {
    const { moveTime_s, peakSpeed_m_per_s } = moveOf(move);
    return { speed_m_per_s: peakSpeed_m_per_s, duration_s: moveTime_s };
  },
  laws: ['rail-move'],
  frameRateReasoning:
    'A move that is done in half a second lasts twenty on screen at 1000 fps: robots are fast so that a move is seen at all.',
  frameRate_fps: { low: 240, high: 2000 },
  sources: ['move-profiles', 'event-practice'],
  cautions: ['moving-rigs'],
  words: ['motion control', 'slider', 'dolly', 'robot', 'tracking'],
});

export const arcTravel = filmedEvent({
  id: 'arc-travel',
  title: 'Arc round the subject',
  says: 'The camera swings round the subject on an arc from rest to rest.',
  typical: {
    speed_m_per_s: { low: 0.2, typical: 2, high: 4 },
    duration_s: { low: 0.2, typical: 0.67, high: 2 },
  },
  parameters: {
    radius_m: { title: 'Distance to the subject', default: 0.6 },
    angle_deg: { title: 'Angle turned', default: 90 },
    ...MOVE,
  },
  compute: ({ radius_m, angle_deg, ...limits }) => {
    requirePositive({ angle_deg });
    const { arcLength_m, bulge_m } = arcOf({ radius_m, angle_deg });
    const { moveTime_s, peakSpeed_m_per_s } = moveOf({ distance_m: arcLength_m, ...limits });
    return {
      speed_m_per_s: peakSpeed_m_per_s,
      duration_s: moveTime_s,
      remark: `A straight rail instead would come ${said('length', bulge_m)} nearer in the middle.`,
    };
  },
  laws: ['camera-arc', 'rail-move'],
  frameRateReasoning: 'As a straight move; the background passes faster than the subject and judders first.',
  frameRate_fps: { low: 240, high: 2000 },
  sources: ['arc-exercises', 'move-profiles', 'event-practice'],
  cautions: ['moving-rigs'],
  words: ['orbit', 'robot', 'motion control', 'swing'],
});
