/**
 * Reading: the written shoot made into the one that is computed with. Every problem is collected and none is thrown.
 * What was read for a written map or list is remembered with it, so that reading a shoot again after an edit with
 * structural sharing reads only what changed, and all else keeps its identity.
 */
import { nearestName } from '../base/nearest.ts';
import { isCollectionShape, readKeyOf, type CollectionShape } from './fieldAt.ts';
import { escapeKey } from './pointer.ts';
import type { Problem } from './problem.ts';
import { isId, nearestId, readValue, shown, type Refusal } from './readValue.ts';
import { acyclicAfter, type AfterEdge } from './after.ts';
import { CAMERA, LENS, SHOOT, SHOT_FIELDS, type Shoot } from './schema.ts';
import type { Field, ListShape, MapShape, RecordShape, Shape } from './shape.ts';
import {
  isList,
  isRecord,
  memberOf,
  setMember,
  type Written,
  type WrittenList,
  type WrittenRecord,
} from './written.ts';

export { halfLastDigit } from './readValue.ts';
export type { Written } from './written.ts';

export interface ShootReading {
  readonly shoot: Shoot;
  readonly problems: readonly Problem[];
}

type ReadMap = Readonly<Record<string, unknown>>;

/** A problem where the pointer starts at the part read, not at the document. */
interface Found extends Refusal {
  readonly at: string;
}

/** A reference whose target is only known once the whole is read. */
interface Reference {
  /** The written key, or place in the list. */
  readonly key: string;
  /** The key or place in what was read. */
  readonly readKey: string;
  readonly to: string;
  readonly id: string;
}

interface Child {
  readonly key: string;
  readonly readKey: string;
  readonly reading: Reading;
}

interface Reading {
  readonly value: unknown;
  readonly found: readonly Found[];
  readonly references: readonly Reference[];
  /** Parts that hold problems or references somewhere. */
  readonly children: readonly Child[];
  readonly hasReferences: boolean;
  /** Whether an item or entry was left out, which the record above lists as unread. */
  readonly isShort: boolean;
  /** What was made of it last when references did not hold, so that the same failure gives the same object. */
  settled?: { readonly bad: string; readonly parts: readonly unknown[]; readonly value: unknown };
}

/** Stands for "the modes of this shot's camera", which is no path of its own. */
const MODE_OF_CAMERA = 'mode of the camera';

const EMPTY_LIST: readonly never[] = Object.freeze([]);

/** Whether a list was read where nobody wrote one. A list written empty says "none", which is an answer. */
export function isLeftOut(list: readonly unknown[]): boolean {
  return list === EMPTY_LIST;
}

const EMPTY_MAP: ReadMap = Object.freeze({});
const emptyRecords = new WeakMap<Shape, ReadMap>();

function emptyOf(of: CollectionShape): unknown {
  if (of.shape === 'list') return EMPTY_LIST;
  if (of.shape === 'map') return EMPTY_MAP;
  let empty = emptyRecords.get(of);
  if (!empty) {
    const record: Record<string, unknown> = {};
    for (const [key, field] of Object.entries(of.fields))
      if (isCollectionShape(field.of)) record[readKeyOf(key, field)] = emptyOf(field.of);
    emptyRecords.set(of, (empty = record));
  }
  return empty;
}

interface Gathered {
  readonly found: Found[];
  readonly references: Reference[];
  readonly children: Child[];
  isShort: boolean;
}

const gather = (): Gathered => ({ found: [], references: [], children: [], isShort: false });

function keep(into: Gathered, key: string, readKey: string, reading: Reading): void {
  if (reading.hasReferences || reading.found.length > 0 || reading.children.length > 0)
    into.children.push({ key, readKey, reading });
}

function asReading(value: unknown, { found, references, children, isShort }: Gathered): Reading {
  const hasReferences = references.length > 0 || children.some(({ reading }) => reading.hasReferences);
  return { value, found, references, children, hasReferences, isShort };
}

const readings = new WeakMap<Shape, WeakMap<object, Reading>>();

/** The reading of a written map or list, from memory where that very object was read by this shape before. */
function readCollection(of: CollectionShape, written: WrittenList | WrittenRecord): Reading {
  let known = readings.get(of);
  if (!known) readings.set(of, (known = new WeakMap()));
  let reading = known.get(written);
  if (!reading) {
    if (of.shape === 'list') reading = readList(of, written as WrittenList);
    else if (of.shape === 'map') reading = readMap(of, written as WrittenRecord);
    else reading = readRecord(of, written as WrittenRecord);
    known.set(written, reading);
  }
  return reading;
}

