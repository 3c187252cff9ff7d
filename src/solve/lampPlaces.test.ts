import { describe, expect, test } from 'vitest';
import { changed, readSound, SMALL } from '../../test/shoots.ts';
import type { Written } from '../document/written.ts';
import { candidatesOf, NEAREST_m, placesWithin, USUAL_BOUNDS, worthTrying, type PlaceBounds } from './lampPlaces.ts';
import { lightNeeds } from './lightNeeds.ts';

const SPOT = { title: 'Spot', illuminance: '20 klx', distance: '2 m', beam: '30°', field: '50°' };

function candidates(lamp: Written, bounds: Partial<PlaceBounds> = {}, more: Readonly<Record<string, Written | undefined>> = {}) {
  const shoot = readSound(changed(SMALL, { '/kit/lamps': { lamp }, '/lighting/key': { title: 'Key' }, ...more }));
  const { needs } = lightNeeds(shoot, 'key');
  return candidatesOf({ shoot, setupId: 'key', needs, bounds: { ...USUAL_BOUNDS, ...bounds }, lamps: ['lamp'] });
} // prettier-ignore

const distance = ({ at }: { readonly at: { readonly right_m: number; readonly away_m: number; readonly up_m: number } }) => Math.hypot(at.right_m, at.away_m, at.up_m); // prettier-ignore

describe('places', () => {
  test('go all round once, and from nearest to farthest in equal ratios', () => {
    const places = placesWithin({ ...USUAL_BOUNDS, elevationFrom_deg: 0, elevationTo_deg: 0, nearest_m: 1, farthest_m: 4 });
    expect(new Set(places.map(({ azimuth_deg }) => azimuth_deg)).size).toBe(12);
    const outwards = places.filter(({ azimuth_deg }) => azimuth_deg === 0).map(({ at }) => -at.away_m);
    expect(outwards).toEqual([1, 1.41, 2, 2.83, 4]);
  }); // prettier-ignore

  test('keep to bounds that run across straight behind', () => {
    const places = placesWithin({ ...USUAL_BOUNDS, azimuthFrom_deg: 150, azimuthTo_deg: -150 });
    expect(new Set(places.map(({ azimuth_deg }) => azimuth_deg))).toEqual(new Set([150, -180, -150]));
    expect(places.every(({ at }) => at.away_m > 0)).toBe(true);
  });

  test.each([
    [{ nearest_m: 0 }, /distances/],
    [{ nearest_m: 3, farthest_m: 2 }, /distances/],
    [{ elevationFrom_deg: 50, elevationTo_deg: 40 }, /elevations/],
    [{ elevationTo_deg: 95 }, /elevations/],
    [{ azimuthTo_deg: NaN }, /finite/],
  ])('are refused for bounds without meaning: %#', (bounds, says) => {
    expect(() => placesWithin({ ...USUAL_BOUNDS, ...bounds })).toThrow(says);
  });
});

describe('a lamp', () => {
  test('stands no nearer than five times its lens, and a panel no nearer than the least for any lamp', () => {
    const lens = candidates({ ...SPOT, face: { width: '0.25 m' } }, { nearest_m: 0.3 });
    expect(Math.min(...lens.map(distance))).toBeGreaterThanOrEqual(1.24);
    const panel = candidates({ face: { width: '0.25 m', height: '0.25 m', luminance: '9 kcd/m²' } }, { nearest_m: 0.3 });
    expect(Math.min(...panel.map(distance))).toBeGreaterThanOrEqual(NEAREST_m - 0.01);
    expect(Math.min(...panel.map(distance))).toBeLessThan(0.8);
  }); // prettier-ignore

  test('stands neither before the lens, nor in the picture, nor at the back of the camera', () => {
    const level = { elevationFrom_deg: 0, elevationTo_deg: 0 };
    const back = candidates(SPOT, level, { '/lighting/key/faces': '0 m, 1 m, 0 m' });
    expect(back.length).toBeGreaterThan(0);
    expect(back.some(({ at }) => at.right_m === 0)).toBe(false);
    expect(candidates(SPOT, level).some(({ at }) => at.right_m === 0)).toBe(false);
    expect(candidates(SPOT, { elevationFrom_deg: 45, elevationTo_deg: 45 }).some(({ at }) => at.right_m === 0)).toBe(true);
  }); // prettier-ignore

  test('counts as much as the plan says of it, and not at all where it lights nothing that counts', () => {
    const found = candidates(SPOT, { elevationFrom_deg: 0, elevationTo_deg: 0, nearest_m: 2, farthest_m: 2 });
    // 80 000 cd two metres away, 30° or 60° off the camera's axis.
    expect(new Set(found.map(({ gives }) => Math.round(gives[0]! / 100) / 10))).toEqual(new Set([17.3, 10]));
    expect(found.every(({ side }) => side !== 'behind')).toBe(true);
  });

  test('that is too narrow for the picture is flooded until it covers it, and left out where it cannot be', () => {
    const narrow = { ...SPOT, beam: '3°', field: '6°' };
    expect(candidates(narrow, { nearest_m: 2, farthest_m: 2 })).toEqual([]);
    const zoom = { ...narrow, flood: { illuminance: '1 klx', distance: '2 m', beam: '40°', field: '60°' } };
    const flooded = candidates(zoom, { nearest_m: 2, farthest_m: 2 });
    expect(flooded.length).toBeGreaterThan(0);
    expect(flooded.every(({ floodFraction = 0 }) => floodFraction > 0 && floodFraction < 1)).toBe(true);
  });

  test('is looked at in its best directions on each side alone', () => {
    const all = candidates(SPOT);
    const few = worthTrying(all, { isDimmingOfUse: false });
    expect(few.length).toBeLessThan(all.length / 3);
    expect(Math.max(...few.map(({ gives }) => gives[0]!))).toBe(Math.max(...all.map(({ gives }) => gives[0]!)));
  });
});
