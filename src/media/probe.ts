/** What a clip says of itself: size, pixels, rates, how many frames, and what of it is doubtful. */
import { open } from 'node:fs/promises';
import { Fault } from '../base/fault.ts';
import { rational, ratioOf, type Rational } from '../base/rational.ts';
import { codingOf, type Coding, type TransferCurve } from '../measure/transfer.ts';
import { inputArgs, type ClipFile } from './clipFile.ts';
import { colourTaken, type ColourTaken } from './colourTaken.ts';
import { FLOAT_WHITE_CODE, planeTaken, type PixelFormat, type PlaneTaken } from './pixels.ts';
import { lastComplaint, runTool } from './tools.ts';

export interface Clip {
  readonly file: ClipFile;
  readonly width: number;
  readonly height: number;
  readonly codec: string;
  readonly pixelFormat: string;
  readonly plane: PlaneTaken;
  readonly coding: Coding;
  /** Absent where it has no colours, or none that are read. */
  readonly colour?: ColourTaken;
  /** What it was written with: told by the clip, or taken for granted and why. */
  readonly curve: { readonly curve: TransferCurve; readonly basis: 'stated' | 'assumed'; readonly says: string };
  /** Of the file, which is the rate at which it plays; absent for pictures, which have none. */
  readonly fileRate?: Rational;
  /** Whether frames come as fast in the mean as they do one after the other: then few are missing, if any. */
  readonly isEven: boolean;
  /** Frames that the file says it has. */
  readonly statedFrames?: number;
  readonly duration_s?: number;
  /** Time at which the file begins, by its own clock; absent of one without times. */
  readonly start_s?: number;
  /** Length of a tick of its clock. */
  readonly tick_s: number;
  /** What should be known of it, in a sentence each. */
  readonly notes: readonly string[];
}

interface Stream {
  readonly codec_name?: string;
  readonly width?: number;
  readonly height?: number;
  readonly pix_fmt?: string;
  readonly color_range?: string;
  readonly color_transfer?: string;
  readonly color_space?: string;
  readonly color_primaries?: string;
  readonly r_frame_rate?: string;
  readonly avg_frame_rate?: string;
  readonly nb_frames?: string;
  readonly duration?: string;
  readonly time_base?: string;
  readonly field_order?: string;
  /** Of a pixel, wide to high. */
  readonly sample_aspect_ratio?: string;
  readonly side_data_list?: readonly { readonly rotation?: number }[];
}

interface Reply {
  readonly streams?: readonly Stream[];
  readonly format?: {
    readonly duration?: string;
    readonly start_time?: string;
    readonly nb_streams?: number;
    readonly format_name?: string;
  };
}

/** More pixels than any camera has: a file that says so is wrong or means harm. */
const MOST_PIXELS = 200_000_000;
const LARGEST_SIDE = 32_768;

const STREAM =
  'codec_name,width,height,pix_fmt,color_range,color_transfer,color_space,color_primaries,r_frame_rate,avg_frame_rate,nb_frames,duration,time_base,field_order,sample_aspect_ratio';

const SAVE_AS = 'Save it as ProRes, DNxHR, H.264, FFV1, TIFF, DPX, PNG or EXR, and measure that.';

/** "24000/1001" as it stands, in lowest terms; nothing for a rate that is none. */
function rateOf(text: string | undefined): Rational | undefined {
  const match = /^(\d+)\/(\d+)$/.exec(text ?? '');
  if (!match) return undefined;
  const [num, den] = [Number(match[1]), Number(match[2])];
  return num > 0 && den > 0 && Number.isSafeInteger(num) && Number.isSafeInteger(den) ? rational(num, den) : undefined;
}

const CURVES: Readonly<Record<string, TransferCurve>> = {
  bt709: { kind: 'rec709' },
  smpte170m: { kind: 'rec709' },
  'bt2020-10': { kind: 'rec709' },
  'bt2020-12': { kind: 'rec709' },
  'iec61966-2-1': { kind: 'srgb' },
  smpte2084: { kind: 'pq' },
  'arib-std-b67': { kind: 'hlg' },
  linear: { kind: 'linear' },
  bt470m: { kind: 'gamma', exponent: 2.2 },
  bt470bg: { kind: 'gamma', exponent: 2.8 },
};

