import { readFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { TWO_SHOTS } from '../../../test/days.ts';
import { changed } from '../../../test/shoots.ts';
import type { Written } from '../../document/written.ts';
import { DayReply } from '../../turnover/planSchema.ts';
import type { Verb } from '../command.ts';
import { dayVerb } from './day.ts';

const pathOf = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const DAY = pathOf('docs/guide/day-shoot.yaml');

function run(args: readonly string[], input = '') {
  const setUp = dayVerb(Readable.from([Buffer.from(input)]));
  const verbs: readonly Verb[] = [{ name: 'day', says: 'day', load: () => Promise.resolve(setUp) }];
  return captureCommand(['day', ...args], verbs);
}

const twoShots = (changes: Readonly<Record<string, Written | undefined>> = {}): string =>
  JSON.stringify(changed(TWO_SHOTS, changes));

describe('the day', () => {
  test('is printed for eyes, its end first', async () => {
    const { code, out, err } = await run(['-', '--days', '20'], twoShots({ '/shoot/day/wrap': '03:00' }));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(
      '20 days drawn from seed 41, in the order that was fixed\n\nNine days in ten, wrap by 02:01;',
    );
    expect(out).toMatch(/\n +1 {2}00:00 {3}00:52 {2}00:52 {2}2 +One {2}first of the day\n/);
    expect(out).toMatch(/\n +Changing over +1 h 15 min {2}62 %\n/);
    expect(out).toMatch(/\n {3}Raid +saves +6\.22 GB of 1 TB free\n/);
  });

  test('is one object for programs', async () => {
    const { code, out } = await run(['-', '--days', '20', '--json'], twoShots());
    const reply = DayReply.parse(JSON.parse(out));
    expect(code).toBe(0);
    expect(reply).toMatchObject({ schema: 'longsecond.day/1', dayCount: 20, wrap: { early_s: 7260, middle_s: 7260, late_s: 7260 } }); // prettier-ignore
  });

  test('is a table with a row a shot', async () => {
    const { out } = await run(['-', '--csv'], twoShots());
    const [head, ...rows] = out.trimEnd().split('\r\n');
    expect(head).toMatch(/^place,shot,title,/);
    expect(rows.map((row) => row.split(',').slice(0, 3))).toEqual([['1', 'one', 'One'], ['2', 'two', 'Two']]); // prettier-ignore
  });

  test('is another of another seed, and the same of the same', async () => {
    const of = async (seed: string) => (await run([DAY, '--seed', seed, '--days', '30'])).out;
    expect(await of('1')).toBe(await of('1'));
    expect(await of('1')).not.toBe(await of('2'));
  });

  test('of a shoot without shots says where they are written', async () => {
    const { code, out } = await run(['-'], 'longsecond: 1\n');
    expect(code).toBe(0);
    expect(out).toContain('No shots yet');
  });
});

describe('ends with', () => {
  test.each([
    ['1 with --strict where it runs over too often', [DAY, '--strict'], '', 1, ''],
    ['0 with --strict where it ends in time', ['-', '--strict'], twoShots({ '/shoot/day/wrap': '03:00' }), 0, ''],
    ['0 with --strict where no wrap is set', ['-', '--strict'], twoShots(), 0, ''],
    ['2 for no number of days', [DAY, '--days', 'some'], '', 2, '--days takes a whole number from 1 to 100000'],
    ['2 for half a day', [DAY, '--days', '0.5'], '', 2, '--days'],
    ['2 for a seed below nought', [DAY, '--seed=-1'], '', 2, '--seed takes a whole number from 0 to 4294967295'],
    ['2 for two forms at once', [DAY, '--json', '--csv'], '', 2, '--csv'],
    ['2 for a file that is not there', ['none.yaml'], '', 2, 'no such file'],
    ['2 where the shoot has a problem, after all that could be told', ['-'], twoShots({ '/shoot/day/usual/roll': '1' }), 2, '/shoot/day/usual/roll'], // prettier-ignore
  ] as const)('%s', async (_, args, input, code, says) => {
    const told = await run(args, input);
    expect(told.code).toBe(code);
    expect(told.err).toContain(says);
    expect(told.out === '').toBe(code === 2 && !says.startsWith('/'));
  });
});

test('the guide shows what the command prints', async () => {
  const guide = readFileSync(pathOf('docs/guide/day.md'), 'utf8');
  const shown = [...guide.matchAll(/```text\n\$ longsecond day (.+)\n([\s\S]*?)```/g)];
  expect(shown.length).toBeGreaterThan(1);
  const { out, err } = await run([DAY]);
  expect(err).toBe('');
  const printed = out.split('\n').map((line) => line.trimEnd());
  for (const [, args, text = ''] of shown) {
    expect(args).toBe('day-shoot.yaml');
    for (const line of text.split('\n').filter((each) => each.trim() !== '' && each.trim() !== '…')) expect(printed).toContain(line.trimEnd()); // prettier-ignore
  }
});
