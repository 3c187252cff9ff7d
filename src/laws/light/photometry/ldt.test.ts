import { describe, expect, test } from 'vitest';
import {
  accepted,
  every,
  ldtText,
  madePhotometry,
  refused,
  told,
  type LdtParts,
} from '../../../../test/photometry/files.ts';
import { intensityTowards_cd, peakOf } from './intensity.ts';
import { readLdt } from './ldt.ts';

const read = (parts: LdtParts = {}) => accepted(readLdt(ldtText(parts)));
const refusal = (parts: LdtParts = {}) => refused(readLdt(ldtText(parts)));
const WHOLE = every(30, 0, 330);

describe('what a file says', () => {
  test('intensities are per 1000 lm of the lamps, times the conversion factor', () => {
    expect(peakOf(read()).intensity_cd).toBe(100);
    const sets = ['1', 'LED', '2500', '5600', '95', '50'];
    expect(peakOf(read({ sets, items: { 24: '1.2' } })).intensity_cd).toBeCloseTo(300, 9);
  });

  test('a published pair: 1030.40 cd per 1000 lm of a 321 lm lamp is the 330.8 cd of its twin in IES', () => {
    const lamp = read({ sets: ['1', 'LED', '321', '4000', '90', '5'], light: () => 1030.4 });
    expect(peakOf(lamp).intensity_cd).toBeCloseTo(330.8, 1);
  });

  test('names, lamps, power and light output ratio are read', () => {
    const lamp = madePhotometry('round-1.ldt');
    expect(lamp).toMatchObject({ format: 'ldt', version: 'EULUMDAT', ratedFlux_lm: 2000, inputPower_W: 25 });
    expect(lamp.labels).toContainEqual({ keyword: 'LAMP', text: 'LED 4000 K, µ-optic' });
    expect(lamp.labels).toContainEqual({ keyword: 'LUMINAIRE', text: 'From a formula' });
    expect(lamp.opening).toEqual({ shape: 'disc', width_m: 0.1, length_m: 0.1, height_m: 0 });
    expect(told(lamp)).toEqual(['western-bytes']);
    expect(madePhotometry('oval-0.ldt').opening).toEqual({
      shape: 'rectangle',
      width_m: 0.26,
      length_m: 0.56,
      height_m: 0,
    });
  });

  test('decimal commas and the Western page change no number', () => {
    const comma = madePhotometry('oval-3.ldt');
    const point = madePhotometry('oval-0.ldt');
    for (const plane_deg of every(7, 0, 357))
      expect(intensityTowards_cd(comma, { plane_deg, gamma_deg: 41 })).toBeCloseTo(
        intensityTowards_cd(point, { plane_deg, gamma_deg: 41 }),
        6,
      );
  });

  test('a number of lamps below 0 is absolute photometry: no rated flux', () => {
    expect(read({ sets: ['-1', 'LED', '1000', '', '', '50'] }).ratedFlux_lm).toBeUndefined();
  });

  test('of several sets of lamps the first is taken, and told', () => {
    const sets = ['1', '2', 'LED A', 'LED B', '1000', '9000', '5600', '3200', '95', '90', '50', '400'];
    const lamp = read({ sets, items: { 26: '2' } });
    expect(lamp).toMatchObject({ ratedFlux_lm: 1000, inputPower_W: 50 });
    expect(told(lamp)).toEqual(['several-sets']);
  });

  test('a lamp measured tilted, without power or with another output than stated is told', () => {
    expect(told(read({ items: { 25: '15' } }))).toEqual(['measured-tilted']);
    expect(told(read({ sets: ['1', 'LED', '1000', '', '', '0'] }))).toEqual(['no-power']);
    // 100 cd per 1000 lm below the horizon is 62.8 % of the lamps.
    expect(told(read({ items: { 23: '62.8' } }))).toEqual([]);
    expect(told(read({ items: { 23: '80' } }))).toEqual(['output-differs']);
  });
});

