import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf, resultsOf } from '../../../laws/law.ts';
import { readInput, reckon } from '../../../laws/reckon.ts';
import {
  commandLine,
  completeText,
  exampleTexts,
  readTexts,
  sayAlso,
  sayReading,
  sayValue,
  typeValue,
} from './lawText.ts';

const field = (id: string, name: string) => inputsOf(lawNamed(id)!).find((each) => each.name === name)!;
const result = (id: string) => resultsOf(lawNamed(id)!)[0]!;

describe('a bare number', () => {
  const length = field('inverse-square', 'distance_m');
  const system = 'metric';

  test('takes the unit that stood there before', () => {
    expect(completeText(length, '2', { before: '3 ft', likely: 1.5, system })).toBe('2 ft');
  });

  test('takes the unit a person of this unit system would mean where nothing stood', () => {
    expect(completeText(length, '2', { before: '', likely: 1.5, system })).toBe('2 m');
    expect(completeText(length, '2', { before: '', likely: 1.5, system: 'imperial' })).toBe('2 ft');
  });

  test('is left alone where the field has no unit, or has one already', () => {
    expect(completeText(field('light-needed', 'isoSpeed'), '800', { before: '', likely: 800, system })).toBe('800');
    expect(completeText(length, '2 mm', { before: '3 ft', likely: 1.5, system })).toBe('2 mm');
  });

  test('is a stop with its letter where a stop is meant', () => {
    expect(completeText(field('light-needed', 'stop'), '5.6⅓', { before: '', likely: 8, system })).toBe('T5.6⅓');
    expect(completeText(field('depth-of-field', 'fNumber'), '8', { before: '', likely: 8, system })).toBe('f/8');
  });

  test('in a field of millimetres is millimetres, in either unit system', () => {
    const focal = field('field-width', 'focalLength_mm');
    expect(completeText(focal, '85', { before: '', likely: 100, system: 'imperial' })).toBe('85 mm');
  });
});

test('empty fields are missing where there is no default, and a text that cannot be read says why', () => {
  const read = readTexts(lawNamed('light-needed')!, {
    texts: { stop: 'T8', exposureTime_s: '1/2000 lx' },
    before: {},
    system: 'metric',
  });
  expect(read.given).toEqual({ stop: 8 });
  expect(read.missing.map(({ name }) => name)).toEqual(['isoSpeed']);
  expect([...read.problems.keys()]).toEqual(['exposureTime_s']);
  expect(read.problems.get('exposureTime_s')).toMatch(/an illuminance, but this is a time/);
});

test('how a text was read is told only where it says more than the text', () => {
  expect(sayReading(field('shutter-angle', 'exposureTime_s'), '1/2000 s', 1 / 2000, 'metric')).toBe('= 500 µs');
  expect(sayReading(field('footcandles', 'illuminance_lx'), '40 klx', 40_000, 'metric')).toBe('');
  expect(sayReading(field('footcandles', 'illuminance_lx'), '40 klx', 40_000, 'imperial')).toBe('= 3716 fc');
  const room = field('highlight-room', 'baseHeadroom_stops');
  for (const text of ['5 stops', '5.0 stops', '5.00stops']) expect(sayReading(room, text, 5, 'metric')).toBe('');
  expect(sayReading(room, '5⅓ stops', 5 + 1 / 3, 'metric')).toBe('= 5.3 stops');
});

describe('a result said another way', () => {
  test('exposure times are fractions of a second first, as crews say them', () => {
    expect(sayValue(result('shutter-time'), 1 / 2000, 'metric')).toEqual({ number: '1/2000', unit: 's' });
    expect(sayAlso(result('shutter-time'), 1 / 2000, 'metric')).toBe('500 µs');
  });

  test('lights are told in the other unit too', () => {
    // 1 fc is 1 lm/ft², so 1/0.3048² lx.
    expect(sayAlso(result('light-needed'), 1000 / 0.3048 ** 2, 'metric')).toBe('1000 fc');
  });

  test('a stop between marks shows its number, one on a mark does not', () => {
    expect(sayAlso(result('stop-allowed'), 9.19, 'metric')).toBe('9.19 exactly');
    expect(sayAlso(result('stop-allowed'), 8, 'metric')).toBe('');
  });

  test('stops are a factor, fractions a percentage, exact ratios a decimal', () => {
    expect(sayAlso(result('stops-between-rates'), 3, 'metric')).toBe('a factor of 8');
    expect(sayAlso(result('playback-speed'), 0.2, 'metric')).toBe('20 %');
    expect(sayAlso(result('exact-expansion'), { num: 1001, den: 24 }, 'metric')).toBe('41.7083');
  });
});

test('the command line quotes what a shell would take apart', () => {
  const texts = { stop: 'T5.6⅓', exposureTime_s: '1/2000 s', isoSpeed: '800' };
  expect(commandLine(lawNamed('light-needed')!, texts, 'imperial')).toBe(
    "longsecond reckon light-needed stop='T5.6⅓' exposureTime_s='1/2000 s' isoSpeed=800 --imperial",
  );
});

describe.each(CATALOGUE.map((law) => [law.id, law] as const))('%s', (_, law) => {
  test('its worked example can be typed, is short, and is read back as itself', () => {
    const texts = exampleTexts(law);
    const example = exampleOf(law);
    const isStop = (kind: string | undefined) => kind === 'fStop' || kind === 'tStop';
    for (const each of inputsOf(law)) {
      const text = texts[each.name];
      if (text === undefined) continue;
      expect(text.length, text).toBeLessThanOrEqual(20);
      const read = readInput(each, text);
      if (!read.ok) throw new Error(read.why);
      const value = example[each.name]!;
      if (typeof value !== 'number') expect(read.value).toEqual(value);
      // An engraved f/11 stands for the exact stop, 11.31.
      else expect(Math.abs(Number(read.value) / value - 1)).toBeLessThan(isStop(each.kind) ? 0.03 : 1e-12);
      expect(typeValue(each, read.value)).toBe(text);
    }
    expect('results' in reckon(law, texts)).toBe(true);
    expect(readTexts(law, { texts, before: {}, system: 'metric' })).toMatchObject({ missing: [] });
  });
});
