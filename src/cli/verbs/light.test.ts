import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { captureCommand } from '../../../test/captureCommand.ts';
import { changed } from '../../../test/shoots.ts';
import type { Written } from '../../document/written.ts';
import type { Verb } from '../command.ts';
import { lightVerb } from './light.ts';

const pathOf = (name: string) => fileURLToPath(new URL(`../../../${name}`, import.meta.url));
const LIT = pathOf('docs/guide/lit-shoot.yaml');
const LAMBERT = pathOf('test/photometry/lambert-1000cd.ies');

const folder = mkdtempSync(join(tmpdir(), 'longsecond-light-'));
afterAll(() => rmSync(folder, { recursive: true }));

function run(args: readonly string[], input = '') {
  const setUp = lightVerb(Readable.from([Buffer.from(input)]));
  const verbs: readonly Verb[] = [{ name: 'light', says: 'light', load: () => Promise.resolve(setUp) }];
  return captureCommand(['light', ...args], verbs);
}

const lit = parse(readFileSync(LIT, 'utf8')) as Written;
const shootWith = (changes: Readonly<Record<string, Written | undefined>>): string => stringify(changed(lit, changes));

describe('a photometric file', () => {
  test('is told with its light, its beam and its field', async () => {
    const { code, out, err } = await run([LAMBERT]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    // A matte disc of 1000 cd: π · 1000 lm, half at 60° either side; a tenth at arccos 0.1 = 84.26°.
    expect(out).toMatch(/^ {2}Light +314\d lm$/m);
    expect(out).toMatch(/^ {2}Beam, half +120\.0° across C0, 120\.0° across C90$/m);
    expect(out).toMatch(/^ {2}Field, tenth +168\.5° across C0/m);
    expect(out).toMatch(/^ {2}On its axis +1000 cd: 111 lx at 3 m$/m);
  });

  test('goes to programs under a schema that is named', async () => {
    const { out } = await run([LAMBERT, '--json']);
    const reply = JSON.parse(out) as { schema: string; file: Record<string, unknown> };
    expect(reply.schema).toBe('longsecond.light/1');
    expect(Object.keys(reply)[0]).toBe('schema');
    expect(reply.file).toMatchObject({ name: 'lambert-1000cd.ies', format: 'LM-63-2002', onAxis_cd: 1000, peak: { intensity_cd: 1000, gamma_deg: 0 } }); // prettier-ignore
    expect(reply.file['flux_lm']).toBeCloseTo(1000 * Math.PI, -1);
  });

  test('that is broken is refused at its line, with exit code 2', async () => {
    const file = join(folder, 'broken.ies');
    writeFileSync(file, 'IESNA:LM-63-2002\nTILT=NONE\n1 1000 one 3 1 1 2 0 0 0\n');
    const { code, out, err } = await run([file]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/broken\.ies:3\b/);
  });
});

describe('a shoot', () => {
  test('is told set-up by set-up: each lamp with its light, share and distance, and every shot in stops', async () => {
    const { code, out } = await run([LIT]);
    expect(code).toBe(0);
    expect(out).toMatch(/^ {3}Left +8\.9 klx, 91 %, at 2 m, 600 W$/m);
    expect(out).toMatch(/^ ! One drop +9\.8 klx for 35 klx, −1\.8 stops \(−2\.0 to −1\.7\), short$/m);
  });

  test('tells what each flag takes, or that it is taken away, and what one lacks', async () => {
    const flag = (change: Readonly<Record<string, Written | undefined>>) => run(['-'], shootWith(Object.fromEntries(Object.entries(change).map(([key, value]) => [`/lighting/key/flags/lens/${key}`, value]))));
    const { out } = await run([LIT]);
    // The fill gives 1.5 klx without it: what is taken and what is left are that.
    expect(out).toMatch(/^ {3}Lens flag +flag, takes 606 lx$/m);
    expect((await flag({ off: true })).out).toMatch(/^ {3}Fill +1\.5 klx.*\n {3}Lens flag +flag, taken away$/m);
    expect((await flag({ at: '-2 m, 1 m, 0 m' })).out).toMatch(/^ {3}Lens flag +flag, takes nothing at the subject$/m);
    const lacking = (await flag({ width: undefined })).out;
    expect(lacking).toContain('Missing: Width of Lens flag, at /lighting/key/flags/lens/width');
    expect(lacking).toMatch(/^ {3}Lens flag +flag, what it takes is unknown$/m);
  }); // prettier-ignore

  test('may come from standard input', async () => {
    expect((await run(['-'], readFileSync(LIT, 'utf8'))).out).toBe((await run([LIT])).out);
  });

  test('names what a lamp lacks, and where to write it', async () => {
    const { out, code } = await run(['-'], shootWith({ '/kit/lamps/spot/beam': undefined }));
    expect(code).toBe(0);
    expect(out).toContain('Missing: Beam angle of Left, at /kit/lamps/spot/beam');
  });

  test('has the photometric files that lie beside it, where they are what it says they are', async () => {
    const bytes = readFileSync(LAMBERT);
    cpSync(LAMBERT, join(folder, 'matte.ies'));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const withFile = (hash: string) => shootWith({ '/files': { matte: { name: 'matte.ies', sha256: hash } }, '/kit/lamps/spot/file': 'matte' });
    const lightOf = async (text: string) => {
      const file = join(folder, 'with-file.yaml');
      writeFileSync(file, text);
      return (await run([file])).out;
    };
    // 1000 cd from the square root of 4.2 m², whose cosine to the camera is 1.6 m over that: 1000 / 4.2 · 1.6 / 2.0494 = 185.9.
    expect(await lightOf(withFile(sha256))).toMatch(/^ {3}Left +186 lx,/m);
    expect(await lightOf(withFile('0'.repeat(64)))).toContain('Photometric file of Left');
  }); // prettier-ignore

  test('goes to programs with every set-up, and with what was found', async () => {
    const { out } = await run([LIT, '--find', 'least-power', '--json']);
    const reply = JSON.parse(out) as { schema: string; setups: { id: string; lamps: unknown[]; shots: unknown[]; found: { answers: { patch: unknown[]; reaches: boolean }[] } }[] };
    expect(reply.schema).toBe('longsecond.light/1');
    expect(reply.setups[0]).toMatchObject({ id: 'key', lamps: [{ id: 'left' }, { id: 'fill' }], flags: [{ id: 'lens', isOff: false, hidesFace: false }], shots: [{ id: 'drop', state: 'short' }] });
    expect(reply.setups[0]!.found.answers[0]).toMatchObject({ reaches: true, patch: [{ op: 'add' }] });
  }); // prettier-ignore

  test('gives what to write, and once it is written nothing is short', async () => {
    const { out } = await run([LIT, '--find', 'least-power']);
    const [first = ''] = /^ +lighting:\n(?: {8}.*\n)+/m.exec(out) ?? [];
    const more = parse(first.replace(/^ {6}/gm, '')) as { lighting: { key: { lamps: Record<string, Written> } } };
    const changes = Object.entries(more.lighting.key.lamps).map(([id, lamp]) => [`/lighting/key/lamps/${id}`, lamp] as const); // prettier-ignore
    expect(changes.length).toBeGreaterThan(0);
    const after = await run(['-', '--strict'], shootWith(Object.fromEntries(changes)));
    expect(after.code).toBe(0);
    expect(after.out).not.toContain(' ! ');
  });
});

describe('exit codes', () => {
  test.each([
    ['1 with --strict where a shot lacks light', [LIT, '--strict'], 1, ''],
    ['0 with --strict where lamps are found for it', [LIT, '--strict', '--find', 'fewest'], 0, ''],
    ['2 for a set-up that is not there', [LIT, '--setup', 'kei'], 2, 'Did you mean key?'],
    ['2 for a wish that nobody has', [LIT, '--find', 'cheap'], 2, 'least-power'],
    ['2 for a spare that is no number', [LIT, '--spare', 'much'], 2, '--spare takes a number from 0 to 10'],
    ['2 for a file that is not there', [join(folder, 'none.ies')], 2, 'no such file'],
  ])('%s', async (_, args, code, says) => {
    const told = await run(args);
    expect(told.code).toBe(code);
    expect(told.err).toContain(says);
  });

  test('2 where the shoot has a problem, after all that could be told', async () => {
    const { code, out, err } = await run(['-'], shootWith({ '/kit/lamps/spot/power': '600' }));
    expect(code).toBe(2);
    expect(out).toContain('Key from the side');
    expect(err).toContain('/kit/lamps/spot/power');
  });
});

test('the guide shows what the command prints', async () => {
  const guide = readFileSync(pathOf('docs/guide/light.md'), 'utf8');
  const shown = [...guide.matchAll(/```text\n\$ longsecond light (.+)\n([\s\S]*?)```/g)];
  expect(shown.length).toBeGreaterThan(1);
  for (const [, args = '', text = ''] of shown) {
    const { out } = await run(args.split(' ').map((word) => (word === 'lit-shoot.yaml' ? LIT : word === 'lambert.ies' ? LAMBERT : word))); // prettier-ignore
    const printed = out.split('\n').map((line) => line.trimEnd());
    for (const line of text.split('\n').filter((each) => each.trim() !== '' && each.trim() !== '…')) expect(printed, args).toContain(line.trimEnd()); // prettier-ignore
  }
});
