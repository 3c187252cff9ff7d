import { describe, expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { dropRecordPatch, mainsOfRate, measuredOf, takeRecordPatch } from './recordEdits.ts';

const file = {
  name: 'spot at 60.csv',
  sha256: 'c'.repeat(64),
  size_B: 81_234,
  kind: 'application/octet-stream',
} as const;
const AS = { level: '60 %', colour: '4300 K', supply: 'generator', hasOwnRate: true };
const SHOOT: Written = { longsecond: 1, kit: { lamps: { spot: { title: 'Spot' }, soft: { title: 'Soft' } } } };

const laid = (written: Written, patch: Parameters<typeof withParents>[1]): Written =>
  applyPatch(written, withParents(written, patch));

const taken = (lampId = 'spot', on: Written = SHOOT): Written =>
  laid(on, takeRecordPatch(on, { lampId, file, as: AS }));

describe('taking a record', () => {
  test('names its file and what it was measured of, in one edit that the shoot reads without a problem', () => {
    const { shoot, problems } = readShoot(taken());
    expect(problems).toEqual([]);
    expect(shoot.files['light-1']).toMatchObject({ name: 'spot at 60.csv', sha256: 'c'.repeat(64), size_B: 81_234 });
    expect(shoot.kit.lamps['spot']!.measured['measured-1']).toMatchObject({
      title: 'spot at 60.csv',
      file: 'light-1',
      levelFraction: 0.6,
      colourTemperature_K: 4300,
      supply: 'generator',
      hasOwnRate: true,
    });
  });

  test('leaves out what was left empty', () => {
    const as = { level: ' ', colour: '', supply: '', hasOwnRate: false };
    const written = laid(SHOOT, takeRecordPatch(SHOOT, { lampId: 'soft', file, as }));
    expect(measuredOf(written, 'soft')).toEqual([['measured-1', { title: 'spot at 60.csv', file: 'light-1' }]]);
    expect(readShoot(written).problems).toEqual([]);
  });

  test('of the same bytes for a second lamp names one file', () => {
    const both = taken('soft', taken());
    expect(Object.keys(readShoot(both).shoot.files)).toEqual(['light-1']);
    expect(measuredOf(both, 'soft')[0]![1]['file']).toBe('light-1');
  });
});

describe('taking one out', () => {
  test('takes its file with it, unless another lamp has it too', () => {
    const both = taken('soft', taken());
    const left = laid(both, dropRecordPatch(both, 'spot', 'measured-1'));
    expect(readShoot(left).shoot.files['light-1']).toBeDefined();
    const none = laid(left, dropRecordPatch(left, 'soft', 'measured-1'));
    expect(readShoot(none).shoot.files).toEqual({});
    expect(measuredOf(none, 'soft')).toEqual([]);
  });

  test('of what is not there changes nothing', () => {
    expect(dropRecordPatch(SHOOT, 'spot', 'measured-1')).toEqual([]);
  });
});

test.each([
  [100.4, 50, 50],
  [50.2, 50, 50],
  [120, 60, 60],
  [120, 50, 60],
  [100, undefined, 50],
  [300, 60, 60],
  [613.7, 50, undefined],
  [25_000, 50, undefined],
] as const)('a light of %d Hz where the mains are of %s Hz goes with mains of %s', (rate_Hz, mains_Hz, of_Hz) => {
  expect(mainsOfRate({ rate_Hz, mains_Hz })).toBe(of_Hz);
});
