import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CATALOGUE } from '../../../laws/catalogue.ts';
import { cautionsModule } from '../../../../tools/cautions.mjs';
import { CAUTIONS, WHAT_CAUTIONS_ARE } from './cautions.ts';

const PAGE = readFileSync(new URL('../../../../docs/safety.md', import.meta.url), 'utf8');

test('the cautions are what the safety page makes them, by npm run sources', async () => {
  const made = readFileSync(new URL('./cautions.ts', import.meta.url), 'utf8');
  expect(made).toBe(await cautionsModule(PAGE));
});

test('every section of the page is there with all it says', () => {
  const headings = [...PAGE.matchAll(/^## (.+)$/gm)].map(([, title]) => title);
  expect(Object.values(CAUTIONS).map(({ title }) => title)).toEqual(headings);
  for (const { says, points } of Object.values(CAUTIONS)) {
    expect(PAGE).toContain(says);
    expect(points.length).toBeGreaterThan(1);
    for (const point of points) expect(PAGE).toContain(`- ${point}\n`);
  }
});

test('what a caution is and is not is said: no instruction, no approval, and who comes first', () => {
  expect(PAGE).toContain(WHAT_CAUTIONS_ARE.replace('This is', 'This page is'));
  expect(WHAT_CAUTIONS_ARE).toMatch(/neither an instruction .* nor an approval.*come first/);
});

test('every caution that a law names has words', () => {
  for (const { id, cautions = [] } of CATALOGUE)
    for (const key of cautions) expect(Object.keys(CAUTIONS), id).toContain(key);
});
