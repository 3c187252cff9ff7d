import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, DEMO, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import { fieldAt } from '../document/fieldAt.ts';
import type { Written } from '../document/written.ts';
import type { GivenEntry } from './givens.ts';
import { isAsked, limitsInModel, limitsOf, missingOf, stopsOf, worstPart, type LimitSpec } from './limits.ts';
import { modelBuilder } from './model.ts';
import { planShoot } from './plan.ts';
import { NO_TIMING } from './timing/structure.ts';
import { LIMITS, type LimitId } from './types.ts';

describe('stops, the common measure', () => {
  test.each([
    ['twice the light needed is one stop to spare', 'ratio', 'at-least', 80, 40, 1],
    ['a quarter of the light needed is two stops short', 'ratio', 'at-least', 10, 40, -2],
    ['half of a ceiling is one stop to spare', 'ratio', 'at-most', 500, 1000, 1],
    ['a rate of twice the highest is one stop short', 'ratio', 'at-most', 2000, 1000, -1],
    ['stops are differences already', 'stops', 'at-least', 3.5, 2, 1.5],
    ['six decibels and a hair are one stop of signal', 'decibels', 'at-least', 30 + 20 * Math.log10(2), 30, 1],
    ['half of the misses allowed is one stop to spare', 'chances', 'at-least', 0.95, 0.9, 1],
    ['twice the misses allowed is one stop short', 'chances', 'at-least', 0.6, 0.8, -1],
    ['never a miss is as much to spare as is ever said', 'chances', 'at-least', 1, 0.9, 30],
    ['a miss where none is allowed is as short as is ever said', 'chances', 'at-least', 0.99, 1, -30],
    ['as many misses as are allowed are just enough', 'chances', 'at-least', 1, 1, 0],
    ['nothing needed is as much to spare as is ever said', 'ratio', 'at-least', 5, 0, 30],
    ['nothing there is as short as is ever said', 'ratio', 'at-least', 0, 5, -30],
    ['nothing of a ceiling is as much to spare as is ever said', 'ratio', 'at-most', 0, 5, 30],
    ['more to spare than can be said is said as that', 'ratio', 'at-least', 1e300, 1e-300, 30],
  ] as const)('%s', (_title, measure, sense, have, need, stops) => {
    expect(stopsOf(measure, sense, have, need)).toBeCloseTo(stops, 12);
  });

  test('an unknown figure leaves them unknown', () => {
    for (const measure of ['ratio', 'stops', 'decibels', 'chances'] as const)
      for (const [have, need] of [[NaN, 1], [1, NaN], [NaN, 0]] as const)
        expect(stopsOf(measure, 'at-least', have, need)).toBeNaN();
  }); // prettier-ignore

  test('what is to spare one way is short the other', () => {
    const amount = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        expect(stopsOf('ratio', 'at-least', a, b)).toBeCloseTo(-stopsOf('ratio', 'at-least', b, a), 9);
        expect(stopsOf('ratio', 'at-most', a, b)).toBeCloseTo(stopsOf('ratio', 'at-least', b, a), 9);
      }),
    );
  });
});

