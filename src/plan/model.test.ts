import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO, readSound, SMALL } from '../../test/shoots.ts';
import { unitSuffix } from '../base/kinds.ts';
import { incidentIlluminance } from '../laws/exposure/incident.ts';
import { shutterAngle } from '../laws/exposure/shutter.ts';
import { exampleOf, inputsOf } from '../laws/law.ts';
import { computeLaw } from '../laws/reckon.ts';
import { affectedSteps, modelBuilder, neededSteps, refusal, requiring, rootsOf, work, type Model } from './model.ts';
import { candidatesOf, prepare, workAt } from './planShot.ts';
import { shotModel, type Structure } from './shotModel.ts';
import { NO_TIMING, type TimingStructure, type TravelBy } from './timing/structure.ts';

/** a and b are given; c = a + b; d = c · wish, or c where nobody wishes; e = root of d, which no negative number has. */
function small(): Model {
  const m = modelBuilder();
  m.choose('c_m', { title: 'C', says: 'the sum' }, { a: 'a_m', b: 'b_m' }, ({ a, b }) => a! + b!);
  m.choose('d_m', { title: 'D', says: 'wished for', optional: ['wish'] }, { c: 'c_m', wish: 'wish' }, ({ c, wish }) =>
    Number.isNaN(wish!) ? c! : c! * wish!,
  );
  m.choose('e', { title: 'E', says: 'its root' }, { d: 'd_m' }, ({ d }) => {
    if (d! < -100) throw new RangeError('d must be -100 or above');
    return Math.sqrt(d!);
  });
  m.given('unused_s');
  return m.build();
}

const filled = (model: Model, given: Readonly<Record<string, number>>): Float64Array => {
  const values = new Float64Array(model.names.length).fill(NaN);
  for (const [name, value] of Object.entries(given)) values[model.slotOf.get(name)!] = value;
  return values;
};

const worked = (model: Model, given: Readonly<Record<string, number>>) => {
  const values = filled(model, given);
  work(model.steps, values);
  return (name: string): number => values[model.slotOf.get(name)!]!;
};

describe('a model', () => {
  test('refuses to give a law what it does not take', () => {
    const m = modelBuilder();
    const inputs = {
      stop: 'stop',
      exposureTime_s: 'exposureTime_s',
      isoSpeed: 'isoSpeed',
      filters: 'filterLoss_stops',
    };
    expect(() => m.law('illuminance_lx', incidentIlluminance, inputs)).toThrow(RangeError);
  });

  test('works steps in the order they were added, each from those before it', () => {
    const at = worked(small(), { a_m: 4, b_m: 5, wish: 4 });
    expect([at('c_m'), at('d_m'), at('e')]).toEqual([9, 36, 6]);
  });

  test('lists as given what no step works out, with what limits compare', () => {
    expect([...small().givens].sort()).toEqual(['a_m', 'b_m', 'unused_s', 'wish']);
  });

  test('refuses to work one name out twice', () => {
    const m = modelBuilder();
    m.choose('c_m', { title: 'C', says: 'so' }, { a: 'a_m' }, ({ a }) => a!);
    expect(() => m.choose('c_m', { title: 'C', says: 'again' }, { a: 'a_m' }, ({ a }) => a!)).toThrow(RangeError);
  });

  test('takes title and meaning of a number from its law, and its kind from the unit of its name', () => {
    const m = modelBuilder();
    const inputs = { exposureTime_s: 'exposureTime_s', frameRate_fps: 'captureRate_fps' };
    m.law('shutterAngle_deg', shutterAngle, inputs);
    m.law('other_deg', shutterAngle, inputs, 'Another title');
    m.choose('isoSpeed', { title: 'Index', as: 'isoSpeed', says: 'so' }, { a: 'other_deg' }, ({ a }) => a!);
    const { stepOf } = m.build();
    expect(stepOf.get('shutterAngle_deg')).toMatchObject({ title: 'Shutter angle', kind: 'angle' });
    expect(stepOf.get('other_deg')).toMatchObject({ title: 'Another title', kind: 'angle' });
    expect(stepOf.get('isoSpeed')).toMatchObject({ as: 'isoSpeed', kind: undefined });
  });
});

