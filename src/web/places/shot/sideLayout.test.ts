import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laySide } from './sideLayout.ts';

const room = { width_px: 600, lens_px: 60 };

describe('the set from the side', () => {
  test('is to scale while the lens stands near', () => {
    const { lensFront, subject, clearance, reach, broken } = laySide(
      { workingDistance_m: 0.2, clearanceWanted_m: 0.18, reachTowardsLens_m: 0.1 },
      room,
    );
    expect(broken).toBeUndefined();
    const scale = (subject - lensFront) / 0.2;
    expect((subject - clearance![0]) / scale).toBeCloseTo(0.18, 9);
    expect((subject - reach![0]) / scale).toBeCloseTo(0.1, 9);
    expect(lensFront).toBeCloseTo(room.lens_px, 9);
  });

  test('shows a clearance that the lens does not keep as reaching into it', () => {
    const { lensFront, clearance } = laySide({ workingDistance_m: 0.15, clearanceWanted_m: 0.18 }, room);
    expect(clearance![0]).toBeLessThan(lensFront);
  });

  test('breaks the axis where the lens stands far off, and keeps the rest to scale', () => {
    const { broken, lensFront, subject, reach, sharp } = laySide(
      { workingDistance_m: 3, reachTowardsLens_m: 0.1, sharpNear_m: 0.01, sharpFar_m: 0.011 },
      room,
    );
    expect(broken).toBeDefined();
    expect(lensFront).toBe(room.lens_px);
    expect(reach![0]).toBeGreaterThan(broken![1]);
    expect((subject - sharp![0]) / (subject - reach![0])).toBeCloseTo(0.1, 9);
  });

  test('draws a thin slice once more, larger, with what was wanted beside it', () => {
    const { enlarged, sharp } = laySide(
      { workingDistance_m: 0.2, sharpNear_m: 0.0015, sharpFar_m: 0.0017, depthWanted_m: 0.0064 },
      room,
    );
    const { times, wanted, sharp: larger, subject } = enlarged!;
    expect((larger[1] - larger[0]) / (sharp![1] - sharp![0])).toBeCloseTo(times, 6);
    expect((wanted![1] - wanted![0]) / (larger[1] - larger[0])).toBeCloseTo(2, 9);
    expect((subject - larger[0]) / (larger[1] - subject)).toBeCloseTo(15 / 17, 9);
  });

  test('lets a far side without end run off', () => {
    const { sharp, runsOff, enlarged } = laySide({ workingDistance_m: 1, sharpNear_m: 0.3 }, room);
    expect(sharp![1]).toBe(room.width_px);
    expect(runsOff).toBe(true);
    expect(enlarged).toBeUndefined();
  });

  test('keeps everything inside, whatever the figures', () => {
    const size = fc.double({ min: 1e-4, max: 5, noNaN: true });
    fc.assert(
      fc.property(size, size, size, size, size, size, (workingDistance_m, sharpNear_m, sharpFar_m, depthWanted_m, clearanceWanted_m, reachTowardsLens_m) => {
        const laid = laySide({ workingDistance_m, sharpNear_m, sharpFar_m, depthWanted_m, clearanceWanted_m, reachTowardsLens_m }, room);
        const { enlarged } = laid;
        const all = [laid.lensFront, laid.subject, ...laid.clearance!, ...laid.reach!, ...laid.sharp!, ...(enlarged ? [...enlarged.sharp, ...enlarged.wanted!] : [])];
        for (const x of all) {
          expect(x).toBeGreaterThanOrEqual(-1e-6);
          expect(x).toBeLessThanOrEqual(room.width_px + 1e-6);
        }
        expect(laid.lensFront).toBeLessThan(laid.subject);
      }),
    );
  });
}); // prettier-ignore
