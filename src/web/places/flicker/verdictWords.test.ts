import { expect, test } from 'vitest';
import { seenFlicker } from '../../../laws/flicker/seen.ts';
import { sineWaveform, steadyWaveform } from '../../../laws/flicker/waveform.ts';
import { verdictFigures } from './verdictWords.ts';

const seen = (given: { readonly ripple_Hz: number; readonly rate_fps: number; readonly exposureTime_s: number; readonly depthFraction?: number }) =>
  seenFlicker([{ waveform: sineWaveform({ depthFraction: 0.4, ...given }), shareFraction: 1 }], {
    frameRate_fps: given.rate_fps,
    exposureTime_s: given.exposureTime_s,
    playback_fps: 25,
  }); // prettier-ignore

const said = (of: Parameters<typeof verdictFigures>[0]) =>
  verdictFigures(of).map(({ title, shown: { number, unit }, says }) => [title, `${number} ${unit}`.trim(), says]);

test('a ripple says its swing in stops and of the mean, and its beat on the screen', () => {
  // 1 + 0.4 cos at 100 Hz over 1/500 s: 1.1348 stop and 74.839 % peak to peak, worked apart; 100 Hz at 1000 fps and 25 fps is 2.5 Hz.
  expect(said(seen({ ripple_Hz: 100, rate_fps: 1003, exposureTime_s: 0.002 - 0.0011 }))[2]![1]).toBe('2.5 Hz');
  const [swing, share] = said(seen({ ripple_Hz: 100, rate_fps: 317.3, exposureTime_s: 0.002 }));
  expect(swing![1]).toBe('1.1 stop');
  expect(share![1]).toBe('75 %');
});

test('where the first frame falls matters only at rates in step with the lamp, and is then said', () => {
  const inStep = said(seen({ ripple_Hz: 100, rate_fps: 200, exposureTime_s: 0.001 }));
  expect(inStep[0]![2]).toMatch(/where the first frame falls best$/);
  expect(said(seen({ ripple_Hz: 100, rate_fps: 317.3, exposureTime_s: 0.001 }))[0]![2]).toBeUndefined();
});

test('a slow beat is told by how long it lasts', () => {
  expect(said(seen({ ripple_Hz: 100.1, rate_fps: 100, exposureTime_s: 0.001 }))[2]).toEqual(['Beat on screen', '0.025 Hz', 'once in 40 s']); // prettier-ignore
});

test('a steady light has no beat, and a dark frame no end to its swing', () => {
  const steady = seenFlicker([{ waveform: steadyWaveform(), shareFraction: 1 }], { frameRate_fps: 1000, exposureTime_s: 0.0005, playback_fps: 25 }); // prettier-ignore
  expect(said(steady).map(([, figure]) => figure)).toEqual(['under 0.001 stop', 'under 0.01 %', 'none']);
  const dark = { ...steady, worst: { ...steady.worst, peakToPeak_stops: Infinity } };
  expect(said(dark)[0]![1]).toBe('no limit');
});
