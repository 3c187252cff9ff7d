/** Liquids poured, and what fizzes and foams in them. */
import { requirePositive } from '../../base/domain.ts';
import { bubbleRise_m_per_s } from '../fluids/bubble.ts';
import { capillaryTime_s } from '../fluids/capillaryTime.ts';
import { gravityCoiling_rev_per_s, inertialCoiling_rev_per_s } from '../fluids/coiling.ts';
import { filmBurstSpeed_m_per_s } from '../fluids/filmBurst.ts';
import { effluxSpeed_m_per_s, thinnedDiameter_m } from '../fluids/jet.ts';
import { LIQUIDS } from '../fluids/liquids.ts';
import { fallSpeed_m_per_s } from '../motion/fall.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';
import { filmedEvent, said } from './event.ts';

const { water, honey } = LIQUIDS;
const DENSITY = { title: 'Density of the liquid', default: water.density_kg_per_m3 } as const;
const SURFACE_TENSION = { title: 'Surface tension of the liquid', default: water.surfaceTension_N_per_m } as const;

export const pour = filmedEvent({
  id: 'pour',
  title: 'Pour',
  says: 'A thin liquid is poured, its front falls, and a thread runs into glass or bowl.',
  typical: {
    speed_m_per_s: { low: 0.7, typical: 2.6, high: 4.5 },
    duration_s: { low: 1, typical: 2.2, high: 6 },
  },
  parameters: {
    head_m: { title: 'Liquid above the lip or hole', default: 0.05 },
    mouth_m: { title: 'Diameter of the thread at the mouth', default: 0.01 },
    fallHeight_m: { title: 'Fall from the mouth', default: 0.3 },
    pourTime_s: { title: 'How long it runs', default: 2 },
  },
  compute: ({ head_m, mouth_m, fallHeight_m, pourTime_s }) => {
    requirePositive({ head_m, fallHeight_m, pourTime_s });
    const mouth_m_per_s = effluxSpeed_m_per_s({ head_m });
    const landing_m_per_s = Math.sqrt(mouth_m_per_s ** 2 + 2 * STANDARD_GRAVITY_m_per_s2 * fallHeight_m);
    const front_s = (landing_m_per_s - mouth_m_per_s) / STANDARD_GRAVITY_m_per_s2;
    const landing_m = thinnedDiameter_m({ diameter_m: mouth_m, speed_m_per_s: mouth_m_per_s, fallHeight_m });
    return {
      speed_m_per_s: landing_m_per_s,
      duration_s: front_s + pourTime_s,
      reachWidth_m: mouth_m,
      reachHeight_m: fallHeight_m,
      remark: `The front takes ${said('time', front_s)} to land, and the thread has thinned to ${said('length', landing_m)} there.`,
    };
  },
  laws: ['efflux-speed', 'jet-diameter'],
  frameRateReasoning:
    'The front lands in a quarter of a second, which 300 to 1000 fps shows; the thread itself hardly changes, and reads at any rate.',
  frameRate_fps: { low: 300, high: 1000 },
  sources: ['efflux-examples', 'orifice-coefficients', 'faucet-exercise', 'event-practice'],
  cautions: ['liquids-near-power', 'splash-and-flying-parts'],
  words: ['jet', 'stream', 'beer', 'milk', 'coffee', 'juice', 'spout', 'jug'],
});

export const viscousCoiling = filmedEvent({
  id: 'viscous-coiling',
  title: 'Coiling thread',
  says: 'Honey, syrup or sauce falls as a thread and lays itself in coils.',
  typical: {
    speed_m_per_s: { low: 0.02, typical: 0.13, high: 0.6 },
    duration_s: { low: 0.2, typical: 0.5, high: 5 },
  },
  parameters: {
    flow_m3_per_s: { title: 'Flow', default: 1e-7 },
    threadRadius_m: {
      title: 'Radius of the thread',
      default: 0.5e-3,
      note: 'just above the coil; measure it in a still',
    },
    density_kg_per_m3: { title: 'Density of the liquid', default: honey.density_kg_per_m3 },
    viscosity_Pa_s: { title: 'Viscosity of the liquid', default: honey.viscosity_Pa_s },
    turnCount: { title: 'Turns to be seen', default: 10, as: 'count' },
  },
  compute: ({ turnCount, ...thread }) => {
    requirePositive({ turnCount });
    const turns_rev_per_s = Math.min(gravityCoiling_rev_per_s(thread), inertialCoiling_rev_per_s(thread));
    const speed_m_per_s = thread.flow_m3_per_s / (Math.PI * thread.threadRadius_m ** 2);
    const coil_m = speed_m_per_s / (2 * Math.PI * turns_rev_per_s);
    return {
      speed_m_per_s,
      duration_s: turnCount / turns_rev_per_s,
      reachWidth_m: 2 * (coil_m + thread.threadRadius_m),
      remark: `Between half and twice ${said('rotation', turns_rev_per_s)}: count them in a clip.`,
    };
  },
  laws: ['coiling-by-weight', 'coiling-by-inertia'],
  frameRateReasoning: 'Five to twenty turns a second, ten frames or more a turn: 96 to 240 fps.',
  frameRate_fps: { low: 96, high: 240 },
  sources: ['rope-trick', 'ribe-coiling', 'liquid-practice'],
  cautions: [],
  words: ['honey', 'syrup', 'caramel', 'chocolate', 'rope', 'dressing'],
});