describe('a margin', () => {
  const at = (changes: Readonly<Record<string, Written>>, id: LimitId) =>
    marginOf(planned(changed(SMALL, changes)), id);

  test('is to spare where even the low end of its band suffices', () => {
    expect(at({ '/shots/one/index': 3200 }, 'light')).toMatchObject({ state: 'spare', sense: 'at-least' });
  });

  // 36 klx exposes T4, 1/3200 s and EI 640 behind half a stop of glass at this distance, a tenth of a stop under 40 klx.
  test('is tight where the figure suffices and the low end of its band does not', () => {
    const settings = { '/shots/one/index': 640, '/shots/one/stop': 'T4', '/shots/one/shutter': '1/3200 s' };
    const { state, stops } = at({ ...settings, '/lighting/key/illuminance': '36 klx ± 30 %' }, 'light');
    expect(state).toBe('tight');
    expect(stops!.value).toBeGreaterThan(0);
    expect(stops!.low).toBeLessThan(0);
  });

  test('is short where the figure does not suffice, however wide its band', () => {
    const { state, stops } = at({ '/shots/one/index': 640, '/shots/one/stop': 'T4', '/lighting/key/illuminance': '33 klx ± 60 %' }, 'light'); // prettier-ignore
    expect(state).toBe('short');
    expect(stops!.value).toBeLessThan(0);
    expect(stops!.high).toBeGreaterThan(0);
  });

  test('says what is left over in its own unit: of light by difference, of a ceiling the other way round', () => {
    const light = at({}, 'light');
    expect(light.spare).toBe(light.have! - light.need!);
    const rate = at({}, 'frame-rate');
    expect(rate).toMatchObject({ have: 1000, need: 5000, spare: 4000, sense: 'at-most' });
  });

  test('of exactly what is needed is not short', () => {
    expect(at({}, 'picture-size')).toMatchObject({ state: 'spare', have: 1920, need: 1920 });
  });

  test('lists what nobody wrote and it rests on', () => {
    const plan = planned(changed(SMALL, { '/kit/lenses/macro/pupilMagnification': undefined }));
    const [assumed] = marginOf(plan, 'light').assumed.filter(({ name }) => name === 'pupilMagnificationRatio');
    expect(assumed).toMatchObject({
      value: 1,
      path: '/kit/lenses/macro/pupilMagnification',
      why: 'a symmetrical lens',
    });
    expect(plan.assumed).toContainEqual(assumed);
  });

  test('names every figure by a name that the model of its shot knows, and leads to a key of the form', () => {
    for (const plan of planShoot(readSound(DEMO)).shots)
      for (const margin of plan.margins)
        expect([margin.id, fieldAt(margin.path)]).toEqual([margin.id, expect.anything()]);
  });
});

describe('an unknown margin', () => {
  test.each([
    ['light', '/shots/one/lighting', 'illuminance_lx', '/shots/one/lighting'],
    ['light', '/lighting/key/illuminance', 'illuminance_lx', '/lighting/key/illuminance'],
    ['light', '/shots/one/frameWidth', 'frameWidth_m', '/shots/one/frameWidth'],
    ['light', '/kit/attachments/glass/loss', 'filterLoss_stops', '/kit/attachments/glass/loss'],
    ['blur', '/shots/one/action/speed', 'speed_m_per_s', '/shots/one/action/speed'],
    ['frame-rate', '/shots/one/screenTime', 'screenTimeWanted_s', '/shots/one/screenTime'],
    ['frame-rate', '/shots/one/action/duration', 'actionTime_s', '/shots/one/action/duration'],
    ['frame-rate', '/deliverables/film/rate', 'playRate_fps', '/deliverables/film/rate'],
    ['frame-rate', '/kit/cameras/body/modes/whole/rate', 'maxRate_fps', '/kit/cameras/body/modes/whole/rate'],
    ['picture-size', '/deliverables/film/pixels', 'aspect0Ratio', '/deliverables/film/pixels'],
    ['picture-size', '/kit/cameras/body/modes/whole/pixels', 'widthCount', '/kit/cameras/body/modes/whole/pixels'],
    ['depth', '/kit/lenses/macro/focalLength', 'focalLength_mm', '/kit/lenses/macro/focalLength'],
    ['depth', '/kit/cameras/body/pitch', 'pixelPitch_m', '/kit/cameras/body/pitch'],
    ['highlights', '/kit/cameras/body/headroom', 'headroomAtBase_stops', '/kit/cameras/body/headroom'],
    ['noise', '/kit/cameras/body/readNoise', 'readNoise_e', '/kit/cameras/body/readNoise'],
    ['buffer', '/kit/cameras/body/memory', 'memory_B', '/kit/cameras/body/memory'],
    ['hero-life', '/shots/one/hero/lightOn', 'lightOn_s', '/shots/one/hero/lightOn'],
  ] as const)('of %s without %s names %s and where to write it', (id, leftOut, name, path) => {
    const margin = marginOf(planned(changed(SMALL, { [leftOut]: undefined })), id);
    expect(margin.state).toBe('unknown');
    expect(margin).not.toHaveProperty('stops');
    expect(margin).not.toHaveProperty('spare');
    expect(margin.missing).toContainEqual(expect.objectContaining({ name, path, because: 'absent' }));
    expect(fieldAt(path)).toBeDefined();
  });

  test('where a law has no answer says what it refused, and which key to look at', () => {
    // At 1000 fps a dead time of 1.5 ms leaves the shutter no time to open.
    const light = marginOf(planned(changed(SMALL, { '/kit/cameras/body/deadTime': '1.5 ms' })), 'light');
    expect(light.state).toBe('unknown');
    const [refused, ...others] = light.missing;
    expect(refused).toMatchObject({ name: 'longestExposure_s', because: 'refused', what: expect.stringContaining('deadTime_s') as string }); // prettier-ignore
    expect(fieldAt(refused!.path)).toBeDefined();
    expect(others).toEqual([]);
  });

  test('names each missing input once', () => {
    const margin = marginOf(planned(changed(SMALL, { '/shots/one/frameWidth': undefined })), 'in-the-picture');
    expect(margin.missing.map(({ name }) => name)).toEqual(['frameWidth_m']);
  });
});

