/** Takes drawn by chance, held against the shares that closed forms give. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BERRY, DROP, MEETING, PERSON, RIGS, withChanges } from '../../../test/cues.ts';
import { changed, readSound, SMALL } from '../../../test/shoots.ts';
import type { Written } from '../../document/written.ts';
import { inDepthFraction } from '../../laws/chance/meeting.ts';
import { normalShare } from '../../laws/chance/normal.ts';
import { planShot } from '../planShot.ts';
import { sampleShot } from './sample.ts';
import type { SampledTiming, Share } from './types.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

function rolled(written: Written, { sampleCount = 4000, seed = 41, id = 'one' } = {}) {
  const shoot = readSound(written);
  const plan = planShot(shoot, id, 1);
  const sampled = sampleShot(shoot, plan, { sampleCount, seed });
  return { plan, sampled };
}

const sampledOf = (...changes: readonly Changes[]): SampledTiming => rolled(withChanges(...changes)).sampled!;

/** Whether a share drawn lies within four standard errors of the true one. */
function expectNear({ fraction }: Share, trueFraction: number, count: number): void {
  const error = Math.sqrt((trueFraction * (1 - trueFraction)) / count);
  expect(Math.abs(fraction - trueFraction)).toBeLessThanOrEqual(4 * error + 1e-12);
}

describe('shares drawn lie within four standard errors of the closed forms', () => {
  const jitter = fc.integer({ min: 1, max: 40 }).map((tenths) => `${tenths / 10} ms`);

  test('for all that must meet, however they vary and whatever the seed', () => {
    fc.assert(
      fc.property(fc.array(jitter, { minLength: 3, maxLength: 3 }), fc.integer({ min: 1, max: 90 }), fc.nat(2 ** 31), (jitters, tenths, seed) => {
        const [drop, berry, jet] = jitters;
        const written = withChanges(MEETING, {
          '/kit/rigs/dropper/jitter': drop,
          '/kit/rigs/latch/jitter': berry,
          '/kit/rigs/nozzle/jitter': jet,
          '/shots/one/meeting/tolerance': `${tenths / 10} ms`,
        });
        const { plan, sampled } = rolled(written, { seed });
        expectNear(sampled!.meets!, plan.timing!.meeting!.chanceFraction!, 4000);
      }),
      { numRuns: 25, seed: 41 },
    );
  }); // prettier-ignore

  test.each([
    ['a person', PERSON],
    ['a person and a setting that is fixed', { ...PERSON, '/shots/one/trigger/post': '35 %' }],
    ['a person who misses some', { ...PERSON, '/shots/one/trigger/never': '12 %', '/shots/one/trigger/early': '5 %' }],
    [
      'a sound that varies much',
      { ...PERSON, '/shots/one/trigger': { by: 'sound', latency: '40 ms', jitter: '70 ms' } },
    ],
  ] as const)('for the trigger of %s', (_, changes) => {
    const { plan, sampled } = rolled(withChanges(changes), { sampleCount: 20_000 });
    expectNear(sampled!.inMemory!, plan.timing!.trigger!.chanceFraction, 20_000);
    expect(sampled!.all).toEqual(sampled!.inMemory);
  });

  test('for one thing that lands here and there: in focus as the law of landing has it, in the frame as a normal spread', () => {
    const cue = { ...DROP, place: '30 mm' };
    const { plan, sampled } = rolled(withChanges(RIGS, { '/shots/one/cues': { drop: cue } }), { sampleCount: 20_000 });
    const { sharpNear_m, sharpFar_m, crops } = plan.picture!;
    const inDepth = inDepthFraction({ spread_m: 0.03, nearLimit_m: sharpNear_m!, farLimit_m: sharpFar_m! });
    expectNear(sampled!.inDepth!, inDepth, 20_000);
    // Alone it is late for nobody: only how far beside its path it falls counts.
    const half = Math.min(...crops.map(({ width_m }) => width_m)) / 2;
    expectNear(sampled!.inTheFrame!, 2 * normalShare(half / 0.03) - 1, 20_000);
    expect(sampled!.meets).toBeUndefined();
  });

  test('for two of which one is late: apart in the picture by their speeds times half of what parts them', () => {
    const jitter = { '/kit/rigs/dropper/jitter': '40 ms', '/kit/rigs/latch/jitter': '0 ms' };
    const cues = { '/shots/one/cues': { drop: DROP, berry: BERRY }, '/shots/one/meeting': { tolerance: '10 ms' } };
    const { plan, sampled } = rolled(withChanges(RIGS, jitter, cues), { sampleCount: 20_000 });
    const fastest = Math.max(...plan.timing!.cues.map(({ arrivalSpeed_m_per_s }) => arrivalSpeed_m_per_s!));
    const half = Math.min(...plan.picture!.crops.map(({ height_m }) => height_m)) / 2;
    expectNear(sampled!.inTheFrame!, 2 * normalShare((2 * half) / fastest / 0.04) - 1, 20_000);
  });
});

