import { describe, expect, test } from 'vitest';
import type { ClipBrief, ClipEntry } from '../../../record/footage.ts';
import { FLASHING_CAUTION } from '../../../turnover/measureReply.ts';
import { groupClips, isSynthetic } from './clipGroups.ts';
import { sentencesOf, standingOf, summaryOf, worstStanding } from './clipStanding.ts';
import { checkBlack, checkCurve, checkRate } from './checks.ts';
import { above, rowsOf } from './folderRows.ts';
import { alignmentsOf, besides, frameAt, reachOf } from './pairTime.ts';
import { sayTimeLeft, seenNext, timeLeft_s, type Seen } from './timeLeft.ts';
import { whenWords } from './when.ts';

const BRIEF: ClipBrief = {
  measuredAt: '2030-01-01T10:00:00Z',
  isWhole: true,
  width: 1920,
  height: 1080,
  frameCount: 240,
  frameRate_fps: 1000,
  frameRateBasis: 'plan',
  playback_fps: 25,
  flicker: 'steady',
  verdict: ['No flicker.', 'Exposure: nothing burnt out.', 'Focus: steady.'],
  against: [{ what: 'blur', says: 'Blur: 2 px, planned 2 px: as planned.', state: 'as planned' }],
  action: { onset: 40, peak: 60, end: 120, inFrame: 34, outFrame: 126 },
};

const clipOf = (id: string, more: Partial<ClipEntry> = {}): ClipEntry => ({
  id,
  folder: 'card',
  path: `${id}.mov`,
  name: `${id}.mov`,
  addedAt: '2030-01-01T10:00:00Z',
  isAside: false,
  isHere: true,
  proxy: { state: 'none' },
  brief: BRIEF,
  ...more,
});
const without = (more: Partial<ClipEntry> = {}): ClipEntry => {
  const { brief: _, ...rest } = clipOf('bare');
  return { ...rest, ...more };
};
const brief = (more: Partial<ClipBrief>): Partial<ClipEntry> => ({ brief: { ...BRIEF, ...more } });
const worse = brief({ against: [{ what: 'blur', says: 'Blur: 6 px, planned 2 px: worse.', state: 'worse' }] });
const differs = brief({ against: [{ what: 'speed', says: 'Speed: 3 m/s, planned 2 m/s: differs.', state: 'differs' }] }); // prettier-ignore
const fault = { code: 'media.broken', what: 'It breaks off in frame 12', where: 'a.mov', mend: 'Copy it again.' };

