import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KINDS, type KindName } from './kinds.ts';
import { parseQuantity, showNumber, showQuantity, showShutter, unitSymbols, writeQuantity } from './quantity.ts';
import { stopFromThirds } from './stop.ts';

const NAMES = Object.keys(KINDS) as KindName[];
const DIMENSIONAL = NAMES.filter((name) => KINDS[name].units.length > 0);

/** The value of a text that must be readable. */
function read(kind: KindName, text: string): number {
  const parsed = parseQuantity(kind, text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.why}`);
  return parsed.value;
}

/** Why a text that must be refused is. */
function refusal(kind: KindName, text: string): string {
  const parsed = parseQuantity(kind, text);
  if (parsed.ok) throw new Error(`${text} was read as ${parsed.value}`);
  return parsed.why;
}

describe('quantities as people write them', () => {
  test.each<[KindName, string, number]>([
    ['time', '1/2000 s', 1 / 2000],
    ['time', '1/1.5s', 1 / 1.5],
    ['time', '500 µs', 500e-6],
    ['time', '2.5e-3 s', 0.0025],
    ['time', '.5 s', 0.5],
    ['time', '+3 min', 180],
    ['length', '240 mm', 0.24],
    ['length', '12 500 mm', 12.5],
    ['length', '12\u00a0500 mm', 12.5],
    ['length', '12\u202f500.5 mm', 12.5005],
    ['length', '½ in', 0.0127],
    ['length', '5½"', 0.1397],
    ['length', '5 1/2 in', 0.1397],
    ['length', '1 11/16 in', (27 / 16) * 0.0254],
    ['length', "6'", 1.8288],
    ['length', `5'6"`, 1.6764],
    ['length', `5' 6½"`, 1.6891],
    ['length', '5 ft 6 1/2 in', 1.6891],
    ['length', '5 feet 6 inches', 1.6764],
    ['length', '5′6″', 1.6764],
    ['length', "5'6''", 1.6764],
    ['illuminance', '41 klx', 41_000],
    ['luminance', '900 nits', 900],
    ['exposure', '0.16 lx·s', 0.16],
    ['angle', '172.8°', 172.8],
    ['angle', '−12.5 deg', -12.5],
    ['bytes', '64 GB', 64e9],
    ['bytes', '64 GiB', 64 * 2 ** 30],
    ['byteRate', '10 Gbit/s', 1.25e9],
    ['byteRate', '1.1 GB/s', 1.1e9],
    ['rate', '1000 fps', 1000],
    ['rate', '24000/1001', 24_000 / 1001],
    ['rate', '24000/1001 fps', 24_000 / 1001],
    ['stops', '1⅓ stops', 4 / 3],
    ['stops', '-1/3 stop', -1 / 3],
    ['stops', '1 2/3 EV', 5 / 3],
    ['charge', '20 e-', 20],
    ['charge', '2e3e-', 2000],
    ['tStop', 'T5.6⅓', stopFromThirds(16)],
    ['tStop', 't 8', 8],
    ['fStop', 'f/11', stopFromThirds(21)],
    ['fStop', 'F 4', 4],
    ['money', '120', 120],
    ['temperature', '-40 °F', -40],
    ['temperature', '68 F', 20],
    ['temperature', '0 K', -273.15],
    ['temperature', '−18 °C', -18],
    ['colourTemperature', '5600 K', 5600],
  ])('%s %j is %d', (kind, text, value) => {
    expect(Math.abs(read(kind, text) - value)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(value)));
  });

  test('any number of feet and inches is their sum', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 999 }),
        fc.integer({ min: 0, max: 1199 }),
        fc.constantFrom(`'`, ' ft ', '′', 'ft'),
        fc.constantFrom('"', ' in', '″', "''"),
        (feet, hundredths, foot, inch) => {
          const text = `${feet}${foot}${hundredths / 100}${inch}`;
          expect(read('length', text)).toBeCloseTo(feet * 0.3048 + (hundredths / 100) * 0.0254, 12);
        },
      ),
    );
  });

  test('decimal and binary amounts of data differ by what they should', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4096 }), fc.constantFrom(1, 2, 3, 4), (amount, power) => {
        const prefix = ['k', 'M', 'G', 'T'][power - 1]!;
        expect(read('bytes', `${amount} ${prefix}B`)).toBe(amount * 1000 ** power);
        expect(read('bytes', `${amount} ${prefix.toUpperCase()}iB`)).toBe(amount * 1024 ** power);
      }),
    );
  });
});

