/**
 * Miniatures: the frame rate and the speed at which small things fall and move as heavily as large ones.
 *
 *     F = Fb·√m        v = V / √m
 *
 * F frame rate, fps        Fb rate that suits the full size, fps        m how many times smaller the model is
 * v speed of the model, m/s        V speed of the full size, m/s
 *
 * Holds for what gravity moves: falls, swings, rolling and toppling. Water, flame and smoke do not scale, and give a model
 * away below about a sixteenth.
 *
 * @source miniature-handbook both laws, and a quarter scale worked
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Frame rate for a model. Throws RangeError outside positive inputs. */
export function miniatureFrameRate_fps(given: { readonly scaleRatio: number; readonly baseRate_fps: number }): number {
  const { scaleRatio, baseRate_fps } = given;
  requirePositive({ scaleRatio, baseRate_fps });
  return baseRate_fps * Math.sqrt(scaleRatio);
}

/** Speed at which a model must move. Throws RangeError outside positive inputs. */
export function miniatureSpeed_m_per_s(given: {
  readonly scaleRatio: number;
  readonly fullSpeed_m_per_s: number;
}): number {
  const { scaleRatio, fullSpeed_m_per_s } = given;
  requirePositive({ scaleRatio, fullSpeed_m_per_s });
  return fullSpeed_m_per_s / Math.sqrt(scaleRatio);
}

const SCALE = { scaleRatio: { title: 'Times smaller', as: 'ratio', note: '4 for a quarter scale' } } as const;
const COMMON = {
  holds: 'What gravity moves, in solid things. Water, flame and smoke keep their own size.',
  sources: ['miniature-handbook'],
  words: ['model', 'scale', 'small', 'heavy', 'weight'],
};

export const miniatureFrameRate = law(miniatureFrameRate_fps, {
  id: 'miniature-frame-rate',
  title: 'Frame rate of a miniature',
  says: 'The frame rate that makes a model fall and topple as heavily as the full size.',
  equation: 'F = Fb · √m',
  takes: { ...SCALE, baseRate_fps: { title: 'Rate that suits the full size', note: 'the play rate for real time' } },
  gives: { frameRate_fps: 'Frame rate' },
  example: { scaleRatio: 6, baseRate_fps: 24 },
  ...COMMON,
});

export const miniatureSpeed = law(miniatureSpeed_m_per_s, {
  id: 'miniature-speed',
  title: 'Speed of a miniature',
  says: 'How fast a model must be driven at its frame rate to look as fast as the full size.',
  equation: 'v = V / √m',
  takes: { ...SCALE, fullSpeed_m_per_s: 'Speed of the full size' },
  gives: { speed_m_per_s: 'Speed of the model' },
  example: { scaleRatio: 6, fullSpeed_m_per_s: 16 },
  ...COMMON,
});
