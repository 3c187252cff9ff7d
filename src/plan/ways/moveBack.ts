/** Take lamps further from the product and from eyes, each along the line it stands on. */
import type { Position } from '../../document/shape.ts';
import { writePosition } from '../../document/write.ts';
import { sayList } from '../../base/sayList.ts';
import { settablePlace } from '../settable.ts';
import type { PatchOperation } from '../types.ts';
import {
  glaring,
  heatIn,
  heatShareToLast,
  lampPath,
  litSetup,
  statedWith,
  withLamps,
  type LitSetup,
} from './lampsChanged.ts';
import { alsoLights, type Move, type MoveContext } from './move.ts';
import { say } from './words.ts';

/** Further than this no lamp is sent: stages end. */
const FARTHEST_m = 8;

/** Steps of halving the ratio sought: to a thousandth of it. */
const HALVINGS = 12;

/** A place further off by a ratio, rounded so that it is no nearer. */
function further({ right_m, away_m, up_m }: Position, ratio: number): Position {
  const by = ratio * 1.005;
  return { right_m: settablePlace(right_m * by), away_m: settablePlace(away_m * by), up_m: settablePlace(up_m * by) };
}

/** The set-up with lamps further off, each by its ratio. */
const spread = (lit: LitSetup, ratios: Readonly<Record<string, number>>) =>
  withLamps(lit.setup, Object.fromEntries(Object.entries(ratios).flatMap(([id, ratio]) => {
    const { at } = lit.setup.lamps[id]!;
    return at ? [[id, { at: further(at, ratio) }]] : [];
  }))); // prettier-ignore

/** How many times further each lamp goes, by id. */
function ratiosOf(context: MoveContext, lit: LitSetup): Readonly<Record<string, number>> {
  if (context.margin.id === 'eye-distance') return Object.fromEntries(glaring(context, lit).map(({ id, distance_m, eyeDistance_m }) => [id, eyeDistance_m / distance_m]));
  const share = heatShareToLast(context, lit.setupId, lit.setup);
  if (share === undefined) return {};
  const wanted = heatIn(context, lit.setupId, lit.setup) * share;
  const burning = lit.lamps.filter(({ isOff }) => !isOff);
  const all = (ratio: number) => Object.fromEntries(burning.map(({ id }) => [id, ratio]));
  // A beam falls with the square of the distance, a face near by more slowly: the ratio is halved towards.
  let [near, far] = [1, FARTHEST_m / Math.max(...burning.map(({ distance_m }) => distance_m))];
  if (!(far > 1)) return {};
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (near + far) / 2;
    const { setup } = statedWith(context, lit, spread(lit, all(middle)));
    if (heatIn(context, lit.setupId, setup) > wanted) near = middle;
    else far = middle;
  }
  return all(far);
} // prettier-ignore

export const moveBack: Move = {
  id: 'move-back',
  closes: ['hero-life', 'eye-distance'],
  propose(context) {
    const lit = litSetup(context);
    if (!lit) return [];
    const ratios = ratiosOf(context, lit);
    const changed = spread(lit, ratios);
    const moved = Object.keys(ratios).map((id) => {
      const { right_m, away_m, up_m } = changed.lamps[id]!.at!;
      return { id, at: changed.lamps[id]!.at!, distance_m: Math.hypot(right_m, away_m, up_m), title: lit.lamps.find((lamp) => lamp.id === id)!.title }; // prettier-ignore
    });
    const most = Math.max(...Object.values(ratios));
    if (moved.length === 0 || !(most > 1) || moved.some(({ distance_m }) => distance_m > FARTHEST_m * 1.01)) return [];
    const distances = new Set(Object.values(ratios));
    return [
      {
        title:
          moved.length > 1 && distances.size === 1
            ? `Take the lamps back to ${Math.round(most * 100)} % of their distance`
            : `Take ${sayList(moved.map(({ title, distance_m }) => `${title} back to ${say('length', distance_m)}`))}`,
        says: `less light, and harder from a face; more even across the frame${alsoLights(context, lit.setupId)}`,
        patch: [
          ...moved.map(({ id, at }): PatchOperation => ({ op: 'add', path: lampPath(lit.setupId, id, 'at'), value: writePosition(at) })), // prettier-ignore
          ...statedWith(context, lit, changed).patch,
        ],
        gives_stops: 2 * Math.log2(most),
      },
    ];
  },
};