describe('what is written is read back', () => {
  const size = fc.double({ min: 1e-9, max: 1e12, noNaN: true });

  test.each(NAMES)('to the same number, to twelve digits, for %s', (kind) => {
    const isStop = kind === 'tStop' || kind === 'fStop';
    const value = isStop ? fc.double({ min: 0.5, max: 9999, noNaN: true }) : size;
    const mayBeNegative = !isStop && kind !== 'rate';
    fc.assert(
      fc.property(value, fc.boolean(), (magnitude, isNegative) => {
        const number = isNegative && mayBeNegative ? -magnitude : magnitude;
        const again = read(kind, writeQuantity(kind, number));
        // A scale with its zero elsewhere holds twelve digits of the sum.
        const scale = kind === 'temperature' ? Math.max(1, magnitude) : magnitude;
        expect(Math.abs(again - number)).toBeLessThanOrEqual(1e-12 * scale);
      }),
    );
    if (!isStop) expect(read(kind, writeQuantity(kind, 0))).toBe(0);
  });

  test('stops in thirds keep their marks', () => {
    for (let thirds = -6; thirds <= 42; thirds += 1)
      for (const kind of ['tStop', 'fStop'] as const)
        expect(read(kind, writeQuantity(kind, stopFromThirds(thirds))) / stopFromThirds(thirds)).toBeCloseTo(1, 14);
    expect(writeQuantity('tStop', stopFromThirds(16))).toBe('T5.6⅓');
    expect(writeQuantity('fStop', stopFromThirds(9))).toBe('f/2.8');
  });

  test('rates keep their exact ratio', () => {
    for (const rate of [24, 30, 48, 60, 120]) {
      expect(writeQuantity('rate', (rate * 1000) / 1001)).toBe(`${rate * 1000}/1001 fps`);
      expect(read('rate', writeQuantity('rate', (rate * 1000) / 1001))).toBe((rate * 1000) / 1001);
    }
    expect(writeQuantity('rate', 12.5)).toBe('25/2 fps');
    expect(read('rate', writeQuantity('rate', 23.976))).toBe(23.976);
  });

  test('shutters keep their fraction', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 1_000_000 }), (over) => {
        expect(writeQuantity('time', 1 / over)).toBe(`1/${over} s`);
        expect(read('time', `1/${over} s`)).toBe(1 / over);
      }),
    );
  });

  test('in units a person would choose', () => {
    expect(writeQuantity('length', 0.24)).toBe('240 mm');
    expect(writeQuantity('illuminance', 41_000)).toBe('41 klx');
    expect(writeQuantity('angle', 172.8)).toBe('172.8°');
    expect(writeQuantity('bytes', 72e9)).toBe('72 GB');
    expect(writeQuantity('time', 1e-9)).toBe('0.001 µs');
    expect(writeQuantity('time', 0)).toBe('0 s');
    expect(writeQuantity('length', -0.003)).toBe('-3 mm');
    expect(writeQuantity('temperature', -18)).toBe('-18 °C');
  });
});

