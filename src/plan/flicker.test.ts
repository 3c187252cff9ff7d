/** Flicker of a shot: what its lamps are taken for, how they add up, and the margin that comes of it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, marginOf, readSound, SMALL } from '../../test/shoots.ts';
import type { Written } from '../document/written.ts';
import { sineWaveform, type Waveform } from '../laws/flicker/waveform.ts';
import { explain } from './explain.ts';
import { SWING } from './flickerMargin.ts';
import { planShot } from './planShot.ts';
import type { ShotPlan } from './types.ts';
import { tellWaveforms } from './waveforms.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

const SHA = 'a'.repeat(64);

/** One shot at 1000 fps and 1/10000 s for long enough to meet every phase, its set-up read, with these lamps in it. */
const BASE: Changes = { '/shots/one/rate': 1000, '/shots/one/shutter': '1/10000 s', '/shots/one/screenTime': undefined, '/shots/one/handles': '3 s' }; // prettier-ignore

const sine = (depth: string, more: object = {}): Written => ({ title: 'Sine', kind: 'led', waveform: { kind: 'led-ripple', depth }, ...more }); // prettier-ignore

function shootWith(kit: Readonly<Record<string, Written>>, placed: Readonly<Record<string, Written>>, changes: Changes = {}) {
  return readSound(changed(SMALL, { ...BASE, '/kit/lamps': kit, '/lighting/key/lamps': placed, ...changes }));
} // prettier-ignore

function planned(...given: Parameters<typeof shootWith>): ShotPlan {
  return planShot(shootWith(...given), 'one', 1);
}

const flickerOf = (plan: ShotPlan) => ({ margin: marginOf(plan, 'flicker'), ...plan.flicker! });

/** Stops from the dimmest to the brightest of 1 ± m. */
const stopsOf = (m: number): number => Math.log2((1 + m) / (1 - m));

describe('a set-up without lamps', () => {
  test('has no such limit', () => {
    const plan = planShot(readSound(SMALL), 'one', 1);
    expect(plan.margins.map(({ id }) => id)).not.toContain('flicker');
    expect(plan.flicker).toBeUndefined();
  });
});

describe('the margin', () => {
  test('holds the swing of the frames against what is allowed, in its place among the others', () => {
    const plan = planned({ a: sine('40 %') }, { one: { lamp: 'a' } });
    const { margin, seen } = flickerOf(plan);
    // The exposure is a hundredth of a period: sinc(0.01) leaves all but a sixth of a thousandth.
    expect(margin.have).toBeCloseTo(stopsOf(0.4 * 0.99984), 3);
    expect(margin).toMatchObject({ need: 0.03, sense: 'at-most', isHard: false, state: 'short', kind: 'stops' });
    expect(margin.stops!.value).toBeCloseTo(Math.log2(0.03 / margin.have!), 9);
    expect(seen!.dominant!.screen_Hz).toBeCloseTo(2.5, 9);
    const ids = plan.margins.map(({ id }) => id);
    expect(ids.indexOf('flicker')).toBe(ids.indexOf('clearance') + 1);
  });

  test('takes the gate of a grade where nobody wrote what is allowed, and says so', () => {
    const { margin } = flickerOf(planned({ a: sine('40 %') }, { one: { lamp: 'a' } }));
    expect(margin.assumed.find(({ name }) => name === 'flickerAllowed_stops')).toMatchObject({ value: 0.03, path: '/shots/one/flicker' }); // prettier-ignore
    const written = flickerOf(
      planned({ a: sine('40 %') }, { one: { lamp: 'a' } }, { '/shots/one/flicker': '2 stops' }),
    );
    expect(written.margin).toMatchObject({ need: 2, state: 'spare' });
    expect(written.margin.assumed.map(({ name }) => name)).not.toContain('flickerAllowed_stops');
  });

  test('of steady light is spare without end', () => {
    const { margin, verdict } = flickerOf(planned({ a: { kind: 'led', waveform: { kind: 'steady' } } }, { one: { lamp: 'a' } })); // prettier-ignore
    expect(margin.have).toBeCloseTo(0, 9);
    expect(margin.state).toBe('spare');
    expect(verdict).toMatchObject({ verdict: 'invisible' });
  });

  test('of a lamp that is dark between pulses is as short as anything is said to be', () => {
    const pulses: Written = { kind: 'led', waveform: { kind: 'led-pulses', rate: '200 Hz', duty: '20 %' } };
    const { margin } = flickerOf(planned({ a: pulses }, { one: { lamp: 'a' } }));
    expect(margin).toMatchObject({ have: 30, state: 'short' });
    expect(explain(shootWith({ a: pulses }, { one: { lamp: 'a' } }), 'one', SWING)!.value).toBe(30);
  });
});

