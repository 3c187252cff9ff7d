/**
 * Grey of a relative luminance on a screen, finer than its 256 steps: neighbouring pixels take the step below and the one
 * above, in a fixed pattern, so that together they come to what lies between. A flicker of a hundredth of a stop would
 * otherwise vanish, or jump.
 *
 * Source: IEC 61966-2-1, the transfer curve of sRGB, as WCAG 2.2 defines relative luminance by it (from memory).
 */

const KNEE = 0.0031308;

/** The code of a relative luminance, 0 to 255, with what lies between whole codes. */
export function codeOf(level: number): number {
  const held = Math.min(1, Math.max(0, level));
  return 255 * (held <= KNEE ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055);
}

/** One grey for all of an area. */
export function greyOf(level: number): string {
  const code = Math.round(codeOf(level));
  return `rgb(${code} ${code} ${code})`;
}

/** Side of the pattern in which pixels are raised one after another. */
const SIDE = 8;

/** The order in which the pixels of a square are raised, spread as evenly as can be. */
function orderOf(side: number): readonly (readonly number[])[] {
  if (side === 1) return [[0]];
  const half = orderOf(side / 2);
  return Array.from({ length: side }, (_, y) =>
    Array.from({ length: side }, (__, x) => {
      const quarter = [0, 2, 3, 1][2 * Math.floor((2 * y) / side) + Math.floor((2 * x) / side)]!;
      return 4 * half[y % (side / 2)]![x % (side / 2)]! + quarter;
    }),
  );
}

const ORDER = orderOf(SIDE);

/** Fills a square of RGBA pixels, row after row, with one level. */
export function paintLevel(pixels: Uint8ClampedArray, side_px: number, level: number): void {
  const code = codeOf(level);
  const low = Math.floor(code);
  const raised = (code - low) * SIDE * SIDE;
  for (let y = 0; y < side_px; y += 1)
    for (let x = 0; x < side_px; x += 1) {
      const grey = low + (ORDER[y % SIDE]![x % SIDE]! < raised ? 1 : 0);
      const at = 4 * (y * side_px + x);
      pixels[at] = grey;
      pixels[at + 1] = grey;
      pixels[at + 2] = grey;
      pixels[at + 3] = 255;
    }
}
