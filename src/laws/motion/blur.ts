/**
 * Motion in the picture: how fast it crosses, how far it smears during one exposure, how far it steps between frames.
 *
 *     w = v·m / p        blur = w·t        step = w / F
 *
 * w speed across the picture, px/s        v speed of the subject, m/s        t exposure time, s
 * m magnification, image over object      p pitch of the pixels as recorded, m        F frame rate, fps
 *
 * Only the part of v that lies in the image plane counts. Blur over step is the share of each frame that the shutter is
 * open: θ/360. Blur adds to defocus and diffraction roughly as the root of the sum of squares.
 *
 * @source machine-vision-blur blur as speed times exposure time over the pixel's size at the object
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface Crossing {
  readonly speed_m_per_s: number;
  readonly magnificationRatio: number;
  /** Centre to centre of recorded pixels: the sensor's own pitch unless pixels are binned or skipped. */
  readonly sampledPitch_m: number;
}

/** Speed across the picture. Throws RangeError for a negative speed, or magnification or pitch not positive. */
export function imageSpeed_px_per_s({ speed_m_per_s, magnificationRatio, sampledPitch_m }: Crossing): number {
  requireNotNegative({ speed_m_per_s });
  requirePositive({ magnificationRatio, sampledPitch_m });
  return (speed_m_per_s * magnificationRatio) / sampledPitch_m;
}

/** Length of the smear of one exposure. Throws RangeError as `imageSpeed_px_per_s` does, or for an exposure not positive. */
export function blur_px(given: Crossing & { readonly exposureTime_s: number }): number {
  requirePositive({ exposureTime_s: given.exposureTime_s });
  return imageSpeed_px_per_s(given) * given.exposureTime_s;
}

/** The longest exposure that keeps blur to an allowance. Throws RangeError outside positive inputs. */
export function exposureForBlur_s(given: Crossing & { readonly blur_px: number }): number {
  requirePositive({ blur_px: given.blur_px, speed_m_per_s: given.speed_m_per_s });
  return given.blur_px / imageSpeed_px_per_s(given);
}

/** How far the image moves from one frame to the next. Throws RangeError as `imageSpeed_px_per_s` does, or for a rate not positive. */
export function displacement_px(given: Crossing & { readonly frameRate_fps: number }): number {
  requirePositive({ frameRate_fps: given.frameRate_fps });
  return imageSpeed_px_per_s(given) / given.frameRate_fps;
}

/** The least frame rate that keeps the step between frames to an allowance. Throws RangeError outside positive inputs. */
export function frameRateForStep_fps(given: Crossing & { readonly step_px: number }): number {
  requirePositive({ step_px: given.step_px, speed_m_per_s: given.speed_m_per_s });
  return imageSpeed_px_per_s(given) / given.step_px;
}

const CROSSING = {
  speed_m_per_s: { title: 'Speed of the subject', note: 'the part that lies across the picture' },
  magnificationRatio: { title: 'Magnification', as: 'ratio', note: 'size on the sensor over size on the set' },
  sampledPitch_m: { title: 'Pixel pitch as recorded', note: 'larger where pixels are binned or skipped' },
} as const;
const COMMON = {
  holds: 'Steady motion across the picture within one frame; defocus and diffraction come on top.',
  sources: ['machine-vision-blur'],
};

export const imageSpeed = law(imageSpeed_px_per_s, {
  id: 'image-speed',
  title: 'Speed across the picture',
  says: 'How many pixels a second a moving subject crosses.',
  equation: 'w = v · m / p',
  takes: CROSSING,
  gives: { imageSpeed_px_per_s: 'Speed across the picture, in pixels a second' },
  words: ['pixels per second', 'motion', 'tracking'],
  example: { speed_m_per_s: 2.43, magnificationRatio: 0.25, sampledPitch_m: 6.4e-6 },
  ...COMMON,
});

export const motionBlur = law(blur_px, {
  id: 'motion-blur',
  title: 'Motion blur',
  says: 'How many pixels a moving subject smears while the shutter is open.',
  equation: 'blur = v · m · t / p',
  takes: { ...CROSSING, exposureTime_s: 'Exposure time' },
  gives: { blur_px: 'Blur' },
  words: ['smear', 'sharp', 'frozen', 'streak', 'shutter'],
  example: { speed_m_per_s: 3.13, magnificationRatio: 0.5, sampledPitch_m: 10e-6, exposureTime_s: 1 / 4000 },
  ...COMMON,
});

export const exposureForBlur = law(exposureForBlur_s, {
  id: 'exposure-for-blur',
  title: 'Exposure that freezes motion',
  says: 'The longest exposure that keeps a moving subject as sharp as wanted.',
  equation: 't = blur · p / (v · m)',
  takes: { ...CROSSING, blur_px: 'Blur allowed' },
  gives: { exposureTime_s: 'Exposure time' },
  words: ['freeze', 'sharp', 'droplet', 'shutter speed'],
  example: { speed_m_per_s: 3.13, magnificationRatio: 0.5, sampledPitch_m: 10e-6, blur_px: 2 },
  ...COMMON,
});

export const frameStep = law(displacement_px, {
  id: 'frame-step',
  title: 'Step between frames',
  says: 'How many pixels a moving subject travels from one frame to the next.',
  equation: 'step = v · m / (F · p)',
  takes: { ...CROSSING, frameRate_fps: 'Frame rate' },
  gives: { displacement_px: 'Step' },
  words: ['displacement', 'strobing', 'judder', 'stepping'],
  example: { speed_m_per_s: 3.13, magnificationRatio: 0.5, sampledPitch_m: 10e-6, frameRate_fps: 2000 },
  ...COMMON,
});

export const frameRateForStep = law(frameRateForStep_fps, {
  id: 'frame-rate-for-step',
  title: 'Frame rate for a step',
  says: 'The least frame rate at which a moving subject steps no further than wanted between frames.',
  equation: 'F = v · m / (p · step)',
  takes: { ...CROSSING, step_px: 'Step allowed' },
  gives: { frameRate_fps: 'Frame rate' },
  words: ['displacement', 'strobing', 'judder', 'how fast'],
  example: { speed_m_per_s: 3.13, magnificationRatio: 0.5, sampledPitch_m: 10e-6, step_px: 40 },
  ...COMMON,
});
