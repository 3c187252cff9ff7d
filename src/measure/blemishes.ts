/** Faults of sensor and glass that stay where they are: single pixels, dust, and a pattern of columns and rows. */
import { createDustFinder, type DustSpot, type DustState } from './dust.ts';
import { createFixedPatternMeter, type FixedPattern, type FixedPatternState } from './fixedPattern.ts';
import type { Plane } from './frameReader.ts';
import type { Grid } from './grid.ts';
import { createFixedPixelFinder, type FixedPixel, type FixedPixelState } from './noise.ts';
import type { Coding } from './transfer.ts';

export interface Blemishes {
  readonly fixedPixels: readonly FixedPixel[];
  readonly dust: readonly DustSpot[];
  readonly fixedPattern: FixedPattern;
}

export interface BlemishState {
  readonly fixedPixels: FixedPixelState;
  readonly dust: DustState;
  readonly fixedPattern: FixedPatternState;
}

export interface BlemishFinder {
  /** Looks at a whole picture; a few, far apart, are enough. */
  readonly look: (plane: Plane) => void;
  readonly found: () => Blemishes;
  readonly state: () => BlemishState;
}

export interface BlemishGiven extends Pick<Grid, 'width' | 'height'> {
  readonly coding: Coding;
  readonly table: Float32Array;
}

/** A finder of all three, from the first frame or from where it was saved. */
export function createBlemishFinder(given: BlemishGiven, saved?: BlemishState): BlemishFinder {
  const pixels = createFixedPixelFinder(given.coding.bitDepth, saved?.fixedPixels);
  const dust = createDustFinder(given, saved?.dust);
  const pattern = createFixedPatternMeter(given, saved?.fixedPattern);
  return {
    look: (plane) => {
      for (const of of [pixels, dust, pattern]) of.look(plane);
    },
    found: () => ({ fixedPixels: pixels.found(), dust: dust.found(), fixedPattern: pattern.found() }),
    state: () => ({ fixedPixels: pixels.state(), dust: dust.state(), fixedPattern: pattern.state() }),
  };
}