describe('what is unknown', () => {
  test('leaves all that rests on it unknown, and nothing else', () => {
    const at = worked(small(), { a_m: 4, wish: 4 });
    expect([at('c_m'), at('d_m'), at('e')]).toEqual([NaN, NaN, NaN]);
    expect(at('a_m')).toBe(4);
  });

  test('does not matter where an input may be unknown', () => {
    const at = worked(small(), { a_m: 4, b_m: 5 });
    expect([at('d_m'), at('e')]).toEqual([9, 3]);
  });

  test('matters again where a model requires that input', () => {
    const model = requiring(small(), (input) => input === 'wish');
    expect(worked(model, { a_m: 4, b_m: 5 })('d_m')).toBeNaN();
    expect(worked(model, { a_m: 4, b_m: 5, wish: 4 })('e')).toBe(6);
    expect(model.stepOf.get('d_m')!.optional.has('wish')).toBe(false);
    expect(worked(small(), { a_m: 4, b_m: 5 })('d_m')).toBe(9);
  });

  test('a law that refuses leaves its number unknown, and the refusal says why', () => {
    const model = small();
    const values = filled(model, { a_m: -200, b_m: 0 });
    work(model.steps, values);
    expect(values[model.slotOf.get('e')!]).toBeNaN();
    expect(refusal(model.stepOf.get('e')!, values)).toBe('d must be -100 or above');
  });

  test('a step without an answer at known inputs says so; one with an answer, or short of an input, says nothing', () => {
    const model = small();
    const said = (given: Readonly<Record<string, number>>, name: string) => {
      const values = filled(model, given);
      work(model.steps, values);
      return refusal(model.stepOf.get(name)!, values);
    };
    expect(said({ a_m: -4, b_m: 0 }, 'e')).toBe('no answer at these values');
    expect(said({ a_m: 4, b_m: 0 }, 'e')).toBeUndefined();
    expect(said({ a_m: 4 }, 'c_m')).toBeUndefined();
    expect(said({ a_m: 4, b_m: 0 }, 'd_m')).toBeUndefined();
  });

  test('a fault that is no refusal comes out of the model', () => {
    const m = modelBuilder();
    m.choose('c_m', { title: 'C', says: 'broken' }, { a: 'a_m' }, () => {
      throw new TypeError('broken');
    });
    const model = m.build();
    expect(() => work(model.steps, filled(model, { a_m: 1 }))).toThrow(TypeError);
    expect(() => refusal(model.steps[0]!, filled(model, { a_m: 1 }))).toThrow(TypeError);
  });
});

test('the roots of a number are the given names it rests on, nearest first', () => {
  const model = small();
  expect(rootsOf(model, 'e')).toEqual(['wish', 'a_m', 'b_m']);
  expect(rootsOf(model, 'a_m')).toEqual(['a_m']);
});

const TRAVELS: readonly TravelBy[] = ['still', 'fall', 'fall-air', 'flight', 'flight-air', 'swing', 'pour', 'move', 'lights', 'unread']; // prettier-ignore

/** A shot that travels in every way, triggered by the first signal. */
const EVERY_TIMING: TimingStructure = {
  cues: TRAVELS.flatMap((by) =>
    [true, false].map((is) => ({ by, isMeasured: !is, hasPlace: is, variesInSpeed: is && /flight|pour/.test(by), variesInTravel: !is, isOffset: is, rests: is, isApart: by === 'swing' })),
  ),
  meetingAt: 'middle',
  tolerance: 'of-frame',
  trigger: 'person',
  answers: 'first-signal',
  post: 'solved',
}; // prettier-ignore

const STRUCTURES: readonly Structure[] = (['fixed', 'speed', 'duration'] as const).flatMap((rateBy) =>
  (['duration', 'profile', 'screen'] as const).flatMap((coverBy) =>
    (['time', 'angle', 'solved'] as const).flatMap((shutterBy) =>
      (['fixed', 'solved'] as const).flatMap((indexBy) =>
        (['illuminance', 'luminance'] as const).flatMap((readBy) =>
          (['pixels', 'diagonal'] as const).map((unsharpnessBy) => ({
            rateBy,
            coverBy,
            shutterBy,
            indexBy,
            readBy,
            unsharpnessBy,
            deliverableCount: 2,
            lifeBy: readBy === 'illuminance' ? ('ice-cream' as const) : ('written' as const),
            eyesBy: readBy === 'illuminance' ? ('lamps' as const) : ('nothing' as const),
            timing: readBy === 'illuminance' ? EVERY_TIMING : NO_TIMING,
          })),
        ),
      ),
    ),
  ),
);

/** Every step that a law works in any structure, each once. */
const LAW_STEPS = [
  ...new Map(
    STRUCTURES.flatMap((structure) => shotModel(structure).steps).map((step) => [
      `${step.name}: ${step.inputs.map(([argument, name]) => `${argument} = ${name}`).join(', ')}`,
      step,
    ]),
  ),
].flatMap(([title, { origin, inputs }]) => (origin.by === 'law' ? [{ title, law: origin.law, inputs }] : []));

