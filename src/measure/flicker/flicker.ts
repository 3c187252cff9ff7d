/**
 * Flicker of a clip: waves of the light that keep one rate, looked for in the whole picture, in its ninths and in each
 * tile, so that a lamp that lights one corner is found as well.
 *
 *     ln light = trend + Σ A·cos(2πf·t + φ) + action        depth = tanh A        swing = 2·A / ln 2 stops
 *
 * Action is broad in rate and local; a lamp has one rate and its tiles keep step. In a part of the picture less than six
 * cycles cannot be told from a thing passing through. A clip with less than a cycle and a half
 * of a wave cannot tell it from a change of light, and that is what is said.
 *
 * @source flicker-practice a clip shorter than a beat looks like a ramp
 */
import { alias_Hz } from '../../laws/flicker/alias.ts';
import { faded, withoutTrend, type SpectrumGrid, type Wave } from '../lines/basis.ts';
import { candidates_Hz } from '../lines/candidates.ts';
import { findLines, leastFound, type Line } from '../lines/findLines.ts';
import { fittedRobustly, precisionOf } from '../lines/fit.ts';
import type { Candidate, FlickerLine, FlickerReading } from '../types.ts';
import { extentOf, type Extent } from './extent.ts';
import { gridOfClip, judgedTiles, livelyTiles, together, type JudgedTile, type TileLight } from './tiles.ts';

/** Cycles in the clip below which a wave cannot be told from a change of light. */
const FEWEST_CYCLES = 1.5;
/**
 * With fewer cycles than these, one bump of the action passes for a wave: only one that nearly the whole picture shows, and
 * that leaves little else, is told.
 */
const FEW_CYCLES = 6;
const FEW_CYCLES_EXTENT = 0.5;
const FEW_CYCLES_SHARE = 0.7;
/** Shallower than this no eye sees it on any screen, and clips are coded no finer: frames in between are made of others. */
const LEAST_DEPTH = 0.0005;
/** A doubtful line of which more than this share lies where the action is, is the action's. */
const OF_ACTION = 0.8;
/** Fewest frames in which anything is looked for. */
const FEWEST_FRAMES = 24;
/** Chance of a false alarm, shared among the whole picture, its ninths and all tiles. */
const CHANCE = { whole: 0.004, ninths: 0.003, tiles: 0.003 } as const;
const MOST_LINES = 6;
/** Highest harmonic that is looked for among the lines. */
const MOST_ORDER = 5;
/** Lamps faster than this are not listed among those a beat may come from. */
const FASTEST_LAMP_Hz = 30_000;
const MAINS_Hz = [50, 60] as const;
/** How far the ripple of the mains strays from twice its name. */
const MAINS_STRAYS_Hz = 1;

/** Something to look for lines in: the whole picture or a part of it. */
interface Part {
  readonly series: Float64Array;
  readonly mostChance: number;
}

function partsOf(tiles: readonly JudgedTile[], { columns, rows }: TileLight): readonly Part[] {
  const ninths = new Map<number, JudgedTile[]>();
  for (const tile of tiles) {
    const at = 3 * Math.floor((3 * tile.row) / rows) + Math.floor((3 * tile.column) / columns);
    ninths.set(at, [...(ninths.get(at) ?? []), tile]);
  }
  return [
    { series: together(tiles), mostChance: CHANCE.whole },
    ...[...ninths.values()].map((of) => ({ series: together(of), mostChance: CHANCE.ninths / ninths.size })),
    ...tiles.map(({ series }) => ({ series, mostChance: CHANCE.tiles / tiles.length })),
  ];
}

/** A line with the series in which it stands out most. */
interface Found {
  readonly line: Line;
  readonly series: Float64Array;
}

/** Lines of all parts, each rate once. */
function linesOf(parts: readonly Part[], grid: SpectrumGrid, least_Hz: number): readonly Found[] {
  const found: Found[] = [];
  const apart_Hz = 1.5 * grid.pointsPerRate * grid.step_Hz;
  const all = parts.flatMap(({ series, mostChance }) =>
    findLines(grid, series, { least_Hz, mostChance, mostLines: MOST_LINES }).map((line) => ({ line, series })),
  );
  for (const one of all.sort((a, b) => b.line.ratio - a.line.ratio))
    if (found.every(({ line }) => Math.abs(line.wave.rate_Hz - one.line.wave.rate_Hz) > apart_Hz)) found.push(one);
  return found.slice(0, MOST_LINES);
}