function curveOf({ color_transfer: stated, codec_name: codec = '' }: Stream, { isVideo, isFloat }: PlaneTaken): Clip['curve'] {
  // Light in floating point is linear by custom, and is taken in by its root.
  if (isFloat) return { curve: { kind: 'gamma', exponent: 2 }, basis: 'assumed', says: 'linear light, as pictures in floating point are' }; // prettier-ignore
  const named = stated === undefined ? undefined : CURVES[stated];
  if (named) return { curve: named, basis: 'stated', says: `as the clip says (${stated}${named.kind === 'pq' ? ', light as a screen shows it' : ''})` }; // prettier-ignore
  const unread = stated !== undefined && stated !== 'unknown' ? `; the clip says ${stated}, which is not read here` : '';
  if (isVideo) return { curve: { kind: 'rec709' }, basis: 'assumed', says: `Rec. 709, since the clip does not say${unread}` };
  if (codec === 'dpx') return { curve: { kind: 'rec709' }, basis: 'assumed', says: `Rec. 709, since the pictures do not say${unread}` }; // prettier-ignore
  return { curve: { kind: 'srgb' }, basis: 'assumed', says: `sRGB, since the pictures do not say${unread}` };
} // prettier-ignore

function isFullRange({ color_range: range, pix_fmt: format = '' }: Stream, { isVideo }: PlaneTaken): boolean {
  return range === 'pc' || format.startsWith('yuvj') || (!isVideo && range !== 'tv');
}

function codingOfClip(stream: Stream, plane: PlaneTaken): Coding {
  if (plane.isFloat) return { bitDepth: 16, blackCode: 0, whiteCode: FLOAT_WHITE_CODE, clippedCode: 65_535 };
  return codingOf(isFullRange(stream, plane) ? 'full' : 'video', plane.bitDepth);
}

function colourOfClip(stream: Stream, format: PixelFormat, plane: PlaneTaken): ColourTaken | undefined {
  const { width = 0, height = 0, color_space, color_primaries } = stream;
  return colourTaken({ format, stated: { color_space, color_primaries }, width, height, isFullRange: isFullRange(stream, plane) }); // prettier-ignore
}

/** What is taken for granted of colours; of pictures, that they are Rec. 709 goes with their curve. */
function colourNotes({ color_space: space = 'unknown', color_primaries: primaries = 'unknown' }: Stream, { components }: PixelFormat, colour: ColourTaken | undefined): readonly string[] {
  if (colour?.form.kind === 'ycbcr' && colour.basis === 'assumed') return [`Colours are taken to be ${colour.says}, since the clip does not say.`];
  return colour || components.length < 3 ? [] : [`Its colours (${space}, ${primaries}) are not read here: nothing is said of them.`];
} // prettier-ignore

/** A rate that the format's own clock cannot hold, as of frames timed in milliseconds, comes out a hair off. */
function isSameRate(a: Rational, b: Rational): boolean {
  return Math.abs(ratioOf(a) / ratioOf(b) - 1) < 1e-3;
}

/** Nothing is played faster; where no more than the clock of a file is known, it may tick faster than that. */
const FASTEST_SAID_fps = 1000;

/** At which the file says that frames follow each other, unless that is only how fast its clock ticks. */
function fileRateOf({ r_frame_rate, avg_frame_rate, time_base }: Stream): Rational | undefined {
  const [each, mean, tick] = [rateOf(r_frame_rate), rateOf(avg_frame_rate), rateOf(time_base)];
  const isTick = each && tick && Math.abs(ratioOf(each) * ratioOf(tick) - 1) < 1e-9;
  const isFilled = each && mean && ratioOf(mean) > ratioOf(each) / 2;
  return each && (!isTick || isFilled || ratioOf(each) <= FASTEST_SAID_fps) ? each : mean;
}

