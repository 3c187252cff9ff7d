import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf } from '../../../laws/law.ts';
import { computeLaw } from '../../../laws/reckon.ts';
import { sayRefusal } from './refusal.ts';

const refusal = (id: string, given: Readonly<Record<string, number>>, system: 'metric' | 'imperial' = 'metric') => {
  const law = lawNamed(id)!;
  const worked = computeLaw(law, { ...exampleOf(law), ...given });
  if ('results' in worked) throw new Error(`${id} answers`);
  return sayRefusal(law, worked.what, system);
};

test('a refusal speaks of the field, with the value as the field shows it', () => {
  expect(refusal('light-needed', { exposureTime_s: 0 })).toBe('Exposure time must be above zero; it is 0 s');
  expect(refusal('working-distance', { addedLength_m: -0.01 })).toMatch(/ must be zero or above; it is −10 mm$/);
});

test('bounds are in the units of the field', () => {
  expect(refusal('terminal-speed', { diameter_m: 2 })).toMatch(/must be from 1 µm to 1 m; it is 2 m$/);
  expect(refusal('terminal-speed', { diameter_m: 2 }, 'imperial')).toMatch(/to 3\.281 ft; it is 6\.562 ft$/);
});

test('a bound that is not reached keeps its word', () => {
  expect(refusal('crop-width', { reframeFraction: 1 })).toMatch(/must be from 0 to below 1; it is 1$/);
});

test('another input in the sentence goes by its title', () => {
  expect(refusal('rows-fit', { firstRowCount: 1080, secondRowCount: 1080 })).not.toMatch(/RowCount/);
});

describe.each(CATALOGUE.map((law) => [law.id, law] as const))('%s', (_, law) => {
  test('refuses in words without a name of code in them', () => {
    for (const { name, as } of inputsOf(law)) {
      if (as === 'choice' || as === 'flag' || as === 'rational' || as === 'timecode') continue;
      for (const value of [-1, 0, 0.5, 1e9, 1e30]) {
        const worked = computeLaw(law, { ...exampleOf(law), [name]: value });
        if ('results' in worked) continue;
        const says = sayRefusal(law, worked.what, 'metric');
        expect(says).not.toMatch(/\w_\w|[a-z]{2}[A-Z]/);
        expect(says).toMatch(/^[A-ZΑ-Ω0-9]/);
        expect(says).not.toMatch(/Infinity|NaN|undefined|\d{7,}\.|\.\d{9,}/);
      }
    }
  });
});
