/** What the command writes to: two streams of text, each with colour or without. */
import pc from 'picocolors';

export type Palette = ReturnType<typeof pc.createColors>;

export interface Terminal {
  /** What was asked for. */
  readonly out: (text: string) => void;
  /** What went wrong. */
  readonly err: (text: string) => void;
  readonly outColour: Palette;
  readonly errColour: Palette;
}

export interface Stream {
  readonly isTTY?: boolean;
  readonly write: (text: string) => unknown;
}

/** Colour on a stream that is a terminal, unless NO_COLOR has a value or the terminal is a dumb one. */
function paletteFor(stream: Stream, env: Readonly<Record<string, string | undefined>>): Palette {
  return pc.createColors(stream.isTTY === true && !env['NO_COLOR'] && env['TERM'] !== 'dumb');
}

export function openTerminal(out: Stream, err: Stream, env: Readonly<Record<string, string | undefined>>): Terminal {
  return {
    out: (text) => void out.write(text),
    err: (text) => void err.write(text),
    outColour: paletteFor(out, env),
    errColour: paletteFor(err, env),
  };
}

/** Titles and values in two columns. */
export function columns(rows: readonly (readonly [string, string])[], indent = '  '): string {
  const width = Math.max(0, ...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `${indent}${left.padEnd(width)}   ${right}`.trimEnd() + '\n').join('');
}
