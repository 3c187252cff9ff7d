/**
 * The discrete Fourier transform of a series whose length is a power of two.
 *
 *     X[k] = Σ x[n] · e^(−2πi·k·n/N)
 *
 * Backwards: the same with the real and the imaginary part exchanged, over N.
 */
interface Turns {
  readonly cosines: Float64Array;
  readonly sines: Float64Array;
  readonly order: Uint32Array;
}

/** Kept for each length met: a clip transforms the same length thousands of times. */
const known = new Map<number, Turns>();

function turnsOf(n: number): Turns {
  let turns = known.get(n);
  if (!turns) {
    if (n < 1 || (n & (n - 1)) !== 0) throw new RangeError(`length must be a power of two, got ${n}`);
    const cosines = new Float64Array(n / 2);
    const sines = new Float64Array(n / 2);
    for (let k = 0; k < n / 2; k += 1) {
      cosines[k] = Math.cos((2 * Math.PI * k) / n);
      sines[k] = -Math.sin((2 * Math.PI * k) / n);
    }
    const order = new Uint32Array(n);
    for (let i = 1, j = 0; i < n; i += 1) {
      let bit = n >> 1;
      for (; j & bit; bit >>= 1) j ^= bit;
      j ^= bit;
      order[i] = j;
    }
    turns = { cosines, sines, order };
    known.set(n, turns);
  }
  return turns;
}

/** In place. Throws RangeError unless the length is a power of two. */
export function fourier(real: Float64Array, imaginary: Float64Array): void {
  const n = real.length;
  const { cosines, sines, order } = turnsOf(n);
  for (let i = 1; i < n; i += 1) {
    const j = order[i]!;
    if (i >= j) continue;
    const r = real[i]!;
    const m = imaginary[i]!;
    real[i] = real[j]!;
    imaginary[i] = imaginary[j]!;
    real[j] = r;
    imaginary[j] = m;
  }
  for (let size = 2; size <= n; size *= 2) {
    const half = size / 2;
    const stride = n / size;
    for (let block = 0; block < n; block += size) {
      let turn = 0;
      let a = block;
      let b = a + half;
      for (let k = 0; k < half; k += 1) {
        const c = cosines[turn]!;
        const s = sines[turn]!;
        const r = real[b]! * c - imaginary[b]! * s;
        const m = real[b]! * s + imaginary[b]! * c;
        real[b] = real[a]! - r;
        imaginary[b] = imaginary[a]! - m;
        real[a] = real[a]! + r;
        imaginary[a] = imaginary[a]! + m;
        turn += stride;
        a += 1;
        b += 1;
      }
    }
  }
}

/** The least power of two that is no smaller than a number of 1 or above. */
export function powerOfTwoFrom(least: number): number {
  let n = 1;
  while (n < least) n *= 2;
  return n;
}
