import { describe, expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { checkTyped, clearingPatch, completeUnit, findWritten, writingPatch } from './shotEdits.ts';

const written = {
  longsecond: 1,
  defaults: { blur: '2 px', takes: 3 },
  shots: { pour: { title: 'Pour', frameWidth: '240 mm' } },
};

describe('what is written for a key', () => {
  test('is the shot’s own before the defaults', () => {
    expect(findWritten(written, 'pour', 'frameWidth')).toMatchObject({ text: '240 mm', holder: 'shot' });
    expect(findWritten(written, 'pour', 'takes')).toMatchObject({ text: '3', holder: 'defaults', path: '/defaults/takes' });
    expect(findWritten(written, 'pour', 'depth')).toMatchObject({ text: '', holder: 'nobody', path: '/shots/pour/depth' });
  });
}); // prettier-ignore

describe('writing a text', () => {
  test('is an addition that brings the section it needs', () => {
    const patch = writingPatch(written, '/shots/pour/action/speed', '1.5 m/s');
    expect(applyPatch(written, withParents(written, patch))).toMatchObject({
      shots: { pour: { action: { speed: '1.5 m/s' } } },
    });
  });

  test('writes a count as a number and a quantity as text', () => {
    expect(writingPatch(written, '/shots/pour/takes', '4')).toEqual([
      { op: 'add', path: '/shots/pour/takes', value: 4 },
    ]);
    expect(writingPatch(written, '/shots/pour/depth', ' 40 mm ')).toEqual([
      { op: 'add', path: '/shots/pour/depth', value: '40 mm' },
    ]);
  });

  test('empty takes away what is there, and does nothing where nothing is', () => {
    expect(writingPatch(written, '/shots/pour/frameWidth', '  ')).toEqual([
      { op: 'remove', path: '/shots/pour/frameWidth' },
    ]);
    expect(clearingPatch(written, ['/shots/pour/depth'])).toEqual([]);
  });
});

describe('a bare number', () => {
  test.each([
    ['/shots/pour/frameWidth', '250', '240 mm', '250 mm'],
    ['/shots/pour/frameWidth', '0.3', '1.2 m', '0.3 m'],
    ['/shots/pour/depth', '40', '', '40 mm'],
    ['/lighting/day/illuminance', '45', '41 klx ± 10 %', '45 klx'],
    ['/shots/pour/takes', '4', '3', '4'],
    ['/shots/pour/stop', '8', 'T5.6', '8'],
    ['/shots/pour/frameWidth', '250 m', '240 mm', '250 m'],
  ])('at %s, %s typed over %j is %s', (pointer, typed, before, whole) =>
    expect(completeUnit(pointer, typed, before)).toBe(whole),
  );
});

describe('what is typed', () => {
  test('is refused with what would fit', () => {
    expect(checkTyped('/shots/pour/frameWidth', '250 lx', '240 mm')).toMatchObject({ ok: false });
    expect(checkTyped('/shots/pour/seen', 'lit-thru', '')).toMatchObject({ ok: false });
  });

  test('says how a bare number is read', () => {
    expect(checkTyped('/shots/pour/frameWidth', '250', '240 mm')).toEqual({ ok: true, says: 'read as 250 mm' });
    expect(checkTyped('/shots/pour/frameWidth', '250 mm', '240 mm')).toEqual({ ok: true });
    expect(checkTyped('/shots/pour/frameWidth', '', '240 mm')).toEqual({ ok: true });
  });
});
