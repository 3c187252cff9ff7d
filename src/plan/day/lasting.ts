/**
 * How long something takes, and how far that varies. A measured time with a spread is lognormal: never negative, with a
 * longer tail above than below, its middle the time as written and its band from P10 to P90 as wide as written. A time
 * known as "five to ten minutes, mostly seven" is a triangle.
 */
import { NINETIETH_SPREADS, normalQuantile } from '../../laws/chance/normal.ts';

export type Lasting =
  | { readonly is: 'fixed'; readonly time_s: number }
  | { readonly is: 'triangle'; readonly least_s: number; readonly usual_s: number; readonly most_s: number }
  | { readonly is: 'lognormal'; readonly median_s: number; readonly sigma: number };

export const NO_TIME: Lasting = { is: 'fixed', time_s: 0 };

/** A time that does not vary. */
export const exactly = (time_s: number): Lasting => ({ is: 'fixed', time_s });

/** A time from the least to the most, mostly the usual one. */
export const between = (least_s: number, usual_s: number, most_s: number): Lasting =>
  most_s > least_s ? { is: 'triangle', least_s, usual_s, most_s } : exactly(usual_s);

/** A time as measured; `spread_s` is half the width of the band that holds eight cases in ten. */
export function about(time_s: number, spread_s: number): Lasting {
  if (!(spread_s > 0)) return exactly(time_s);
  // A band about nothing reaches upwards only.
  if (!(time_s > 0)) return between(0, 0, 2 * spread_s);
  return { is: 'lognormal', median_s: time_s, sigma: Math.asinh(spread_s / time_s) / NINETIETH_SPREADS };
}

/** The time that lies in the middle: half of all cases are shorter. */
export function medianOf_s(lasting: Lasting): number {
  return lasting.is === 'fixed' ? lasting.time_s : lasting.is === 'lognormal' ? lasting.median_s : triangleAt(lasting, 0.5); // prettier-ignore
}

export function meanOf_s(lasting: Lasting): number {
  if (lasting.is === 'fixed') return lasting.time_s;
  if (lasting.is === 'lognormal') return lasting.median_s * Math.exp(lasting.sigma ** 2 / 2);
  return (lasting.least_s + lasting.usual_s + lasting.most_s) / 3;
}

/** Mean square of how far it is from its mean, in seconds squared. */
export function varianceOf(lasting: Lasting): number {
  if (lasting.is === 'fixed') return 0;
  if (lasting.is === 'lognormal') return meanOf_s(lasting) ** 2 * Math.expm1(lasting.sigma ** 2);
  const { least_s: a, usual_s: c, most_s: b } = lasting;
  return (a * a + b * b + c * c - a * b - a * c - b * c) / 18;
}

function triangleAt(
  { least_s, usual_s, most_s }: { readonly least_s: number; readonly usual_s: number; readonly most_s: number },
  share: number,
): number {
  const width = most_s - least_s;
  const below = (usual_s - least_s) / width;
  return share < below
    ? least_s + Math.sqrt(share * width * (usual_s - least_s))
    : most_s - Math.sqrt((1 - share) * width * (most_s - usual_s));
}

/** Equal shares that the normal distribution is tabled in: nothing rarer than one case in a thousand is drawn. */
const SHARES = 512;
let normals: Float64Array | undefined;

/** Spreads above the middle at the centre of each share; made when first asked for, as it takes a moment. */
function normalTable(): Float64Array {
  return (normals ??= Float64Array.from({ length: SHARES }, (_, i) => normalQuantile((i + 0.5) / SHARES)));
}

/** Times packed for drawing many: what they are, and up to three numbers each, in columns of one length. */
export interface PackedTimes {
  readonly shape: Uint8Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
  readonly normal: Float64Array;
}

export function packTimes(times: readonly Lasting[]): PackedTimes {
  const count = times.length;
  const packed = { shape: new Uint8Array(count), a: new Float64Array(count), b: new Float64Array(count), c: new Float64Array(count), normal: normalTable() };
  times.forEach((lasting, i) => {
    const [shape, a, b, c] =
      lasting.is === 'fixed' ? [0, lasting.time_s, 0, 0] : lasting.is === 'lognormal' ? [1, lasting.median_s, lasting.sigma, 0] : [2, lasting.least_s, lasting.usual_s, lasting.most_s];
    packed.shape[i] = shape;
    packed.a[i] = a;
    packed.b[i] = b;
    packed.c[i] = c;
  });
  return packed;
} // prettier-ignore

/** The time below which a share of all cases lie: an even draw from 0 to 1 becomes a time. */
export function timeAt_s(times: PackedTimes, i: number, share: number): number {
  const a = times.a[i]!;
  switch (times.shape[i]) {
    case 0:
      return a;
    case 1: {
      const { normal } = times;
      const place = Math.max(0, Math.min(SHARES - 1.000001, share * SHARES - 0.5));
      const below = Math.floor(place);
      const z = normal[below]! + (normal[below + 1]! - normal[below]!) * (place - below);
      return a * Math.exp(z * times.b[i]!);
    }
    default: {
      const usual = times.b[i]!;
      const most = times.c[i]!;
      const width = most - a;
      return share * width < usual - a
        ? a + Math.sqrt(share * width * (usual - a))
        : most - Math.sqrt((1 - share) * width * (most - usual));
    }
  }
}
