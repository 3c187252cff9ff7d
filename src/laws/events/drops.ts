/** Drops striking dry surfaces, films and deep liquid. */
import { requirePositive } from '../../base/domain.ts';
import { cavityClosingTime_s, cavityRadius_m } from '../fluids/cavity.ts';
import { crownRadius_m } from '../fluids/crown.ts';
import { impactTime_s, spreadDiameter_m } from '../fluids/impact.ts';
import { LIQUIDS } from '../fluids/liquids.ts';
import { drySplashOf, filmSplashOf } from '../fluids/splash.ts';
import { dragFallSpeed_m_per_s } from '../motion/fall.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';
import { filmedEvent, said } from './event.ts';

const { water } = LIQUIDS;

const DROP = {
  dropDiameter_m: { title: 'Diameter of the drop', default: 0.004 },
  fallHeight_m: { title: 'Height of the fall', default: 0.5 },
  density_kg_per_m3: { title: 'Density of the liquid', default: water.density_kg_per_m3 },
  viscosity_Pa_s: { title: 'Viscosity of the liquid', default: water.viscosity_Pa_s },
  surfaceTension_N_per_m: { title: 'Surface tension of the liquid', default: water.surfaceTension_N_per_m },
} as const;

interface FallenDrop {
  readonly dropDiameter_m: number;
  readonly fallHeight_m: number;
  readonly density_kg_per_m3: number;
}

/** The drop as it arrives. */
function arrived({ dropDiameter_m, fallHeight_m, density_kg_per_m3 }: FallenDrop): {
  readonly diameter_m: number;
  readonly speed_m_per_s: number;
} {
  requirePositive({ fallHeight_m });
  const diameter_m = dropDiameter_m;
  return { diameter_m, speed_m_per_s: dragFallSpeed_m_per_s({ fallHeight_m, diameter_m, density_kg_per_m3 }) };
}

/** Spreading in times of the impact. @source splash-times */
const SPREADING = 4;

export const dropImpact = filmedEvent({
  id: 'drop-impact',
  title: 'Drop on a dry surface',
  says: 'A drop strikes a dry surface, spreads to a disc, and may splash from its edge.',
  typical: {
    speed_m_per_s: { low: 1, typical: 3, high: 6 },
    duration_s: { low: 0.002, typical: 0.005, high: 0.02 },
  },
  parameters: DROP,
  compute: ({ viscosity_Pa_s, surfaceTension_N_per_m, ...fallen }) => {
    const drop = arrived(fallen);
    const liquid = { density_kg_per_m3: fallen.density_kg_per_m3, surfaceTension_N_per_m };
    const { splashes } = drySplashOf({ ...drop, ...liquid, viscosity_Pa_s });
    return {
      speed_m_per_s: drop.speed_m_per_s,
      duration_s: SPREADING * impactTime_s(drop),
      reachWidth_m: spreadDiameter_m({ ...drop, ...liquid }),
      reachHeight_m: drop.diameter_m,
      remark: splashes
        ? 'By these figures it splashes: droplets fly beyond the disc.'
        : 'By these figures it spreads without a splash.',
    };
  },
  laws: ['drag-fall-speed', 'impact-time', 'spread-diameter', 'dry-splash'],
  frameRateReasoning:
    'The drop falls by its own diameter in about a millisecond, and the thin edge that runs out first is faster still: 4000 fps shows the disc, 20,000 the edge.',
  frameRate_fps: { low: 4000, high: 20_000 },
  sources: ['clift-gauvin', 'splash-times', 'spread-scaling', 'mundo'],
  cautions: ['splash-and-flying-parts'],
  words: ['droplet', 'splash', 'spread', 'rain', 'sauce'],
});

/** A crown's rise in times of the impact. @source splash-times */
const RISING = 15;

