/** The spectrum of a clip's light as a drawing: depth up, in decades, over rate across. */
import { showNumber } from '../../../../base/quantity.ts';
import { alias_Hz } from '../../../../laws/flicker/alias.ts';
import type { Spectrum } from '../../../../measure/flicker/spectrum.ts';
import type { PlannedLamp } from '../../../../turnover/measureAgainst.ts';
import { columnsOf, ROUND, roomFor } from './stripLayout.ts';

export interface Decades {
  /** Powers of ten of a depth: −2 is a hundredth. */
  readonly least: number;
  readonly most: number;
}

/** Whole decades, from below what most of the spectrum lies at to above its highest. */
export function decadesOf({ depthFraction }: Spectrum): Decades {
  const sorted = depthFraction.slice().sort();
  const low = sorted[Math.floor(sorted.length / 4)] ?? 0;
  const high = sorted.at(-1) ?? 0;
  const most = Math.min(0, Math.max(-2, Math.ceil(Math.log10(Math.max(high, 1e-6)) - 1e-9)));
  const least = Math.min(most - 2, Math.max(-6, Math.floor(Math.log10(Math.max(low, 1e-6)) + 1e-9)));
  return { least, most };
}

/** In hundredths of the height, from the head. */
export const downOf = (depthFraction: number, { least, most }: Decades): number => {
  const decade = Math.log10(Math.max(depthFraction, 1e-12));
  return 100 * (1 - Math.min(1, Math.max(0, (decade - least) / (most - least))));
};

/** In hundredths of the width. */
export const acrossOf = (rate_Hz: number, frameRate_fps: number): number => (200 * rate_Hz) / frameRate_fps;

/** The deepest of each column of pixels, closed along the foot. */
export function spectrumPath({ depthFraction }: Spectrum, decades: Decades, width_px: number, height_px: number): string {
  const { high } = columnsOf(depthFraction, { from: 0, to: depthFraction.length }, width_px);
  if (high.length === 0) return '';
  const down = (depth: number) => Math.round(downOf(depth, decades) * height_px) / 100;
  const line = Array.from(high, (depth, column) => `L${column + 0.5} ${down(Number.isNaN(depth) ? 0 : depth)}`).join('');
  return `M0 ${height_px}${line}L${high.length} ${height_px}Z`;
} // prettier-ignore

export interface RateTick {
  readonly at: number;
  readonly says: string;
}

export function rateTicks(frameRate_fps: number, mostCount: number): readonly RateTick[] {
  const half_Hz = frameRate_fps / 2;
  const step_Hz = roomFor(half_Hz / Math.max(2, mostCount), ROUND);
  return Array.from({ length: Math.floor(half_Hz / step_Hz + 1e-9) + 1 }, (_, i) => ({
    at: acrossOf(i * step_Hz, frameRate_fps),
    says: `${showNumber(i * step_Hz, 6)} Hz`,
  }));
}

export const depthTicks = ({ least, most }: Decades): readonly { readonly down: number; readonly says: string }[] =>
  Array.from({ length: most - least + 1 }, (_, i) => ({
    down: downOf(10 ** (least + i), { least, most }),
    says: `${showNumber(100 * 10 ** (least + i), 1)} %`,
  }));

export interface LampTick {
  readonly at: number;
  readonly beat_Hz: number;
  readonly ripple_Hz: number;
  readonly lamps: readonly { readonly id: string; readonly title: string }[];
}

/** Where the lamps' ripples come to lie once the frames have folded them; lamps of one rate together. */
export function lampTicks(lamps: readonly PlannedLamp[], frameRate_fps: number): readonly LampTick[] {
  const byRate = new Map<number, { readonly id: string; readonly title: string }[]>();
  for (const { id, title, ripple_Hz } of lamps) byRate.set(ripple_Hz, [...(byRate.get(ripple_Hz) ?? []), { id, title }]);
  return [...byRate]
    .map(([ripple_Hz, of]) => {
      const beat_Hz = alias_Hz({ ripple_Hz, frameRate_fps });
      return { at: acrossOf(beat_Hz, frameRate_fps), beat_Hz, ripple_Hz, lamps: of };
    })
    .sort((a, b) => a.beat_Hz - b.beat_Hz);
} // prettier-ignore
