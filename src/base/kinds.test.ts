import { describe, expect, test } from 'vitest';
import { baseUnitsPer, KINDS, kindOfSuffix, ownUnit, unitSuffix, type Kind, type KindName } from './kinds.ts';
import { parseQuantity } from './quantity.ts';

const EVERY: readonly (readonly [KindName, Kind])[] = (Object.keys(KINDS) as KindName[]).map((name) => [
  name,
  KINDS[name],
]);
const WITH_UNITS = EVERY.filter(([, kind]) => kind.units.length > 0);

describe.each(EVERY)('the kind %s', (name, kind) => {
  test('reads its own example', () => {
    for (const text of kind.example.split(' or ')) expect(parseQuantity(name, text).ok, text).toBe(true);
  });

  test('is found again by the unit its names end in', () => {
    if (kind.unit === '') expect(kind.units).toEqual([]);
    else expect(kindOfSuffix(kind.unit)).toBe(name);
  });
});

describe.each(WITH_UNITS)('the units of %s', (name, kind) => {
  test('have no spelling in common', () => {
    const spellings = kind.units.flatMap(({ symbol, also = [] }) => [symbol, ...also]);
    expect(spellings.filter((spelling, i) => spellings.indexOf(spelling) !== i)).toEqual([]);
  });

  test('are read under every spelling to the same value', () => {
    for (const { symbol, also = [], per, offset = 0 } of kind.units)
      for (const spelling of [symbol, ...also])
        expect(parseQuantity(name, `3 ${spelling}`), spelling).toEqual({ ok: true, value: 3 * per + offset });
  });

  test('hold one that the number in code is in, and every one a value is shown in, smallest first', () => {
    expect(kind.units.some(({ per }) => per === 1)).toBe(true);
    for (const shown of [kind.show.metric, kind.show.imperial]) {
      const sizes = shown.map((symbol) => kind.units.find((unit) => unit.symbol === symbol)?.per);
      expect(sizes.length).toBeGreaterThan(0);
      expect(sizes).not.toContain(undefined);
      expect(sizes).toEqual(sizes.toSorted((a, b) => a! - b!));
    }
  });
});

describe('the unit of a name', () => {
  test.each([
    ['exposureTime_s', 's', 'time'],
    ['dropSpeed_m_per_s', 'm_per_s', 'speed'],
    ['luminance_cd_per_m2', 'cd_per_m2', 'luminance'],
    ['meterConstant_lx_s', 'lx_s', 'exposure'],
    ['focalLength_mm', 'mm', 'length'],
    ['shutterAngle_deg', 'deg', 'angle'],
    ['tilt_rad', 'rad', 'angle'],
    ['colour_K', 'K', 'colourTemperature'],
    ['air_degC', 'degC', 'temperature'],
    ['fNumber', '', undefined],
    ['length_furlongs', 'furlongs', undefined],
  ])('%s ends in %j, of the kind %s', (name, suffix, kind) => {
    expect(unitSuffix(name)).toBe(suffix);
    expect(kindOfSuffix(suffix)).toBe(kind);
  });

  test('that is not the one its kind has in code says how large it is', () => {
    expect(baseUnitsPer('mm')).toBe(0.001);
    expect(baseUnitsPer('um')).toBe(1e-6);
    expect(baseUnitsPer('rad')).toBeCloseTo(57.29577951308232, 12);
    expect(baseUnitsPer('s')).toBe(1);
    expect(ownUnit('mm')?.symbol).toBe('mm');
    expect(ownUnit('m')).toBeUndefined();
  });
});

describe('units that a definition fixes', () => {
  const value = (name: KindName, text: string) => {
    const read = parseQuantity(name, text);
    return read.ok ? read.value : read.why;
  };

  test('are right to the last digit', () => {
    expect(value('length', '1 in')).toBe(0.0254);
    expect(value('length', '1 ft')).toBe(0.3048);
    expect(value('mass', '1 lb')).toBe(0.45359237);
    expect(value('bytes', '1 KiB')).toBe(1024);
    expect(value('bytes', '1 kB')).toBe(1000);
    expect(value('byteRate', '10 Gb/s')).toBe(1.25e9);
    expect(value('time', '1 h')).toBe(3600);
    expect(value('speed', '36 km/h')).toBeCloseTo(10, 12);
    expect(value('viscosity', '1 cP')).toBe(0.001);
  });

  test('of light: a footcandle is 10.764 lx, a footlambert 3.426 cd/m²', () => {
    expect(value('illuminance', '1 fc')).toBeCloseTo(10.764, 3);
    expect(value('luminance', '1 fL')).toBeCloseTo(3.426, 3);
  });
});
