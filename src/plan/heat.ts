/** What the light of a set-up weighs on a product: how much falls on its warmest side, by the kind of lamp it comes from. */
import type { Lamp, LightingSetup, Product, Shoot, Shot } from '../document/schema.ts';
import type { Vec3 } from '../laws/light/area/polygon.ts';
import { lightAt_lx, towards, type LightSource } from '../laws/light/placed/source.ts';
import { LAMP_EFFICACY_lm_per_W, type Lamp as HeatKind } from '../laws/heat/irradiance.ts';
import { PRODUCTS, type ProductKind } from '../laws/heat/products.ts';
import { hasLamps, lightOfSetup, towardsCamera, vecOf, type LampLack, type LampShare, type View } from './lighting.ts';
import { correctedLight, correctionSaid, usualReadingSpread } from './meter.ts';
import { isUnread } from './unread.ts';

export type { HeatKind };

/** Kinds of lamp from hottest to coolest for the same light. */
export const HEAT_KINDS = ['tungsten', 'discharge', 'led'] as const satisfies readonly HeatKind[];

/** The model's names for the light of each kind of lamp, and for the heat that comes with it. */
export const PRODUCT_LIGHT = {
  tungsten: { light: 'productTungsten_lx', heat: 'productTungsten_W_per_m2', says: 'of hot filaments' },
  discharge: { light: 'productDischarge_lx', heat: 'productDischarge_W_per_m2', says: 'of arcs and tubes' },
  led: { light: 'productLed_lx', heat: 'productLed_W_per_m2', says: 'of light-emitting diodes' },
} as const satisfies Record<HeatKind, { light: string; heat: string; says: string }>;

/** What a lamp counts as: a tube as an arc, which is the hotter; a hot filament where nobody says what it is. */
export function heatKindOf(kind: Lamp['kind']): HeatKind {
  return kind === 'led' || kind === 'discharge' ? kind : kind === 'fluorescent' ? 'discharge' : 'tungsten';
}

/** What a product warms like, where its time in the light is to be worked out: nobody wrote how long it lasts. */
export function warmsOf({ kit }: Shoot, { hero }: Pick<Shot, 'hero'>): ProductKind | undefined {
  if (hero.product === undefined || hero.life_s !== undefined || isUnread(hero, 'life')) return undefined;
  return kit.products[hero.product]?.warms;
}

/** How warm a product comes to the set where nobody says, on the warm side of usual; common practice, no source. */
export const USUAL_START_degC: Readonly<Record<NonNullable<Product['warms']>, number>> = {
  'ice-cream': -12,
  ice: -5,
  'dark-chocolate': 20,
  'milk-chocolate': 20,
  butter: 5,
};

export interface LightPart {
  readonly illuminance_lx: number;
  readonly spread_lx: number;
}

/** Light on the side of a product that takes up most heat, by kind of lamp. */
export interface ProductLight {
  readonly parts: Readonly<Record<HeatKind, LightPart>>;
  /** JSON Pointer of what it rests on. */
  readonly path: string;
  /** How it is known, after a comma: "from its lamps". */
  readonly says: string;
  /** Why a kind of lamp was taken, where nobody wrote it. */
  readonly assumed?: { readonly why: string; readonly path: string };
}

const NONE: LightPart = { illuminance_lx: 0, spread_lx: 0 };

type Heated = LampShare & { readonly source: LightSource; readonly kind: HeatKind };

/** Light falling on a product in a set-up, or what it lacks. Never throws for what somebody wrote. */
export function lightOnProduct(
  shoot: Shoot,
  setupId: string,
  { view, product }: { readonly view: View; readonly product: ProductKind },
): ProductLight | LampLack {
  const setup = shoot.lighting[setupId]!;
  const path = `/lighting/${setupId}`;
  if (isUnread(setup, 'illuminance')) return { title: 'Illuminance on the product', path: `${path}/illuminance`, isUnread: true };
  const light = hasLamps(setup) ? lightOfSetup(shoot, setupId, view) : undefined;
  const [lack] = light?.lacks ?? [];
  const read_lx = setup.illuminance_lx;
  if (light && !lack && (read_lx === undefined || light.illuminance_lx > 0)) {
    const { luminance_cd_per_m2: _ofTheFace, ...ofTheLight } = setup;
    const corrected = correctedLight(light, ofTheLight);
    const [meter] = corrected.meters;
    return { ...fromLamps(shoot, setup, { lamps: corrected.lamps, view, product }), path: `${path}/lamps`, says: meter ? `from its lamps, ${correctionSaid(meter)}` : 'from its lamps' };
  }
  if (read_lx !== undefined) return fromReading(shoot, setup, path);
  return lack ?? { title: 'Illuminance on the product', path: `${path}/illuminance`, isUnread: false };
} // prettier-ignore

interface LampsOnProduct {
  readonly lamps: readonly LampShare[];
  readonly view: View;
  readonly product: ProductKind;
}

