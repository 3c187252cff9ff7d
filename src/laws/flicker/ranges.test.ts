import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exposureTable, meanLight } from './exposure.ts';
import { pulseWaveform } from './led.ts';
import { exposedLights, rangesMet } from './ranges.ts';
import { sineWaveform } from './waveform.ts';

const SINE = exposureTable(sineWaveform({ ripple_Hz: 100, depthFraction: 0.4 }));
const PULSES = exposureTable(pulseWaveform({ pulse_Hz: 1700, dutyFraction: 0.3, lowFraction: 0.1 }));

const tables = fc.constantFrom(SINE, PULSES);
const exposure = fc.oneof(fc.constant(0), fc.double({ min: 1e-7, max: 0.05, noNaN: true }));

test('every exposure holds the light that it holds when it is worked out alone', () => {
  fc.assert(
    fc.property(tables, exposure, fc.double({ min: 0, max: 1, noNaN: true }), (table, exposureTime_s, first) => {
      exposedLights(table, { exposureTime_s, count: 17, first }).forEach((light, i) => {
        const start_s = ((first + i / 17) % 1) * table.period_s;
        // At no length the light itself counts, and its edge lies where rounding puts it.
        if (exposureTime_s > 0) expect(light).toBeCloseTo(meanLight(table, { start_s, exposureTime_s }), 7);
      });
    }),
  );
});

describe('the phases that a clip meets', () => {
  /** One clip after another, each looked at frame by frame. */
  function slowly(table: typeof SINE, exposureTime_s: number, count: number, arcFraction: number) {
    let [widest, narrowest] = [-Infinity, Infinity];
    for (let start = 0; start < 400; start += 1) {
      let [least, most] = [Infinity, -Infinity];
      for (let of = 0; of < count; of += 1)
        for (let step = 0; step <= 60; step += 1) {
          const phase = start / 400 / count + of / count + (arcFraction * step) / 60;
          const light = meanLight(table, { start_s: phase * table.period_s, exposureTime_s });
          [least, most] = [Math.min(least, light), Math.max(most, light)];
        }
      [widest, narrowest] = [Math.max(widest, most - least), Math.min(narrowest, most - least)];
    }
    return { widest, narrowest };
  }

  test.each([
    [1, 0],
    [1, 0.00001],
    [1, 0.13],
    [1, 0.9],
    [3, 0.2],
    [7, 0],
    [40, 0.011],
  ])('%i of them, each over %d of the cycle, range as far as clips looked at one by one', (count, arcFraction) => {
    const exposureTime_s = 0.0013;
    const { worst, best, all } = rangesMet(SINE, exposureTime_s, { count, arcFraction });
    const { widest, narrowest } = slowly(SINE, exposureTime_s, count, arcFraction);
    expect(worst.most - worst.least).toBeCloseTo(widest, 3);
    expect(best.most - best.least).toBeCloseTo(narrowest, 3);
    expect(worst.most - worst.least).toBeLessThanOrEqual(all.most - all.least + 1e-6);
  });

  test('a single phase has no range, however short the exposure', () => {
    const { worst, all } = rangesMet(PULSES, 1e-6, { count: 1, arcFraction: 0 });
    expect(worst.most - worst.least).toBe(0);
    expect(all.most).toBeGreaterThan(2);
  });
});
