import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readShootText } from '../../../document/text.ts';
import { sameKitText } from './sameKit.ts';

test('a shoot begun with the kit of another has all of it, none of its shots, and no problem', () => {
  const demo = readShootText(readFileSync(new URL('../../../../demo/shoot.yaml', import.meta.url), 'utf8'));
  const { shoot, problems } = readShootText(sameKitText('Day 2', demo.written));
  expect(problems).toEqual([]);
  expect(shoot.shoot.title).toBe('Day 2');
  expect(shoot.kit).toEqual(demo.shoot.kit);
  expect(shoot.lighting).toEqual(demo.shoot.lighting);
  expect(shoot.defaults).toEqual(demo.shoot.defaults);
  expect(shoot.shots).toEqual({});
  expect(shoot.board).toEqual({});
});

test('defaults that speak of shots or frames are left behind', () => {
  const written = {
    longsecond: 1,
    shots: { pour: {} },
    board: { b1: {} },
    defaults: { after: ['pour'], board: ['b1'], stop: 'T8' },
  };
  expect(readShootText(sameKitText('Next', written)).problems).toEqual([]);
});

test('files that lamps name go along, and no others', () => {
  const written = {
    longsecond: 1,
    files: { beam: { name: 'beam.ies' }, trace: { name: 'trace.csv' }, sketch: { name: 'sketch.png' } },
    kit: { lamps: { spot: { file: 'beam', measured: { full: { file: 'trace' } } } } },
  };
  const { shoot, problems } = readShootText(sameKitText('Next', written));
  expect(problems).toEqual([]);
  expect(Object.keys(shoot.files)).toEqual(['beam', 'trace']);
});
