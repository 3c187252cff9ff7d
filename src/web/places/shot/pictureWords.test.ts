import { describe, expect, test } from 'vitest';
import { leftWords, lengthWords, sayFrame, saySide, sharpWords, sizeWords } from './pictureWords.ts';

test('lengths are told as a crew says them, in either system', () => {
  expect(lengthWords(0.0788, 'metric')).toBe('78.8 mm');
  expect(lengthWords(0.0000612, 'metric')).toBe('0.061 mm');
  expect(lengthWords(0.0508, 'imperial')).toBe('2 in');
  expect(sizeWords(0.14, 0.07875, 'metric')).toBe('140 × 78.8 mm');
  expect(sizeWords(1.6, 0.9, 'metric')).toBe('1.6 m × 900 mm');
});

test('what is left is less than nothing where it is cut', () => {
  expect(leftWords(0.011, 'metric')).toBe('11 mm');
  expect(leftWords(-0.0036, 'metric')).toBe('−3.6 mm');
  expect(leftWords(undefined, 'metric')).toBe('');
});

describe('the drawings in words', () => {
  const film = { deliverable: 'film', title: 'Film', width_m: 0.16, height_m: 0.09 };
  const tall = { deliverable: 'tall', title: 'Tall', width_m: 0.05, height_m: 0.09 };
  const picture = { fieldWidth_m: 0.16, fieldHeight_m: 0.09, reframeFraction: 0, crops: [film, tall] };

  test('name every crop, and which of them cuts the action', () => {
    expect(sayFrame({ ...picture, reachWidth_m: 0.06, reachHeight_m: 0.02 }, 'metric')).toBe(
      'The recorded picture shows 160 × 90 mm. The action reaches 60 mm across and 20 mm up and down. ' +
        'Film, 160 × 90 mm, holds the whole action. Tall, 50 × 90 mm, cuts the action.',
    );
    expect(sayFrame(picture, 'metric')).toContain('which has no reach yet');
  });

  test('say from the side what is sharp, before and behind', () => {
    const side = { workingDistance_m: 0.206, sharpNear_m: 0.0015, sharpFar_m: 0.0016, depthWanted_m: 0.003, reachTowardsLens_m: 0.04 }; // prettier-ignore
    expect(saySide(side, 'metric')).toBe(
      'From the side: the front of the lens stands 206 mm from the subject. The action flies 40 mm towards the lens. ' +
        'Sharp: 3.1 mm, 1.5 mm before the subject and 1.6 mm behind; 3 mm is asked for.',
    );
    expect(sharpWords({ workingDistance_m: 1, sharpNear_m: 0.3 }, 'metric')).toBe(
      'from 300 mm before the subject on, without end',
    );
    expect(sharpWords({ workingDistance_m: 1 }, 'metric')).toBeUndefined();
  });
});
