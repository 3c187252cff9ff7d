import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainName } from './name.ts';
import { PersonName } from './schemas.ts';

describe('a name as it was typed', () => {
  test.each([
    ['  Ada  ', 'Ada'],
    ['Ada\nof the lights', 'Ada of the lights'],
    ['Zoë 🎬', 'Zoë 🎬'],
    ['🎬'.repeat(70), '🎬'.repeat(60)],
    ['\ud83e', undefined],
    [' \t ', undefined],
    [undefined, undefined],
  ])('%j is sent as %j', (typed, sent) => {
    expect(plainName(typed)).toBe(sent);
  });

  test('whatever was typed, what is sent is a name that the server takes', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 90 }), fc.string({ maxLength: 90 })), (typed) => {
        const name = plainName(typed);
        expect(name === undefined || PersonName.parse(name) === name).toBe(true);
      }),
    );
  });
});
