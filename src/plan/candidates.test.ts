import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, DEMO, planned, readSound, SMALL } from '../../test/shoots.ts';
import { thirdsAboveOne } from '../base/stop.ts';
import type { Written, WrittenRecord } from '../document/written.ts';
import { answers, betterFirst, kitsOf, type Candidate, type Kit } from './candidates.ts';
import { withDefaults } from './givens.ts';
import { candidatesOf, planShot, prepare } from './planShot.ts';

const KIT: Kit = { camera: 'body', mode: 'whole', lens: 'macro', givens: new Map() };
const LIKE: Candidate = { kit: KIT, stop: 8, unknownCount: 0, lacks: [0, 0, 0], worst_stops: 0.1, light_stops: 14, resolution_px: 1920, over_stops: 0, noise_dB: 30, clear_m: 0.4, place: 5 }; // prettier-ignore

describe('the order of answers', () => {
  // Each is better than the one after it by one thing alone, and worse in all that comes later in the order.
  const LADDER: readonly (readonly [why: string, better: Partial<Candidate>])[] = [
    ['all of it known', {}],
    ['less lacking in hard limits', { unknownCount: 1 }],
    ['less lacking in what was asked for', { unknownCount: 1, lacks: [1, 0, 0] }],
    ['less lacking in exposure', { unknownCount: 1, lacks: [1, 1, 0] }],
    ['the better worst spare', { unknownCount: 1, lacks: [1, 1, 1] }],
    ['the larger picture', { unknownCount: 1, lacks: [1, 1, 1], worst_stops: -1 }],
    ['the less overexposed', { unknownCount: 1, lacks: [1, 1, 1], worst_stops: -1, resolution_px: 1000 }],
    ['the quieter', { unknownCount: 1, lacks: [1, 1, 1], worst_stops: -1, resolution_px: 1000, over_stops: 1 }],
    ['the more room before the lens', { unknownCount: 1, lacks: [1, 1, 1], worst_stops: -1, resolution_px: 1000, over_stops: 1, noise_dB: 20 }],
    ['the less light asked', { unknownCount: 1, lacks: [1, 1, 1], worst_stops: -1, resolution_px: 1000, over_stops: 1, noise_dB: 20, clear_m: 0.1 }],
    ['the first tried', { unknownCount: 1, lacks: [1, 1, 1], worst_stops: -1, resolution_px: 1000, over_stops: 1, noise_dB: 20, clear_m: 0.1, light_stops: 15 }],
    ['nothing', { unknownCount: 1, lacks: [1, 1, 1], worst_stops: -1, resolution_px: 1000, over_stops: 1, noise_dB: 20, clear_m: 0.1, light_stops: 15, place: 6 }],
  ]; // prettier-ignore
  const STEPS: readonly (readonly [string, Candidate, Candidate])[] = LADDER.slice(0, -1).map(([why, better], i) => [
    why,
    { ...LIKE, ...better },
    { ...LIKE, ...LADDER[i + 1]![1] },
  ]);

  test.each(STEPS)('with all before it equal, %s comes first', (_why, better, worse) => {
    expect(betterFirst(better, worse)).toBeLessThan(0);
    expect(betterFirst(worse, better)).toBeGreaterThan(0);
  });

  test('counts a worst spare beyond a third of a stop for no more than that', () => {
    const smaller = { ...LIKE, worst_stops: 3, resolution_px: 1000 };
    expect(betterFirst({ ...LIKE, worst_stops: 0.4 }, smaller)).toBeLessThan(0);
  });

  test('is the same whichever is asked about first', () => {
    const few = fc.constantFrom(0, 0.2, 1);
    const candidate = fc
      .tuple(few, few, few, few, few, few, few, fc.nat(50))
      .map(([a, b, c, worst_stops, light_stops, resolution_px, noise_dB, place]): Candidate => ({ ...LIKE, lacks: [a, b, c], worst_stops, light_stops, resolution_px, noise_dB, place })); // prettier-ignore
    fc.assert(
      fc.property(candidate, candidate, candidate, (a, b, c) => {
        expect(Math.sign(betterFirst(a, b))).toBe(-Math.sign(betterFirst(b, a)) + 0);
        if (betterFirst(a, b) <= 0 && betterFirst(b, c) <= 0) expect(betterFirst(a, c)).toBeLessThanOrEqual(0);
      }),
    );
  });
});

