import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import * as kinds from '../src/base/kinds.ts';
import * as quantity from '../src/base/quantity.ts';
import * as command from '../src/cli/verbs/reckon.ts';
import * as schema from '../src/document/schema.ts';
import { readShootText } from '../src/document/text.ts';
import * as catalogue from '../src/laws/catalogue.ts';
import * as law from '../src/laws/law.ts';
import * as reckon from '../src/laws/reckon.ts';
import * as sources from '../src/laws/sources.ts';
import { planShoot } from '../src/plan/plan.ts';
import * as replies from '../src/turnover/planSchema.ts';
import * as shootSchema from '../src/document/jsonSchema.ts';
import { FIRST_SHOOT, pages } from './docs/pages.mjs';
import { ROOT } from './run.mjs';

const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');

describe('pages made from the code', async () => {
  const made = await pages({ kinds, quantity, schema, catalogue, law, reckon, sources, command, replies, shootSchema });

  test.each([...made])('%s is what the code makes it (npm run docs)', (path, text) => {
    expect(read(path)).toBe(text);
  });

  test('name every key of the form', () => {
    const page = made.get('docs/guide/writing-a-shoot.md')!;
    const keysOf = (of: object) => Object.keys(of);
    for (const key of [...keysOf(schema.SHOOT.fields).slice(1), ...keysOf(schema.SHOT.fields), ...keysOf(schema.CAMERA.fields)])
      expect(page).toContain(`\`${key}\``);
  });

  test('name every law', () => {
    const page = made.get('docs/guide/laws.md')!;
    for (const { id, title } of catalogue.CATALOGUE) {
      expect(page).toContain(`### ${title}\n`);
      expect(page).toContain(`longsecond reckon ${id} `);
    }
  });
}); // prettier-ignore

describe('the shoot to begin with', () => {
  const { shoot, problems } = readShootText(read(FIRST_SHOOT));
  const [shot] = planShoot(shoot).shots;

  test('has no problems, and a plan in which nothing is unknown', () => {
    expect(problems).toEqual([]);
    expect(shot!.settings).toBeDefined();
    expect(shot!.margins.filter(({ state }) => state === 'unknown')).toEqual([]);
  });
});

const PAGES = ['README.md', 'CHANGELOG.md', ...markdownBelow('docs')];

function markdownBelow(folder: string): readonly string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.md'))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)))
    .sort();
}

/** A heading's anchor, as forges make it. */
function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s-]/gu, '')
    .trim()
    .replace(/\s/g, '-');
}

function anchorsIn(page: string): ReadonlySet<string> {
  const headings = [...page.matchAll(/^#{1,6} (.+)$/gm)].map(([, heading]) => anchorOf(heading!));
  return new Set([...headings, ...[...page.matchAll(/<a id="([^"]+)">/g)].map(([, id]) => id!)]);
}

/** Pictures are taken of the running screens and come with a release. */
const isPicture = (path: string) => path.startsWith('docs/pictures/');

describe.each(PAGES)('the links of %s', (page) => {
  const text = read(page).replace(/```[\s\S]*?```/g, '');
  const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, link]) => link!).filter((link) => !/^[a-z]+:/.test(link));

  test('lead to files and headings that are there', () => {
    for (const link of links) {
      const [path = '', anchor] = link.split('#');
      const target = path === '' ? page : relative(ROOT, resolve(ROOT, dirname(page), path));
      if (isPicture(target) && !existsSync(join(ROOT, 'docs/pictures'))) continue;
      expect(existsSync(join(ROOT, target)), `${page} links to ${link}`).toBe(true);
      if (anchor !== undefined) expect([link, anchorsIn(read(target)).has(anchor)]).toEqual([link, true]);
    }
  });
}); // prettier-ignore

describe('docs/safety.md', () => {
  const page = read('docs/safety.md');
  const anchors = anchorsIn(page);

  test('has a heading for every caution that a law or a plan names', () => {
    const ofLaws = catalogue.CATALOGUE.flatMap(({ cautions }) => cautions ?? []);
    const ofPlans = [...read('src/plan/cautions.ts').matchAll(/key: '([a-z-]+)'/g)].map(([, key]) => key!);
    const keys = [...new Set([...ofLaws, ...ofPlans])].filter((key) => key !== 'own');
    expect(keys.length).toBeGreaterThan(2);
    for (const key of keys) expect([key, anchors.has(key)]).toEqual([key, true]);
  });

  test('calls nothing safe', () => expect(page).not.toMatch(/\b(safe|safely|harmless|no risk)\b/i));
});

describe('docs/glossary.md', () => {
  const terms = [...read('docs/glossary.md').matchAll(/^\*\*(.+?)\*\*/gm)].map(([, term]) => term!);

  test('has every limit of a plan', () => {
    const { shots, margins } = planShoot(readShootText(read('demo/shoot.yaml')).shoot);
    const titles = new Set([...shots.flatMap((shot) => shot.margins), ...margins].map(({ title }) => title));
    expect(terms).toEqual(expect.arrayContaining([...titles]));
  });

  test('is in the order of the alphabet, each term once', () => {
    const plain = terms.map((term) => term.toLowerCase());
    expect(plain).toEqual([...new Set(plain)].sort());
  });
});
