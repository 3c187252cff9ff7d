/** Put light-emitting diodes where hot lamps stand: nearly the same light with a fraction of the heat. */
import type { Lamp } from '../../document/schema.ts';
import { lightAt_lx, towards, type LightSource } from '../../laws/light/placed/source.ts';
import { heatKindOf } from '../heat.ts';
import { lightOfSetup, withSetup } from '../lighting.ts';
import { viewOf } from '../givens.ts';
import type { PatchOperation } from '../types.ts';
import { lampPath, litSetup, statedWith, withLamps, type LitSetup } from './lampsChanged.ts';
import { alsoLights, type Move, type MoveContext, type Proposal } from './move.ts';

/** A lamp that gives less than this share of the other's light is no stand-in for it. */
const LEAST_SHARE = 0.5;

/** On a card at the subject that faces it. */
const facing_lx = (source: LightSource): number => lightAt_lx(source, 0, 0, 0, ...towards([0, 0, 0], source.at));

/** The set-up with all its hot lamps changed for one kind that is cooler, each dimmed to the light of the one it replaces. */
function swapped(context: MoveContext, lit: LitSetup, lampId: string, lamp: Lamp): Proposal | undefined {
  const { shoot, effective } = context;
  const hot = lit.lamps.filter(({ isOff, lamp: id, source, readFraction }) => !isOff && source && readFraction === undefined && heatKindOf(shoot.kit.lamps[id ?? '']?.kind) !== 'led');
  const standing = Object.values(lit.setup.lamps).filter(({ lamp: id, isOff }) => id === lampId && isOff !== true).length;
  if (hot.length === 0 || (lamp.pieceCount ?? 1) - standing < hot.length) return undefined;
  const hasFlood = lamp.flood.beam_deg !== undefined;
  const bare = withLamps(lit.setup, Object.fromEntries(hot.map(({ id }) => [id, { lamp: lampId, levelFraction: 1 }])));
  const at = (setup: LitSetup['setup']) => withSetup(shoot, lit.setupId, () => setup);
  const dark = { ...bare, lamps: Object.fromEntries(Object.entries(bare.lamps).map(([id, { floodFraction, ...placed }]) => [id, { ...placed, ...(floodFraction === undefined || (placed.lamp === lampId && !hasFlood) ? {} : { floodFraction }) }])) };
  const cool = lightOfSetup(at(dark), lit.setupId, viewOf(effective.shot)).lamps;
  const changes = hot.map(({ id, source, title }) => {
    const made = cool.find((each) => each.id === id)?.source;
    const share = made ? facing_lx(made) / facing_lx(source!) : NaN;
    return { id, title, share, level: Math.min(1, Math.ceil(100 / share - 1e-9) / 100) };
  });
  if (!changes.every(({ share }) => share >= LEAST_SHARE)) return undefined;
  const setup = withLamps(dark, Object.fromEntries(changes.map(({ id, level }) => [id, { levelFraction: level }])));
  const lost_stops = Math.max(0, ...changes.map(({ share }) => -Math.log2(share)));
  const isHired = lamp.availability === 'hire';
  const name = lamp.title ?? lampId;
  const [first] = changes;
  return {
    title: `${isHired ? 'Hire' : 'Use'} ${name} in place of ${changes.length === 1 ? first!.title : 'the hot lamps'}`,
    says: `about a tenth of the heat of a filament for the same light${lost_stops > 0.05 ? `, ${lost_stops.toFixed(1)} stops less of it` : ''}; see what it does to colour and flicker, and read it again${alsoLights(context, lit.setupId)}`,
    patch: [
      ...(isHired ? [{ op: 'add' as const, path: `/kit/lamps/${lampId}/availability`, value: 'here' }] : []),
      ...changes.flatMap(({ id, level }): readonly PatchOperation[] => [
        { op: 'add', path: lampPath(lit.setupId, id, 'lamp'), value: lampId },
        { op: 'add', path: lampPath(lit.setupId, id, 'level'), value: `${Math.round(level * 100)} %` },
        ...(lit.setup.lamps[id]!.floodFraction !== undefined && !hasFlood ? [{ op: 'remove' as const, path: lampPath(lit.setupId, id, 'flood') }] : []),
      ]),
      ...statedWith(context, lit, setup).patch,
    ],
    gives_stops: (isHired ? 1 : 0.3) + lost_stops,
  };
} // prettier-ignore

export const swapLamps: Move = {
  id: 'swap-lamps',
  closes: ['hero-life', 'eye-distance'],
  propose(context) {
    const lit = litSetup(context);
    if (!lit) return [];
    return Object.entries(context.shoot.kit.lamps)
      .filter(
        ([, { kind, availability = 'here' }]) => kind === 'led' && (availability === 'here' || availability === 'hire'),
      ) // prettier-ignore
      .flatMap(([id, lamp]) => swapped(context, lit, id, lamp) ?? []);
  },
};