/** Whether one is at least as good in worst spare, light, resolution and noise, and better in one. */
function beats(a: Candidate, b: Candidate): boolean {
  const gains = [a.worst_stops - b.worst_stops, b.light_stops - a.light_stops, a.resolution_px - b.resolution_px, a.noise_dB - b.noise_dB]; // prettier-ignore
  return gains.every((gain) => gain > -1e-9) && gains.some((gain) => gain > 1e-9);
}

describe('answers', () => {
  const scattered = fc
    .array(
      fc.record({
        lens: fc.constantFrom('a', 'b', 'c'),
        lack: fc.constantFrom(0, 0.5, 1, 4),
        worst_stops: fc.double({ min: -2, max: 1, noNaN: true }),
        light_stops: fc.integer({ min: 10, max: 16 }),
        resolution_px: fc.constantFrom(1920, 2048, 4096),
        noise_dB: fc.integer({ min: 20, max: 40 }),
      }),
      { minLength: 1, maxLength: 60 },
    )
    .map(
      (all) =>
      all.map(({ lens, lack, ...rest }, place): Candidate => ({ ...LIKE, ...rest, kit: { ...KIT, lens }, lacks: [0, lack, 0], place })), // prettier-ignore
    );

  test('begin with the best, then at most seven others, no two the same', () => {
    fc.assert(
      fc.property(scattered, (candidates) => {
        const found = answers(candidates);
        expect(found[0]).toBe([...candidates].sort(betterFirst)[0]);
        expect(found.length).toBeLessThanOrEqual(8);
        expect(new Set(found).size).toBe(found.length);
      }),
    );
  });

  test('hold no other that one told before it beats in every way, nor one that lacks far more than the best', () => {
    fc.assert(
      fc.property(scattered, (candidates) => {
        const found = answers(candidates);
        for (const [i, other] of found.entries()) {
          expect(found.slice(0, i).filter((of) => beats(of, other))).toEqual([]);
          expect(other.lacks[1]).toBeLessThanOrEqual(found[0]!.lacks[1] + 1.5);
        }
      }),
    );
  });

  test('are none where nothing could be tried', () => {
    expect(answers([])).toEqual([]);
  });

  test('to the shots of the demo are several, none beaten in every way by one told before it', () => {
    const shoot = readSound(DEMO);
    for (const id of Object.keys(shoot.shots)) {
      const { best } = candidatesOf(prepare(shoot, id));
      expect(best.length).toBeGreaterThan(1);
      for (const [i, one] of best.entries())
        for (const other of best.slice(i + 1)) expect(beats(one, other)).toBe(false);
    }
  });
});

describe('what is tried', () => {
  const kits = (changes: Readonly<Record<string, Written | undefined>>) => {
    const shoot = readSound(changed(DEMO, changes));
    return kitsOf(shoot, withDefaults(shoot, 'honey'));
  };

  test('is every mode with every lens that is here', () => {
    const all = kits({});
    const { cameras, lenses } = readSound(DEMO).kit;
    const modeCount = Object.values(cameras).reduce((count, { modes }) => count + Object.keys(modes).length, 0);
    const here = Object.keys(lenses).filter((id) => lenses[id]!.availability === undefined);
    expect(all).toHaveLength(modeCount * here.length);
    expect(new Set(all.map(({ lens }) => lens))).toEqual(new Set(here));
    expect(here).not.toContain('probe-24');
  });

  test('leaves out what could be hired and what is not wanted', () => {
    expect(kits({ '/kit/lenses/wide-35/availability': 'unwanted' }).map(({ lens }) => lens)).not.toContain('wide-35');
    const hired = kits({ '/kit/cameras/heron/availability': 'hire' });
    expect(new Set(hired.map(({ camera }) => camera))).toEqual(new Set(['wren']));
  });

  test('is only what a shot fixes, wherever that is', () => {
    const fixed = kits({ '/shots/honey/lens': 'probe-24', '/shots/honey/mode': 'hd', '/shots/honey/camera': 'heron' });
    expect(fixed.map(({ camera, mode, lens }) => [camera, mode, lens])).toEqual([['heron', 'hd', 'probe-24']]);
  });

  test('are stops of the lens alone, in thirds, and its widest mark', () => {
    for (const id of ['pour-1', 'honey']) {
      const shoot = readSound(changed(DEMO, { [`/shots/${id}/depth`]: undefined, [`/shots/${id}/lens`]: 'wide-35' }));
      const seen = new Set<number>();
      for (const { stop } of candidatesOf(prepare(shoot, id)).best) {
        seen.add(stop);
        const thirds = thirdsAboveOne(stop);
        if (stop !== 1.5) expect(thirds).toBeCloseTo(Math.round(thirds), 9);
        expect(stop).toBeGreaterThanOrEqual(1.5);
        expect(stop).toBeLessThanOrEqual(2 ** 4.5 * (1 + 1e-9));
      }
    }
  });

  test('are never more than 5,000 combinations', () => {
    const modes = Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`m${i}`, { pixels: `${2000 + 16 * i} x 1200`, rate: '5000 fps' }])); // prettier-ignore
    const macro = (SMALL['kit'] as { lenses: { macro: WrittenRecord } }).lenses.macro;
    const lenses = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`l${i}`, { ...macro, focalLength: `${40 + 5 * i} mm`, closeFocus: '200 mm' }])); // prettier-ignore
    const many = changed(SMALL, { '/kit/cameras/body/modes': modes, '/kit/lenses': lenses });
    const plan = planned(many);
    expect(plan.triedCount).toBe(5000);
    expect(plan.settings).toBeDefined();
  });
});

