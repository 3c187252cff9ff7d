import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Picture } from '../../../plan/types.ts';
import { layFrame, standingsOf } from './frameLayout.ts';

const film = { deliverable: 'film', title: 'Film', width_m: 0.16, height_m: 0.09, safeFraction: 0.9 };
const tall = { deliverable: 'tall', title: 'Tall', width_m: 0.050625, height_m: 0.09 };
const picture: Picture = { fieldWidth_m: 0.16, fieldHeight_m: 0.09, reframeFraction: 0, crops: [film, tall] };
const room = { width_px: 400, mostHeight_px: 300, edge_px: 20 };

describe('how a crop stands to the action', () => {
  const states = (reachWidth_m?: number, reachHeight_m?: number) =>
    standingsOf({
      ...picture,
      ...(reachWidth_m === undefined ? {} : { reachWidth_m }),
      ...(reachHeight_m === undefined ? {} : { reachHeight_m }),
    }).map(({ state }) => state);

  test('is cut where the action is wider or higher than it', () => {
    expect(states(0.06, 0.04)).toEqual(['whole', 'cut']);
    expect(states(0.04, 0.1)).toEqual(['cut', 'cut']);
  });

  test('is whole where the action just fits, and told where it leaves what is sure to be seen', () => {
    expect(states(0.04, 0.09)).toEqual(['over-safe', 'whole']);
    expect(states(0.144, 0.02)[0]).toBe('whole');
    expect(states(0.145, 0.02)[0]).toBe('over-safe');
  });

  test('is not known while nobody said how far the action goes, and judged by what was said', () => {
    expect(states()).toEqual(['unknown', 'unknown']);
    expect(states(0.06)).toEqual(['whole', 'cut']);
  });

  test('says what is left on each side, less than nothing where it is cut', () => {
    const [, standing] = standingsOf({ ...picture, reachWidth_m: 0.060625, reachHeight_m: 0.03 });
    expect(standing!.leftAcross_m).toBeCloseTo(-0.005, 9);
    expect(standing!.leftUp_m).toBeCloseTo(0.03, 9);
  });
});

describe('the drawing', () => {
  test('is to one scale, about the middle of the picture', () => {
    const { field, crops, reach, scale_px_per_m, centre } = layFrame({ ...picture, reachWidth_m: 0.08, reachHeight_m: 0.02 }, room);
    expect(field.width).toBeCloseTo(360, 9);
    expect(field.height / field.width).toBeCloseTo(9 / 16, 9);
    expect(reach!.width).toBeCloseTo(180, 9);
    expect(scale_px_per_m).toBeCloseTo(2250, 9);
    for (const { box } of crops) {
      expect(box.x + box.width / 2).toBeCloseTo(centre.x, 9);
      expect(box.y + box.height / 2).toBeCloseTo(centre.y, 9);
    }
  });

  test('shows how far a crop may be moved: its size over what was not held back', () => {
    const [first] = layFrame({ ...picture, reframeFraction: 0.2, crops: [{ ...film, width_m: 0.128, height_m: 0.072 }] }, room).crops;
    expect(first!.held!.width).toBeCloseTo(360, 9);
    expect(first!.safe!.width / first!.box.width).toBeCloseTo(0.9, 9);
  });

  test('gives every crop a line of its own, the narrowest nearest to the picture', () => {
    const { crops, field } = layFrame(picture, room);
    expect(crops[1]!.lineY).toBeGreaterThan(crops[0]!.lineY);
    expect(crops[1]!.lineY).toBeLessThan(field.y);
  });

  test('keeps everything inside, however far the action goes', () => {
    const size = fc.double({ min: 0.001, max: 3, noNaN: true });
    fc.assert(
      fc.property(size, size, size, size, fc.integer({ min: 200, max: 900 }), (fieldWidth_m, fieldHeight_m, reachWidth_m, reachHeight_m, width_px) => {
        const laid = layFrame({ fieldWidth_m, fieldHeight_m, reframeFraction: 0, crops: [], reachWidth_m, reachHeight_m }, { ...room, width_px });
        for (const { x, y, width, height } of [laid.field, laid.reach!]) {
          expect(x).toBeGreaterThanOrEqual(room.edge_px - 1e-6);
          expect(x + width).toBeLessThanOrEqual(width_px - room.edge_px + 1e-6);
          expect(y).toBeGreaterThanOrEqual(-1e-6);
          expect(y + height).toBeLessThanOrEqual(laid.height_px);
        }
        expect(laid.reach!.runsOff).toBe(reachWidth_m > 1.5 * fieldWidth_m || reachHeight_m > 1.5 * fieldHeight_m);
      }),
    );
  });
}); // prettier-ignore