describe('several lamps', () => {
  const two = { one: { lamp: 'a', share: '50 %' }, two: { lamp: 'b', share: '50 %' } };

  test('count by their shares, as read', () => {
    const { margin, lamps } = flickerOf(
      planned({ a: sine('40 %'), b: { kind: 'led', waveform: { kind: 'steady' } } }, two),
    );
    expect(margin.have).toBeCloseTo(stopsOf(0.2), 3);
    expect(lamps.map(({ shareFraction }) => shareFraction)).toEqual([0.5, 0.5]);
  });

  test('of different makes are taken at their worst together', () => {
    const { margin } = flickerOf(planned({ a: sine('40 %'), b: sine('20 %') }, two));
    expect(margin.have).toBeCloseTo(stopsOf(0.3), 3);
  });

  test('whose shares nobody read and that cannot be worked out leave it unknown, and say where to write one', () => {
    const { margin } = flickerOf(
      planned({ a: sine('40 %'), b: sine('20 %') }, { one: { lamp: 'a' }, two: { lamp: 'b' } }),
    );
    expect(margin.state).toBe('unknown');
    expect(margin.missing.map(({ path }) => path)).toEqual(['/lighting/key/lamps/one/share']);
  });

  test('are weighed as they are worked out where they can be', () => {
    const reading = { illuminance: '10 klx', distance: '2 m', beam: '30°', field: '60°' };
    const kit = { a: sine('40 %', reading), b: { kind: 'led', waveform: { kind: 'steady' }, ...reading } };
    // Both straight before the subject; the second at twice the distance gives a quarter as much.
    const { lamps, margin } = flickerOf(planned(kit, { one: { lamp: 'a', at: '0 m, -1 m, 0 m' }, two: { lamp: 'b', at: '0 m, -2 m, 0 m' } })); // prettier-ignore
    expect(lamps[0]!.shareFraction).toBeCloseTo(0.8, 6);
    expect(margin.have).toBeCloseTo(stopsOf(0.32), 3);
  });

  test('that are off do not count', () => {
    const { lamps } = flickerOf(planned({ a: sine('40 %'), b: sine('20 %') }, { one: { lamp: 'a' }, two: { lamp: 'b', off: true } })); // prettier-ignore
    expect(lamps.map(({ id }) => id)).toEqual(['one']);
  });

  test('behind a subject that is lit through count by the face alone', () => {
    const face = { face: { width: '1 m', height: '1 m', luminance: '20 kcd/m²' } };
    const kit = { a: sine('40 %'), b: { ...(sine('2 %') as object), ...face } };
    const behind = { '/shots/one/seen': 'lit-through' } as const;
    const { margin, lamps } = flickerOf(planned(kit, { one: { lamp: 'a' }, two: { lamp: 'b', at: '0 m, 1 m, 0 m' } }, behind)); // prettier-ignore
    expect(margin.have).toBeCloseTo(stopsOf(0.02), 4);
    expect(lamps.map(({ shareFraction }) => shareFraction)).toEqual([0, 1]);
  });

  test('mirrored in the subject ask which of them is', () => {
    const { margin } = flickerOf(planned({ a: sine('40 %') }, { one: { lamp: 'a' }, two: { lamp: 'a' } }, { '/shots/one/seen': 'by-reflection' })); // prettier-ignore
    expect(margin.missing[0]).toMatchObject({ title: expect.stringContaining('mirrored in') as string, path: '/lighting/key/lamps/one/share' }); // prettier-ignore
  });
});

describe('phases of the mains', () => {
  const kit = { a: sine('40 %') };
  const on = (...phases: readonly number[]) => Object.fromEntries(phases.map((phase, i) => [`l${i}`, { lamp: 'a', share: '30 %', phase }])); // prettier-ignore
  const swing = (...phases: readonly number[]) => flickerOf(planned(kit, on(...phases), { '/shoot/mains/phases': 3 })).margin.have!; // prettier-ignore

  test('one each cancel, two leave half, and one leaves all', () => {
    expect(swing(1, 1, 1)).toBeCloseTo(stopsOf(0.4), 3);
    expect(swing(1, 2, 3)).toBeLessThan(1e-3);
    expect(swing(1, 2)).toBeCloseTo(stopsOf(0.2), 3);
  });
});

