/** Light of a set-up worked out from the lamps that stand in it, at the subject point as a camera sees it. */
import type { LightingSetup, Shoot } from '../document/schema.ts';
import type { Vec3 } from '../laws/light/area/polygon.ts';
import { lightAt_lx, luminanceSeen_cd_per_m2, towards } from '../laws/light/placed/source.ts';
import { flagsOf, type PlacedFlag } from './flags.ts';
import { vecOf, type LampLack } from './lampLack.ts';
import { photometryTold } from './photometry.ts';
import { sourcesOf, type PlacedSource } from './placedSources.ts';
import { withReadShares } from './readShares.ts';
import { isUnread } from './unread.ts';

export { vecOf, type LampLack } from './lampLack.ts';
export type { PlacedFlag } from './flags.ts';
export type { PlacedSource } from './placedSources.ts';

/** What one lamp gives the subject. */
export interface LampShare extends PlacedSource {
  readonly illuminance_lx: number;
  /** Of all the light of the set-up. */
  readonly shareFraction: number;
  readonly distance_m: number;
}

export interface View {
  /** Turned about the subject: 0 in front, 90 to its right. */
  readonly azimuth_deg: number;
  readonly elevation_deg: number;
}

/** Light at the subject point of a set-up. */
export interface SetupLight {
  readonly lamps: readonly LampShare[];
  readonly flags: readonly PlacedFlag[];
  /** On a surface there that faces the camera, or what the set-up says; NaN while a lamp or a flag lacks something. */
  readonly illuminance_lx: number;
  readonly spread_lx: number;
  /** Of the face behind the subject, as the camera sees it; undefined where none lies behind it. */
  readonly luminance?: {
    readonly luminance_cd_per_m2: number;
    readonly spread_cd_per_m2: number;
    readonly lamp: string;
  };
  readonly lacks: readonly LampLack[];
}

const ORIGIN: Vec3 = [0, 0, 0];

const RADIANS_per_deg = Math.PI / 180;

/** Unit vector from the subject to the camera. */
export function towardsCamera({ azimuth_deg, elevation_deg }: View): Vec3 {
  const [azimuth, elevation] = [azimuth_deg * RADIANS_per_deg, elevation_deg * RADIANS_per_deg];
  return [Math.sin(azimuth) * Math.cos(elevation), -Math.cos(azimuth) * Math.cos(elevation), Math.sin(elevation)];
}

/** What the light of a set-up follows from, and the light itself. */
interface Kept {
  readonly of: readonly unknown[];
  readonly light: SetupLight;
}

/** By the set-up as it was read: an edit of anything else leaves it as it was. */
const kept = new WeakMap<LightingSetup, readonly Kept[]>();

/** Shots of one set-up are seen from a few sides; more of them are not kept. */
const MOST_KEPT = 8;

/**
 * The light of a set-up at the subject point, on the surface that counts there, and what the camera sees behind it. The
 * very same for the same set-up, lamps, modifiers, files and view, so that whoever asks again does not work it out again.
 */
export function lightOfSetup(shoot: Shoot, setupId: string, view: View): SetupLight {
  const setup = shoot.lighting[setupId];
  if (!setup) return worked(shoot, setupId, view);
  const { kit, files } = shoot;
  const of = [setupId, kit.lamps, kit.modifiers, files, photometryTold(shoot), view.azimuth_deg, view.elevation_deg];
  const known = kept.get(setup) ?? [];
  const found = known.find((each) => each.of.every((part, i) => Object.is(part, of[i])));
  if (found) return found.light;
  const light = worked(shoot, setupId, view);
  kept.set(setup, [{ of, light }, ...known].slice(0, MOST_KEPT));
  return light;
}

function worked(shoot: Shoot, setupId: string, view: View): SetupLight {
  const camera = towardsCamera(view);
  const path = `/lighting/${setupId}`;
  const { faces } = shoot.lighting[setupId] ?? {};
  const normal = faces && Math.hypot(...vecOf(faces)) > 0 ? towards(ORIGIN, vecOf(faces)) : camera;
  const flags = flagsOf(shoot, setupId);
  const placed = sourcesOf(shoot, setupId, flags);
  const unread = shoot.lighting[setupId] && isUnread(shoot.lighting[setupId], 'faces') ? [{ title: 'What the lit surface faces', path: `${path}/faces`, isUnread: true }] : [];
  const alone = placed.map((each) => ({ ...each, illuminance_lx: each.isOff ? 0 : each.source ? lightAt_lx(each.source, 0, 0, 0, ...normal) : NaN }));
  const { lamps: lit, lacks: ofShares } = withReadShares(alone, path);
  const ofFlags = flags.flatMap(({ lacks }) => lacks);
  // Nobody knows which lamps a flag shades that stands nobody knows where.
  const illuminance_lx = ofFlags.length > 0 ? NaN : lit.reduce((sum, each) => sum + each.illuminance_lx, 0);
  const spread_lx = Math.hypot(...lit.map((each) => each.illuminance_lx * each.spreadFraction));
  const burning = lit.flatMap(({ isOff, source }) => (isOff || !source ? [] : [source]));
  const seen = ofFlags.length > 0 ? undefined : luminanceSeen_cd_per_m2(burning, ORIGIN, [-camera[0], -camera[1], -camera[2]]);
  const by = seen && lit.find(({ source }) => source === seen.source);
  return {
    lamps: lit.map((each) => ({ ...each, shareFraction: illuminance_lx > 0 ? each.illuminance_lx / illuminance_lx : 0, distance_m: each.source ? Math.hypot(...each.source.at) : NaN })),
    flags,
    illuminance_lx,
    spread_lx,
    ...(seen && by ? { luminance: { luminance_cd_per_m2: seen.luminance_cd_per_m2, spread_cd_per_m2: seen.luminance_cd_per_m2 * by.spreadFraction, lamp: by.id } } : {}),
    lacks: [...unread, ...ofFlags, ...lit.flatMap(({ lacks }) => lacks), ...ofShares],
  };
} // prettier-ignore

/** Whether a set-up's light is to be worked out from its lamps: some stand in it. */
export function hasLamps(setup: LightingSetup | undefined): setup is LightingSetup {
  return setup !== undefined && Object.keys(setup.lamps).length > 0;
}

/** The shoot with another set-up under its id. */
export function withSetup(shoot: Shoot, setupId: string, change: (setup: LightingSetup) => LightingSetup): Shoot {
  return { ...shoot, lighting: { ...shoot.lighting, [setupId]: change(shoot.lighting[setupId]!) } };
}
