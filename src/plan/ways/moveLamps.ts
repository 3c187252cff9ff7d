/** More light from the lamps that stand already: turned up, unfiltered, nearer. */
import type { PlacedLamp } from '../../document/schema.ts';
import { writePosition } from '../../document/write.ts';
import { viewOf } from '../givens.ts';
import { hasLamps, lightOfSetup, withSetup } from '../lighting.ts';
import type { PatchOperation } from '../types.ts';
import { settablePlace } from '../settable.ts';
import { alsoLights, type Move, type MoveContext, type Proposal } from './move.ts';
import { say } from './words.ts';

/** Nearer than this no lamp is sent: heat, shadows and the lens are in the way. */
const NEAREST_m = 0.35;

/** Steps of halving the distance sought: to a thousandth of it. */
const HALVINGS = 12;

interface Lit {
  readonly setupId: string;
  readonly lamps: Readonly<Record<string, PlacedLamp>>;
  readonly isLuminance: boolean;
  readonly have: number;
  readonly need: number;
}

/** The set-up of the shot, where its light comes from lamps that nobody has read yet. */
function litByLamps({ shoot, effective, margin, lack_stops, number }: MoveContext): Lit | undefined {
  const setupId = effective.shot.lighting;
  const setup = setupId === undefined ? undefined : shoot.lighting[setupId];
  if (setupId === undefined || !hasLamps(setup)) return undefined;
  const isLuminance = Number.isNaN(number('lightNeeded_lx'));
  if ((isLuminance ? setup.luminance_cd_per_m2 : setup.illuminance_lx) !== undefined) return undefined;
  const have = number(isLuminance ? 'luminance_cd_per_m2' : 'illuminance_lx');
  const wanted = number(isLuminance ? 'lightNeeded_cd_per_m2' : 'lightNeeded_lx');
  if (!(have > 0)) return undefined;
  return { setupId, lamps: setup.lamps, isLuminance, have, need: margin.id === 'light' ? wanted : have * 4 ** lack_stops };
} // prettier-ignore

/** Light with some lamps placed otherwise, by the same sums as the plan. */
function lightWith({ shoot, effective }: MoveContext, { setupId, isLuminance }: Lit, lamps: Readonly<Record<string, PlacedLamp>>): number {
  const moved = withSetup(shoot, setupId, (setup) => ({ ...setup, lamps }));
  const light = lightOfSetup(moved, setupId, viewOf(effective.shot));
  return isLuminance ? (light.luminance?.luminance_cd_per_m2 ?? 0) : light.illuminance_lx;
} // prettier-ignore

const burning = (lamps: Readonly<Record<string, PlacedLamp>>) => Object.entries(lamps).filter(([, { isOff }]) => isOff !== true); // prettier-ignore

const pathOf = ({ setupId }: Lit, id: string, key: string) => `/lighting/${setupId}/lamps/${id}/${key}`;

/** Full level, or as far towards it as the need asks. */
function turnedUp(context: MoveContext, lit: Lit): readonly Proposal[] {
  const dimmed = burning(lit.lamps).filter(([, { levelFraction = 1 }]) => levelFraction < 1 && levelFraction > 0);
  if (dimmed.length === 0) return [];
  const least = (share: number) => Math.min(1, Math.ceil(share * 100 - 1e-9) / 100);
  // Every dimmed lamp by the same ratio, so that their balance stays, until one is full.
  const up = lit.need / lit.have;
  const patch = dimmed.map(([id, { levelFraction = 1 }]): PatchOperation => ({ op: 'add', path: pathOf(lit, id, 'level'), value: `${Math.round(least(levelFraction * up) * 100)} %` })); // prettier-ignore
  return [
    {
      title: dimmed.length === 1 ? 'Turn the dimmed lamp up' : 'Turn the dimmed lamps up',
      says: `more power and heat; tungsten gets cooler in colour as it comes up${alsoLights(context, lit.setupId)}`,
      patch,
      gives_stops: Math.min(Math.log2(up), ...dimmed.map(([, { levelFraction = 1 }]) => -Math.log2(levelFraction))),
    },
  ];
}

/** What stands before the lamps, taken out. */
function unfiltered(context: MoveContext, lit: Lit): readonly Proposal[] {
  const filtered = burning(lit.lamps).filter(([, { modifiers }]) => modifiers.length > 0);
  if (filtered.length === 0) return [];
  const titles = [...new Set(filtered.flatMap(([, { modifiers }]) => modifiers.map((id) => context.shoot.kit.modifiers[id]?.title ?? id)))]; // prettier-ignore
  return [
    {
      title: `Take out ${titles.join(', ')}`,
      says: `harder light, and another colour where a gel goes${alsoLights(context, lit.setupId)}`,
      patch: filtered.map(([id]): PatchOperation => ({ op: 'remove', path: pathOf(lit, id, 'modifiers') })),
      gives_stops: 0.5,
    },
  ];
}

/** Every lamp drawn in towards the subject by the same ratio, so that their balance nearly stays. */
function nearer(context: MoveContext, lit: Lit): readonly Proposal[] {
  // A face is as bright from near as from far.
  if (lit.isLuminance) return [];
  const placed = burning(lit.lamps).flatMap(([id, lamp]) => (lamp.at ? [{ id, lamp, at: lamp.at }] : []));
  const distances = placed.map(({ at }) => Math.hypot(at.right_m, at.away_m, at.up_m));
  const least = Math.max(...distances.map((distance) => NEAREST_m / distance));
  if (placed.length === 0 || !(least < 1)) return [];
  const scaled = (ratio: number) => ({
    ...lit.lamps,
    ...Object.fromEntries(placed.map(({ id, lamp, at }) => [id, { ...lamp, at: { right_m: settablePlace(at.right_m * ratio), away_m: settablePlace(at.away_m * ratio), up_m: settablePlace(at.up_m * ratio) } }])),
  }); // prettier-ignore
  let [near, far] = [least, 1];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (near + far) / 2;
    if (lightWith(context, lit, scaled(middle)) >= lit.need) near = middle;
    else far = middle;
  }
  const lamps: Readonly<Record<string, PlacedLamp>> = scaled(near);
  const [first] = placed;
  const { right_m, away_m, up_m } = lamps[first!.id]!.at!;
  const distance = say('length', Math.hypot(right_m, away_m, up_m));
  return [
    {
      title: placed.length === 1 ? `Bring the lamp in to ${distance}` : `Bring the lamps in to ${Math.round(near * 100)} % of their distance`,
      says: `hotter on the product, less even, and nearer to lens and splash${alsoLights(context, lit.setupId)}`,
      patch: placed.map(({ id }): PatchOperation => ({ op: 'add', path: pathOf(lit, id, 'at'), value: writePosition(lamps[id]!.at!) })),
      gives_stops: -Math.log2(near),
    },
  ]; // prettier-ignore
}

export const moveLamps: Move = {
  id: 'move-lamps',
  closes: ['light', 'noise'],
  propose(context) {
    const lit = litByLamps(context);
    if (!lit || !(lit.need > lit.have)) return [];
    return [...turnedUp(context, lit), ...unfiltered(context, lit), ...nearer(context, lit)];
  },
};
