import { expect, test } from 'vitest';
import { changed, readSound, SMALL } from '../../../../test/shoots.ts';
import type { Written } from '../../../document/written.ts';
import { flagTakes } from '../../../plan/flagTakes.ts';
import { takesSaid } from './flagWords.ts';

const LAMPS = {
  spot: { title: 'Spot', illuminance: '20 klx', distance: '3 m', beam: '20°', field: '35°' },
  panel: { title: 'Panel', face: { width: '1 m', height: '1 m', luminance: '1000 cd/m²' } },
};
const FLAG = { at: '0 m, -500 mm, 0 m', width: '400 mm', height: '300 mm' };
const VIEW = { azimuth_deg: 0, elevation_deg: 0 };

function takes(flags: Written, flagId = 'cut') {
  const lamps = { key: { lamp: 'spot', at: '0 m, -3 m, 0 m' }, top: { lamp: 'spot', at: '0 m, -2.121 m, 2.121 m' }, back: { lamp: 'panel', at: '0 m, 1 m, 0 m' } }; // prettier-ignore
  const shoot = readSound(changed(SMALL, { '/kit/lamps': LAMPS, '/lighting/key': { lamps, flags } }));
  return flagTakes({ shoot, setupId: 'key', flagId, view: VIEW });
}

test('a flag takes what there is more of without it', () => {
  const key = takes({ cut: FLAG });
  expect(key.taken_lx).toBeCloseTo(20_000, 3);
  // 20 klx from the front and cos 45° of 20 klx from above are left with the latter.
  expect(key.stops).toBeCloseTo(Math.log2(Math.SQRT1_2 / (1 + Math.SQRT1_2)), 3);
  expect(takesSaid(key, 'metric')).toBe('takes 20 klx, −1.3 stops');
});

test('one behind another takes nothing more, one taken away nothing, one before all of it all', () => {
  expect(takesSaid(takes({ cut: FLAG, other: { ...FLAG, at: '0 m, -900 mm, 0 m' } }), 'metric')).toBe('takes nothing at the subject'); // prettier-ignore
  expect(takesSaid(takes({ cut: { ...FLAG, off: true } }), 'metric')).toBe('takes nothing at the subject');
  expect(takesSaid(takes({ cut: { ...FLAG, width: '3 m', height: '3 m' } }), 'metric')).toBe('takes all the light');
});

test('one behind the subject hides the face there from the camera', () => {
  expect(takesSaid(takes({ cut: { ...FLAG, at: '0 m, 500 mm, 0 m' } }), 'metric')).toBe('hides the face behind');
});

test('beside one that nobody knows the place of, what it takes is not known', () => {
  expect(takesSaid(takes({ cut: FLAG, lost: { width: '1 m', height: '1 m' } }), 'metric')).toBe('not known');
});
