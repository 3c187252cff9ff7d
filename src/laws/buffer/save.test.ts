import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { recordTime_s } from './recordTime.ts';
import { dataRate_B_per_s, ethernetPayload_B_per_s, keptSize_B, saveTime_s } from './save.ts';

describe('published values', () => {
  published('ethernetPayload_B_per_s', ethernetPayload_B_per_s, [
    {
      source: 'ethernet-payload',
      at: 'IPv4, timestamps, of 100',
      given: { lineRate_B_per_s: 100 },
      expected: '94.1482',
    },
    {
      source: 'ethernet-payload',
      at: 'IPv4, minimal headers, of 100',
      given: { lineRate_B_per_s: 100, timestamps: false },
      expected: '94.9285',
    },
  ]);
});

test.each([
  [1, 117.69],
  [10, 1176.85],
  [25, 2942.13],
  [100, 11_768.53],
])('%i Gb/s carry %f MB/s, worked by hand', (line_Gb, payload_MB) => {
  const payload_B_per_s = ethernetPayload_B_per_s({ lineRate_B_per_s: line_Gb * 125e6 });
  expect(Math.abs(payload_B_per_s / 1e6 - payload_MB)).toBeLessThanOrEqual(0.005);
});

test('jumbo frames lift 10 Gb/s to 1237.55 MB/s, and dropping timestamps 1 Gb/s to 118.66, worked by hand', () => {
  expect(ethernetPayload_B_per_s({ lineRate_B_per_s: 1.25e9, mtu_B: 9000 }) / 1e6).toBeCloseTo(1237.55, 2);
  expect(ethernetPayload_B_per_s({ lineRate_B_per_s: 125e6, timestamps: false }) / 1e6).toBeCloseTo(118.66, 2);
});

const rate = fc.double({ min: 1e6, max: 1e11, noNaN: true });

test('a payload is always less than its line, and larger packets lose less', () => {
  fc.assert(
    fc.property(rate, fc.integer({ min: 68, max: 65_000 }), (lineRate_B_per_s, mtu_B) => {
      const payload = ethernetPayload_B_per_s({ lineRate_B_per_s, mtu_B });
      expect(payload).toBeLessThan(lineRate_B_per_s);
      expect(ethernetPayload_B_per_s({ lineRate_B_per_s, mtu_B: mtu_B + 1 })).toBeGreaterThan(payload);
    }),
  );
});

test('saving takes as long as the slower of link and medium, whichever that is', () => {
  fc.assert(
    fc.property(rate, rate, (a, b) => {
      const both_s = saveTime_s({ size_B: 1e9, linkRate_B_per_s: a, mediaRate_B_per_s: b });
      expect(both_s).toBe(saveTime_s({ size_B: 1e9, linkRate_B_per_s: b, mediaRate_B_per_s: a }));
      expect(both_s).toBe(saveTime_s({ size_B: 1e9, linkRate_B_per_s: Math.min(a, b) }));
    }),
  );
});

test('24 GB over 1.2 GB/s onto a medium of 0.8 GB/s take 30 s, worked by hand', () => {
  expect(saveTime_s({ size_B: 24e9, linkRate_B_per_s: 1.2e9, mediaRate_B_per_s: 0.8e9 })).toBeCloseTo(30, 12);
});

test('keeping all that a memory held is keeping the memory', () => {
  const stream = { frameSize_B: 3_110_400, frameRate_fps: 1750 };
  expect(keptSize_B({ ...stream, keptTime_s: recordTime_s({ memory_B: 36e9, ...stream }) })).toBeCloseTo(36e9, 3);
});

test('3,110,400 bytes 2000 times a second are 6.2208 GB/s, worked by hand', () => {
  expect(dataRate_B_per_s({ frameSize_B: 3_110_400, frameRate_fps: 2000 })).toBe(6_220_800_000);
});

test('faults are refused by name', () => {
  expect(() => saveTime_s({ size_B: 0, linkRate_B_per_s: 1 })).toThrow('size_B must be positive');
  expect(() => saveTime_s({ size_B: 1, linkRate_B_per_s: NaN })).toThrow('linkRate_B_per_s must be positive');
  expect(() => saveTime_s({ size_B: 1, linkRate_B_per_s: 1, mediaRate_B_per_s: 0 })).toThrow(
    'mediaRate_B_per_s must be positive',
  );
  expect(() => keptSize_B({ frameSize_B: 1, frameRate_fps: 1, keptTime_s: 0 })).toThrow('keptTime_s must be positive');
  expect(() => dataRate_B_per_s({ frameSize_B: 1, frameRate_fps: -1 })).toThrow('frameRate_fps must be positive');
  expect(() => ethernetPayload_B_per_s({ lineRate_B_per_s: 1, mtu_B: 67 })).toThrow('mtu_B must be from 68 to 65535');
  expect(() => ethernetPayload_B_per_s({ lineRate_B_per_s: 1, mtu_B: 1500.5 })).toThrow('mtu_B must be a whole number');
  expect(() => ethernetPayload_B_per_s({ lineRate_B_per_s: 0 })).toThrow('lineRate_B_per_s must be positive');
});
