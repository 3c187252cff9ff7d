import { describe, expect, test } from 'vitest';
import { panelCorners } from '../../../laws/light/area/polygon.ts';
import { beamSource, type FaceSource } from '../../../laws/light/placed/source.ts';
import { behindOf, evennessOf, fieldOf_deg, keyRatioOf, sizeOf } from './findings.ts';

const FRONT = { azimuth_deg: 0, elevation_deg: 0 };
const TO_CAMERA = [0, -1, 0] as const;

const panel = (width_m: number, height_m: number, away_m: number, right_m = 0): FaceSource => ({
  kind: 'face',
  at: [right_m, away_m, 0],
  axis: [0, -1, 0],
  corners: panelCorners({ centre: [right_m, away_m, 0], facing: [0, -1, 0], width_m, height_m }),
  luminance_cd_per_m2: 30_000,
});

describe('the face behind the subject', () => {
  const frame = { width_m: 0.2, height_m: 0.1 };
  const seen = (face: FaceSource) => behindOf({ sources: [face], view: FRONT, frame, lensToSubject_m: 0.5 });

  test('must be as many times the frame as it is farther from the lens', () => {
    // 0.5 m to the subject, 1 m to the face: twice the frame.
    expect(seen(panel(1, 1, 0.5))?.needed).toEqual({ width_m: 0.4, height_m: 0.2 });
    expect(seen(panel(1, 1, 0.5))?.lensToFace_m).toBeCloseTo(1, 12);
  });

  test('fills the frame by a hair, or misses it by one, on both sides', () => {
    expect(seen(panel(0.401, 0.201, 0.5))?.missing).toEqual([]);
    expect(seen(panel(0.399, 0.201, 0.5))?.missing).toEqual(['left', 'right']);
    expect(seen(panel(0.401, 0.199, 0.5))?.missing).toEqual(['top', 'bottom']);
  });

  test('misses it on the side that it does not reach', () => {
    expect(seen(panel(0.5, 0.3, 0.5, 0.1))?.missing).toEqual(['left']);
  });

  test('is none where nothing glows there, or it glows the other way', () => {
    expect(seen(panel(1, 1, 0.5, 5))).toBeUndefined();
    const turned = { ...panel(1, 1, 0.5), axis: [0, 1, 0] as const };
    expect(seen(turned)).toBeUndefined();
  });

  test('tells its size from its corners', () => {
    expect(sizeOf(panel(1.2, 0.8, 1))?.width_m).toBeCloseTo(1.2, 12);
    expect(sizeOf(panel(1.2, 0.8, 1))?.height_m).toBeCloseTo(0.8, 12);
  });
});

describe('how even and how contrasty', () => {
  const lamp = (away_m: number) => beamSource({ at: [0, away_m, 0], axis: [0, 1, 0], intensity_cd: 10_000, beamAngle_deg: 60, fieldAngle_deg: 100 });

  test('a lamp far off is even, one close by is not', () => {
    const frame = { width_m: 0.4, height_m: 0.2 };
    const even = (away_m: number) => evennessOf({ sources: [lamp(away_m)], view: FRONT, facing: TO_CAMERA, frame })!.spread_stops;
    expect(even(-10)).toBeLessThan(0.01);
    expect(even(-0.5)).toBeGreaterThan(0.5);
  });

  test('a surface turned away gets nothing, and so has no evenness', () => {
    expect(evennessOf({ sources: [lamp(-1)], view: FRONT, facing: [0, 1, 0], frame: { width_m: 0.1, height_m: 0.1 } })).toBeUndefined();
  });

  test('the key is the strongest lamp, against all the others together', () => {
    const lamps = [{ id: 'a', illuminance_lx: 1000 }, { id: 'b', illuminance_lx: 8000 }, { id: 'c', illuminance_lx: 1000 }, { id: 'd', illuminance_lx: NaN }];
    expect(keyRatioOf(lamps)).toEqual({ key: 'b', ratio: 4, stops: 2 });
    expect(keyRatioOf([lamps[0]!])?.ratio).toBe(Infinity);
    expect(keyRatioOf([])).toBeUndefined();
  });

  test('the field angle comes back from the beam that was made of it', () => {
    expect(fieldOf_deg(beamSource({ at: [0, -1, 0], axis: [0, 1, 0], intensity_cd: 1, beamAngle_deg: 15, fieldAngle_deg: 31 }))).toBeCloseTo(31, 9);
  });
}); // prettier-ignore