function isEvenly({ r_frame_rate, avg_frame_rate }: Stream): boolean {
  const [each, mean] = [rateOf(r_frame_rate), rateOf(avg_frame_rate)];
  return each !== undefined && mean !== undefined && isSameRate(each, mean);
}

/** What a clip asks of whoever shows it, and is not done here: rows are read out in the order in which they are stored. */
function shapeNotes({ sample_aspect_ratio: pixel = '1:1', side_data_list = [] }: Stream): readonly string[] {
  const [wide = NaN, high = NaN] = pixel.split(':').map(Number);
  const isSquare = !(wide > 0 && high > 0) || wide === high;
  const turn = side_data_list.find(({ rotation }) => rotation !== undefined)?.rotation ?? 0;
  return [
    ...(isSquare ? [] : [`Its pixels are not square, ${wide} wide to ${high} high: what is told in metres takes them for as high as they are wide.`]),
    ...(turn === 0 ? [] : [`It asks to be shown turned by ${Math.abs(turn)}°: places and directions are told of the picture as it is stored, not turned.`]),
  ];
} // prettier-ignore

function notesOf(stream: Stream, plane: PlaneTaken, file: ClipFile, curve: Clip['curve']): readonly string[] {
  const { color_range: range, field_order: order, pix_fmt: format = '' } = stream;
  const [each, mean] = [rateOf(stream.r_frame_rate), rateOf(stream.avg_frame_rate)];
  const isOdd = each !== undefined && each.den !== 1 && each.den !== 1001;
  const missing = file.kind === 'sequence' ? file.runs.slice(1).map(({ first }, i) => first - file.runs[i]!.first - file.runs[i]!.count) : []; // prettier-ignore
  const gone = missing.reduce((sum, count) => sum + count, 0);
  return [
    ...(gone > 0 ? [`${gone} ${gone === 1 ? 'picture is' : 'pictures are'} missing from the sequence.`] : []),
    ...(file.kind === 'movie' && each && mean && !isSameRate(each, mean)
      ? [`Frames come at ${stream.r_frame_rate}, but ${stream.avg_frame_rate} in the mean: some are missing, or the rate varies.`]
      : []),
    ...(isOdd && file.kind === 'movie' ? [`An odd rate: ${each.num}/${each.den} frames a second.`] : []),
    ...(order && /^(?:tt|bb|tb|bt)$/.test(order) ? ['Interlaced: two halves of each frame are from different times.'] : []),
    ...shapeNotes(stream),
    ...(curve.basis === 'assumed' ? [`The curve is taken to be ${curve.says}.`] : []),
    ...(plane.isVideo && range !== 'tv' && range !== 'pc' && !format.startsWith('yuvj') ? ['Levels are taken to be video levels, since the clip does not say.'] : []),
    ...(plane.plane === 'green' ? ['Of red, green and blue, green is measured.'] : []),
  ];
} // prettier-ignore

let pixelFormats: Promise<ReadonlyMap<string, PixelFormat>> | undefined;

async function pixelFormatNamed(name: string, where: string, signal?: AbortSignal): Promise<PixelFormat> {
  pixelFormats ??= runTool({ tool: 'ffprobe', args: ['-v', 'error', '-show_pixel_formats', '-of', 'json'], where: 'ffprobe' })
    .then(({ out }) => {
      const { pixel_formats } = JSON.parse(out) as { readonly pixel_formats: readonly PixelFormat[] };
      return new Map(pixel_formats.map((format) => [format.name, format]));
    });
  const known = await pixelFormats.catch((cause: unknown) => {
    pixelFormats = undefined;
    throw cause;
  });
  signal?.throwIfAborted();
  const format = known.get(name);
  if (format) return format;
  throw new Fault({ code: 'media.pixel-format', what: `Its pixels (${name}) are not known`, where, mend: SAVE_AS });
} // prettier-ignore

