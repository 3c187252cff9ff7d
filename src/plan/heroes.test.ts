import { describe, expect, test } from 'vitest';
import { changed, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import { waysFor } from './ways/ways.ts';
import { planShoot } from './plan.ts';
import { planShot } from './planShot.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';

const PRODUCT = {
  '/kit/products': { jar: { title: 'Jar', pieces: 20 } },
  '/shots/one/hero': { product: 'jar', perTake: 2 },
  '/shots/one/takes': 10,
  '/shots/one/kept': 2,
};
const heroes = (more: Readonly<Record<string, Written | undefined>> = {}) => marginOf(planned(changed(SMALL, { ...PRODUCT, ...more })), 'heroes'); // prettier-ignore

describe('heroes', () => {
  test('are asked for only where a product is named and counted', () => {
    expect(planned(SMALL).margins.some(({ id }) => id === 'heroes')).toBe(false);
    expect(planned(changed(SMALL, { ...PRODUCT, '/kit/products/jar/pieces': undefined })).margins.some(({ id }) => id === 'heroes')).toBe(false); // prettier-ignore
  });

  // Two good of ten planned: one in five is good. Nine days in ten two are there after 18 takes: P(X ≤ 1; n, 0.2) is
  // 0.0991 at 18 and 0.1182 at 17, as tables of the binomial distribution give it.
  test('needed are the takes that hold the good ones nine days in ten, times the pieces of each', () => {
    expect(heroes()).toMatchObject({ have: 20, need: 36, state: 'short', isHard: true });
  });

  test('needed are fewer where more takes come out good', () => {
    // All good: two takes. 0.9 squared is short of nine in ten, so three; P(X ≤ 1; 3, 0.9) = 0.028.
    expect(heroes({ '/shots/one/good': 1 }).need).toBe(4);
    expect(heroes({ '/shots/one/good': '90 %' }).need).toBe(6);
  });

  test('at hand are those that other shots leave', () => {
    const other = { title: 'Two', hero: { product: 'jar' }, takes: 3, kept: 3 };
    expect(heroes({ '/shots/two': other })).toMatchObject({ have: 17, need: 36 });
    // A product of another name takes none.
    expect(heroes({ '/shots/two': { ...other, hero: {} } }).have).toBe(20);
  });

  test('are planned again when another shot comes to need some', () => {
    const before = readSound(changed(SMALL, { ...PRODUCT, '/shots/two': { title: 'Two' } }));
    expect(marginOf(planShoot(before).shots[0]!, 'heroes').have).toBe(20);
    const after = readSound(changed(SMALL, { ...PRODUCT, '/shots/two': { title: 'Two', hero: { product: 'jar' }, takes: 5, kept: 5 } })); // prettier-ignore
    expect(marginOf(planShoot(after).shots[0]!, 'heroes').have).toBe(15);
  });

  const heroesOfBad = (more: Readonly<Record<string, Written>>) =>
    marginOf(planShot(readShoot(changed(SMALL, { ...PRODUCT, ...more })).shoot, 'one', 1), 'heroes');

  test('cannot be judged while takes or pieces cannot be read, and say where', () => {
    expect(heroesOfBad({ '/shots/one/kept': 'some' })).toMatchObject({ state: 'unknown', missing: [{ path: '/shots/one/kept', because: 'unread' }, { path: '/shots/one/kept', because: 'unread' }] }); // prettier-ignore
    expect(heroesOfBad({ '/kit/products/jar/pieces': 'a tray' })).toMatchObject({ state: 'unknown', missing: [{ path: '/kit/products/jar/pieces', because: 'unread' }] }); // prettier-ignore
  });

  test('are closed by preparing what is lacking, or by being content with fewer good takes', () => {
    const written = changed(SMALL, PRODUCT);
    const ways = waysFor(readSound(written), written, 'one', 'heroes');
    const byMove = new Map(ways.map((way) => [way.move, way]));
    expect(byMove.get('prepare-more')).toMatchObject({ closes: true, patch: [{ path: '/kit/products/jar/pieces', value: 36 }] }); // prettier-ignore
    // One good take of a fifth: ten takes hold it nine days in ten (0.8 to the tenth is 0.107; eleven: 0.086).
    expect(byMove.get('keep-fewer')).toBeUndefined();
    const enough = changed(written, { '/kit/products/jar/pieces': 22 });
    const few = waysFor(readSound(enough), enough, 'one', 'heroes').find(({ move }) => move === 'keep-fewer');
    expect(few).toMatchObject({ closes: true, title: 'Be content with 1 good take' });
  });
});
