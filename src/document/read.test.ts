import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editDraws, fixtureText, patchOf, writtenBy, writtenValues } from '../../test/documents.ts';
import { applyPatch, writtenValueAt } from './patch.ts';
import { keysOf } from './pointer.ts';
import type { Problem } from './problem.ts';
import { readShoot } from './read.ts';
import { SHOOT, type Shoot } from './schema.ts';
import { readShootText } from './text.ts';
import { isRecord, type Written } from './written.ts';

const read = (parts: Readonly<Record<string, Written>>) => readShoot({ longsecond: 1, ...parts });
const codes = (problems: readonly Problem[]) => problems.map(({ code, path }) => `${code} ${path}`);
const fixture = readShootText(fixtureText()).written;

describe('a shoot without a problem', () => {
  test('is read into numbers in SI units, exact rates and ids', () => {
    const { shoot, problems } = readShoot(fixture);
    expect(problems).toEqual([]);
    expect(shoot.version).toBe(1);
    expect(shoot.shoot).toMatchObject({
      mains: { voltage_V: 230, frequency_Hz: 50, phaseCount: 3 },
      day: { callTime_s: 27_000, wrapTime_s: 90_900, meals: [45_000, 67_500] },
    });
    expect(shoot.deliverables['wide']?.rate).toEqual({ num: 24_000, den: 1001 });
    expect(shoot.shots['pour-1']).toMatchObject({
      depth_m: 0.008,
      shutter: { shutterAngle_deg: 172.8 },
      camera: 'tall',
      action: { speed_m_per_s: 1.5, speedSpread_m_per_s: 0.2 },
      speed: { knots: [{ screenTime_s: 0, speedFraction: 0.25 }, { screenTime_s: 1.5, speedFraction: 0.025 }, { screenTime_s: 3.5 }] },
    }); // prettier-ignore
  });

  test('a spread that is not written is not made up', () => {
    const { shoot } = readShoot(fixture);
    expect(shoot.shots['pour-1']?.hero).toHaveProperty('life_s', 90);
    expect(shoot.shots['pour-1']?.hero).not.toHaveProperty('lifeSpread_s');
  });

  test('maps, lists and records that are not written are read as empty ones', () => {
    const { shoot, problems } = read({ shots: { a: {}, b: null } });
    expect(problems).toEqual([]);
    expect(shoot.kit.cameras).toEqual({});
    expect(shoot.shots['a']).toEqual(shoot.shots['b']);
    expect(shoot.shots['a']).toMatchObject({ board: [], action: {}, speed: { knots: [] }, hero: {} });
    expect(shoot.shots['a']).not.toHaveProperty('unread');
  });

  test('a key with nothing after it is left out, not a problem', () => {
    const { shoot, problems } = read({ kit: null, shots: { a: { stop: null, action: null, rigs: null } } });
    expect(problems).toEqual([]);
    expect(shoot.shots['a']).not.toHaveProperty('stop');
  });
});

interface Case {
  readonly title: string;
  readonly parts: Readonly<Record<string, Written>>;
  readonly found: readonly string[];
  /** Where the unread keys are listed, and which. */
  readonly unread?: readonly [record: string, keys: readonly string[]];
}

const shot = (keys: Written): Readonly<Record<string, Written>> => ({ shots: { a: keys } });

