/** Turn lamps down until the product lasts, or until eyes may rest on them: only those that have to. */
import type { LightingSetup } from '../../document/schema.ts';
import type { PatchOperation } from '../types.ts';
import { glaring, heatShareToLast, lampPath, litSetup, statedWith, withLamps, type LitSetup } from './lampsChanged.ts';
import { alsoLights, type Move, type MoveContext } from './move.ts';
import { sayList } from '../../base/sayList.ts';

/** Below this a lamp is put out, not dimmed. */
const LEAST_LEVEL = 0.05;

/** Shares of their light that lamps are dimmed to, by id. */
function dims(context: MoveContext, lit: LitSetup): Readonly<Record<string, number>> {
  if (context.margin.id === 'eye-distance')
    // Distance goes with the square root of brightness and of irradiance alike.
    return Object.fromEntries(glaring(context, lit).map(({ id, distance_m, eyeDistance_m }) => [id, (distance_m / eyeDistance_m) ** 2]));
  const share = heatShareToLast(context, lit.setupId, lit.setup);
  return share === undefined ? {} : Object.fromEntries(lit.lamps.filter(({ isOff }) => !isOff).map(({ id }) => [id, share]));
} // prettier-ignore

export const dimLamps: Move = {
  id: 'dim-lamps',
  closes: ['hero-life', 'eye-distance'],
  propose(context) {
    const lit = litSetup(context);
    if (!lit) return [];
    const levels = Object.entries(dims(context, lit)).map(([id, share]) => ({ id, share, level: Math.floor((lit.setup.lamps[id]!.levelFraction ?? 1) * share * 100 + 1e-9) / 100 })); // prettier-ignore
    if (levels.length === 0 || levels.some(({ level }) => level < LEAST_LEVEL)) return [];
    const changed: LightingSetup = withLamps(lit.setup, Object.fromEntries(levels.map(({ id, level }) => [id, { levelFraction: level }]))); // prettier-ignore
    const title = (id: string) => lit.lamps.find((lamp) => lamp.id === id)!.title;
    const share = Math.min(...levels.map((each) => each.share));
    const isAll = levels.length > 1 && levels.length === lit.lamps.filter(({ isOff }) => !isOff).length;
    return [
      {
        title: isAll ? `Dim the lamps to ${Math.floor(share * 100)} % of what they give` : `Dim ${sayList(levels.map(({ id, level }) => `${title(id)} to ${Math.round(level * 100)} %`))}`,
        says: `less light on every shot it lights; tungsten gets warmer in colour as it goes down, and a scrim does not${alsoLights(context, lit.setupId)}`,
        patch: [
          ...levels.map(({ id, level }): PatchOperation => ({ op: 'add', path: lampPath(lit.setupId, id, 'level'), value: `${Math.round(level * 100)} %` })),
          ...statedWith(context, lit, changed).patch,
        ],
        gives_stops: -Math.log2(share),
      },
    ]; // prettier-ignore
  },
};
