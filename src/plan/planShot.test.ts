import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, DEMO, marginOf, planned, readSound, SMALL, stopsAt } from '../../test/shoots.ts';
import { stopFromThirds } from '../base/stop.ts';
import { writeQuantity } from '../base/quantity.ts';
import { applyPatch } from '../document/patch.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { explain } from './explain.ts';
import { planShot } from './planShot.ts';
import type { ShotPlan, Trace } from './types.ts';

const DEMO_SHOTS = Object.keys(DEMO['shots'] as object);

const leafOf = (written: Written, name: string): Trace => explain(readShoot(written).shoot, 'one', name)!;

describe('defaults under a shot', () => {
  const handles = '/shots/one/handles';

  test('give what the shot leaves out, and are named as where it stands', () => {
    const written = changed(SMALL, { [handles]: undefined, '/defaults/handles': '0.3 s' });
    expect(leafOf(written, 'handles_s')).toMatchObject({ value: 0.3, origin: { by: 'document', path: '/defaults/handles' } });
  }); // prettier-ignore

  test('give way to what the shot says', () => {
    const written = changed(SMALL, { '/defaults/handles': '0.3 s' });
    expect(leafOf(written, 'handles_s')).toMatchObject({ value: 0.1, origin: { by: 'document', path: handles } });
  });

  test('do not stand in for what the shot says and cannot be read', () => {
    const written = changed(SMALL, { [handles]: 'a while', '/defaults/handles': '0.3 s' });
    expect(leafOf(written, 'handles_s')).toMatchObject({ value: undefined, origin: { path: handles } });
  });

  test('that cannot be read are unread for every shot that leaves them to the defaults', () => {
    const written = changed(SMALL, { [handles]: undefined, '/defaults/handles': 'a while' });
    const { shoot } = readShoot(written);
    expect(marginOf(planShot(shoot, 'one', 1), 'buffer')).toMatchObject({ state: 'unknown', missing: [{ path: '/defaults/handles', because: 'unread' }] }); // prettier-ignore
    const own = readShoot(changed(written, { [handles]: '0.2 s' })).shoot;
    expect(marginOf(planShot(own, 'one', 1), 'buffer').state).toBe('spare');
  });

  test('of an action are taken key by key, each spread with the value it was written for', () => {
    const written = changed(SMALL, {
      '/shots/one/action': { duration: '0.2 s', width: '120 mm' },
      '/defaults/action': { duration: '0.5 s ± 0.4 s', speed: '2 m/s ± 0.5 m/s' },
    });
    expect(leafOf(written, 'speed_m_per_s')).toMatchObject({ value: 2, origin: { path: '/defaults/action/speed', spread: 0.5 } }); // prettier-ignore
    // Nobody says how sure the shot's own duration is: the usual tenth, not the spread of the default.
    const duration = leafOf(written, 'actionTime_s');
    expect(duration).toMatchObject({ value: 0.2, origin: { path: '/shots/one/action/duration' } });
    expect(duration.origin.by === 'document' && duration.origin.spread).toBeCloseTo(0.02, 12);
  });

  test.each(['action/speed', 'hero/life'])('do not stand in for an unreadable %s', (key) => {
    const [record = '', field = ''] = key.split('/');
    const written = changed(SMALL, { [`/shots/one/${key}`]: '?', [`/defaults/${record}`]: { [field]: field === 'life' ? '20 min' : '2 m/s' } }); // prettier-ignore
    const plan = planShot(readShoot(written).shoot, 'one', 1);
    expect(marginOf(plan, record === 'hero' ? 'hero-life' : 'blur').missing).toContainEqual(
      expect.objectContaining({ path: `/shots/one/${key}`, because: 'unread' }),
    );
  });

  test('do not stand in for an action that is no record at all', () => {
    const written = changed(SMALL, { '/shots/one/action': 'it falls', '/defaults/action': { duration: '0.2 s', speed: '1 m/s' } }); // prettier-ignore
    const { missing } = marginOf(planShot(readShoot(written).shoot, 'one', 1), 'frame-rate');
    expect(missing).toEqual([expect.objectContaining({ name: 'actionTime_s', path: '/shots/one/action/duration', because: 'unread' })]); // prettier-ignore
  });

  test('of a list are overruled by a list that is written empty', () => {
    const written = changed(SMALL, { '/shots/one/attachments': undefined, '/defaults/attachments': ['glass', 'nd-1'] });
    expect(leafOf(written, 'filterLoss_stops')).toMatchObject({
      value: 1.5,
      origin: { path: '/defaults/attachments' },
    });
    const bare = changed(written, { '/shots/one/attachments': [] });
    expect(leafOf(bare, 'filterLoss_stops')).toMatchObject({ value: 0, origin: { path: '/shots/one/attachments' } });
  });

  test('of a speed are taken whole', () => {
    const knots = [{ at: '0 s', speed: 1 }, { at: '8 s', speed: '1/20' }];
    const written = changed(SMALL, { '/defaults/speed': { knots }, '/shots/one/speed': { constant: '1/10' } });
    expect(planned(written).settings!.captureRate_fps).toBe(250);
    expect(planned(changed(SMALL, { '/defaults/speed': { knots } })).settings!.captureRate_fps).toBe(500);
  }); // prettier-ignore
});

