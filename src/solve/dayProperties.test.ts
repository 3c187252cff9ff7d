/** What holds for any day that is drawn, however it is written. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayWith, dayWritten, TWO_SHOTS, type Changes } from '../../test/days.ts';
import { pointersOf } from '../../test/documents.ts';
import { changed, DEMO, readSound } from '../../test/shoots.ts';
import { applyPatch } from '../document/patch.ts';
import { fieldAt } from '../document/fieldAt.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { takesAtConfidenceCount } from '../laws/chance/takes.ts';
import { compileDay } from '../plan/day/dayModel.ts';
import { simulateDays } from '../plan/day/simulate.ts';
import type { DayBlock, DayPlan } from '../plan/day/types.ts';
import { planShoot, shotOrder } from '../plan/plan.ts';
import { dayOf } from './day.ts';

const demo = readSound(DEMO);
const demoPlan = planShoot(demo);

function runsOf(written: Written, seed: number, dayCount: number) {
  const shoot = readSound(written);
  return simulateDays(compileDay(shoot, planShoot(shoot).shots, shotOrder(shoot)).model, { seed, dayCount });
}

describe('the same seed draws the same day, another one others', () => {
  const of = (seed: number) => dayOf(demo, demoPlan, { dayCount: 60, seed });

  test('to the last figure', () => {
    expect(of(7)).toEqual(of(7));
    expect(of(8).wrap).not.toEqual(of(7).wrap);
    expect(dayOf(demo, demoPlan, { dayCount: 60 })).toEqual(of(41));
  });
});

test('nine days in ten of another seed end by the late wrap of the first', () => {
  const late_s = dayOf(demo, demoPlan, { dayCount: 2000, seed: 1 }).wrap.late_s;
  const order = dayOf(demo, demoPlan, { dayCount: 2, seed: 1 }).order;
  const { wrap_s } = simulateDays(compileDay(demo, demoPlan.shots, order).model, { dayCount: 2000, seed: 2 });
  const share = wrap_s.filter((at) => at <= late_s).length / 2000;
  // Three standard errors of two such shares: 3 · √(2 · 0.09 / 2000).
  expect(Math.abs(share - 0.9)).toBeLessThan(0.029);
});

test.each([
  [1, 0.5],
  [2, 0.4],
  [3, 0.8],
])('takes until %i are good, %d of them being, are spread as the law has it', (kept, good) => {
  const day = dayWith({ '/shots/one/kept': kept, '/shots/one/good': good, '/shots/two/soFar': { done: true } }, { dayCount: 4000 }); // prettier-ignore
  const { takes } = day.shots.find(({ shotId }) => shotId === 'one')!;
  const law = (confidenceFraction: number) => takesAtConfidenceCount({ goodTakeCount: kept, goodTakeFraction: good, confidenceFraction }); // prettier-ignore
  // A share of days may fall on either side of a whole number that lies just on it.
  for (const [drawn, share] of [[takes.middle, 0.5], [takes.late, 0.9]] as const) {
    expect(drawn).toBeGreaterThanOrEqual(law(share - 0.02));
    expect(drawn).toBeLessThanOrEqual(law(share + 0.02));
  }
}); // prettier-ignore

test('more jitter never ends the late day earlier, on the same draws', () => {
  const spreads = (share: number): Changes => ({
    '/shots/one/reset/all/time': `7 min ± ${Math.round(420 * share)} s`,
    '/shots/two/reset/all/time': `5 min ± ${Math.round(300 * share)} s`,
    '/shots/one/times': { set: `30 min ± ${Math.round(1800 * share)} s`, review: `3 min ± ${Math.round(180 * share)} s` },
  }); // prettier-ignore
  const late = (share: number, seed: number) => dayWith(spreads(share), { dayCount: 400, seed }).wrap.late_s;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), fc.tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 0, max: 90 })), (seed, shares) => {
      const [low, high] = shares.toSorted((a, b) => a - b) as [number, number];
      expect(late(high / 100, seed)).toBeGreaterThanOrEqual(late(low / 100, seed) - 1e-6);
    }),
    { numRuns: 12 },
  ); // prettier-ignore
});

test('a shot edited leaves what is drawn for the others as it was', () => {
  const random: Changes = { '/shots/one/good': 0.5, '/shots/two/good': 0.4, '/shots/two/reset/all/time': '5 min ± 2 min', '/shots/two/times/set': '45 min ± 9 min' }; // prettier-ignore
  const lengths = (changes: Changes, shot: number) => {
    const { starts_s, ends_s } = runsOf(changed(TWO_SHOTS, { ...random, ...changes }), 5, 100);
    return Array.from({ length: 100 }, (_, day) => Number((ends_s[2 * day + shot]! - starts_s[2 * day + shot]!).toFixed(6))); // prettier-ignore
  };
  const edited = { '/shots/one/reset': { a: { time: '2 min ± 1 min', by: 'product' }, b: { time: '4 min ± 1 min', by: 'product' } }, '/shots/one/good': 0.7 }; // prettier-ignore
  expect(lengths(edited, 0)).not.toEqual(lengths({}, 0));
  expect(lengths(edited, 1)).toEqual(lengths({}, 1));
});

function apart(blocks: readonly DayBlock[]): void {
  const sorted = blocks.toSorted((a, b) => a.from_s - b.from_s);
  sorted.forEach((block, i) => {
    expect(block.to_s).toBeGreaterThan(block.from_s);
    if (i > 0) expect(block.from_s).toBeGreaterThanOrEqual(sorted[i - 1]!.to_s - 1e-6);
  });
}

describe('the middle day', () => {
  /** A day of much chance, whose saves hold it up. */
  const busy = (seed: number): DayPlan =>
    dayWritten(changed(DEMO, { '/kit/cameras/heron/saveRate': '30 MB/s', '/kit/cameras/wren/saveRate': '50 MB/s ± 30 %' }), { dayCount: 40, seed }); // prettier-ignore

  test.each([1, 2, 3])('of seed %i has nobody in two places, nothing saved or copied at once, and each in its turn', (seed) => {
    const { blocks, wrap, starts_s } = busy(seed);
    const lane = (name: DayBlock['lane']) => blocks.filter((block) => block.lane === name);
    const floor = lane('floor');
    apart(floor);
    for (const name of ['save', 'copy'] as const) apart(lane(name));
    // Everybody works through: the floor has no gap from call to wrap.
    const work_s = floor.reduce((sum, { from_s, to_s }) => sum + to_s - from_s, 0);
    expect(starts_s + work_s).toBeCloseTo(Math.max(...floor.map(({ to_s }) => to_s)), 6);
    expect(Math.abs(starts_s + work_s - wrap.middle_s)).toBeLessThan(wrap.late_s - wrap.early_s);
    // First come first served: rolls, their saves and their copies stand in one order.
    const names = (of: readonly DayBlock[]) => of.map(({ shotId, take }) => `${shotId} ${take}`);
    const saved = new Set(names(lane('save')));
    const rolled = names(floor.filter(({ work }) => work === 'roll')).filter((name) => saved.has(name));
    expect(names(lane('save').filter(({ take }) => take !== undefined))).toEqual(rolled);
    expect(names(lane('copy'))).toEqual(names(lane('save')));
    for (const { shotId, take, from_s } of lane('save').filter((block) => block.take !== undefined))
      expect(from_s).toBeGreaterThanOrEqual(floor.find((block) => block.work === 'roll' && block.shotId === shotId && block.take === take)!.to_s - 1e-6);
    expect(floor.some(({ work }) => work === 'wait')).toBe(true);
  }); // prettier-ignore

  test('waits so that a memory of one part is never filled again before it is saved', () => {
    const { blocks } = busy(4);
    const kept = blocks.filter(({ work }) => work === 'save');
    const rolls = blocks.filter(({ work }) => work === 'roll');
    kept.forEach(({ to_s, shotId }) => {
      const camera = (id: string | undefined) => demoPlan.shots.find((shot) => shot.id === id)?.settings?.camera;
      if (camera(shotId) !== 'heron') return;
      const next = rolls.find(({ from_s, shotId: of }) => camera(of) === 'heron' && from_s > to_s - 1e-6);
      const between = rolls.filter(({ from_s, shotId: of }) => camera(of) === 'heron' && from_s < to_s - 1e-6 && from_s >= kept.find((one) => one.to_s === to_s)!.from_s); // prettier-ignore
      expect(between).toEqual([]);
      if (next) expect(next.from_s).toBeGreaterThanOrEqual(to_s - 1e-6);
    });
  });
});

