/** Where people are: the field that a cursor is in as a path, and a path as words, as a mark and as an address. */
import { sayList } from '../../../base/sayList.ts';
import type { Present } from '../../../api/replies.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { keysOf } from '../../../document/pointer.ts';
import { isRecord, type Written } from '../../../document/written.ts';
import { kitHref, shootHref, shotHref } from '../../hrefs.ts';
import { sayWho, upperFirst } from '../../state/who.ts';

/** Ids that fields of the places carry: how they begin, and then their path. */
const FIELD_ID = /^(?:at|written)((?:\.[A-Za-z0-9_-]+)+)$/;

/** Selects whatever carries the id of a field. */
export const FIELD_SELECTOR = '[id^="at."],[id^="written."]';

/** The JSON Pointer that a field of this id writes at. */
export function pathOfField(id: string): string | undefined {
  return FIELD_ID.exec(id)?.[1]?.replaceAll('.', '/');
}

/** "captureRate" as people read it: "capture rate". */
export const sayKey = (key: string) => key.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const titleOf = (value: Written | undefined): string | undefined => {
  const title = isRecord(value) ? value['title'] : undefined;
  return typeof title === 'string' && title !== '' ? title : undefined;
};

/** What is edited, within the thing that it belongs to: "stop", "action, speed"; empty where it is nothing in particular. */
function sayField(at: string): string {
  const keys = keysOf(at) ?? [];
  const [section] = keys;
  const depth = section === 'kit' ? 3 : section === 'shots' || section === 'board' || section === 'lighting' ? 2 : 1;
  return keys.slice(depth).map(sayKey).join(', ');
}

/** What of the shoot a path lies in, by its title: a shot, a frame, a piece of kit. */
function sayThing(at: string, written: Written): string | undefined {
  const [section, id, item] = keysOf(at) ?? [];
  if (id === undefined) return undefined;
  if (section === 'kit' && item !== undefined) return titleOf(writtenValueAt(written, `/kit/${id}/${item}`)) ?? item;
  if (section !== 'shots' && section !== 'board' && section !== 'lighting') return undefined;
  const title = titleOf(writtenValueAt(written, `/${section}/${id}`)) ?? id;
  return section === 'board' ? `frame ${title}` : title;
}

/** "on One drop, the crown: stop". */
export function sayPlace({ at, place }: Present, written: Written): string {
  const thing = sayThing(at, written) ?? place;
  const field = sayField(at);
  if (thing === undefined) return field === '' ? 'on this shoot' : `at ${field}`;
  return field === '' ? `on ${thing}` : `on ${thing}: ${field}`;
}

/** "Juno is on One drop, the crown: stop". */
export function sayPresent(present: Present, written: Written, me: string): string {
  return `${upperFirst(sayWho(present, me))} is ${sayPlace(present, written)}`;
}

/** Who edits at exactly a path, or within it, in words: "Juno is here", "Juno and Ada are here". */
export function sayMark(others: readonly Present[], path: string, me: string): string | undefined {
  const names = others
    .filter(({ at }) => at === path || at.startsWith(`${path}/`))
    .map((present) => upperFirst(sayWho(present, me)));
  if (names.length === 0) return undefined;
  return `${sayList(names)} ${names.length === 1 ? 'is' : 'are'} here`;
}

/** The place where somebody is. */
export function hrefOfPresent({ at }: Present, shootId: string): string {
  const [section, id, item] = keysOf(at) ?? [];
  if (section === 'shots' && id !== undefined) return shotHref(shootId, id);
  if (section === 'kit') return kitHref(shootId, id, item);
  return shootHref(shootId);
}