describe('every kind of problem', () => {
  test.each<Case>([
    { title: 'a key the form does not have', parts: shot({ shuter: '1 s' }), found: ['key.unknown /shots/a/shuter'], unread: ['/shots/a', ['shuter']] },
    { title: 'a section the form does not have', parts: { lamps: {} }, found: ['key.unknown /lamps'], unread: ['', ['lamps']] },
    { title: 'a number without its unit', parts: shot({ depth: 8 }), found: ['unit.missing /shots/a/depth'], unread: ['/shots/a', ['depth']] },
    { title: 'text that is no quantity', parts: shot({ depth: 'deep' }), found: ['quantity.unreadable /shots/a/depth'], unread: ['/shots/a', ['depth']] },
    { title: 'an impossible value', parts: shot({ frameWidth: '0 mm' }), found: ['value.too-low /shots/a/frameWidth'], unread: ['/shots/a', ['frameWidth']] },
    { title: 'an absurd value', parts: shot({ frameWidth: '50 km' }), found: ['quantity.unreadable /shots/a/frameWidth'], unread: ['/shots/a', ['frameWidth']] },
    { title: 'an absurdly large value', parts: shot({ frameWidth: '50000 m' }), found: ['value.too-high /shots/a/frameWidth'], unread: ['/shots/a', ['frameWidth']] },
    { title: 'a word that is no choice', parts: shot({ seen: 'lit-trough' }), found: ['choice.unknown /shots/a/seen'], unread: ['/shots/a', ['seen']] },
    { title: 'a list for a record', parts: shot({ action: [] }), found: ['value.wrong-type /shots/a/action'], unread: ['/shots/a', ['action']] },
    { title: 'a word for a list', parts: shot({ rigs: 'arm' }), found: ['value.wrong-type /shots/a/rigs'], unread: ['/shots/a', ['rigs']] },
    { title: 'a word for a map', parts: { kit: { lenses: 'none' } }, found: ['value.wrong-type /kit/lenses'], unread: ['/kit', ['lenses']] },
    { title: 'a word for an entry', parts: { shots: { a: 'x' } }, found: ['value.wrong-type /shots/a'], unread: ['', ['shots']] },
    { title: 'an id with a space', parts: { shots: { 'pour 1': {} } }, found: ['id.malformed /shots/pour 1'], unread: ['', ['shots']] },
    { title: 'an id that objects answer to', parts: { shots: { constructor: {} } }, found: ['id.malformed /shots/constructor'], unread: ['', ['shots']] },
    { title: 'an id with a slash, its pointer escaped', parts: { shots: { 'a/b': {} } }, found: ['id.malformed /shots/a~1b'], unread: ['', ['shots']] },
    { title: 'an item that is no text', parts: shot({ elements: ['plate', 3] }), found: ['value.wrong-type /shots/a/elements/1'], unread: ['/shots/a', ['elements']] },
    { title: 'an item that says nothing', parts: shot({ elements: [null] }), found: ['value.wrong-type /shots/a/elements/0'], unread: ['/shots/a', ['elements']] },
    { title: 'a list too long', parts: shot({ rigs: Array<string>(51).fill('a') }), found: ['list.too-long /shots/a/rigs'], unread: ['/shots/a', ['rigs']] },
    { title: 'a time of day beyond the day', parts: { shoot: { day: { call: '36:00' } } }, found: ['clock.malformed /shoot/day/call'], unread: ['/shoot/day', ['call']] },
    { title: 'a reference to nothing', parts: shot({ camera: 'tal' }), found: ['reference.missing /shots/a/camera'], unread: ['/shots/a', ['camera']] },
    { title: 'a reference within a record', parts: shot({ hero: { product: 'jar' } }), found: ['reference.missing /shots/a/hero/product'], unread: ['/shots/a/hero', ['product']] },
    { title: 'a reference in a list', parts: shot({ rigs: ['arm'] }), found: ['reference.missing /shots/a/rigs/0'], unread: ['/shots/a', ['rigs']] },
    { title: 'a reference in the defaults', parts: { defaults: { lens: 'x' } }, found: ['reference.missing /defaults/lens'], unread: ['/defaults', ['lens']] },
    { title: 'a reference to what is written but not read', parts: { kit: { lenses: { m: 3 } }, ...shot({ lens: 'm' }) }, found: ['value.wrong-type /kit/lenses/m', 'reference.unread /shots/a/lens'], unread: ['/shots/a', ['lens']] },
    { title: 'a reference to an inherited name', parts: { board: { f: { picture: 'toString' } } }, found: ['id.malformed /board/f/picture'], unread: ['/board/f', ['picture']] },
    { title: 'an order that names nobody', parts: { ...shot({}), order: { shots: ['a', 'b'] } }, found: ['reference.missing /order/shots/1'], unread: ['/order', ['shots']] },
    { title: 'an order that names one twice', parts: { ...shot({}), order: { shots: ['a', 'a'] } }, found: ['order.twice /order/shots/1'], unread: ['/order', ['shots']] },
    { title: 'a shot after itself', parts: shot({ after: ['a'] }), found: ['after.circle /shots/a/after/0'], unread: ['/shots/a', ['after']] },
    { title: 'shots after one another in a circle', parts: { shots: { a: { after: ['b'] }, b: { after: ['c'] }, c: { after: ['a'] } } }, found: ['after.circle /shots/c/after/0'], unread: ['/shots/c', ['after']] },
    { title: 'a circle that the defaults close', parts: { defaults: { after: ['a'] }, shots: { a: { after: ['b'] }, b: {} } }, found: ['after.circle /defaults/after/0'], unread: ['/defaults', ['after']] },
    { title: 'a circle in a shot that then falls back on the defaults', parts: { defaults: { after: ['a'] }, shots: { a: { after: ['b'] }, b: { after: ['a'] } } }, found: ['after.circle /defaults/after/0', 'after.circle /shots/b/after/0'], unread: ['/shots/b', ['after']] },
    { title: 'a mode its camera lacks', parts: { kit: { cameras: { tall: { modes: { full: {} } } } }, ...shot({ camera: 'tall', mode: 'fall' }) }, found: ['reference.missing /shots/a/mode'], unread: ['/shots/a', ['mode']] },
    { title: 'a mode the default camera lacks', parts: { kit: { cameras: { tall: {} } }, defaults: { camera: 'tall' }, ...shot({ mode: 'full' }) }, found: ['reference.missing /shots/a/mode'], unread: ['/shots/a', ['mode']] },
    { title: 'a speed both constant and in knots', parts: shot({ speed: { constant: 1, knots: [{ at: '0 s', speed: 1 }] } }), found: ['speed.both /shots/a/speed/knots'], unread: ['/shots/a/speed', ['constant', 'knots']] },
    { title: 'knots out of order', parts: shot({ speed: { knots: [{ at: '1 s', speed: 1 }, { at: '1 s', speed: 2 }] } }), found: ['knots.not-ascending /shots/a/speed/knots/1/at'], unread: ['/shots/a/speed', ['knots']] },
    { title: 'a knot without a time', parts: shot({ speed: { knots: [{ speed: 1 }] } }), found: ['knots.incomplete /shots/a/speed/knots/0'], unread: ['/shots/a/speed', ['knots']] },
    { title: 'a knot whose time is no time', parts: shot({ speed: { knots: [{ at: 1, speed: 1 }] } }), found: ['unit.missing /shots/a/speed/knots/0/at'], unread: ['/shots/a/speed', ['knots']] },
    { title: 'a knot that is none', parts: shot({ speed: { knots: [7, { at: '1 s', speed: 1 }] } }), found: ['value.wrong-type /shots/a/speed/knots/0'], unread: ['/shots/a/speed', ['knots']] },
    { title: 'a spread that is none', parts: shot({ action: { duration: '1 s ± soon' } }), found: ['spread.malformed /shots/a/action/duration'], unread: ['/shots/a/action', ['duration']] },
    { title: 'a spread where none is taken', parts: shot({ depth: '8 mm ± 1 mm' }), found: ['spread.unexpected /shots/a/depth'], unread: ['/shots/a', ['depth']] },
    { title: 'stops the wrong way round', parts: { kit: { lenses: { m: { widest: 'T8', narrowest: 'T4' } } } }, found: ['range.reversed /kit/lenses/m/narrowest'], unread: ['/kit/lenses/m', ['widest', 'narrowest']] },
    { title: 'indexes the wrong way round', parts: { kit: { cameras: { t: { lowestIndex: 800, highestIndex: 400 } } } }, found: ['range.reversed /kit/cameras/t/highestIndex'], unread: ['/kit/cameras/t', ['lowestIndex', 'highestIndex']] },
    { title: 'a wrap before the call', parts: { shoot: { day: { call: '08:00', wrap: '01:00' } } }, found: ['range.reversed /shoot/day/wrap'], unread: ['/shoot/day', ['call', 'wrap']] },
    { title: 'a version that is none', parts: { longsecond: 'new' }, found: ['number.unreadable /longsecond'], unread: ['', ['longsecond']] },
    { title: 'no version', parts: { longsecond: null }, found: ['version.missing '] },
  ])('$title', ({ parts, found, unread }) => {
    const { shoot, problems } = read(parts);
    expect(codes(problems)).toEqual(found);
    for (const { what } of problems) expect(what).toMatch(/^Found .*expected|^Found .*(?:a length|a time|: the|: after ±|means nothing|takes no|cannot be read|needs a unit)/); // prettier-ignore
    if (!unread) return;
    const record = keysOf(unread[0])!.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], shoot);
    expect((record as { readonly unread?: readonly string[] }).unread).toEqual(unread[1]);
  }); // prettier-ignore

  test('what was meant is named where it is near', () => {
    const near = (parts: Readonly<Record<string, Written>>) => read(parts).problems[0]?.near;
    expect(near(shot({ shuter: '1 s' }))).toBe('shutter');
    expect(near(shot({ depth_m: 0.008 }))).toBe('depth');
    expect(near(shot({ seen: 'lit-trough' }))).toBe('lit-through');
    expect(near({ kit: { cameras: { tall: {} } }, ...shot({ camera: 'tal' }) })).toBe('tall');
    expect(near({ shots: { 'pour 1': {} } })).toBe('pour-1');
    expect(near({ ...shot({}), order: { shots: ['A'] } })).toBe('a');
    expect(near(shot({ somethingElse: 1 }))).toBeUndefined();
  });

  test('a value with a problem is left out; what stands beside it is read', () => {
    const { shoot } = read({
      kit: { rigs: { arm: {} } },
      ...shot({ depth: 8, stop: 'T8', rigs: ['arm', 'leg'], hero: { product: 'x', perTake: 2 } }),
    });
    expect(shoot.shots['a']).not.toHaveProperty('depth_m');
    expect(shoot.shots['a']).toMatchObject({ stop: 8, rigs: ['arm'], hero: { perTakeCount: 2 } });
    expect(shoot.shots['a']?.hero).not.toHaveProperty('product');
  });

  test('what is no map at all is one problem', () => {
    for (const written of [null, 3, 'x', [], true] as Written[]) {
      const { shoot, problems } = readShoot(written);
      expect(codes(problems)).toEqual(['value.wrong-type ']);
      expect(shoot.shots).toEqual({});
    }
  });

  test('a thousand slips in one place are listed without looking for what each was meant to be', () => {
    const keys = Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`shuter${i}`, 1]));
    const { problems } = read(shot(keys));
    expect(problems).toHaveLength(1000);
    expect(problems[0]?.near).toBe('shutter');
    expect(problems[999]?.near).toBeUndefined();
  });
});

