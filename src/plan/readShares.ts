/**
 * Lamps whose share of the light at the subject was read, such as house lights: what they give follows from what the
 * other lamps are worked out to give, so that their share is that share.
 */
import { showNumber } from '../base/quantity.ts';
import type { LampLack } from './lampLack.ts';
import type { PlacedSource } from './placedSources.ts';

export interface Lit extends PlacedSource {
  readonly illuminance_lx: number;
}

/** Shares this near to all of the light leave nothing to the others. */
const ALL = 1 - 1e-9;

const burning = ({ isOff, readFraction }: PlacedSource): boolean => !isOff && readFraction !== undefined;

/** The lamps with what those of a read share give, and why nobody knows. */
export function withReadShares(lamps: readonly Lit[], setupPath: string): { readonly lamps: readonly Lit[]; readonly lacks: readonly LampLack[] } {
  const read = lamps.filter(burning);
  const sum = read.reduce((total, { readFraction }) => total + readFraction!, 0);
  const given = (perShare_lx: number) => lamps.map((lamp) => (burning(lamp) ? { ...lamp, illuminance_lx: lamp.readFraction! * perShare_lx } : lamp));
  if (!(sum > 0)) return { lamps: given(0), lacks: [] };
  const worked_lx = lamps.reduce((total, lamp) => total + (burning(lamp) ? 0 : lamp.illuminance_lx), 0);
  const path = `${setupPath}/lamps/${read.find(({ readFraction }) => readFraction! > 0)!.id}/share`;
  const lack = (what: string) => ({ lamps: given(NaN), lacks: [{ title: 'Light that the shares are of', path, isUnread: false, what }] });
  if (sum > ALL) return lack(`the shares sum to ${showNumber(sum * 100, 3)} %, which leaves nothing to the lamps that are worked out: take out the share of one that is`);
  if (worked_lx === 0) return lack('none of the lamps that are worked out lights the side that counts, so nothing says of how much light these are a share');
  return { lamps: given(worked_lx / (1 - sum)), lacks: [] };
} // prettier-ignore
