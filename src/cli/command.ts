/** The `longsecond` command: finds the verb, loads it alone, and turns every failure into words and an exit code. */
import { Command, CommanderError } from 'commander';
import { readFileSync } from 'node:fs';
import { Fault } from '../base/fault.ts';
import { nearestName } from '../base/nearest.ts';
import type { Terminal } from './terminal.ts';

/** Exit codes: 0 done, 1 shortfalls with --strict, 2 bad input, 70 a bug of ours. */
export const BAD_INPUT = 2;
const BUG = 70;

export interface Session {
  readonly terminal: Terminal;
  /** Prints a fault and ends the command as bad input; several may be told. */
  readonly complain: (fault: Fault) => void;
  /** The exit code where it is not 0. */
  readonly endWith: (code: number) => void;
}

/** Gives a verb's command its arguments, options and action. A Fault thrown by the action is told to the person. */
export type SetUpVerb = (command: Command, session: Session) => void;

export interface Verb {
  readonly name: string;
  /** One line of the list of verbs. */
  readonly says: string;
  /** Only the verb asked for is loaded, so that `reckon` starts without a server or a database. */
  readonly load: () => Promise<SetUpVerb>;
}

function tell(terminal: Terminal, { what, where, mend }: Fault): void {
  const { red, bold, dim } = terminal.errColour;
  terminal.err(`${red(bold('Not done:'))} ${what}\n  ${dim('where')}  ${where}\n  ${dim('mend')}   ${mend}\n`);
}

/** Commander's refusals in our form: its first line is the fact, a suggestion follows in brackets. */
function faultOf(error: CommanderError, where: string): Fault {
  const [first = '', ...more] = error.message.replace(/^error: /, '').split('\n');
  const meant = /\(Did you mean (.+)\?\)/.exec(more.join(' '))?.[1];
  const help = `\`${where} --help\` shows what it takes.`;
  return new Fault({
    code: 'command.malformed',
    what: first.charAt(0).toUpperCase() + first.slice(1).replace(/\.$/, ''),
    where,
    mend: meant === undefined ? help : `Did you mean ${meant}? ${help}`,
  });
}

function unknownVerb(name: string, verbs: readonly Verb[]): Fault {
  const names = verbs.map((verb) => verb.name);
  const near = nearestName(name, names);
  return new Fault({
    code: 'command.unknown-verb',
    what: `There is no verb "${name}"`,
    where: `longsecond ${name}`,
    mend: near === undefined ? `The verbs are ${names.join(', ')}.` : `Did you mean longsecond ${near}?`,
  });
}

/** The version in package.json, which stands above both the sources and what is built of them. */
function version(): string {
  for (let folder = new URL('.', import.meta.url); folder.pathname !== '/'; folder = new URL('..', folder)) {
    try {
      const { name, version } = JSON.parse(readFileSync(new URL('package.json', folder), 'utf8')) as Record<
        string,
        unknown
      >;
      if (name === 'longsecond') return String(version);
    } catch {
      // No package.json here: the folder above is asked.
    }
  }
  return 'unknown';
}

/** Runs the command with these arguments and returns its exit code. Never throws. */
export async function runCommand(
  given: readonly string[],
  verbs: readonly Verb[],
  terminal: Terminal,
): Promise<number> {
  let exitCode = 0;
  const session: Session = {
    terminal,
    complain: (fault) => {
      tell(terminal, fault);
      exitCode = BAD_INPUT;
    },
    endWith: (code) => {
      exitCode = code;
    },
  };
  const [first, ...rest] = given;
  const args = first === 'help' ? [...rest.slice(0, 1), '--help'] : given.length === 0 ? ['--help'] : given;
  const asked = args.find((arg) => !arg.startsWith('-'));
  const where = asked === undefined ? 'longsecond' : `longsecond ${asked}`;
  try {
    const program = new Command('longsecond')
      .description('Plans table-top extreme slow motion and holds clips against the plan.')
      .version(version())
      .helpCommand(false)
      .exitOverride()
      .configureOutput({ writeOut: terminal.out, writeErr: terminal.err, outputError: () => undefined });
    for (const { name, says, load } of verbs) {
      const command = program.command(name).description(says);
      if (name === asked) (await load())(command, session);
    }
    if (asked !== undefined && args[0] === asked && !verbs.some(({ name }) => name === asked))
      throw unknownVerb(asked, verbs);
    await program.parseAsync([...args], { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.exitCode !== 0) session.complain(faultOf(error, where));
    } else if (error instanceof Fault) {
      session.complain(error);
    } else {
      const { red, bold } = terminal.errColour;
      const what = error instanceof Error ? error.message : String(error);
      terminal.err(
        `${red(bold('A bug in Longsecond:'))} ${what}\n  ${where}\n  Please report it with what you typed.\n`,
      );
      exitCode = BUG;
    }
  }
  return exitCode;
}
