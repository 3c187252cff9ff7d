/** Puts the samples of colour that come through a pipe of their own to the frames they were taken of. */
import type { ColourSample } from '../measure/colour/meter.ts';
import { createAside, type Aside } from './aside.ts';
import type { ColourTaken } from './colourTaken.ts';

interface SamplesGiven {
  readonly colour: ColourTaken;
  /** Every so many frames one is sampled, the first that is so many on. */
  readonly every: number;
  readonly first: number;
}

/** A collector of samples. */
export function createColourSamples({ colour, every, first }: SamplesGiven): Aside<ColourSample['planes']> {
  const count = colour.width * colour.height;
  return createAside({
    frame_B: 3 * count * (colour.bitDepth > 8 ? 2 : 1),
    isTaken: (frame) => frame >= first && (frame - first) % every === 0,
    view: (bytes) => {
      const all = colour.bitDepth > 8 ? new Uint16Array(bytes) : new Uint8Array(bytes);
      return [all.subarray(0, count), all.subarray(count, 2 * count), all.subarray(2 * count)];
    },
  });
}