describe('a shot without chance', () => {
  const STILL = { '/kit/rigs/dropper/jitter': '0 ms', '/kit/rigs/latch/jitter': '0 ms', '/kit/rigs/nozzle/jitter': '0 ms' }; // prettier-ignore

  test('always meets, with no error and one take for one good one', () => {
    const sampled = sampledOf(MEETING, STILL);
    expect(sampled.meets).toEqual({ fraction: 1, standardErrorFraction: 0 });
    expect([sampled.all.fraction, sampled.takesAllowedCount]).toEqual([1, 1]);
  });

  test('whose trigger comes when the memory cannot hold it is never kept, and no number of takes would do', () => {
    const late = { by: 'electric', answers: '3 s', latency: '1 ms', jitter: '0 ms' };
    const sampled = sampledOf(PERSON, { '/shots/one/trigger': late });
    expect(sampled.inMemory).toEqual({ fraction: 0, standardErrorFraction: 0 });
    expect(sampled.takesAllowedCount).toBeUndefined();
  });
});

test('good takes are good by everything at once: no more of them than by any one', () => {
  const place = { '/shots/one/cues/drop/place': '20 mm', '/shots/one/cues/berry/place': '20 mm' };
  const sampled = sampledOf(MEETING, PERSON, place);
  const { meets, inTheFrame, inDepth, inMemory, all, takesAllowedCount } = sampled;
  const each = [meets, inTheFrame, inDepth, inMemory].map((share) => share!.fraction);
  expect(each.every((fraction) => fraction > 0 && fraction < 1)).toBe(true);
  expect(all.fraction).toBeLessThanOrEqual(Math.min(...each));
  expect(all.standardErrorFraction).toBeCloseTo(Math.sqrt((all.fraction * (1 - all.fraction)) / 4000), 12);
  // Nine days in ten: the least n with 1 − (1 − p)ⁿ of at least 0.9.
  expect(takesAllowedCount).toBe(Math.ceil(Math.log(0.1) / Math.log(1 - all.fraction)));
});

describe('what is drawn', () => {
  const TWO = changed(withChanges(MEETING, PERSON), { '/shots/two': { ...(SMALL['shots'] as { one: object }).one } }); // prettier-ignore

  test('is the same again for the same seed, and another for another', () => {
    expect(rolled(TWO).sampled).toEqual(rolled(TWO).sampled);
    expect(rolled(TWO, { seed: 42 }).sampled!.all).not.toEqual(rolled(TWO).sampled!.all);
    expect(rolled(TWO, { seed: 42 }).sampled!.seedCount).toBe(42);
  });

  test('for one shot stays as it was when another is edited', () => {
    const edited = changed(TWO, { '/shots/two/screenTime': '4 s', '/shots/two/title': 'Other' });
    expect(rolled(edited).sampled).toEqual(rolled(TWO).sampled);
  });

  test('is nothing for a shot without cues or trigger, or while a jitter is not known and nothing else is left to chance', () => {
    expect(rolled(withChanges()).sampled).toBeUndefined();
    const unknown = withChanges({ '/kit/rigs': { it: { title: 'It' } }, '/shots/one/cues': { it: { rig: 'it' } } });
    expect(rolled(unknown).sampled).toBeUndefined();
  });
});

test('fewer than one take is refused by name', () => {
  expect(() => rolled(withChanges(MEETING), { sampleCount: 0 })).toThrow('sampleCount must be a whole number');
});