function requireSize({ width = 0, height = 0 }: Stream, where: string): void {
  if (width < 1 || height < 1) throw new Fault({ code: 'media.no-picture', what: 'It says that its picture has no size', where, mend: SAVE_AS }); // prettier-ignore
  if (width * height > MOST_PIXELS || Math.max(width, height) > LARGEST_SIDE)
    throw new Fault({
      code: 'media.too-large-picture',
      what: `It says that its picture is ${width} × ${height}, which no camera takes`,
      where,
      mend: `Check the file; pictures up to ${MOST_PIXELS / 1e6} million pixels are measured.`,
    });
}

/** Whether a file begins as a QuickTime or MP4 movie does: by the kind of its first box. */
async function beginsAsMovie(path: string): Promise<boolean> {
  const file = await open(path, 'r').catch(() => undefined);
  if (!file) return false;
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(8), 0, 8, 0);
    return bytesRead === 8 && /^(?:ftyp|mdat|wide|free|skip)$/.test(buffer.toString('latin1', 4, 8));
  } finally {
    await file.close();
  }
}

/** What a clip says of itself. Throws a Fault, in one line and with what to save instead, for what is no picture that moves. */
export async function probeClip(file: ClipFile, signal?: AbortSignal): Promise<Clip> {
  const where = file.name;
  const args = ['-v', 'error', '-max_pixels', String(MOST_PIXELS), '-select_streams', 'V:0', '-show_entries', `stream=${STREAM}:stream_side_data=rotation:format=duration,start_time,nb_streams,format_name`, '-of', 'json', ...inputArgs(file)]; // prettier-ignore
  const { out, err } = await runTool({ tool: 'ffprobe', args, where, ...(signal && { signal }) });
  let reply: Reply = {};
  try {
    reply = JSON.parse(out) as Reply;
  } catch {
    // Nothing readable: it is told below what was complained of.
  }
  const [stream] = reply.streams ?? [];
  if (!stream || stream.codec_name === undefined || stream.pix_fmt === undefined) {
    const complaint = lastComplaint(err).replace(`file:${file.path}: `, '');
    const isSound = (reply.format?.nb_streams ?? 0) > 0 && !stream;
    const isCut = /moov atom not found/.test(err) && (await beginsAsMovie(file.path));
    throw new Fault({
      code: isSound ? 'media.no-picture' : isCut ? 'media.cut-short' : 'media.not-a-movie',
      what: isSound ? 'It has no picture' : isCut ? `It breaks off before it says what it holds (${complaint})` : `ffmpeg cannot read it as footage${complaint === '' ? '' : ` (${complaint})`}`,
      where,
      mend: isCut ? 'Copy it again from the camera: this copy was cut short, or is still being written.' : SAVE_AS,
    });
  } // prettier-ignore
  requireSize(stream, where);
  const format = await pixelFormatNamed(stream.pix_fmt, where, signal);
  const plane = planeTaken(format, where);
  const colour = colourOfClip(stream, format, plane);
  const curve = curveOf(stream, plane);
  const fileRate = file.kind === 'movie' && !/_pipe$|^image2/.test(reply.format?.format_name ?? '') ? fileRateOf(stream) : undefined; // prettier-ignore
  const tick = rateOf(stream.time_base);
  const duration_s = Number(stream.duration ?? reply.format?.duration);
  const stated = file.kind === 'sequence' ? file.runs.reduce((sum, { count }) => sum + count, 0) : Number(stream.nb_frames);
  return {
    file,
    width: stream.width!,
    height: stream.height!,
    codec: stream.codec_name,
    pixelFormat: stream.pix_fmt,
    plane,
    coding: codingOfClip(stream, plane),
    ...(colour && { colour }),
    curve,
    ...(fileRate && { fileRate }),
    isEven: isEvenly(stream),
    ...(Number.isSafeInteger(stated) && stated > 0 && { statedFrames: stated }),
    ...(Number.isFinite(duration_s) && duration_s > 0 && file.kind === 'movie' && { duration_s }),
    ...(Number.isFinite(Number(reply.format?.start_time)) && { start_s: Number(reply.format?.start_time) }),
    tick_s: tick ? ratioOf(tick) : 0,
    notes: [...notesOf(stream, plane, file, curve), ...colourNotes(stream, format, colour)],
  };
} // prettier-ignore
