/** The demo: an invented shoot that reads without problems, is honest about what falls short, and can be mended. */
import { describe, expect, test } from 'vitest';
import { ratioOf } from '../src/base/rational.ts';
import { applyPatch, withParents } from '../src/document/patch.ts';
import { readShoot } from '../src/document/read.ts';
import { DUTIES } from '../src/document/schema.ts';
import { fitRows, frameRateByRows_fps } from '../src/laws/buffer/rows.ts';
import { eventProblems } from '../src/plan/events.ts';
import { planShoot } from '../src/plan/plan.ts';
import { DARK_REFERENCE } from '../src/plan/references.ts';
import { waysFor } from '../src/plan/ways/ways.ts';
import { DEMO, marginOf, readSound } from './shoots.ts';

const shoot = readSound(DEMO);
const plan = planShoot(shoot);
const shot = (id: string) => plan.shots.find((of) => of.id === id)!;
const short = plan.shots.flatMap(({ id, margins }) => margins.filter(({ state }) => state === 'short').map((margin) => ({ id, limit: margin.id }))); // prettier-ignore

test('reads without a problem', () => {
  expect(readShoot(DEMO).problems).toEqual([]);
});

test('has at least nine shots, each with settings, two clocks and other answers', () => {
  expect(plan.shots.length).toBeGreaterThanOrEqual(9);
  expect(plan.shots.map(({ number }) => number)).toEqual(plan.shots.map((_, i) => i + 1));
  for (const { id, settings, clocks, alternatives, missing } of plan.shots) {
    expect([id, settings !== undefined, clocks !== undefined, missing]).toEqual([id, true, true, []]);
    expect(alternatives.length).toBeGreaterThan(0);
  }
});

test('leaves no margin unknown, the light of every shot included', () => {
  expect(plan.totals.unknownCount).toBe(0);
  for (const { id, margins } of plan.shots) expect([id, marginOf({ margins }, 'light').stops]).toEqual([id, expect.anything()]); // prettier-ignore
  expect(plan.margins.map(({ id, state }) => [id, state])).toEqual([['storage', 'spare'], ['day', 'short']]); // prettier-ignore
});

describe('honest shortfalls', () => {
  // 60 ms over 5 s at 25 fps, and 120 ms over 6 s: no mode that fills 3840 pixels is as fast.
  test.each([
    ['crown', 2084],
    ['quinces', 1250],
  ])('%s wants %i fps, more than any mode wide enough gives', (id, wanted_fps) => {
    const margin = marginOf(shot(id), 'frame-rate');
    expect(margin).toMatchObject({ state: 'short', have: wanted_fps });
    const wide = Object.values(shoot.kit.cameras['heron']!.modes).filter(({ pixels, binningCount = 1 }) => pixels!.widthCount >= 3840 && pixels!.heightCount >= 2160 && binningCount === 1); // prettier-ignore
    for (const { maxRate_fps } of wide) expect(maxRate_fps!).toBeLessThan(wanted_fps);
  });

  /**
   * By hand: 3 of 3840 px of 60 mm at 0.12 m/s are 391 µs, set as 1/2600 s; 2.5 mm at magnification 0.384 and a circle of
   * 26.4 mm / 1500 take f/7.8, T9 behind 82 %; 24 dB allow about EI 2000: 250 · 9² · (1 + 0.384/1.1)² · 2600 / 2000.
   */
  test('honey has less than half of the 48 klx that its depth, blur and noise ask for', () => {
    const { state, have, need } = marginOf(shot('honey'), 'light');
    expect(state).toBe('short');
    expect(have!).toBeLessThan(need! / 2);
    expect(need! / 48_000).toBeCloseTo(1, 1);
  });

  test('lie in some shots and at least three limits, and each has a way that closes it', () => {
    expect(new Set(short.map(({ id }) => id)).size).toBeGreaterThanOrEqual(4);
    expect(new Set(short.map(({ limit }) => limit)).size).toBeGreaterThanOrEqual(3);
    for (const { id, limit } of short) {
      const ways = waysFor(shoot, DEMO, id, limit);
      expect([id, limit, ways.some(({ closes }) => closes)]).toEqual([id, limit, true]);
    }
  });

  test('leave shots that are to be had as they are', () => {
    const whole = plan.shots.filter(({ id }) => !short.some((of) => of.id === id));
    expect(whole.map(({ id }) => id)).toEqual(expect.arrayContaining(['pour-1', 'bubbles']));
  });
});