describe('what a shot fixes', () => {
  const fixings = fc.record(
    {
      rate: fc.integer({ min: 30, max: 4000 }),
      shutter: fc.oneof(
        fc.integer({ min: 200, max: 100_000 }).map((over) => `1/${over} s`),
        fc.integer({ min: 1, max: 350 }).map((angle) => `${angle}°`),
      ),
      stop: fc.integer({ min: 9, max: 27 }).map((thirds) => writeQuantity('tStop', stopFromThirds(thirds))),
      index: fc.constantFrom(200, 500, 640, 1000, 1234, 6400, 20_000),
      camera: fc.constant('heron'),
      mode: fc.constantFrom('full', 'uhd', 'wide', 'half', 'hd', 'binned', 'strip'),
      lens: fc.constantFrom('wide-35', 'macro-65', 'macro-100', 'probe-24'),
    },
    { requiredKeys: [] },
  );

  test('is in its settings, whatever else is fixed', () => {
    fc.assert(
      fc.property(fixings, fc.constantFrom(...DEMO_SHOTS), (fixed, id) => {
        const written = changed(DEMO, Object.fromEntries(Object.entries(fixed).map(([key, value]) => [`/shots/${id}/${key}`, value]))); // prettier-ignore
        const shoot = readSound(written);
        const { rate, shutter, stop, isoSpeed, camera, mode, lens } = shoot.shots[id]!;
        const { settings, reasons } = planShot(shoot, id, 1);
        const expected = {
          ...(rate && { captureRate_fps: rate.num / rate.den }),
          ...(stop && { stop }),
          ...(isoSpeed && { isoSpeed }),
          ...(camera && { camera }),
          ...(mode && { mode }),
          ...(lens && { lens }),
        };
        expect(settings).toMatchObject(expected);
        if (shutter && 'exposureTime_s' in shutter) expect(settings!.exposureTime_s).toBe(shutter.exposureTime_s);
        if (shutter && 'shutterAngle_deg' in shutter) expect(settings!.shutterAngle_deg).toBeCloseTo(shutter.shutterAngle_deg, 9); // prettier-ignore
        for (const [name, reason] of Object.entries(reasons))
          expect([name, reason.isFixed]).toEqual([name, name in expected || (name === 'exposureTime_s' && shutter !== undefined)]); // prettier-ignore
      }),
      { numRuns: 60 },
    );
  });

  test('is respected beyond what the kit can do, and its limit then is short', () => {
    const plan = planned(changed(SMALL, { '/shots/one/rate': 8000 }));
    expect(plan.settings!.captureRate_fps).toBe(8000);
    expect(marginOf(plan, 'frame-rate')).toMatchObject({ state: 'short', have: 8000, need: 5000 });
  });
});