describe('what cannot be meant is refused, and told how to be written', () => {
  test.each(DIMENSIONAL.filter((name) => name !== 'rate'))('a bare number is no %s: its units are named', (kind) => {
    const why = refusal(kind, '5');
    expect(why).toBe(
      `${KINDS[kind].name} needs a unit: ${unitSymbols(kind).join(', ')}; for example ${KINDS[kind].example}`,
    );
  });

  test.each<[KindName, string, string]>([
    ['length', '5 s', '"s" measures a time, but this is a length: m, cm, mm'],
    ['time', '5 m', '"m" measures a length, but this is a time: s, ms'],
    ['illuminance', '900 cd/m²', '"cd/m²" measures a luminance, but this is an illuminance: lx, klx, fc'],
    ['luminance', '41 klx', '"klx" measures an illuminance, but this is a luminance: cd/m²'],
    ['rate', '50 Hz', '"Hz" measures a frequency, but this is a frame rate: fps'],
    ['bytes', '1 GB/s', '"GB/s" measures a data rate, but this is an amount of data: B, kB'],
    ['power', '16 A', '"A" measures a current, but this is a power: W, mW, kW'],
    ['length', '5 mn', '"mn" is no unit of a length: m, cm, mm, µm, nm, in, ft; did you mean m?'],
    ['time', '5 secs', '"secs" is no unit of a time: s, ms, µs, ns, min, h'],
    ['money', '5 kg', '"kg" was not expected'],
  ])('%s %j: %s', (kind, text, why) => {
    expect(refusal(kind, text)).toContain(why);
  });

  test.each<[KindName, string, string]>([
    ['bytes', '72 Gb', 'GB'],
    ['bytes', '72 gb', 'GB'],
    ['bytes', '72 Gib', 'GiB'],
    ['bytes', '72 b', 'B'],
    ['bytes', '8 mB', 'MB'],
    ['byteRate', '10 gb/s', 'GB/s'],
    ['byteRate', '10 GB/S', 'GB/s'],
    ['byteRate', '10 Kb/S', 'kB/s'],
    ['power', '5 MW', 'mW'],
    ['current', '5 MA', 'mA'],
    ['frequency', '5 mHz', 'MHz'],
    ['time', '5 MS', 'ms'],
    ['length', '5 Mm', 'mm'],
    ['length', '5 MM', 'mm'],
    ['mass', '5 Mg', 'mg'],
    ['speed', '5 MM/S', 'mm/s'],
    ['viscosity', '5 MPa·s', 'mPa·s'],
    ['viscosity', '5 MPAS', 'mPa·s'],
  ])('%s %j might be two units, so it is none; %s is among those named', (kind, text, near) => {
    expect(refusal(kind, text)).toContain(`is no unit of ${KINDS[kind].name}`);
    expect(unitSymbols(kind)).toContain(near);
    expect(refusal(kind, text)).toContain(near);
  });

  test.each<[KindName, string, number]>([
    ['illuminance', '41 KLX', 41_000],
    ['length', '5 Metres', 5],
    ['length', '3 FT', 0.9144],
    ['length', '3 Microns', 3e-6],
    ['power', '2 KW', 2000],
    ['time', '3 Minutes', 180],
    ['bytes', '7 Bytes', 7],
    ['bytes', '7 kb'.replace('b', 'B'), 7000],
    ['decibels', '30 db', 30],
    ['frequency', '5 khz', 5000],
    ['mass', '2 LB', 0.90718474],
  ])('%s %j can be only one unit, whatever its case', (kind, text, value) => {
    expect(read(kind, text)).toBeCloseTo(value, 12);
  });

  const ABSURD = [
    '',
    ' ',
    'NaN s',
    'Infinity s',
    '1e999 s',
    '1/0 s',
    '0/0 s',
    '0x10 s',
    '--5 s',
    's',
    '1 2 s',
    '5 6 s',
    '12 34 s',
    '1 2345 s',
    '1 100/128 s',
    '1 3/2 s',
    '1 1/0 s',
    '1.5½ s',
    '1½/2 s',
    '1/2/3 s',
    '5 s s',
    '５ s',
    'a few s',
  ];
  test.each(ABSURD)('%j is no time', (text) => {
    expect(refusal('time', text)).not.toBe('');
  });

  test.each([`5'14"`, `5'12"`, `5'-3"`, `-5'6"`, `5'6`, `5'x"`])('%j is no length', (text) => {
    expect(refusal('length', text)).not.toBe('');
  });

  test.each(['1,5 mm', '41,000 mm', '-1,5 mm'])('%j is told of the decimal point', (text) => {
    expect(refusal('length', text)).toBe('write the decimal point as ".", and no commas; for example 240 mm');
  });

  test('a rounded name of a rate is refused by the ratio it stands for', () => {
    expect(refusal('rate', '23.976 fps')).toBe('23.976 is a rounded name; write 24000/1001');
    expect(refusal('rate', '29.97')).toBe('29.97 is a rounded name; write 30000/1001');
    expect(refusal('rate', '59.940 fps')).toBe('59.940 is a rounded name; write 60000/1001');
  });

  test('a T-stop is no f-number, nor the other way round', () => {
    expect(refusal('tStop', 'f/8')).toBe('a stop is written as T5.6, T5.6⅓ or f/8');
    expect(refusal('fStop', 'T8')).toBe('a stop is written as T5.6, T5.6⅓ or f/8');
  });

  test('a text of any length is answered, a long one by the way to write it', () => {
    expect(refusal('time', '1'.repeat(100_000))).toBe('a time is written like 1/2000 s');
  });

  test('no text at all is read to anything but a finite number or refused without a reason', () => {
    const units = fc.constantFrom(...DIMENSIONAL.flatMap((name) => unitSymbols(name)));
    const text = fc.oneof(
      fc.string(),
      fc.tuple(fc.stringMatching(/^[-+−]?[\d ./½⅓e]{0,12}$/), units).map(([number, unit]) => `${number} ${unit}`),
    );
    fc.assert(
      fc.property(fc.constantFrom(...NAMES), text, (kind, written) => {
        const parsed = parseQuantity(kind, written);
        expect(parsed.ok ? Number.isFinite(parsed.value) : parsed.why !== '').toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

describe('numbers for eyes', () => {
  test.each([
    [1234.5, 3, '1235'],
    [0.012345, 3, '0.0123'],
    [41_000, 3, '41000'],
    [1.5, 3, '1.5'],
    [100, 3, '100'],
    [-2.5, 3, '−2.5'],
    [0, 3, '0'],
    [-0, 3, '0'],
    [12_345_678, 3, '1.23e7'],
    [-1.5e-9, 2, '−1.5e−9'],
    [NaN, 3, 'unknown'],
    [Infinity, 3, 'unknown'],
  ])('%d to %d digits is %s', (value, digits, text) => {
    expect(showNumber(value, digits)).toBe(text);
  });

  test.each<[KindName, number, 'metric' | 'imperial', string, string]>([
    ['length', 0.24, 'metric', '240', 'mm'],
    ['length', 0.24, 'imperial', '9.45', 'in'],
    ['length', 2, 'imperial', '6.56', 'ft'],
    ['illuminance', 41_000, 'metric', '41', 'klx'],
    ['illuminance', 1076.39104, 'imperial', '100', 'fc'],
    ['luminance', 900, 'imperial', '263', 'fL'],
    ['temperature', -18, 'imperial', '−0.4', '°F'],
    ['mass', 0.12, 'imperial', '4.23', 'oz'],
    ['tStop', 5.6568542, 'metric', 'T5.6', ''],
    ['fStop', 6.3496, 'metric', 'f/5.6⅓', ''],
    ['stops', -1.26, 'metric', '−1.3', 'stops'],
    ['stops', -0.01, 'metric', '0.0', 'stops'],
    ['rate', 23.976023976, 'metric', '23.98', 'fps'],
    ['pixels', 2560, 'metric', '2560', 'px'],
    ['money', 120, 'metric', '120', ''],
    ['bytes', 0, 'metric', '0', 'B'],
    ['time', 0, 'metric', '0', 's'],
    ['length', 0, 'imperial', '0', 'in'],
    ['power', NaN, 'metric', 'unknown', ''],
  ])('%s %d, %s, is %s %s', (kind, value, system, number, unit) => {
    expect(showQuantity(kind, value, { system })).toEqual({ number, unit });
  });

  test.each([
    [1 / 2000, '1/2000', 's'],
    [1 / 9130.4, '1/9130', 's'],
    [1 / 48.5, '1/48.5', 's'],
    [0.25, '250', 'ms'],
    [2, '2', 's'],
    [0, '0', 's'],
  ])('a shutter of %d s is %s %s', (exposureTime_s, number, unit) => {
    expect(showShutter(exposureTime_s)).toEqual({ number, unit });
  });
});
