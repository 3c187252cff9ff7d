/** Where a number came from, as an indented tree down to what somebody wrote. */
import { showNumber, type UnitSystem } from '../base/quantity.ts';
import { isAssumed, SOURCES, type Source } from '../laws/sources.ts';
import type { Trace } from '../plan/types.ts';
import { onOneLine, PLAIN, wrapped, type Ink } from './lines.ts';
import { numberWords, said } from './words.ts';

export interface TraceTextOptions {
  readonly ink?: Ink;
  readonly system?: UnitSystem;
}

const HOW_SEEN: Readonly<Record<Source['seen'], string>> = {
  opened: 'read',
  excerpt: 'read in part',
  memory: 'from memory',
  practice: 'common practice',
};

/** Indents beyond this depth would leave no room for words. */
const DEEPEST_INDENT = 24;

/** Lines of one trace. A number met a second time is not taken apart again. */
export function traceLines(trace: Trace, { ink = PLAIN, system = 'metric' }: TraceTextOptions = {}): readonly string[] {
  const told = new Set<string>();
  const lines: string[] = [];
  const tell = (at: Trace, depth: number): void => {
    const indent = Math.min(2 * depth, DEEPEST_INDENT);
    const isKnown = told.has(at.name) && at.inputs.length > 0;
    told.add(at.name);
    const [head = '', ...more] = wrapped(`${headWords(at, system)}  [${at.name}]`, indent, indent + 2);
    lines.push(depth === 0 ? ink.strong(head) : head, ...more);
    const beneath = isKnown ? ['worked out above'] : originWords(at, system);
    lines.push(...beneath.flatMap((line) => wrapped(line, indent + 2, indent + 4)).map(ink.faint));
    if (!isKnown) for (const input of at.inputs) tell(input, depth + 1);
  };
  tell(trace, 0);
  return lines;
}

function headWords({ name, title, value, kind }: Trace, system: UnitSystem): string {
  const shown = value === undefined ? 'not known' : said(numberWords({ name, value, kind, system }));
  return `${onOneLine(title)}  ${shown}`;
}

function originWords(trace: Trace, system: UnitSystem): readonly string[] {
  const { origin } = trace;
  const spread = 'spread' in origin && origin.spread !== undefined ? `, ± ${spreadWords(trace, origin.spread, system)}` : '';
  switch (origin.by) {
    case 'law':
      return [
        `${origin.title} (law ${origin.law}): ${origin.equation}`,
        ...(origin.refused === undefined ? [] : [`no answer: ${origin.refused}`]),
        `${isAssumed(origin.sources) ? 'assumed, no source read: ' : 'source: '}${origin.sources.map(sourceWords).join(', ')}`,
      ];
    case 'choice':
      return [`chosen: ${origin.says}`];
    case 'document':
      return [`written at ${origin.path}${spread}`, ...(origin.says === undefined ? [] : [origin.says])];
    case 'assumption':
      return [`assumed: ${origin.why}${spread}; to change it write ${origin.path}`];
  }
} // prettier-ignore

/** Stops are told in tenths, and many a spread of them is smaller. */
function spreadWords({ name, kind }: Trace, spread: number, system: UnitSystem): string {
  return kind === 'stops' ? `${showNumber(spread, 2)} stops` : said(numberWords({ name, value: spread, kind, system }));
}

function sourceWords(key: string): string {
  const source = SOURCES[key];
  return source ? `${key} (${HOW_SEEN[source.seen]})` : key;
}
