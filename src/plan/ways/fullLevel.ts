/** Burn a dimmed lamp at full level, and take its light down with a scrim or by distance instead. */
import type { PlacedLamp } from '../../document/schema.ts';
import { writePosition } from '../../document/write.ts';
import { settablePlace } from '../settable.ts';
import type { PatchOperation } from '../types.ts';
import { flickerLamps } from '../flickerLamps.ts';
import { litSetup, statedWith, withLamps } from './lampsChanged.ts';
import { alsoLights, type Move, type MoveContext, type Proposal } from './move.ts';
import { say } from './words.ts';

/** Scrims this near to the level, in stops, leave the balance as it was. */
const NEAR_stops = 0.35;

/** Farther than this no lamp of a table-top is sent. */
const FARTHEST_m = 8;

/** A lamp as it would stand. */
interface Undimmed {
  readonly title: string;
  readonly patch: readonly PatchOperation[];
  readonly placed: PlacedLamp;
}

interface Dimmed {
  readonly id: string;
  readonly title: string;
  readonly placed: PlacedLamp;
  readonly level: number;
  readonly path: string;
}

/** Lamps that burn below full level, whatever is known of them. */
function dimmedLamps({ shoot, effective }: MoveContext): readonly Dimmed[] {
  const setupId = effective.shot.lighting;
  const setup = setupId === undefined ? undefined : shoot.lighting[setupId];
  if (!setup) return [];
  return flickerLamps(shoot, setupId!).flatMap(({ id, title }) => {
    const placed = setup.lamps[id]!;
    const level = placed.levelFraction ?? 1;
    return level < 1 ? [{ id, title, placed, level, path: `/lighting/${setupId!}/lamps/${id}` }] : [];
  });
}

/** A modifier of the kit that takes about as much as the dimmer did. */
function scrimmed({ shoot }: MoveContext, { placed, level, path }: Dimmed): Undimmed | undefined {
  const wanted_stops = -Math.log2(level);
  const near = Object.entries(shoot.kit.modifiers)
    .filter(([id, { loss_stops, availability = 'here' }]) => loss_stops !== undefined && availability === 'here' && !placed.modifiers.includes(id))
    .map(([id, { loss_stops, title }]) => ({ id, title: title ?? id, off_stops: Math.abs(loss_stops! - wanted_stops) }))
    .sort((a, b) => a.off_stops - b.off_stops)[0];
  if (!near || near.off_stops > NEAR_stops) return undefined;
  const modifiers = [...placed.modifiers, near.id];
  return { title: near.title, patch: [{ op: 'remove', path: `${path}/level` }, { op: 'add', path: `${path}/modifiers`, value: modifiers }], placed: { ...placed, levelFraction: 1, modifiers } };
} // prettier-ignore

/** The lamp drawn back until the square of the distance takes what the dimmer did. */
function drawnBack({ placed, level, path }: Dimmed): Undimmed | undefined {
  if (!placed.at) return undefined;
  const ratio = level ** -0.5;
  const { right_m, away_m, up_m } = placed.at;
  const at = { right_m: settablePlace(right_m * ratio), away_m: settablePlace(away_m * ratio), up_m: settablePlace(up_m * ratio) };
  const distance_m = Math.hypot(at.right_m, at.away_m, at.up_m);
  if (!(distance_m <= FARTHEST_m)) return undefined;
  return { title: say('length', distance_m), patch: [{ op: 'remove', path: `${path}/level` }, { op: 'add', path: `${path}/at`, value: writePosition(at) }], placed: { ...placed, levelFraction: 1, at } };
} // prettier-ignore

export const fullLevel: Move = {
  id: 'full-level',
  closes: ['flicker'],
  propose(context): readonly Proposal[] {
    const dimmed = dimmedLamps(context);
    if (dimmed.length === 0) return [];
    const setupId = context.effective.shot.lighting!;
    const words = `more power and heat; many lamps pulse or ripple only while they are dimmed${alsoLights(context, setupId)}`;
    const lit = litSetup(context);
    const all = (how: (lamp: Dimmed) => Undimmed | undefined, title: (of: string) => string): readonly Proposal[] => {
      const done = dimmed.map(how);
      if (done.includes(undefined)) return [];
      const whose = dimmed.map(({ title: of }, i) => `${of} ${title(done[i]!.title)}`).join(', ');
      const changed = lit && withLamps(lit.setup, Object.fromEntries(dimmed.map(({ id }, i) => [id, done[i]!.placed])));
      const patch = [...done.flatMap((of) => of!.patch), ...(lit && changed ? statedWith(context, lit, changed).patch : [])];
      return [{ title: `Full level: ${whose}`, says: words, patch, gives_stops: 0.3 }];
    };
    return [...all((lamp) => scrimmed(context, lamp), (of) => `with ${of}`), ...all(drawnBack, (of) => `from ${of}`)];
  },
}; // prettier-ignore
