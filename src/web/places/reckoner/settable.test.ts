import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf } from '../../../laws/law.ts';
import { readInput } from '../../../laws/reckon.ts';
import { inputAxis, isDrawable, numberOf, placeOn } from './axis.ts';
import { exampleTexts } from './lawText.ts';
import { pickText, stepAlong, stepText } from './settable.ts';

const input = (id: string, name: string) => inputsOf(lawNamed(id)!).find((each) => each.name === name)!;
const picked = (id: string, name: string, value: number, system: 'metric' | 'imperial' = 'metric') => {
  const field = input(id, name);
  const axis = inputAxis(field, { value });
  return pickText(field, { axis, at: placeOn(axis, value), grain: 1 / 200, system });
};

describe('what a hand picks', () => {
  test('is the nearest third of a stop, marked index or whole denominator', () => {
    expect(picked('light-needed', 'stop', 6.1)).toBe('T5.6⅓');
    expect(picked('depth-of-field', 'fNumber', 8.2)).toBe('f/8');
    expect(picked('light-needed', 'isoSpeed', 777)).toBe('800');
    expect(picked('light-needed', 'exposureTime_s', 1 / 1997)).toBe('1/2000 s');
  });

  test('is no finer than a hand can mean, in the unit of the person', () => {
    expect(picked('fall-speed', 'fallHeight_m', 0.5013)).toBe('500 mm');
    expect(picked('fall-speed', 'fallHeight_m', 0.5013, 'imperial')).toBe('1.64 ft');
    expect(picked('field-width', 'focalLength_mm', 99.7)).toBe('100 mm');
  });

  test('of any law can be read, and is near where the hand was', () => {
    for (const law of CATALOGUE)
      for (const field of inputsOf(law)) {
        const value = numberOf(exampleOf(law)[field.name] ?? field.default);
        if (!isDrawable(field) || value === undefined) continue;
        const axis = inputAxis(field, { value, isConstant: field.default !== undefined });
        for (const system of ['metric', 'imperial'] as const)
          for (const at of [0.05, 0.31, 0.5, 0.77, 1]) {
            const text = pickText(field, { axis, at, grain: 1 / 200, system });
            const read = readInput(field, text);
            if (!read.ok) throw new Error(`${law.id} ${field.name} ${text}: ${read.why}`);
            const off = Math.abs(placeOn(axis, numberOf(read.value)!) - at);
            expect(off, `${law.id} ${field.name} ${text}`).toBeLessThan(
              field.as === 'count' || field.as === 'rational' ? 0.3 : 0.06,
            );
          }
      }
  });
});

describe('the next value up', () => {
  test('is the next third for a stop, with the letter it had', () => {
    expect(stepText(input('light-needed', 'stop'), 'T8', 1)).toBe('T8⅓');
    expect(stepText(input('depth-of-field', 'fNumber'), 'f/8', -1)).toBe('f/5.6⅔');
  });

  test('is one more for a small count, and a round number for a large one', () => {
    expect(stepText(input('sampled-pitch', 'binningCount'), '2', 1)).toBe('3');
    expect(stepText(input('frame-size', 'widthCount'), '1920', 1)).toBe('1950');
    expect(stepText(input('sampled-pitch', 'binningCount'), '0', -1)).toBeUndefined();
  });

  test('can be read wherever a worked example can be stepped', () => {
    for (const law of CATALOGUE)
      for (const field of inputsOf(law)) {
        const text = exampleTexts(law)[field.name];
        if (text === undefined || !isDrawable(field)) continue;
        for (const direction of [1, -1] as const) {
          const next = stepText(field, text, direction);
          if (next === undefined) continue;
          expect(readInput(field, next), `${law.id} ${field.name} ${next}`).toMatchObject({ ok: true });
          expect(next).not.toBe(text);
        }
      }
  });
});

describe('keys along an axis', () => {
  const axis = { scale: 'linear', from: -4, to: 4 } as const;
  const over = input('highlight-room', 'overexposure_stops');

  test('go through nought, where a written number has no step of its own', () => {
    let text = '−0.4 stops';
    const seen = [text];
    for (let i = 0; i < 12; i += 1) seen.push((text = stepAlong(over, text, { axis, direction: 1, system: 'metric' })));
    const numbers = seen.map((each) => parseFloat(each.replace('−', '-')));
    expect(Math.max(...numbers)).toBeGreaterThan(0.4);
    for (const [i, number] of numbers.entries()) if (i > 0) expect(number).toBeGreaterThan(numbers[i - 1]!);
  });

  test('stop at its ends', () => {
    expect(stepAlong(over, '4 stops', { axis, direction: 1, system: 'metric' })).toBe('4 stops');
    const stop = input('light-needed', 'stop');
    expect(stepAlong(stop, 'T32', { axis: { scale: 'log', from: 2, to: 32 }, direction: 1, system: 'metric' })).toBe(
      'T32',
    );
  });
});
