import { describe, expect, test } from 'vitest';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import type { Plan } from '../plan/types.ts';
import { boardOrder, filmFrames, filmLength } from './film.ts';

const shootOf = (more: Readonly<Record<string, Written>>) => readShoot({ longsecond: 1, ...more }).shoot;

const frames = (...seconds: readonly (string | undefined)[]): Written =>
  Object.fromEntries(seconds.map((s, i) => [`b${i + 1}`, s === undefined ? {} : { seconds: s }]));

describe('the length of the film', () => {
  const film = { film: { title: 'Film', rate: 25, length: '20 s' } };

  test('is what the frames add up to', () => {
    const length = filmLength(shootOf({ board: frames('7 s', '5.5 s', '1500 ms'), deliverables: film }));
    expect(length.screenTime_s).toBeCloseTo(14, 12);
    expect(length).toMatchObject({ verdict: 'free', openCount: 0, target: { title: 'Film', length_s: 20 } });
    expect(length.left_s).toBeCloseTo(6, 12);
  });

  test('fits when it differs by less than half a frame of the film', () => {
    const thirds = frames('6.667 s', '6.667 s', '6.667 s');
    expect(filmLength(shootOf({ board: thirds, deliverables: film }))).toMatchObject({ verdict: 'fits', left_s: 0 });
  });

  test('is over by one frame when it is one frame too long', () => {
    const length = filmLength(shootOf({ board: frames('20.04 s'), deliverables: film }));
    expect(length.verdict).toBe('over');
    expect(length.left_s).toBeCloseTo(-0.04, 12);
  });

  test('stays open while a frame does not say its seconds, unless the others alone are too long', () => {
    expect(filmLength(shootOf({ board: frames('7 s', undefined), deliverables: film }))).toMatchObject({
      verdict: 'open',
      openCount: 1,
      left_s: 13,
    });
    expect(filmLength(shootOf({ board: frames('21 s', undefined), deliverables: film })).verdict).toBe('over');
  });

  test('is held against the first deliverable that says how long it runs', () => {
    const deliverables = { still: { title: 'Still' }, short: { title: 'Short', length: '6 s' }, ...film };
    expect(filmLength(shootOf({ board: frames('6 s'), deliverables })).target?.title).toBe('Short');
  });

  test('is open where no deliverable says how long it runs', () => {
    const length = filmLength(shootOf({ board: frames('6 s') }));
    expect(length).toEqual({ screenTime_s: 6, openCount: 0, verdict: 'open' });
  });
});

describe('the frames of the board', () => {
  test('come in the stated order, those left out of it after', () => {
    const shoot = shootOf({ board: frames('1 s', '2 s', '3 s'), order: { board: ['b3', 'b1'] } });
    expect(boardOrder(shoot)).toEqual(['b3', 'b1', 'b2']);
  });

  test('name the shots that serve them, and say when their only shot gives another length', () => {
    const shoot = shootOf({
      deliverables: { film: { rate: 25 } },
      board: frames('4 s', '3 s', '2 s'),
      shots: { pour: { board: ['b1'] }, both: { board: ['b2'] }, again: { board: ['b2'] }, splash: { board: ['b3'] } },
    });
    const planned = (id: string, number: number, screenTime_s: number) => ({
      id,
      number,
      title: id,
      clocks: { screenTime_s },
    });
    const shots = [planned('pour', 1, 6), planned('both', 2, 6), planned('again', 3, 6), planned('splash', 4, 2.01)];
    const [first, second, third] = filmFrames(shoot, { shots } as unknown as Plan);
    expect(first).toMatchObject({ number: 1, shots: [{ id: 'pour', number: 1, title: 'pour' }], given_s: 6 });
    expect(second!.shots.map(({ id }) => id)).toEqual(['both', 'again']);
    expect(second!.given_s).toBeUndefined();
    expect(third!.given_s).toBeUndefined();
  });
});
