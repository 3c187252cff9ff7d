import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clipsOf, type FootageEvent, type Happening } from './footage.ts';

const AT = '2027-03-09T07:30:00.000Z';

const happened = (events: readonly FootageEvent[]): readonly Happening[] =>
  events.map((event, i) => ({ number: i + 1, eventId: `event-${i}`, who: 'ada', at: AT, event }));

const added = (clipId: string, shotId?: string): FootageEvent => ({ kind: 'added', clipId, folder: 'day', path: `${clipId}.mov`, ...(shotId !== undefined && { shotId }) }); // prettier-ignore

const fold = (...events: readonly FootageEvent[]) => clipsOf(happened(events));

/** Anything that can happen to one of three clips, before it was added among the rest. */
const anyEvent: fc.Arbitrary<FootageEvent> = fc.constantFrom('a', 'b', 'c').chain((clipId) =>
  fc.oneof(
    fc.constant(added(clipId)),
    fc.record(
      {
        kind: fc.constant('told' as const),
        clipId: fc.constant(clipId),
        shotId: fc.constantFrom('pour', 'splash', null),
        captureRate_fps: fc.constantFrom(500, 1000, null),
        curve: fc.constantFrom('rec709', null),
        blackCode: fc.constantFrom(64, null),
        note: fc.constantFrom('soft', null),
      },
      { requiredKeys: ['kind', 'clipId'] },
    ),
    fc.record({ kind: fc.constant('kept' as const), clipId: fc.constant(clipId), kept: fc.constantFrom({ inFrame: 3, outFrame: 9 }, null) }), // prettier-ignore
    fc.record({ kind: fc.constant('aside' as const), clipId: fc.constant(clipId), isAside: fc.boolean() }),
  ),
);

describe('clips as a fold of what happened', () => {
  test('come in the order in which they were added, and nothing happens to one that never was', () => {
    const clips = fold({ kind: 'aside', clipId: 'b', isAside: true }, added('b'), added('a', 'pour'));
    expect(clips).toEqual([
      { id: 'b', folder: 'day', path: 'b.mov', addedAt: AT, isAside: false },
      { id: 'a', folder: 'day', path: 'a.mov', addedAt: AT, shotId: 'pour', isAside: false },
    ]);
  });

  test('hold what was told last, and nothing of what was taken back', () => {
    const [clip] = fold(
      added('a', 'pour'),
      { kind: 'told', clipId: 'a', captureRate_fps: 1000, curve: 'gamma:2.4', note: 'the good one' },
      { kind: 'told', clipId: 'a', captureRate_fps: 2000, blackCode: 64 },
      { kind: 'told', clipId: 'a', curve: null, shotId: null },
    );
    expect(clip).toEqual({ id: 'a', folder: 'day', path: 'a.mov', addedAt: AT, isAside: false, captureRate_fps: 2000, blackCode: 64, note: 'the good one' }); // prettier-ignore
  });

  test('are kept in part as was said last, and go back to what is suggested', () => {
    const part = { inFrame: 10, outFrame: 90 };
    expect(fold(added('a'), { kind: 'kept', clipId: 'a', kept: part })[0]?.kept).toEqual(part);
    expect(fold(added('a'), { kind: 'kept', clipId: 'a', kept: part }, { kind: 'kept', clipId: 'a', kept: null })[0]).not.toHaveProperty('kept'); // prettier-ignore
  });

  test('are the same whatever happens to others in between', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 40 }), (events) => {
        const all = fold(...events);
        for (const id of ['a', 'b', 'c'])
          expect(all.filter((clip) => clip.id === id)).toEqual(fold(...events.filter(({ clipId }) => clipId === id)));
      }),
    );
  });

  test('are the same where anything is told twice over', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 30 }), (events) => {
        expect(fold(...events.flatMap((event) => [event, event]))).toEqual(fold(...events));
      }),
    );
  });

  test('hold no null and nothing undefined, and each is there once', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 40 }), (events) => {
        const clips = fold(...events);
        expect(new Set(clips.map(({ id }) => id)).size).toBe(clips.length);
        for (const clip of clips) expect(Object.values(clip).every((value) => value !== null && value !== undefined)).toBe(true); // prettier-ignore
      }),
    );
  });
});