describe('what nobody asked for is not judged', () => {
  test.each<[LimitId, readonly string[]]>([
    ['highlights', ['/shots/one/highlights']],
    ['noise', ['/shots/one/signalToNoise']],
    ['depth', ['/shots/one/depth']],
    ['blur', ['/shots/one/blur']],
    ['in-the-picture', ['/shots/one/action/width', '/shots/one/action/height']],
    ['coverage', ['/kit/lenses/macro/imageCircle']],
    ['focus', ['/kit/lenses/macro/closeFocus']],
    ['clearance', ['/shots/one/clearance', '/shots/one/action/towardsLens']],
    ['hero-life', ['/shots/one/hero']],
  ])('%s', (id, leftOut) => {
    const without = changed(SMALL, Object.fromEntries(leftOut.map((path) => [path, undefined])));
    expect(planned(SMALL).margins.map((margin) => margin.id)).toContain(id);
    expect(planned(without).margins.map((margin) => margin.id)).not.toContain(id);
  });

  test.each<[LimitId, string]>([
    ['in-the-picture', '/shots/one/action/width'],
    ['in-the-picture', '/shots/one/action/height'],
    ['clearance', '/shots/one/clearance'],
    ['clearance', '/shots/one/action/towardsLens'],
  ])('%s is judged by what is left without %s', (id, leftOut) => {
    expect(marginOf(planned(changed(SMALL, { [leftOut]: undefined })), id).state).toBe('spare');
  });

  test('time on screen is judged where rate or speed are fixed and a length is wanted', () => {
    const ids = (changes: Readonly<Record<string, Written | undefined>>) => planned(changed(SMALL, changes)).margins.map(({ id }) => id);
    expect(ids({})).not.toContain('screen-time');
    expect(ids({ '/shots/one/rate': 500 })).toContain('screen-time');
    expect(ids({ '/shots/one/rate': 500, '/shots/one/screenTime': undefined })).not.toContain('screen-time');
    expect(ids({ '/shots/one/speed/constant': '1/20' })).toContain('screen-time');
    expect(ids({ '/shots/one/speed/constant': '1/20', '/shots/one/action/duration': undefined })).not.toContain('screen-time');
  }); // prettier-ignore

  test('time on screen of a speed profile is the time between its first knot and its last', () => {
    const knots = [{ at: '1 s', speed: 1 }, { at: '6.5 s', speed: '1/20' }];
    const margin = marginOf(planned(changed(SMALL, { '/shots/one/speed/knots': knots })), 'screen-time');
    expect(margin).toMatchObject({ state: 'short', have: 5.5, need: 8 });
  }); // prettier-ignore

  test('a shutter is judged against the frame only where it is fixed', () => {
    expect(planned(SMALL).margins.map(({ id }) => id)).not.toContain('shutter');
    const plan = planned(changed(SMALL, { '/shots/one/shutter': '1/900 s' }));
    expect(marginOf(plan, 'shutter')).toMatchObject({ state: 'short', isHard: true, sense: 'at-most' });
  });

  test('all limits stand in one order, each once', () => {
    for (const plan of planShoot(readSound(DEMO)).shots) {
      const places = plan.margins.map(({ id }) => LIMITS.indexOf(id));
      expect(places).toEqual([...new Set(places)].sort((a, b) => a - b));
    }
  });
});

