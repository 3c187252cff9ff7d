import { describe, expect, test } from 'vitest';
import type { ClipBrief, ClipEntry } from '../../../../record/footage.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { dayOf, guessedKind, kitChoices, teachable, whyNot } from './teaching.ts';

const entry = (
  id: string,
  more: Partial<ClipEntry> = {},
  brief: Partial<ClipBrief> = { isWhole: true },
): ClipEntry => ({
  id,
  name: `${id}.mov`,
  folder: 'takes',
  path: `${id}.mov`,
  addedAt: '2027-03-09T10:00:00Z',
  isAside: false,
  isHere: true,
  proxy: { state: 'none' },
  brief: brief as ClipBrief,
  ...more,
});

describe('clips that may teach', () => {
  const clips = [
    entry('a', { shotId: 'drop' }),
    entry('b'),
    entry('c', { shotId: 'drop' }),
    entry('aside', { shotId: 'drop', isAside: true }),
    entry('looked', { shotId: 'drop' }, { isWhole: false }),
  ];

  test('were measured whole and not set aside; those of the shot come first, the newest first', () => {
    expect(teachable(clips, 'drop').map(({ id }) => id)).toEqual(['c', 'a', 'b']);
    expect(teachable(clips, undefined).map(({ id }) => id)).toEqual(['b', 'c', 'a']);
  });

  test('must be measured again where something has changed since', () => {
    expect(whyNot(entry('a'))).toBeUndefined();
    expect(whyNot(entry('a', {}, { isWhole: true, isStale: 'its rate was corrected' }))).toBe('measure it again first: its rate was corrected'); // prettier-ignore
  });
});

describe('what clips show is guessed', () => {
  const clip = (measurement: object): Pick<MeasuredClip, 'measurement'> => ({ measurement: { flicker: { lines: [] }, ...measurement } as unknown as MeasuredClip['measurement'] }); // prettier-ignore
  const fired = clip({ signal: { frame: 30, movement: 60 }, action: {} });
  const card = clip({ flicker: { lines: [{ extentFraction: 1 }] } });

  test.each([
    ['nothing yet', [], 'event'],
    ['takes', [clip({ action: {} }), clip({ action: {} })], 'event'],
    ['a rig fired in each', [fired, fired], 'rig'],
    ['a rig fired in one of two', [fired, clip({ action: {} })], 'event'],
    ['a light that nothing follows', [clip({ signal: { frame: 30 }, action: {} })], 'event'],
    ['a still card that pulses all over', [card], 'lamp'],
    ['two of them', [card, card], 'event'],
    ['a take that pulses', [clip({ action: {}, flicker: { lines: [{ extentFraction: 1 }] } })], 'event'],
  ])('%s', (_, clips, kind) => expect(guessedKind(clips)).toBe(kind));
});

test('a day is that of the place, in the order that sorts', () => {
  expect(dayOf(new Date(2027, 2, 9, 23, 59))).toBe('2027-03-09');
});

test('kit is chosen by what people call it', () => {
  expect(kitChoices({ a: { title: 'Left latch' }, b: {} })).toEqual([
    { value: 'a', label: 'Left latch' },
    { value: 'b', label: 'b' },
  ]);
});
