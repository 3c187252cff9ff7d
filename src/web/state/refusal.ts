/** Why the server refused something, in words for the person who did it: what they did, what it met, both values. */
import { conflictOf } from '../../api/client.ts';
import type { Fault } from '../../base/fault.ts';
import { isList, isRecord, memberOf, type Written } from '../../document/written.ts';
import type { Unsent } from './keep.ts';
import type { Refused } from './refused.ts';
import { sayWho } from './who.ts';

const WAS: Readonly<Record<Unsent['kind'], string>> = {
  edit: 'was not kept',
  undo: 'could not be taken back',
  redo: 'could not be made again',
  restore: 'was not done',
};

const MOST = 60;

const cut = (text: string) => (text.length > MOST ? `${text.slice(0, MOST - 1)}…` : text);

/** A written value in a line; maps by their title, or by how much they hold where that is too long. */
export function sayValue(value: Written | undefined): string {
  if (value === undefined || value === null) return 'nothing';
  if (isList(value)) return value.length === 0 ? 'an empty list' : cut(value.map(sayValue).join(', '));
  if (!isRecord(value)) return value === '' ? 'empty' : cut(String(value));
  // Files go by their name.
  const title = memberOf(value, 'title') ?? memberOf(value, 'name');
  if (typeof title === 'string') return title;
  const entries = Object.entries(value);
  if (entries.length === 0) return 'an empty entry';
  const text = entries.map(([key, item]) => `${key} ${typeof item === 'object' ? '…' : item}`).join(', ');
  return text.length > MOST ? `${entries.length} values` : text;
}

export interface RefusedItem extends Pick<Unsent, 'editId' | 'kind' | 'summary' | 'patch'> {
  /** Edits made on top of it, which fall with it. */
  readonly onTop: readonly Pick<Unsent, 'patch' | 'summary'>[];
}

/** The refusal of something for whoever did it, who goes by `me`. */
export function refusedOf({ editId, kind, summary, patch, onTop }: RefusedItem, fault: Fault, me: string): Refused {
  const newest = onTop.at(-1)?.summary ?? summary;
  const said = `“${newest}” ${WAS[kind]}`;
  const whole = [...patch, ...onTop.flatMap((item) => item.patch)];
  const edit = kind === 'edit' ? { edit: { patch: whole, summary: newest } } : {};
  const conflict = conflictOf(fault);
  if (!conflict) return { id: editId, says: `${said}. ${fault.what}.`, mend: fault.mend, ...edit };
  const { path, number, summary: theirs } = conflict;
  const who = conflict.who === me ? 'another window here' : sayWho(conflict, me);
  const last = whole.findLast((operation) => operation.path === path);
  const yours = last ? ('value' in last ? last.value : undefined) : conflict.yours;
  return {
    id: editId,
    says: `${said}: ${who} did “${theirs}” first.`,
    mend: fault.mend,
    met: { path, who, yours: sayValue(yours), theirs: sayValue(conflict.theirs), number },
    ...edit,
  };
}
