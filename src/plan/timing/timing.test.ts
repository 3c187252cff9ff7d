/** The shot in time as it is planned: held against values reckoned elsewhere, and against what must always hold. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BERRY, DROP, JET, MEETING, PERSON, RIGS, SHORT_MEMORY, withChanges } from '../../../test/cues.ts';
import { changed, marginOf, planned, readSound, SMALL } from '../../../test/shoots.ts';
import { readShoot } from '../../document/read.ts';
import type { Written } from '../../document/written.ts';
import { explain } from '../explain.ts';
import { planShoot } from '../plan.ts';
import type { Trace } from '../types.ts';
import type { CueTiming, ShotTiming } from './types.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

function timingOf(...changes: readonly Changes[]): ShotTiming {
  const { timing } = planned(withChanges(...changes));
  if (!timing) throw new Error('no timing');
  return timing;
}

const cueOf = ({ cues }: ShotTiming, id: string): CueTiming => cues.find((cue) => cue.id === id)!;

test('a shot without cues and without a trigger has no timing', () => {
  expect(planned(SMALL).timing).toBeUndefined();
  expect(planned(withChanges(RIGS)).timing).toBeUndefined();
});

describe('values reckoned elsewhere', () => {
  test('a drop, a berry and a jet are fired 89.98, 0 and 331.66 ms after the first signal and meet after 459.66 (scipy for the falls)', () => {
    const timing = timingOf(MEETING);
    expect(cueOf(timing, 'drop').afterFirst_s).toBeCloseTo(0.08998, 5);
    expect(cueOf(timing, 'berry').afterFirst_s).toBe(0);
    expect(cueOf(timing, 'jet').afterFirst_s).toBeCloseTo(0.33166, 5);
    expect(timing.meeting!.at_s - timing.cues[0]!.fire_s!).toBeCloseTo(0.45966, 5);
    expect(timing.cues.map(({ id }) => id)).toEqual(['berry', 'drop', 'jet']);
  });

  test('a water drop of 2 mm falls 1 m in 475.8 ms and arrives at 3.878 m/s (scipy)', () => {
    const cue = { ...DROP, height: '1 m', diameter: '2 mm' };
    const drop = cueOf(timingOf(RIGS, { '/shots/one/cues': { drop: cue } }), 'drop');
    expect(drop.travel_s).toBeCloseTo(0.4758, 4);
    expect(drop.arrivalSpeed_m_per_s).toBeCloseTo(3.878, 3);
  });

  test('a millimetre more of 0.6 m is 0.302 ms, so a centimetre ten times that', () => {
    expect(cueOf(timingOf(MEETING), 'drop').centimetreDelays_s).toBeCloseTo(0.00302, 5);
  });

  test('0.8 m at 2 m/s and 10 m/s² takes 0.6 s, worked by hand', () => {
    const move = { rig: 'latch', does: 'moves', distance: '0.8 m', speed: '2 m/s', acceleration: '10 m/s²' };
    const cue = cueOf(timingOf(RIGS, { '/shots/one/cues': { move } }), 'move');
    expect(cue.travel_s).toBeCloseTo(0.6, 12);
    expect(cue.arrivalSpeed_m_per_s).toBeUndefined();
    expect(cue.centimetreDelays_s).toBeCloseTo(0.005, 12);
  });

  test('two that vary by 1 ms meet within 2 ms in .842701 of takes: erf 1, function-handbook', () => {
    const two = timingOf(MEETING, { '/shots/one/cues/jet': undefined });
    expect(two.meeting!.chanceFraction).toBeCloseTo(0.842701, 6);
  });

  test('three that vary alike meet within two spreads in .666501 of takes (numerical library)', () => {
    expect(timingOf(MEETING).meeting!.chanceFraction).toBeCloseTo(0.666501, 6);
  });

  test('a person presses after 221.5 ms half the time, and between 183.5 and 287.1 ms in eight of ten (scipy)', () => {
    const { comes_s, comesLow_s, comesHigh_s } = timingOf(PERSON).trigger!;
    expect([comes_s, comesLow_s, comesHigh_s].map((value) => Number(value.toFixed(4)))).toEqual([
      0.2215, 0.1835, 0.2871,
    ]);
  });

  test('half of half a second kept after a person’s trigger holds 0.2 s of action in .250214 of takes; best is a fifth, in .975623 (scipy)', () => {
    const { set, best } = timingOf(PERSON, { '/shots/one/trigger/post': '50 %' }).trigger!;
    expect(set.caughtFraction).toBeCloseTo(0.250214, 6);
    expect(set.headLostFraction).toBeCloseTo(1 - 0.250214, 6);
    expect(set.tailLostFraction).toBeCloseTo(0, 6);
    expect(best.postTriggerFraction).toBeCloseTo(0.2, 9);
    expect(best.caughtFraction).toBeCloseTo(0.975623, 6);
  });

  test('1920 × 1080 at 12 bits, 1000 frames a second, fills 1.5552 GB in half a second: 3,110,400 B a frame', () => {
    const { memory } = timingOf(PERSON);
    expect(memory!.recordTime_s).toBeCloseTo(0.5, 12);
    expect(memory!.frameCount).toBe(500);
    expect(memory!.trimmedFrameCount).toBe(300);
    expect(memory!.trimmedSize_B).toBe(300 * 3_110_400);
  });
});

describe('every cue', () => {
  const ms = (least: number, most: number) => fc.integer({ min: least, max: most }).map((value) => `${value} ms`);
  const rig = fc.record({ latency: ms(0, 80), jitter: ms(0, 9) });
  const falls = fc.record({ does: fc.constant('falls'), height: fc.integer({ min: 1, max: 200 }).map((value) => `${value} cm`) }); // prettier-ignore
  const flies = fc.record({ does: fc.constant('flies'), distance: fc.integer({ min: 5, max: 90 }).map((value) => `${value} cm`), speed: fc.constant('4 m/s'), angle: fc.integer({ min: -60, max: 60 }).map((value) => `${value}°`) }); // prettier-ignore
  const swings = fc.record({ does: fc.constant('swings'), arm: fc.constant('60 cm'), swing: fc.integer({ min: 5, max: 170 }).map((value) => `${value}°`) }); // prettier-ignore
  const pours = fc.record({ does: fc.constant('pours'), height: fc.constant('30 cm'), speed: fc.constant('1 m/s') });
  const acts = fc.record({ does: fc.constant('acts'), travel: ms(0, 300) });
  const when = fc.record({ meets: ms(-40, 40), settle: ms(0, 200) }, { requiredKeys: [] });
  const one = fc.tuple(rig, fc.oneof(falls, flies, swings, pours, acts), when);
  const at = fc.option(ms(0, 200), { nil: undefined });

  test('is there when it must be, the first signal comes first, and nothing is fired before it', () => {
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 5 }), at, (all, meetAt) => {
        const timing = timingOf({
          '/kit/rigs': Object.fromEntries(all.map(([of], i) => [`rig-${i}`, of])),
          '/shots/one/cues': Object.fromEntries(all.map(([, does, of], i) => [`cue-${i}`, { rig: `rig-${i}`, ...does, ...of }])),
          ...(meetAt === undefined ? {} : { '/shots/one/meeting/at': meetAt }),
        });
        const meet_s = meetAt === undefined ? 0.1 : Number.parseInt(meetAt, 10) / 1000;
        expect(Math.min(...timing.cues.map(({ afterFirst_s }) => afterFirst_s!))).toBe(0);
        for (const [i, cue] of timing.cues.entries()) {
          const meets = all[Number(cue.id.slice(4))]![2].meets ?? '0 ms';
          expect(cue.rests_s! - Number.parseInt(meets, 10) / 1000).toBeCloseTo(meet_s, 9);
          expect(cue.fire_s! + cue.latency_s! + cue.travel_s! + cue.settle_s).toBeCloseTo(cue.rests_s!, 9);
          if (i > 0) expect(cue.fire_s!).toBeGreaterThanOrEqual(timing.cues[i - 1]!.fire_s!);
        }
        const shares = timing.cues.reduce((sum, { shareOfSpreadFraction }) => sum + shareOfSpreadFraction, 0);
        const varies = all.length > 1 && timing.cues.some(({ spread_s }) => spread_s! > 0);
        expect(shares).toBeCloseTo(varies ? 1 : 0, 9);
      }),
      { numRuns: 60 },
    );
  }); // prettier-ignore

  test('of a meeting moved moves with it', () => {
    const [early, late] = [timingOf(MEETING), timingOf(MEETING, { '/shots/one/meeting/at': '80 ms' })];
    for (const cue of early.cues) {
      expect(cueOf(late, cue.id).fire_s! - cue.fire_s!).toBeCloseTo(0.03, 12);
      expect(cueOf(late, cue.id).afterFirst_s).toBeCloseTo(cue.afterFirst_s!, 12);
    }
  });

  test('that need not meet is fired all the same, and does not count for the chance', () => {
    const timing = timingOf(MEETING, { '/shots/one/cues/jet/apart': true });
    expect(cueOf(timing, 'jet').fire_s).toBeCloseTo(0.05 - 0.128, 9);
    expect(cueOf(timing, 'jet').shareOfSpreadFraction).toBe(0);
    expect(timing.meeting!.chanceFraction).toBeCloseTo(0.842701, 6);
  });

  test('that is alone has nothing to meet', () => {
    const { timing, margins } = planned(withChanges(RIGS, { '/shots/one/cues': { drop: DROP } }));
    expect(timing!.meeting).toBeUndefined();
    expect(margins.map(({ id }) => id)).not.toContain('meeting');
  });
});

describe('a spread', () => {
  test('joins signal, place and speed as independent ones: 1 ms and 3 mm at 3.31 m/s are 1.35 ms', () => {
    const drop = cueOf(timingOf(MEETING, { '/shots/one/cues/drop/place': '3 mm' }), 'drop');
    expect(drop.spread_s).toBeCloseTo(Math.hypot(0.001, 0.003 / 3.310755619), 9);
    expect(drop.millisecondMoves_m).toBeCloseTo(0.00331, 5);
    expect(drop.millisecondFrames).toBeCloseTo(1, 9);
  });

  test('of a throw grows with how its speed varies: a tenth of it, P10 to P90, on 100 ms is 7.8 ms', () => {
    const throws = { rig: 'latch', does: 'flies', distance: '0.4 m', speed: '4 m/s ± 0.4 m/s', angle: '-90°' };
    const cue = cueOf(timingOf(RIGS, { '/shots/one/cues': { throws } }), 'throws');
    expect(cue.spread_s).toBeCloseTo(Math.hypot(0.001, (0.1 / 1.2815515655446) * cue.travel_s!), 9);
  });

  test('of a small swing hardly hangs on where it is let go, of a large one it does', () => {
    const swing = (deg: number) => ({ rig: 'latch', does: 'swings', arm: '0.5 m', swing: `${deg}°`, place: '1 cm' });
    const of = (deg: number) => cueOf(timingOf(RIGS, { '/shots/one/cues': { swing: swing(deg) } }), 'swing').spread_s!;
    expect(of(10)).toBeLessThan(0.0011);
    // T(150°) less T(148.854°), a centimetre of arc, from the same table of pendulum-ratios: some 6 ms of 2.5 s · 1.76.
    expect(of(150)).toBeGreaterThan(0.003);
  });

  test('of a signal that is written with ± and no jitter is that ±', () => {
    const rigs = { ...RIGS, '/kit/rigs/latch': { title: 'Latch', kind: 'latch', latency: '30 ms ± 3 ms' } };
    const cue = cueOf(timingOf(rigs, { '/shots/one/cues': { berry: BERRY } }), 'berry');
    expect(cue.spread_s).toBeCloseTo(0.003 / 1.2815515655446, 9);
    expect(cue.assumed.map(({ name }) => name)).toEqual(['cue0Jitter_s']);
  });

  test('of a rig measured by few firings is known less well than by many, and so is whether they meet', () => {
    const widthOf = (rig: Changes) => {
      const { low, high } = marginOf(planned(withChanges(MEETING, rig)), 'meeting').stops!;
      return high - low;
    };
    const measured = (firings: number) => widthOf({ '/kit/rigs/latch/measured': true, '/kit/rigs/latch/firings': firings });
    expect(measured(5)).toBeGreaterThan(measured(30));
    expect(measured(30)).toBeGreaterThan(measured(200));
    expect(measured(30)).toBe(widthOf({ '/kit/rigs/latch/measured': true }));
  }); // prettier-ignore

  test('of a rig nobody measured is taken as usual for its kind, and said to be', () => {
    const cue = cueOf(timingOf({ '/kit/rigs': { latch: { title: 'Latch', kind: 'latch' } } }, { '/shots/one/cues': { berry: BERRY } }), 'berry'); // prettier-ignore
    expect([cue.latency_s, cue.spread_s]).toEqual([0.027, 0.002]);
    expect(cue.assumed.map(({ name, path }) => [name, path])).toEqual([
      ['cue0Latency_s', '/kit/rigs/latch/latency'],
      ['cue0Jitter_s', '/kit/rigs/latch/jitter'],
    ]);
  });
});

describe('the meeting', () => {
  test('is half way through the action where nobody says', () => {
    expect(timingOf(MEETING, { '/shots/one/meeting/at': undefined }).meeting!.at_s).toBeCloseTo(0.1, 12);
  });

  test('is within a twentieth of the frame where nobody says how near', () => {
    const { meeting } = timingOf(MEETING, { '/shots/one/meeting/tolerance': undefined });
    // The berry is the fastest, at 4.17 m/s; the frame is 200 mm.
    expect(meeting!.tolerance_s).toBeCloseTo((0.05 * 0.2) / 4.170779258, 9);
  });

  test('names the cue that varies most, and how steady it would have to be', () => {
    const { meeting } = timingOf(MEETING, { '/kit/rigs/latch/jitter': '3 ms', '/shots/one/cues/jet': undefined });
    expect(meeting!.dominant).toBe('berry');
    // erf(2 / √(2(1 + s²))) is 0.6 at √(1 + s²) = 2.376.
    expect(meeting!.dominantSpreadNeeded_s).toBeCloseTo(Math.sqrt(2.37635 ** 2 - 1) / 1000, 6);
    const never = timingOf(MEETING, { '/shots/one/meeting/chance': '99 %' });
    expect(never.meeting!.dominantSpreadNeeded_s).toBeUndefined();
  });

  test('of rigs that never vary always happens; of rigs that vary far more than the tolerance hardly ever', () => {
    const still = { '/kit/rigs/dropper/jitter': '0 ms', '/kit/rigs/latch/jitter': '0 ms', '/kit/rigs/nozzle/jitter': '0 ms' }; // prettier-ignore
    const always = timingOf(MEETING, still);
    expect(always.meeting!.chanceFraction).toBe(1);
    expect(always.meeting!.dominant).toBeUndefined();
    const never = timingOf(MEETING, { '/shots/one/meeting/tolerance': '1 ns' });
    expect(never.meeting!.chanceFraction).toBeLessThan(1e-9);
  });

  test('is judged by the misses: two in five where one in three is missed leaves a quarter of a stop', () => {
    const margin = marginOf(planned(withChanges(MEETING)), 'meeting');
    expect(margin).toMatchObject({ state: 'tight', isHard: false, need: 0.6, path: '/shots/one/meeting/chance' });
    expect(margin.stops!.value).toBeCloseTo(Math.log2(0.4 / (1 - 0.666501)), 5);
    expect(marginOf(planned(withChanges(MEETING, { '/shots/one/meeting/chance': undefined })), 'meeting').need).toBe(0.8); // prettier-ignore
  });

  test('is unknown while a cue that must meet lacks its rig, and names it', () => {
    const margin = marginOf(planned(withChanges(MEETING, { '/shots/one/cues/jet/rig': undefined })), 'meeting');
    expect([margin.state, margin.missing.map(({ path }) => path)]).toEqual(['unknown', ['/shots/one/cues/jet/rig']]);
  });
});

describe('a cue without what its kind needs', () => {
  test.each([
    ['falls', {}, ['height']],
    ['falls', { height: '1 m', diameter: '4 mm' }, ['density']],
    ['flies', { angle: '10°' }, ['distance', 'speed']],
    ['swings', { arm: '1 m' }, ['swing']],
    ['pours', {}, ['height']],
    ['moves', { distance: '1 m' }, ['speed', 'acceleration']],
    ['lights', {}, ['travel']],
  ] as const)('%s with %o lacks %o', (does, given, keys) => {
    const timing = timingOf(RIGS, { '/shots/one/cues': { it: { rig: 'latch', does, ...given }, drop: DROP } });
    const it = cueOf(timing, 'it');
    expect(it.missing.map(({ path }) => path)).toEqual(keys.map((key) => `/shots/one/cues/it/${key}`));
    expect([it.fire_s, it.travel_s, it.afterFirst_s]).toEqual([undefined, undefined, undefined]);
    // The others are not fired by a guess of which signal is first.
    expect(cueOf(timing, 'drop').fire_s).toBeDefined();
    expect(timing.cues.at(-1)!.id).toBe('it');
  });

  test('or with something that cannot be read says so', () => {
    const { shoot, problems } = readShoot(
      withChanges(RIGS, { '/shots/one/cues': { drop: { ...DROP, height: '0.6' } } }),
    );
    expect(problems.map(({ path }) => path)).toEqual(['/shots/one/cues/drop/height']);
    const [cue] = planShoot(shoot).shots[0]!.timing!.cues;
    expect(cue!.missing).toMatchObject([{ path: '/shots/one/cues/drop/height', because: 'unread' }]);
  });
});

describe('the trigger', () => {
  test('of a signal answers the first one, and is missed by no device that hardly varies', () => {
    const { timing, margins } = planned(withChanges(MEETING, SHORT_MEMORY, { '/shots/one/trigger': { by: 'electric' } }));
    expect(timing!.trigger!.answers_s).toBe(timing!.cues[0]!.fire_s);
    expect(marginOf({ margins }, 'trigger-catch').state).toBe('short');
    const long = planned(withChanges(MEETING, { '/shots/one/trigger': { by: 'electric' } })).timing!.trigger!;
    expect(long.chanceFraction).toBe(1);
  });

  test('that fires of its own or not at all costs those takes', () => {
    const trigger = timingOf(PERSON, { '/shots/one/trigger/early': '10 %', '/shots/one/trigger/never': '20 %' }).trigger!;
    expect(trigger.chanceFraction).toBeCloseTo(trigger.set.caughtFraction * 0.9 * 0.8, 9);
    expect([trigger.falseFireFraction, trigger.noFireFraction]).toEqual([0.1, 0.2]);
  });

  test('keeps what lies between the shares of the memory before it and after it', () => {
    const { trigger, memory } = timingOf(PERSON);
    expect(trigger!.keepsTo_s - trigger!.keepsFrom_s).toBeCloseTo(memory!.recordTime_s, 9);
    expect(trigger!.keepsTo_s - trigger!.comes_s).toBeCloseTo(0.2 * memory!.recordTime_s, 9);
  });

  test('is unknown without a memory, and names it', () => {
    const { timing, margins } = planned(withChanges(PERSON, { '/kit/cameras/body/memory': undefined }));
    expect([timing!.trigger, timing!.memory]).toEqual([undefined, undefined]);
    expect(marginOf({ margins }, 'trigger-catch').missing.map(({ path }) => path)).toEqual(['/kit/cameras/body/memory']);
  });

  test('wanted in a share of takes is judged by the misses, 95 % where nobody says', () => {
    const margin = marginOf(planned(withChanges(PERSON)), 'trigger-catch');
    expect(margin).toMatchObject({ need: 0.95, path: '/shots/one/catch' });
    expect(margin.stops!.value).toBeCloseTo(Math.log2(0.05 / (1 - 0.9756226459)), 5);
  });
}); // prettier-ignore

describe('the memory', () => {
  test('lets the next roll wait for what the save takes beyond the reset', () => {
    const slow = { '/kit/cameras/body/saveRate': '10 MB/s ± 0 %', '/shots/one/reset': { set: { title: 'Set', time: '1 min ± 0 s' } } };
    const one = timingOf(PERSON, slow).memory!;
    expect(one.saveTime_s).toBeCloseTo((300 * 3_110_400) / 10e6, 9);
    expect(one.reset_s).toBeCloseTo(60, 3);
    expect(one.waits_s).toBeCloseTo(one.saveTime_s! - one.reset_s, 6);
    const parts = timingOf(PERSON, slow, { '/kit/cameras/body/partitions': 2 }).memory!;
    expect([parts.waits_s, parts.rollsBeforeSaving, parts.frameCount]).toEqual([0, 2, 250]);
  });

  test('takes the usual reset where none is written, and says so', () => {
    const { reset_s, assumed } = timingOf(PERSON).memory!;
    expect(reset_s).toBeGreaterThan(5 * 60);
    expect(assumed.map(({ path }) => path)).toContain('/shoot/day/usual/reset');
  });

  test('marks what happens in it by frames from its start', () => {
    const { memory, trigger } = timingOf(MEETING, PERSON, { '/kit/cameras/body/memory': '64 GB' });
    const meet = memory!.marks.find(({ title }) => title === 'Arrives: Berry')!;
    expect(meet.at_s).toBeCloseTo(0.05, 9);
    expect(meet.frame).toBe(Math.floor((meet.at_s - trigger!.keepsFrom_s) * 1000 + 1e-6));
    expect(memory!.marks.map(({ at_s }) => at_s)).toEqual(memory!.marks.map(({ at_s }) => at_s).toSorted((a, b) => a - b));
    for (const { frame } of memory!.marks) expect(frame >= 0 && frame <= memory!.frameCount).toBe(true);
  });
}); // prettier-ignore

describe('what can never be', () => {
  const impossible = (...changes: readonly Changes[]) => timingOf(...changes).impossible;

  test('is told nowhere where all can be', () => {
    expect(impossible(MEETING, PERSON, { '/kit/cameras/body/memory': '64 GB' })).toEqual([]);
  });

  test('is one rig fired again before it is ready', () => {
    const cues = { first: JET, second: { ...JET, title: 'Second jet', meets: '60 ms' } };
    const reload = { '/kit/rigs/nozzle/reload': '2 s' };
    const [reason] = impossible(RIGS, reload, { '/shots/one/cues': cues });
    expect(reason).toEqual({
      says: 'Nozzle must fire for Second jet 60 ms after Jet, and can only 2.01 s after it: 1.95 s too soon.',
      path: '/shots/one/cues/second/rig',
    });
    expect(impossible(RIGS, { '/shots/one/cues': cues })).toEqual([]);
  });

  test('is an action longer than the memory, with or without its handles', () => {
    const [reason] = impossible(PERSON, { '/shots/one/handles': '200 ms' });
    expect(reason).toEqual({
      says: 'The memory holds 500 ms, the action with its handles takes 600 ms: 100 ms too long at any trigger setting.',
      path: '/shots/one/handles',
    });
    expect(impossible(PERSON, { '/shots/one/action/duration': '0.7 s', '/shots/one/screenTime': '28 s' })[0]!.path).toBe('/shots/one/action/duration'); // prettier-ignore
  });

  test('is a throw that turns back before it is there', () => {
    const cue = { title: 'Ball', rig: 'latch', does: 'flies', distance: '0.4 m', speed: '2 m/s', angle: '90°' };
    const [reason] = impossible(RIGS, { '/shots/one/cues': { ball: cue } });
    expect(reason!.says).toMatch(/^Ball never arrives as it is written: .*at most 0.2039/);
  });

  test('is a meeting after the end of the take', () => {
    const [reason] = impossible(MEETING, { '/shots/one/meeting/at': '400 ms' });
    expect(reason).toEqual({
      says: 'They meet 100 ms after the end of all that is kept: the take shows them apart.',
      path: '/shots/one/meeting/at',
    });
  });
});

describe('for the people on the set', () => {
  const CREW = { '/crew': { tam: { title: 'Tam' }, mara: { title: 'Mara' } } };

  test('each rig is told once, in the order of the cues, with who arms and who calls clear', () => {
    const safe = { '/kit/rigs/latch/arms': 'tam', '/kit/rigs/latch/clears': 'mara', '/kit/rigs/latch/shield': 'A clear sheet.', '/kit/rigs/dropper/disarm': 'Valve supply off.' };
    expect(timingOf(MEETING, CREW, safe, { '/shots/one/cues/second': { ...BERRY, meets: '-2 s' } }).safety).toEqual([
      { rig: 'latch', arms: 'tam', clears: 'mara', shield: 'A clear sheet.' },
      { rig: 'dropper', disarm: 'Valve supply off.' },
      { rig: 'nozzle' },
    ]);
  }); // prettier-ignore

  test.each([
    [{ does: 'falls', height: '1 m' }, ['moving-rigs', 'splash-and-flying-parts']],
    [{ does: 'flies' }, ['moving-rigs', 'pressure-and-projectiles', 'splash-and-flying-parts']],
    [{ does: 'pours' }, ['moving-rigs', 'liquids-near-power']],
    [{ does: 'lights' }, ['moving-rigs', 'intense-light']],
    [{ does: 'acts', rig: 'ram' }, ['moving-rigs', 'pressure-and-projectiles']],
  ] as const)('a cue that %o calls for cautions %o', (cue, keys) => {
    const rigs = { '/kit/rigs/ram': { title: 'Ram', kind: 'pneumatic' } };
    const { cautions } = planned(withChanges(RIGS, rigs, { '/shots/one/hero': undefined, '/shots/one/cues': { it: { rig: 'latch', ...cue } } }));
    expect(cautions.map(({ key }) => key)).toEqual(keys);
  }); // prettier-ignore

  const notesOf = (...changes: readonly Changes[]) => planned(withChanges(...changes)).notes;

  test('a note names what to steady, and that thirty shots measure what was assumed', () => {
    const notes = notesOf(MEETING, { '/kit/rigs/latch': { title: 'Latch', kind: 'latch' } });
    expect(notes).toContainEqual(expect.stringMatching(/^Berry varies most, with 67 % of what keeps them apart\..*thirty shots/)); // prettier-ignore
    expect(notesOf(MEETING)).toEqual([]);
  });

  test('a note says that no hand closes a meeting', () => {
    const hand = { '/kit/rigs/latch': { title: 'Hand', kind: 'person' } };
    expect(notesOf(MEETING, hand)).toContainEqual(expect.stringMatching(/^Berry is let go by hand: let a person fire one controller/)); // prettier-ignore
  });

  test('a note says where the trigger answers a signal that no cue needs', () => {
    const electric = { '/shots/one/trigger': { by: 'electric', answers: '-400 ms' } };
    expect(notesOf(MEETING, electric)).toContainEqual(expect.stringMatching(/a signal 9.7 ms after that of Berry/)); // prettier-ignore
  });
});

describe('every figure', () => {
  const leaves = (trace: Trace): readonly Trace[] => (trace.inputs.length > 0 ? trace.inputs.flatMap(leaves) : [trace]);

  test('of a limit is explained down to what was written or assumed', () => {
    const shoot = readSound(withChanges(MEETING, PERSON));
    const meeting = explain(shoot, 'one', 'meetingFraction')!;
    expect(meeting.origin).toMatchObject({ by: 'law', law: 'three-meet' });
    expect(leaves(meeting).map(({ origin }) => 'path' in origin && origin.path)).toEqual([
      '/kit/rigs/dropper/jitter',
      '/kit/rigs/latch/jitter',
      '/kit/rigs/nozzle/jitter',
      '/shots/one/meeting/tolerance',
    ]);
    const caught = explain(shoot, 'one', 'triggerFraction')!;
    expect(caught.value).toBeCloseTo(0.975623, 6);
    expect(caught.inputs[0]!.origin).toMatchObject({ by: 'law', law: 'trigger-catch' });
    for (const { origin } of leaves(caught)) expect(origin.by).toMatch(/document|assumption/);
  });

  test('of a cue is found by its prefix', () => {
    const written = withChanges(MEETING);
    const berry = cueOf(planned(written).timing!, 'berry');
    const fire = explain(readSound(written), 'one', `${berry.prefix}Fire_s`)!;
    expect(fire.value).toBe(berry.fire_s);
    expect(fire.inputs.map(({ name }) => name)).toEqual(['meetAt_s', 'cue1Travel_s', 'cue1Latency_s']);
  });
});

test('an edit of a rig, of a reset or of the usual day plans the shot again', () => {
  const written = withChanges(MEETING, PERSON);
  const before = planShoot(readSound(written)).shots[0]!.timing!;
  const after = (changes: Changes) => planShoot(readSound(changed(written, changes))).shots[0]!.timing!;
  expect(cueOf(after({ '/kit/rigs/latch/latency': '40 ms' }), 'berry').fire_s! - cueOf(before, 'berry').fire_s!).toBeCloseTo(-0.01, 9); // prettier-ignore
  expect(after({ '/shoot/day/usual/reset': '20 min ± 0 s' }).memory!.reset_s).toBeCloseTo(1200, 3);
});
