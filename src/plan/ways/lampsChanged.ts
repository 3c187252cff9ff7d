/** What moves that cool lamps, or take them off eyes, have in common: the set-up as it stands, and what a change of it asks for. */
import { writeQuantity } from '../../base/quantity.ts';
import type { LightingSetup, PlacedLamp } from '../../document/schema.ts';
import { heatOfAir_W_per_m2 } from '../../laws/heat/products.ts';
import { glareOf, type Glare } from '../eyes.ts';
import { viewOf } from '../givens.ts';
import { absorbedOf_W_per_m2, lightOnProduct, warmsOf } from '../heat.ts';
import { hasLamps, lightOfSetup, withSetup, type LampShare } from '../lighting.ts';
import type { PatchOperation } from '../types.ts';
import type { MoveContext } from './move.ts';

export interface LitSetup {
  readonly setupId: string;
  readonly setup: LightingSetup;
  /** As they are written, whatever was read. */
  readonly lamps: readonly LampShare[];
}

/** The set-up of a shot, where lamps that can be worked out stand in it. */
export function litSetup({ shoot, effective }: MoveContext): LitSetup | undefined {
  const setupId = effective.shot.lighting;
  const setup = setupId === undefined ? undefined : shoot.lighting[setupId];
  if (setupId === undefined || !hasLamps(setup)) return undefined;
  const { lamps, lacks } = lightOfSetup(shoot, setupId, viewOf(effective.shot));
  return lacks.length > 0 ? undefined : { setupId, setup, lamps };
}

/** Lamps of a set-up that are nearer than an eye may be to them, as they are written. */
export function glaring({ shoot }: MoveContext, { setupId, lamps }: LitSetup): readonly Glare[] {
  return glareOf(shoot, setupId, lamps).filter(({ eyeDistance_m, distance_m }) => eyeDistance_m > distance_m);
}

/** Heat that the product takes up from all light, in the set-up as a change would leave it; NaN where it is not known. */
export function heatIn({ shoot, effective }: MoveContext, setupId: string, setup: LightingSetup): number {
  const product = warmsOf(shoot, effective.shot);
  if (product === undefined) return NaN;
  const changed = withSetup(shoot, setupId, () => setup);
  const light = lightOnProduct(changed, setupId, { view: viewOf(effective.shot), product });
  return 'parts' in light ? absorbedOf_W_per_m2(light.parts, product) : NaN;
}

/** How much less heat the product may take up to last as long as it is lit, as a share; none where air alone is too warm for it. */
export function heatShareToLast(context: MoveContext, setupId: string, setup: LightingSetup): number | undefined {
  const { margin, number } = context;
  const { have, need } = margin;
  const light = heatIn(context, setupId, setup);
  if (have === undefined || need === undefined || !(have > 0) || !(light > 0)) return undefined;
  const air = heatOfAir_W_per_m2({ start_degC: number('productStart_degC'), air_degC: number('air_degC') });
  const share = ((light + air) * (have / need) - air) / light;
  return share > 0 && share < 1 ? share : undefined;
}

export const lampPath = (setupId: string, id: string, key: string): string => `/lighting/${setupId}/lamps/${id}/${key}`;

/** The set-up with some lamps changed. */
export function withLamps(setup: LightingSetup, changed: Readonly<Record<string, Partial<PlacedLamp>>>): LightingSetup {
  const lamps = Object.entries(setup.lamps).map(([id, lamp]) => [id, { ...lamp, ...changed[id] }] as const);
  return { ...setup, lamps: Object.fromEntries(lamps) };
}

/**
 * What a set-up states goes with its lamps: by as much as they would give less. It has then not been read on the set.
 * The set-up as it would be, and the operations on what it states.
 */
export function statedWith({ shoot, effective }: MoveContext, { setupId, setup }: LitSetup, changed: LightingSetup): { readonly setup: LightingSetup; readonly patch: readonly PatchOperation[] } {
  const { illuminance_lx, luminance_cd_per_m2, reading } = setup;
  if (illuminance_lx === undefined && luminance_cd_per_m2 === undefined) return { setup: changed, patch: [] };
  const view = viewOf(effective.shot);
  const [before, after] = [shoot, withSetup(shoot, setupId, () => changed)].map((of) => lightOfSetup(of, setupId, view)) as [ReturnType<typeof lightOfSetup>, ReturnType<typeof lightOfSetup>];
  const times = (now: number | undefined, then: number | undefined) => (now !== undefined && then !== undefined && now > 0 ? then / now : 1);
  const light = times(before.illuminance_lx, after.illuminance_lx);
  const face = times(before.luminance?.luminance_cd_per_m2, after.luminance?.luminance_cd_per_m2);
  const rounded = (value: number) => Number(value.toPrecision(2));
  const at = `/lighting/${setupId}`;
  const isLight = illuminance_lx !== undefined && light !== 1;
  const isFace = luminance_cd_per_m2 !== undefined && face !== 1;
  return {
    setup: {
      ...changed,
      ...(isLight ? { illuminance_lx: rounded(illuminance_lx * light) } : {}),
      ...(isFace ? { luminance_cd_per_m2: rounded(luminance_cd_per_m2 * face) } : {}),
    },
    patch: [
      ...(isLight ? [{ op: 'add' as const, path: `${at}/illuminance`, value: writeQuantity('illuminance', rounded(illuminance_lx * light)) }] : []),
      ...(isFace ? [{ op: 'add' as const, path: `${at}/luminance`, value: writeQuantity('luminance', rounded(luminance_cd_per_m2 * face)) }] : []),
      ...((isLight || isFace) && reading === 'metered' ? [{ op: 'add' as const, path: `${at}/reading`, value: 'stated' }] : []),
    ],
  };
} // prettier-ignore