/** Every key of the document that a trace comes down to. */
const pathsIn = ({ origin, inputs }: Trace): readonly string[] =>
  inputs.length > 0 ? inputs.flatMap(pathsIn) : origin.by === 'document' ? [origin.path] : [];

/** Shots that between them rest on every key that is planned with. */
const KEYED: readonly (readonly [title: string, written: Written])[] = [
  ['solved', SMALL],
  ['by a speed', changed(SMALL, { '/shots/one/speed/constant': '1/30' })],
  ['by a profile', changed(SMALL, { '/shots/one/speed/knots': [{ at: '0 s', speed: 1 }, { at: '9 s', speed: '1/20' }] })],
  ['seen through', changed(SMALL, { '/shots/one/seen': 'lit-through', '/lighting/key/luminance': '9 kcd/m²' })],
  ['fixed', changed(SMALL, { '/shots/one/rate': 900, '/shots/one/shutter': '1/4000 s', '/shots/one/stop': 'T8', '/shots/one/index': 800 })],
  ['fixed by angle', changed(SMALL, { '/shots/one/shutter': '90°' })],
]; // prettier-ignore

const OF_A_LIST = /\/(?:attachments|deliverables|knots)$/;

describe('a value that cannot be read', () => {
  const cases = KEYED.flatMap(([title, written]) => {
    const shoot = readSound(written);
    const plan = planShot(shoot, 'one', 1);
    const byPath = new Map<string, Set<string>>();
    for (const { id, haveName, needName } of plan.margins)
      for (const name of [haveName, needName])
        for (const path of pathsIn(explain(shoot, 'one', name)!)) byPath.set(path, (byPath.get(path) ?? new Set()).add(id));
    return [...byPath].map(([path, ids]) => ({ title, written, path, ids: [...ids] }));
  }); // prettier-ignore

  test('is met at every key that margins rest on', () => {
    expect(new Set(cases.map(({ path }) => path)).size).toBeGreaterThan(45);
  });

  test.each(cases)('$title: $path leaves $ids unknown, and is what they point to', ({ written, path, ids }) => {
    const { shoot, problems } = readShoot(changed(written, { [path]: OF_A_LIST.test(path) ? ['nothing?'] : '?!' }));
    expect(problems.map((problem) => problem.path).join()).toContain(path);
    const plan = planShot(shoot, 'one', 1);
    for (const id of ids) {
      const margin = marginOf(plan, id as ShotPlan['margins'][number]['id']);
      expect([id, margin.state]).toEqual([id, 'unknown']);
      expect(margin.missing.map((missing) => [missing.path, missing.because])).toContainEqual([path, 'unread']);
    }
  });

  test.each([
    ['seen', 'lit-thru', ['light', 'noise', 'highlights']],
    ['deliverables', ['nope'], ['picture-size', 'frame-rate', 'in-the-picture', 'depth']],
    ['attachments', ['glass', 'nope'], ['light']],
  ] as const)('%s of the shot leaves what it decides unknown', (key, value, ids) => {
    const plan = planShot(readShoot(changed(SMALL, { [`/shots/one/${key}`]: value })).shoot, 'one', 1);
    for (const id of ids) {
      const margin = marginOf(plan, id);
      expect([id, margin.state]).toEqual([id, 'unknown']);
      expect(margin.missing.map((missing) => [missing.path, missing.because])).toContainEqual([`/shots/one/${key}`, 'unread']);
    }
  }); // prettier-ignore

  test.each(['camera', 'mode', 'lens'])('as the %s of the shot leaves it without settings, and is what it waits for', (key) => {
    const fixed = { '/shots/one/camera': 'body', '/shots/one/mode': 'whole', '/shots/one/lens': 'macro' };
    const plan = planShot(readShoot(changed(SMALL, { ...fixed, [`/shots/one/${key}`]: 'nothing' })).shoot, 'one', 1);
    expect(plan).not.toHaveProperty('settings');
    expect(plan.missing).toEqual([expect.objectContaining({ path: `/shots/one/${key}`, because: 'unread' })]);
    expect(marginOf(plan, 'picture-size').missing).toEqual(plan.missing);
    expect(plan.alternatives).toEqual([]);
  }); // prettier-ignore

  test('as a stop of the lens leaves the stop unknown rather than one the lens may not have', () => {
    const plan = planShot(readShoot(changed(SMALL, { '/kit/lenses/macro/widest': 'wide' })).shoot, 'one', 1);
    expect(plan).not.toHaveProperty('settings');
    expect(plan.missing).toContainEqual(
      expect.objectContaining({ path: '/kit/lenses/macro/widest', because: 'unread' }),
    );
    const fixed = changed(SMALL, { '/kit/lenses/macro/widest': 'wide', '/shots/one/stop': 'T8' });
    expect(planShot(readShoot(fixed).shoot, 'one', 1).settings!.stop).toBe(8);
  });

  test('of one lens does not keep a shot from another', () => {
    const lenses = (DEMO['kit'] as { lenses: Record<string, Written> }).lenses;
    const { shoot } = readShoot(changed(DEMO, { '/kit/lenses/macro-65/focalLength': '?', '/kit/lenses/macro-65/widest': '?' })); // prettier-ignore
    expect(Object.keys(lenses)).toContain('macro-65');
    for (const id of DEMO_SHOTS) expect(planShot(shoot, id, 1).settings!.lens).not.toBe('macro-65');
  });

  test('of what nobody asked for takes nothing away', () => {
    const written = changed(SMALL, { '/shots/one/blur': undefined, '/shots/one/action/speed': '?' });
    const plan = planShot(readShoot(written).shoot, 'one', 1);
    expect(plan.settings).toEqual(planned(changed(SMALL, { '/shots/one/blur': undefined })).settings);
  });
});

