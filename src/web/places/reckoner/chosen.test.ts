import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf, resultsOf } from '../../../laws/law.ts';
import { isDrawable } from './axis.ts';
import { drawableInputs } from './chosen.ts';

const asking = (id: string) => {
  const of = lawNamed(id)!;
  return { of, given: exampleOf(of), result: resultsOf(of)[0]!.name };
};
const names = (id: string) => drawableInputs(asking(id)).map(({ name }) => name);

describe('without a word from anybody, a picture is drawn', () => {
  test('over the stop, where there is one', () => {
    expect(names('light-needed')[0]).toBe('stop');
    expect(names('depth-of-field')[0]).toBe('fNumber');
  });

  test('over what has to be given before what has a default', () => {
    expect(names('light-needed')).toEqual(['stop', 'exposureTime_s', 'isoSpeed', 'meterConstant_lx_s']);
  });

  test('last over what the result hardly feels: depth at one magnification and the focal length', () => {
    expect(names('depth-of-field').at(-1)).toBe('focalLength_mm');
  });
});

test('no input that can be drawn is left out, and none comes twice', () => {
  for (const of of CATALOGUE) {
    const result = resultsOf(of)[0]!.name;
    const drawn = drawableInputs({ of, given: exampleOf(of), result }).map(({ name }) => name);
    expect([...drawn].sort(), of.id).toEqual(
      inputsOf(of)
        .filter(isDrawable)
        .map(({ name }) => name)
        .sort(),
    );
  }
});
