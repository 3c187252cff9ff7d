/**
 * Random numbers by their place: what is drawn for the third take of a shot on the hundredth day is the same whatever
 * was drawn before, so that editing one shot leaves the numbers of all others alone, and two plans can be held against
 * each other over the very same days.
 *
 * Philox 4×32 with ten rounds: four counter words in, four well mixed words out, under a key of two: the seed, and the
 * FNV-1a hash of what is drawn. Good for drawing days and takes, not for secrets.
 *
 * @source philox-vectors the mixing
 * @source fnv-vectors the hash
 */

const MULTIPLY_0 = 0xd2511f53;
const MULTIPLY_1 = 0xcd9e8d57;
const WEYL_0 = 0x9e3779b9;
const WEYL_1 = 0xbb67ae85;
const ROUNDS = 10;

/** The upper half of the product of two words. */
function highProduct(aLow: number, aHigh: number, b: number): number {
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const middle = (Math.imul(aHigh, bLow) >>> 0) + (Math.imul(aLow, bLow) >>> 16);
  const cross = (Math.imul(aLow, bHigh) >>> 0) + (middle & 0xffff);
  return (Math.imul(aHigh, bHigh) >>> 0) + (middle >>> 16) + (cross >>> 16);
}

/** The words of the last block mixed; read at once, before another is. */
const mixed = new Uint32Array(4);

/** Mixes four counter words under a key of two, in place of what was mixed before. */
function mix(key0: number, key1: number, c0: number, c1: number, c2: number, c3: number): void {
  for (let round = 0; round < ROUNDS; round += 1) {
    const high0 = highProduct(MULTIPLY_0 & 0xffff, MULTIPLY_0 >>> 16, c0);
    const high1 = highProduct(MULTIPLY_1 & 0xffff, MULTIPLY_1 >>> 16, c2);
    const low0 = Math.imul(MULTIPLY_0, c0);
    const low1 = Math.imul(MULTIPLY_1, c2);
    c0 = high1 ^ c1 ^ key0;
    c1 = low1;
    c2 = high0 ^ c3 ^ key1;
    c3 = low0;
    key0 = (key0 + WEYL_0) | 0;
    key1 = (key1 + WEYL_1) | 0;
  }
  mixed[0] = c0;
  mixed[1] = c1;
  mixed[2] = c2;
  mixed[3] = c3;
}

type Counter = readonly [number, number, number, number];

/** Four words mixed under a key of two, in the order of the generator's own test vectors. */
export function philoxWords(key: readonly [number, number], counter: Counter): Uint32Array {
  mix(...key, ...counter);
  return mixed.slice();
}

/** FNV-1a of 32 bits of a text, a byte for each character up to ÿ, two for those beyond. */
export function nameHash(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    hash = Math.imul(hash ^ (code & 0xff), 0x01000193);
    if (code > 0xff) hash = Math.imul(hash ^ (code >>> 8), 0x01000193);
  }
  return hash >>> 0;
}

export interface DrawKey {
  readonly seed: number;
  readonly name: number;
}

/** The key of a seed and the words that say what is drawn, such as the id of a shot and "takes". */
export function drawKey(seed: number, ...purpose: readonly string[]): DrawKey {
  return { seed: seed >>> 0, name: nameHash(purpose.join('/')) };
}

/** A word as a number in (0, 1): never either, so that every quantile of it exists. */
const share = (word: number): number => (word + 0.5) / 2 ** 32;

/** Four numbers in (0, 1), written to `into` from `at` on: those of this key at a place, such as day, take and block. */
export function drawFour(key: DrawKey, x: number, y: number, z: number, into: Float64Array, at = 0): void {
  mix(key.seed, key.name, x, y, z, 0);
  into[at] = share(mixed[0]!);
  into[at + 1] = share(mixed[1]!);
  into[at + 2] = share(mixed[2]!);
  into[at + 3] = share(mixed[3]!);
}