/** The same map with its keys in another order. */
const reordered = (map: WrittenRecord, order: readonly string[]): WrittenRecord =>
  Object.fromEntries(order.map((key) => [key, map[key]!]));

describe('the order in which kit is written', () => {
  const kit = DEMO['kit'] as { cameras: { heron: { modes: WrittenRecord } }; lenses: WrittenRecord };
  const order = (map: WrittenRecord) => fc.shuffledSubarray(Object.keys(map), { minLength: Object.keys(map).length });
  const shoot = readSound(DEMO);

  test('changes no answer but between equals', () => {
    fc.assert(
      fc.property(order(kit.lenses), order(kit.cameras.heron.modes), fc.constantFrom(...Object.keys(shoot.shots)), (lenses, modes, id) => {
        const shuffled = readSound(changed(DEMO, { '/kit/lenses': reordered(kit.lenses, lenses), '/kit/cameras/heron/modes': reordered(kit.cameras.heron.modes, modes) })); // prettier-ignore
        const [before] = candidatesOf(prepare(shoot, id)).best;
        const [after] = candidatesOf(prepare(shuffled, id)).best;
        const unplaced = (of: Candidate): Candidate => ({ ...of, place: 0 });
        expect(Math.abs(betterFirst(unplaced(before!), unplaced(after!)))).toBe(0);
      }),
      { numRuns: 40 },
    ); // prettier-ignore
  });

  test('changes no answer where lenses differ in what they tell', () => {
    const macro = (SMALL['kit'] as { lenses: { macro: WrittenRecord } }).lenses.macro;
    const { imageCircle: _circle, closeFocus: _focus, ...tellsLess } = macro;
    // The small circle covers no frame of the body; nothing is known of the other's.
    const lenses = { untold: { ...tellsLess, focalLength: '90 mm' }, small: { ...macro, imageCircle: '5 mm' } };
    const plans = [['untold', 'small'], ['small', 'untold']].map((ids) => planned(changed(SMALL, { '/kit/lenses': reordered(lenses, ids) }))); // prettier-ignore
    for (const { settings } of plans) expect(settings!.lens).toBe('untold');
  });

  test('changes no answer where a piece of kit tells too little to be planned with', () => {
    const lenses = { ...kit.lenses, untold: { title: 'Bought yesterday' } };
    for (const ids of [Object.keys(lenses), Object.keys(lenses).toReversed()]) {
      const written = readSound(changed(DEMO, { '/kit/lenses': reordered(lenses, ids) }));
      for (const id of Object.keys(written.shots))
        expect(planShot(written, id, 1).settings).toEqual(planShot(shoot, id, 1).settings);
    }
  });
});

test('a mode without its highest rate is taken only where no other can be judged', () => {
  const modes = { untold: { pixels: '1920 x 1080' }, slow: { pixels: '1920 x 1080', rate: '900 fps' } };
  expect(planned(changed(SMALL, { '/kit/cameras/body/modes': modes })).settings!.mode).toBe('slow');
  const alone = planned(changed(SMALL, { '/kit/cameras/body/modes': { untold: modes.untold } }));
  expect(alone.settings!.mode).toBe('untold');
});