describe('what nobody wrote of a lamp', () => {
  test.each([
    ['tungsten', { power: '2 kW' }, /^tungsten, 2 kW on 50 Hz$/, 'stated', '/kit/lamps/a/waveform/supply'],
    ['discharge', {}, /^arc on a square-wave ballast, 75 Hz$/, 'assumed', '/kit/lamps/a/waveform/rate'],
    ['fluorescent', {}, /^tube on a magnetic ballast, 50 Hz$/, 'assumed', '/kit/lamps/a/waveform/lag'],
    ['led', {}, /^diodes pulsed at 75 kHz, 50 % lit$/, 'assumed', '/kit/lamps/a/waveform/rate'],
  ])('is assumed by its kind, and named: %s', (kind, more, says, basis, path) => {
    const { lamps, margin } = flickerOf(planned({ a: { kind, ...more } }, { one: { lamp: 'a' } }));
    expect(lamps[0]!.says).toMatch(says);
    expect(lamps[0]!.basis).toBe(basis);
    expect(lamps[0]!.assumed.map((one) => one.path)).toContain(path);
    expect(margin.assumed.map((one) => one.path)).toContain(path);
  });

  test('nor what kind it is leaves it unknown, and points to the key', () => {
    const { margin, lamps, seen } = flickerOf(planned({ a: { title: 'A' } }, { one: { lamp: 'a' } }));
    expect(margin).toMatchObject({ state: 'unknown', missing: [{ path: '/kit/lamps/a/waveform/kind', because: 'absent' }] }); // prettier-ignore
    expect(lamps[0]!.unknown).toBe('how it ripples is not written');
    expect(seen).toBeUndefined();
  });

  test('the power of a filament, leaves it unknown', () => {
    const { margin } = flickerOf(planned({ a: { kind: 'tungsten' } }, { one: { lamp: 'a' } }));
    expect(margin.missing).toMatchObject([{ path: '/kit/lamps/a/power', because: 'absent' }]);
  });

  test('is no longer assumed once its depth is known, whatever makes the light', () => {
    for (const kind of ['tungsten', 'magnetic', 'square', 'fluorescent', 'electronic-tube', 'led-steady', 'led-ripple', 'led-pulses']) {
      const waveform = { kind, depth: '10 %', ...(kind === 'led-pulses' || kind === 'square' ? { rate: '100 Hz' } : {}) };
      const { lamps } = flickerOf(planned({ a: { waveform } }, { one: { lamp: 'a' } }));
      expect([kind, Number(lamps[0]!.depthFraction.toFixed(2))]).toEqual([kind, 0.1]);
    }
  }); // prettier-ignore

  test('pulses at a rate that nobody knows have no shutter that cures them', () => {
    const at = (shutter: string) => flickerOf(planned({ a: { kind: 'led' } }, { one: { lamp: 'a' } }, { '/shots/one/shutter': shutter })).margin.have!; // prettier-ignore
    // 1/15000 s would hold five periods of 75 kHz, 1/25000 s three.
    for (const shutter of ['1/15000 s', '1/25000 s', '1/7500 s']) expect(at(shutter)).toBeGreaterThan(0.05);
  });
});

describe('a dimmer', () => {
  test('makes a filament cooler and its power swing more, which is assumed of a phase-cut one', () => {
    const at = (level: string) => flickerOf(planned({ a: { kind: 'tungsten', power: '1 kW' } }, { one: { lamp: 'a', level } })).lamps[0]!; // prettier-ignore
    const [full, half] = [at('100 %'), at('50 %')];
    expect(half.depthFraction).toBeGreaterThan(full.depthFraction);
    expect(half.says).toBe('tungsten, 1 kW on 50 Hz, dimmed to 50 %');
    expect(half.assumed.find(({ path }) => path === '/lighting/key/lamps/one/level')!.why).toMatch(
      /cuts each half-wave/,
    );
    expect(full.assumed.map(({ path }) => path)).not.toContain('/lighting/key/lamps/one/level');
  });

  test('shortens the pulses of diodes, and is taken to leave other ripples as they are', () => {
    const lampAt = (kit: Written) => flickerOf(planned({ a: kit }, { one: { lamp: 'a', level: '40 %' } })).lamps[0]!;
    expect(lampAt({ waveform: { kind: 'led-pulses', rate: '20 kHz' } }).says).toBe('diodes pulsed at 20 kHz, 40 % lit');
    expect(lampAt({ waveform: { kind: 'led-pulses', rate: '20 kHz', duty: '50 %' } }).says).toBe('diodes pulsed at 20 kHz, 20 % lit'); // prettier-ignore
    expect(lampAt(sine('5 %')).assumed.map(({ path }) => path)).toContain('/lighting/key/lamps/one/level');
  });
});

