/**
 * Where in the picture a wave of the light is, and whether its tiles keep step: all together as under one lamp, row after
 * row as a rolling shutter draws it, or not at all, as things that move do.
 *
 *     coherence = |Σ w·a| / Σ w·|a|        with bands: a turned by s for each row of tiles, s where that is largest
 *
 * a amplitude of a tile as a complex number        w 1 over the noise of the tile
 */
import { waveAt, withoutTrend, type SpectrumGrid } from '../lines/basis.ts';
import { noiseAbout } from '../lines/findLines.ts';
import type { JudgedTile } from './tiles.ts';

export interface Extent {
  /** Amplitude of the tiles that show it, together. */
  readonly amplitude: number;
  readonly amplitudeDeviation: number;
  readonly coherenceFraction: number;
  readonly extentFraction: number;
  readonly centre: readonly [across: number, down: number];
  readonly looksLike: 'light' | 'bands' | 'unsure';
  readonly bandsPerFrame?: number;
  /** By tile of the whole picture. */
  readonly tileAmplitudes: Float64Array;
}

interface TileWave extends JudgedTile {
  readonly real: number;
  readonly imaginary: number;
  readonly size: number;
}

/** Power over noise from which a tile shows a wave: noise alone does so in one of a hundred. */
const SHOWS = -Math.log(0.01);
/** Amplitude over its own deviation from which tiles are told apart one by one; below, each with its neighbours. */
const CLEAR = 8;
/** A tile shows a wave at all only where it is this share of the strongest. */
const OF_STRONGEST = 0.4;
/** In step from here on. */
const IN_STEP = 0.85;
/** How much better bands must fit than no bands. */
const BANDS_GAIN = 0.15;
/** Share of the tiles that bands must show in: a thing that falls draws bands too, but few. */
const BANDS_EXTENT = 0.5;
/** Tiles as strong as this, of the strongest, say how strong the wave is; those at the edge of a lamp's light are weaker. */
const STRONG = 0.85;
const SLACK = 3;
/** Fewest tiles of a picture of many that tell a lamp from a thing that moves. */
const FEWEST_TILES = 4;
const TURNS = 256;

function stepOf(waves: readonly TileWave[], turn_rad: number): number {
  let [real, imaginary, whole] = [0, 0, 0];
  for (const wave of waves) {
    const weight = 1 / wave.noise;
    const [c, s] = [Math.cos(turn_rad * wave.row), Math.sin(turn_rad * wave.row)];
    real += weight * (wave.real * c - wave.imaginary * s);
    imaginary += weight * (wave.real * s + wave.imaginary * c);
    whole += weight * wave.size;
  }
  return whole > 0 ? Math.hypot(real, imaginary) / whole : 0;
}

/** The turn from row to row that brings tiles in step best. */
function bandTurn(waves: readonly TileWave[]): { readonly turn_rad: number; readonly coherence: number } {
  let best = { turn_rad: 0, coherence: stepOf(waves, 0) };
  for (let i = 1; i < TURNS; i += 1) {
    const turn_rad = Math.PI * ((2 * i) / TURNS - 1);
    const coherence = stepOf(waves, turn_rad);
    if (coherence > best.coherence) best = { turn_rad, coherence };
  }
  return best;
}

function weighted(waves: readonly TileWave[], of: (wave: TileWave) => number): number {
  let [sum, whole] = [0, 0];
  for (const wave of waves) {
    sum += of(wave) / wave.noise;
    whole += 1 / wave.noise;
  }
  return sum / whole;
}

/** Each tile averaged with the judged tiles about it, bands kept in step. */
function smoothed(waves: readonly TileWave[], turn_rad: number): readonly TileWave[] {
  const at = new Map(waves.map((wave) => [`${wave.column},${wave.row}`, wave]));
  return waves.map((wave) => {
    let [real, imaginary, weight] = [0, 0, 0];
    for (let row = wave.row - 1; row <= wave.row + 1; row += 1)
      for (let column = wave.column - 1; column <= wave.column + 1; column += 1) {
        const near = at.get(`${column},${row}`);
        if (!near) continue;
        const [c, s] = [Math.cos(turn_rad * (row - wave.row)), Math.sin(turn_rad * (row - wave.row))];
        real += (near.real * c - near.imaginary * s) / near.noise;
        imaginary += (near.real * s + near.imaginary * c) / near.noise;
        weight += 1 / near.noise;
      }
    const size = Math.hypot(real, imaginary) / weight;
    return { ...wave, real: real / weight, imaginary: imaginary / weight, size, noise: 1 / weight };
  });
}