describe('symmetries', () => {
  test('3 begins at C270 and goes through C0 to C90: the brighter side stays the brighter side', () => {
    const lamp = madePhotometry('lean-c90-3.ldt');
    expect(lamp.symmetry).toBe('about-c90');
    const at = (plane_deg: number) => intensityTowards_cd(lamp, { plane_deg, gamma_deg: 45 });
    expect(at(90)).toBeGreaterThan(2 * at(270));
    expect(at(0)).toBeCloseTo(at(180), 9);
    expect(at(45)).toBeCloseTo(at(135), 9);
  });

  test('3 is told of where the beam leans, since some files hold the other order; half a turn makes one of the other', () => {
    expect(told(madePhotometry('lean-c90-3.ldt'))).toContain('two-orders');
    expect(told(madePhotometry('oval-3.ldt'))).not.toContain('two-orders');
    const planes_deg = every(30, 0, 330);
    const light: NonNullable<LdtParts['light']> = ({ plane_deg, gamma_deg }) =>
      100 + gamma_deg * Math.sin((plane_deg * Math.PI) / 180);
    const own = read({ symmetry: 3, planes_deg, stored_deg: [270, 300, 330, 0, 30, 60, 90], light });
    const other = read({ symmetry: 3, planes_deg, stored_deg: every(30, 90, 270), light });
    for (const plane_deg of every(30, 0, 330))
      expect(intensityTowards_cd(other, { plane_deg: plane_deg + 180, gamma_deg: 50 })).toBeCloseTo(
        intensityTowards_cd(own, { plane_deg, gamma_deg: 50 }),
        9,
      );
  });

  test('planes at uneven angles are found by their angle', () => {
    const planes_deg = [0, 10, 40, 90, 140, 170, 180, 190, 220, 270, 320, 350];
    const light: NonNullable<LdtParts['light']> = ({ plane_deg }) =>
      100 + Math.round(10 * Math.sin((plane_deg * Math.PI) / 180));
    const lamp = read({ symmetry: 3, planes_deg, stored_deg: [270, 320, 350, 0, 10, 40, 90], light });
    for (const plane_deg of planes_deg)
      expect(intensityTowards_cd(lamp, { plane_deg, gamma_deg: 30 })).toBeCloseTo(
        light({ plane_deg, gamma_deg: 30 }),
        9,
      );
  });

  test('a file that states symmetry yet holds every plane is read whole, and told', () => {
    const light: NonNullable<LdtParts['light']> = ({ plane_deg, gamma_deg }) => 100 + (gamma_deg && plane_deg / 10);
    const lamp = read({ symmetry: 4, stored_deg: WHOLE, planes_deg: WHOLE, light });
    expect(lamp.symmetry).toBe('none');
    expect(intensityTowards_cd(lamp, { plane_deg: 300, gamma_deg: 20 })).toBeCloseTo(130, 9);
    expect(told(lamp)).toEqual(['all-planes-stored']);
  });

  test('a whole turn may list 360° or leave it out', () => {
    for (const planes_deg of [WHOLE, every(30, 0, 360)])
      expect(read({ symmetry: 0, planes_deg, stored_deg: planes_deg })).toMatchObject({
        symmetry: 'none',
        notices: [],
      });
  });
});

describe('damage', () => {
  test('an unreadable item that does not matter is left out, and told', () => {
    expect(told(read({ items: { 23: 'n/a', 16: '80 mm' } }))).toEqual(['not-a-number']);
  });

  test('an empty conversion factor is 1', () => {
    expect(peakOf(read({ items: { 24: '' } })).intensity_cd).toBe(100);
  });

  test.each<readonly [string, LdtParts, string, number]>([
    ['a symmetry that is none', { items: { 3: '5' } }, 'bad-count', 3],
    ['a symmetry of words', { items: { 3: 'none' } }, 'not-a-number', 3],
    ['counts beyond reason', { items: { 4: '99999', 6: '99999' } }, 'too-many-values', 6],
    ['a conversion factor of 0', { items: { 24: '0' } }, 'bad-multiplier', 24],
    ['no sets of lamps', { items: { 26: '0' } }, 'bad-count', 26],
    ['lamps without lumens', { sets: ['1', 'LED', '0', '', '', '5'] }, 'no-rated-flux', 29],
    ['a plane too few', { symmetry: 2, stored_deg: every(30, 0, 150) }, 'too-short', 54],
    ['a plane too many', { symmetry: 2, stored_deg: every(30, 0, 210) }, 'too-many-numbers', 54],
    ['no plane at 180°', { symmetry: 2, planes_deg: [0, 100, 200, 300], stored_deg: [0] }, 'plane-range', 46],
    ['C angles that begin elsewhere', { planes_deg: every(30, 15, 345) }, 'plane-range', 54],
    [
      'C angles that leave half the turn out',
      { symmetry: 0, planes_deg: every(30, 0, 180), stored_deg: every(30, 0, 180) },
      'plane-range',
      49,
    ],
    ['C angles that go back', { planes_deg: [0, 60, 30] }, 'angles-not-ascending', 45],
    ['γ beyond 180°', { gammas_deg: [0, 90, 190] }, 'angle-out-of-range', 57],
    ['γ that leave out the axis', { gammas_deg: [30, 90] }, 'axis-missing', 56],
    ['a negative intensity', { light: ({ gamma_deg }) => (gamma_deg === 10 ? -1 : 5) }, 'negative-intensity', 76],
    ['no light', { light: () => 0 }, 'no-light', 0],
  ])('%s is refused by line, with what to do', (_, parts, code, line) => {
    const found = refusal(parts);
    expect({ code: found.code, line: found.line }).toEqual({ code: `photometry.${code}`, line });
    expect(found.mend).toMatch(/^[A-Z].*\.$/);
  });

  test('a file cut anywhere is refused', () => {
    const lines = ldtText().split('\r\n');
    for (let kept = 0; kept < lines.length - 1; kept += 1)
      expect(readLdt(lines.slice(0, kept).join('\r\n')).ok, `${kept} lines`).toBe(false);
  });
});
