import { describe, expect, test } from 'vitest';
import { Fault } from '../base/fault.ts';
import type { Verb } from './command.ts';
import { captureCommand } from '../../test/captureCommand.ts';

const BROKEN = new Fault({ code: 'roll.broken', what: 'The roll is broken', where: 'roll 3', mend: 'Load another.' });

const VERBS: readonly Verb[] = [
  {
    name: 'greet',
    says: 'say good morning',
    load: () =>
      Promise.resolve((command, { terminal, endWith, complain }) => {
        command
          .argument('[name]')
          .option('--loud', 'in capitals')
          .action((name: string | undefined, { loud }: { readonly loud?: true }) => {
            if (name === 'nobody') throw BROKEN;
            if (name === 'oops') throw new TypeError('cannot read properties of undefined');
            if (name === 'short') endWith(1);
            if (name === 'both') for (const fault of [BROKEN, BROKEN]) complain(fault);
            terminal.out(`good morning ${loud ? (name ?? '').toUpperCase() : (name ?? '')}\n`);
          });
      }),
  },
  { name: 'sleep', says: 'say good night', load: () => Promise.reject(new Error('loaded although not asked for')) },
];

const run = (...args: readonly string[]) => captureCommand(args, VERBS);

describe('what the command does', () => {
  test('a verb runs with its arguments and options, and ends with 0', async () => {
    expect(await run('greet', 'crew', '--loud')).toEqual({ code: 0, out: 'good morning CREW\n', err: '' });
  });

  test('a verb may end with a code of its own', async () => {
    expect((await run('greet', 'short')).code).toBe(1);
  });

  test.each([[[]], [['--help']], [['-h']], [['help']]])('%j lists the verbs without loading one', async (args) => {
    const { code, out, err } = await run(...args);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/greet .*say good morning/);
    expect(out).toMatch(/sleep .*say good night/);
  });

  test.each([[['greet', '--help']], [['help', 'greet']]])('%j tells what the verb takes', async (args) => {
    const { code, out } = await run(...args);
    expect(code).toBe(0);
    expect(out).toContain('--loud');
  });

  test('the version is that of the package', async () => {
    const { code, out } = await run('--version');
    expect(code).toBe(0);
    expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

describe('what the command refuses', () => {
  test.each([
    ['an unknown verb', ['greeet'], 'There is no verb "greeet"', 'Did you mean longsecond greet?'],
    ['a verb like no other', ['zzzzzzzz'], 'There is no verb "zzzzzzzz"', 'The verbs are greet, sleep.'],
    ['help on an unknown verb', ['help', 'gret'], 'There is no verb "gret"', 'Did you mean longsecond greet?'],
    ['an unknown option of a verb', ['greet', '--lood'], "Unknown option '--lood'", 'Did you mean --loud?'],
    ['an unknown option before any verb', ['--loud'], "Unknown option '--loud'", '`longsecond --help` shows'],
    ['an argument too many', ['greet', 'a', 'b'], 'Too many arguments', '`longsecond greet --help` shows'],
  ])('%s ends with 2, on standard error, with what, where and mend', async (_, args, what, mend) => {
    const { code, out, err } = await run(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(what);
    expect(err).toMatch(/\n {2}where {2}longsecond/);
    expect(err).toMatch(/\n {2}mend {3}/);
    expect(err).toContain(mend);
  });

  test('a fault thrown by a verb is told once, and ends with 2', async () => {
    const { code, err } = await run('greet', 'nobody');
    expect(code).toBe(2);
    expect(err).toBe('Not done: The roll is broken\n  where  roll 3\n  mend   Load another.\n');
  });

  test('several faults are each told', async () => {
    const { code, err } = await run('greet', 'both');
    expect(code).toBe(2);
    expect(err.match(/Not done:/g)).toHaveLength(2);
  });

  test('a bug is called one, without a stack, and ends with a code that no input earns', async () => {
    const { code, out, err } = await run('greet', 'oops');
    expect({ code, out }).toEqual({ code: 70, out: '' });
    expect(err).toContain('A bug in Longsecond: cannot read properties of undefined');
    expect(err).not.toMatch(/\bat .*:\d+/);
  });
});