const WANTED: Readonly<Record<CollectionShape['shape'], string>> = {
  list: 'a list, such as [one, two]',
  map: 'entries under ids',
  record: 'keys with values',
};

function fits(of: CollectionShape, written: Written): written is WrittenList | WrittenRecord {
  return of.shape === 'list' ? isList(written) : isRecord(written);
}

const wrongType = (at: string, of: CollectionShape, written: Written): Found => ({
  at,
  code: 'value.wrong-type',
  what: `Found ${shown(written)}, expected ${WANTED[of.shape]}`,
});

function readList(of: ListShape, written: WrittenList): Reading {
  const into = gather();
  if (written.length > of.most) {
    const what = `Found ${written.length} items, expected at most ${of.most}`;
    return asReading(EMPTY_LIST, { ...into, found: [{ at: '', code: 'list.too-long', what }], isShort: true });
  }
  const items: unknown[] = [];
  written.forEach((item, i) => {
    const [key, readKey] = [String(i), String(items.length)];
    if (isCollectionShape(of.of)) {
      if (fits(of.of, item)) {
        const reading = readCollection(of.of, item);
        keep(into, key, readKey, reading);
        items.push(reading.value);
      } else into.found.push(wrongType(`/${key}`, of.of, item));
    } else {
      const read = readValue(of.of, '', item);
      if (!read.ok) into.found.push({ at: `/${key}`, ...refusalOf(read) });
      else {
        if (of.of.shape === 'reference') into.references.push({ key, readKey, to: of.of.to, id: read.value as string });
        items.push(read.value);
      }
    }
  });
  into.isShort = items.length < written.length;
  return asReading(items, into);
}

const refusalOf = ({ code, what, near }: Refusal): Refusal =>
  near === undefined ? { code, what } : { code, what, near };

function readMap(of: MapShape, written: WrittenRecord): Reading {
  const into = gather();
  const entries: Record<string, unknown> = {};
  for (const key of Object.keys(written)) {
    const at = `/${escapeKey(key)}`;
    const item = written[key] ?? {};
    if (!isId(key)) {
      const what = `Found the id ${shown(key)}, expected a letter, then letters, digits and hyphens`;
      into.found.push({ at, ...refusalOf({ code: 'id.malformed', what, ...nearOf(nearestId(key)) }) });
      into.isShort = true;
    } else if (isCollectionShape(of.of)) {
      if (fits(of.of, item)) {
        const reading = readCollection(of.of, item);
        keep(into, key, key, reading);
        entries[key] = reading.value;
      } else {
        into.found.push(wrongType(at, of.of, item));
        into.isShort = true;
      }
    } else {
      const read = readValue(of.of, '', item);
      if (read.ok) entries[key] = read.value;
      else into.found.push({ at, ...refusalOf(read) });
      into.isShort ||= !read.ok;
    }
  }
  return asReading(entries, into);
}

const nearOf = (near: string | undefined): { readonly near?: string } => (near === undefined ? {} : { near });

/** A record while it is read: what stands in it so far, and which written keys do not. */
interface Draft {
  readonly value: Record<string, unknown>;
  readonly unread: Set<string>;
  readonly fields: RecordShape['fields'];
  readonly into: Gathered;
}

/** Looking for the name that was meant costs time, and after this many slips in one place it is no longer a slip. */
const MOST_NEAREST = 50;

function unknownKey(key: string, fields: RecordShape['fields'], mayLookNear: boolean): Found {
  const names = Object.keys(fields);
  const near = mayLookNear
    ? (names.find((name) => fields[name]!.readAs === key) ?? nearestName(key, names))
    : undefined;
  return { at: `/${escapeKey(key)}`, code: 'key.unknown', what: `Found the key ${shown(key)}, which means nothing here`, ...nearOf(near) }; // prettier-ignore
}

function readField(draft: Draft, key: string, field: Field, written: Written): void {
  const { value, unread, into } = draft;
  const at = `/${escapeKey(key)}`;
  const readKey = readKeyOf(key, field);
  const { of } = field;
  if (isCollectionShape(of)) {
    if (!fits(of, written)) {
      into.found.push(wrongType(at, of, written));
      unread.add(key);
      return;
    }
    const reading = readCollection(of, written);
    keep(into, key, readKey, reading);
    value[readKey] = reading.value;
    if (reading.isShort) unread.add(key);
    return;
  }
  const read = readValue(of, field.readAs, written);
  if (!read.ok) {
    into.found.push({ at, ...refusalOf(read) });
    unread.add(key);
    return;
  }
  value[readKey] = read.value;
  if (read.spread !== undefined) value[spreadKey(readKey)] = read.spread;
  if (of.shape === 'reference') into.references.push({ key, readKey, to: of.to, id: read.value as string });
  if (of === SHOT_FIELDS.mode.of) into.references.push({ key, readKey, to: MODE_OF_CAMERA, id: read.value as string });
}

