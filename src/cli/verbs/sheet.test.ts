import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import type { Verb } from '../command.ts';
import { sheetVerb } from './sheet.ts';

const DEMO = fileURLToPath(new URL('../../../demo/shoot.yaml', import.meta.url));

const folder = mkdtempSync(join(tmpdir(), 'longsecond-sheet-'));
afterAll(() => rmSync(folder, { recursive: true }));

function run(args: readonly string[], input = '') {
  const setUp = sheetVerb(Readable.from([Buffer.from(input)]), () => new Date('2027-03-09T07:30:00Z'));
  const verbs: readonly Verb[] = [{ name: 'sheet', says: 'sheet', load: () => Promise.resolve(setUp) }];
  return captureCommand(['sheet', ...args], verbs);
}

describe('sheets on the terminal', () => {
  test('the card of a shot, and of no other', async () => {
    const { code, out, err } = await run([DEMO, '--card', 'crown']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('One drop, the crown');
    expect(out).toMatch(/^Frame rate +2084 fps$/m);
    expect(out).not.toContain('Pour into the glass\n');
  });

  test('the card of every shot where none is named', async () => {
    const { out } = await run([DEMO, '--card']);
    expect(out.match(/^Shot card /gm)!.length).toBeGreaterThanOrEqual(5);
  });

  test('the plan', async () => {
    expect((await run([DEMO, '--plan'])).out).toMatch(/^Shots +\d+$/m);
  });

  test('the morning sheet of a duty, in the units asked for', async () => {
    const { out } = await run([DEMO, '--morning', 'light', '--units', 'imperial']);
    expect(out).toMatch(/\d fc/);
    expect(out).not.toMatch(/\d k?lx/);
  });
});

describe('sheets as PDF', () => {
  test('go to the file named, the same twice', async () => {
    const files = ['one.pdf', 'two.pdf'].map((name) => join(folder, name));
    for (const file of files) {
      const { code, out } = await run([DEMO, '--card', 'crown', '--size', 'letter', '-o', file]);
      expect([code, out]).toEqual([0, `1 sheet written to ${file}\n`]);
    }
    const [one, two] = files.map((file) => readFileSync(file));
    expect(one!.subarray(0, 8).toString()).toBe('%PDF-1.7');
    expect(Buffer.compare(one!, two!)).toBe(0);
  });

  test('that cannot be written are told, and nothing is left behind', async () => {
    const file = join(folder, 'no such folder', 'x.pdf');
    const { code, err } = await run([DEMO, '--plan', '-o', file]);
    expect([code, existsSync(file)]).toEqual([2, false]);
    expect(err).toContain('cannot be written');
  });
});

describe('exit codes', () => {
  test.each([
    ['no sheet asked for', [DEMO], 'Give one of --card, --plan, --morning, --cues, --day and --dressing'],
    [
      'two at once',
      [DEMO, '--plan', '--card', 'crown'],
      'Give one of --card, --plan, --morning, --cues, --day and --dressing',
    ],
    ['a shot there is not', [DEMO, '--card', 'crwn'], 'Did you mean crown?'],
    ['a duty there is not', [DEMO, '--morning', 'lihgt'], 'Did you mean light?'],
    ['a paper there is not', [DEMO, '--plan', '--size', 'a3'], 'a4, letter'],
    ['a file there is not', ['none.yaml', '--plan'], 'no such file'],
  ])('%s ends with 2 and says what to do', async (_, args, says) => {
    const { code, out, err } = await run(args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(says);
  });

  test('with --strict a short limit ends with 1, and without it with 0', async () => {
    expect((await run([DEMO, '--plan', '--strict'])).code).toBe(1);
    expect((await run([DEMO, '--plan'])).code).toBe(0);
  });

  test('a shoot with problems is printed all the same, its problems told, and ends with 2', async () => {
    const { code, out, err } = await run(['-', '--plan'], 'longsecond: 1\nshots:\n  a: { frameWdth: 80 mm }\n');
    expect(code).toBe(2);
    expect(out).toContain('The plan');
    expect(err).toContain('standard input:3:');
  });
});
