/** What an edit changes and what lies between two states of a shoot, in words: where, the value before, the value after. */
import { fieldAt } from '../../../document/fieldAt.ts';
import { applyPatch, writtenValueAt, type Patch } from '../../../document/patch.ts';
import { keysOf, pointerTo } from '../../../document/pointer.ts';
import { isList, isRecord, isSame, memberOf, type Written } from '../../../document/written.ts';
import { sayValue } from '../../state/refusal.ts';
import { sayKey } from '../crew/where.ts';

export interface Change {
  readonly path: string;
  /** "One drop, the crown: stop". */
  readonly where: string;
  /** Absent where there was nothing. */
  readonly before?: string;
  /** Absent where there is nothing now. */
  readonly after?: string;
}

interface Between {
  readonly before: Written;
  readonly after: Written;
}

/** What something goes by: its title, or for a file its name. */
function titleAt(path: string, { before, after }: Between): string | undefined {
  for (const state of [after, before]) {
    const value = writtenValueAt(state, path);
    const title = isRecord(value) ? (memberOf(value, 'title') ?? memberOf(value, 'name')) : undefined;
    if (typeof title === 'string' && title !== '') return title;
  }
  return undefined;
}

/** How the entries of a section are called; of one that is not here the section itself is said. */
const ENTRY: Readonly<Record<string, string>> = {
  shots: '',
  deliverables: '',
  lighting: '',
  board: 'frame ',
  files: 'file ',
};

const joined = (head: string, within: readonly string[]) =>
  within.length === 0 ? head : `${head}: ${within.join(', ')}`;

/** A path in plain words, things by their titles as far as either state has them. */
export function sayWhere(path: string, between: Between): string {
  const [section = '', ...rest] = keysOf(path) ?? [path];
  if (path === '') return 'the whole shoot';
  const says = rest.map((key, i) => titleAt(pointerTo([section, ...rest.slice(0, i + 1)]), between) ?? sayKey(key));
  const [first, ...within] = says;
  if (first === undefined) return section === 'kit' || section === 'board' || section === 'shots' ? `the ${section}` : sayKey(section);
  if (section === 'order') return `order of the ${first}`;
  if (section === 'shoot') return says.join(', ');
  if (section === 'defaults') return joined('all shots', says);
  if (section === 'kit') return within.length === 0 ? `kit, ${first}` : joined(within[0]!, within.slice(1));
  const entry = memberOf(ENTRY, section);
  return entry === undefined ? joined(sayKey(section), says) : joined(`${entry}${first}`, within);
} // prettier-ignore

/** A value in words; what it refers to by its title, as far as either state has it. */
function sayAt(path: string, value: Written, between: Between): string {
  const of = fieldAt(path)?.of;
  const item = of?.shape === 'list' ? of.of : of;
  if (item?.shape !== 'reference') return sayValue(value);
  const named = (id: Written): Written =>
    typeof id === 'string' ? (titleAt(pointerTo([...item.to.split('.'), id]), between) ?? id) : id;
  return sayValue(isList(value) ? value.map(named) : named(value));
}

function changeAt(path: string, between: Between): readonly Change[] {
  const [was, is] = [writtenValueAt(between.before, path), writtenValueAt(between.after, path)];
  if (was === is || (was !== undefined && is !== undefined && isSame(was, is))) return [];
  return [{
    path,
    where: sayWhere(path, between),
    ...(was === undefined ? {} : { before: sayAt(path, was, between) }),
    ...(is === undefined ? {} : { after: sayAt(path, is, between) }),
  }];
} // prettier-ignore

/** A whole section that comes or goes is told by what is in it. */
const isSection = (keys: readonly string[]) => keys.length === 1 && fieldAt(pointerTo(keys))?.of.shape === 'map';

/** The paths below one at which two states differ: key by key, lists and new or gone entries whole. */
function pathsBetween(was: Written | undefined, is: Written | undefined, keys: readonly string[]): readonly string[] {
  if (was === is || (was !== undefined && is !== undefined && isSame(was, is))) return [];
  if (isSection(keys) && was === undefined && isRecord(is)) return pathsBetween({}, is, keys);
  if (isSection(keys) && is === undefined && isRecord(was)) return pathsBetween(was, {}, keys);
  if (!isRecord(was) || !isRecord(is)) return [pointerTo(keys)];
  const names = [...new Set([...Object.keys(was), ...Object.keys(is)])];
  return names.flatMap((name) => pathsBetween(memberOf(was, name), memberOf(is, name), [...keys, name]));
}

/** Every place at which two states differ. */
export function differences(before: Written, after: Written): readonly Change[] {
  return pathsBetween(before, after, []).flatMap((path) => changeAt(path, { before, after }));
}

export interface Step {
  readonly after: Written;
  readonly changes: readonly Change[];
}

/** An edit laid on what was there before it, with what it changes; maps are told by what in them differs. */
export function stepOf(before: Written, patch: Patch): Step {
  const after = applyPatch(before, patch);
  const paths = patch.flatMap(({ path }) => {
    const keys = keysOf(path) ?? [];
    return pathsBetween(writtenValueAt(before, path), writtenValueAt(after, path), keys);
  });
  // A section that came with the first thing in it is told by that thing.
  const told = [...new Set(paths)].filter((path) => !paths.some((other) => other.startsWith(`${path}/`)));
  return { after, changes: told.flatMap((path) => changeAt(path, { before, after })) };
}

/** "T8 → T11", "now T11", "taken away". */
export function sayChange({ before, after }: Change): string {
  if (after === undefined) return before === undefined ? '' : `${before}, taken away`;
  return before === undefined ? `now ${after}` : `${before} → ${after}`;
}
