/** The laws of light on eyes and skin, as the Reckoner offers them. The relations stand in `eye.ts`. */
import { law } from '../law.ts';
import {
  blueLightDistance_m,
  blueLightTime_s,
  blueRadiance_W_per_m2_sr,
  BLUEST_lm_per_W,
  infraredEyeLimit_W_per_m2,
  infraredEyeTime_s,
  irradianceDistance_m,
  retinalHeatLimit_W_per_m2_sr,
  skinHeatTime_s,
  smallBlueLightTime_s,
  ultravioletTime_s,
} from './eye.ts';

const HOLDS =
  'The limit published for workers with healthy eyes, continuous light. Being within it says that and no more: nobody looks into a lamp or its reflection, and the maker’s report and local law come first.';
const COMMON = {
  holds: HOLDS,
  sources: ['radiation-directive', 'lamp-safety-standard', 'radiometer-manual'],
  cautions: ['intense-light'],
  words: ['eye', 'skin', 'safety', 'exposure limit', 'photobiological', 'risk group', 'stare', 'hazard'],
};
const TIME = 'Within the limit published, of eight hours';
const BLUE_RADIANCE = { title: 'Radiance, weighted for blue light', note: 'from the maker’s report' } as const;

export const blueRadiance = law(blueRadiance_W_per_m2_sr, {
  id: 'blue-radiance',
  title: 'Blue light in a white source',
  says: 'About how much of a white source’s brightness counts as blue light for the eye.',
  equation: 'L_B ≈ L / K_B',
  takes: {
    luminance_cd_per_m2: {
      title: 'Luminance of the source',
      note: 'from what it gives at a distance; nobody looks in',
    },
    blueEfficacy_lm_per_W: {
      title: 'Lumens beside each blue watt',
      default: BLUEST_lm_per_W,
      note: 'assumed: about 1000 for daylight white, 3000 for tungsten white',
    },
  },
  gives: { blueRadiance_W_per_m2_sr: 'Radiance, weighted for blue light' },
  ...COMMON,
  holds: `An estimate that errs on the blue side for white light; coloured diodes are far off it. ${HOLDS}`,
  sources: ['blue-light-practice'],
  example: { luminance_cd_per_m2: 2.5e7 },
});

export const blueLightTime = law(blueLightTime_s, {
  id: 'blue-light-time',
  title: 'Blue light: time in the published limit',
  says: 'How long in a day the published limit lets an eye rest on a bright source.',
  equation: 't = 10⁶ / L_B; the day at or below 100 W/(m²·sr)',
  takes: { blueRadiance_W_per_m2_sr: BLUE_RADIANCE },
  gives: { limitTime_s: TIME },
  example: { blueRadiance_W_per_m2_sr: 25_000 },
  ...COMMON,
});

export const smallBlueLightTime = law(smallBlueLightTime_s, {
  id: 'blue-light-time-small',
  title: 'Blue light of a small source: time in the published limit',
  says: 'As for blue light, for a source that looks smaller than 11 mm from a metre off.',
  equation: 't = 100 / E_B; the day at or below 0.01 W/m²',
  takes: { blueIrradiance_W_per_m2: { title: 'Irradiance at the eye, weighted for blue light' } },
  gives: { limitTime_s: TIME },
  example: { blueIrradiance_W_per_m2: 0.8 },
  ...COMMON,
});

export const blueLightDistance = law(blueLightDistance_m, {
  id: 'blue-light-distance',
  title: 'Blue light: distance of the published limit',
  says: 'From how far off a bright source keeps within the published limit for a time.',
  equation: 'd = (D / γ) · √(L_B / L_limit), γ 11 mrad to 100 s, 1.1 · √t mrad after it, at most 100 mrad',
  takes: {
    blueRadiance_W_per_m2_sr: BLUE_RADIANCE,
    sourceDiameter_m: 'Diameter of the bright opening',
    time_s: { title: 'Time it is looked at', note: 'summed over the day' },
  },
  gives: { distance_m: 'Distance of the limit published' },
  example: { blueRadiance_W_per_m2_sr: 25_000, sourceDiameter_m: 0.1, time_s: 100 },
  ...COMMON,
});