describe('reading again', () => {
  const first = readShoot(fixture);

  test('the same written object gives the same reading', () => {
    expect(readShoot(fixture)).toBe(first);
  });

  test('after an edit only what lies around it is new', () => {
    const edited = applyPatch(fixture, [{ op: 'replace', path: '/shots/splash-1/shutter', value: '90°' }]);
    const { shoot } = readShoot(edited);
    expect(shoot.shots['splash-1']?.shutter).toEqual({ shutterAngle_deg: 90 });
    expect(shoot.shots['splash-1']?.speed).toBe(first.shoot.shots['splash-1']?.speed);
    expect(shoot.shots['pour-1']).toBe(first.shoot.shots['pour-1']);
    for (const key of ['kit', 'board', 'deliverables', 'lighting', 'defaults', 'shoot', 'files'] as const)
      expect(shoot[key], key).toBe(first.shoot[key]);
  });

  test('a reference that an edit elsewhere breaks is a problem, and its record is new once', () => {
    const broken = applyPatch(fixture, [{ op: 'remove', path: '/kit/products/jar' }]);
    const { shoot, problems } = readShoot(broken);
    expect(codes(problems)).toEqual(['reference.missing /shots/pour-1/hero/product']);
    expect(shoot.shots['pour-1']).not.toBe(first.shoot.shots['pour-1']);
    expect(shoot.shots['pour-1']?.speed).toBe(first.shoot.shots['pour-1']?.speed);
    const again = readShoot(applyPatch(broken, [{ op: 'replace', path: '/shoot/title', value: 'x' }]));
    expect(again.shoot.shots['pour-1']).toBe(shoot.shots['pour-1']);
  });

  test('a reference that an edit elsewhere mends is read again', () => {
    const broken = applyPatch(fixture, [{ op: 'remove', path: '/kit/products/jar' }]);
    const mended = applyPatch(broken, [{ op: 'add', path: '/kit/products/jar', value: {} }]);
    readShoot(broken);
    expect(readShoot(mended).shoot.shots['pour-1']).toBe(first.shoot.shots['pour-1']);
  });

  test('reading changes nothing that is written', () => {
    const before = JSON.stringify(fixture);
    readShoot(fixture);
    expect(JSON.stringify(fixture)).toBe(before);
  });
});

