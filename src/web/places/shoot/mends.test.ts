import { describe, expect, test } from 'vitest';
import { applyPatch } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { isTypable, mendsOf } from './mends.ts';

const only = (written: Written) => {
  const { problems } = readShoot(written);
  expect(problems).toHaveLength(1);
  return problems[0]!;
};

const after = (written: Written, label: RegExp) => {
  const mend = mendsOf(written, only(written)).find((each) => label.test(each.label))!;
  return applyPatch(written, mend.patch);
};

const shot = (more: Readonly<Record<string, Written>>): Written => ({
  longsecond: 1,
  lighting: { key: {} },
  shots: { pour: { title: 'Pour', ...more }, crown: {} },
});

describe('a mend', () => {
  test('renames a key that was mistyped, and keeps its value', () => {
    const written = shot({ shuter: '1/2000 s' });
    const mended = after(written, /^Call it shutter$/);
    expect(readShoot(mended).problems).toEqual([]);
    expect(readShoot(mended).shoot.shots['pour']!.shutter).toEqual({ exposureTime_s: 1 / 2000 });
  });

  test('writes the word or the id that was meant', () => {
    expect(readShoot(after(shot({ seen: 'lit-onn' }), /^Write lit-on$/)).problems).toEqual([]);
    expect(readShoot(after(shot({ lighting: 'kye' }), /^Write key$/)).shoot.shots['pour']!.lighting).toBe('key');
  });

  test('mends one item of a list and leaves the others', () => {
    const mended = after({ ...(shot({}) as object), order: { shots: ['crown', 'puor'] } }, /^Write pour$/);
    expect(readShoot(mended).shoot.order.shots).toEqual(['crown', 'pour']);
  });

  test('renames an id that cannot stand', () => {
    const written: Written = { longsecond: 1, shots: { 'pour 1': { title: 'Pour' } } };
    expect(Object.keys(readShoot(after(written, /^Call it pour-1$/)).shoot.shots)).toEqual(['pour-1']);
  });

  test('never overwrites a key that is there already', () => {
    const written = shot({ shuter: '1/2000 s', shutter: '1/500 s' });
    expect(mendsOf(written, only(written)).map(({ label }) => label)).toEqual(['Take it out']);
  });

  test('takes out what cannot be mended, in maps and in lists', () => {
    expect(readShoot(after(shot({ stop: 'wide open' }), /^Take it out$/)).problems).toEqual([]);
    const listed = after({ ...(shot({}) as object), order: { shots: ['crown', 'zzzzzz'] } }, /^Take it out$/);
    expect(readShoot(listed).shoot.order.shots).toEqual(['crown']);
  });

  test('writes the version where it is missing', () => {
    expect(readShoot(after({ shots: {} }, /^Write it$/)).problems).toEqual([]);
  });
});

test('a plain value can be typed anew where its problem is told; unknown keys and items of lists cannot', () => {
  const typable = (written: Written) => isTypable(written, only(written));
  expect(typable(shot({ stop: 'wide open' }))).toBe(true);
  expect(typable(shot({ shuter: '1/2000 s' }))).toBe(false);
  expect(typable(shot({ rigs: ['zzz'] }))).toBe(false);
});
