/** How much of the light that counts each lamp of a set-up gives: as read, or as its lamps are worked out. */
import type { PlacedLamp, Shoot, Shot } from '../document/schema.ts';
import type { SetupLight } from './lighting.ts';
import { isUnread } from './unread.ts';
import type { Missing } from './types.ts';

export interface FlickerShares {
  /** By the placed lamp's id; those left out give nothing. */
  readonly shares: ReadonlyMap<string, number>;
  readonly missing: readonly Missing[];
}

export interface SharesAsked {
  readonly shoot: Shoot;
  readonly setupId: string;
  readonly shot: Shot;
  readonly light: SetupLight;
}

/** Lamps that burn. */
export function burningLamps(lamps: Readonly<Record<string, PlacedLamp>>): readonly (readonly [string, PlacedLamp])[] {
  return Object.entries(lamps).filter(([, { isOff, levelFraction = 1 }]) => isOff !== true && levelFraction > 0);
}

const none = (missing: readonly Missing[]): FlickerShares => ({ shares: new Map(), missing });

/** Each burning lamp's share of the light that counts for a shot; or why nobody knows. */
export function flickerShares({ shoot, setupId, shot, light }: SharesAsked): FlickerShares {
  const burning = burningLamps(shoot.lighting[setupId]!.lamps);
  const path = (id: string): string => `/lighting/${setupId}/lamps/${id}/share`;
  const lack = (id: string, title: string, what?: string, isBad = false): Missing => ({
    name: `${id}.shareFraction`,
    title,
    path: path(id),
    because: isBad ? 'unread' : what === undefined ? 'absent' : 'refused',
    ...(what === undefined ? {} : { what }),
  });
  if (burning.length === 0) return none([]);
  const [first] = burning[0]!;
  if (burning.length === 1) return { shares: new Map([[first, 1]]), missing: [] };
  const titleOf = (id: string): string => light.lamps.find((lamp) => lamp.id === id)?.title ?? id;
  const bad = burning.find(([, lamp]) => isUnread(lamp, 'share'));
  if (bad) return none([lack(bad[0], `Share of ${titleOf(bad[0])}`, undefined, true)]);
  const read = burning.filter(([, { shareFraction }]) => shareFraction !== undefined);
  if (isUnread(shot, 'seen')) return none([{ name: 'seen', title: 'How the subject is seen', path: `/lighting/${setupId}`, because: 'unread' }]); // prettier-ignore
  if (shot.seen === 'lit-through' && read.length === 0 && light.luminance) return { shares: new Map([[light.luminance.lamp, 1]]), missing: [] }; // prettier-ignore
  const isOneSeen = shot.seen === 'lit-through' || shot.seen === 'by-reflection';
  if (isOneSeen && read.length === 0) {
    const seen = shot.seen === 'lit-through' ? 'seen through' : 'mirrored in';
    return none([lack(first, `Which lamp is ${seen} the subject: its share`)]);
  }
  return fromReadings(burning, light, isOneSeen, lack, titleOf);
}

/** Shares that were read, and the rest of the light shared out as the lamps are worked out. */
function fromReadings(
  burning: readonly (readonly [string, PlacedLamp])[],
  light: SetupLight,
  isOneSeen: boolean,
  lack: (id: string, title: string, what?: string) => Missing,
  titleOf: (id: string) => string,
): FlickerShares {
  const read = burning.filter(([, { shareFraction }]) => shareFraction !== undefined);
  const readSum = read.reduce((sum, [, { shareFraction }]) => sum + shareFraction!, 0);
  const rest = Math.max(0, 1 - readSum);
  const others = burning.filter(([, { shareFraction }]) => shareFraction === undefined).map(([id]) => id);
  const known = read.map(([id, { shareFraction }]) => [id, shareFraction!] as const);
  const whole = (all: readonly (readonly [string, number])[]): FlickerShares => {
    const sum = all.reduce((total, [, share]) => total + share, 0);
    if (!(sum > 0)) return none([lack(burning[0]![0], `Share of ${titleOf(burning[0]![0])}`, 'no lamp lights the surface that counts')]); // prettier-ignore
    return {
      shares: new Map(all.filter(([, share]) => share > 0).map(([id, share]) => [id, share / sum])),
      missing: [],
    };
  };
  // What was read of the light seen through or mirrored is all of it.
  if (others.length === 0 || rest === 0 || isOneSeen) return whole(known);
  if (others.length === 1 && read.length > 0) return whole([...known, [others[0]!, rest]]);
  const given = others.map((id) => light.lamps.find((lamp) => lamp.id === id));
  const dark = given.find((lamp) => !Number.isFinite(lamp?.illuminance_lx ?? NaN));
  if (dark !== undefined || given.includes(undefined)) {
    const id = dark?.id ?? others[0]!;
    const [first] = dark?.lacks ?? [];
    return none([
      lack(id, `Share of ${titleOf(id)}`, first && `it cannot be worked out without ${first.title}, at ${first.path}`),
    ]);
  }
  const sum = given.reduce((total, lamp) => total + lamp!.illuminance_lx, 0);
  if (!(sum > 0)) return whole(known);
  return whole([...known, ...given.map((lamp) => [lamp!.id, (rest * lamp!.illuminance_lx) / sum] as const)]);
}
