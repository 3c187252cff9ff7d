/** A shoot read for a verb: faults with the file before their place, problems told line by line. */
import { Fault } from '../base/fault.ts';
import type { Problem } from '../document/problem.ts';
import { readShootText, type ShootText } from '../document/text.ts';
import { eventProblems } from '../plan/events.ts';
import { onOneLine, type Ink } from '../turnover/lines.ts';
import type { ShootSource } from './shootFile.ts';
import type { Palette, Terminal } from './terminal.ts';

export const asText = (lines: readonly string[]): string => lines.map((line) => `${line}\n`).join('');

export function inkOf({ bold, dim, red, yellow, green, cyan }: Palette): Ink {
  return { strong: bold, faint: dim, short: red, tight: yellow, spare: green, unknown: cyan };
}

/** A fault of the document with the file in front of its place. */
function placedIn(name: string, { code, what, where, mend, cause }: Fault): Fault {
  const place = /^line (\d+), column (\d+)$/.exec(where);
  const at = place ? `${name}:${place[1]}:${place[2]}` : where === 'the document' ? name : `${name} ${where}`;
  return new Fault({ code, what, where: at, mend, cause });
}

/** The shoot of a text with its problems. Throws the document's Fault, placed in its file. */
export function readDocument({ name, text }: ShootSource): ShootText {
  try {
    return readShootText(text, undefined, eventProblems);
  } catch (error) {
    throw error instanceof Fault ? placedIn(name, error) : error;
  }
}

/** One line for each problem, its place first, as compilers and editors have it. */
export function tellProblems(name: string, problems: readonly Problem[], terminal: Terminal): void {
  const { red, bold, dim } = terminal.errColour;
  const count = problems.length === 1 ? '1 problem' : `${problems.length} problems`;
  terminal.err(`${red(bold(`${count}:`))} what rests on it is unknown\n`);
  for (const { path, what, near, line, column } of problems) {
    const place = line === undefined ? name : `${name}:${line}:${column ?? 1}`;
    const meant = near === undefined ? '' : `; did you mean ${near}?`;
    terminal.err(`${bold(place)}: ${dim(`${path === '' ? 'the document' : path}:`)} ${onOneLine(what)}${onOneLine(meant)}\n`);
  }
} // prettier-ignore