test('what must come after what does, whatever is asked', () => {
  const ids = Object.keys(demo.shots);
  const pairs = fc.array(fc.tuple(fc.nat(ids.length - 1), fc.nat(ids.length - 1)), { maxLength: 8 });
  fc.assert(
    fc.property(pairs, fc.shuffledSubarray(ids, { minLength: ids.length }), (asked, hidden) => {
      const after = new Map<string, string[]>();
      for (const [a, b] of asked)
        if (a !== b) {
          const [first, second] = [hidden[Math.min(a, b)]!, hidden[Math.max(a, b)]!];
          after.set(second, [...(after.get(second) ?? []), first]);
        }
      const shoot = readSound(changed(DEMO, Object.fromEntries([...after].map(([id, before]) => [`/shots/${id}/after`, [...new Set(before)]])))); // prettier-ignore
      const { order, warnings } = dayOf(shoot, planShoot(shoot), { dayCount: 2 });
      for (const [id, before] of after)
        for (const first of before) expect(order.indexOf(first)).toBeLessThan(order.indexOf(id));
      expect(warnings.filter(({ path }) => path === '/order/day')).toEqual([]);
    }),
    { numRuns: 12 },
  );
});

const JUNK: readonly Written[] = [
  null, '', '?', 0, -1, 1, 1e308, true, [], {}, [1, 2], { what: 'else' }, 'raid', 'heron', 'hire', 'copies', 'saves', '0 s', '1e-9 s', '1 h', '9 h ± 8 h', '5 min ± 0 s', '1e300 s', '00:00', '35:59', '12:30',
  '1 B/s', '1e12 B/s', '1 B', '0 B', '50 %', 10000, ['crown'], ['13:00', '09:00', '13:00'], { rolls: { time: '9 min', by: 'camera', after: ['rolls', 'x'] }, x: { after: ['rolls'], uses: 'quince', pieces: 100 } }, { takes: 3, good: 9 }, { done: true },
]; // prettier-ignore

