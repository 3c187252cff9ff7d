/**
 * How long a person takes to press when something is seen: most presses come close together, a few come much later.
 *
 *     t = μ + σ·z + τ·x        F(t) = Φ(s) − e^((w² − s²)/2)·Φ(w),  s = (t − μ)/σ,  w = s − σ/τ
 *     mean μ + τ        spread √(σ² + τ²)
 *
 * t delay, s        μ, σ middle and spread of its normal part, s        τ mean of its exponential tail, s
 * z normal of middle 0 and spread 1        x exponential of mean 1        Φ share of a normal spread
 *
 * With τ of zero it is a normal spread, which suits an electrical trigger. The figures given for a person are an
 * assumption that meets one published mean: measure the person who will press, with the camera.
 *
 * @source reaction-study the mean
 * @source reaction-practice middle, spread and tail
 */
import { requireFinite, requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { normalShare, scaledErrorComplement } from './normal.ts';

export interface Reaction {
  readonly normalMean_s?: number;
  readonly normalSpread_s?: number;
  readonly tailMean_s?: number;
}

/** A person at a button, waiting for one thing to see. @source reaction-practice */
export const PERSON = { normalMean_s: 0.19, normalSpread_s: 0.02, tailMean_s: 0.04 } as const;

/** A spread this short is none: no clock on a set sees it. */
const NO_SPREAD_s = 1e-12;

/** Share of presses that come within a time. Throws RangeError for a time that is not finite or a negative spread. */
export function reactionShareFraction(given: Reaction & { readonly delay_s: number }): number {
  const { delay_s, normalMean_s = PERSON.normalMean_s } = given;
  const { normalSpread_s = PERSON.normalSpread_s, tailMean_s = PERSON.tailMean_s } = given;
  requireFinite({ delay_s, normalMean_s });
  requireNotNegative({ normalSpread_s, tailMean_s });
  const late_s = delay_s - normalMean_s;
  if (normalSpread_s < NO_SPREAD_s) {
    if (late_s < 0) return 0;
    return tailMean_s < NO_SPREAD_s ? 1 : -Math.expm1(-late_s / tailMean_s);
  }
  const s = late_s / normalSpread_s;
  if (tailMean_s < NO_SPREAD_s) return normalShare(s);
  const w = s - normalSpread_s / tailMean_s;
  // Each branch multiplies numbers of which none can overflow.
  const tail =
    w > 0
      ? Math.exp(((w - s) * (w + s)) / 2) * normalShare(w)
      : (Math.exp((-s * s) / 2) * scaledErrorComplement(-w / Math.SQRT2)) / 2;
  return Math.min(1, Math.max(0, normalShare(s) - tail));
}

/** Time within which this share of presses has come. Throws RangeError for a share of none or all, or a negative spread. */
export function reactionDelay_s(given: Reaction & { readonly shareFraction: number }): number {
  const { shareFraction, normalMean_s = PERSON.normalMean_s } = given;
  const { normalSpread_s = PERSON.normalSpread_s, tailMean_s = PERSON.tailMean_s } = given;
  requirePositive({ shareFraction });
  requireWithin(0, 1 - Number.EPSILON / 2, { shareFraction });
  requireFinite({ normalMean_s });
  requireNotNegative({ normalSpread_s, tailMean_s });
  let low = normalMean_s - 40 * normalSpread_s;
  let high = normalMean_s + 40 * (normalSpread_s + tailMean_s);
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (reactionShareFraction({ ...given, delay_s: middle }) < shareFraction) low = middle;
    else high = middle;
  }
  return high;
}

export const REACTION_TAKES = {
  normalMean_s: { title: 'Middle of the delay', default: PERSON.normalMean_s, note: 'assumed for a person' },
  normalSpread_s: {
    title: 'Spread of the delay',
    default: PERSON.normalSpread_s,
    note: 'assumed for a person; one standard deviation',
  },
  tailMean_s: {
    title: 'Mean of its late tail',
    default: PERSON.tailMean_s,
    note: 'assumed for a person; 0 for an electrical trigger',
  },
} as const;

const COMMON = {
  equation: 'F(t) = Φ(s) − e^((w² − s²)/2) · Φ(w), s = (t − μ)/σ, w = s − σ/τ',
  holds: 'One thing to see and one button. Waiting, noise, age and tiredness all add; measure whoever will press.',
  sources: ['reaction-study', 'reaction-practice'],
  words: ['reaction time', 'operator', 'trigger', 'button', 'cue', 'ex-Gaussian', 'latency'],
};

export const reactionShare = law(reactionShareFraction, {
  id: 'reaction-share',
  title: 'Chance that a person has pressed',
  says: 'How likely somebody has pressed the button by then, after seeing it happen.',
  takes: { delay_s: 'Time since it was to be seen', ...REACTION_TAKES },
  gives: { chanceFraction: { title: 'Has pressed', as: 'fraction' } },
  example: { delay_s: 0.25 },
  ...COMMON,
});

export const reactionDelay = law(reactionDelay_s, {
  id: 'reaction-delay',
  title: 'Delay of a person',
  says: 'Within what time somebody presses, this often.',
  takes: { shareFraction: { title: 'How often', as: 'fraction', note: '0.9: nine times in ten' }, ...REACTION_TAKES },
  gives: { delay_s: 'Delay' },
  example: { shareFraction: 0.9 },
  ...COMMON,
});