/** The read key of a spread: `speed_m_per_s` → `speedSpread_m_per_s`. */
export function spreadKey(readKey: string): string {
  const at = readKey.indexOf('_');
  return at < 0 ? `${readKey}Spread` : `${readKey.slice(0, at)}Spread${readKey.slice(at)}`;
}

function readRecord(of: RecordShape, written: WrittenRecord): Reading {
  const draft: Draft = { value: { ...(emptyOf(of) as ReadMap) }, unread: new Set(), fields: of.fields, into: gather() };
  for (const key of Object.keys(written)) {
    const item = written[key] ?? null;
    const field = memberOf(of.fields, key);
    if (!field) {
      draft.into.found.push(unknownKey(key, of.fields, draft.into.found.length < MOST_NEAREST));
      draft.unread.add(key);
    } else if (item !== null) readField(draft, key, field, item);
  }
  CHECKS.get(of)?.(draft, written);
  if (draft.unread.size > 0) draft.value['unread'] = [...draft.unread];
  return asReading(draft.value, draft.into);
}

/** Leaves a field out of what is read, because together with others it makes no sense. */
function drop({ value, unread, fields }: Draft, key: string): void {
  const field = fields[key]!;
  const readKey = readKeyOf(key, field);
  if (isCollectionShape(field.of)) value[readKey] = emptyOf(field.of);
  else delete value[readKey];
  delete value[spreadKey(readKey)];
  unread.add(key);
}

type Check = (draft: Draft, written: WrittenRecord) => void;

/** Knots nearer than this would be a jump that no length of a number can be trusted to keep. */
const KNOTS_APART_s = 1e-6;

const checkSpeed: Check = (draft, written) => {
  const { into } = draft;
  const knots = written['knots'] ?? null;
  if ((written['constant'] ?? null) !== null && knots !== null) {
    const what = 'Found both constant and knots, expected one of them';
    into.found.push({ at: '/knots', code: 'speed.both', what });
    drop(draft, 'constant');
    drop(draft, 'knots');
    return;
  }
  if (!isList(knots)) return;
  if (draft.unread.has('knots')) return drop(draft, 'knots');
  const read = draft.value['knots'] as readonly { readonly screenTime_s?: number; readonly speedFraction?: number }[];
  const before = into.found.length;
  let latest_s = -1;
  read.forEach((knot, i) => {
    const missing = (['at', 'speed'] as const).find((key) => knot[key === 'at' ? 'screenTime_s' : 'speedFraction'] === undefined); // prettier-ignore
    if (missing !== undefined) {
      const isWritten = isRecord(knots[i]) && (knots[i][missing] ?? null) !== null;
      if (!isWritten)
        into.found.push({ at: `/knots/${i}`, code: 'knots.incomplete', what: `Found a knot without "${missing}", expected at and speed` }); // prettier-ignore
      draft.unread.add('knots');
      return;
    }
    if (knot.screenTime_s! < latest_s + KNOTS_APART_s) {
      const what = `Found ${knot.screenTime_s} s after ${latest_s} s, expected knots in the order of time`;
      into.found.push({ at: `/knots/${i}/at`, code: 'knots.not-ascending', what });
    }
    latest_s = knot.screenTime_s!;
  });
  // A profile with a knot left out would be another profile: all of it or none.
  if (into.found.length > before || draft.unread.has('knots')) drop(draft, 'knots');
};

/** Board frames and shots stand once in their order. */
const checkOrder: Check = (draft, written) => {
  for (const key of Object.keys(draft.fields)) {
    const list = written[key];
    if (!isList(list)) continue;
    const seen = new Set<Written>();
    const twice = list.findIndex((id) => seen.size === seen.add(id).size);
    if (twice < 0) continue;
    draft.into.found.push({
      at: `/${key}/${twice}`,
      code: 'order.twice',
      what: `Found ${shown(list[twice])} a second time, expected each id once`,
    });
    drop(draft, key);
  }
};

/** Refuses a pair of limits that stand the wrong way round. */
const inOrder =
  (...pairs: readonly (readonly [low: string, high: string])[]): Check =>
  (draft, written) => {
    for (const [low, high] of pairs) {
      const [least, most] = [low, high].map((key) => draft.value[readKeyOf(key, draft.fields[key]!)]);
      if (typeof least !== 'number' || typeof most !== 'number' || least <= most * (1 + 1e-9)) continue;
      const what = `Found ${high} ${shown(written[high])} below ${low} ${shown(written[low])}, expected them the other way round`;
      draft.into.found.push({ at: `/${high}`, code: 'range.reversed', what });
      drop(draft, low);
      drop(draft, high);
    }
  };

