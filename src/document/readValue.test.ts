import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KINDS, type KindName } from '../base/kinds.ts';
import { halfLastDigit, isId, nearestId, readValue } from './readValue.ts';
import { choice, clock, flag, measured, number, quantity, rate, reference, shutter, size, text } from './shape.ts';
import type { Written } from './written.ts';

type AnyField = Parameters<typeof readField>[0];

function readField({ of, readAs }: { readonly of: Parameters<typeof readValue>[0]; readonly readAs: string }, written: Written) {
  return readValue(of, readAs, written);
} // prettier-ignore

const F = {
  time: quantity('exposureTime_s', 'time', ''),
  timeFromZero: quantity('deadTime_s', 'time', '', { zero: true }),
  focal: quantity('focalLength_mm', 'length', '', { most: 5 }),
  light: measured('illuminance_lx', 'illuminance', ''),
  latency: measured('latency_s', 'time', '', { zero: true }),
  headroom: measured('headroom_stops', 'stops', ''),
  speed: measured('speed_m_per_s', 'speed', ''),
  stop: quantity('stop', 'tStop', ''),
  modeRate: quantity('maxRate_fps', 'rate', ''),
  offset: quantity('readingOffset_stops', 'stops', ''),
  ratio: number('constantFraction', 'ratio', '', { least: 1e-6, most: 100 }),
  share: number('reframeFraction', 'fraction', '', { least: 0, most: 0.9 }),
  count: number('takeCount', 'count', '', { least: 1, most: 100 }),
  index: number('isoSpeed', 'isoSpeed', ''),
  rate: rate(''),
  shutter: shutter(''),
  size: size('pixels', ''),
  clock: clock('callTime_s', ''),
  choice: choice('', { metric: 'a', imperial: 'b' }),
  flag: flag('isSo', ''),
  text: text('', 5),
  reference: reference('kit.cameras', ''),
} satisfies Record<string, AnyField>;

describe('values as they are written', () => {
  test.each<[AnyField, Written, unknown]>([
    [F.time, '1/2000 s', 0.0005],
    [F.timeFromZero, '0 s', 0],
    [F.focal, '100 mm', 100],
    [F.focal, '35 mm', 35],
    [F.focal, '10 cm', 100],
    [F.light, '40 klx', 40_000],
    [F.stop, 'T5.6', 2 ** 2.5],
    [F.stop, 5.6, 2 ** 2.5],
    [F.stop, 2.1, 2.1],
    [F.modeRate, '938 fps', 938],
    [F.modeRate, 1000, 1000],
    [F.offset, '-1 stop', -1],
    [F.ratio, '1/40', 1 / 40],
    [F.ratio, 0.5, 0.5],
    [F.ratio, '150 %', 1.5],
    [F.share, '25 %', 0.25],
    [F.share, 0, 0],
    [F.count, 12, 12],
    [F.count, '12', 12],
    [F.index, 'EI 800', 800],
    [F.index, 'ISO 400', 400],
    [F.rate, 25, { num: 25, den: 1 }],
    [F.rate, 12.5, { num: 25, den: 2 }],
    [F.rate, '24000/1001', { num: 24_000, den: 1001 }],
    [F.rate, '1000 fps', { num: 1000, den: 1 }],
    [F.shutter, '1/2000 s', { exposureTime_s: 0.0005 }],
    [F.shutter, '172.8°', { shutterAngle_deg: 172.8 }],
    [F.shutter, '180 deg', { shutterAngle_deg: 180 }],
    [F.shutter, '360°', { shutterAngle_deg: 360 }],
    [F.size, '4096 x 2304', { widthCount: 4096, heightCount: 2304 }],
    [F.size, '4096×2304', { widthCount: 4096, heightCount: 2304 }],
    [F.clock, '07:30', 27_000],
    [F.clock, '7:30', 27_000],
    [F.clock, '35:59', 35 * 3600 + 59 * 60],
    [F.choice, 'metric', 'metric'],
    [F.flag, true, true],
    [F.flag, 'no', false],
    [F.text, 'five!', 'five!'],
    [F.reference, 'tall-2', 'tall-2'],
  ])('%#: %j is read as %j', (field, written, value) => {
    expect(readField(field, written)).toEqual({ ok: true, value });
  });
});

