import { expect, test } from 'vitest';
import { sineWaveform, steadyWaveform } from '../../../laws/flicker/waveform.ts';
import { axesAround } from './chartGrid.ts';
import { IN_STEP, standingOf, swingTable, swingWords, tellAt } from './chartWords.ts';

const SINE = {
  groups: [{ waveform: sineWaveform({ ripple_Hz: 100, depthFraction: 0.4 }), shareFraction: 1, isMainsLocked: true }],
  playback_fps: 25,
};

test('what was picked is read back to its numbers', () => {
  expect(standingOf({ rate: '960', shutter: '1/2000 s' })).toEqual({ rate_fps: 960, exposureTime_s: 0.0005 });
  expect(standingOf({ rate: 'fast', shutter: '1/2000 s' })).toBeUndefined();
});

test('a point says how far the frames swing and how fast they beat on the screen', () => {
  const { says, fits } = tellAt(SINE, { rate_fps: 1000, exposureTime_s: 0.0005 });
  expect(fits).toBe(true);
  expect(says).toMatch(/^Frames swing by 1\.2 stop, 2\.5 times a second on the screen/);
});

test('a shutter longer than its frame is told as such, and one of exactly a frame is not', () => {
  expect(tellAt(SINE, { rate_fps: 1000, exposureTime_s: 0.002 })).toEqual({ says: 'Longer than a frame, which lasts 1/1000 s.', fits: false }); // prettier-ignore
  expect(tellAt(SINE, { rate_fps: 100, exposureTime_s: 1 / 100 }).fits).toBe(true);
});

test('swings are said to two figures, none and endless ones in words', () => {
  expect([0.0437, 0, Infinity].map(swingWords)).toEqual(['0.044', 'under 0.001', 'no limit']);
});

test('the table holds where the shot stands, and a shutter of a whole period shows no swing', () => {
  const now = { rate_fps: 937, exposureTime_s: 1 / 2345 };
  const { rates, rows } = swingTable(SINE, axesAround(now, 1062), now);
  expect(rates.map(({ label }) => label)).toContain('937');
  expect(rows.map(({ shutter }) => shutter)).toContain('1/2345 s');
  expect(rows.every(({ cells }) => cells.length === rates.length)).toBe(true);
  const slowest = rates[0]!.value;
  const null_s = 1 / 100;
  const [top] = swingTable(SINE, { rate: { scale: 'log', from: 50, to: 1000 }, shutter: { scale: 'log', from: 1e-4, to: null_s } }, { rate_fps: 100, exposureTime_s: null_s }).rows; // prettier-ignore
  expect(slowest).toBeLessThanOrEqual(100);
  expect(top!.cells[0]).toBe('under 0.001');
  expect(top!.cells.at(-1)).toBe('too long');
});

test('a steady light shows no swing anywhere', () => {
  const now = { rate_fps: 1000, exposureTime_s: 1 / 2000 };
  const steady = { groups: [{ waveform: steadyWaveform(), shareFraction: 1, isMainsLocked: true }], playback_fps: 25 };
  const said = new Set(swingTable(steady, axesAround(now, undefined), now).rows.flatMap(({ cells }) => cells));
  expect([...said].sort()).toEqual(['too long', 'under 0.001']);
});

test('a rate in step with the lamp is told from one that shows no swing at all: takes can differ', () => {
  const axes = { rate: { scale: 'log', from: 50, to: 1000 }, shutter: { scale: 'log', from: 1e-4, to: 1 / 50 } } as const; // prettier-ignore
  const { rates, rows } = swingTable(SINE, axes, { rate_fps: 100, exposureTime_s: 1 / 1000 });
  const row = rows.find(({ shutter }) => shutter === '1/1000 s')!;
  expect(row.cells[rates.findIndex(({ value }) => value === 100)]).toBe(IN_STEP);
  expect(row.cells[rates.findIndex(({ value }) => value === 1000)]).toMatch(/^\d/);
});
