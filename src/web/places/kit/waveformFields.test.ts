import { describe, expect, test } from 'vitest';
import { fieldAt } from '../../../document/fieldAt.ts';
import { readShoot } from '../../../document/read.ts';
import { WAVEFORM_KINDS } from '../../../document/schema.ts';
import type { WrittenRecord } from '../../../document/written.ts';
import { waveformOf } from '../../../laws/flicker/lamp.ts';
import { kindNamed, lampAlone, standinFor, standinsElsewhere, unusedKeys, WAVEFORM_FIELDS, wavePath, type WaveformKind } from './waveformFields.ts'; // prettier-ignore

const KINDS = Object.keys(WAVEFORM_KINDS) as readonly WaveformKind[];

const shootOf = (lamp: WrittenRecord) => readShoot({ longsecond: 1, kit: { lamps: { spot: lamp } } }).shoot;
const alone = (waveform: WrittenRecord, more: WrittenRecord = {}) =>
  lampAlone(shootOf({ title: 'Spot', power: '2 kW', waveform, ...more }), 'spot');

describe.each(KINDS)('a waveform of kind %s', (kind) => {
  const taken = alone({ kind });

  test('can be drawn from its kind alone', () => {
    expect(taken).toMatchObject({ basis: 'stated' });
    expect(waveformOf(taken!.lamp!).samples.length).toBeGreaterThan(0);
  });

  test('has a field of the form for each figure that plans take of it', () => {
    const keys = WAVEFORM_FIELDS[kind].map(({ key }) => wavePath('spot', key));
    for (const path of keys) expect(fieldAt(path), path).toBeDefined();
    const used = taken!.figures.map(({ path }) => path).filter((path) => path.startsWith(wavePath('spot')));
    expect(keys).toEqual(expect.arrayContaining(used));
  });

  test('shows what stands in for each figure left out, with why, unless another takes its place', () => {
    for (const field of WAVEFORM_FIELDS[kind]) {
      const standin = standinFor(taken, 'spot', field);
      if (field.inPlaceOf === undefined) expect(standin, field.key).toMatchObject({ text: /\S/, why: /\S/ });
      else expect(standin).toBeUndefined();
    }
  });

  test('written with a depth uses it, and so the depth is no key left unused', () => {
    if (kind === 'steady') return;
    expect(unusedKeys(kind, { kind, depth: 0.1 })).toEqual([]);
    const deep = alone({ kind, depth: 0.123 });
    expect(deep!.figures.some(({ value }) => value === 0.123)).toBe(true);
  });
});

const standin = (kind: WaveformKind, key: string, written: WrittenRecord = {}) =>
  standinFor(
    alone({ kind, ...written }),
    'spot',
    WAVEFORM_FIELDS[kind].find((field) => field.key === key)!,
  );

test('figures that stand in are said in the units of the trade, and written ones have no stand-in', () => {
  expect(standin('square', 'recovery')).toMatchObject({ text: '150 µs' });
  expect(standin('square', 'rate')).toMatchObject({ text: '75 Hz' });
  expect(standin('tungsten', 'supply')).toMatchObject({ text: '230 V' });
  expect(standin('square', 'notch', { notch: 0.04 })).toBeUndefined();
  expect(standin('led-ripple', 'shape')!.text).toBe('a sine');
});

test('what stands in from elsewhere is told too: the mains, and the colour of a filament', () => {
  const titles = standinsElsewhere(alone({ kind: 'tungsten' }), 'spot', 'tungsten').map(({ path }) => path);
  expect(titles).toContain('/shoot/mains/frequency');
  expect(titles).toContain('/kit/lamps/spot/colour');
});

test('a lamp of which only the kind is written is taken for the usual of its kind', () => {
  expect(alone({}, { kind: 'led' })).toMatchObject({ basis: 'assumed', lamp: { kind: 'led-pulses' } });
  expect(alone({})).toMatchObject({ unknown: /how it ripples/ });
});

test('what a kind does not use is told, and a kind nobody knows uses nothing', () => {
  expect(unusedKeys('led-steady', { kind: 'led-steady', depth: 0.1, notch: 0.2 })).toEqual(['notch']);
  expect(unusedKeys(undefined, { kind: 'candle', depth: 0.1 })).toEqual(['depth']);
  expect([kindNamed('square'), kindNamed('candle'), kindNamed(7)]).toEqual(['square', undefined, undefined]);
});
