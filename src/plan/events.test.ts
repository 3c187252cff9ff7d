import { describe, expect, test } from 'vitest';
import { changed, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { EVENTS, eventNamed } from '../laws/events/catalogue.ts';
import { parametersOf } from '../laws/events/event.ts';
import { CAUTION_WORDS } from './cautions.ts';
import { eventOf, eventProblems, parameterKey, parameterValue } from './events.ts';
import { explain } from './explain.ts';
import { planShoot } from './plan.ts';

/** The small shoot with an action that says only what happens. */
const withAction = (action: Written, more: Readonly<Record<string, Written | undefined>> = {}) =>
  changed(SMALL, { '/shots/one/action': action, ...more });

const leaf = (written: Written, name: string) => explain(readShoot(written).shoot, 'one', name)!;

describe('an event that an action names', () => {
  const fall = eventNamed('fall')!;

  test('gives the duration, the speed and the reach that nobody wrote, as assumed', () => {
    const written = withAction({ event: 'fall' });
    const figures = fall.compute();
    for (const [name, value] of [
      ['actionTime_s', figures.duration_s],
      ['speed_m_per_s', figures.speed_m_per_s],
      ['reachHeight_m', figures.reachHeight_m],
    ] as const) {
      expect(value, name).toBeDefined();
      expect(leaf(written, name)).toMatchObject({
        value,
        origin: { by: 'assumption', why: expect.stringContaining(fall.title) as string },
      });
    }
    expect(planned(written).assumed.map(({ name }) => name)).toContain('speed_m_per_s');
  });

  test('gives way to what the person measured, figure by figure', () => {
    const written = withAction({ event: 'fall', speed: '1.25 m/s ± 0.05 m/s' });
    expect(leaf(written, 'speed_m_per_s')).toMatchObject({ value: 1.25, origin: { by: 'document', spread: 0.05 } });
    expect(leaf(written, 'actionTime_s')).toMatchObject({ value: fall.compute().duration_s });
  });

  test('is as wide as it is usually met until somebody gives its figures, then a fifth either way', () => {
    const usual = leaf(withAction({ event: 'fall' }), 'speed_m_per_s').origin;
    const { low, high } = fall.typical.speed_m_per_s;
    expect(usual).toMatchObject({ spread: (high - low) / 2 });
    const set = leaf(withAction({ event: 'fall', parameters: { fallHeight: '0.8 m' } }), 'speed_m_per_s');
    const speed = fall.compute({ fallHeight_m: 0.8 }).speed_m_per_s;
    expect(set).toMatchObject({ value: speed, origin: { spread: expect.closeTo(speed / 5, 9) as number } });
  });

  test('sets the frame rate by its duration where no playback speed is written', () => {
    const plan = planned(withAction({ event: 'fall', parameters: { fallHeight: '0.5 m' } }));
    const { duration_s } = fall.compute({ fallHeight_m: 0.5 });
    // 8 s on screen at 25 frames a second, of an action this long.
    expect(plan.settings!.captureRate_fps).toBe(Math.ceil((8 * 25) / duration_s));
  });

  test('brings its cautions and its remark', () => {
    const glass = planned(withAction({ event: 'glass-shards' }));
    expect(glass.cautions.map(({ key }) => key)).toEqual(expect.arrayContaining(['glass']));
    const pour = planned(withAction({ event: 'pour' }));
    expect(pour.notes).toContain(eventNamed('pour')!.compute().remark);
  });

  test('may come from the defaults, with the figures written there; another event of the shot leaves those behind', () => {
    const defaults = { event: 'fall', parameters: { fallHeight: '0.9 m' } };
    const inherited = withAction({}, { '/defaults/action': defaults });
    expect(leaf(inherited, 'speed_m_per_s').value).toBe(fall.compute({ fallHeight_m: 0.9 }).speed_m_per_s);
    const other = withAction({ event: 'pour' }, { '/defaults/action': defaults });
    expect(leaf(other, 'speed_m_per_s').value).toBe(eventNamed('pour')!.compute().speed_m_per_s);
  });

  test('can be worked out for a shot, each of the library as it stands', () => {
    for (const { id } of EVENTS) {
      const plan = planned(withAction({ event: id }, { '/shots/one/screenTime': '0.2 s' }));
      expect(plan.settings, id).toBeDefined();
      expect(marginOf(plan, 'blur').state, id).not.toBe('unknown');
    }
  });

  test('has words for every caution it calls for', () => {
    for (const { id, cautions } of EVENTS) for (const key of cautions) expect(CAUTION_WORDS[key], `${id} ${key}`).toBeDefined();
  }); // prettier-ignore
});

describe('an event that cannot be worked out', () => {
  const cases: readonly (readonly [title: string, action: Written, at: string, code: string, near: string | undefined])[] = [
    ['an unknown event', { event: 'pouring' }, 'event', 'choice.unknown', 'pour'],
    ['an unknown figure', { event: 'fall', parameters: { fallHigth: '1 m' } }, 'parameters/fallHigth', 'key.unknown', 'fallHeight'],
    ['a figure without its unit', { event: 'fall', parameters: { fallHeight: 1 } }, 'parameters/fallHeight', 'quantity.unreadable', undefined],
    ['a figure that its law refuses', { event: 'fall', parameters: { fallHeight: '-1 m' } }, 'parameters', 'value.refused', undefined],
  ]; // prettier-ignore

  test.each(cases)('%s is a problem at its key', (_title, action, at, code, near) => {
    const [problem] = eventProblems(readShoot(withAction(action)).shoot);
    expect(problem).toMatchObject({ path: `/shots/one/action/${at}`, code, ...(near === undefined ? {} : { near }) });
  });

  test.each(cases)('%s leaves the margins that needed it unknown, and they point to it', (_title, action, at) => {
    const plan = planned(withAction(action));
    const blur = marginOf(plan, 'blur');
    expect(blur.state).toBe('unknown');
    expect(blur.missing).toContainEqual(
      expect.objectContaining({ path: `/shots/one/action/${at}`, because: 'unread' }),
    );
  });

  test('spoils nothing that the person wrote', () => {
    const plan = planned(withAction({ event: 'pouring', duration: '0.2 s', speed: '1 m/s' }));
    expect(marginOf(plan, 'blur').state).not.toBe('unknown');
  });

  test('no shoot without a bad event has such a problem', () => {
    expect(eventProblems(readSound(SMALL))).toEqual([]);
    expect(eventProblems(readSound(withAction({ event: 'cork' })))).toEqual([]);
  });
});

describe('figures of events as they are written', () => {
  test('stand under names without a unit, each its own', () => {
    expect(parameterKey('fallHeight_m')).toBe('fallHeight');
    expect(parameterKey('muzzle_m_per_s')).toBe('muzzle');
    expect(parameterKey('turnCount')).toBe('turnCount');
    for (const event of EVENTS) {
      const keys = parametersOf(event).map(({ name }) => parameterKey(name));
      expect(new Set(keys).size, event.id).toBe(keys.length);
      for (const key of keys) expect(key, event.id).toMatch(/^[a-zA-Z][a-zA-Z0-9-]*$/);
    }
  });

  test.each([
    ['time', 'quantity', '12 ms', 0.012],
    [undefined, 'count', '12', 12],
    [undefined, 'ratio', '1/2', 0.5],
    [undefined, 'fraction', '50 %', 0.5],
    [undefined, 'ratio', '-0.25', -0.25],
  ] as const)('of kind %s, a %s is read from "%s"', (kind, as, text, value) => {
    expect(parameterValue({ kind, as }, text)).toEqual({ value });
  });

  test.each([
    ['count', '1.5'],
    ['ratio', 'a few'],
    ['ratio', ''],
    ['ratio', 'NaN'],
  ])('a %s is not read from "%s"', (as, text) => {
    expect(parameterValue({ kind: undefined, as } as never, text)).toHaveProperty('why');
  });
});

test('an action without an event has none', () => {
  expect(eventOf(readSound(SMALL).shots['one']!.action)).toBeUndefined();
  expect(planShoot(readSound(SMALL)).shots[0]!.notes).toEqual([]);
});