describe('a measured lamp', () => {
  const wave = (ripple_Hz: number): Waveform => sineWaveform({ ripple_Hz, depthFraction: 0.3 });
  const kit = (measured: Written): Record<string, Written> => ({ a: { title: 'A', kind: 'led', colour: '5600 K', measured: { m: measured } } }); // prettier-ignore
  const files = { '/files': { rec: { name: 'rec.csv', sha256: SHA, size: '1 kB', kind: 'waveform' } } };

  function measured(of: Written, placed: Written, waveform: Waveform | undefined, changes: Changes = {}) {
    const shoot = shootWith(kit(of), { one: placed }, { ...files, ...changes });
    if (waveform) tellWaveforms(shoot, new Map([[SHA, waveform]]));
    return flickerOf(planShot(shoot, 'one', 1));
  }

  test('is what it was measured to be', () => {
    const { lamps, margin } = measured({ file: 'rec' }, { lamp: 'a' }, wave(100));
    expect(lamps[0]).toMatchObject({ basis: 'measured', says: 'as measured at full level, 5600 K', ripple_Hz: 100 });
    expect(margin.have).toBeCloseTo(stopsOf(0.3), 3);
  });

  test('keeps step with the mains where it was measured on them a little off', () => {
    const { lamps } = measured({ file: 'rec' }, { lamp: 'a' }, wave(100.06));
    expect(lamps[0]!.ripple_Hz).toBeCloseTo(100, 9);
    const own = measured({ file: 'rec', ownRate: true }, { lamp: 'a' }, wave(100.06));
    expect(own.lamps[0]!.ripple_Hz).toBeCloseTo(100.06, 9);
  });

  test.each([
    ['level', { lamp: 'a', level: '40 %' }, { file: 'rec' }, {}, /measured at full level, 5600 K, not at 40 %, 5600 K/],
    ['colour', { lamp: 'a', colour: '3200 K' }, { file: 'rec' }, {}, /not at full level, 3200 K/],
    ['supply', { lamp: 'a' }, { file: 'rec' }, { '/shoot/mains/supply': 'generator' }, /not at full level, 5600 K, on a generator/],
  ])('is unknown at another %s: nothing is carried over', (_, placed, of, changes, unknown) => {
    const { lamps, margin } = measured(of, placed, wave(100), changes);
    expect(lamps[0]!.unknown).toMatch(unknown);
    expect(margin).toMatchObject({ state: 'unknown', missing: [{ path: '/kit/lamps/a/measured' }] });
  }); // prettier-ignore

  test('holds at the level that it was measured at', () => {
    const { lamps } = measured({ file: 'rec', level: '40 %' }, { lamp: 'a', level: '40 %' }, wave(100));
    expect(lamps[0]!.says).toBe('as measured at 40 %, 5600 K');
  });

  test('whose file nobody read is unknown, and says so', () => {
    const other = { '/files': { rec: { name: 'rec.csv', sha256: 'b'.repeat(64), size: '1 kB', kind: 'waveform' } } };
    const { margin } = measured({ file: 'rec' }, { lamp: 'a' }, undefined, other);
    expect(margin.missing).toMatchObject([{ path: '/kit/lamps/a/measured/m/file', because: 'refused', what: expect.stringContaining('rec.csv has not been read') as string }]); // prettier-ignore
  });

  test('on mains of another frequency is unknown, unless it keeps a rate of its own', () => {
    const { lamps } = measured({ file: 'rec' }, { lamp: 'a' }, wave(120));
    expect(lamps[0]!.unknown).toMatch(/measured on mains of 60 Hz, and these are of 50 Hz/);
    expect(measured({ file: 'rec', ownRate: true }, { lamp: 'a' }, wave(120)).lamps[0]!.unknown).toBeUndefined();
  });

  test('is traced to its record', () => {
    const shoot = shootWith(kit({ file: 'rec' }), { one: { lamp: 'a' } }, files);
    tellWaveforms(shoot, new Map([[SHA, wave(100)]]));
    const text = JSON.stringify(explain(shoot, 'one', SWING));
    expect(text).toContain('/kit/lamps/a/measured/m');
    expect(text).toContain('exposed-ripple');
  });
});

