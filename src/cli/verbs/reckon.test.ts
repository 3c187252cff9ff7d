import { describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { CATALOGUE, SUBJECTS } from '../../laws/catalogue.ts';
import type { Verb } from '../command.ts';
import { setUpReckon } from './reckon.ts';

const VERBS: readonly Verb[] = [{ name: 'reckon', says: 'work out a law', load: () => Promise.resolve(setUpReckon) }];

const reckon = (...args: readonly string[]) => captureCommand(['reckon', ...args], VERBS);

/** 250 lx·s × 8² × 2000 / 800 is 40,000 lx by hand. */
const LIGHT = ['light-needed', 'stop=T8', 'exposureTime_s=1/2000 s', 'isoSpeed=800'] as const;

interface Reply {
  readonly [key: string]: unknown;
  readonly given: Readonly<Record<string, unknown>>;
  readonly results: Readonly<Record<string, number>>;
}

async function reply(...args: readonly string[]): Promise<Reply> {
  const { code, out, err } = await reckon(...args, '--json');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out) as Reply;
}

describe('working a law out', () => {
  test('prints each input as read, what was left to its default, and the result', async () => {
    const { code, out, err } = await reckon(...LIGHT);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/Stop +T8\n/);
    expect(out).toMatch(/Exposure time +500 µs {2}from 1\/2000 s\n/);
    expect(out).toMatch(/Meter constant +250 lx·s {2}left to its default\n/);
    expect(out).toMatch(/Illuminance on the subject +40 klx\n/);
  });

  test('reads an input whose name leaves out the unit', async () => {
    const { results } = await reply('light-needed', 'stop=8', 'exposureTime=1/2000 s', 'isoSpeed=800');
    expect(results).toEqual({ illuminance_lx: 40_000 });
  });

  test('reads an input in another unit than its name, and shows the other units when asked', async () => {
    const { out } = await reckon(
      'stop-allowed',
      'illuminance=3716 fc',
      'exposureTime=0.5 ms',
      'isoSpeed=800',
      '--imperial',
    );
    expect(out).toMatch(/Illuminance on the subject +3716 fc\n/);
    expect(out).toMatch(/Stop +T8\n/);
  });

  test('reads a focal length to millimetres, as its name says', async () => {
    const { given } = await reply(
      'hyperfocal-distance',
      'focalLength=3.5 cm',
      'fNumber=f/11',
      'circleOfConfusion=25 µm',
    );
    expect(given['focalLength_mm']).toBeCloseTo(35, 12);
    expect(given['circleOfConfusion_m']).toBeCloseTo(25e-6, 18);
  });

  test('says that a depth without end is infinite', async () => {
    const { out } = await reckon(
      'depth-far',
      'focalLength=10 mm',
      'magnificationRatio=0.001',
      'fNumber=f/16',
      'circleOfConfusion=50 µm',
    );
    expect(out).toContain('infinite');
  });
});

describe('--json', () => {
  test('begins with its schema and carries names with units, defaults, sources and how they were seen', async () => {
    const { out } = await reckon(...LIGHT, '--json');
    expect(out.startsWith('{\n  "schema": "longsecond.reckon/1",\n')).toBe(true);
    const parsed = JSON.parse(out) as Reply;
    expect(Object.keys(parsed)).toEqual([
      'schema',
      'law',
      'title',
      'equation',
      'given',
      'defaulted',
      'results',
      'shown',
      'assumed',
      'sources',
      'cautions',
    ]);
    expect(parsed).toMatchObject({
      law: 'light-needed',
      given: { exposureTime_s: 0.0005, isoSpeed: 800 },
      defaulted: { meterConstant_lx_s: 250 },
      results: { illuminance_lx: 40_000 },
      shown: { illuminance_lx: '40 klx' },
      sources: [{ key: 'iso-2720', seen: 'memory' }, { key: 'ev-table' }],
      cautions: ['intense-light'],
    });
  });

  test('lists the laws with their subject', async () => {
    const { out } = await reckon('--list', '--json');
    expect(out.startsWith('{\n  "schema": "longsecond.reckon-list/1",\n')).toBe(true);
    const { laws } = JSON.parse(out) as { readonly laws: readonly object[] };
    expect(laws).toHaveLength(CATALOGUE.length);
    expect(laws[0]).toEqual({
      id: CATALOGUE[0]!.id,
      title: CATALOGUE[0]!.title,
      says: CATALOGUE[0]!.says,
      subject: SUBJECTS[0]!.title,
    });
  });
});