describe('a shot without kit', () => {
  test.each([
    ['no camera', { '/kit/cameras': undefined }, ['/kit/cameras']],
    ['a camera only for hire', { '/kit/cameras/body/availability': 'hire' }, ['/kit/cameras']],
    ['a camera without modes', { '/kit/cameras/body/modes': undefined }, ['/kit/cameras/body/modes']],
    ['no lens', { '/kit/lenses': undefined }, ['/kit/lenses']],
    ['a lens nobody wants', { '/kit/lenses/macro/availability': 'unwanted' }, ['/kit/lenses']],
    ['neither', { '/kit/cameras': undefined, '/kit/lenses': undefined }, ['/kit/cameras', '/kit/lenses']],
    ['a mode no camera has', { '/shots/one/mode': 'half' }, ['/shots/one/mode']],
  ] as const)('%s: says what it waits for, once for each limit', (_title, changes, paths) => {
    const { shoot } = readShoot(changed(SMALL, changes));
    const plan = planShot(shoot, 'one', 1);
    expect(plan).not.toHaveProperty('settings');
    expect(plan.triedCount).toBe(0);
    expect(plan.missing.map(({ path }) => path)).toEqual(paths);
    expect(marginOf(plan, 'depth').missing.map(({ path }) => path)).toEqual(paths);
    expect(marginOf(plan, 'light').missing.map(({ path }) => path)).toEqual(paths);
  });

  test('still has its two clocks, and says what else is missing', () => {
    const plan = planned(changed(SMALL, { '/kit/lenses': undefined, '/shots/one/frameWidth': undefined }));
    expect(plan.clocks).toMatchObject({ actionTime_s: 0.2, screenTime_s: 8 });
    expect(marginOf(plan, 'depth').missing.map(({ path }) => path)).toEqual(['/shots/one/frameWidth', '/kit/lenses']);
  });
});

describe('a shot without deliverables', () => {
  test('misses them by their section', () => {
    const plan = planned(changed(SMALL, { '/deliverables': undefined }));
    expect(plan).not.toHaveProperty('clocks');
    expect(new Set(plan.missing.map(({ path }) => path))).toEqual(new Set(['/deliverables']));
  });
});

