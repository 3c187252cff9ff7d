/**
 * How the light of a picture is taken out of what a clip holds, as the code values it was saved with.
 *
 * Asking ffmpeg for gray would stretch video levels to the whole range, and every figure with them. So the plane of
 * brightness is lifted out as it stands; of red, green and blue the green one is, which carries most of it and has the
 * same curve as a grey card.
 */
import { Fault } from '../base/fault.ts';

/** What ffprobe tells of a pixel format. */
export interface PixelFormat {
  readonly name: string;
  readonly flags: Readonly<
    Record<'big_endian' | 'palette' | 'bitstream' | 'hwaccel' | 'planar' | 'rgb' | 'alpha', number>
  >;
  readonly components: readonly { readonly bit_depth: number }[];
}

export interface PlaneTaken {
  /** Filters that lift the plane out. */
  readonly filter: string;
  /** The form in which it comes through the pipe. */
  readonly pixelFormat: string;
  readonly bitDepth: number;
  readonly isFloat: boolean;
  readonly plane: 'brightness' | 'green';
  /** Whether it is brightness of video, whose levels are video levels unless it says otherwise. */
  readonly isVideo: boolean;
}

/** Packed forms, and the planar ones that hold the same values in another order. */
const UNPACKED: Readonly<Record<string, string>> = {
  nv12: 'yuv420p',
  nv21: 'yuv420p',
  nv16: 'yuv422p',
  nv24: 'yuv444p',
  yuyv422: 'yuv422p',
  uyvy422: 'yuv422p',
  yvyu422: 'yuv422p',
  p010le: 'yuv420p10le',
  p010be: 'yuv420p10le',
  p210le: 'yuv422p10le',
  p210be: 'yuv422p10le',
};

const GRAY: Readonly<Record<number, string>> = {
  8: 'gray',
  9: 'gray9le',
  10: 'gray10le',
  12: 'gray12le',
  14: 'gray14le',
  16: 'gray16le',
  32: 'grayf32le',
};

/** What must come before red, green or blue can be lifted out of a pixel format. */
export function openingOfRgb({ name, flags, components }: PixelFormat): string {
  if (flags.palette || (components[0]?.bit_depth ?? 8) < 8) return 'format=rgb24,';
  const isBackward = flags.big_endian === 1 && flags.planar === 0;
  return isBackward ? `format=${name.replace(/be$/, 'le')},` : '';
}

/** How the plane is taken of a pixel format. Throws a Fault for a mosaic of raw pixels and for what has no such plane. */
export function planeTaken(format: PixelFormat, where: string): PlaneTaken {
  const { name, flags, components } = format;
  if (name.startsWith('bayer'))
    throw new Fault({
      code: 'media.mosaic',
      what: `Its pixels (${name}) are a mosaic of raw colours, not a picture yet`,
      where,
      mend: 'Export it as ProRes, DNxHR, TIFF or EXR, and measure that.',
    });
  const bitDepth = flags.palette ? 8 : (components[0]?.bit_depth ?? 8);
  const gray = GRAY[bitDepth];
  if (flags.hwaccel || gray === undefined)
    throw new Fault({
      code: 'media.pixel-format',
      what: `Its pixels (${name}) cannot be taken apart`,
      where,
      mend: 'Export it as ProRes, DNxHR, TIFF or EXR, and measure that.',
    });
  const common = { pixelFormat: gray, bitDepth, isFloat: bitDepth === 32 };
  const isRgb = flags.rgb === 1 || flags.palette === 1 || name.startsWith('gbr');
  if (isRgb) return { ...common, filter: `${openingOfRgb(format)}extractplanes=g`, plane: 'green', isVideo: false };
  if (name.startsWith('gray') && components.length === 1)
    // Already one plane; only its bytes may be the wrong way round.
    return { ...common, filter: `format=${gray}`, plane: 'brightness', isVideo: false };
  if (name.startsWith('mono')) return { ...common, filter: 'format=gray', pixelFormat: 'gray', bitDepth: 8, plane: 'brightness', isVideo: false }; // prettier-ignore
  const planar = UNPACKED[name];
  const isVideo = components.length >= 3;
  return { ...common, filter: `${planar ? `format=${planar},` : ''}extractplanes=y`, plane: 'brightness', isVideo };
}

/** White of floating-point light as a code: light of 1 lies two stops of signal below the largest. */
const FLOAT_LARGEST = 16;

/**
 * Light in floating point as codes of sixteen bits, by its square root, which leaves the dark as fine as the bright:
 * code = √(light / 16) · 65535.
 */
export function codesOfFloats(light: Float32Array, into: Uint16Array): void {
  for (let i = 0; i < light.length; i += 1) {
    const value = light[i]!;
    const share = value > 0 ? Math.sqrt(value / FLOAT_LARGEST) : 0;
    into[i] = share < 1 ? Math.round(share * 65_535) : 65_535;
  }
}

/** Code that `codesOfFloats` gives light of 1; its curve is a gamma of 2. */
export const FLOAT_WHITE_CODE = Math.round(65_535 / Math.sqrt(FLOAT_LARGEST));
