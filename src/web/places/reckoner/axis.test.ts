import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf, resultsOf } from '../../../laws/law.ts';
import { inputAxis, isDrawable, numberOf, placeOn, resultAxis, roundDown, roundUp, ticksOf, valueAt } from './axis.ts';

const input = (id: string, name: string) => inputsOf(lawNamed(id)!).find((each) => each.name === name)!;
const STOP = input('light-needed', 'stop');
const TIME = input('light-needed', 'exposureTime_s');
const INDEX = input('light-needed', 'isoSpeed');
const LIGHT = resultsOf(lawNamed('light-needed')!)[0]!;
const HEIGHT = input('fall-speed', 'fallHeight_m');
const labels = (ticks: ReturnType<typeof ticksOf>) => ticks.ticks.map(({ label }) => label);

describe('an axis', () => {
  const axis = fc
    .tuple(
      fc.constantFrom('linear' as const, 'log' as const),
      fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
      fc.double({ min: 1.01, max: 1e4, noNaN: true }),
    )
    .map(([scale, from, times]) => ({ scale, from, to: from * times }));

  test('gives back the value of a place, and the place of a value', () => {
    fc.assert(
      fc.property(axis, fc.double({ min: 0, max: 1, noNaN: true }), (each, at) => {
        expect(placeOn(each, valueAt(each, at))).toBeCloseTo(at, 6);
      }),
    );
  });

  test('by doublings has its middle at the geometric mean', () => {
    expect(valueAt({ scale: 'log', from: 100, to: 6400 }, 0.5)).toBeCloseTo(800, 9);
  });
});

test('round numbers are 1, 2 and 5 with noughts, just below and just above', () => {
  expect([roundDown(7), roundDown(0.0019), roundDown(200)]).toEqual([5, 0.001, 200]);
  expect([roundUp(7), roundUp(0.0019), roundUp(200)]).toEqual([10, 0.002, 200]);
});

describe('the axis of an input', () => {
  test('shows four stops either way, within what lenses have', () => {
    const axis = inputAxis(STOP, { value: 8 });
    expect(axis).toEqual({ scale: 'log', from: 2, to: 32 });
    expect(inputAxis(STOP, { value: 45 }).to).toBeLessThan(128);
  });

  test('goes by times for times and lights, by steps from nought for lengths', () => {
    expect(inputAxis(TIME, { value: 1 / 2000 })).toEqual({ scale: 'log', from: 5e-5, to: 5e-3 });
    expect(inputAxis(HEIGHT, { value: 0.5 })).toEqual({ scale: 'linear', from: 0, to: 1 });
  });

  test('that is nought is as wide as the value it may well have', () => {
    const added = input('working-distance', 'addedLength_m');
    expect(inputAxis(added, { value: 0, likely: 0.036 })).toEqual({ scale: 'linear', from: 0, to: 0.1 });
  });

  test('of a fraction runs from nought to one', () => {
    expect(inputAxis(input('t-stop', 'transmittanceFraction'), { value: 0.75 })).toEqual({
      scale: 'linear',
      from: 0,
      to: 1,
    });
  });

  test('grows and shrinks with its reach', () => {
    const width = (reach: number) => inputAxis(TIME, { value: 1e-3, reach }).to;
    expect(width(2)).toBeGreaterThan(width(1));
    expect(width(0.5)).toBeLessThan(width(1));
  });

  test('of any law is a true interval that holds the value of its worked example', () => {
    for (const law of CATALOGUE)
      for (const field of inputsOf(law)) {
        const value = numberOf(exampleOf(law)[field.name] ?? field.default);
        if (!isDrawable(field) || value === undefined) continue;
        for (const reach of [0.25, 0.5, 1, 2, 4]) {
          const axis = inputAxis(field, { value, reach, isConstant: field.default !== undefined });
          const says = `${law.id} ${field.name} ${reach}`;
          expect(axis.to, says).toBeGreaterThan(axis.from);
          expect(placeOn(axis, value), says).toBeGreaterThanOrEqual(-1e-9);
          expect(placeOn(axis, value), says).toBeLessThanOrEqual(1 + 1e-9);
          if (axis.scale === 'log') expect(axis.from, says).toBeGreaterThan(0);
        }
      }
  });
});

