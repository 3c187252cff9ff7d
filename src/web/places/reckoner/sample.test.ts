import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf, resultsOf, type LawValue } from '../../../laws/law.ts';
import { inputAxis, isDrawable, numberOf, placeOn, valueAt } from './axis.ts';
import { asInput, resultNumber, sampleCurve, startGrid, trimAxis } from './sample.ts';

const asking = (id: string, given: Readonly<Record<string, LawValue>> = {}) => {
  const of = lawNamed(id)!;
  return { of, given: { ...exampleOf(of), ...given }, result: resultsOf(of)[0]!.name };
};
const input = (id: string, name: string) => inputsOf(lawNamed(id)!).find((each) => each.name === name)!;

test('a refusal is no number, and neither is a result without end', () => {
  expect(resultNumber(asking('light-needed', { exposureTime_s: 0 }))).toBeUndefined();
  expect(resultNumber(asking('depth-far', { magnificationRatio: 0.0001 }))).toBeUndefined();
});

test('counts are whole and rates exact', () => {
  expect(asInput({ as: 'count' }, 3.6)).toBe(4);
  expect(asInput({ as: 'rational' }, 12.5)).toEqual({ num: 25, den: 2 });
  expect(asInput({ as: 'ratio' }, 0.3)).toBe(0.3);
});

describe('a curve', () => {
  const over = input('light-needed', 'stop');
  const axis = { scale: 'log', from: 2, to: 32 } as const;

  test('follows the law: four times the light for two stops', () => {
    const { runs, gaps } = sampleCurve(asking('light-needed'), { over, axis, count: 9 });
    expect(gaps).toEqual([]);
    const [run] = runs;
    expect(run).toHaveLength(9);
    expect(run![4]!.value / run![2]!.value).toBeCloseTo(4, 9);
  });

  test('breaks where the law refuses, and finds the edge between its samples', () => {
    // A subject nearer than the focal length has no picture: at 100 mm the law starts.
    const distance = input('field-width', 'objectDistance_m');
    const { runs, gaps } = sampleCurve(asking('field-width'), {
      over: distance,
      axis: { scale: 'linear', from: 0, to: 1 },
      count: 8,
    });
    expect(runs).toHaveLength(1);
    expect(gaps).toHaveLength(1);
    expect(gaps[0]!.to).toBeCloseTo(0.1, 4);
    expect(runs[0]![0]!.at).toBe(gaps[0]!.to);
  });

  test('that never has an answer is all gap', () => {
    const { runs, gaps } = sampleCurve(asking('light-needed', { isoSpeed: -1 }), { over, axis, count: 5 });
    expect(runs).toEqual([]);
    expect(gaps).toEqual([{ from: 0, to: 1 }]);
  });

  test('breaks where the result jumps, and follows a steep climb without a break', () => {
    const wheel = lawNamed('apparent-rotation')!;
    const over = inputsOf(wheel)[0]!;
    const { runs, gaps } = sampleCurve(
      { of: wheel, given: exampleOf(wheel), result: resultsOf(wheel)[0]!.name },
      { over, axis: { scale: 'linear', from: 0.1, to: 10 }, count: 181 },
    );
    expect(gaps).toEqual([]);
    expect(runs.length).toBeGreaterThan(1);
    // Between two jumps a wheel that turns faster is seen to turn faster.
    for (const run of runs)
      for (const [i, { value }] of run.entries()) if (i > 0) expect(value).toBeGreaterThanOrEqual(run[i - 1]!.value);
    const distance = input('inverse-square', 'distance_m');
    expect(
      sampleCurve(asking('inverse-square'), { over: distance, axis: { scale: 'linear', from: 0, to: 5 }, count: 181 })
        .runs,
    ).toHaveLength(1);
  });

  test('breaks in the middle where two inputs may not be the same', () => {
    const rows = input('rows-fit', 'secondRowCount');
    const curve = sampleCurve(asking('rows-fit'), {
      over: rows,
      axis: { scale: 'linear', from: 2150, to: 2170 },
      count: 21,
    });
    for (const { at } of curve.runs.flat()) expect(Math.round(2150 + 20 * at)).not.toBe(2160);
  });
});

describe('trimming an axis', () => {
  const axis = { scale: 'linear', from: 0, to: 10 } as const;
  const run = (from: number, to: number) => ({
    runs: [
      [
        { at: from, value: 1 },
        { at: to, value: 1 },
      ],
    ],
    gaps: [],
  });

  test('leaves a little of what is refused at either end', () => {
    const trimmed = trimAxis(axis, run(0.5, 1), 8);
    expect(trimmed.from).toBeCloseTo(4.5, 9);
    expect(trimmed.to).toBe(10);
  });

  test('keeps where the law stands in sight, even where it has no answer', () => {
    expect(placeOn(trimAxis(axis, run(0.5, 1), 1), 1)).toBeGreaterThanOrEqual(0);
  });

  test('leaves an axis without any answer as it is', () => {
    expect(trimAxis(axis, { runs: [], gaps: [] }, 5)).toEqual(axis);
  });
});

describe('a grid', () => {
  const across = {
    over: input('light-needed', 'stop'),
    and: input('light-needed', 'isoSpeed'),
    overAxis: { scale: 'log', from: 2, to: 32 },
    andAxis: { scale: 'log', from: 100, to: 6400 },
    columns: 5,
    rows: 7,
  } as const;

  test('is the law at every point, whatever the size of the pieces it is worked out in', () => {
    const whole = startGrid(asking('light-needed'), across);
    expect(whole.work(1000)).toBe(true);
    const pieces = startGrid(asking('light-needed'), across);
    let turns = 1;
    while (!pieces.work(4)) turns += 1;
    expect(turns).toBe(9);
    expect(pieces.grid.values).toEqual(whole.grid.values);
    // Middle of both axes: T8 at 800, 40 klx at 1/2000 s, 250 · 64 · 2000 / 800.
    expect(whole.grid.values[3 * 5 + 2]).toBeCloseTo(40_000, 6);
  });

  test('has no number where the law refuses', () => {
    const { grid, work } = startGrid(asking('light-needed', { exposureTime_s: 0 }), across);
    work(1000);
    expect([...grid.values].every(Number.isNaN)).toBe(true);
  });
});

describe.each(CATALOGUE.map((law) => [law.id, law] as const))('%s', (_, law) => {
  const given = exampleOf(law);
  const fields = inputsOf(law).filter(isDrawable);

  test('can be drawn over each of its inputs that is a number, around its worked example', () => {
    const results = resultsOf(law).filter(isDrawable);
    for (const result of results)
      for (const over of fields) {
        const value = numberOf(given[over.name] ?? over.default);
        if (value === undefined) continue;
        const whole = inputAxis(over, { value, likely: 1, isConstant: over.default !== undefined });
        const ask = { of: law, given, result: result.name };
        const curve = sampleCurve(ask, {
          over,
          axis: trimAxis(whole, sampleCurve(ask, { over, axis: whole, count: 41 }), value),
          count: 41,
        });
        const answers = curve.runs.flat();
        // A drop-frame timecode belongs to two exact rates alone, and no sample hits one.
        if (law.id === 'frame-of-timecode') continue;
        expect(answers.length, `${result.name} over ${over.name}`).toBeGreaterThan(0);
        for (const { at, value: answer } of answers) {
          expect(at >= 0 && at <= 1).toBe(true);
          expect(Number.isFinite(answer)).toBe(true);
        }
        expect(Number.isFinite(valueAt(whole, 0.5))).toBe(true);
      }
  });
});