export const risingBubble = filmedEvent({
  id: 'bubble-rise',
  title: 'Rising bubble',
  says: 'A bubble of some millimetres wobbles up through liquid.',
  typical: {
    speed_m_per_s: { low: 0.2, typical: 0.24, high: 0.35 },
    duration_s: { low: 0.2, typical: 0.8, high: 3 },
  },
  parameters: {
    bubbleDiameter_m: { title: 'Diameter of the bubble', default: 0.004 },
    riseHeight_m: { title: 'Rise in the picture', default: 0.2 },
    density_kg_per_m3: DENSITY,
    surfaceTension_N_per_m: SURFACE_TENSION,
  },
  compute: ({ bubbleDiameter_m, riseHeight_m, ...liquid }) => {
    requirePositive({ riseHeight_m });
    const speed_m_per_s = bubbleRise_m_per_s({ diameter_m: bubbleDiameter_m, ...liquid });
    return { speed_m_per_s, duration_s: riseHeight_m / speed_m_per_s, reachHeight_m: riseHeight_m };
  },
  laws: ['bubble-rise'],
  frameRateReasoning:
    'A metre takes some four seconds; its wobble, several times a second, is the reason for 120 to 500 fps.',
  frameRate_fps: { low: 120, high: 500 },
  sources: ['mendelson'],
  cautions: [],
  words: ['bubble', 'aquarium', 'wobble'],
});

export const carbonation = filmedEvent({
  id: 'carbonation',
  title: 'Carbonation',
  says: 'Trains of fine bubbles leave the glass and grow as they rise.',
  typical: {
    speed_m_per_s: { low: 0.01, typical: 0.1, high: 0.3 },
    duration_s: { low: 0.03, typical: 1, high: 10 },
  },
  parameters: {
    riseHeight_m: { title: 'Rise in the picture', default: 0.1 },
    riseSpeed_m_per_s: { title: 'Speed of the bubbles', default: 0.1, note: 'slow at the site, faster as they grow' },
    train_Hz: { title: 'Bubbles a second from one site', default: 20, note: 'from less than 1 to almost 30' },
  },
  compute: ({ riseHeight_m, riseSpeed_m_per_s, train_Hz }) => {
    requirePositive({ riseHeight_m, riseSpeed_m_per_s, train_Hz });
    return {
      speed_m_per_s: riseSpeed_m_per_s,
      duration_s: riseHeight_m / riseSpeed_m_per_s,
      reachHeight_m: riseHeight_m,
      remark: `One site sends a bubble every ${said('time', 1 / train_Hz)}, ${said('length', riseSpeed_m_per_s / train_Hz)} apart.`,
    };
  },
  laws: [],
  frameRateReasoning:
    'A glass reads at 120 fps; a single site close up, with bubbles of a few hundredths of a millimetre leaving every 30 ms, needs 500 or more.',
  frameRate_fps: { low: 120, high: 1000 },
  sources: ['champagne-nucleation', 'event-practice'],
  cautions: [],
  words: ['champagne', 'soda', 'fizz', 'effervescence', 'beer', 'tonic'],
});

/** How much faster the jet of a closing bubble is than surface tension's own speed. @source event-practice */
const JET_FOCUS = 10;

export const bubbleBurst = filmedEvent({
  id: 'bubble-burst',
  title: 'Bursting bubble',
  says: 'A bubble at the surface bursts, its pit closes, and a fine jet throws droplets up.',
  typical: {
    speed_m_per_s: { low: 0.5, typical: 2.7, high: 8 },
    duration_s: { low: 0.001, typical: 0.0037, high: 0.015 },
  },
  parameters: {
    bubbleRadius_m: { title: 'Radius of the bubble', default: 0.001 },
    density_kg_per_m3: DENSITY,
    surfaceTension_N_per_m: SURFACE_TENSION,
  },
  compute: ({ bubbleRadius_m, ...liquid }) => {
    const duration_s = capillaryTime_s({ radius_m: bubbleRadius_m, ...liquid });
    return {
      speed_m_per_s: (JET_FOCUS * bubbleRadius_m) / duration_s,
      duration_s,
      reachWidth_m: 4 * bubbleRadius_m,
      reachHeight_m: 10 * bubbleRadius_m,
    };
  },
  laws: ['capillary-time'],
  frameRateReasoning:
    'All of it takes a few milliseconds and the skin far less: 5000 fps for the jet, 20,000 for the skin.',
  frameRate_fps: { low: 5000, high: 20_000 },
  sources: ['capillary-scaling', 'bubble-jets', 'event-practice'],
  cautions: [],
  words: ['pop', 'champagne', 'soup', 'boil', 'fizz'],
});