export const retinalHeatLimit = law(retinalHeatLimit_W_per_m2_sr, {
  id: 'retinal-heat-limit',
  title: 'Heat on the retina: the published limit',
  says: 'What weighted radiance the published limit allows, for a source of that size, distance and time.',
  equation: '2.8 · 10⁷ / C beyond 10 s, 5 · 10⁷ / (C · t^0.25) below; C = α in mrad, from 1.7 to 100',
  takes: {
    sourceDiameter_m: 'Diameter of the bright opening',
    distance_m: 'Distance of the eye',
    time_s: { title: 'Time it is looked at', note: '0.25 s is a blink' },
  },
  gives: { limit_W_per_m2_sr: 'Limit published, of weighted radiance' },
  example: { sourceDiameter_m: 0.1, distance_m: 2, time_s: 0.25 },
  ...COMMON,
});

export const infraredEyeTime = law(infraredEyeTime_s, {
  id: 'infrared-eye-time',
  title: 'Infrared on the eye: time in the published limit',
  says: 'How long the published limit lets an open eye be in that much infrared.',
  equation: 't = (18 000 / E)^(4/3) to 1000 s; the day at or below 100 W/m²',
  takes: {
    infrared_W_per_m2: { title: 'Infrared at the eye', note: '780 to 3000 nm; for tungsten nearly all of its heat' },
  },
  gives: { limitTime_s: TIME },
  example: { infrared_W_per_m2: 400 },
  ...COMMON,
  cautions: ['intense-light', 'heat'],
});

export const infraredEyeLimit = law(infraredEyeLimit_W_per_m2, {
  id: 'infrared-eye-limit',
  title: 'Infrared on the eye: the published limit',
  says: 'How much infrared the published limit lets an open eye be in for a time.',
  equation: 'E = 18 000 · t^(−3/4) to 1000 s; 100 W/m² beyond',
  takes: { time_s: { title: 'Time in it', note: 'summed over the day' } },
  gives: { limit_W_per_m2: 'Limit published, of infrared at the eye' },
  example: { time_s: 100 },
  ...COMMON,
  cautions: ['intense-light', 'heat'],
});

export const skinHeatTime = law(skinHeatTime_s, {
  id: 'skin-heat-time',
  title: 'Heat on the skin: time in the published limit',
  says: 'How long the published limit lets skin be in a beam.',
  equation: 't = (20 000 / E)^(4/3) to 10 s, 35 566 / E beyond',
  takes: { irradiance_W_per_m2: 'Irradiance on the skin' },
  gives: { limitTime_s: TIME },
  example: { irradiance_W_per_m2: 8000 },
  ...COMMON,
  holds: `Beyond 10 s the standard gives no limit, since pain comes first; its dose of 10 s is carried on here. ${HOLDS}`,
  cautions: ['heat', 'intense-light'],
});

export const ultravioletTime = law(ultravioletTime_s, {
  id: 'ultraviolet-time',
  title: 'Ultraviolet: time in the published limit',
  says: 'How long in eight hours the published limits let eyes and skin be in ultraviolet.',
  equation: 't = min(30 / E_eff, 10⁴ / E_UVA), eight hours at most',
  takes: {
    effective_W_per_m2: { title: 'Ultraviolet, weighted', note: '180 to 400 nm; 0 only if a report says so' },
    longWave_W_per_m2: { title: 'UVA', default: 0, note: '315 to 400 nm, unweighted, at the eye' },
  },
  gives: { limitTime_s: TIME },
  example: { effective_W_per_m2: 0.004, longWave_W_per_m2: 2 },
  ...COMMON,
});

export const irradianceDistance = law(irradianceDistance_m, {
  id: 'irradiance-distance',
  title: 'Distance at which an irradiance has fallen',
  says: 'From how far off a lamp measured close by keeps below a limit of irradiance.',
  equation: 'd = d₀ · √(E₀ / E_limit)',
  takes: {
    irradiance_W_per_m2: 'Irradiance measured',
    measuredAt_m: 'Measured at',
    limit_W_per_m2: { title: 'Limit', note: '100 W/m² of infrared for a long stay, 0.01 W/m² of blue light' },
  },
  gives: { distance_m: 'Distance of the limit' },
  example: { irradiance_W_per_m2: 1800, measuredAt_m: 1.5, limit_W_per_m2: 100 },
  ...COMMON,
  holds: `Beyond five times the size of the lamp, and beyond where its beam has formed: a beam of a lens or reflector falls more slowly at first. ${HOLDS}`,
  sources: ['lighting-textbook', 'radiation-directive'],
});
