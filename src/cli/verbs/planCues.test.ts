/** Cues and triggers on the command: as the guide shows them, rolled by chance, and for programs. */
import { readFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { PlanReply } from '../../turnover/planSchema.ts';
import type { Verb } from '../command.ts';
import { planVerb } from './plan.ts';

const pathOf = (name: string) => fileURLToPath(new URL(`../../../${name}`, import.meta.url));
const SHOOT = pathOf('docs/guide/cues-shoot.yaml');

function run(args: readonly string[]) {
  const setUp = planVerb(Readable.from([]));
  const verbs: readonly Verb[] = [{ name: 'plan', says: 'plan', load: () => Promise.resolve(setUp) }];
  return captureCommand(['plan', ...args], verbs);
}

const guide = readFileSync(pathOf('docs/guide/cues.md'), 'utf8');
const shown = [...guide.matchAll(/```text\n\$ longsecond plan (.+)\n([\s\S]*?)```/g)].map(([, args = '', text = '']) => ({ args, text })); // prettier-ignore

test('the guide shows what the command prints', async () => {
  expect(shown.length).toBeGreaterThan(4);
  for (const { args, text } of shown) {
    const { code, out, err } = await run(args.split(' ').map((word) => (word === 'cues-shoot.yaml' ? SHOOT : word)));
    expect([args, code, err]).toEqual([args, 0, '']);
    const printed = out.split('\n');
    for (const line of text.split('\n').filter((each) => each.trim() !== '' && each.trim() !== '…')) expect(printed, args).toContain(line); // prettier-ignore
  }
});

async function reply(...args: readonly string[]) {
  const { code, out } = await run([SHOOT, '--json', ...args]);
  expect(code).toBe(0);
  return PlanReply.parse(JSON.parse(out)).shots[0]!;
}

describe('for programs', () => {
  test('the timing is in the reply, in its form, with nothing that the form does not have', async () => {
    const { timing, sampled } = await reply();
    expect(timing!.cues.map(({ id }) => id)).toEqual(['berry', 'drop', 'jet']);
    expect(timing!.cues[0]!.afterFirst_s).toBe(0);
    expect(timing!.meeting).toMatchObject({ at_s: 0.04, tolerance_s: 0.004, dominant: 'berry', isAssumed: true });
    expect(timing!.trigger).toMatchObject({ by: 'person', isFixed: false, wantedFraction: 0.95 });
    expect(timing!.memory!.partitionCount).toBe(4);
    expect(timing!.safety.map(({ rig }) => rig)).toEqual(['latch', 'dropper', 'jet']);
    expect(sampled).toBeUndefined();
  });

  test('the takes that were rolled are there when they were asked for', async () => {
    const { sampled } = await reply('--rolls', '500');
    expect(sampled).toMatchObject({ sampleCount: 500, seedCount: 7 });
    expect(sampled!.all.shareFraction).toBeLessThanOrEqual(sampled!.inMemory!.shareFraction);
    expect((await reply('--rolls', '500')).sampled).toEqual(sampled);
    expect((await reply('--rolls', '500', '--seed', '8')).sampled).toMatchObject({ seedCount: 8 });
  });

  test.each(['meeting', 'trigger-catch', 'cue0Fire_s'])('%s is explained', async (name) => {
    const { code, out } = await run([SHOOT, '--shot', 'meet', '--explain', name]);
    expect(code).toBe(0);
    expect(out).toMatch(/written at \/(shots\/meet|kit\/rigs)\//);
  });
});

test.each([
  ['--rolls', '0'],
  ['--rolls', 'many'],
  ['--rolls', '2.5'],
  ['--rolls', '99999999'],
])('%s %s is refused with what to write', async (option, text) => {
  const { code, err } = await run([SHOOT, option, text]);
  expect(code).toBeGreaterThan(0);
  expect(err).toMatch(/expected a whole number from 1 to 1000000/);
  expect(err).toMatch(/such as --rolls 4000/);
});

test('--seed that is no seed is refused', async () => {
  const { code, err } = await run([SHOOT, '--rolls', '10', '--seed', '-1']);
  expect(code).toBeGreaterThan(0);
  expect(err).toMatch(/whole number from 0/);
});

test('--seed without anything to draw is refused', async () => {
  const { code, err } = await run([SHOOT, '--seed', '3']);
  expect(code).toBeGreaterThan(0);
  expect(err).toMatch(/Add --rolls/);
});

test('a shot without cues or trigger prints neither', async () => {
  const { out } = await run([pathOf('docs/guide/lit-shoot.yaml'), '--rolls', '100']);
  expect(out).not.toMatch(/Cues, from the first signal|Trigger by|Rolled/);
});