describe('a reason', () => {
  const why = (changes: Readonly<Record<string, Written | undefined>>, name: 'exposureTime_s' | 'stop' | 'isoSpeed') => planned(changed(SMALL, changes)).reasons[name]!.says; // prettier-ignore

  test.each([
    ['blur', {}, 'the longest the blur allows'],
    ['angle', { '/shots/one/action/speed': '1 mm/s' }, 'half of each frame'],
    ['angle, nobody asking for blur', { '/shots/one/blur': undefined }, 'half of each frame'],
    [
      'dead time',
      { '/shots/one/blur': undefined, '/kit/cameras/body/deadTime': '0.8 ms' },
      'as long as the frame allows',
    ],
    ['the shortest exposure', { '/kit/cameras/body/shortestExposure': '0.4 ms' }, 'the shortest the camera makes'],
    ['the person', { '/shots/one/shutter': '1/4000 s' }, 'fixed'],
  ])('for a shutter that %s decides says so', (_title, changes, says) => {
    expect(why(changes, 'exposureTime_s')).toBe(says);
  });

  test.each([
    ['depth decides', { '/shots/one/depth': '30 mm' }, 'the widest that holds the depth'],
    ['no depth is asked', { '/shots/one/depth': undefined }, 'the one that lacks least'],
    ['depth would hold at a wider one', { '/shots/one/depth': '1 mm' }, 'the one that lacks least'],
    ['no stop of the lens holds the depth', { '/shots/one/depth': '900 mm' }, 'the one that lacks least'],
  ])('for a stop where %s does not claim otherwise', (_title, changes, says) => {
    expect(why(changes, 'stop')).toBe(says);
  });

  test.each([
    ['light allows it', { '/shots/one/stop': 'T5.6' }, 'the lowest the light allows'],
    ['no light is read', { '/shots/one/lighting': undefined }, 'the base index, while no light is read'],
    ['light asks for more than is quiet', { '/shots/one/stop': 'T16', '/shots/one/signalToNoise': '34 dB' }, 'the highest that is quiet enough'],
    ['light asks for more than there is', { '/shots/one/stop': 'T32', '/shots/one/signalToNoise': undefined }, 'the highest of the camera'],
    ['highlights ask for more than light', { '/shots/one/stop': 'T2.8', '/shots/one/highlights': '4 stops' }, 'the lowest with room for highlights'],
    ['light asks for less than there is', { '/shots/one/stop': 'T2.8', '/shots/one/highlights': undefined, '/kit/cameras/body/lowestIndex': 1000 }, 'the lowest of the camera'],
  ])('for an index where %s says so', (_title, changes, says) => {
    expect(why(changes, 'isoSpeed')).toBe(says);
  }); // prettier-ignore
});

describe('alternatives', () => {
  test('become the answer once their patch is made, with the very margins they showed', () => {
    const shoot = readSound(DEMO);
    for (const id of DEMO_SHOTS)
      for (const { settings, margins, patch } of planShot(shoot, id, 1).alternatives) {
        const then = planShot(readSound(applyPatch(DEMO, patch)), id, 1);
        // Thirds of a stop differ from themselves by a last digit once they have been written down.
        expect(then.settings!.stop).toBeCloseTo(settings.stop, 12);
        expect({ ...then.settings!, stop: settings.stop }).toEqual(settings);
        for (const { id: limit, stops } of margins) expect(stopsAt(then, limit)).toBeCloseTo(stops!.value, 9);
      }
  });

  test('say how they differ, no two the same', () => {
    const shoot = readSound(DEMO);
    for (const id of DEMO_SHOTS) {
      const said = planShot(shoot, id, 1).alternatives.map(({ differs }) => differs);
      expect(said.length).toBeGreaterThan(0);
      expect(new Set(said).size).toBe(said.length);
    }
  });
});

