import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayWith } from '../../../test/days.ts';
import { inOrder } from './inOrder.ts';
import { exactly } from './lasting.ts';
import { jobEnds_s, resetMoments, type Job } from './resetJobs.ts';

const job = (id: string, minutes: number, by: string, ...after: readonly string[]) => ({ id, minutes, by, after });

/** How long the resets of a shot are, by a day drawn of it: change 30 min, and a take of 1 + 3 min beside its reset. */
function resetOf_min(jobs: readonly ReturnType<typeof job>[]): number {
  const reset = Object.fromEntries(jobs.map(({ id, minutes, by, after }) => [id, { time: `${minutes} min ± 0 s`, by, after: [...after] }])); // prettier-ignore
  const { shots } = dayWith({ '/shots/one/reset': reset, '/shots/one/takes': 1 });
  return shots[0]!.spent_s.reset! / 60;
}

describe('a reset takes', () => {
  test.each([
    ['the longest of jobs side by side', [job('a', 4, 'product'), job('b', 7, 'camera'), job('c', 5, 'rigs')], 7],
    ['the sum of the jobs of one hand', [job('a', 4, 'product'), job('b', 7, 'product')], 11],
    ['what must come first and then what must come after it', [job('b', 7, 'camera', 'a'), job('a', 4, 'product')], 11],
    ['the longest way through', [job('wipe', 3, 'product'), job('dress', 6, 'product', 'wipe'), job('lens', 2, 'camera'), job('latch', 5, 'rigs', 'wipe'), job('check', 1, 'camera', 'latch', 'lens')], 9],
    ['the longest way where the last of it waits', [job('wipe', 3, 'product'), job('latch', 8, 'rigs', 'wipe'), job('check', 1, 'camera', 'latch')], 12],
  ] as const)('%s', (_, jobs, minutes) => {
    expect(resetOf_min(jobs)).toBe(minutes);
  }); // prettier-ignore

  test('no less for reloading its rigs', () => {
    const rig = { '/kit/rigs': { latch: { reload: '9 min ± 0 s' } }, '/shots/one/rigs': ['latch'], '/shots/one/takes': 1 }; // prettier-ignore
    expect(dayWith(rig).shots[0]!.spent_s.reset).toBe(540);
  });
});

test('jobs that wait for each other in a circle are named with the way out, and taken as if they did not', () => {
  const reset = { a: { title: 'Wipe', time: '4 min ± 0 s', by: 'product', after: ['b'] }, b: { title: 'Dress', time: '2 min ± 0 s', by: 'camera', after: ['a'] } }; // prettier-ignore
  const day = dayWith({ '/shots/one/reset': reset, '/shots/one/takes': 1 });
  expect(day.shots[0]!.spent_s.reset).toBe(240);
  expect(day.warnings).toContainEqual({
    says: '"Wipe" and "Dress" of One each wait for another of them: take one "after" away. Until then they are taken as if none waited for the others.',
    path: '/shots/one/reset/a/after',
  });
});

test('a job whose length is not written is named', () => {
  const { missing } = dayWith({ '/shots/one/reset/all/time': undefined });
  expect(missing).toContainEqual(expect.objectContaining({ path: '/shots/one/reset/all/time', because: 'absent' }));
});

const jobs: fc.Arbitrary<readonly Job[]> = fc
  .array(
    fc.record({
      minutes: fc.integer({ min: 0, max: 9 }),
      hand: fc.nat(3),
      after: fc.array(fc.nat(9), { maxLength: 3 }),
    }),
    { minLength: 1, maxLength: 10 },
  ) // prettier-ignore
  .map(
    (all) =>
    all.map(({ minutes, hand, after }, i): Job => ({ id: `${i}`, title: `${i}`, lasting: exactly(minutes * 60), hand, by: undefined, after: after.filter((before) => before < i) })), // prettier-ignore
  );

test('nobody is in two places: jobs of one hand never overlap, and none begins before what it waits for', () => {
  fc.assert(
    fc.property(jobs, (all) => {
      const times = all.map(({ lasting }) => (lasting.is === 'fixed' ? lasting.time_s : NaN));
      const ends = jobEnds_s(all, times);
      const starts = ends.map((end, i) => end - times[i]!);
      all.forEach(({ hand, after }, i) => {
        for (const before of after) expect(starts[i]).toBeGreaterThanOrEqual(ends[before]!);
        all.forEach((other, j) => {
          if (j < i && other.hand === hand) expect(starts[i]).toBeGreaterThanOrEqual(ends[j]!);
        });
      });
      expect(resetMoments(all)).toEqual({ mean_s: Math.max(...ends), variance: 0 });
    }),
  );
});

describe('what must come after what', () => {
  const ids = ['a', 'b', 'c', 'd', 'e'];
  const edges = fc.array(fc.tuple(fc.constantFrom(...ids), fc.constantFrom(...ids)), { maxLength: 12 });

  test('is kept by the order, but for circles, which are each told', () => {
    fc.assert(
      fc.property(edges, (asked) => {
        const found = inOrder(ids, (id) => asked.flatMap(([before, after]) => (after === id ? [before] : [])));
        expect([...found.order].sort()).toEqual([0, 1, 2, 3, 4]);
        for (const [before, after] of found.pairs)
          expect(found.order.indexOf(before)).toBeLessThan(found.order.indexOf(after));
        const left = asked.filter(([a, b]) => !found.pairs.some(([before, after]) => ids[before] === a && ids[after] === b)); // prettier-ignore
        // What is left out was asked for within one circle.
        for (const [a, b] of left)
          expect(found.circles.some((circle) => [a, b].every((id) => circle.includes(ids.indexOf(id))))).toBe(true);
      }),
    );
  });

  test('leaves alone what asks for nothing', () => {
    expect(inOrder(ids, (id) => (id === 'b' ? ['d', 'unheard of'] : []))).toEqual({ order: [0, 2, 3, 1, 4], pairs: [[3, 1]], circles: [] }); // prettier-ignore
  });
});
