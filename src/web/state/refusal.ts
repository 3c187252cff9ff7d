/** Why the server refused something, in words for the person who did it: what they did, what it met, both values. */
import { conflictOf } from '../../api/client.ts';
import type { Fault } from '../../base/fault.ts';
import type { Unsent } from './keep.ts';

const WAS: Readonly<Record<Unsent['kind'], string>> = {
  edit: 'was not kept',
  undo: 'could not be taken back',
  redo: 'could not be made again',
};

const MOST = 60;

function sayValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > MOST ? `${text.slice(0, MOST - 1)}…` : text;
}

/** A browser goes by a name nobody chose; any other name was given by a person. */
function sayWho(who: string, client: string): string {
  if (who === client) return 'another window here';
  return who.startsWith('browser-') ? 'somebody else' : who;
}

export function sayRefusal({ kind, summary }: Pick<Unsent, 'kind' | 'summary'>, fault: Fault, client: string): string {
  const conflict = conflictOf(fault);
  const said = `“${summary}” ${WAS[kind]}`;
  if (!conflict) return `${said}. ${fault.what}. ${fault.mend}`;
  const { who, summary: theirs, yours, theirs: there } = conflict;
  return `${said}: ${sayWho(who, client)} did “${theirs}” first. Yours: ${sayValue(yours)}. There now: ${sayValue(there)}. ${fault.mend}`;
}
