import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { postTriggerFraction as settingFor } from '../buffer/trigger.ts';
import { bestTriggerSettingOf, triggerCatchOf } from './triggerCatch.ts';

const WANTED = { recordTime_s: 0.5, action_s: 0.15, headHandle_s: 0.05, tailHandle_s: 0.1 };

describe('reference values', () => {
  published(
    'caught by a person',
    (postTriggerFraction: number) => triggerCatchOf({ ...WANTED, postTriggerFraction }).caughtFraction,
    [
      { source: 'numerical-library', at: '0.15 s in 0.5 s, set to 50 %', given: 0.5, expected: '.25021' },
      { source: 'numerical-library', at: '0.15 s in 0.5 s, set to 20 %', given: 0.2, expected: '.97562' },
      { source: 'numerical-library', at: '0.15 s in 0.5 s, set to 0 %', given: 0, expected: '.25092' },
    ],
  );
  published('tail lost', () => triggerCatchOf({ ...WANTED, postTriggerFraction: 0 }).tailLostFraction, [
    { source: 'numerical-library', at: '0.15 s in 0.5 s, set to 0 %', given: {}, expected: '.74738' },
  ]);
  published('best setting', () => bestTriggerSettingOf(WANTED).postTriggerFraction, [
    { source: 'numerical-library', at: '0.15 s in 0.5 s', given: {}, expected: '.20' },
  ]);
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
const reaction = fc.record({
  normalMean_s: fc.double({ min: 0, max: 0.3, noNaN: true }),
  normalSpread_s: fc.double({ min: 0.001, max: 0.1, noNaN: true }),
  tailMean_s: fc.double({ min: 0, max: 0.1, noNaN: true }),
});

test('where the action fits, it is caught, or its head is lost, or its tail, and nothing else', () => {
  fc.assert(
    fc.property(share, reaction, fc.double({ min: -0.3, max: 0.3, noNaN: true }), (p, delay, cueAt_s) => {
      const caught = triggerCatchOf({ ...WANTED, ...delay, cueAt_s, postTriggerFraction: p });
      expect(caught.caughtFraction + caught.headLostFraction + caught.tailLostFraction).toBeCloseTo(1, 9);
    }),
  );
});

test('keeping more after the trigger loses more heads and fewer tails', () => {
  fc.assert(
    fc.property(share, share, reaction, (a, b, delay) => {
      const less = triggerCatchOf({ ...WANTED, ...delay, postTriggerFraction: Math.min(a, b) });
      const more = triggerCatchOf({ ...WANTED, ...delay, postTriggerFraction: Math.max(a, b) });
      expect(more.headLostFraction).toBeGreaterThanOrEqual(less.headLostFraction - 1e-12);
      expect(more.tailLostFraction).toBeLessThanOrEqual(less.tailLostFraction + 1e-12);
    }),
  );
});

test('no setting of the camera catches more than the best one', () => {
  fc.assert(
    fc.property(reaction, fc.integer({ min: 0, max: 50 }), (delay, step) => {
      const best = bestTriggerSettingOf({ ...WANTED, ...delay, stepFraction: 0.02 });
      const other = triggerCatchOf({ ...WANTED, ...delay, postTriggerFraction: step * 0.02 });
      expect(other.caughtFraction).toBeLessThanOrEqual(best.caughtFraction);
    }),
    { numRuns: 40 },
  );
});

test('a device that hardly varies is caught for certain at the setting for its known delay', () => {
  const device = { normalMean_s: 0.03, normalSpread_s: 0.001, tailMean_s: 0 };
  const set = settingFor({ ...WANTED, delay_s: device.normalMean_s });
  expect(triggerCatchOf({ ...WANTED, ...device, postTriggerFraction: set }).caughtFraction).toBeCloseTo(1, 12);
});

test('an action longer than the buffer is never caught, at any setting', () => {
  const best = bestTriggerSettingOf({ recordTime_s: 0.1, action_s: 0.15 });
  expect(best.caughtFraction).toBe(0);
});

test('what has no meaning is refused by name', () => {
  expect(() => triggerCatchOf({ ...WANTED, postTriggerFraction: 1.5 })).toThrow('postTriggerFraction must be from 0');
  expect(() => triggerCatchOf({ ...WANTED, action_s: 0, postTriggerFraction: 0 })).toThrow('action_s must be positive');
  expect(() => triggerCatchOf({ ...WANTED, cueAt_s: NaN, postTriggerFraction: 0 })).toThrow('cueAt_s must be finite');
  expect(() => bestTriggerSettingOf({ ...WANTED, stepFraction: 0 })).toThrow('stepFraction must be positive');
  expect(() => bestTriggerSettingOf({ ...WANTED, stepFraction: 1e-6 })).toThrow('stepFraction must be from 0.0001');
});