describe('how a clip stands', () => {
  test.each([
    ['as planned', clipOf('a'), 'spare', 'as planned', undefined],
    ['steady, and of no plan', clipOf('a', brief({ against: [] })), 'spare', 'steady', undefined],
    ['pulsing', clipOf('a', brief({ flicker: 'flicker' })), 'short', 'look at it', 'look'],
    ['worse than planned', clipOf('a', worse), 'short', 'look at it', 'look'],
    ['too short to tell', clipOf('a', brief({ flicker: 'cannot tell' })), 'tight', 'cannot tell', 'look'],
    ['another than planned', clipOf('a', differs), 'tight', 'differs from the plan', 'look'],
    [
      'looked at in part',
      clipOf('a', brief({ flicker: 'flicker', isWhole: false })),
      'tight',
      'first look: pulses',
      undefined,
    ],
    [
      'measured by what no longer holds',
      clipOf('a', brief({ isStale: 'You say 500 fps.' })),
      'tight',
      'measure again',
      'measure again',
    ],
    ['gone', clipOf('a', { isHere: false }), 'tight', 'not here any more', 'find'],
    [
      'broken',
      without({ measuring: { kind: 'measure', state: 'failed', done: 12, fault } }),
      'short',
      'could not be measured',
      'look',
    ],
    [
      'waiting',
      without({ measuring: { kind: 'measure', state: 'waiting', done: 0 } }),
      'unknown',
      'waiting to be measured',
      undefined,
    ],
    ['set aside, whatever else', clipOf('a', { ...worse, isAside: true }), 'unknown', 'set aside', undefined],
  ] as const)('%s', (_, clip, standing, word, asks) => {
    const found = standingOf(clip);
    expect([found.standing, found.word, found.asks]).toEqual([standing, word, asks]);
  });

  test('why and what to do stands beside it', () => {
    expect(standingOf(without({ measuring: { kind: 'measure', state: 'failed', done: 12, fault } })).says).toBe(
      'It breaks off in frame 12. Copy it again.',
    );
    expect(standingOf(clipOf('a', brief({ isStale: 'You say 500 fps.' }))).says).toBe('You say 500 fps.');
  });

  test('the worst of several is that which most needs somebody', () => {
    expect(worstStanding([clipOf('a'), clipOf('b', differs), clipOf('c', { ...worse, isAside: true })])?.word).toBe(
      'differs from the plan',
    );
    expect(worstStanding([clipOf('c', { isAside: true })])).toBeUndefined();
  });

  test('all of them come to one line', () => {
    const busy = clipOf('d', { ...worse, measuring: { kind: 'measure', state: 'running', done: 5 } });
    expect(summaryOf([clipOf('a'), clipOf('b', worse), busy, without(), clipOf('e', { isAside: true })])).toBe(
      '4 clips, 1 to look at before the set is struck, 1 being measured, 1 not measured, 1 set aside',
    );
    expect(summaryOf([clipOf('a')])).toBe('1 clip, nothing found to look at');
    expect(summaryOf([clipOf('a', { isHere: false }), clipOf('b', brief({ isStale: 'x' }))])).toBe(
      '2 clips, 1 to measure again, 1 not here any more',
    );
  });

  test('two sentences are told, and a caution however far down it stands', () => {
    expect(sentencesOf(BRIEF)).toEqual(['No flicker.', 'Exposure: nothing burnt out.']);
    expect(sentencesOf({ verdict: ['One.', 'Two.', FLASHING_CAUTION, 'Four.'] })).toEqual([
      'One.',
      'Two.',
      FLASHING_CAUTION,
    ]);
    expect(sentencesOf({ verdict: ['One.', FLASHING_CAUTION, 'Three.'] })).toEqual(['One.', FLASHING_CAUTION]);
  });
});

describe('clips by shot', () => {
  const shots = [
    { id: 'pour', number: 1, title: 'Pour' },
    { id: 'crown', number: 2, title: 'Crown' },
  ];
  test('stand in the order of the shots, the newest first, then those of shots that are gone, then those of none', () => {
    const groups = groupClips(
      [
        clipOf('a', { shotId: 'crown' }),
        clipOf('b'),
        clipOf('c', { shotId: 'crown' }),
        clipOf('d', { shotId: 'gone' }),
        clipOf('e', { shotId: 'pour' }),
      ],
      shots,
    );
    expect(groups.map(({ title, clips }) => [title, clips.map(({ id }) => id).join('')])).toEqual([
      ['1 Pour', 'e'],
      ['2 Crown', 'ca'],
      ['gone, which is not in the shoot any more', 'd'],
      ['Of no shot yet', 'b'],
    ]);
  });

  test('a made-up clip is known by its name', () => {
    expect(isSynthetic({ name: 'SYNTHETIC-crown-1.mp4' })).toBe(true);
    expect(isSynthetic({ name: 'A004_C012.mov' })).toBe(false);
  });
});

describe('a folder', () => {
  test('is listed with the newest first, and what is a clip already says so', () => {
    const rows = rowsOf(
      {
        folder: 'card',
        path: 'day',
        more: 0,
        entries: [
          { name: 'old.mov', kind: 'movie', modified: '2030-01-01T08:00:00Z' },
          { name: 'sub', kind: 'folder' },
          { name: 'new.mov', kind: 'movie', modified: '2030-01-01T09:00:00Z' },
        ],
      },
      [clipOf('a', { path: 'day/old.mov' }), clipOf('b', { folder: 'other', path: 'day/new.mov' })],
    );
    expect(rows.map(({ at, isAdded }) => [at, isAdded])).toEqual([
      ['day/new.mov', false],
      ['day/old.mov', true],
      ['day/sub', false],
    ]);
  });

  test('lies in another until the one that was opened', () => {
    expect([above('a/b/c'), above('a'), above('')]).toEqual(['a/b', '', undefined]);
  });
});

