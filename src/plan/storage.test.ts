import { describe, expect, test } from 'vitest';
import { changed, readSound, SMALL } from '../../test/shoots.ts';
import { fieldAt } from '../document/fieldAt.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { planShoot } from './plan.ts';
import { keptTakes } from './takes.ts';
import type { Margin } from './types.ts';

const storage = (changes: Readonly<Record<string, Written | undefined>>): Margin | undefined => planShoot(readShoot(changed(SMALL, changes)).shoot).margins[0]; // prettier-ignore

// 1920 × 1080 at 12 bits packed are 3,110,400 B; 0.2 s of action and 0.1 s either side at 1000 fps are 400 frames.
const TAKE_B = 3_110_400 * 400;

describe('storage', () => {
  test('needs every take that is kept of every shot, and has what is free on the drives that are here', () => {
    const margin = storage({ '/kit/drives/disk': { capacity: '1 TB', used: '400 GB' }, '/kit/drives/more': { capacity: '2 TB' }, '/kit/drives/rented': { capacity: '9 TB', availability: 'hire' } }); // prettier-ignore
    expect(margin).toMatchObject({ id: 'storage', state: 'spare', isHard: true, kind: 'bytes', have: 2.6e12 });
    expect(margin!.need).toBeCloseTo(3 * TAKE_B, 0);
    expect(margin!.stops!.value).toBeCloseTo(Math.log2(2.6e12 / (3 * TAKE_B)), 9);
  });

  test('leaves out drives that hold copies, unless there are no others', () => {
    const copies = { capacity: '2 TB', holds: 'copies' };
    expect(storage({ '/kit/drives/disk': { capacity: '1 TB' }, '/kit/drives/more': copies })).toMatchObject({
      have: 1e12,
    });
    expect(storage({ '/kit/drives': { more: copies } })).toMatchObject({ have: 2e12 });
  });

  test('is short where the takes do not fit', () => {
    const margin = storage({ '/kit/drives/disk/capacity': '3 GB' });
    expect(margin).toMatchObject({ state: 'short', have: 3e9 });
    expect(margin!.spare).toBeCloseTo(3e9 - 3 * TAKE_B, 0);
  });

  test('is full, not negative, on a drive that holds more than it can', () => {
    expect(storage({ '/kit/drives/disk': { capacity: '1 TB', used: '2 TB' } })).toMatchObject({ state: 'short', have: 0, stops: { value: -30 } }); // prettier-ignore
  });

  test('is not judged while no drive is here, or no shot written', () => {
    expect(storage({ '/kit/drives': undefined })).toBeUndefined();
    expect(storage({ '/kit/drives/disk/availability': 'unwanted' })).toBeUndefined();
    expect(storage({ '/shots': {} })).toBeUndefined();
  });

  test('suffices where nothing is kept', () => {
    expect(storage({ '/shots/one/kept': 0 })).toMatchObject({ state: 'spare', need: 0 });
  });

  test.each([
    ['a capacity left out', { '/kit/drives/disk/capacity': undefined }, '/kit/drives/disk/capacity', 'absent'],
    ['a capacity unread', { '/kit/drives/disk/capacity': 'big' }, '/kit/drives/disk/capacity', 'unread'],
    ['a use unread', { '/kit/drives/disk/used': 'some' }, '/kit/drives/disk/used', 'unread'],
    ['takes unread', { '/shots/one/takes': 'a few' }, '/shots/one/takes', 'unread'],
    ['kept takes unread', { '/shots/one/kept': 'the best' }, '/shots/one/kept', 'unread'],
    ['kept takes of the defaults unread', { '/defaults/kept': 'the best' }, '/defaults/kept', 'unread'],
    ['a shot that cannot be weighed', { '/shots/one/action/duration': undefined }, '/shots/one', 'absent'],
  ] as const)('with %s is unknown and says where', (_title, changes, path, because) => {
    const margin = storage(changes);
    expect(margin).toMatchObject({ state: 'unknown', missing: [{ path, because }] });
    expect(margin).not.toHaveProperty('stops');
    expect(fieldAt(path)).toBeDefined();
  });

  test('names a number that the defaults cannot give once, however many shots wait for it', () => {
    const margin = storage({ '/defaults/kept': 'the best', '/shots/two': {}, '/shots/three': {} });
    expect(margin!.missing.filter(({ path }) => path === '/defaults/kept')).toHaveLength(1);
  });

  test('does not mind takes unread where the takes kept are said', () => {
    expect(storage({ '/shots/one/takes': 'a few', '/shots/one/kept': 2 })).toMatchObject({ state: 'spare' });
  });
});

test.each<[title: string, changes: Readonly<Record<string, Written | undefined>>, count: number]>([
  ['as stated', { '/shots/one/kept': 2 }, 2],
  ['as the defaults state', { '/defaults/kept': 2 }, 2],
  ['all that are planned, where none are stated', {}, 3],
  ['all that the defaults plan', { '/shots/one/takes': undefined, '/defaults/takes': 5 }, 5],
  ['one, where nobody says', { '/shots/one/takes': undefined }, 1],
])('takes kept are %s', (_title, changes, count) => {
  expect(keptTakes(readSound(changed(SMALL, changes)), 'one')).toBe(count);
});