describe('the two clocks', () => {
  const shoot = readSound(DEMO);

  test.each(DEMO_SHOTS)('of %s begin together and never run backwards', (id) => {
    const { samples, actionTime_s, screenTime_s, slowestFraction, fastestFraction } = planShot(shoot, id, 1).clocks!;
    expect(samples[0]).toEqual({ screenTime_s: 0, realTime_s: 0 });
    expect(samples.at(-1)!.screenTime_s).toBeCloseTo(screenTime_s, 9);
    expect(samples.at(-1)!.realTime_s).toBeCloseTo(actionTime_s, 9);
    samples.slice(1).forEach((sample, i) => {
      const before = samples[i]!;
      const fraction = (sample.realTime_s - before.realTime_s) / (sample.screenTime_s - before.screenTime_s);
      expect(fraction).toBeGreaterThanOrEqual(slowestFraction * (1 - 1e-9));
      expect(fraction).toBeLessThanOrEqual(fastestFraction * (1 + 1e-9));
    });
  });

  // 48 · (5.4 / 48) is 5.400000000000001.
  test('of a profile end at its last knot, whatever the rounding', () => {
    const knots = [{ at: '0 s', speed: 1 }, { at: '5.4 s', speed: '1/20' }];
    const { clocks } = planned(changed(SMALL, { '/shots/one/speed/knots': knots }));
    expect(clocks!.samples.at(-1)!.realTime_s).toBeCloseTo(clocks!.actionTime_s, 12);
  }); // prettier-ignore

  // 0.2 s at 1000 fps are 200 frames, which last 8 s at 25; 60/1.001 a second makes them 3.336…
  test('run by the exact rate of the first deliverable', () => {
    const plan = planned(changed(SMALL, { '/deliverables/film/rate': '60000/1001', '/shots/one/rate': 1000 }));
    expect(plan.clocks!.screenTime_s).toBeCloseTo((200 * 1001) / 60_000, 12);
    expect(plan.clocks!.playRate).toEqual({ num: 60_000, den: 1001 });
  });
});