describe('time left', () => {
  const seen = (...looks: readonly (readonly [number, number])[]) =>
    looks.reduce<readonly Seen[]>((so, [at_s, done]) => seenNext(so, { at_s, done }), []);
  test('is not told before the work was watched, nor where its whole is not known', () => {
    expect(timeLeft_s(seen([0, 10]), 100)).toBeUndefined();
    expect(timeLeft_s(seen([0, 10], [1, 20]), 100)).toBeUndefined();
    expect(timeLeft_s(seen([0, 10], [2, 30]), undefined)).toBeUndefined();
    expect(timeLeft_s(seen([0, 10], [5, 10]), 100)).toBeUndefined();
  });

  test('goes by how fast it went lately, and anew where it began anew', () => {
    expect(timeLeft_s(seen([0, 10], [2, 30]), 100)).toBe(7);
    expect(timeLeft_s(seen([0, 0], [20, 10], [22, 30]), 100)).toBe(7);
    expect(timeLeft_s(seen([0, 50], [2, 90], [3, 0], [5, 20]), 100)).toBe(8);
  });

  test('is told no finer than it is known', () => {
    expect([0.2, 12.4, 33, 61, 3600, 8000].map(sayTimeLeft)).toEqual(['1 s', '12 s', '35 s', '1 min', '60 min', '2 h']);
  });
});

describe('two clips in one time', () => {
  const other = { ...BRIEF, frameRate_fps: 2000, frameCount: 300, action: { ...BRIEF.action!, peak: 200, onset: 100 } };
  const pair = [BRIEF, other] as const;
  test('lie upon one another at the moment that both have', () => {
    expect(alignmentsOf(pair)).toEqual(['peak', 'onset', 'first']);
    const { action: _, ...still } = BRIEF;
    expect(alignmentsOf([still, other])).toEqual(['first']);
    expect(pair.map((of) => frameAt(of, 'peak', 0).frame)).toEqual([60, 200]);
    expect(pair.map((of) => frameAt(of, 'onset', 0.01).frame)).toEqual([50, 120]);
  });

  test('are moved through by a frame of the faster one, from the first frame of either to the last', () => {
    const reach = reachOf(pair, 'peak');
    expect(reach.step_s).toBe(1 / 2000);
    expect([reach.from_s, reach.to_s]).toEqual([-0.1, 0.179]);
    expect(frameAt(BRIEF, 'peak', -0.1)).toEqual({ frame: 0, beyond: 'before' });
    expect(frameAt(other, 'peak', 0.179)).toEqual({ frame: 299, beyond: 'after' });
  });

  test('are chosen among those that were measured, of the same shot first', () => {
    const all = [
      clipOf('a', { shotId: 'x' }),
      clipOf('b'),
      clipOf('c', { shotId: 'x' }),
      { ...without(), id: 'd' },
      clipOf('e', { isAside: true }),
    ];
    expect(besides(all, all[0]).map(({ id }) => id)).toEqual(['c', 'b']);
  });
});

describe('what is typed of a clip', () => {
  test.each([
    [checkRate, '1000 fps', true],
    [checkRate, '24000/1001', true],
    [checkRate, '', true],
    [checkRate, '0 fps', false],
    [checkRate, 'fast', false],
    [checkRate, '20000000 fps', false],
    [checkCurve, 'gamma:2.2', true],
    [checkCurve, ' ', true],
    [checkCurve, 'film', false],
    [checkCurve, 'gamma:-1', false],
    [checkBlack, '64', true],
    [checkBlack, '', true],
    [checkBlack, '-1', false],
    [checkBlack, '70000', false],
    [checkBlack, '6.4', false],
  ] as const)('%o takes "%s": %s', (check, text, ok) => expect(check(text).ok).toBe(ok));
});

test('a time is told by the clock of the shoot, with its day where that is another', () => {
  const now = new Date('2030-01-02T08:00:00Z');
  const clock = { timeZone: 'Europe/Vienna' };
  expect(whenWords('2030-01-02T07:05:09Z', now, clock)).toBe('08:05');
  expect(whenWords('2030-01-02T07:05:09Z', now, { ...clock, hasSeconds: true })).toBe('08:05:09');
  expect(whenWords('2030-01-01T07:05:09Z', now, clock)).toMatch(/1.*2030.*08:05/);
});
