import { describe, expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { synthetic } from '../../test/footage/synthetic.ts';
import { Fault } from '../base/fault.ts';
import { readKept, writeKept } from './keptMeasurement.ts';
import { clipReply, type MeasuredClip } from './measureReply.ts';

const drop = { radius_px: 6, bright: 0.9, x_px: () => 60, y_px: (t_s: number) => -12 + 1500 * Math.max(0, t_s - 0.04) };
const CLIP: MeasuredClip = {
  name: 'SYNTHETIC drop, "quoted".mkv',
  codec: 'ffv1',
  pixelFormat: 'gray12le',
  measurement: measured(synthetic('drop', { width: 120, height: 72, rate_fps: 1000, frames: 140, exposure_s: 0.0005, seed: 3, lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.2 } }], drop }), (frame) => (frame < 90 ? frame : frame + 3)),
  frameRateBasis: 'given',
  curve: 'linear',
  curveBasis: 'given',
  isWhole: true,
  notes: ['One note.'],
}; // prettier-ignore

/** How far two values lie apart in any number, over the larger; Infinity where they are not of one shape. */
function farthest(a: unknown, b: unknown): number {
  if (typeof a === 'number' && typeof b === 'number') return Object.is(a, b) || a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b)); // prettier-ignore
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b ? 0 : Infinity;
  if (Object.getPrototypeOf(a) !== Object.getPrototypeOf(b)) return Infinity;
  const of = Object.entries(b);
  if (Object.keys(a).length !== of.length) return Infinity;
  return Math.max(0, ...of.map(([key, value]) => farthest((a as Record<string, unknown>)[key], value)));
}

describe('a measurement that is kept', () => {
  const text = writeKept(CLIP);

  test('comes back as it was, its lists of numbers of the same kind and to six digits', () => {
    const back = readKept(text);
    expect(farthest(back, CLIP)).toBeLessThan(5e-6);
    expect(back.measurement.frames.mean).toBeInstanceOf(Float64Array);
    expect([back.measurement.motion, back.measurement.action].includes(undefined)).toBe(false);
  });

  test('comes to the same verdict', () => {
    const [before, after] = [CLIP, readKept(text)].map((clip) => clipReply(clip));
    expect(after!.verdict).toEqual(before!.verdict);
    expect(farthest(after, before)).toBeLessThan(2e-5);
  });

  test('is the same text when it is written again', () => {
    expect(writeKept(readKept(text))).toBe(text);
  });

  test('takes along what was added to it, without being told', () => {
    const later = { counts: new Uint32Array([1, 4_294_967_295]), codes: new Uint16Array([7]), hue: [new Float32Array([0.5, NaN, -Infinity]), { of: Infinity }], __proto__: null }; // prettier-ignore
    const more = { ...CLIP, measurement: { ...CLIP.measurement, later: { ...later } } };
    const back = readKept(writeKept(more)) as unknown as typeof more;
    expect(back.measurement.later).toEqual({ ...later });
    expect(back.measurement.later.hue[0]).toBeInstanceOf(Float32Array);
  });

  test('leaves out the shot, which it is held against anew', () => {
    const shot = { id: 'pour' } as unknown as NonNullable<MeasuredClip['shot']>;
    expect(writeKept({ ...CLIP, shot } as MeasuredClip)).toBe(text);
  });
});

describe.each([
  ['of an older form', '{"form":0,"clip":{}}', /form 0/],
  ['of a newer form', '{"form":99,"clip":{}}', /form 99/],
  ['of no form', '{"clip":{}}', /cannot be read/],
  ['without a clip', '{"form":1}', /form/],
  ['that breaks off', '{"form":1,"cl', /cannot be read/],
  ['of nothing', 'null', /cannot be read/],
])('text %s', (_, text, says) => {
  test('is refused, and says to measure again', () => {
    const read = () => readKept(text);
    expect(read).toThrow(Fault);
    try {
      read();
    } catch (fault) {
      expect(fault).toMatchObject({ code: 'measure.kept-form', mend: 'Measure it again.' });
      expect((fault as Fault).what).toMatch(says);
    }
  });
});