describe('the band', () => {
  const locked = {
    '/shots/one/rate': 100,
    '/shots/one/screenTime': undefined,
    '/shots/one/shutter': '1/10000 s',
  } as const;
  const bandOf = (changes: Changes) => flickerOf(planned({ a: sine('40 %') }, { one: { lamp: 'a' } }, { ...locked, ...changes })).margin; // prettier-ignore

  test('of a locked rate reaches down to what mains that drift make of it', () => {
    const margin = bandOf({});
    expect(margin.state).toBe('tight');
    expect(margin.stops!.value).toBeGreaterThan(10);
    expect(margin.stops!.low).toBeLessThan(0);
  });

  test('is as wide as the mains are unsure: none of mains that never drift, and a generator wider than the grid', () => {
    const lows = [{ '/shoot/mains/drift': '0 Hz' }, {}, { '/shoot/mains/supply': 'generator' }].map((changes) => bandOf({ ...changes, '/shots/one/handles': '0.2 s' }).stops!.low); // prettier-ignore
    expect(lows[0]).toBeGreaterThan(10);
    expect(lows[1]).toBeLessThan(lows[0]!);
    expect(lows[2]).toBeLessThan(lows[1]!);
  });

  test('of a shutter that holds whole pulses says what is left where their rate is not quite as written', () => {
    const pulses: Written = { waveform: { kind: 'led-pulses', rate: '20 kHz' } };
    const { margin } = flickerOf(planned({ a: pulses }, { one: { lamp: 'a' } }, { '/shots/one/shutter': '1/2000 s' }));
    expect(margin.have).toBeLessThan(1e-6);
    expect(margin.stops!.low).toBeLessThan(4);
  });

  test('of a filament runs from what handbooks print to what its heat balance allows', () => {
    const { margin } = flickerOf(planned({ a: { kind: 'tungsten', power: '2 kW' } }, { one: { lamp: 'a' } }));
    const { value, low, high } = margin.stops!;
    expect(value - low).toBeCloseTo(Math.log2(1 / 0.6), 1);
    // The best moment to start adds a little to the least that handbooks print.
    expect(high - value).toBeGreaterThan(Math.log2(0.6 / 0.45) - 0.01);
    expect(high - value).toBeLessThan(Math.log2(0.6 / 0.45) + 0.2);
  });

  test('holds its value, whatever the lamps, the rate and the shutter', () => {
    const kinds = fc.constantFrom('tungsten', 'discharge', 'fluorescent', 'led');
    fc.assert(
      fc.property(kinds, fc.integer({ min: 24, max: 4000 }), fc.integer({ min: 1, max: 30 }), (kind, rate, over) => {
        const changes = { '/shots/one/rate': rate, '/shots/one/shutter': `1/${rate * over} s`, '/shots/one/handles': '0.1 s' };
        const { stops } = flickerOf(planned({ a: { kind, power: '1 kW' } }, { one: { lamp: 'a' } }, changes)).margin;
        expect(stops!.low).toBeLessThanOrEqual(stops!.value);
        expect(stops!.high).toBeGreaterThanOrEqual(stops!.value);
      }),
      { numRuns: 40 },
    ); // prettier-ignore
  });
});

describe('a rolling shutter', () => {
  const rolling = { '/kit/cameras/body/readout': 'rolling' } as const;
  const notesAt = (changes: Changes) => planned({ a: sine('40 %') }, { one: { lamp: 'a' } }, changes).notes.join(' ');

  test('has its bands counted, and says what it lacks to count them', () => {
    expect(notesAt({ ...rolling, '/kit/cameras/body/rowTime': '10 µs' })).toMatch(/1\.1 bands across each frame, 1000 rows each/); // prettier-ignore
    expect(notesAt(rolling)).toMatch(/rowTime in its kit/);
    expect(notesAt({})).not.toMatch(/bands/);
  });
});

test('the mains that cannot be read leave lamps on them unknown, and others known', () => {
  const at = (kit: Written) => {
    const shoot = shootWith({ a: kit }, { one: { lamp: 'a' } });
    const { frequency_Hz: _, ...mains } = shoot.shoot.mains;
    return flickerOf(planShot({ ...shoot, shoot: { ...shoot.shoot, mains: { ...mains, unread: ['frequency'] } } }, 'one', 1)).margin; // prettier-ignore
  };
  expect(at(sine('40 %')).missing).toMatchObject([{ path: '/shoot/mains/frequency', because: 'unread' }]);
  expect(at({ waveform: { kind: 'led-pulses', rate: '20 kHz' } }).state).not.toBe('unknown');
});