/** The tiles that show a wave, of those it is clear in, as strong as a good part of the strongest. */
function showing(waves: readonly TileWave[], weight: number): readonly TileWave[] {
  const sure = waves.filter(({ size, noise }) => (size * size * weight) / 2 > SHOWS * noise);
  // The strongest few are as likely to be lucky as strong.
  const sizes = sure.map(({ size }) => size).sort((a, b) => b - a);
  const strongest = sizes[Math.floor(0.1 * sizes.length)] ?? Infinity;
  return sure.filter(({ size }) => size >= OF_STRONGEST * strongest);
}

/** A wave of one rate over the tiles of a picture; nothing where no tile shows it. */
export function extentOf(
  tiles: readonly JudgedTile[],
  grid: SpectrumGrid,
  { rate_Hz, least_Hz, columns, rows }: { readonly rate_Hz: number; readonly least_Hz: number; readonly columns: number; readonly rows: number },
): Extent | undefined {
  const { basis } = grid;
  const waves = tiles.map((tile): TileWave => {
    const rest = withoutTrend(basis, tile.series);
    const { cosine, sine } = waveAt(basis, rest, rate_Hz);
    // Where something moves there is more noise about slow rates than about most.
    const noise = Math.max(tile.noise, noiseAbout(grid, rest, rate_Hz, least_Hz));
    return { ...tile, noise, real: cosine, imaginary: -sine, size: Math.hypot(cosine, sine) };
  });
  const tileAmplitudes = new Float64Array(columns * rows);
  for (const { tile, size } of waves) tileAmplitudes[tile] = size;
  const still = stepOf(waves, 0);
  const bands = bandTurn(waves);
  const mayBeBands = bands.coherence > still + BANDS_GAIN && rows > 2;
  const turn_rad = mayBeBands ? bands.turn_rad : 0;
  const alone = showing(waves, basis.weight);
  const isClear = alone.some(({ size, noise }) => size > CLEAR * Math.sqrt(noise / basis.weight));
  const shown = isClear ? alone : showing(smoothed(waves, turn_rad), basis.weight);
  if (shown.length === 0) return undefined;
  const places = new Set(shown.map(({ tile }) => tile));
  const lit = waves.filter(({ tile }) => places.has(tile));
  const coherenceFraction = isClear ? stepOf(lit, turn_rad) : stepOf(shown, turn_rad);
  const isBands = mayBeBands && lit.length >= BANDS_EXTENT * tiles.length;
  const isInStep = coherenceFraction >= IN_STEP && lit.length >= Math.min(FEWEST_TILES, tiles.length);
  const isLight = isInStep && (isBands || !mayBeBands);
  const most = lit.reduce((best, { size }) => Math.max(best, size), 0);
  // A tile that noise may have made weaker is not left out: those that are left would be the lucky ones.
  const strong = isClear ? lit.filter(({ size, noise }) => size + SLACK * Math.sqrt(noise / basis.weight) >= STRONG * most) : lit;
  const middle = (at: number, count: number): number => (count > 1 ? (2 * at) / (count - 1) - 1 : 0);
  const weight = strong.reduce((sum, { noise }) => sum + 1 / noise, 0);
  return {
    // Noise adds to the size of each tile but cancels where tiles that keep step are added up.
    amplitude: (isLight ? stepOf(strong, turn_rad) : 1) * weighted(strong, ({ size }) => size),
    amplitudeDeviation: Math.sqrt(1 / (weight * basis.weight)),
    coherenceFraction,
    extentFraction: lit.length / tiles.length,
    centre: [weighted(lit, ({ column }) => middle(column, columns)), weighted(lit, ({ row }) => middle(row, rows))],
    looksLike: !isLight ? 'unsure' : isBands ? 'bands' : 'light',
    ...(isLight && isBands && { bandsPerFrame: (Math.abs(bands.turn_rad) * rows) / (2 * Math.PI) }),
    tileAmplitudes,
  };
} // prettier-ignore
