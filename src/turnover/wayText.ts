/** The ways to close a short margin as text: what to change, what it gains, what it does to the other limits. */
import { showSigned, type UnitSystem } from '../base/quantity.ts';
import type { Margin, PatchOperation, Way } from '../plan/types.ts';
import { FOUND_BY_SEARCH, LAMP_SEARCH } from '../plan/ways/move.ts';
import { onOneLine, wrapped, type Ink } from './lines.ts';
import { marginWords, wayOutcome } from './words.ts';

/** The plan's own ways told for one margin, before those a search found; the reply for programs has them all. */
const MOST_TOLD = 5;
const MOST_EFFECTS = 5;

export interface WayTextOptions {
  readonly margin: Margin;
  /** In the order they are to be told. */
  readonly ways: readonly Way[];
  readonly ink: Ink;
  readonly system: UnitSystem;
  readonly indent: number;
}

export function wayLines({ margin, ways, ink, system, indent }: WayTextOptions): readonly string[] {
  const { name, figures, spare } = marginWords(margin, system);
  const pad = ' '.repeat(indent);
  const head = `${pad}${ink.strong(`Ways to close ${onOneLine(name)}`)}  ${figures}  ${ink.short(spare)}`;
  if (ways.length === 0) return [head, `${pad}  No single change found that helps.`];
  const found = ways.filter(({ move }) => move === LAMP_SEARCH);
  const told = [...ways.filter(({ move }) => move !== LAMP_SEARCH).slice(0, MOST_TOLD), ...found];
  const more = ways.length - told.length;
  return [
    head,
    ...told.flatMap((way, i) => oneWay(way, i + 1, ink, indent + 2)),
    ...(more > 0 ? [`${pad}  and ${more} more, all of them in --json`] : []),
  ];
}

function oneWay(way: Way, number: number, ink: Ink, indent: number): readonly string[] {
  const { move, title, says, gain_stops, touchesFixed, effects, patch } = way;
  const told = effects.slice(0, MOST_EFFECTS).map(({ title: limit, change_stops, state }) => {
    const stands = state === 'short' || state === 'tight' ? ` ${state}` : '';
    return `${limit.toLowerCase()} ${showSigned(change_stops)}${stands}`;
  });
  const rest = effects.length - told.length;
  const lines = [
    move === LAMP_SEARCH ? FOUND_BY_SEARCH : '',
    says,
    touchesFixed ? 'changes what was fixed' : '',
    told.length > 0 ? `also moves ${told.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}` : '',
    ...patch.map(changeWords),
  ];
  return [
    ...wrapped(`${number}  ${onOneLine(title)}: ${showSigned(gain_stops)}, ${wayOutcome(way)}`, indent, indent + 3),
    ...lines.filter((line) => line !== '').flatMap((line) => wrapped(onOneLine(line), indent + 3, indent + 5).map(ink.faint)),
  ];
} // prettier-ignore

/** One operation of a patch as what a person would write. */
function changeWords(operation: PatchOperation): string {
  if (operation.op === 'remove') return `remove ${operation.path}`;
  if ('from' in operation) return `${operation.op} ${operation.from} to ${operation.path}`;
  const { value } = operation;
  return `write ${operation.path}: ${typeof value === 'string' ? value : JSON.stringify(value)}`;
}
