/**
 * How warm a nearly white light is, and how far it is off to green or to pink: its place along the black bodies and beside
 * them, by Robertson's lines of equal temperature.
 *
 *     mired = 1,000,000 K / temperature        Duv: distance from the black bodies in CIE 1960 u, v = u′, ⅔·v′; above
 *     them, which is green, positive
 *
 * Between two lines the place is in proportion to the distances from both. Beyond 0.05 of the black bodies a light has no
 * such temperature.
 *
 * @source robertson-lines
 * @source cct-limit
 */
import type { Chromaticity } from './chromaticity.ts';

export interface Temperature {
  readonly place_mired: number;
  readonly duv: number;
}

/** Mired, u, v of the black body, and slope of its line of equal temperature. */
const LINES = [
  [0, 0.18006, 0.26352, -0.24341],
  [10, 0.18066, 0.26589, -0.25479],
  [20, 0.18133, 0.26846, -0.26876],
  [30, 0.18208, 0.27119, -0.28539],
  [40, 0.18293, 0.27407, -0.3047],
  [50, 0.18388, 0.27709, -0.32675],
  [60, 0.18494, 0.28021, -0.35156],
  [70, 0.18611, 0.28342, -0.37915],
  [80, 0.1874, 0.28668, -0.40955],
  [90, 0.1888, 0.28997, -0.44278],
  [100, 0.19032, 0.29326, -0.47888],
  [125, 0.19462, 0.30141, -0.58204],
  [150, 0.19962, 0.30921, -0.70471],
  [175, 0.20525, 0.31647, -0.84901],
  [200, 0.21142, 0.32312, -1.0182],
  [225, 0.21807, 0.32909, -1.2168],
  [250, 0.22511, 0.33439, -1.4512],
  [275, 0.23247, 0.33904, -1.7298],
  [300, 0.2401, 0.34308, -2.0637],
  [325, 0.24792, 0.34655, -2.4681],
  [350, 0.25591, 0.34951, -2.9641],
  [375, 0.264, 0.352, -3.5814],
  [400, 0.27218, 0.35407, -4.3633],
  [425, 0.28039, 0.35577, -5.3762],
  [450, 0.28863, 0.35714, -6.7262],
  [475, 0.29685, 0.35823, -8.5955],
  [500, 0.30505, 0.35907, -11.324],
  [525, 0.3132, 0.35968, -15.628],
  [550, 0.32129, 0.36011, -23.325],
  [575, 0.32931, 0.36038, -40.77],
  [600, 0.33724, 0.36051, -116.45],
] as const;

/** Farther from the black bodies than this, no temperature means anything. */
const MOST_DUV = 0.05;

/** How far a place lies beyond a line, towards warmer ones. */
function beyond([, u0, v0, slope]: (typeof LINES)[number], u: number, v: number): number {
  return -(v - v0 - slope * (u - u0)) / Math.hypot(1, slope);
}

/** Temperature and tint of a light; undefined for one too far from any black body between 1,667 K and without end. */
export function temperatureOf({ u, v: v76 }: Chromaticity): Temperature | undefined {
  const v = (2 / 3) * v76;
  for (let i = 0; i + 1 < LINES.length; i += 1) {
    const [cool, warm] = [LINES[i]!, LINES[i + 1]!];
    const [past, short] = [beyond(cool, u, v), beyond(warm, u, v)];
    if (past * short > 0) continue;
    const share = past === short ? 0 : past / (past - short);
    const between = (at: 1 | 2) => cool[at] + (warm[at] - cool[at]) * share;
    const duv = Math.hypot(u - between(1), v - between(2)) * Math.sign(v - between(2));
    if (Math.abs(duv) > MOST_DUV) return undefined;
    return { place_mired: cool[0] + (warm[0] - cool[0]) * share, duv };
  }
  return undefined;
}