describe('more of one thing', () => {
  const fixedKit = (id: string, mode: string, lens: string) => changed(DEMO, { [`/shots/${id}/camera`]: 'heron', [`/shots/${id}/mode`]: mode, [`/shots/${id}/lens`]: lens }); // prettier-ignore
  const kits = fc.constantFrom(
    ...(['pour-1', 'crown', 'quinces', 'honey', 'ramp'] as const).flatMap(
      (id) =>
      (['full', 'uhd'] as const).flatMap((mode) => (['wide-35', 'macro-65', 'macro-100'] as const).map((lens) => ({ id, written: fixedKit(id, mode, lens) }))), // prettier-ignore
    ),
  );
  const factor = fc.double({ min: 1, max: 30, noNaN: true });

  test('light never makes the light margin smaller at fixed settings', () => {
    const fixed = changed(SMALL, {
      '/shots/one/stop': 'T8',
      '/shots/one/shutter': '1/4000 s',
      '/shots/one/index': 800,
    });
    fc.assert(
      fc.property(fc.double({ min: 100, max: 1e5, noNaN: true }), factor, (illuminance_lx, more) => {
        const at = (lx: number) => stopsAt(planned(changed(fixed, { '/lighting/key/illuminance': writeQuantity('illuminance', lx) })), 'light'); // prettier-ignore
        expect(at(illuminance_lx * more) - at(illuminance_lx)).toBeCloseTo(Math.log2(more), 9);
      }),
      { numRuns: 40 },
    );
  });

  test('light never raises the index, nor makes the picture noisier', () => {
    fc.assert(
      fc.property(kits, fc.double({ min: 3, max: 5, noNaN: true }), factor, ({ id, written }, magnitude, more) => {
        const at = (lx: number) => planned(changed(written, { [`/shots/${id}/seen`]: 'lit-on', [`/shots/${id}/lighting`]: 'top-key', '/lighting/top-key/illuminance': writeQuantity('illuminance', lx), [`/shots/${id}/stop`]: 'T5.6' }), id); // prettier-ignore
        const [less, brighter] = [at(10 ** magnitude), at(10 ** magnitude * more)];
        expect(brighter.settings!.isoSpeed).toBeLessThanOrEqual(less.settings!.isoSpeed);
        expect(stopsAt(brighter, 'noise')).toBeGreaterThanOrEqual(stopsAt(less, 'noise'));
      }),
      { numRuns: 40 },
    );
  });

  test('time on screen never lowers the rate', () => {
    fc.assert(
      fc.property(fc.constantFrom('pour-1', 'crown', 'honey'), fc.double({ min: 0.5, max: 8, noNaN: true }), factor, (id, time_s, more) => {
        const at = (s: number) => planned(changed(DEMO, { [`/shots/${id}/screenTime`]: writeQuantity('time', s) }), id).settings!.captureRate_fps; // prettier-ignore
        expect(at(time_s * more)).toBeGreaterThanOrEqual(at(time_s));
      }),
      { numRuns: 30 },
    ); // prettier-ignore
  });

  test('depth never opens the stop of a fixed kit', () => {
    fc.assert(
      fc.property(kits, fc.double({ min: 1e-3, max: 0.03, noNaN: true }), factor, ({ id, written }, depth_m, more) => {
        const at = (m: number) => planned(changed(written, { [`/shots/${id}/depth`]: writeQuantity('length', m) }), id).settings!.stop; // prettier-ignore
        expect(at(depth_m * more)).toBeGreaterThanOrEqual(at(depth_m) * (1 - 1e-9));
      }),
      { numRuns: 60 },
    );
  });

  test('blur allowed never shortens the exposure, and never lengthens it past the frame', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 20, noNaN: true }), factor, (blur_px, more) => {
        const at = (px: number) =>
          planned(changed(SMALL, { '/shots/one/blur': writeQuantity('pixels', px) })).settings!;
        expect(at(blur_px * more).exposureTime_s).toBeGreaterThanOrEqual(at(blur_px).exposureTime_s);
        expect(at(blur_px * more).exposureTime_s).toBeLessThanOrEqual(1 / 1000);
      }),
      { numRuns: 40 },
    );
  });

  test('glass before the lens costs exactly its stops of light', () => {
    const fixed = changed(SMALL, {
      '/shots/one/stop': 'T8',
      '/shots/one/shutter': '1/4000 s',
      '/shots/one/index': 800,
    });
    const bare = stopsAt(planned(changed(fixed, { '/shots/one/attachments': [] })), 'light');
    expect(stopsAt(planned(fixed), 'light')).toBeCloseTo(bare - 0.5, 9);
    expect(stopsAt(planned(changed(fixed, { '/shots/one/attachments': ['glass', 'nd-1'] })), 'light')).toBeCloseTo(bare - 1.5, 9); // prettier-ignore
  });

  test('a reading that stands above middle grey leaves that many stops less', () => {
    const fixed = changed(SMALL, {
      '/shots/one/stop': 'T8',
      '/shots/one/shutter': '1/4000 s',
      '/shots/one/index': 800,
    });
    const grey = stopsAt(planned(fixed), 'light');
    expect(stopsAt(planned(changed(fixed, { '/shots/one/readingStandsFor': '1.5 stops' })), 'light')).toBeCloseTo(grey - 1.5, 9); // prettier-ignore
  });
});

test('a lens that tells no stops is given usual ones, which the plan says it assumed', () => {
  const untold = changed(SMALL, { '/kit/lenses/macro/widest': undefined, '/kit/lenses/macro/narrowest': undefined });
  const { assumed, settings } = planned(untold);
  expect(assumed.map(({ name, path }) => [name, path])).toEqual(
    expect.arrayContaining([['widestStop', '/kit/lenses/macro/widest'], ['narrowestStop', '/kit/lenses/macro/narrowest']]),
  );
  expect(settings!.stop).toBeGreaterThanOrEqual(2 ** 1.5);
  const fixed = planned(changed(untold, { '/shots/one/stop': 'T4' }));
  const resting = fixed.margins.filter((margin) => margin.assumed.some(({ name }) => name === 'widestStop'));
  expect(resting.map(({ id }) => id)).toEqual(['stop-range']);
}); // prettier-ignore