function fromLamps(shoot: Shoot, setup: LightingSetup, { lamps, view, product }: LampsOnProduct): Pick<ProductLight, 'parts' | 'assumed'> {
  const kindOf = ({ lamp }: LampShare) => heatKindOf(shoot.kit.lamps[lamp ?? '']?.kind);
  // A lamp of which only its share was read warms every side as it lights the one that counts.
  const allRound = lamps.filter(({ isOff, readFraction }) => !isOff && readFraction !== undefined);
  const burning = lamps.flatMap((lamp): readonly Heated[] => (lamp.source && !lamp.isOff && lamp.readFraction === undefined && lamp.distance_m > 0 ? [{ ...lamp, source: lamp.source, kind: kindOf(lamp) }] : []));
  const normal = setup.faces && Math.hypot(...vecOf(setup.faces)) > 0 ? towards([0, 0, 0], vecOf(setup.faces)) : towardsCamera(view);
  const side = warmestSide(burning, normal, product);
  const parts: Record<HeatKind, LightPart> = { tungsten: NONE, discharge: NONE, led: NONE };
  const add = (kind: HeatKind, more_lx: number, spreadFraction: number) => {
    const { illuminance_lx, spread_lx } = parts[kind];
    parts[kind] = { illuminance_lx: illuminance_lx + more_lx, spread_lx: Math.hypot(spread_lx, more_lx * spreadFraction) };
  };
  for (const { source, kind, spreadFraction } of burning) add(kind, lightAt_lx(source, 0, 0, 0, ...side), spreadFraction);
  for (const lamp of allRound) add(kindOf(lamp), lamp.illuminance_lx, lamp.spreadFraction);
  const unnamed = [...burning, ...allRound].find(({ lamp }) => shoot.kit.lamps[lamp ?? '']?.kind === undefined);
  return { parts, ...(unnamed ? { assumed: { why: `what makes the light of ${unnamed.title} is not written, so it counts as a hot filament`, path: unnamed.lamp === undefined ? '/kit/lamps' : `/kit/lamps/${unnamed.lamp}/kind` } } : {}) };
} // prettier-ignore

/** The way a side faces that takes up most heat: towards a lamp, between several, or as the lit surface does. */
function warmestSide(lamps: readonly Heated[], normal: Vec3, product: ProductKind): Vec3 {
  const { absorbed } = PRODUCTS[product];
  const weigh = (kind: HeatKind) => absorbed[kind] / LAMP_EFFICACY_lm_per_W[kind];
  const facing = lamps.map(({ source, kind }) => {
    const to = towards([0, 0, 0], source.at);
    return { to, heat: weigh(kind) * lightAt_lx(source, 0, 0, 0, ...to) };
  });
  const between = [0, 1, 2].map((axis) => facing.reduce((sum, { to, heat }) => sum + to[axis]! * heat, 0));
  const length = Math.hypot(...between);
  const ways: readonly Vec3[] = [normal, ...facing.map(({ to }) => to), ...(length > 0 ? [between.map((part) => part / length) as unknown as Vec3] : [])];
  const taken = (n: Vec3) => lamps.reduce((sum, { source, kind }) => sum + weigh(kind) * lightAt_lx(source, 0, 0, 0, ...n), 0);
  return ways.map((way) => ({ way, heat: taken(way) })).reduce((a, b) => (b.heat > a.heat ? b : a)).way;
} // prettier-ignore

/** Heat that a product takes up of light by kind of lamp. */
export function absorbedOf_W_per_m2(parts: ProductLight['parts'], product: ProductKind): number {
  const { absorbed } = PRODUCTS[product];
  return HEAT_KINDS.reduce((sum, kind) => sum + (absorbed[kind] * parts[kind].illuminance_lx) / LAMP_EFFICACY_lm_per_W[kind], 0);
} // prettier-ignore

/** A reading alone: nobody says which lamp it is of, so it counts as the hottest that burns there. */
function fromReading({ kit }: Shoot, setup: LightingSetup, path: string): ProductLight {
  const illuminance_lx = setup.illuminance_lx!;
  const spread_lx = setup.illuminanceSpread_lx ?? illuminance_lx * usualReadingSpread(setup);
  const kinds = Object.values(setup.lamps).flatMap(({ lamp, isOff }) => (isOff === true ? [] : [heatKindOf(kit.lamps[lamp ?? '']?.kind)]));
  const hottest = HEAT_KINDS.find((kind) => kinds.includes(kind)) ?? 'tungsten';
  const why = kinds.length > 0 ? 'of which lamp it was read cannot be worked out, so it counts as the hottest that burns there' : 'of which lamp it was read is not written, so it counts as a hot filament';
  return {
    parts: { tungsten: NONE, discharge: NONE, led: NONE, [hottest]: { illuminance_lx, spread_lx } },
    path: `${path}/illuminance`,
    says: setup.reading === 'metered' ? 'as read' : 'as intended',
    assumed: { why, path: `${path}/lamps` },
  };
} // prettier-ignore
