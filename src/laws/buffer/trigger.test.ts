import fc from 'fast-check';
import { expect, test } from 'vitest';
import { postTriggerFraction, triggerRoom_s } from './trigger.ts';

const WANTED = { recordTime_s: 0.5, action_s: 0.15, headHandle_s: 0.05, tailHandle_s: 0.1 };

test('half a second of buffer leaves 0.2 s of room for 0.15 s of action with 0.05 and 0.1 s around it, worked by hand', () => {
  expect(triggerRoom_s(WANTED)).toBeCloseTo(0.2, 12);
});

test('with no delay the setting is one less head handle and half the room, in shares of the buffer', () => {
  expect(postTriggerFraction({ ...WANTED, delay_s: 0 })).toBeCloseTo(1 - (0.05 + 0.1) / 0.5, 12);
});

const length = fc.double({ min: 0.01, max: 2, noNaN: true });
const handle = fc.double({ min: 0, max: 0.5, noNaN: true });
const spare = fc.double({ min: 0, max: 3, noNaN: true });

test('whatever fits is kept whole at the setting given, with as much room before it as after where the setting is free', () => {
  fc.assert(
    fc.property(
      length,
      handle,
      handle,
      spare,
      fc.double({ min: -0.2, max: 0.5, noNaN: true }),
      (action_s, headHandle_s, tailHandle_s, room_s, delay_s) => {
        const wanted = {
          recordTime_s: headHandle_s + action_s + tailHandle_s + room_s,
          action_s,
          headHandle_s,
          tailHandle_s,
        };
        let fraction;
        try {
          fraction = postTriggerFraction({ ...wanted, delay_s });
        } catch (error) {
          if (error instanceof RangeError) return;
          throw error;
        }
        const keptFrom_s = delay_s - (1 - fraction) * wanted.recordTime_s;
        const keptTo_s = delay_s + fraction * wanted.recordTime_s;
        const before_s = -headHandle_s - keptFrom_s;
        const after_s = keptTo_s - (action_s + tailHandle_s);
        expect(before_s).toBeGreaterThanOrEqual(-1e-6);
        expect(after_s).toBeGreaterThanOrEqual(-1e-6);
        if (fraction > 0 && fraction < 1) expect(before_s).toBeCloseTo(after_s, 9);
      },
    ),
  );
});

test('a later trigger keeps less after it, and never more or less than the buffer has', () => {
  const set = (delay_s: number) => postTriggerFraction({ ...WANTED, delay_s });
  expect(set(0.1)).toBeCloseTo(set(0) - 0.2, 12);
  expect(set(0.4)).toBe(0);
  expect(set(-0.2)).toBe(1);
});

test('an action too long for the buffer, a delay no setting can hold, and faults are refused by name', () => {
  expect(triggerRoom_s({ recordTime_s: 0.1, action_s: 0.15 })).toBeCloseTo(-0.05, 12);
  expect(() => postTriggerFraction({ recordTime_s: 0.1, action_s: 0.15, delay_s: 0 })).toThrow(
    'recordTime_s must hold',
  );
  expect(() => postTriggerFraction({ ...WANTED, delay_s: 0.6 })).toThrow('delay_s must let the buffer still hold');
  expect(() => postTriggerFraction({ ...WANTED, delay_s: -0.4 })).toThrow('delay_s must let the buffer still hold');
  expect(() => postTriggerFraction({ ...WANTED, delay_s: NaN })).toThrow('delay_s must be finite');
  expect(() => triggerRoom_s({ ...WANTED, action_s: 0 })).toThrow('action_s must be positive');
  expect(() => triggerRoom_s({ ...WANTED, headHandle_s: -1 })).toThrow('headHandle_s must be zero or above');
});
