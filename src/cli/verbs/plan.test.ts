import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { LIMITS } from '../../plan/types.ts';
import { PlanReply, TraceReply } from '../../turnover/planSchema.ts';
import type { Verb } from '../command.ts';
import { planVerb } from './plan.ts';

const DEMO = fileURLToPath(new URL('../../../demo/shoot.yaml', import.meta.url));
const demoText = readFileSync(DEMO, 'utf8');

const folder = mkdtempSync(join(tmpdir(), 'longsecond-plan-'));
afterAll(() => rmSync(folder, { recursive: true }));

let count = 0;
function written(text: string): string {
  const file = join(folder, `shoot-${(count += 1)}.yaml`);
  writeFileSync(file, text);
  return file;
}

function run(args: readonly string[], input = '') {
  const setUp = planVerb(Readable.from([Buffer.from(input)]));
  const verbs: readonly Verb[] = [{ name: 'plan', says: 'plan', load: () => Promise.resolve(setUp) }];
  return captureCommand(['plan', ...args], verbs);
}

/** The demo with a word of it replaced; a test that no longer finds its word fails. */
function demoWith(...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => {
    expect(text).toContain(from);
    return text.replace(from, to);
  }, demoText);
}

describe('the plan', () => {
  test('is printed for eyes and ends with 0, short or not', async () => {
    const { code, out, err } = await run([DEMO]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('1  Pour into the glass  pour-1\n');
    expect(out).toMatch(/\n {3}! Light .* klx for .* short/);
    expect(out.endsWith('\n')).toBe(true);
  });

  test('is the same from standard input', async () => {
    expect(await run(['-'], demoText)).toEqual(await run([DEMO]));
  });

  test('of one shot alone holds no other', async () => {
    const { code, out } = await run([DEMO, '--shot', 'crown']);
    expect(code).toBe(0);
    expect(out).toContain('2  One drop, the crown');
    expect(out).not.toContain('Pour into the glass  pour-1');
  });

  test('with --ways names a change, what it gains and what to write', async () => {
    const { code, out } = await run([DEMO, '--shot', 'crown', '--ways']);
    expect(code).toBe(0);
    expect(out).toMatch(/Ways to close Light .*−\d/);
    expect(out).toMatch(/1 {2}.*: \+\d\.\d, closes it/);
    expect(out).toMatch(/write \/(shots\/crown|lighting)\//);
  });

  test('is shown in feet and footcandles where the shoot asks for them', async () => {
    const { out } = await run([written(demoWith(['units: metric', 'units: imperial']))]);
    expect(out).toMatch(/Light +\d+ fc for \d+ fc/);
    expect(out).toMatch(/ at \S+ (ft|in), \S+ (ft|in) clear/);
    expect(out.match(/^ {5}.* \d\S* (k?lx|mm) (for|of) /m)).toBeNull();
  });

  test('of JSON is that of the same YAML', async () => {
    const json = JSON.stringify({ longsecond: 1, shoot: { title: 'Alike' }, shots: { a: { depth: '3 mm' } } });
    const yaml = 'longsecond: 1\nshoot: { title: Alike }\nshots:\n  a:\n    depth: 3 mm\n';
    expect(await run(['-'], json)).toEqual(await run(['-'], yaml));
  });
});

describe('--strict', () => {
  test('ends with 1 when a limit is short', async () => {
    expect((await run([DEMO, '--strict'])).code).toBe(1);
  });

  test('looks only at what was asked for', async () => {
    expect((await run([DEMO, '--strict', '--shot', 'pour-1'])).code).toBe(0);
    expect((await run([DEMO, '--strict', '--shot', 'crown'])).code).toBe(1);
  });

  test('takes what is unknown for no shortfall', async () => {
    expect((await run(['-', '--strict'], 'longsecond: 1\nshots:\n  a: { depth: 3 mm }\n')).code).toBe(0);
  });
});

describe('--json', () => {
  test('begins with its schema and fits it', async () => {
    const { code, out, err } = await run([DEMO, '--json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.startsWith('{\n  "schema": "longsecond.plan/1",\n')).toBe(true);
    expect(PlanReply.safeParse(JSON.parse(out)).error).toBeUndefined();
  });

  test('with a trace begins with its own', async () => {
    const { out } = await run([DEMO, '--shot', 'crown', '--explain', 'depth', '--json']);
    expect(out.startsWith('{\n  "schema": "longsecond.trace/1",\n')).toBe(true);
    const { traces } = TraceReply.parse(JSON.parse(out));
    expect(traces.map(({ name }) => name)).toEqual(['depth_m', 'depthWanted_m']);
  });

  test('carries the problems, and still ends with 2', async () => {
    const { code, out, err } = await run([written(demoWith(['blur: 4 px', 'blur: 4'])), '--json']);
    expect(code).toBe(2);
    expect(PlanReply.parse(JSON.parse(out)).problems).toMatchObject([{ path: '/shots/crown/blur' }]);
    expect(err).toContain('/shots/crown/blur');
  });
});

describe('--explain', () => {
  test('of a limit takes both its figures apart, down to what is written', async () => {
    const { code, out } = await run([DEMO, '--shot', 'crown', '--explain', 'light']);
    expect(code).toBe(0);
    expect(out).toMatch(/^Illuminance on the subject {2}62 klx {2}\[illuminance_lx\]\n/);
    expect(out).toMatch(/\nIlluminance needed {2}\S+ klx {2}\[lightNeeded_lx\]\n/);
    expect(out).toMatch(/\(law [a-z-]+\): /);
    expect(out).toContain('the reading counts, and its lamps are as the reading confirms');
    expect(out).toContain('written at /shots/crown/frameWidth');
    expect(out).toContain('assumed: ');
  });

  test('of a number by its name takes that one apart', async () => {
    const { out } = await run([DEMO, '--shot', 'crown', '--explain', 'exposureTime_s']);
    expect(out).toMatch(/^Shutter {2}1\/\d+ s {2}\[exposureTime_s\]\n/);
  });

  test('answers to every limit of every shot of the demo', async () => {
    const reply = PlanReply.parse(JSON.parse((await run([DEMO, '--json'])).out));
    for (const { id } of reply.shots[0]!.margins) {
      const { code, out } = await run([DEMO, '--shot', 'pour-1', '--explain', id]);
      expect({ id, code, isLong: out.length > 40 }).toEqual({ id, code: 0, isLong: true });
    }
  });
});

describe('a shoot with problems', () => {
  const broken = demoWith(['screenTime: 7 s', 'screenTme: 7 s'], ['lighting: top-key', 'lighting: topkey']);

  test('is planned as far as it goes, tells each problem with its place and nearest name, and ends with 2', async () => {
    const file = written(broken);
    const { code, out, err } = await run([file]);
    expect(code).toBe(2);
    expect(out).toContain('No settings yet');
    expect(out).toContain('Time on screen, not written yet: /shots/pour-1/screenTime');
    const lines = err.trimEnd().split('\n');
    expect(lines[0]).toBe('2 problems: what rests on it is unknown');
    const line = broken.split('\n').findIndex((text) => text.includes('screenTme')) + 1;
    expect(lines[1]).toMatch(new RegExp(`^${file}:${line}:5: /shots/pour-1/screenTme: .*did you mean screenTime\\?$`));
    expect(lines[2]).toMatch(/:\d+:\d+: \/shots\/crown\/lighting: .*"topkey".*did you mean top-key\?$/);
  });

  test('ends with 2 rather than 1 with --strict', async () => {
    expect((await run([written(broken), '--strict'])).code).toBe(2);
  });

  test('tells its problems also when the shot asked for is not there', async () => {
    const { code, err } = await run([written(broken), '--shot', 'crwn']);
    expect(code).toBe(2);
    expect(err).toContain('2 problems');
    expect(err).toContain('Did you mean crown?');
  });
});

describe('what is refused, with 2 and on standard error alone', () => {
  test.each([
    ['no file', [], 'file'],
    ['a file that is not there', ['nowhere.yaml'], 'There is no such file'],
    ['a folder', [tmpdir()], 'folder'],
    ['an unknown shot', [DEMO, '--shot', 'crwn'], 'Did you mean crown?'],
    ['a shot like no other', [DEMO, '--shot', 'zzzzzzzzzz'], 'The shots are pour-1, crown'],
    ['a name every object has', [DEMO, '--shot', 'constructor'], 'There is no shot "constructor"'],
    ['an explanation for no shot', [DEMO, '--explain', 'light'], 'Add --shot'],
    ['an unknown number', [DEMO, '--shot', 'crown', '--explain', 'lightNeded_lx'], 'Did you mean lightNeeded_lx?'],
    ['a limit the shot does not have', [DEMO, '--shot', 'crown', '--explain', 'storage'], 'no limit of this shot'],
    ['an unknown option', [DEMO, '--wyas'], 'Did you mean --ways?'],
  ])('%s', async (_, args, says) => {
    const { code, out, err } = await run(args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(err).not.toMatch(/\n {4}at /);
  });

  test.each([
    ['text that breaks off', 'longsecond: 1\nshots: [\n', /:3:1\n/],
    ['a key that stands twice', 'longsecond: 1\nshots: {}\nshots: {}\n', /:3:1\n/],
    ['an anchor', 'longsecond: 1\nshoot: &a { title: x }\n', /:2:8\n/],
    ['a newer version', 'longsecond: 99\n', /version 99/],
    ['no shoot at all', 'hello\n', /longsecond: 1/],
    ['nothing', '', /longsecond: 1/],
  ])('%s, with the file and the place', async (_, text, says) => {
    const file = written(text);
    const { code, out, err } = await run([file]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(file);
    expect(err).toMatch(says);
  });
});

test('the help names every option', async () => {
  const { code, out } = await run(['--help']);
  expect(code).toBe(0);
  for (const option of ['--shot', '--ways', '--explain', '--json', '--strict']) expect(out).toContain(option);
});

test('no id of a limit is the name of an option or a number', () => {
  for (const id of LIMITS) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
});

describe('lamps', () => {
  test('that a search finds for a short light stand after the plan’s own ways, marked and numbered on', async () => {
    const { out } = await run([DEMO, '--shot', 'honey', '--ways']);
    const [, ways = ''] = /^ +Ways to close Light .+\n((?: {4,}.+\n)+)/m.exec(out) ?? [];
    const marked = [...ways.matchAll(/^ +(\d+) {2}Add .+: \+[\d.]+, closes it\n +found by searching the lamps of the kit$/gm)];
    expect(marked.length).toBeGreaterThan(0);
    const own = [...ways.slice(0, marked[0]!.index).matchAll(/^ +(\d+) {2}\S/gm)];
    expect(Number(marked[0]![1])).toBe(own.length + 1);
    const { out: reply } = await run([DEMO, '--shot', 'honey', '--ways', '--json']);
    expect(PlanReply.parse(JSON.parse(reply))).toBeTruthy();
    expect(reply).toContain('"search-lamps"');
  });

  test('have the photometric files that lie beside the shoot', async () => {
    const bytes = readFileSync(new URL('../../../test/photometry/lambert-1000cd.ies', import.meta.url));
    writeFileSync(join(folder, 'matte.ies'), bytes);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const lit = (hash: string, name = 'matte.ies') =>
      demoWith(['  soft-90:\n', '  soft-90:\n      file: matte\n'], ['\nlighting:\n', `\nfiles: { matte: { name: ${name}, sha256: ${hash} } }\nlighting:\n`]);
    const lightOf = async (text: string) => /^.*\bLight .*$/m.exec((await run([written(text), '--shot', 'honey'])).out)?.[0];
    expect(await lightOf(lit(sha256))).toMatch(/Light +\d.* klx/);
    expect(await lightOf(lit('0'.repeat(64)))).toMatch(/unknown/);
    expect((await run([written(lit(sha256, 'gone.ies')), '--shot', 'honey'])).out.replace(/\s+/g, ' ')).toContain('gone.ies does not lie beside the shoot');
  });
}); // prettier-ignore