describe('a limit of several parts', () => {
  const wide = (pixels: string): Written => ({ title: `Cut to ${pixels}`, rate: 25, pixels });

  test('is judged by the worst of them, which it names', () => {
    const two = changed(SMALL, { '/deliverables/big': wide('3840 x 2160') });
    expect(marginOf(planned(two), 'picture-size')).toMatchObject({ state: 'short', detail: 'Cut to 3840 x 2160', have: 1920, need: 3840 }); // prettier-ignore
    const tall = changed(SMALL, { '/deliverables/tall': wide('500 x 1000'), '/shots/one/action/width': '100 mm' });
    expect(marginOf(planned(tall), 'in-the-picture')).toMatchObject({ detail: 'Cut to 500 x 1000, across', have: 0.1 });
  });

  test('with one part names none', () => {
    expect(marginOf(planned(SMALL), 'picture-size')).not.toHaveProperty('detail');
  });

  const parts = (...stops: readonly number[]): Parameters<typeof worstPart> => {
    const limit = limitsOf({ rateBy: 'duration', coverBy: 'duration', shutterBy: 'solved', indexBy: 'solved', readBy: 'illuminance', unsharpnessBy: 'diagonal', deliverableCount: 1, lifeBy: 'written', eyesBy: 'nothing', timing: NO_TIMING }, ['film']).find(({ id }) => id === 'picture-size')!; // prettier-ignore
    const values = Float64Array.from(stops.flatMap((of) => [2 ** of, 1]));
    return [{ spec: limit, parts: stops.map((_, i) => ({ have: 2 * i, need: 2 * i + 1, part: { have: 'have', need: 'need' } })) }, values]; // prettier-ignore
  };

  test('is unknown where one is unknown and the others suffice', () => {
    expect(worstPart(...parts(2, NaN, 0))).toEqual({ stops: NaN, at: 1 });
    expect(worstPart(...parts(NaN))).toEqual({ stops: NaN, at: 0 });
  });

  test('is short where one is short, whatever is unknown beside it', () => {
    expect(worstPart(...parts(2, NaN, -1))).toEqual({ stops: -1, at: 2 });
    expect(worstPart(...parts(-1, NaN, -2))).toEqual({ stops: -2, at: 2 });
  });

  test('a deliverable without pixels does not hide that another is short', () => {
    const written = changed(SMALL, { '/deliverables/big': wide('3840 x 2160'), '/deliverables/none': { rate: 25 } });
    expect(marginOf(planned(written), 'picture-size')).toMatchObject({ state: 'short', detail: 'Cut to 3840 x 2160' });
    const suffices = changed(SMALL, { '/deliverables/none': { rate: 25 } });
    expect(marginOf(planned(suffices), 'picture-size')).toMatchObject({ state: 'unknown', detail: 'none' });
  });
});

describe('inside', () => {
  const entry = (value: number, more: Partial<GivenEntry> = {}): GivenEntry => ({ title: 'T', value, path: '/shots/one/depth', spread: 0, ...more }); // prettier-ignore
  const limit: LimitSpec = { id: 'depth', title: 'Depth', isHard: false, gives: 'second', sense: 'at-least', kind: 'length', measure: 'ratio', parts: [{ have: 'have_m', need: 'need_m' }], askedBy: ['need_m'] }; // prettier-ignore

  test.each([
    ['written', entry(1), true],
    ['assumed', entry(1, { assumed: 'usual' }), true],
    ['written and unreadable', entry(NaN, { isUnread: true }), true],
    ['left out', entry(NaN), false],
  ])('a limit whose asking figure is %s counts as asked for: %#', (_title, of, expected) => {
    expect(isAsked(limit, new Map([['need_m', of]]))).toBe(expected);
  });

  test('a limit whose every part nobody asked for is left out of the model', () => {
    const m = modelBuilder();
    m.given('have_m', 'need_m');
    const partly: LimitSpec = { ...limit, parts: [{ have: 'have_m', need: 'need_m', askedBy: 'have_m' }] };
    expect(limitsInModel(m.build(), [partly], new Map([['need_m', entry(1)]]))).toEqual([]);
    expect(limitsInModel(m.build(), [partly], new Map([['need_m', entry(1)], ['have_m', entry(1)]]))).toHaveLength(1);
  }); // prettier-ignore

  test('an input missing through several steps is named once, and an input that may miss is not named', () => {
    const m = modelBuilder();
    m.choose('b_m', { title: 'B', says: 'so' }, { a: 'a_m' }, ({ a }) => a!);
    m.choose(
      'c_m',
      { title: 'C', says: 'so', optional: ['wish'] },
      { a: 'a_m', b: 'b_m', wish: 'wish_m' },
      ({ a }) => a!,
    );
    const model = m.build();
    const missing = missingOf(model, new Float64Array(model.names.length).fill(NaN), new Map([['a_m', entry(NaN)], ['wish_m', entry(NaN)]]), 'c_m'); // prettier-ignore
    expect(missing.map(({ name }) => name)).toEqual(['a_m']);
  });
});