/** Share of what the trend leaves of a series that a wave takes up. */
function shareOf(series: Float64Array, wave: Wave, { basis }: SpectrumGrid): number {
  const rest = withoutTrend(basis, series);
  const squares = rest.reduce((sum, value, i) => sum + basis.weights[i]! * value * value, 0);
  return squares > 0 ? wave.power / squares : 0;
}

function candidatesOf(beat_Hz: number, deviation_Hz: number, frameRate_fps: number): readonly Candidate[] {
  return candidates_Hz({ beat_Hz: Math.min(beat_Hz, frameRate_fps / 2), frameRate_fps, limit_Hz: FASTEST_LAMP_Hz }).map((rate_Hz) => {
    const mains_Hz = MAINS_Hz.find((mains) => Math.abs(rate_Hz - 2 * mains) <= MAINS_STRAYS_Hz + 2 * deviation_Hz);
    return { rate_Hz, ...(mains_Hz !== undefined && { mains_Hz }) };
  });
} // prettier-ignore

/** The slowest wave that is told from a change of light. */
const slowestOf = ({ frameRate_fps, frameWeights }: TileLight): number => (FEWEST_CYCLES * frameRate_fps) / frameWeights.length; // prettier-ignore

interface Measured {
  readonly wave: Wave;
  readonly extent: Extent;
  readonly chance: number;
  readonly deviation_Hz: number;
}

function measured({ line, series }: Found, tiles: readonly JudgedTile[], grid: SpectrumGrid, clip: TileLight): Measured | undefined {
  const slowest_Hz = slowestOf(clip);
  const { wave } = fittedRobustly(grid.basis, series, line.wave, grid.step_Hz);
  const extent = extentOf(tiles, grid, { rate_Hz: wave.rate_Hz, least_Hz: slowest_Hz, columns: clip.columns, rows: clip.rows });
  if (!extent || Math.tanh(extent.amplitude) < LEAST_DEPTH) return undefined;
  const cycles = (wave.rate_Hz * clip.frameWeights.length) / clip.frameRate_fps;
  const isFew = cycles < FEW_CYCLES;
  if (isFew && (extent.extentFraction < FEW_CYCLES_EXTENT || shareOf(series, line.wave, grid) < FEW_CYCLES_SHARE)) return undefined;
  const weights = faded(clip.frameWeights);
  const amplitude = Math.hypot(line.wave.cosine, line.wave.sine);
  const precision = precisionOf({ frameRate_fps: clip.frameRate_fps, weights, amplitude, spread: Math.max(line.spread, 1e-12) });
  return { wave, extent, chance: line.chance, deviation_Hz: precision.rate_Hz };
} // prettier-ignore

/** Which harmonic of a stronger line, itself none, this one is, folded as the frames fold it. */
function harmonicOf(one: Measured, before: readonly FlickerLine[], frameRate_fps: number): FlickerLine['harmonicOf'] {
  for (let line = 0; line < before.length; line += 1) {
    const { beat_Hz, deviation_Hz, harmonicOf: of } = before[line]!;
    for (let order = 2; order <= MOST_ORDER && !of; order += 1) {
      const ripple_Hz = order * beat_Hz;
      const off_Hz = Math.abs(alias_Hz({ ripple_Hz, frameRate_fps }) - one.wave.rate_Hz);
      if (off_Hz <= 4 * Math.hypot(order * deviation_Hz, one.deviation_Hz)) return { line, order };
    }
  }
  return undefined;
}

function lineOf(one: Measured, before: readonly FlickerLine[], frameRate_fps: number): FlickerLine {
  const { wave, extent, chance, deviation_Hz } = one;
  const { amplitude, amplitudeDeviation, tileAmplitudes, bandsPerFrame, coherenceFraction, extentFraction } = extent;
  const harmonic = harmonicOf(one, before, frameRate_fps);
  return {
    beat_Hz: wave.rate_Hz,
    deviation_Hz,
    depthFraction: Math.tanh(amplitude),
    depthDeviationFraction: amplitudeDeviation,
    swing_stops: (2 * amplitude) / Math.LN2,
    chance,
    coherenceFraction,
    extentFraction,
    centre: extent.centre,
    looksLike: extent.looksLike,
    ...(bandsPerFrame !== undefined && { bandsPerFrame }),
    tileDepths: Array.from(tileAmplitudes, Math.tanh),
    candidates: candidatesOf(wave.rate_Hz, deviation_Hz, frameRate_fps),
    ...(harmonic && { harmonicOf: harmonic }),
  };
}