export const filmBurst = filmedEvent({
  id: 'film-burst',
  title: 'Bursting soap film',
  says: 'A hole opens in a soap film or a soap bubble and runs across it.',
  typical: {
    speed_m_per_s: { low: 2, typical: 7.7, high: 25 },
    duration_s: { low: 0.002, typical: 0.013, high: 0.1 },
  },
  parameters: {
    filmThickness_m: { title: 'Thickness of the film', default: 1e-6, note: 'thinner is faster; 0.1 to 10 µm' },
    filmWidth_m: { title: 'Width of the film', default: 0.1 },
    density_kg_per_m3: DENSITY,
    surfaceTension_N_per_m: { ...SURFACE_TENSION, default: 0.03, note: 'soap solution' },
  },
  compute: ({ filmWidth_m, ...film }) => {
    requirePositive({ filmWidth_m });
    const speed_m_per_s = filmBurstSpeed_m_per_s(film);
    // A hole pricked at one edge has the whole width to go.
    return {
      speed_m_per_s,
      duration_s: filmWidth_m / speed_m_per_s,
      reachWidth_m: filmWidth_m,
      reachHeight_m: filmWidth_m,
    };
  },
  laws: ['film-burst-speed'],
  frameRateReasoning:
    'Ten to fifty milliseconds across a hand’s breadth, with a rim that is finer and faster: 5000 to 20,000 fps.',
  frameRate_fps: { low: 5000, high: 20_000 },
  sources: ['taylor-culick', 'event-practice'],
  cautions: [],
  words: ['soap', 'bubble', 'pop', 'membrane'],
});

export const foam = filmedEvent({
  id: 'foam',
  title: 'Growing foam',
  says: 'A head of foam rises in a glass, or over its rim.',
  typical: {
    speed_m_per_s: { low: 0.05, typical: 0.1, high: 0.5 },
    duration_s: { low: 0.2, typical: 1, high: 10 },
  },
  parameters: {
    riseHeight_m: { title: 'How far it rises', default: 0.1 },
    growth_m_per_s: { title: 'Speed of its surface', default: 0.1 },
  },
  compute: ({ riseHeight_m, growth_m_per_s }) => {
    requirePositive({ riseHeight_m, growth_m_per_s });
    return { speed_m_per_s: growth_m_per_s, duration_s: riseHeight_m / growth_m_per_s, reachHeight_m: riseHeight_m };
  },
  laws: [],
  frameRateReasoning: 'It takes seconds: 120 fps for the glass, 500 for the bubbles at its rim.',
  frameRate_fps: { low: 120, high: 500 },
  sources: ['event-practice'],
  cautions: ['liquids-near-power'],
  words: ['beer', 'head', 'froth', 'milk', 'cappuccino', 'overflow'],
});

export const egg = filmedEvent({
  id: 'egg',
  title: 'Egg',
  says: 'An egg cracks or drops, and its white and yolk run out.',
  typical: {
    speed_m_per_s: { low: 0.5, typical: 2, high: 4 },
    duration_s: { low: 0.05, typical: 0.2, high: 0.5 },
  },
  parameters: {
    fallHeight_m: { title: 'Fall of egg or yolk', default: 0.2 },
    flowTime_s: { title: 'How long it runs', default: 0.2 },
  },
  compute: ({ fallHeight_m, flowTime_s }) => {
    requirePositive({ fallHeight_m, flowTime_s });
    return {
      speed_m_per_s: fallSpeed_m_per_s({ fallHeight_m }),
      duration_s: flowTime_s,
      reachHeight_m: fallHeight_m,
    };
  },
  laws: ['fall-speed'],
  frameRateReasoning:
    'The crack is over in less than a millisecond and is not what is watched; the running out reads at 1000 to 2000 fps.',
  frameRate_fps: { low: 1000, high: 2000 },
  sources: ['falling-with-drag', 'event-practice'],
  cautions: ['splash-and-flying-parts'],
  words: ['yolk', 'shell', 'crack', 'frying pan'],
});