/** What a read shoot promises, whatever was written. */
function expectSound({ shots, kit, board, deliverables, lighting, order, defaults }: Shoot): void {
  for (const part of [defaults, ...Object.values(shots)]) {
    for (const id of part.after) expect(Object.hasOwn(shots, id)).toBe(true);
    for (const id of part.board) expect(Object.hasOwn(board, id)).toBe(true);
    for (const id of part.deliverables) expect(Object.hasOwn(deliverables, id)).toBe(true);
    if (part.camera !== undefined) expect(Object.hasOwn(kit.cameras, part.camera)).toBe(true);
    if (part.lighting !== undefined) expect(Object.hasOwn(lighting, part.lighting)).toBe(true);
    const times = part.speed.knots.map(({ screenTime_s }) => screenTime_s ?? NaN);
    expect(times).toEqual([...new Set(times)].sort((a, b) => a - b));
    expect(part.speed.constantFraction === undefined || part.speed.knots.length === 0).toBe(true);
  }
  expect(new Set(order.shots).size).toBe(order.shots.length);
  const open = new Map(
    Object.entries(shots).map(([id, { after }]) => [
      id,
      new Set(after.length > 0 ? after : defaults.after.filter((other) => other !== id)),
    ]),
  );
  while (open.size > 0) {
    const next = [...open].find(([, after]) => ![...after].some((id) => open.has(id)));
    expect(next, 'the order of shots has a circle').toBeDefined();
    open.delete(next![0]);
  }
}