describe('spreads', () => {
  test.each<[AnyField, string, number, number]>([
    [F.speed, '1.5 m/s ± 0.2 m/s', 1.5, 0.2],
    [F.speed, '1.5 m/s ± 20 cm/s', 1.5, 0.2],
    [F.speed, '1.5 ± 0.2 m/s', 1.5, 0.2],
    [F.speed, '1.5 m/s +/- 0.2 m/s', 1.5, 0.2],
    [F.light, '40 klx ± 10 %', 40_000, 4000],
    [F.light, '40klx±10%', 40_000, 4000],
    [F.latency, '42 ms ± 3 ms', 0.042, 0.003],
    [F.latency, '0 s ± 3 ms', 0, 0.003],
    [F.headroom, '3 ± ½ stop', 3, 0.5],
    [F.headroom, '-1 stop ± 1/2 stop', -1, 0.5],
    [F.light, '40 klx ± 0 %', 40_000, 0],
  ])('%#: %s is %d with %d either way', (field, written, value, spread) => {
    const read = readField(field, written);
    if (!read.ok) throw new Error(read.what);
    expect(read.value).toBeCloseTo(value, 12);
    expect(read.spread).toBeCloseTo(spread, 12);
  });

  test.each([
    '1.5 m/s ±',
    '1.5 m/s ± fast',
    '1.5 m/s ± 0.2',
    '1.5 m/s ± 0.2 s',
    '1.5 m/s ± -0.2 m/s',
    '1.5 m/s ± 0.2 m/s ± 0.1 m/s',
    '1.5 m/s ± 100 %',
    '1.5 m/s ± 2 m/s',
  ])('%s is refused for its spread', (written) => {
    expect(readField(F.speed, written)).toMatchObject({ ok: false, code: 'spread.malformed' });
  });

  test('a spread after a value that takes none is refused as such', () => {
    expect(readField(F.time, '1 s ± 0.1 s')).toMatchObject({ ok: false, code: 'spread.unexpected' });
  });

  test('a value that cannot be read is named before its spread', () => {
    expect(readField(F.speed, 'fast ± 10 %')).toMatchObject({ ok: false, code: 'quantity.unreadable' });
  });
});

