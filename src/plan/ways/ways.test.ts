import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, DEMO, marginOf, readSound, SMALL } from '../../../test/shoots.ts';
import { writeQuantity } from '../../base/quantity.ts';
import { stopFromThirds } from '../../base/stop.ts';
import { applyPatch, invertPatch } from '../../document/patch.ts';
import type { Shot } from '../../document/schema.ts';
import type { Written } from '../../document/written.ts';
import { planShot } from '../planShot.ts';
import type { LimitId, Margin, ShotPlan, Way } from '../types.ts';
import { MOST_TRIED, waysFor } from './ways.ts';

const DEMO_SHOTS = Object.keys(DEMO['shots'] as object);

interface Found {
  readonly written: Written;
  readonly id: string;
  readonly now: ShotPlan;
  readonly target: Margin;
  readonly ways: readonly Way[];
}

/** The ways of every short margin of one shot. */
function waysOf(written: Written, id: string): readonly Found[] {
  const shoot = readSound(written);
  const now = planShot(shoot, id, 1);
  return now.margins
    .filter(({ state }) => state === 'short')
    .map((target) => ({ written, id, now, target, ways: waysFor(shoot, written, id, target.id) }));
}

const FIXED = [
  'rate',
  'shutter',
  'stop',
  'isoSpeed',
  'camera',
  'mode',
  'lens',
] as const satisfies readonly (keyof Shot)[];

/** What every way owes its reader, each checked by planning what it proposes from nothing but the document. */
function hold({ written, id, now, target, ways }: Found): void {
  for (const way of ways) {
    const after = applyPatch(written, way.patch);
    const shoot = readSound(after);
    const then = planShot(shoot, id, 1);
    const reached = then.margins.find((margin) => margin.id === target.id);
    const title = `${id}, ${target.id}: ${way.title}`;

    // It shows what planning it gives.
    expect([title, way.margins]).toEqual([title, then.margins]);
    expect(way.settings).toEqual(then.settings);
    if (reached) expect(way.stops).toBe(reached.stops!.value);
    expect(way.gain_stops).toBeCloseTo(way.stops - target.stops!.value, 9);

    // It closes what it says it closes, and helps at least.
    expect([title, way.closes]).toEqual([title, reached === undefined || reached.state === 'tight' || reached.state === 'spare']); // prettier-ignore
    if (!way.closes) expect(way.gain_stops).toBeGreaterThan(0.05);

    // What the person fixed stays unless it says otherwise.
    const [before, later] = [readSound(written).shots[id]!, shoot.shots[id]!];
    if (!way.touchesFixed) for (const key of FIXED) if (before[key] !== undefined) expect([title, key, later[key]]).toEqual([title, key, before[key]]); // prettier-ignore

    // No taste is bought with a limit of law, safety or physics.
    const stateNow = (of: LimitId) => now.margins.find((margin) => margin.id === of)?.state;
    const broken = then.margins.filter((margin) => margin.isHard && margin.id !== target.id && margin.state === 'short' && stateNow(margin.id) !== 'short'); // prettier-ignore
    if (!target.isHard) expect([title, broken.map((margin) => margin.id)]).toEqual([title, []]);
    // Where a hard limit is, it is named.
    expect([title, way.breaks]).toEqual([title, broken.map((margin) => ({ id: margin.id, title: margin.title }))]);

    // It tells every limit that moves, by how much and to where.
    for (const margin of then.margins) {
      const was = now.margins.find((of) => of.id === margin.id)?.stops;
      if (margin.id === target.id || !was || !margin.stops) continue;
      const change = margin.stops.value - was.value;
      const told = way.effects.find((effect) => effect.id === margin.id);
      expect([title, margin.id, told !== undefined]).toEqual([title, margin.id, Math.abs(change) > 0.05]);
      if (told) expect(told).toMatchObject({ change_stops: change, state: margin.state });
    }

    // It can be taken back.
    expect(planShot(readSound(applyPatch(after, invertPatch(written, way.patch))), id, 1)).toEqual(now);
  }

  // Those that close come first, those that break nothing before the others; then those that leave alone what was fixed, then the cheaper; none is told twice.
  const ranks = ways.map(
    ({ closes, breaks, touchesFixed }) => (!closes ? 4 : breaks.length > 0 ? 2 : 0) + Number(touchesFixed),
  );
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  ways.slice(1).forEach((way, i) => {
    if (ranks[i] === ranks[i + 1] && way.closes) expect(way.cost).toBeGreaterThanOrEqual(ways[i]!.cost);
  });
  expect(new Set(ways.map(({ patch }) => JSON.stringify(patch))).size).toBe(ways.length);
}

