import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dragFallTime_s } from '../motion/fall.ts';
import { fireOffset_s } from './lead.ts';

test('with a berry that takes 459.66 ms, a drop is fired at 89.98 ms and a jet at 331.66 ms, reckoned beside the law (scipy for the falls)', () => {
  const drop_s = dragFallTime_s({ fallHeight_m: 0.6, diameter_m: 0.004, density_kg_per_m3: 998.2 });
  const longestLead_s = 0.03 + dragFallTime_s({ fallHeight_m: 0.9, diameter_m: 0.025, density_kg_per_m3: 950 });
  expect(longestLead_s).toBeCloseTo(0.45966, 5);
  expect(fireOffset_s({ latency_s: 0.015, travel_s: drop_s, longestLead_s })).toBeCloseTo(0.08998, 5);
  expect(fireOffset_s({ latency_s: 0.008, travel_s: 0.12, longestLead_s })).toBeCloseTo(0.33166, 5);
});

const time = fc.double({ min: 0, max: 5, noNaN: true });

test('fired then, it is there when the longest is; the longest itself is fired at zero', () => {
  fc.assert(
    fc.property(time, time, time, time, (latency_s, travel_s, rest_s, more_s) => {
      const lead_s = latency_s + travel_s + rest_s;
      const fire_s = fireOffset_s({ latency_s, travel_s, rest_s, longestLead_s: lead_s + more_s });
      expect(fire_s + lead_s).toBeCloseTo(lead_s + more_s, 12);
      expect(fireOffset_s({ latency_s, travel_s, rest_s, longestLead_s: lead_s })).toBe(0);
    }),
  );
});

test('a negative time, or a lead beyond the longest, is refused by name', () => {
  const given = { latency_s: 0.1, travel_s: 0.2, longestLead_s: 0.4 };
  expect(() => fireOffset_s({ ...given, travel_s: -1 })).toThrow('travel_s must be zero or above');
  expect(() => fireOffset_s({ ...given, rest_s: 1 })).toThrow('lead_s must be from 0 to 0.4');
});
