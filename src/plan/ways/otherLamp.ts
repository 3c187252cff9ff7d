/** Put another lamp of the kit where the one that flickers most stands: a steadier one, or a larger filament. */
import type { Lamp, LightingSetup } from '../../document/schema.ts';
import { withSetup } from '../lighting.ts';
import type { PatchOperation } from '../types.ts';
import { flickerNow, type FlickerNow } from './flickerNow.ts';
import { lampPath, litSetup, statedWith } from './lampsChanged.ts';
import { alsoLights, type Move, type MoveContext, type Proposal } from './move.ts';
import { say } from './words.ts';

/** At most this many lamps are proposed, those that flicker least first. */
const MOST_PROPOSED = 4;

const isHere = ({ availability = 'here' }: Lamp): boolean => availability === 'here';

/** Pieces of a lamp that stand in no place of this set-up yet. */
function piecesLeft({ shoot }: MoveContext, setupId: string, kitId: string): number {
  const standing = Object.values(shoot.lighting[setupId]!.lamps).filter(({ lamp }) => lamp === kitId).length;
  return (shoot.kit.lamps[kitId]?.pieceCount ?? 1) - standing;
}

interface Instead {
  readonly kitId: string;
  readonly lamp: Lamp;
  /** What the lamp there would add to the swing. */
  readonly adds_stops: number;
}

/** The set-up with another lamp in one place; one that has no flood stands at its only setting. */
function replaced(setup: LightingSetup, id: string, kitId: string, lamp: Lamp): LightingSetup {
  const { floodFraction, ...placed } = setup.lamps[id]!;
  const keeps = floodFraction !== undefined && lamp.flood.beam_deg !== undefined;
  return { ...setup, lamps: { ...setup.lamps, [id]: { ...placed, lamp: kitId, ...(keeps ? { floodFraction } : {}) } } };
}

/** Lamps that would flicker less where the worst one stands, least first. */
function steadier(context: MoveContext, { setupId, lamps }: FlickerNow, may: (lamp: Lamp, now: Lamp) => boolean): readonly Instead[] {
  const [worst] = lamps;
  const now = worst && context.shoot.kit.lamps[worst.taken.kitId];
  if (!now) return [];
  return Object.entries(context.shoot.kit.lamps)
    .filter(([kitId, lamp]) => kitId !== worst.taken.kitId && lamp.availability !== 'unwanted' && may(lamp, now) && piecesLeft(context, setupId, kitId) > 0)
    .flatMap(([kitId, lamp]): readonly Instead[] => {
      const then = flickerNow({ ...context, shoot: withSetup(context.shoot, setupId, (setup) => replaced(setup, worst.taken.id, kitId, lamp)) });
      if (!then || then.found.lit.length === 0) return [];
      const adds_stops = then.lamps.find(({ taken }) => taken.id === worst.taken.id)?.adds_stops ?? 0;
      return adds_stops < worst.adds_stops ? [{ kitId, lamp, adds_stops }] : [];
    })
    .sort((a, b) => Number(isHere(b.lamp)) - Number(isHere(a.lamp)) || a.adds_stops - b.adds_stops)
    .slice(0, MOST_PROPOSED);
} // prettier-ignore

function proposing(context: MoveContext, now: FlickerNow, found: readonly Instead[], why: string): readonly Proposal[] {
  const { setupId, lamps } = now;
  if (found.length === 0) return [];
  const { taken } = lamps[0]!;
  const lit = litSetup(context);
  const placed = context.shoot.lighting[setupId]!.lamps[taken.id]!;
  return found.map(({ kitId, lamp }): Proposal => {
    const here = isHere(lamp);
    const losesFlood = placed.floodFraction !== undefined && lamp.flood.beam_deg === undefined;
    const patch: PatchOperation[] = [
      ...(here ? [] : [{ op: 'add' as const, path: `/kit/lamps/${kitId}/availability`, value: 'here' }]),
      { op: 'add', path: lampPath(setupId, taken.id, 'lamp'), value: kitId },
      ...(losesFlood ? [{ op: 'remove' as const, path: lampPath(setupId, taken.id, 'flood') }] : []),
      ...(lit ? statedWith(context, lit, replaced(lit.setup, taken.id, kitId, lamp)).patch : []),
    ];
    return {
      title: `${here ? 'Use' : 'Hire'} ${lamp.title ?? kitId} for ${taken.title}`,
      says: `${why}; its light, colour, beam and heat are its own, and are worked out again${alsoLights(context, setupId)}`,
      patch,
      gives_stops: here ? 0.3 : 1,
    };
  });
}

/** A larger filament cools more slowly, and ripples less. */
const isLargerFilament = (lamp: Lamp, now: Lamp): boolean =>
  lamp.kind === 'tungsten' && now.kind === 'tungsten' && (lamp.power_W ?? 0) > (now.power_W ?? Infinity);

export const otherLamp: Move = {
  id: 'other-lamp',
  closes: ['flicker'],
  propose(context) {
    const now = flickerNow(context);
    if (!now) return [];
    return proposing(context, now, steadier(context, now, (lamp, of) => !isLargerFilament(lamp, of)), 'it flickers less'); // prettier-ignore
  },
};

export const largerFilament: Move = {
  id: 'larger-filament',
  closes: ['flicker'],
  propose(context) {
    const now = flickerNow(context);
    if (!now) return [];
    return steadier(context, now, isLargerFilament).flatMap(
      (of) =>
      proposing(context, now, [of], `a filament of ${say('power', of.lamp.power_W!)} cools more slowly between half cycles`), // prettier-ignore
    );
  },
};