/** A problem's path leads to something written, or to a record that lacks it. */
function expectPlaced({ path }: Problem, written: Written): void {
  expect(writtenValueAt(written, path), path).toBeDefined();
}

describe('whatever is written', () => {
  test('any JSON is read without being thrown out', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        readShoot(value as Written);
        readShoot({ longsecond: 1, shots: { a: value as Written }, kit: value as Written });
      }),
      { numRuns: 500 },
    );
  });

  test('a shoot with parts replaced by anything is sound where it is read, and says where it is not', () => {
    fc.assert(
      fc.property(fc.array(editDraws, { minLength: 1, maxLength: 5 }), (draws) => {
        const written = applyPatch(fixture, patchOf(fixture, draws));
        const { shoot, problems } = readShoot(written);
        expectSound(shoot);
        for (const problem of problems) expectPlaced(problem, written);
      }),
      { numRuns: 300 },
    );
  }, 60_000);

  test('a shoot made by the table, circles and doubled speeds among it, is sound', () => {
    fc.assert(
      fc.property(writtenBy(SHOOT), (written) => {
        const { shoot, problems } = readShoot(written);
        expectSound(shoot);
        expect(problems.map(({ code }) => code).filter((code) => !/^(?:after|speed|knots|range|reference|version)\./.test(code))).toEqual([]); // prettier-ignore
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  test('every key that could not be read has a problem', () => {
    fc.assert(
      fc.property(fc.array(writtenValues, { minLength: 1, maxLength: 3 }), (values) => {
        const keys = ['depth', 'rigs', 'action'];
        const { shoot, problems } = read(shot(Object.fromEntries(values.map((value, i) => [keys[i]!, value]))));
        const unread = shoot.shots['a']?.unread ?? [];
        for (const key of unread)
          expect(
            problems.some(({ path }) => path.startsWith(`/shots/a/${key}`)),
            key,
          ).toBe(true);
        expect(isRecord(shoot.shots['a'])).toBe(true);
      }),
    );
  });
});
