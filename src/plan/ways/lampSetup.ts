/** The set-up whose lamps light a shot, where other lamps in it would change that light. */
import type { Shoot } from '../../document/schema.ts';
import { withDefaults } from '../givens.ts';
import { hasLamps } from '../lighting.ts';

/** Undefined where no lamp stands, or where a reading from the set counts until it is taken again. */
export function lampSetupOf(shoot: Shoot, shotId: string): string | undefined {
  if (!Object.hasOwn(shoot.shots, shotId)) return undefined;
  const setupId = withDefaults(shoot, shotId).shot.lighting;
  const setup = setupId === undefined ? undefined : shoot.lighting[setupId];
  if (!hasLamps(setup)) return undefined;
  const isRead = setup.reading === 'metered' && (setup.illuminance_lx ?? setup.luminance_cd_per_m2) !== undefined;
  return isRead ? undefined : setupId;
}