describe('refusals', () => {
  test.each<[AnyField, Written, string, RegExp]>([
    [F.time, 2000, 'unit.missing', /2000.*a time needs a unit: s, ms/],
    [F.light, '40000', 'unit.missing', /an illuminance needs a unit: lx/],
    [F.time, '5 lx', 'quantity.unreadable', /measures an illuminance, but this is a time/],
    [F.time, '5 sx', 'quantity.unreadable', /"sx" is no unit of a time/],
    [F.light, 'bright', 'quantity.unreadable', /write it like/],
    [F.light, '1,5 klx', 'quantity.unreadable', /decimal point/],
    [F.time, '0 s', 'value.too-low', /more than zero/],
    [F.time, '-1 s', 'value.too-low', /more than zero/],
    [F.timeFromZero, '-1 s', 'value.too-low', /at least/],
    [F.focal, '100 m', 'value.too-high', /is the unit right/],
    [F.light, '1e300 klx', 'value.too-high', /at most/],
    [F.light, '1e308 fc', 'value.not-finite', /finite/],
    [F.time, NaN, 'value.not-finite', /NaN/],
    [F.time, ['1 s'], 'value.wrong-type', /a list of 1/],
    [F.time, { s: 1 }, 'value.wrong-type', /a map of keys/],
    [F.time, true, 'value.wrong-type', /true/],
    [F.time, null, 'value.wrong-type', /nothing/],
    [F.stop, 'T0', 'quantity.unreadable', /above zero/],
    [F.ratio, 'slow', 'number.unreadable', /1\/40/],
    [F.ratio, '1/0', 'value.not-finite', /1\/0/],
    [F.ratio, 0, 'value.too-low', /at least 0.000001/],
    [F.ratio, false, 'value.wrong-type', /false/],
    [F.share, 25, 'value.too-high', /for a share write 25 %/],
    [F.share, 250, 'value.too-high', /at most 0.9$/],
    [F.count, 1.5, 'number.not-whole', /whole/],
    [F.count, 0, 'value.too-low', /at least 1/],
    [F.index, 0, 'value.too-low', /more than zero/],
    [F.count, Infinity, 'value.not-finite', /Infinity/],
    [F.rate, 23.976, 'rate.unreadable', /24000\/1001/],
    [F.rate, 'fast', 'rate.unreadable', /25/],
    [F.rate, 0, 'value.too-low', /above zero/],
    [F.rate, 1e9, 'value.too-high', /at most/],
    [F.rate, [], 'value.wrong-type', /list/],
    [F.shutter, 2000, 'unit.missing', /with its unit/],
    [F.shutter, '1/2000', 'unit.missing', /172\.8°/],
    [F.shutter, 'fast', 'shutter.unreadable', /1\/2000 s/],
    [F.shutter, '361°', 'value.too-high', /360°/],
    [F.shutter, '0°', 'value.too-low', /opens/],
    [F.shutter, '-1/50 s', 'value.too-low', /opens/],
    [F.shutter, '2 h', 'value.too-high', /1 h/],
    [F.shutter, true, 'value.wrong-type', /angle/],
    [F.size, '4096', 'size.unreadable', /4096 x 2304/],
    [F.size, '0 x 10', 'value.too-low', /1 x 1/],
    [F.size, '4096 x 2000000', 'value.too-high', /1000000/],
    [F.size, 4096, 'value.wrong-type', /pixels/],
    [F.clock, '36:00', 'clock.malformed', /35:59/],
    [F.clock, '12:60', 'clock.malformed', /07:30/],
    [F.clock, 'noon', 'clock.malformed', /07:30/],
    [F.clock, 730, 'value.wrong-type', /07:30/],
    [F.choice, 'Metric', 'choice.unknown', /metric, imperial/],
    [F.choice, 1, 'value.wrong-type', /metric, imperial/],
    [F.flag, 'maybe', 'value.wrong-type', /yes or no/],
    [F.text, 'longer', 'text.too-long', /6 characters, expected at most 5/],
    [F.text, 2024, 'value.wrong-type', /quotes round it: "2024"/],
    [F.text, [], 'value.wrong-type', /expected text/],
    [F.reference, 'Tall 2', 'id.malformed', /kit.cameras/],
    [F.reference, 7, 'value.wrong-type', /kit.cameras/],
  ])('%#: %j is refused as %s', (field, written, code, what) => {
    const read = readField(field, written);
    expect(read).toMatchObject({ ok: false, code });
    if (!read.ok) expect(read.what).toMatch(what);
  });

  test('a refusal names the word that was nearest', () => {
    expect(readField(F.choice, 'metrik')).toMatchObject({ near: 'metric' });
    expect(readField(F.reference, 'Tall 2')).toMatchObject({ near: 'Tall-2' });
  });

  test('whatever stands there, reading it gives a value or a reason and never throws', () => {
    const anything = fc.oneof(fc.jsonValue(), fc.string(), fc.double()) as fc.Arbitrary<Written>;
    fc.assert(
      fc.property(fc.constantFrom(...Object.values(F)), anything, (field, written) => {
        const read = readField(field, written);
        if (!read.ok) expect(read.what).toMatch(/^Found /);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('ids', () => {
  test.each(['a', 'Pour-1', 'x9'])('%s is an id', (text) => {
    expect(isId(text)).toBe(true);
  });

  test.each(['', '1a', '-a', 'a b', 'a_b', 'é', '__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])(
    '%j is no id',
    (text) => {
      expect(isId(text)).toBe(false);
    },
  );

  test('the nearest id keeps the letters and digits of what was typed', () => {
    expect(nearestId('1. Pour & splash!')).toBe('Pour-splash');
    expect(nearestId('42')).toBeUndefined();
    expect(nearestId('constructor')).toBeUndefined();
  });
});

describe('half a unit in the last written digit', () => {
  test.each<[KindName, string, number]>([
    ['length', '240 mm', 0.0005],
    ['length', '1.50 m', 0.005],
    ['illuminance', '41 klx', 500],
    ['length', '4 500 mm', 0.0005],
    ['time', '1.5e-3 s', 0.00005],
    ['time', '1/2000 s', 0.0005 * (0.5 / 2000)],
    ['length', '5 1/2 in', 0.0254 / 4],
    ['stops', '5⅓ stops', 1 / 6],
    ['stops', '½ stop', 1 / 4],
    ['stops', '-1.5 stops', 0.05],
    ['length', `5'6"`, 0.0254 / 2],
    ['length', '5 ft 6.5 in', 0.00127],
    ['temperature', '64 °F', 0.5 * (5 / 9)],
    ['tStop', 'T2.1', 0.05],
    ['tStop', 'T5.6⅓', 2 ** (16 / 6) * (2 ** (1 / 12) - 1)],
    ['rate', '938 fps', 0.5],
    ['rate', '24000/1001', 0],
    ['money', '120', 0.5],
    ['speed', '1.5 m/s ± 0.2 m/s', 0.05],
  ])('of a %s, %s, is %d', (kind, written, half) => {
    expect(halfLastDigit(kind, written)).toBeCloseTo(half, 12);
  });

  test('what cannot be read has no last digit', () => {
    expect(halfLastDigit('time', 'soon')).toBeUndefined();
  });

  test('every kind’s own example has one', () => {
    for (const [kind, { example }] of Object.entries(KINDS))
      expect(halfLastDigit(kind as KindName, example.split(' or ')[0]!), kind).toBeGreaterThan(0);
  });
});

describe('places in the frame of the table', () => {
  const read = (written: Written) => readValue({ shape: 'position' }, '', written);

  test.each([
    ['0.8 m, -1.2 m, 1.5 m', [0.8, -1.2, 1.5]],
    ["80 cm,  -4', 5'6\"", [0.8, -1.2192, 1.6764]],
    ['0, 0, 20 mm', [0, 0, 0.02]],
  ] as const)('"%s" is read', (written, [right_m, away_m, up_m]) => {
    const reading = read(written);
    expect(reading.ok && reading.value).toEqual({
      right_m: expect.closeTo(right_m, 9) as number,
      away_m: expect.closeTo(away_m, 9) as number,
      up_m: expect.closeTo(up_m, 9) as number,
    });
  });

  test.each([
    ['1 m, 2 m', 'position.unreadable'],
    ['1 m, 2 m, 3 m, 4 m', 'position.unreadable'],
    ['1 m, 2, 3 m', 'unit.missing'],
    ['1 m, two, 3 m', 'quantity.unreadable'],
    ['1 m, 2000 m, 3 m', 'value.too-high'],
  ])('"%s" is refused as %s', (written, code) => {
    expect(read(written)).toMatchObject({ ok: false, code });
  });

  test('a list of numbers is refused with what is expected', () => {
    expect(read([1, 2, 3])).toMatchObject({ ok: false, what: expect.stringContaining('three lengths') as string });
  });
});
