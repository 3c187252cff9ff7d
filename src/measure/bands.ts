/**
 * Bands that a rolling shutter draws across the picture, also those finer than a tile: waves down the rows that show alike in
 * the left and the right half of the picture and go on from frame to frame by the same step.
 *
 *     X_n(k) = Σ w(y)·ln(light of row y)·e^(−2πi·k·y/H)        S = Re(mean of X·X′* − mean X·mean X′*)
 *     A = 2·√S / Σw        step = arg(mean of X_n·X*_(n−1) − |mean X|²)        f = R·(step/2π + m), m 0, 1, 2 …
 *     row time = k / (f·H)
 *
 * X left half, X′ right half, n frame        w a Hann window        H rows        A amplitude of the light's logarithm        R frame
 * rate. What stands still is the mean, and goes out; noise and what moves in one half have no share in the other; what goes to
 * and fro has a mean of (X − mean)², and what goes round has none. Since all
 * rows are read within one frame, f is k·R at least. Bands that stand still from frame to frame cannot be told from the set.
 *
 * @source rolling-geometry
 */
import { requirePositive } from '../base/domain.ts';
import { fourier, powerOfTwoFrom } from '../base/fourier.ts';
import { medianOf } from '../base/median.ts';
import type { Grid } from './grid.ts';

/** A rate that would draw these bands, and how long a row then takes. */
export interface BandCandidate {
  readonly rate_Hz: number;
  readonly rowTime_s: number;
  readonly mains_Hz?: 50 | 60;
}

export interface Bands {
  /** In the height of the picture. */
  readonly bandsPerFrame: number;
  readonly depthFraction: number;
  /** By which they go on from frame to frame, 0 to 1 of a band; and how steadily, 0 to 1. */
  readonly stepFraction: number;
  readonly coherenceFraction: number;
  /** Slowest first, a few; none is chosen here. */
  readonly candidates: readonly BandCandidate[];
}

/** Sums over frames, rate after rate: of both halves, their powers, and of one frame with the one before. */
export interface BandState {
  readonly sums: Float64Array;
  readonly before: Float64Array;
  readonly count: number;
  readonly pairs: number;
}

export interface BandMeter {
  /** The cells of a frame, repeated ones left out. */
  readonly next: (cells: Float32Array) => void;
  /** The next frame does not follow on the one before. */
  readonly breakOff: () => void;
  readonly found: (frameRate_fps: number) => readonly Bands[];
  readonly state: () => BandState;
}

/** What is summed at each rate. */
const KEPT = ['leftReal', 'leftImaginary', 'rightReal', 'rightImaginary', 'leftPower', 'rightPower', 'cross', 'lagReal', 'lagImaginary', 'squareReal', 'squareImaginary'] as const; // prettier-ignore
const FEWEST_FRAMES = 24;
const FEWEST_ROWS = 24;
/**
 * Fewer bands than this are told tile by tile, and here would be the shape of a light that pulses; more than this share of the
 * rows cannot be told from noise.
 */
const FEWEST_BANDS = 3;
const FINEST = 0.45;
/** Halves that agree, and frames that go on steadily, by at least so much. */
const ALIKE = 0.6;
const STEADY = 0.7;
/** What goes to and fro, as a picture that shakes does, comes back to itself; what goes round does not. */
const SWAYING = 0.5;
/** No picture shakes to and fro from each frame to the next, but bands of half the frame rate do. */
const AT_ONCE = -0.8;
/** Above what lies beside it, and how far beside, in bands. */
const CLEAR = 8;
const GUARD = 2.5;
const BESIDE = 8;
const MOST_FOUND = 3;
const DARKEST = 1e-5;
const FASTEST_LAMP_Hz = 30_000;
const MOST_CANDIDATES = 5;
const MAINS_Hz = [50, 60] as const;
const MAINS_STRAYS_Hz = 1;