describe('every way for a short margin holds what it says', () => {
  const found = DEMO_SHOTS.flatMap((id) => waysOf(DEMO, id));

  test('in the demo, where each short margin has one that closes it', () => {
    expect(found.length).toBeGreaterThanOrEqual(3);
    for (const of of found) {
      hold(of);
      expect([of.id, of.target.id, of.ways[0]!.closes]).toEqual([of.id, of.target.id, true]);
    }
  });

  /** The demo with little kit, so that many of its kind can be planned. */
  const LITTLE = changed(DEMO, Object.fromEntries(['half', 'binned', 'wide', 'strip'].map((mode) => [`/kit/cameras/heron/modes/${mode}`, undefined]))); // prettier-ignore
  const amount = (kind: 'length' | 'time' | 'pixels' | 'illuminance' | 'luminance', least: number, most: number) => fc.double({ min: Math.log10(least), max: Math.log10(most), noNaN: true }).map((magnitude) => writeQuantity(kind, Number((10 ** magnitude).toPrecision(3)))); // prettier-ignore
  const changes = fc.record(
    {
      screenTime: amount('time', 2, 40),
      frameWidth: amount('length', 0.02, 0.5),
      depth: amount('length', 1e-3, 0.1),
      blur: amount('pixels', 0.5, 6),
      handles: amount('time', 0.01, 20),
      clearance: amount('length', 0.02, 0.6),
      diffraction: amount('pixels', 0.6, 4),
      reframe: fc.constantFrom('10 %', '30 %'),
      signalToNoise: fc.constantFrom('20 dB', '26 dB', '30 dB'),
      highlights: fc.constantFrom('1 stop', '3 stops', '5 stops'),
      rate: fc.integer({ min: 60, max: 3000 }),
      shutter: fc.constantFrom('1/500 s', '1/10000 s', '90°', '350°'),
      stop: fc.integer({ min: 9, max: 27 }).map((thirds) => writeQuantity('tStop', stopFromThirds(thirds))),
      index: fc.constantFrom(500, 1600, 6400),
      mode: fc.constantFrom('uhd', 'hd'),
      lens: fc.constantFrom('wide-35', 'macro-100'),
    },
    { requiredKeys: [] },
  );

  test('in shoots like the demo, however it is changed', () => {
    const movesSeen = new Set<string>();
    fc.assert(
      fc.property(changes, fc.constantFrom(...DEMO_SHOTS), (change, id) => {
        const set = Object.fromEntries(Object.entries(change).map(([key, value]) => [`/shots/${id}/${key}`, value]));
        const camera = change.mode === undefined ? {} : { [`/shots/${id}/camera`]: 'heron' };
        for (const of of waysOf(changed(LITTLE, { ...set, ...camera }), id)) {
          hold(of);
          for (const { move } of of.ways) movesSeen.add(move);
        }
      }),
      { numRuns: 12 },
    );
    expect(movesSeen.size).toBeGreaterThan(3);
  }, 30_000);
});

describe('looking for ways', () => {
  const dark = changed(SMALL, { '/lighting/key/illuminance': '3 klx', '/shots/one/stop': 'T8' });
  const shoot = readSound(dark);

  test('tells how far it is, up to the last, and tries at most forty', () => {
    const heard: (readonly [number, number])[] = [];
    waysFor(shoot, dark, 'one', 'light', { onProgress: (done, total) => heard.push([done, total]) });
    const total = heard[0]![1];
    expect(heard).toEqual(Array.from({ length: total }, (_, i) => [i + 1, total]));
    expect(total).toBeLessThanOrEqual(MOST_TRIED);
  });

  test('tries at most forty however much kit there is', () => {
    const modes = Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`m${i}`, { pixels: '1920 x 1080', rate: `${1000 + i} fps` }])); // prettier-ignore
    const slow = changed(SMALL, { '/kit/cameras/body/modes': modes, '/shots/one/screenTime': '20 s' });
    let most = 0;
    waysFor(readSound(slow), slow, 'one', 'frame-rate', { onProgress: (done) => (most = Math.max(most, done)) });
    expect(most).toBe(MOST_TRIED);
  });

  test('stops when it is cancelled, and gives what it had found', () => {
    const all = waysFor(shoot, dark, 'one', 'light');
    expect(waysFor(shoot, dark, 'one', 'light', { isCancelled: () => true })).toEqual([]);
    let asked = 0;
    let planned = 0;
    const some = waysFor(shoot, dark, 'one', 'light', {
      isCancelled: () => (asked += 1) > 3,
      onProgress: () => (planned += 1),
    });
    expect([asked, planned]).toEqual([4, 3]);
    for (const way of some) expect(all).toContainEqual(way);
  });

  test('finds nothing where nothing is short, or there is no such limit or shot, or no settings', () => {
    expect(waysFor(shoot, dark, 'one', 'coverage')).toEqual([]);
    expect(waysFor(shoot, dark, 'one', 'storage')).toEqual([]);
    expect(waysFor(shoot, dark, 'nobody', 'light')).toEqual([]);
    const blind = changed(dark, { '/shots/one/frameWidth': undefined });
    expect(waysFor(readSound(blind), blind, 'one', 'light')).toEqual([]);
  });

  test('gives the same ways again', () => {
    expect(waysFor(readSound(structuredClone(dark)), structuredClone(dark), 'one', 'light')).toEqual(waysFor(shoot, dark, 'one', 'light')); // prettier-ignore
  });

  test('does not call a margin closed that it makes unknown', () => {
    // The other body tells no highest rate for its mode.
    const other = { title: 'Other', pitch: '10 µm', baseIndex: 800, modes: { whole: { pixels: '1920 x 1080' } } };
    const slow = changed(SMALL, { '/kit/cameras/other': { ...other, availability: 'hire' }, '/shots/one/rate': 6000 });
    const ways = waysFor(readSound(slow), slow, 'one', 'frame-rate');
    expect(marginOf(planShot(readSound(slow), 'one', 1), 'frame-rate').state).toBe('short');
    expect(ways.filter(({ move, closes }) => move === 'other-body' && closes)).toEqual([]);
  });
});
