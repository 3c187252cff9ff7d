/**
 * Where a light of red, green and blue lies among colours, whatever its brightness.
 *
 *     X, Y, Z = M·(R, G, B)        u′ = 4X / (X + 15Y + 3Z)        v′ = 9Y / (X + 15Y + 3Z)
 *
 * M has the primaries' X, Y, Z as columns, scaled so that equal parts of them make the white.
 *
 * @source cie-1976-ucs
 * @source bt709-matrix primaries of high definition, those of sRGB too
 * @source bt2020-matrix
 * @source bt601-matrix primaries of 525 and of 625 lines
 * @source p3-primaries
 */
export type PrimariesName = 'bt709' | 'bt2020' | 'smpte-c' | 'ebu' | 'p3-d65';

/** CIE 1931 x and y. */
type Xy = readonly [x: number, y: number];

const PRIMARIES: Readonly<Record<PrimariesName, readonly [red: Xy, green: Xy, blue: Xy]>> = {
  bt709: [[0.64, 0.33], [0.3, 0.6], [0.15, 0.06]],
  bt2020: [[0.708, 0.292], [0.17, 0.797], [0.131, 0.046]],
  'smpte-c': [[0.63, 0.34], [0.31, 0.595], [0.155, 0.07]],
  ebu: [[0.64, 0.33], [0.29, 0.6], [0.15, 0.06]],
  'p3-d65': [[0.68, 0.32], [0.265, 0.69], [0.15, 0.06]],
}; // prettier-ignore
/** D65, the white of them all. */
const WHITE: Xy = [0.3127, 0.329];

/** Of light: a place in the CIE 1976 diagram. */
export interface Chromaticity {
  readonly u: number;
  readonly v: number;
}

/** Row by row. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number];

const xyzOf = ([x, y]: Xy): readonly [number, number, number] => [x / y, 1, (1 - x - y) / y];

/** The solution of a·p + b·q + c·r = w, column by column. */
function solved(
  [p, q, r]: readonly (readonly [number, number, number])[],
  w: readonly [number, number, number],
): readonly [number, number, number] {
  const across = (a: readonly [number, number, number], b: readonly [number, number, number]) =>
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]] as const;
  const along = (a: readonly [number, number, number], b: readonly [number, number, number]) =>
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const whole = along(p!, across(q!, r!));
  return [along(w, across(q!, r!)) / whole, along(w, across(r!, p!)) / whole, along(w, across(p!, q!)) / whole];
} // prettier-ignore

/** From light of the primaries to X, Y, Z, with Y 1 at white. */
export function xyzMatrix(primaries: PrimariesName): Matrix3 {
  const columns = PRIMARIES[primaries].map(xyzOf);
  const scale = solved(columns, xyzOf(WHITE));
  const row = (i: 0 | 1 | 2) => columns.map((column, j) => column[i] * scale[j]!);
  return [...row(0), ...row(1), ...row(2)] as unknown as Matrix3;
}

/** Where X, Y, Z lie. Undefined for light that is none. */
export function placeOfXyz(x: number, y: number, z: number): Chromaticity | undefined {
  const sum = x + 15 * y + 3 * z;
  return sum > 0 && y > 0 ? { u: (4 * x) / sum, v: (9 * y) / sum } : undefined;
}

/** Where light of these primaries lies. Undefined for light that is none. */
export const chromaticityOf = (m: Matrix3, red: number, green: number, blue: number): Chromaticity | undefined =>
  placeOfXyz(m[0] * red + m[1] * green + m[2] * blue, m[3] * red + m[4] * green + m[5] * blue, m[6] * red + m[7] * green + m[8] * blue); // prettier-ignore

/** Of the white of all these primaries. */
export const WHITE_CHROMATICITY: Chromaticity = chromaticityOf(xyzMatrix('bt709'), 1, 1, 1)!;

export const apart = (a: Chromaticity, b: Chromaticity): number => Math.hypot(a.u - b.u, a.v - b.v);
