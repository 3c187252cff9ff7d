/**
 * Time stretched: frames taken at one rate and shown at another last longer by the ratio of the two.
 *
 *     E = Fc / Fp        screen time = E · capture time
 *
 * E expansion        Fc capture rate, fps        Fp play rate, fps
 *
 * Holds where every frame taken is shown once, none made or left out. Rates are exact: 23.976 is a name, 24000/1001 the
 * rate, and the two differ by a frame in about 42 thousand.
 *
 * @source frame-rate-practice the ratio and its use
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { dividedBy, ratioOf, type Rational } from '../../base/rational.ts';
import { law } from '../law.ts';

export interface Rates {
  readonly captureRate_fps: number;
  readonly playRate_fps: number;
}

/** How many times longer the film lasts than the action did. Throws RangeError outside positive rates. */
export function timeExpansion({ captureRate_fps, playRate_fps }: Rates): number {
  requirePositive({ captureRate_fps, playRate_fps });
  return captureRate_fps / playRate_fps;
}

/** The fraction of its real speed at which action is seen: 1/E. Throws RangeError outside positive rates. */
export function playbackSpeedFraction({ captureRate_fps, playRate_fps }: Rates): number {
  requirePositive({ captureRate_fps, playRate_fps });
  return playRate_fps / captureRate_fps;
}

/** Expansion and its inverse with nothing rounded. Throws RangeError for a rate that is no positive ratio. */
export function exactExpansion({
  captureRate,
  playRate,
}: {
  readonly captureRate: Rational;
  readonly playRate: Rational;
}): { readonly expansion: Rational; readonly playbackSpeed: Rational } {
  requirePositive({ captureRate: ratioOf(captureRate), playRate: ratioOf(playRate) });
  return { expansion: dividedBy(captureRate, playRate), playbackSpeed: dividedBy(playRate, captureRate) };
}

/** How long a stretch of real time lasts on screen. Throws RangeError for a negative time or a rate not positive. */
export function screenTime_s(given: Rates & { readonly captureTime_s: number }): number {
  const { captureTime_s, captureRate_fps, playRate_fps } = given;
  requireNotNegative({ captureTime_s });
  return captureTime_s * timeExpansion({ captureRate_fps, playRate_fps });
}

/** The real time that a stretch on screen was taken in. Throws RangeError as `screenTime_s` does. */
export function captureTime_s(given: Rates & { readonly screenTime_s: number }): number {
  const { captureRate_fps, playRate_fps } = given;
  requireNotNegative({ screenTime_s: given.screenTime_s });
  return given.screenTime_s / timeExpansion({ captureRate_fps, playRate_fps });
}

/** The capture rate that makes real action last as long on screen as wanted. Throws RangeError outside positive inputs. */
export function captureRateWanted_fps(given: {
  readonly screenTime_s: number;
  readonly captureTime_s: number;
  readonly playRate_fps: number;
}): number {
  const { playRate_fps } = given;
  requirePositive({ screenTime_s: given.screenTime_s, captureTime_s: given.captureTime_s, playRate_fps });
  return (playRate_fps * given.screenTime_s) / given.captureTime_s;
}

/** The capture rate at which action is seen at a fraction of its real speed. Throws RangeError outside positive inputs. */
export function captureRateAtSpeed_fps(given: {
  readonly playbackSpeedFraction: number;
  readonly playRate_fps: number;
}): number {
  const { playRate_fps } = given;
  requirePositive({ playbackSpeedFraction: given.playbackSpeedFraction, playRate_fps });
  return playRate_fps / given.playbackSpeedFraction;
}

const COMMON = {
  holds: 'Every frame taken is shown once: none made, none left out, none shown twice.',
  sources: ['frame-rate-practice'],
};
const RATES = { captureRate_fps: 'Capture rate', playRate_fps: 'Play rate' };