describe('the list and the help', () => {
  test('--list names every law under its subject', async () => {
    const { code, out } = await reckon('--list');
    expect(code).toBe(0);
    for (const { title } of SUBJECTS) expect(out).toContain(`${title}\n`);
    for (const { id } of CATALOGUE) expect(out).toMatch(new RegExp(`^ {2}${id} `, 'm'));
  });

  test('--list with a word names only the laws that speak of it', async () => {
    const { out } = await reckon('--list', 'footcandles');
    expect(out).toContain('light-needed');
    expect(out).not.toContain('hyperfocal');
  });

  test('--help on a law tells inputs, equation, validity, sources as seen, cautions and an example', async () => {
    const { code, out } = await reckon('light-needed', '--help');
    expect(code).toBe(0);
    expect(out).toContain('E = C · N² / (t · S)');
    expect(out).toMatch(/exposureTime_s +Exposure time: a time, like 1\/2000 s/);
    expect(out).toMatch(/meterConstant_lx_s .*250 lx·s if left out/);
    expect(out).toContain('Distant focus');
    expect(out).toMatch(/iso-2720 .*\(from memory, not looked up\)/);
    expect(out).toContain('intense-light');
    expect(out).toContain("longsecond reckon light-needed stop=T8 exposureTime_s='1/2000 s' isoSpeed=800");
    expect(out).toContain('40 klx');
  });

  test('--help alone tells how the verb is used', async () => {
    const { code, out } = await reckon('--help');
    expect(code).toBe(0);
    expect(out).toContain('--list');
  });

  test.each(CATALOGUE.map(({ id }) => [id]))('the example in the help of %s can be typed as it stands', async (id) => {
    const { out } = await reckon(id, '--help');
    const line = out.split('\n').find((text) => text.startsWith(`  longsecond reckon ${id}`))!;
    const words = [...line.matchAll(/(\w+)=(?:'((?:[^']|'\\'')*)'|(\S+))/g)];
    const pairs = words.map(([, name, quoted, bare]) => `${name}=${quoted?.replaceAll("'\\''", "'") ?? bare}`);
    expect(await reckon(id, ...pairs)).toMatchObject({ code: 0, err: '' });
  });
});

describe('what is refused', () => {
  test.each([
    ['no law', [], 'No law is named', '--list'],
    ['a law nearly named', ['light-neded'], 'There is no law "light-neded"', 'Did you mean light-needed?'],
    ['a word of the trade for a law', ['footcandles-incident-zzz'], 'There is no law', '--list'],
    ['numbers without their law', ['stop=8'], 'The law comes before its numbers', '--list'],
    ['help on no law', ['xyzzy-plugh', '--help'], 'There is no law "xyzzy-plugh"', '--list'],
    ['a word nobody speaks of', ['--list', 'xyzzy'], 'No law speaks of "xyzzy"', 'shorter word'],
    ['an unknown option', [...LIGHT, '--jsno'], "Unknown option '--jsno'", 'Did you mean --json?'],
    ['an input without a value', ['light-needed', 'stop'], '"stop" is not written as name=value', 'stop=T8'],
    ['an input given twice', [...LIGHT, 'exposureTime=1 ms'], 'exposureTime_s is given twice', 'Leave one'],
    ['an unknown input', [...LIGHT, 'isoSped=3'], 'did you mean isoSpeed?', 'light-needed --help'],
    [
      'a bare number where a unit is needed',
      ['light-needed', 'stop=8', 'exposureTime=2', 'isoSpeed=1'],
      'needs a unit',
      'help',
    ],
    [
      'a unit of another kind',
      ['light-needed', 'stop=8', 'exposureTime=2 m', 'isoSpeed=1'],
      'measures a length',
      'help',
    ],
    [
      'a number outside the law',
      ['light-needed', 'stop=8', 'exposureTime=1 s', 'isoSpeed=0'],
      'isoSpeed must be',
      'help',
    ],
  ])('%s ends with 2 and says what, where and how to mend it', async (_, args, what, mend) => {
    const { code, out, err } = await reckon(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(what);
    expect(err).toMatch(/\n {2}where {2}\S/);
    expect(err.slice(err.indexOf('\n  mend'))).toContain(mend);
  });

  test('every input that is missing is named at once', async () => {
    const { code, err } = await reckon('light-needed');
    expect(code).toBe(2);
    expect(err.match(/ is needed/g)).toHaveLength(3);
  });

  test('a name that every object has is no input and no choice', async () => {
    expect((await reckon(...LIGHT, 'constructor=1')).code).toBe(2);
    expect((await reckon('toString')).code).toBe(2);
  });
});
