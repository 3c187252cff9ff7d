import { expect, test } from 'vitest';
import { fieldAt } from '../../../document/fieldAt.ts';
import { figuresOf, otherUnits, sayWritten } from './sayWritten.ts';

const at = (path: string) => fieldAt(`/kit/${path}`)!;

test('a length is said in the person’s units, whatever it was typed in', () => {
  const field = at('lenses/x/closeFocus');
  expect(sayWritten(field, '280 mm', 'metric')).toBe('280 mm');
  expect(sayWritten(field, '279.4 mm', 'imperial')).toBe('11 in');
  expect(sayWritten(field, '1\'6"', 'metric')).toBe('457 mm');
});

test('focal lengths, image circles and pixel pitches stay metric, as they are engraved', () => {
  expect(sayWritten(at('lenses/x/focalLength'), '35 mm', 'imperial')).toBe('35 mm');
  expect(sayWritten(at('cameras/x/pitch'), '6 µm', 'imperial')).toBe('6 µm');
  expect(otherUnits(at('lenses/x/imageCircle'), '43 mm', 'imperial')).toBeUndefined();
});

test('a spread is said with its value', () => {
  expect(sayWritten(at('rigs/x/latency'), '24 ms ± 2 ms', 'metric')).toBe('24 ms ± 2 ms');
  expect(sayWritten(at('rigs/x/latency'), '24 ms ± 10 %', 'metric')).toBe('24 ms ± 2.4 ms');
});

test('what cannot be read is said as it was typed', () => {
  expect(sayWritten(at('lenses/x/closeFocus'), 'near', 'metric')).toBe('near');
  expect(otherUnits(at('lenses/x/closeFocus'), 'near', 'imperial')).toBeUndefined();
});

test('the person’s units are added only where the other system is written', () => {
  const field = at('lenses/x/closeFocus');
  expect(otherUnits(field, '28 cm', 'metric')).toBeUndefined();
  expect(otherUnits(field, '254 mm', 'imperial')).toBe('10 in');
  expect(otherUnits(field, '10 in', 'metric')).toBe('254 mm');
  expect(otherUnits(field, '10 in', 'imperial')).toBeUndefined();
  expect(otherUnits(field, '5\'6"', 'imperial')).toBeUndefined();
  expect(otherUnits(at('rigs/x/latency'), '24 ms', 'imperial')).toBeUndefined();
});

test('a lens is told by its focal length, its stops and its nearest focus', () => {
  const item = { focalLength: '65 mm', widest: 'T2.8', narrowest: 'T22', closeFocus: '275 mm' };
  expect(figuresOf({ kindKey: 'lenses', item, system: 'metric' })).toEqual(['65 mm', 'T2.8 to T22', 'from 275 mm']);
  expect(figuresOf({ kindKey: 'lenses', item: {}, system: 'metric' })).toEqual([]);
});

test('a camera is told by its pixels, its formats and its memory', () => {
  const item = { activeArea: '4096x2304', memory: '96 GB', modes: { a: {}, b: {} } };
  expect(figuresOf({ kindKey: 'cameras', item, system: 'metric' })).toEqual(['4096 × 2304', '2 formats', '96 GB']);
});
