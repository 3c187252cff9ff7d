/** Runs the command in this process and keeps what it prints: how the tests of verbs see it. */
import { runCommand, type Verb } from '../src/cli/command.ts';
import { openTerminal } from '../src/cli/terminal.ts';

export interface Captured {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function captureCommand(args: readonly string[], verbs: readonly Verb[]): Promise<Captured> {
  const heard = { out: '', err: '' };
  const terminal = openTerminal(
    { write: (text) => void (heard.out += text) },
    { write: (text) => void (heard.err += text) },
    {},
  );
  const code = await runCommand(args, verbs, terminal);
  return { code, ...heard };
}
