/** Edits of the set-ups of the light, as patches on the written shoot. */
import { writtenValueAt } from '../../../document/patch.ts';
import { pointerTo } from '../../../document/pointer.ts';
import type { LightingSetup } from '../../../document/schema.ts';
import type { Position } from '../../../document/shape.ts';
import { writePosition } from '../../../document/write.ts';
import { isRecord, type Written, type WrittenRecord } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { freshId } from '../../../document/freshId.ts';
import { atAzimuth, tidyPlace } from './geometry.ts';

export const setupPath = (setupId: string) => pointerTo(['lighting', setupId]);

/** Something that stands in a set-up. */
export interface Thing {
  readonly kind: 'lamp' | 'flag';
  readonly id: string;
}

export const isThing = (thing: Thing | undefined, kind: Thing['kind'], id: string): boolean =>
  thing?.kind === kind && thing.id === id;

/** Where things of a kind are written, and what of them says what they point at or are square to. */
const WRITTEN = {
  lamp: { section: 'lamps', at: 'at', aim: 'aim' },
  flag: { section: 'flags', at: 'at', aim: 'faces' },
} as const;

export const thingPath = (setupId: string, { kind, id }: Thing) =>
  pointerTo(['lighting', setupId, WRITTEN[kind].section, id]);
export const lampPath = (setupId: string, id: string) => thingPath(setupId, { kind: 'lamp', id });
export const flagPath = (setupId: string, id: string) => thingPath(setupId, { kind: 'flag', id });

const recordAt = (written: Written, path: string): WrittenRecord => {
  const value = writtenValueAt(written, path);
  return isRecord(value) ? value : {};
};

export interface Made {
  readonly id: string;
  readonly patch: readonly PatchOperation[];
}

export function addSetup(written: Written): Made {
  const id = freshId(written, 'light', '/lighting');
  return { id, patch: [{ op: 'add', path: setupPath(id), value: { title: 'New set-up' } }] };
}

/** The same lamps at the same places once more. What was read stays behind: nobody has read the copy. */
export function duplicateSetup(written: Written, setupId: string, title: string): Made {
  const id = freshId(written, setupId.replace(/-\d+$/, ''), '/lighting');
  const kept = Object.entries(recordAt(written, setupPath(setupId))).filter(
    ([key]) => !['illuminance', 'luminance', 'reading'].includes(key),
  );
  return { id, patch: [{ op: 'add', path: setupPath(id), value: { ...Object.fromEntries(kept), title: `${title}, again` } }] };
} // prettier-ignore

/** Takes a set-up out, and with it every shot's mention of it. */
export function removeSetup(written: Written, setupId: string): readonly PatchOperation[] {
  const shots = Object.keys(recordAt(written, '/shots')).map((id) => pointerTo(['shots', id, 'lighting']));
  const mentions = [...shots, '/defaults/lighting'].filter((path) => writtenValueAt(written, path) === setupId);
  return [
    ...mentions.map((path): PatchOperation => ({ op: 'remove', path })),
    { op: 'remove', path: setupPath(setupId) },
  ];
}

/** Where a lamp is first put: to the left of the front, somewhat above, the next ones further round. */
const FIRST: Position = { right_m: 0, away_m: -1.2, up_m: 0.8 };
const FIRST_deg = -45;
const APART_deg = 75;

/** Puts a lamp of the kit into a set-up, or one that is not yet said. */
export function addLamp(written: Written, setupId: string, kitLampId: string | undefined): Made {
  const section = `${setupPath(setupId)}/lamps`;
  const count = Object.keys(recordAt(written, section)).length;
  const stem = kitLampId?.replace(/-\d+$/, '') ?? 'lamp';
  const id = freshId(written, stem, section);
  const at = tidyPlace(atAzimuth(FIRST, FIRST_deg + count * APART_deg));
  const value = { ...(kitLampId === undefined ? {} : { lamp: kitLampId }), at: writePosition(at) };
  return { id, patch: [{ op: 'add', path: lampPath(setupId, id), value }] };
}