describe('the axis of a result', () => {
  test('starts at nought where the results come near it', () => {
    expect(resultAxis(HEIGHT, [0.3, 1.8])).toEqual({ scale: 'linear', from: 0, to: 2 });
  });

  test('does not show nought where that would flatten the curve', () => {
    expect(resultAxis(HEIGHT, [0.9, 1])?.from).toBe(0.9);
  });

  test('goes by times where the results reach far', () => {
    const shown = { isAlongLog: true };
    expect(resultAxis(LIGHT, [3000, 40_000, 600_000], shown)).toEqual({ scale: 'log', from: 2000, to: 1e6 });
    const overX = Array.from({ length: 100 }, (_, i) => 1 / (i + 1));
    expect(resultAxis(HEIGHT, overX)?.scale).toBe('log');
  });

  test('goes by steps for what grows evenly from nought along an even axis', () => {
    const grows = (power: number) => Array.from({ length: 100 }, (_, i) => ((i + 1) / 100) ** power);
    for (const power of [0.5, 1, 2, 3]) expect(resultAxis(HEIGHT, grows(power))?.scale).toBe('linear');
  });

  test('of a fraction goes by times only where it is far above one', () => {
    const fraction = resultsOf(lawNamed('playback-speed')!)[0]!;
    expect(resultAxis(fraction, [0.01, 0.1, 1], { isAlongLog: true })?.scale).toBe('linear');
    expect(resultAxis(fraction, [0.01, 1, 50], { isAlongLog: true })?.scale).toBe('log');
  });

  test('cuts off what runs away to a pole', () => {
    expect(resultAxis(LIGHT, [1, 2, 1e12], { at: 2, isAlongLog: true })?.to).toBeLessThan(1e5);
  });

  test('lets a short run to a pole leave the picture rather than flatten the rest', () => {
    const nearFlat = Array.from({ length: 99 }, (_, i) => 6 + i / 200);
    expect(resultAxis(HEIGHT, [...nearFlat, 5000])!.to).toBeLessThan(8);
  });

  test('shows the ends of an even climb whole', () => {
    const climb = Array.from({ length: 100 }, (_, i) => 10 ** (i / 33));
    expect(resultAxis(LIGHT, climb, { isAlongLog: true })).toEqual({ scale: 'log', from: 1, to: 1000 });
  });

  test('is none without results, and has a height where all are the same', () => {
    expect(resultAxis(LIGHT, [])).toBeUndefined();
    const flat = resultAxis(LIGHT, [5, 5])!;
    expect(flat.to).toBeGreaterThan(flat.from);
  });
});

describe('ticks', () => {
  const room = { most: 10, system: 'metric' as const };

  test('of stops are full stops as engraved', () => {
    expect(labels(ticksOf(STOP, { scale: 'log', from: 2, to: 32 }, room))).toEqual([
      'T2',
      'T2.8',
      'T4',
      'T5.6',
      'T8',
      'T11',
      'T16',
      'T22',
      'T32',
    ]);
  });

  test('of shutters are the marked fractions, of indices the doublings', () => {
    const times = ticksOf(TIME, { scale: 'log', from: 5e-5, to: 5e-3 }, room);
    expect(times.unit).toBe('s');
    expect(labels(times)).toEqual(['1/16000', '1/8000', '1/4000', '1/2000', '1/1000', '1/500', '1/250']);
    expect(labels(ticksOf(INDEX, { scale: 'log', from: 100, to: 6400 }, { ...room, most: 4 }))).toEqual([
      '100',
      '400',
      '1600',
      '6400',
    ]);
  });

  test('carry their own unit where the axis needs several', () => {
    const { unit, ticks } = ticksOf(LIGHT, { scale: 'log', from: 100, to: 1e6 }, { ...room, most: 5 });
    expect(unit).toBe('');
    expect(ticks.map(({ label }) => label)).toEqual(['100 lx', '1 klx', '10 klx', '100 klx', '1000 klx']);
  });

  test('are round in the unit of the person', () => {
    const { unit, ticks } = ticksOf(HEIGHT, { scale: 'linear', from: 0, to: 1 }, { most: 5, system: 'imperial' });
    expect(unit).toBe('ft');
    expect(ticks.map(({ label }) => label)).toEqual(['0', '1', '2', '3']);
    expect(ticks[1]?.value).toBeCloseTo(0.3048, 12);
  });

  test('below nought have a true minus sign', () => {
    const stops = input('highlight-room', 'overexposure_stops');
    expect(labels(ticksOf(stops, { scale: 'linear', from: -4, to: 4 }, { ...room, most: 4 }))).toEqual([
      '−4',
      '−2',
      '0',
      '2',
      '4',
    ]);
  });

  test('of any law’s axes lie on them in order, have a word each, and are at least two', () => {
    for (const law of CATALOGUE)
      for (const field of [...inputsOf(law), ...resultsOf(law)]) {
        const value = numberOf(exampleOf(law)[field.name] ?? 1);
        if (!isDrawable(field) || value === undefined) continue;
        for (const system of ['metric', 'imperial'] as const) {
          const axis = inputAxis(field, { value });
          const { ticks } = ticksOf(field, axis, { most: 6, system });
          const says = `${law.id} ${field.name} ${system}`;
          expect(ticks.length, says).toBeGreaterThanOrEqual(2);
          expect(ticks.length, says).toBeLessThanOrEqual(12);
          const places = ticks.map((tick) => placeOn(axis, tick.value));
          for (const [i, at] of places.entries()) {
            expect(at, says).toBeGreaterThanOrEqual(-1e-6);
            expect(at, says).toBeLessThanOrEqual(1 + 1e-6);
            if (i > 0) expect(Math.abs(at - places[i - 1]!), says).toBeGreaterThan(0.01);
          }
          expect(new Set(ticks.map(({ label }) => label)).size, says).toBe(ticks.length);
        }
      }
  });
});
