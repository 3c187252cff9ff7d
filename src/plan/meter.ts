/** A set-up that has both lamps and a reading from the set: the reading counts, and its lamps are corrected by it. */
import type { LightingSetup, Shoot } from '../document/schema.ts';
import { scaledSource } from '../laws/light/placed/source.ts';
import { lightOfSetup, type LampShare, type SetupLight, type View } from './lighting.ts';

/** What was read against what the lamps promise as they are written. */
export interface MeterCorrection {
  readonly kind: 'illuminance' | 'luminance';
  readonly read: number;
  readonly worked: number;
  /** What every lamp's light is multiplied by; of a luminance, that of the face it was read of. */
  readonly factor: number;
  readonly stops: number;
  /** How far the reading may be off, as half a band and a share of it. */
  readonly spreadFraction: number;
}

/** Light of a set-up with its lamps as a meter found them, where one did. */
export interface MeteredLight extends SetupLight {
  readonly meters: readonly MeterCorrection[];
}

/** How far a reading usually is from the truth, P10 to P90: read on the set, and only intended; common practice, no source. */
export const usualReadingSpread = ({ reading }: Pick<LightingSetup, 'reading'>): number =>
  reading === 'metered' ? 0.1 : 0.26;

/** A figure of a set-up held against its lamps; undefined where one of the two is missing, or nothing. */
function correctionOf(kind: MeterCorrection['kind'], setup: LightingSetup, worked: number | undefined): MeterCorrection | undefined {
  const [read, spread] = kind === 'illuminance' ? [setup.illuminance_lx, setup.illuminanceSpread_lx] : [setup.luminance_cd_per_m2, setup.luminanceSpread_cd_per_m2];
  if (read === undefined || worked === undefined || !(read > 0) || !(worked > 0)) return undefined;
  const factor = read / worked;
  return { kind, read, worked, factor, stops: Math.log2(factor), spreadFraction: spread === undefined ? usualReadingSpread(setup) : spread / read };
} // prettier-ignore

const correctedLamp = (lamp: LampShare, { factor, spreadFraction }: MeterCorrection): LampShare => ({
  ...lamp,
  illuminance_lx: lamp.illuminance_lx * factor,
  spreadFraction,
  ...(lamp.source ? { source: scaledSource(lamp.source, factor) } : {}),
});

/**
 * The light of a set-up, every lamp corrected by what a meter read on the set. A brightness that was read corrects the
 * lamp whose face it was read of, an illuminance all others. What is only intended corrects nothing.
 */
export function meteredLight(shoot: Shoot, setupId: string, view: View): MeteredLight {
  const light = lightOfSetup(shoot, setupId, view);
  const setup = shoot.lighting[setupId];
  if (setup?.reading !== 'metered') return { ...light, meters: [] };
  return correctedLight(light, setup);
}

/** The same for any figure that the set-up states, read or intended. */
export function correctedLight(light: SetupLight, setup: LightingSetup): MeteredLight {
  const byLight = correctionOf('illuminance', setup, light.illuminance_lx);
  const byFace = correctionOf('luminance', setup, light.luminance?.luminance_cd_per_m2);
  const meters = [byLight, byFace].filter((meter) => meter !== undefined);
  if (meters.length === 0) return { ...light, meters };
  const of = (id: string) => (byFace && id === light.luminance!.lamp ? byFace : byLight);
  const lamps = light.lamps.map((lamp) => {
    const meter = of(lamp.id);
    return meter ? correctedLamp(lamp, meter) : lamp;
  });
  const illuminance_lx = lamps.reduce((sum, lamp) => sum + lamp.illuminance_lx, 0);
  const face = light.luminance && of(light.luminance.lamp);
  return {
    ...light,
    lamps: lamps.map((lamp) => ({ ...lamp, shareFraction: illuminance_lx > 0 ? lamp.illuminance_lx / illuminance_lx : 0 })),
    illuminance_lx,
    spread_lx: byLight ? illuminance_lx * byLight.spreadFraction : Math.hypot(...lamps.map((lamp) => lamp.illuminance_lx * lamp.spreadFraction)),
    ...(light.luminance && face ? { luminance: { ...light.luminance, luminance_cd_per_m2: light.luminance.luminance_cd_per_m2 * face.factor, spread_cd_per_m2: light.luminance.luminance_cd_per_m2 * face.factor * face.spreadFraction } } : {}),
    meters,
  };
} // prettier-ignore

/** A correction in words, for the title of whatever rests on it: "corrected by −0.2 stops to what was read". */
export function correctionSaid({ stops }: Pick<MeterCorrection, 'stops'>): string {
  const size = Math.abs(stops).toFixed(1);
  if (Number(size) === 0) return 'as the reading confirms';
  return `corrected by ${stops < 0 ? '−' : '+'}${size} ${size === '1.0' ? 'stop' : 'stops'} to the reading`;
}
