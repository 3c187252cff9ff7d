import { describe, expect, test } from 'vitest';
import { lawNamed } from '../laws/catalogue.ts';
import { LIMITS } from '../plan/types.ts';
import { LIMIT_HELP } from './limitHelp.ts';

const sentences = (text: string) => text.split(/[.?!](?:\s|$)/).filter((part) => part.trim() !== '');

describe.each(LIMITS)('the help for %s', (id) => {
  const help = LIMIT_HELP[id];

  test.each(['what', 'why', 'can'] as const)('says %s in one or two sentences', (part) => {
    expect(help[part]).toMatch(/^\p{Lu}.{20,}\.$/u);
    expect(sentences(help[part]).length).toBeLessThanOrEqual(2);
  });

  test('leads to laws that exist, each once', () => {
    expect(help.laws.filter((law) => lawNamed(law) === undefined)).toEqual([]);
    expect(new Set(help.laws).size).toBe(help.laws.length);
  });

  test('claims nothing to be safe', () => {
    expect(Object.values(help).join(' ')).not.toMatch(/\bsafe(ly|ty)?\b/i);
  });
});

test('every limit leads to the law behind it', () => {
  expect(LIMITS.filter((id) => LIMIT_HELP[id].laws.length === 0)).toEqual([]);
});