describe('every camera', () => {
  for (const [id, { modes, activeArea }] of Object.entries(shoot.kit.cameras)) {
    const rows = Object.entries(modes).map(([mode, { pixels, maxRate_fps }]) => ({ mode, rowCount: pixels!.heightCount, rate_fps: maxRate_fps! })); // prettier-ignore

    test(`${id}: the rates of its modes follow one row time and one overhead, within 1 %`, () => {
      const [tallest, lowest] = [rows.toSorted((a, b) => b.rowCount - a.rowCount)[0]!, rows.toSorted((a, b) => a.rowCount - b.rowCount)[0]!]; // prettier-ignore
      const timing = fitRows({
        firstRowCount: tallest.rowCount,
        firstFrameRate_fps: tallest.rate_fps,
        secondRowCount: lowest.rowCount,
        secondFrameRate_fps: lowest.rate_fps,
      });
      for (const { mode, rowCount, rate_fps } of rows) {
        const ratio = rate_fps / frameRateByRows_fps({ rowCount, ...timing });
        expect([mode, Math.abs(ratio - 1) < 0.01]).toEqual([mode, true]);
      }
    });

    test(`${id}: no mode reads more photosites than it has`, () => {
      for (const { pixels, binningCount = 1 } of Object.values(modes)) {
        expect(pixels!.widthCount * binningCount).toBeLessThanOrEqual(activeArea!.widthCount);
        expect(pixels!.heightCount * binningCount).toBeLessThanOrEqual(activeArea!.heightCount);
      }
    });
  }
});

test('hands over three pictures of three shapes: wide, square and tall', () => {
  const shapes = Object.values(shoot.deliverables).map(({ pixels }) => Math.sign(pixels!.widthCount - pixels!.heightCount)); // prettier-ignore
  expect(shapes.toSorted((a, b) => a - b)).toEqual([-1, 0, 1, 1]);
});

test('has two bodies that are both chosen, six lenses, and somebody for every duty', () => {
  expect(new Set(plan.shots.map(({ settings }) => settings!.camera))).toEqual(new Set(Object.keys(shoot.kit.cameras)));
  expect(Object.keys(shoot.kit.lenses)).toHaveLength(6);
  expect(new Set(Object.values(shoot.crew).flatMap(({ does }) => does))).toEqual(new Set(Object.keys(DUTIES)));
});

test('fills shots from the event library: bubbles, a cork, powder and glass, one of them with nothing else known', () => {
  const events = Object.values(shoot.shots).flatMap(({ action }) => action.event ?? []);
  expect(new Set(events)).toEqual(new Set(['bubble-rise', 'cork', 'powder-burst', 'glass-shards']));
  expect(eventProblems(shoot)).toEqual([]);
  const { action } = shoot.shots['cork']!;
  expect([action.speed_m_per_s, action.duration_s, action.parameters]).toEqual([undefined, undefined, {}]);
});

test('shoots its miniature at the square root of its scale, as miniatures are', () => {
  // A twelfth: 25 × √12 = 86.6.
  expect(ratioOf(shoot.shots['mill']!.rate!)).toBe(Math.ceil(25 * Math.sqrt(12)));
});

test('has a clean plate that does not match yet, and says how to mend it', () => {
  const [match] = plan.matches;
  expect([match!.shotId, match!.matchesId]).toEqual(['pour-plate', 'pour-1']);
  expect(match!.differences.map(({ what }) => what)).toContain('lens');
  const mended = applyPatch(DEMO, withParents(DEMO, match!.differences.flatMap(({ patch }) => patch))); // prettier-ignore
  const [again] = planShoot(readSound(mended)).matches;
  expect(again!.differences.map(({ what }) => what)).not.toContain('lens');
});

test('owes its dark references again as rates and shutters change', () => {
  const due = plan.references.filter(({ what }) => what === DARK_REFERENCE);
  expect(due.some(({ because }) => because.includes('shutter changed since'))).toBe(true);
});

test('has a film as long as its board, and a shot for every frame of it', () => {
  const frames = Object.values(shoot.board);
  expect(frames.reduce((sum, { screenTime_s }) => sum + screenTime_s!, 0)).toBe(shoot.deliverables['film']!.length_s);
  const served = new Set(Object.values(shoot.shots).flatMap(({ board }) => board));
  expect(Object.keys(shoot.board).filter((id) => !served.has(id))).toEqual([]);
});

test('shows one shot by a speed profile, one lit through and one that nothing is fitted to', () => {
  expect(shoot.shots['ramp']!.speed.knots.length).toBeGreaterThan(2);
  expect(shoot.shots['pour-1']!.seen).toBe('lit-through');
  expect(shoot.shots['honey']!.attachments).toEqual([]);
  expect(shoot.defaults.attachments).toEqual(['splash-glass']);
});