export const expansion = law(timeExpansion, {
  id: 'time-expansion',
  title: 'Time expansion',
  says: 'How many times longer the action lasts on screen than it did on the set.',
  equation: 'E = Fc / Fp',
  takes: RATES,
  gives: { expansionRatio: { title: 'Times longer on screen', as: 'ratio' } },
  words: ['slow motion', 'slow down', 'stretch', 'factor', 'overcrank', 'conform'],
  example: { captureRate_fps: 960, playRate_fps: 25 },
  ...COMMON,
});

export const playbackSpeed = law(playbackSpeedFraction, {
  id: 'playback-speed',
  title: 'Speed on screen',
  says: 'The fraction of its real speed at which the action is seen.',
  equation: 's = Fp / Fc',
  takes: RATES,
  gives: { playbackSpeedFraction: { title: 'Fraction of real speed', as: 'fraction' } },
  words: ['half speed', 'percent', 'retime', 'slow motion'],
  example: { captureRate_fps: 120, playRate_fps: 24 },
  ...COMMON,
});

export const expansionExactly = law(exactExpansion, {
  id: 'exact-expansion',
  title: 'Time expansion, exactly',
  says: 'The expansion as a ratio of whole numbers, for a timeline that must not drift.',
  equation: 'E = Fc / Fp',
  takes: {
    captureRate: { title: 'Capture rate', as: 'rational' },
    playRate: { title: 'Play rate', as: 'rational' },
  },
  gives: {
    expansion: { title: 'Times longer on screen', as: 'rational' },
    playbackSpeed: { title: 'Fraction of real speed', as: 'rational' },
  },
  words: ['23.976', '29.97', '59.94', 'retime', 'drift'],
  example: { captureRate: { num: 1000, den: 1 }, playRate: { num: 24000, den: 1001 } },
  ...COMMON,
});

export const screenTime = law(screenTime_s, {
  id: 'screen-time',
  title: 'Time on screen',
  says: 'How long a stretch of real time lasts in the film.',
  equation: 'screen time = capture time · Fc / Fp',
  takes: { captureTime_s: 'Time on the set', ...RATES },
  gives: { screenTime_s: 'Time on screen' },
  words: ['duration', 'how long', 'running time', 'slow motion'],
  example: { captureTime_s: 0.12, captureRate_fps: 1200, playRate_fps: 24 },
  ...COMMON,
});

export const captureTime = law(captureTime_s, {
  id: 'capture-time',
  title: 'Time on the set',
  says: 'How much real time a stretch of film was taken in.',
  equation: 'capture time = screen time · Fp / Fc',
  takes: { screenTime_s: 'Time on screen', ...RATES },
  gives: { captureTime_s: 'Time on the set' },
  words: ['duration', 'how long', 'real time', 'buffer'],
  example: { screenTime_s: 8, captureRate_fps: 1500, playRate_fps: 25 },
  ...COMMON,
});

export const captureRateWanted = law(captureRateWanted_fps, {
  id: 'capture-rate-wanted',
  title: 'Capture rate for a time on screen',
  says: 'The frame rate that makes an action last as long on screen as the board asks.',
  equation: 'Fc = Fp · screen time / capture time',
  takes: { screenTime_s: 'Time on screen', captureTime_s: 'Time on the set', playRate_fps: 'Play rate' },
  gives: { captureRate_fps: 'Capture rate' },
  words: ['frame rate', 'how fast', 'board', 'slow motion'],
  example: { screenTime_s: 6, captureTime_s: 0.12, playRate_fps: 24 },
  ...COMMON,
});

export const captureRateAtSpeed = law(captureRateAtSpeed_fps, {
  id: 'capture-rate-at-speed',
  title: 'Capture rate for a speed on screen',
  says: 'The frame rate that shows action at a wanted fraction of its real speed.',
  equation: 'Fc = Fp / s',
  takes: {
    playbackSpeedFraction: { title: 'Fraction of real speed', as: 'fraction' },
    playRate_fps: 'Play rate',
  },
  gives: { captureRate_fps: 'Capture rate' },
  words: ['half speed', 'percent', 'frame rate', 'slow motion'],
  example: { playbackSpeedFraction: 0.025, playRate_fps: 24 },
  ...COMMON,
});
