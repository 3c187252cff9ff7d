/**
 * From the code values of a recording back to light: the curve that wrote them, undone.
 *
 *     signal = (code − black) / (white − black)        light = curve⁻¹(signal), 1 at white of curves that end there
 *
 * Below black a curve is carried on turned about black, so that noise about black still averages to none.
 *
 * @source bt709-curve the curve of high-definition video, forth and back
 * @source srgb-curve the curve of stills and screens
 * @source pq-curve the curve of light as a screen shows it, up to 10 000 cd/m², forth and back
 * @source hlg-curve a square root below a twelfth of white and a logarithm above
 * @source log-curve a logarithmic curve with a straight foot, its constants as its authors publish them
 */
import { assertNever, requireCount, requireFinite, requirePositive } from '../base/domain.ts';

export type TransferCurve =
  | { readonly kind: 'linear' }
  /** signal = light^(1/exponent), such as 2.2. */
  | { readonly kind: 'gamma'; readonly exponent: number }
  | { readonly kind: 'srgb' }
  | { readonly kind: 'rec709' }
  /** Of a screen, 1 at 10 000 cd/m². */
  | { readonly kind: 'pq' }
  | { readonly kind: 'hlg' }
  | { readonly kind: 'acescct' }
  | LogCurve;

/** signal = c·log₁₀(a·light + b) + d above the cut, e·light + f below: the form in which makers publish their curves. */
export interface LogCurve {
  readonly kind: 'log';
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
  /** Light at which the straight foot ends. */
  readonly cut: number;
}

/** How code values stand for a signal. */
export interface Coding {
  readonly bitDepth: number;
  readonly blackCode: number;
  readonly whiteCode: number;
  /** From here on a pixel counts as clipped; white where left out. */
  readonly clippedCode?: number;
}

function requireCurve(curve: TransferCurve): void {
  if (curve.kind === 'gamma') requirePositive({ exponent: curve.exponent });
  if (curve.kind !== 'log') return;
  const { a, b, c, d, e, f, cut } = curve;
  requirePositive({ a, c, e });
  requireFinite({ b, d, f, cut });
}

const PQ = { m1: 2610 / 16_384, m2: (2523 / 4096) * 128, c1: 3424 / 4096, c2: (2413 / 4096) * 32, c3: (2392 / 4096) * 32 } as const; // prettier-ignore

const HLG = { a: 0.17883277, b: 0.28466892, c: 0.55991073 } as const;

/** Light of a signal of zero or above. */
function lightAbove(curve: TransferCurve, signal: number): number {
  switch (curve.kind) {
    case 'linear':
      return signal;
    case 'gamma':
      return signal ** curve.exponent;
    case 'srgb':
      return signal <= 0.04045 ? signal / 12.92 : ((signal + 0.055) / 1.055) ** 2.4;
    case 'rec709':
      return signal < 0.081 ? signal / 4.5 : ((signal + 0.099) / 1.099) ** (1 / 0.45);
    case 'pq': {
      const power = signal ** (1 / PQ.m2);
      return (Math.max(0, power - PQ.c1) / (PQ.c2 - PQ.c3 * power)) ** (1 / PQ.m1);
    }
    case 'hlg':
      return signal <= 0.5 ? signal ** 2 / 3 : (Math.exp((signal - HLG.c) / HLG.a) + HLG.b) / 12;
    case 'acescct':
      return signal <= 0.155251141552511
        ? (signal - 0.0729055341958355) / 10.5402377416545
        : 2 ** (signal * 17.52 - 9.72);
    case 'log': {
      const { a, b, c, d, e, f, cut } = curve;
      return signal > e * cut + f ? (10 ** ((signal - d) / c) - b) / a : (signal - f) / e;
    }
    default:
      return assertNever(curve);
  }
}

/** Signal that stands for no light at all. */
function signalOfNone(curve: TransferCurve): number {
  if (curve.kind === 'acescct') return 0.0729055341958355;
  return curve.kind === 'log' ? curve.f : 0;
}

/** Light of a signal, 0 at black and 1 at white. Throws RangeError for a curve without meaning. */
export function lightOf(curve: TransferCurve, signal: number): number {
  requireCurve(curve);
  requireFinite({ signal });
  const none = signalOfNone(curve);
  return signal >= none ? lightAbove(curve, signal) : -lightAbove(curve, 2 * none - signal);
}

/** Light of every code value. Throws RangeError for a coding or a curve without meaning. */
export function lightTable(curve: TransferCurve, { bitDepth, blackCode, whiteCode }: Coding): Float32Array {
  requireCount({ bitDepth }, 1);
  requireCount({ blackCode, whiteCode });
  if (bitDepth > 16) throw new RangeError(`bitDepth must be at most 16, got ${bitDepth}`);
  if (whiteCode <= blackCode || whiteCode >= 2 ** bitDepth)
    throw new RangeError(`whiteCode must lie above ${blackCode} and below ${2 ** bitDepth}, got ${whiteCode}`);
  const table = new Float32Array(2 ** bitDepth);
  for (let code = 0; code < table.length; code += 1)
    table[code] = lightOf(curve, (code - blackCode) / (whiteCode - blackCode));
  return table;
}

/** Code values of video levels, black at 16 and white at 235 of eight bits, or of the whole range. */
export function codingOf(range: 'video' | 'full', bitDepth: number): Coding {
  if (range === 'full') return { bitDepth, blackCode: 0, whiteCode: 2 ** bitDepth - 1 };
  return { bitDepth, blackCode: 16 * 2 ** (bitDepth - 8), whiteCode: 235 * 2 ** (bitDepth - 8) };
}