export const crown = filmedEvent({
  id: 'crown',
  title: 'Crown',
  says: 'A drop falls into a thin layer of liquid and throws up a crown that sheds drops from its rim.',
  typical: {
    speed_m_per_s: { low: 1.5, typical: 3, high: 5 },
    duration_s: { low: 0.01, typical: 0.02, high: 0.3 },
  },
  parameters: {
    ...DROP,
    filmDepth_m: { title: 'Depth of the layer', default: 0.002, note: 'from a tenth of the drop to all of it' },
  },
  compute: ({ viscosity_Pa_s, surfaceTension_N_per_m, filmDepth_m, ...fallen }) => {
    const drop = arrived(fallen);
    const rise_s = RISING * impactTime_s(drop);
    const radius_m = crownRadius_m({ ...drop, filmDepth_m, time_s: rise_s });
    const liquid = { density_kg_per_m3: fallen.density_kg_per_m3, viscosity_Pa_s, surfaceTension_N_per_m };
    const { splashes } = filmSplashOf({ ...drop, ...liquid, filmDepth_m });
    return {
      speed_m_per_s: drop.speed_m_per_s,
      duration_s: rise_s,
      reachWidth_m: 2 * radius_m,
      // A crown stands about as high as its foot is wide from the middle.
      reachHeight_m: radius_m,
      remark: splashes
        ? 'By these figures the rim breaks into drops, which fly beyond the crown.'
        : 'By these figures the rim stays whole: fall farther, or use a larger drop, a thinner liquid or a thinner layer.',
    };
  },
  laws: ['drag-fall-speed', 'impact-time', 'crown-radius', 'film-splash'],
  frameRateReasoning:
    'A rise of 15 to 25 ms for six to fifteen seconds on screen asks for 2000 to 5000 fps; its falling back takes ten times as long.',
  frameRate_fps: { low: 2000, high: 5000 },
  sources: ['clift-gauvin', 'splash-times', 'yarin-weiss', 'cossali', 'splash-depth'],
  cautions: ['splash-and-flying-parts'],
  words: ['coronet', 'milk drop', 'splash', 'ripple'],
});

/** How high a jet stands, in radii of the cavity it rises from. @source event-practice */
const JET_HEIGHT = 2;

export const cavityAndJet = filmedEvent({
  id: 'cavity-and-jet',
  title: 'Cavity and jet',
  says: 'A drop falls into deep liquid, opens a bowl in it, and a column rises from the middle as the bowl fills.',
  typical: {
    speed_m_per_s: { low: 1.5, typical: 3, high: 5 },
    duration_s: { low: 0.06, typical: 0.12, high: 0.3 },
  },
  parameters: {
    dropDiameter_m: DROP.dropDiameter_m,
    fallHeight_m: DROP.fallHeight_m,
    density_kg_per_m3: DROP.density_kg_per_m3,
  },
  compute: (fallen) => {
    const drop = arrived(fallen);
    const radius_m = cavityRadius_m(drop);
    const jet_m = JET_HEIGHT * radius_m;
    const filling_s = cavityClosingTime_s({ radius_m });
    return {
      speed_m_per_s: drop.speed_m_per_s,
      duration_s: filling_s + Math.sqrt((2 * jet_m) / STANDARD_GRAVITY_m_per_s2),
      reachWidth_m: 2 * radius_m,
      reachHeight_m: radius_m + jet_m,
      remark: `The bowl has filled after about ${said('time', filling_s)}; then the column rises.`,
    };
  },
  laws: ['drag-fall-speed', 'cavity-radius', 'cavity-closing-time'],
  frameRateReasoning:
    'From contact to the highest column takes a tenth of a second or more: 1000 fps makes it five seconds at 24, 2000 fps ten.',
  frameRate_fps: { low: 1000, high: 2000 },
  sources: ['clift-gauvin', 'cavity-balance', 'worthington-splash', 'event-practice'],
  cautions: ['splash-and-flying-parts'],
  words: ['Worthington jet', 'crater', 'column', 'milk drop', 'coffee'],
});
