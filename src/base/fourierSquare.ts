/**
 * The discrete Fourier transform of a square whose side is a power of two, forth and back, for squares that are transformed
 * by the thousand.
 *
 *     X[k, l] = Σ x[n, m] · e^(−2πi·(k·n + l·m)/N)
 *
 * All columns are taken together, row by row, two halvings at a time; then the square is turned and taken again. Its rates
 * are left in the order in which halving leaves them, which saves putting them in order and out of it again: what lies where
 * is told apart.
 */
import { requireCount } from './domain.ts';

export interface SquareTransform {
  /** In place. */
  readonly forth: (real: Float64Array, imaginary: Float64Array) => void;
  /** In place, from the order in which `forth` leaves it; side² times as large. */
  readonly back: (real: Float64Array, imaginary: Float64Array) => void;
  /** Rate across and down of each place, in turns over the side, and the place of the opposite rate. */
  readonly across: Uint32Array;
  readonly down: Uint32Array;
  readonly opposite: Uint32Array;
}

/** Numbers with their bits in reverse. */
function reversed(side: number): Uint32Array {
  const bits = Math.log2(side);
  return Uint32Array.from({ length: side }, (_, i) => {
    let turned = 0;
    for (let bit = 0; bit < bits; bit += 1) turned |= ((i >> bit) & 1) << (bits - 1 - bit);
    return turned;
  });
}

function turn(values: Float64Array, side: number): void {
  for (let y = 1; y < side; y += 1)
    for (let x = 0, a = y * side, b = y; x < y; x += 1, a += 1, b += side) {
      const value = values[a]!;
      values[a] = values[b]!;
      values[b] = value;
    }
}

/** A transform of squares of this side. Throws RangeError unless it is a power of two, 2 or above. */
export function createSquareTransform(side: number): SquareTransform {
  requireCount({ side }, 2);
  if ((side & (side - 1)) !== 0) throw new RangeError(`side must be a power of two, got ${side}`);
  const cosines = Float64Array.from({ length: side }, (_, k) => Math.cos((2 * Math.PI * k) / side));
  const sines = Float64Array.from({ length: side }, (_, k) => -Math.sin((2 * Math.PI * k) / side));
  const isOdd = Math.log2(side) % 2 === 1;

  /** The halving that is left over, of rows next to each other: the same forth and back. */
  const pairs = (real: Float64Array, imaginary: Float64Array): void => {
    for (let a = 0; a < side * side; a += 2 * side)
      for (let i = a, j = a + side; i < a + side; i += 1, j += 1) {
        const r = real[j]!;
        const m = imaginary[j]!;
        real[j] = real[i]! - r;
        imaginary[j] = imaginary[i]! - m;
        real[i] = real[i]! + r;
        imaginary[i] = imaginary[i]! + m;
      }
  };

  /** Along all columns: from order to reverse order. */
  const columnsForth = (real: Float64Array, imaginary: Float64Array): void => {
    let size = side;
    for (; size >= 4; size /= 4) {
      const quarter = size / 4;
      const step = side / size;
      for (let block = 0; block < side; block += size)
        for (let k = 0; k < quarter; k += 1) {
          const c1 = cosines[k * step]!;
          const s1 = sines[k * step]!;
          const c2 = cosines[2 * k * step]!;
          const s2 = sines[2 * k * step]!;
          const c3 = cosines[3 * k * step]!;
          const s3 = sines[3 * k * step]!;
          let a = (block + k) * side;
          let b = a + quarter * side;
          let c = b + quarter * side;
          let d = c + quarter * side;
          for (const end = a + side; a < end; a += 1, b += 1, c += 1, d += 1) {
            const ar = real[a]!;
            const ai = imaginary[a]!;
            const br = real[b]!;
            const bi = imaginary[b]!;
            const cr = real[c]!;
            const ci = imaginary[c]!;
            const dr = real[d]!;
            const di = imaginary[d]!;
            const pr = ar + cr;
            const pi = ai + ci;
            const qr = br + dr;
            const qi = bi + di;
            const mr = ar - cr;
            const mi = ai - ci;
            const nr = bi - di;
            const ni = dr - br;
            real[a] = pr + qr;
            imaginary[a] = pi + qi;
            const ur = pr - qr;
            const ui = pi - qi;
            real[b] = ur * c2 - ui * s2;
            imaginary[b] = ur * s2 + ui * c2;
            const vr = mr + nr;
            const vi = mi + ni;
            real[c] = vr * c1 - vi * s1;
            imaginary[c] = vr * s1 + vi * c1;
            const wr = mr - nr;
            const wi = mi - ni;
            real[d] = wr * c3 - wi * s3;
            imaginary[d] = wr * s3 + wi * c3;
          }
        }
    }
    if (isOdd) pairs(real, imaginary);
  };

  /** Along all columns, the other way: from reverse order to order. */
  const columnsBack = (real: Float64Array, imaginary: Float64Array): void => {
    if (isOdd) pairs(real, imaginary);
    for (let size = isOdd ? 8 : 4; size <= side; size *= 4) {
      const quarter = size / 4;
      const step = side / size;
      for (let block = 0; block < side; block += size)
        for (let k = 0; k < quarter; k += 1) {
          const c1 = cosines[k * step]!;
          const s1 = sines[k * step]!;
          const c2 = cosines[2 * k * step]!;
          const s2 = sines[2 * k * step]!;
          const c3 = cosines[3 * k * step]!;
          const s3 = sines[3 * k * step]!;
          let a = (block + k) * side;
          let b = a + quarter * side;
          let c = b + quarter * side;
          let d = c + quarter * side;
          for (const end = a + side; a < end; a += 1, b += 1, c += 1, d += 1) {
            const br = real[b]! * c2 + imaginary[b]! * s2;
            const bi = imaginary[b]! * c2 - real[b]! * s2;
            const cr = real[c]! * c1 + imaginary[c]! * s1;
            const ci = imaginary[c]! * c1 - real[c]! * s1;
            const dr = real[d]! * c3 + imaginary[d]! * s3;
            const di = imaginary[d]! * c3 - real[d]! * s3;
            const pr = real[a]! + br;
            const pi = imaginary[a]! + bi;
            const qr = real[a]! - br;
            const qi = imaginary[a]! - bi;
            const mr = cr + dr;
            const mi = ci + di;
            const nr = di - ci;
            const ni = cr - dr;
            real[a] = pr + mr;
            imaginary[a] = pi + mi;
            real[c] = pr - mr;
            imaginary[c] = pi - mi;
            real[b] = qr + nr;
            imaginary[b] = qi + ni;
            real[d] = qr - nr;
            imaginary[d] = qi - ni;
          }
        }
    }
  };

  const bothWays = (columns: typeof columnsForth) => (real: Float64Array, imaginary: Float64Array): void => {
    columns(real, imaginary);
    turn(real, side);
    turn(imaginary, side);
    columns(real, imaginary);
  };
  const order = reversed(side);
  const places = (of: (i: number) => number): Uint32Array => Uint32Array.from({ length: side * side }, (_, i) => of(i));
  const against = (place: number): number => order[(side - order[place]!) % side]!;
  return {
    forth: bothWays(columnsForth),
    back: bothWays(columnsBack),
    across: places((i) => order[Math.floor(i / side)]!),
    down: places((i) => order[i % side]!),
    opposite: places((i) => against(Math.floor(i / side)) * side + against(i % side)),
  };
} // prettier-ignore
