import { Linter } from 'eslint';
import { describe, expect, test } from 'vitest';
import { unitOfName, units } from './eslintUnits.mjs';

function complaints(code: string): readonly string[] {
  const config = [{ plugins: { units }, rules: { 'units/no-mixing': 'error' as const } }];
  return new Linter().verify(code, config).map(({ message }) => message);
}

describe('the unit of a name', () => {
  test.each([
    ['exposureTime_s', 's'],
    ['dropSpeed_m_per_s', 'm_per_s'],
    ['supplyPower_W', 'W'],
    ['FLAT_RECEPTOR_CONSTANT_lx_s', 'lx_s'],
    ['FOOT_m', 'm'],
  ])('%s is in %s', (name, unit) => {
    expect(unitOfName(name)).toBe(unit);
  });

  test.each(['fNumber', 'isoSpeed', 'MAX_COUNT', '_', '_unused', 'x'])('%s carries none', (name) => {
    expect(unitOfName(name)).toBeUndefined();
  });
});

describe('numbers in different units', () => {
  test('the complaint names both numbers and both units', () => {
    expect(complaints('a_s = b_ms;')).toEqual(['a_s is in s, b_ms in ms: convert one of them.']);
  });

  test.each([
    ['assigned', 'const a_s = shot.b_ms;'],
    ['assigned from a call', 'const a_lx = light_fc(shot);'],
    ['added', 'use(a_m + b_mm);'],
    ['subtracted with a sign', 'use(a_m - -b_mm);'],
    ['compared', 'if (a_s < shots[0].b_ms) use();'],
    ['given by name', 'use({ exposureTime_s: duration_ms });'],
    ['taken apart under another name', 'const { a_s: b_ms } = shot;'],
    ['counted up', 'total_s += part_ms;'],
  ])('are refused when %s', (_, code) => {
    expect(complaints(code)).toHaveLength(1);
  });

  test.each([
    ['multiplied and divided', 'use(a_m / b_s, a_m * b_mm);'],
    ['converted on the way', 'const a_s = b_ms / 1000;'],
    ['of one unit', 'const a_s = b_s + c_s;'],
    ['without a unit', 'const a_s = 3; const ratio = b_m;'],
    ['reached by a computed key', 'const a_s = shot[b_ms];'],
  ])('are allowed when %s', (_, code) => {
    expect(complaints(code)).toEqual([]);
  });
});
