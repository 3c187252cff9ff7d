/**
 * Droplets and other small things judged by their own size: the rate at which the eye follows one from frame to frame,
 * and the exposure in which it looks frozen.
 *
 *     F = v / (s·D)        t = b·D / v
 *
 * F frame rate, fps        t exposure time, s        v speed across the picture, m/s        D size of the thing, m
 * s share of its own size it may move from frame to frame, a quarter by default
 * b share of its own size it may smear, a fiftieth by default
 *
 * Both shares are taste, not measurement.
 *
 * @source droplet-practice the two shares
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

/** @source droplet-practice */
const STEP_SHARE = 0.25;
/** @source droplet-practice */
const SMEAR_SHARE = 0.02;

interface SmallThing {
  readonly speed_m_per_s: number;
  readonly size_m: number;
}

/** The least frame rate at which a small thing is followed from frame to frame. Throws RangeError outside positive inputs. */
export function frameRateToFollow_fps(given: SmallThing & { readonly stepFraction?: number }): number {
  const { speed_m_per_s, size_m, stepFraction = STEP_SHARE } = given;
  requireNotNegative({ speed_m_per_s });
  requirePositive({ size_m, stepFraction });
  return speed_m_per_s / (stepFraction * size_m);
}

/** The longest exposure in which a small thing looks frozen. Throws RangeError outside positive inputs, or a share above 1. */
export function exposureToFreeze_s(given: SmallThing & { readonly smearFraction?: number }): number {
  const { speed_m_per_s, size_m, smearFraction = SMEAR_SHARE } = given;
  requirePositive({ speed_m_per_s, size_m, smearFraction });
  requireWithin(0, 1, { smearFraction });
  return (smearFraction * size_m) / speed_m_per_s;
}

const THING = { speed_m_per_s: 'Speed across the picture', size_m: 'Size of the thing' };
const COMMON = {
  holds: 'A matter of taste; blur in pixels may ask for more.',
  sources: ['droplet-practice'],
  words: ['drop', 'droplet', 'spray', 'crumb', 'shard', 'frozen', 'follow'],
};

export const frameRateToFollow = law(frameRateToFollow_fps, {
  id: 'frame-rate-to-follow',
  title: 'Frame rate that follows a droplet',
  says: 'The least frame rate at which the eye takes a small fast thing for the same one in each frame.',
  equation: 'F = v / (s · D)',
  takes: {
    ...THING,
    stepFraction: { title: 'Step in shares of its size', as: 'fraction', default: STEP_SHARE },
  },
  gives: { frameRate_fps: 'Frame rate' },
  example: { speed_m_per_s: 3.13, size_m: 0.004 },
  ...COMMON,
});

export const exposureToFreeze = law(exposureToFreeze_s, {
  id: 'exposure-to-freeze',
  title: 'Exposure that freezes a droplet',
  says: 'The longest exposure in which a small fast thing keeps its shape.',
  equation: 't = b · D / v',
  takes: {
    ...THING,
    smearFraction: { title: 'Smear in shares of its size', as: 'fraction', default: SMEAR_SHARE },
  },
  gives: { exposureTime_s: 'Exposure time' },
  example: { speed_m_per_s: 3.13, size_m: 0.004 },
  ...COMMON,
});
