/**
 * How small samples of colour are taken of some frames, as the code values that a clip holds: single pixels spread over the
 * picture, every colour difference at its own, nothing converted.
 *
 * ffmpeg scales red, green and blue by way of brightness and differences, which rounds them; so those are taken apart first
 * and scaled one by one, and come one below the other.
 */
import type { ColourForm, ColourMatrix } from '../measure/colour/coding.ts';
import type { PrimariesName } from '../measure/colour/chromaticity.ts';
import { codingOf, type Coding, type TransferCurve } from '../measure/transfer.ts';
import { openingOfRgb, type PixelFormat } from './pixels.ts';

export interface ColourTaken {
  /** Of a sample. */
  readonly width: number;
  readonly height: number;
  /** Filters that make samples of frames, and the form in which they come through the pipe. */
  readonly filters: string;
  readonly pixelFormat: string;
  readonly bitDepth: number;
  readonly form: ColourForm;
  readonly primaries: PrimariesName;
  /** What the colours are taken to be of, and whether the clip says so. */
  readonly says: string;
  readonly basis: 'stated' | 'assumed';
  /** Of samples whose codes are not those of the brightness that is measured. */
  readonly own?: { readonly coding: Coding; readonly curve: TransferCurve };
}

/** What ffprobe tells of colours. */
export interface StatedColours {
  readonly color_space?: string | undefined;
  readonly color_primaries?: string | undefined;
}

export interface ColourOfClip {
  readonly format: PixelFormat;
  readonly stated: StatedColours;
  readonly width: number;
  readonly height: number;
  readonly isFullRange: boolean;
}

/** Samples across, of a picture at least that wide. */
const ACROSS = 96;

const MATRICES: Readonly<Record<string, ColourMatrix>> = {
  bt709: 'bt709',
  bt470bg: 'bt601',
  smpte170m: 'bt601',
  bt2020nc: 'bt2020',
};
const PRIMARIES: Readonly<Record<string, PrimariesName>> = {
  bt709: 'bt709',
  bt470bg: 'ebu',
  smpte170m: 'smpte-c',
  smpte240m: 'smpte-c',
  bt2020: 'bt2020',
  smpte432: 'p3-d65',
};
const NAMES: Readonly<Record<ColourMatrix, string>> = { bt601: 'Rec. 601', bt709: 'Rec. 709', bt2020: 'Rec. 2020' };

const isSaid = (stated: string | undefined): stated is string =>
  stated !== undefined && stated !== 'unknown' && stated !== 'reserved';

/** Primaries that go with a matrix where the clip does not say. */
function primariesOf(matrix: ColourMatrix, height: number): PrimariesName {
  if (matrix !== 'bt601') return matrix;
  return height === 576 || height === 288 ? 'ebu' : 'smpte-c';
}

/** Larger pictures than those of 576 lines are high definition. */
const usualMatrix = (height: number): ColourMatrix => (height <= 576 ? 'bt601' : 'bt709');

/** Pictures whose planes no filter takes apart as they stand. */
const ODD = /^(?:x2|xyz|xv|vuy|ayuv|y2|bayer|p4|nv20)/;

function sizeOf(width: number, height: number): { readonly width: number; readonly height: number } {
  const across = Math.min(ACROSS, width);
  return { width: across, height: Math.max(1, Math.min(height, Math.round((across * height) / width))) };
}

/** How colour is sampled of a clip; undefined where it has none, or none that is read here. */
export function colourTaken({ format, stated, width, height, isFullRange }: ColourOfClip): ColourTaken | undefined {
  const { name, flags, components } = format;
  const size = sizeOf(width, height);
  const bitDepth = flags.palette ? 8 : (components[0]?.bit_depth ?? 8);
  const scale = `scale=${size.width}:${size.height}:flags=neighbor`;
  const range = isFullRange ? 'full' : 'video';
  const isSaidPrimaries = isSaid(stated.color_primaries);
  const named = isSaidPrimaries ? PRIMARIES[stated.color_primaries] : undefined;
  if ((components.length < 3 && !flags.palette) || flags.hwaccel || ODD.test(name) || (isSaidPrimaries && named === undefined)) return undefined;
  const suffix = bitDepth > 8 ? `${bitDepth === 32 ? 16 : bitDepth}le` : '';
  if (flags.rgb || flags.palette || name.startsWith('gbr')) {
    const each = (['r', 'g', 'b'] as const).map((of) => `[${of}]${scale}:in_range=full:out_range=full,format=gray${suffix}[${of}s]`).join(';');
    return {
      ...size,
      filters: `${openingOfRgb(format)}extractplanes=r+g+b[r][g][b];${each};[rs][gs][bs]vstack=inputs=3`,
      pixelFormat: `gray${suffix}`,
      bitDepth: bitDepth === 32 ? 16 : Math.max(8, bitDepth),
      form: { kind: 'rgb' },
      primaries: named ?? 'bt709',
      says: named ? `as the clip says (${stated.color_primaries})` : 'red, green and blue of Rec. 709',
      basis: named ? 'stated' : 'assumed',
      // Light in floating point is linear by custom; in whole numbers what lies over white is clipped.
      ...(bitDepth === 32 && { own: { coding: codingOf('full', 16), curve: { kind: 'linear' } as const } }),
    };
  }
  const matrix = isSaid(stated.color_space) ? MATRICES[stated.color_space] : usualMatrix(height);
  if (matrix === undefined) return undefined;
  const ffmpegRange = isFullRange ? 'full' : 'limited';
  const pixelFormat = `yuv444p${suffix}`;
  return {
    ...size,
    // Both ranges alike: nothing is stretched from one to the other.
    filters: `${scale}:in_range=${ffmpegRange}:out_range=${ffmpegRange},format=${pixelFormat}`,
    pixelFormat,
    bitDepth,
    form: { kind: 'ycbcr', matrix, range },
    primaries: named ?? primariesOf(matrix, height),
    says: isSaid(stated.color_space) ? `as the clip says (${stated.color_space})` : `those of ${NAMES[matrix]}`,
    basis: isSaid(stated.color_space) ? 'stated' : 'assumed',
  };
} // prettier-ignore
