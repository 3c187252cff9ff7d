import { expect, test } from 'vitest';
import { catalogueHolds } from '../../../test/catalogue.ts';
import { HEAT_LAWS } from './catalogue.ts';

catalogueHolds(HEAT_LAWS);

test('no law of heat, eyes or skin calls anything safe', () => {
  for (const law of HEAT_LAWS) {
    const { words, ...told } = law;
    expect(JSON.stringify(told), law.id).not.toMatch(/\bsafe(ly)?\b/i);
    expect(words, law.id).toBeDefined();
    expect(law.cautions?.length, law.id).toBeGreaterThan(0);
  }
});