const CHECKS: ReadonlyMap<Shape, Check> = new Map<Shape, Check>([
  [SHOT_FIELDS.speed.of, checkSpeed],
  [SHOOT.fields.order.of, checkOrder],
  [LENS, inOrder(['widest', 'narrowest'])],
  [CAMERA, inOrder(['lowestIndex', 'highestIndex'])],
  [SHOOT.fields.shoot.of.fields.day.of, inOrder(['call', 'wrap'])],
]);

/** What references are held against: the whole as first read, and the findings that need all of it. */
interface World {
  readonly root: ReadMap;
  readonly written: WrittenRecord;
  /** Problems known by their pointer: references that close a circle, modes their camera does not have. */
  readonly known: ReadonlyMap<string, Refusal>;
}

function entriesAt(root: unknown, path: string): Readonly<Record<string, unknown>> {
  let value = root;
  for (const key of path.split('.')) value = isRecord(value) ? memberOf(value, key) : undefined;
  return isRecord(value) ? value : {};
}

/** Among more ids than a shoot has, the nearest is not looked for. */
const MOST_IDS_NEAREST = 300;

/** Why an id leads nowhere, or undefined when it leads somewhere. */
function missingReference(id: string, where: string, read: ReadMap, written: ReadMap): Refusal | undefined {
  if (Object.hasOwn(read, id)) return undefined;
  if (Object.hasOwn(written, id))
    return { code: 'reference.unread', what: `Found ${shown(id)}, which is written in ${where} but cannot be read` };
  const ids = Object.keys(read);
  const have = ids.length === 0 ? `; ${where} has none` : '';
  const near = ids.length > MOST_IDS_NEAREST ? undefined : nearestName(id, ids);
  return {
    code: 'reference.missing',
    what: `Found ${shown(id)}, expected an id of ${where}${have}`,
    ...nearOf(near),
  };
}

function badReference({ to, id }: Reference, pointer: string, world: World): Refusal | undefined {
  const known = world.known.get(pointer);
  if (known || to === MODE_OF_CAMERA) return known;
  return missingReference(id, to, entriesAt(world.root, to), entriesAt(world.written, to));
}

/** Collects the problems of a part, and gives its value without the references that do not hold. */
function settle(reading: Reading, pointer: string, world: World, problems: Problem[]): unknown {
  for (const { at, ...refusal } of reading.found) problems.push({ ...refusalOf(refusal), path: pointer + at });
  const bad: Reference[] = [];
  for (const reference of reading.references) {
    const path = `${pointer}/${escapeKey(reference.key)}`;
    const refusal = badReference(reference, path, world);
    if (!refusal) continue;
    problems.push({ ...refusal, path });
    bad.push(reference);
  }
  const parts = reading.children.map(({ key, reading: child }) =>
    settle(child, `${pointer}/${escapeKey(key)}`, world, problems),
  );
  const isWhole = bad.length === 0 && parts.every((part, i) => part === reading.children[i]!.reading.value);
  if (isWhole) return reading.value;
  const badKeys = bad.map(({ key }) => key).join('/');
  const last = reading.settled;
  if (last?.bad === badKeys && last.parts.every((part, i) => part === parts[i])) return last.value;
  const value = Array.isArray(reading.value) ? listWithout(reading, bad, parts) : recordWithout(reading, bad, parts);
  reading.settled = { bad: badKeys, parts, value };
  return value;
}

function listWithout({ value, children }: Reading, bad: readonly Reference[], parts: readonly unknown[]): unknown {
  const items = [...(value as readonly unknown[])];
  children.forEach(({ readKey }, i) => (items[Number(readKey)] = parts[i]));
  const left = new Set(bad.map(({ readKey }) => Number(readKey)));
  return items.filter((_, i) => !left.has(i));
}

function recordWithout({ value, children }: Reading, bad: readonly Reference[], parts: readonly unknown[]): unknown {
  const record: Record<string, unknown> = { ...(value as ReadMap) };
  const unread = new Set(Array.isArray(record['unread']) ? (record['unread'] as string[]) : []);
  children.forEach(({ key, readKey, reading }, i) => {
    setMember(record, readKey, parts[i]);
    const before = reading.value;
    if (Array.isArray(before) && before.length > (parts[i] as readonly unknown[]).length) unread.add(key);
  });
  for (const { key, readKey } of bad) {
    delete record[readKey];
    unread.add(key);
  }
  if (unread.size > 0) record['unread'] = [...unread];
  return record;
}