function candidatesOf(bands: number, step: number, rows: number, frameRate_fps: number): readonly BandCandidate[] {
  const found: BandCandidate[] = [];
  const least = Math.max(0, Math.ceil(bands - step));
  for (let m = least; found.length < MOST_CANDIDATES; m += 1) {
    const rate_Hz = frameRate_fps * (m + step);
    if (rate_Hz > FASTEST_LAMP_Hz) break;
    const mains_Hz = MAINS_Hz.find((mains) => Math.abs(rate_Hz - 2 * mains) <= MAINS_STRAYS_Hz);
    if (rate_Hz > 0) found.push({ rate_Hz, rowTime_s: bands / (rate_Hz * rows), ...(mains_Hz && { mains_Hz }) });
  }
  return found;
}

/** A meter that is given every frame in turn, from the first or from where it was saved. */
export function createBandMeter(grid: Grid, saved?: BandState): BandMeter {
  const { cellColumns, cellRows, cell_px, height } = grid;
  const { step } = grid.rowsRead;
  const lines = cell_px / step;
  const size = powerOfTwoFrom(2 * cellRows);
  const points = size / 2;
  const fade = Float64Array.from({ length: cellRows }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / cellRows) ** 2);
  const whole = fade.reduce((sum, weight) => sum + weight, 0);
  const sums = saved?.sums.slice() ?? new Float64Array(KEPT.length * points);
  const before = saved?.before.slice() ?? new Float64Array(2 * points);
  let { count, pairs } = saved ?? { count: 0, pairs: 0 };
  let isFollowed = count > 0 && before.some((value) => value !== 0);
  const [real, imaginary] = [new Float64Array(size), new Float64Array(size)];
  const middle = Math.floor(cellColumns / 2);
  const isTall = cellRows >= FEWEST_ROWS && middle > 0;

  const next = (cells: Float32Array): void => {
    if (!isTall) return;
    real.fill(0);
    imaginary.fill(0);
    for (let y = 0, i = 0; y < cellRows; y += 1) {
      let [left, right] = [0, 0];
      for (let x = 0; x < middle; x += 1, i += 1) left += cells[i]!;
      for (let x = middle; x < cellColumns; x += 1, i += 1) right += cells[i]!;
      real[y] = fade[y]! * Math.log(Math.max(left / middle, DARKEST));
      imaginary[y] = fade[y]! * Math.log(Math.max(right / (cellColumns - middle), DARKEST));
    }
    fourier(real, imaginary);
    for (let k = 1; k < points; k += 1) {
      const m = size - k;
      // Two real series share one transform: they are its even and odd parts.
      const [lr, li] = [(real[k]! + real[m]!) / 2, (imaginary[k]! - imaginary[m]!) / 2];
      const [rr, ri] = [(imaginary[k]! + imaginary[m]!) / 2, (real[m]! - real[k]!) / 2];
      const at = KEPT.length * k;
      sums[at] = sums[at]! + lr;
      sums[at + 1] = sums[at + 1]! + li;
      sums[at + 2] = sums[at + 2]! + rr;
      sums[at + 3] = sums[at + 3]! + ri;
      sums[at + 4] = sums[at + 4]! + lr * lr + li * li;
      sums[at + 5] = sums[at + 5]! + rr * rr + ri * ri;
      sums[at + 6] = sums[at + 6]! + lr * rr + li * ri;
      const [nowReal, nowImaginary] = [(lr + rr) / 2, (li + ri) / 2];
      sums[at + 9] = sums[at + 9]! + nowReal * nowReal - nowImaginary * nowImaginary;
      sums[at + 10] = sums[at + 10]! + 2 * nowReal * nowImaginary;
      if (isFollowed) {
        sums[at + 7] = sums[at + 7]! + nowReal * before[2 * k]! + nowImaginary * before[2 * k + 1]!;
        sums[at + 8] = sums[at + 8]! + nowImaginary * before[2 * k]! - nowReal * before[2 * k + 1]!;
      }
      before[2 * k] = nowReal;
      before[2 * k + 1] = nowImaginary;
    }
    if (isFollowed) pairs += 1;
    isFollowed = true;
    count += 1;
  };

  const breakOff = (): void => {
    isFollowed = false;
    before.fill(0);
  };

  /** Of one rate: what both halves share, how far they agree, and how the frames go on. */
  const judged = (k: number) => {
    const [lr, li, rr, ri, leftPower, rightPower, cross] = sums.subarray(KEPT.length * k, KEPT.length * k + 7) as unknown as number[]; // prettier-ignore
    const [mr, mi] = [(lr! + rr!) / 2 / count, (li! + ri!) / 2 / count];
    const shared = cross! / count - (lr! * rr! + li! * ri!) / count ** 2;
    const ofLeft = leftPower! / count - (lr! ** 2 + li! ** 2) / count ** 2;
    const ofRight = rightPower! / count - (rr! ** 2 + ri! ** 2) / count ** 2;
    const lagReal = sums[KEPT.length * k + 7]! / Math.max(1, pairs) - (mr * mr + mi * mi);
    const lagImaginary = sums[KEPT.length * k + 8]! / Math.max(1, pairs);
    const squareReal = sums[KEPT.length * k + 9]! / count - (mr * mr - mi * mi);
    const squareImaginary = sums[KEPT.length * k + 10]! / count - 2 * mr * mi;
    const own = (ofLeft + ofRight + 2 * shared) / 4;
    const alike = ofLeft > 0 && ofRight > 0 ? shared / Math.sqrt(ofLeft * ofRight) : 0;
    const swaying = own > 0 ? Math.hypot(squareReal, squareImaginary) / own : 1;
    return { shared: Math.max(0, shared), alike, swaying, steady: own > 0 ? Math.min(1, Math.hypot(lagReal, lagImaginary) / own) : 0, turn: Math.atan2(lagImaginary, lagReal) }; // prettier-ignore
  };

  const found = (frameRate_fps: number): readonly Bands[] => {
    requirePositive({ frameRate_fps });
    if (!isTall || count < FEWEST_FRAMES) return [];
    const perBand = size / cellRows;
    const last = Math.floor(FINEST * cellRows * perBand);
    const all = Array.from({ length: last + Math.ceil(BESIDE * perBand) + 1 }, (_, k) => (k > 0 && k < points ? judged(k) : undefined)); // prettier-ignore
    const besides = (from: number, to: number): number => {
      const values = all.slice(Math.max(1, Math.round(from)), Math.round(to)).flatMap((of) => (of ? [of.shared] : []));
      return values.length > 0 ? medianOf(values) : 0;
    };
    const peaks: Bands[] = [];
    for (let k = Math.ceil(FEWEST_BANDS * perBand); k <= last; k += 1) {
      const [a, b, c] = [all[k - 1], all[k], all[k + 1]];
      if (!a || !b || !c || b.shared < a.shared || b.shared <= c.shared) continue;
      if (b.alike < ALIKE || b.steady < STEADY || (b.swaying > SWAYING && Math.cos(b.turn) > AT_ONCE)) continue;
      const guard = GUARD * perBand;
      const noise = Math.max(besides(k - guard - BESIDE * perBand, k - guard), besides(k + guard, k + guard + BESIDE * perBand)); // prettier-ignore
      if (b.shared < CLEAR * noise) continue;
      const bend = Math.log(a.shared) - 2 * Math.log(b.shared) + Math.log(c.shared);
      const off = bend < 0 ? (0.5 * (Math.log(a.shared) - Math.log(c.shared))) / bend : 0;
      const inCells = (k + Math.max(-0.5, Math.min(0.5, off))) / perBand;
      const bandsPerFrame = (inCells * height) / (cellRows * cell_px);
      // A row of cells is the mean of the rows read of it, over which a fine band averages out in part.
      const turn = (Math.PI * bandsPerFrame * step) / height;
      const through = Math.sin(lines * turn) / (lines * Math.sin(turn));
      const stepFraction = (b.turn / (2 * Math.PI) + 1) % 1;
      peaks.push({
        bandsPerFrame,
        depthFraction: Math.tanh((2 * Math.sqrt(b.shared)) / whole / through),
        stepFraction,
        coherenceFraction: b.steady,
        candidates: candidatesOf(bandsPerFrame, stepFraction, height, frameRate_fps),
      });
    }
    return peaks.sort((a, b) => b.depthFraction - a.depthFraction).slice(0, MOST_FOUND);
  };
  return { next, breakOff, found, state: () => ({ sums, before, count, pairs }) };
}