/** Whether what a line shows lies where things move. */
function isOfAction({ looksLike, tileDepths }: FlickerLine, lively: ReadonlySet<number>): boolean {
  if (looksLike !== 'unsure') return false;
  const [there, whole] = tileDepths.reduce(([inside, all], depth, tile) => [inside + (lively.has(tile) ? depth : 0), all + depth], [0, 0]);
  return there > OF_ACTION * whole;
} // prettier-ignore

/** Change of the light from the first tenth of the frames that count to the last. */
function driftOf(series: Float64Array, weights: Float64Array): number {
  const values = [...series].filter((_, i) => weights[i]! > 0);
  const tenth = Math.max(1, Math.floor(values.length / 10));
  const mean = (of: readonly number[]): number => of.reduce((sum, value) => sum + value, 0) / of.length;
  return (mean(values.slice(-tenth)) - mean(values.slice(0, tenth))) / Math.LN2;
}

const cannotTell = (why: string, more: Partial<FlickerReading> = {}): FlickerReading => ({ verdict: 'cannot tell', why, lines: [], blindTo_Hz: MAINS_Hz.map((mains) => 2 * mains), drift_stops: 0, judgedTiles: 0, ...more }); // prettier-ignore

function whyOf(lines: readonly FlickerLine[], blindTo_Hz: readonly number[], slowest_Hz: number): string {
  if (lines.some(({ looksLike }) => looksLike !== 'unsure')) return 'A wave of one rate, in step wherever it shows.';
  if (lines.length > 0) return 'Something repeats in a small part or out of step: a lamp there, or a movement.';
  if (blindTo_Hz.length === MAINS_Hz.length)
    return `Lamps on the mains would beat slower than ${slowest_Hz.toPrecision(2)} Hz from frame to frame, less than ${FEWEST_CYCLES} cycles in this clip.`;
  return 'No wave of one rate stands out from the noise.';
}

/** The flicker of a clip. */
export function flickerOf(clip: TileLight): FlickerReading {
  const { frameRate_fps, frameWeights } = clip;
  const counted = frameWeights.reduce((sum, weight) => sum + (weight > 0 ? 1 : 0), 0);
  if (counted < FEWEST_FRAMES) return cannotTell(`${counted} frames are too few: ${FEWEST_FRAMES} is the least that is looked at.`);
  const grid = gridOfClip(clip);
  const tiles = judgedTiles(clip, grid);
  if (tiles.length === 0) return cannotTell('No part of the picture is lit and free of clipping all through the clip.');
  const slowest_Hz = slowestOf(clip);
  const blindTo_Hz = MAINS_Hz.map((mains) => 2 * mains).filter((ripple_Hz) => alias_Hz({ ripple_Hz, frameRate_fps }) < slowest_Hz);
  const parts = partsOf(tiles, clip);
  const found = linesOf(parts, grid, slowest_Hz).flatMap((one) => measured(one, tiles, grid, clip) ?? []);
  const strongest = found.sort((a, b) => b.extent.amplitude - a.extent.amplitude);
  const lines: FlickerLine[] = [];
  for (const one of strongest) lines.push(lineOf(one, lines, frameRate_fps));
  const isFlicker = lines.some(({ looksLike }) => looksLike !== 'unsure');
  const lively = livelyTiles(clip);
  const isBlind = lines.some((line) => !isOfAction(line, lively)) || blindTo_Hz.length === MAINS_Hz.length;
  const whole = parts[0]!.series;
  const least = leastFound(grid, whole, { least_Hz: slowest_Hz, mostChance: CHANCE.whole, mostLines: 1 });
  return {
    verdict: isFlicker ? 'flicker' : isBlind ? 'cannot tell' : 'steady',
    why: whyOf(lines, blindTo_Hz, slowest_Hz),
    lines,
    slowest_Hz,
    blindTo_Hz,
    leastDepthFraction: Math.max(LEAST_DEPTH, Math.tanh(least.amplitude)),
    leastDepthFrom_Hz: Math.max(least.from_Hz, (FEW_CYCLES / FEWEST_CYCLES) * slowest_Hz),
    drift_stops: driftOf(whole, frameWeights),
    judgedTiles: tiles.length,
  };
} // prettier-ignore
