import { describe, expect, test } from 'vitest';
import { loadHighs } from '../../test/highs.ts';
import { changed, DEMO, marginOf, readSound, SMALL } from '../../test/shoots.ts';
import { applyPatch } from '../document/patch.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { planShot } from '../plan/planShot.ts';
import { LAMP_SEARCH } from '../plan/ways/move.ts';
import { waysFor } from '../plan/ways/ways.ts';
import { lampWays } from './lampWays.ts';

const SPOT = { title: 'Spot', kind: 'led', pieces: 4, power: '600 W', illuminance: '20 klx ± 1 klx', distance: '2 m', beam: '30°', field: '50°' }; // prettier-ignore
const BIG = { title: 'Big one', kind: 'led', power: '1.2 kW', availability: 'hire', dayPrice: 90, pieces: 4, illuminance: '90 klx ± 4 klx', distance: '2 m', beam: '30°', field: '50°' }; // prettier-ignore

/** One spot far away, of four there are. */
const dim = (more: Readonly<Record<string, Written | undefined>> = {}) =>
  changed(SMALL, {
    '/kit/lamps': { spot: SPOT },
    '/lighting/key': { title: 'Key', lamps: { left: { lamp: 'spot', at: '-2 m, -3 m, 1 m' } } },
    '/shots/one/index': 800,
    ...more,
  });

const ways = (written: Written, shotId = 'one') => lampWays({ shoot: readSound(written), written, shotId, loadHighs });

describe('ways found by searching the lamps', () => {
  test('close the light, are planned again in full, and say their power and what else they move', async () => {
    const written = dim();
    const found = await ways(written);
    expect(found.length).toBeGreaterThan(0);
    for (const { move, title, says, patch, closes, margins } of found) {
      expect([move, closes]).toEqual([LAMP_SEARCH, true]);
      expect(title).toMatch(/^Add (\d × )?Spot$/);
      expect(says).toMatch(/^from .+ W in all; whoever holds the licence says what its circuit carries/);
      const { shoot, problems } = readShoot(applyPatch(written, patch));
      expect(problems).toEqual([]);
      expect(planShot(shoot, 'one', 1).margins).toEqual(margins);
    }
  });

  test('are others than the plan’s own, which only move what stands there', async () => {
    const written = dim();
    const own = waysFor(readSound(written), written, 'one', 'light').map(({ patch }) => JSON.stringify(patch));
    for (const { patch } of await ways(written)) expect(own).not.toContain(JSON.stringify(patch));
  });

  test('say what is to hire, and its price', async () => {
    const [hired] = await ways(dim({ '/kit/lamps': { spot: { ...SPOT, pieces: 1 }, big: BIG } }));
    expect(hired?.title).toMatch(/Big one/);
    expect(hired?.says).toContain('to hire, 90 a day');
  });

  test.each([
    ['the shot has light enough', dim({ '/kit/lamps/spot/illuminance': '900 klx' })],
    ['nobody put a lamp there', SMALL],
    [
      'the light was read on the set',
      dim({ '/lighting/key/illuminance': '5 klx', '/lighting/key/reading': 'metered' }),
    ],
    ['a lamp that stands there lacks its beam', dim({ '/kit/lamps/spot/beam': undefined })],
  ])('are none where %s', async (_, written) => {
    expect(await ways(written)).toEqual([]);
    expect(await ways(written, 'none')).toEqual([]);
  });

  test('of the demo’s honey close its light', async () => {
    const shoot = readSound(DEMO);
    expect(marginOf(planShot(shoot, 'honey', 1), 'light').state).toBe('short');
    const [first] = await ways(DEMO, 'honey');
    expect(first?.closes).toBe(true);
  });
});