/** The demo with few shots and modes, so that many of its kind can be planned. */
const BASE = changed(DEMO, {
  '/order/shots': ['pour-1', 'quinces', 'honey'],
  ...Object.fromEntries(['crown', 'ramp', 'bubbles', 'cork', 'dust', 'shatter', 'mill', 'pour-plate'].map((id) => [`/shots/${id}`, undefined])),
  ...Object.fromEntries(['half', 'hd', 'wide', 'strip', 'binned'].map((mode) => [`/kit/cameras/heron/modes/${mode}`, undefined])),
}); // prettier-ignore

/** The day of the demo with anything written over it, most of it where the day is written. */
const mutated: fc.Arbitrary<Written> = fc
  .array(fc.tuple(fc.nat(), fc.boolean(), fc.option(fc.constantFrom(...JUNK), { nil: undefined })), {
    minLength: 1,
    maxLength: 6,
  }) // prettier-ignore
  .map((changes) =>
    changes.reduce<Written>((written, [pick, isOfDay, value]) => {
      const all = pointersOf(written).slice(1);
      const ofDay = all.filter((path) => /^\/(shoot|order|kit\/(drives|links|products|rigs)|shots\/[^/]+\/(reset|times|takes|kept|good|hero|soFar|after))/.test(path)); // prettier-ignore
      const paths = isOfDay && ofDay.length > 0 ? ofDay : all;
      const path = paths[pick % paths.length]!;
      return applyPatch(written, [value === undefined ? { op: 'remove', path } : { op: 'replace', path, value }]);
    }, BASE),
  );

function oddNumbers(value: unknown, at = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => oddNumbers(item, `${at}/${key}`));
}

test('any shoot at all has a day: without a throw, with no number that JSON lacks, every path one of the form', () => {
  fc.assert(
    fc.property(mutated, (written) => {
      const { shoot } = readShoot(written);
      const day = dayOf(shoot, planShoot(shoot), { dayCount: 8 });
      expect(oddNumbers(day)).toEqual([]);
      expect(new Set(day.shots.map(({ shotId }) => shotId))).toEqual(new Set(Object.keys(shoot.shots)));
      expect(day.shots).toHaveLength(Object.keys(shoot.shots).length);
      for (const { early_s, middle_s, late_s } of [day.wrap, day.copied, ...day.shots.map(({ ends }) => ends)]) {
        expect(early_s).toBeLessThanOrEqual(middle_s);
        expect(middle_s).toBeLessThanOrEqual(late_s);
      }
      const paths = [...day.missing, ...day.assumed, ...day.warnings].map(({ path }) => path);
      expect(paths.filter((path) => path === '' || fieldAt(path) === undefined)).toEqual([]);
      expect(day.says.length).toBeGreaterThan(0);
    }),
    { numRuns: 40 },
  );
});
