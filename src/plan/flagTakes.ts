/** What one flag of a set-up takes away. */
import type { Shoot } from '../document/schema.ts';
import { lightOfSetup, withSetup, type View } from './lighting.ts';

export interface FlagTakes {
  /** At the subject, off the light that there would be without it; NaN while that is not known. */
  readonly taken_lx: number;
  /** Of all the light there, as a figure of 0 or below. */
  readonly stops: number;
  /** Whether it hides the face that the camera would see behind the subject. */
  readonly hidesFace: boolean;
}

export interface FlagAsk {
  readonly shoot: Shoot;
  readonly setupId: string;
  readonly flagId: string;
  readonly view: View;
}

/** What a flag takes at the subject, found by working the set-up out without it. */
export function flagTakes({ shoot, setupId, flagId, view }: FlagAsk): FlagTakes {
  const now = lightOfSetup(shoot, setupId, view);
  const { flags } = shoot.lighting[setupId]!;
  const isIn = Object.hasOwn(flags, flagId) && flags[flagId]!.isOff !== true;
  const { [flagId]: _flag, ...others } = flags;
  const without = isIn ? lightOfSetup(withSetup(shoot, setupId, (setup) => ({ ...setup, flags: others })), setupId, view) : now; // prettier-ignore
  return {
    taken_lx: without.illuminance_lx - now.illuminance_lx,
    stops: without.illuminance_lx > 0 ? Math.log2(now.illuminance_lx / without.illuminance_lx) : 0,
    hidesFace: without.luminance !== undefined && now.luminance?.lamp !== without.luminance.lamp,
  };
}