describe('the model of a shot, in every structure', () => {
  test.each(LAW_STEPS)('$title: all that the law takes, or can do without, in the unit it names', ({ law, inputs }) => {
    const given = inputs.map(([argument]) => argument);
    const takes = inputsOf(law).map(({ name }) => name);
    expect(takes).toEqual(expect.arrayContaining(given));
    const fewer = Object.entries(exampleOf(law)).filter(([argument]) => given.includes(argument));
    expect(computeLaw(law, Object.fromEntries(fewer))).toHaveProperty('results');
    for (const [argument, name] of inputs) expect(unitSuffix(name)).toBe(unitSuffix(argument));
  });

  test('uses no number before it is worked out', () => {
    const early = STRUCTURES.flatMap((structure) => {
      const { steps, stepOf } = shotModel(structure);
      const done = new Set<string>();
      return steps.flatMap(({ name, inputs }) => {
        const missed = inputs.filter(([, input]) => stepOf.has(input) && !done.has(input));
        done.add(name);
        return missed.map(([, input]) => `${name} before ${input}`);
      });
    });
    expect(early).toEqual([]);
  });

  test('is made once for a structure', () => {
    expect(shotModel(STRUCTURES[0]!)).toBe(shotModel({ ...STRUCTURES[0]! }));
  });
});

/** Shots whose models have between them every way of finding rate, cover and light. */
const SHOTS = [
  ...Object.keys(DEMO['shots'] as object).map((id) => ({ shoot: readSound(DEMO), id })),
  { shoot: readSound(SMALL), id: 'one' },
];
const PREPARED = SHOTS.map(({ shoot, id }) => {
  const prepared = prepare(shoot, id);
  const [answer] = candidatesOf(prepared).best;
  return { model: prepared.model, ...workAt(prepared, answer) };
});

const change = fc
  .constantFrom(...PREPARED)
  .chain((of) =>
    fc.tuple(fc.constant(of), fc.constantFrom(...of.model.givens), fc.double({ min: 0.5, max: 2, noNaN: true })),
  );

describe('working again only what a change touches', () => {
  test('gives the same numbers as working everything', () => {
    fc.assert(
      fc.property(change, ([{ model, values }, name, factor]) => {
        const slot = model.slotOf.get(name)!;
        const part = values.slice();
        part[slot] = part[slot]! * factor;
        const whole = part.slice();
        work(affectedSteps(model, [name]), part);
        work(model.steps, whole);
        expect(part).toEqual(whole);
      }),
      { numRuns: 400 },
    );
  });

  test('leaves a held setting as it was, and works the rest as if that setting had been given', () => {
    fc.assert(
      fc.property(change, ([{ model, values }, name, factor]) => {
        const held = ['captureRate_fps', 'exposureTime_s', 'isoSpeed'];
        const slot = model.slotOf.get(name)!;
        const part = values.slice();
        part[slot] = part[slot]! * factor;
        const whole = part.slice();
        work(affectedSteps(model, [name], held), part);
        work(model.steps.filter((step) => !held.includes(step.name)), whole);
        expect(part).toEqual(whole);
        for (const of of held) if (of !== name) expect(part[model.slotOf.get(of)!]).toBe(values[model.slotOf.get(of)!]);
      }),
      { numRuns: 400 },
    );
  }); // prettier-ignore

  test('is not needed where a number does not rest on what changed', () => {
    fc.assert(
      fc.property(change, ([{ model, values }, name, factor]) => {
        const after = values.slice();
        after[model.slotOf.get(name)!] = NaN * factor;
        work(model.steps, after);
        for (const [of, slot] of model.slotOf)
          if (!rootsOf(model, of).includes(name)) expect([of, after[slot]]).toEqual([of, values[slot]]);
      }),
    );
  });

  test('for one number needs only the steps it rests on', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PREPARED), fc.nat(), ({ model, values }, pick) => {
        const name = model.steps[pick % model.steps.length]!.name;
        const part = values.slice();
        for (const step of model.steps) part[step.out] = NaN;
        work(neededSteps(model.steps, [name]), part);
        expect(part[model.slotOf.get(name)!]).toBe(values[model.slotOf.get(name)!]);
      }),
    );
  });
});

test('a law step computes what its law does', () => {
  const m = modelBuilder();
  m.law('illuminance_lx', incidentIlluminance, {
    stop: 'stop',
    exposureTime_s: 'exposureTime_s',
    isoSpeed: 'isoSpeed',
  });
  const at = worked(m.build(), { stop: 4, exposureTime_s: 1 / 50, isoSpeed: 800 });
  expect(at('illuminance_lx')).toBe(incidentIlluminance.compute({ stop: 4, exposureTime_s: 1 / 50, isoSpeed: 800 }));
});