const childNamed = (reading: Reading | undefined, key: string): Reading | undefined =>
  reading?.children.find((child) => child.key === key)?.reading;

interface AfterPart {
  readonly pointer: string;
  readonly references: readonly Reference[];
}

function afterOf(reading: Reading | undefined, pointer: string): AfterPart {
  return { pointer: `${pointer}/after`, references: childNamed(reading, 'after')?.references ?? [] };
}

/** What a shot comes after: its own list, or the defaults' where its own is empty, in which no shot follows itself. */
function afterEdges(id: string, own: AfterPart, byDefault: AfterPart, closed: ReadonlyMap<string, Refusal>) {
  const open = ({ pointer, references }: AfterPart): readonly AfterEdge[] =>
    references
      .map(({ key, id: to }) => ({ to, pointer: `${pointer}/${key}` }))
      .filter((edge) => !closed.has(edge.pointer));
  const edges = open(own);
  return edges.length > 0 ? edges : open(byDefault).filter(({ to }) => to !== id);
}

/** References of `after` that would close a circle; dropping them leaves an order that can be worked in. */
function circles(root: Reading): ReadonlyMap<string, Refusal> {
  const shots = entriesAt(root.value, 'shots');
  const shotReadings = new Map(childNamed(root, 'shots')?.children.map(({ key, reading }) => [key, reading]));
  const byDefault = afterOf(childNamed(root, 'defaults'), '/defaults');
  const closed = new Map<string, Refusal>();
  // A shot whose own list closes a circle falls back on the defaults', which may close another.
  for (let before = -1; before < closed.size;) {
    before = closed.size;
    const edges = new Map(
      Object.keys(shots).map((id) => {
        const own = afterOf(shotReadings.get(id), `/shots/${id}`);
        const known = afterEdges(id, own, byDefault, closed).filter(({ to }) => Object.hasOwn(shots, to));
        return [id, known] as const;
      }),
    );
    for (const [pointer, refusal] of acyclicAfter(edges)) closed.set(pointer, refusal);
  }
  return closed;
}

/** Modes that the camera of their shot does not have, the shot's defaults taken into account. */
function strayModes(root: Reading, written: WrittenRecord): ReadonlyMap<string, Refusal> {
  const cameras = entriesAt(root.value, 'kit.cameras');
  const writtenCameras = entriesAt(written, 'kit.cameras');
  const defaults = entriesAt(root.value, 'defaults');
  const stray = new Map<string, Refusal>();
  const check = (part: Reading | undefined, pointer: string): void => {
    const mode = part?.references.find(({ to }) => to === MODE_OF_CAMERA);
    const camera = (part?.value as ReadMap | undefined)?.['camera'] ?? defaults['camera'];
    if (!mode || typeof camera !== 'string' || !Object.hasOwn(cameras, camera)) return;
    const modesOf = (all: ReadMap): ReadMap => entriesAt(memberOf(all, camera), 'modes');
    const refusal = missingReference(mode.id, `the modes of ${camera}`, modesOf(cameras), modesOf(writtenCameras));
    if (refusal) stray.set(`${pointer}/${mode.key}`, refusal);
  };
  check(childNamed(root, 'defaults'), '/defaults');
  for (const { key, reading } of childNamed(root, 'shots')?.children ?? []) check(reading, `/shots/${key}`);
  return stray;
}

const shoots = new WeakMap<object, ShootReading>();

/**
 * Reads a written shoot. Whatever cannot be used is left out of the record it stands in, its written key listed in
 * that record's `unread`, and described in `problems` by pointer, finding and nearest name. Never throws for any JSON
 * value. The same written object gives the same reading.
 */
export function readShoot(written: Written): ShootReading {
  if (!isRecord(written)) {
    const what = `Found ${shown(written)}, expected the keys of a shoot`;
    return { shoot: emptyOf(SHOOT) as Shoot, problems: [{ code: 'value.wrong-type', path: '', what }] };
  }
  const known = shoots.get(written);
  if (known) return known;
  const root = readCollection(SHOOT, written);
  const world: World = {
    root: root.value as ReadMap,
    written,
    known: new Map([...circles(root), ...strayModes(root, written)]),
  };
  const problems: Problem[] = [];
  if ((memberOf(written, 'longsecond') ?? null) === null)
    problems.push({ code: 'version.missing', path: '', what: 'Found no version, expected longsecond: 1 at the top' });
  const reading: ShootReading = { shoot: settle(root, '', world, problems) as Shoot, problems };
  shoots.set(written, reading);
  return reading;
}