/** Where a flag is first put: to the right of the front, between lamps and subject but before neither. */
const FIRST_FLAG: Position = { right_m: 0, away_m: -0.7, up_m: 0.3 };
const FIRST_FLAG_deg = 75;

/** As large as a flag of the middle size that crews carry; common practice, no source. */
const USUAL_FLAG = { width: '450 mm', height: '600 mm' };

/** Stands a flag in a set-up, square to the subject. */
export function addFlag(written: Written, setupId: string): Made {
  const section = `${setupPath(setupId)}/flags`;
  const flags = recordAt(written, section);
  const id = freshId(written, 'flag', section);
  const at = tidyPlace(atAzimuth(FIRST_FLAG, FIRST_FLAG_deg + Object.keys(flags).length * APART_deg));
  const value = { at: writePosition(at), ...USUAL_FLAG };
  return { id, patch: [{ op: 'add', path: flagPath(setupId, id), value }] };
}

/** The same thing once more, at another place. */
export function duplicateThing(written: Written, setupId: string, thing: Thing, at: Position): Made {
  const { kind, id: of } = thing;
  const id = freshId(written, of.replace(/-\d+$/, ''), `${setupPath(setupId)}/${WRITTEN[kind].section}`);
  const value = { ...recordAt(written, thingPath(setupId, thing)), at: writePosition(at) };
  return { id, patch: [{ op: 'add', path: thingPath(setupId, { kind, id }), value }] };
}

/** What of a thing a drag moves: where it stands, or what it points at or is square to. */
export type Moved = 'at' | 'aim';

export function placeThing(setupId: string, thing: Thing, moved: Moved, place: Position): readonly PatchOperation[] {
  const path = `${thingPath(setupId, thing)}/${WRITTEN[thing.kind][moved]}`;
  return [{ op: 'add', path, value: writePosition(tidyPlace(place)) }];
}

/** A set-up with one thing where it is being dragged. */
export function withThingAt(setup: LightingSetup, { kind, id }: Thing, moved: Moved, place: Position): LightingSetup {
  const { section, [moved]: key } = WRITTEN[kind];
  const all: Readonly<Record<string, object>> = setup[section];
  const thing = all[id];
  return thing ? { ...setup, [section]: { ...all, [id]: { ...thing, [key]: place } } } : setup;
}

/** A lamp put out or lit again, a flag taken away or stood there again. */
export function switchThing(written: Written, setupId: string, thing: Thing, isOff: boolean): readonly PatchOperation[] {
  const path = `${thingPath(setupId, thing)}/off`;
  if (isOff) return [{ op: 'add', path, value: true }];
  return writtenValueAt(written, path) === undefined ? [] : [{ op: 'remove', path }];
} // prettier-ignore

/** Several lamps at once, as one edit. */
export function switchLamps(written: Written, setupId: string, lampIds: readonly string[], isOff: boolean): readonly PatchOperation[] {
  return lampIds.flatMap((id) => switchThing(written, setupId, { kind: 'lamp', id }, isOff));
} // prettier-ignore

/** What the meter read, marked as read; taken away, the mark goes with it once nothing is read any more. */
export function readingPatch(written: Written, setupId: string, key: 'illuminance' | 'luminance', text: string): readonly PatchOperation[] {
  const path = `${setupPath(setupId)}/${key}`;
  const other = `${setupPath(setupId)}/${key === 'illuminance' ? 'luminance' : 'illuminance'}`;
  const mark = `${setupPath(setupId)}/reading`;
  const has = (at: string) => writtenValueAt(written, at) !== undefined;
  if (text.trim() !== '')
    return [
      { op: 'add', path, value: text.trim() },
      ...(has(mark) ? [] : [{ op: 'add', path: mark, value: 'metered' } as const]),
    ];
  if (!has(path)) return [];
  return [{ op: 'remove', path }, ...(has(other) || !has(mark) ? [] : [{ op: 'remove', path: mark } as const])];
} // prettier-ignore
