/** What measuring a clip gives. Rates and times are those of the set, frames are counted from 0. */
import type { Action } from './action.ts';
import type { Bands } from './bands.ts';
import type { ColourReading } from './colour/colour.ts';
import type { DustSpot } from './dust.ts';
import type { FixedPattern } from './fixedPattern.ts';
import type { Focus } from './focus.ts';
import type { FixedPixel } from './noise.ts';
import type { Reach } from './reach.ts';
import type { WindowShake } from './shakeParts.ts';
import type { Signal } from './signal.ts';
import type { TileMaps } from './tileMaps.ts';

/** A rate that would look the same from frame to frame. */
export interface Candidate {
  readonly rate_Hz: number;
  /** The mains whose ripple it is, where it is one. */
  readonly mains_Hz?: 50 | 60;
}

/** One wave in the light of a clip. */
export interface FlickerLine {
  /** From frame to frame, with its standard deviation. */
  readonly beat_Hz: number;
  readonly deviation_Hz: number;
  /** (Brightest − dimmest) over their sum, where it is strongest, with its standard deviation. */
  readonly depthFraction: number;
  readonly depthDeviationFraction: number;
  /** From the dimmest to the brightest. */
  readonly swing_stops: number;
  /** Chance that noise alone would show as much. */
  readonly chance: number;
  /** How well the tiles that show it keep step, 0 to 1. */
  readonly coherenceFraction: number;
  /** Share of the tiles that can be judged and show it. */
  readonly extentFraction: number;
  /** Where its middle lies: −1 left to 1 right, −1 top to 1 bottom. */
  readonly centre: readonly [across: number, down: number];
  /**
   * light: a lamp, everywhere or in part of the picture. bands: the rows keep step one after the other, as a rolling shutter
   * draws it. unsure: too few tiles, or out of step with each other, as a movement that repeats would be.
   */
  readonly looksLike: 'light' | 'bands' | 'unsure';
  /** Bands in the height of the picture. */
  readonly bandsPerFrame?: number;
  /** Depth in each tile, row by row; 0 where it cannot be judged. */
  readonly tileDepths: readonly number[];
  /** Rates of a lamp it may come from, slowest first. None is chosen here. */
  readonly candidates: readonly Candidate[];
  /** The line that it is a harmonic of, by its place in the list, and which. */
  readonly harmonicOf?: { readonly line: number; readonly order: number };
}

export interface FlickerReading {
  readonly verdict: 'steady' | 'flicker' | 'cannot tell';
  readonly why: string;
  /** Strongest first. */
  readonly lines: readonly FlickerLine[];
  /** Slower than this a wave has less than a cycle and a half in the clip, and cannot be told from a change of light. */
  readonly slowest_Hz?: number;
  /** Mains whose ripple would beat slower than that. */
  readonly blindTo_Hz: readonly number[];
  /** Flicker of the whole picture that would have been found. */
  readonly leastDepthFraction?: number;
  /** At rates from this on; slower ones hide behind what moves. */
  readonly leastDepthFrom_Hz?: number;
  /** How far the light changes from the first tenth of the clip to the last. */
  readonly drift_stops: number;
  readonly judgedTiles: number;
}

export interface ExposureReading {
  /** Of the light, white being 1: the middle frame's mean, and the light below which so many pixels lie. */
  readonly mean: number;
  readonly darkest: number;
  readonly middle: number;
  readonly brightest: number;
  /** Largest share of pixels at white or above in any frame, and that frame. */
  readonly clippedFraction: number;
  readonly clippedFrame: number;
  readonly crushedFraction: number;
  readonly crushedFrame: number;
}

export interface MotionReading {
  /** Of what moves, px a frame: the middle over the frames in which it can be told, and of the fastest parts. */
  readonly typical_px: number;
  readonly fastest_px: number;
  /** Which way, clockwise from the right, in degrees. */
  readonly direction_deg: number;
  /** Frames in which movement could be told. */
  readonly frames: number;
}

export interface NoiseReading {
  /** Of a pixel at the middle of the picture's light, over that light. */
  readonly deviationFraction: number;
  /** By light: of a pixel. */
  readonly levels: readonly { readonly light: number; readonly deviation: number }[];
}

/** Values of every frame, missing ones 0. */
export interface FrameSeries {
  /** 1 for a frame that counts, 0 for one that is missing or repeats the one before. */
  readonly weight: Float64Array;
  readonly mean: Float64Array;
  readonly darkest: Float64Array;
  readonly middle: Float64Array;
  readonly brightest: Float64Array;
  readonly clippedFraction: Float64Array;
  readonly crushedFraction: Float64Array;
  readonly sharpness: Float64Array;
  readonly activity: Float64Array;
  readonly speed_px: Float64Array;
  readonly fastest_px: Float64Array;
  readonly x_px: Float64Array;
  readonly y_px: Float64Array;
}

export interface Measurement {
  readonly width: number;
  readonly height: number;
  readonly frameRate_fps: number;
  readonly playback_fps: number;
  /** Frames of the clip, missing ones among them. */
  readonly frameCount: number;
  readonly missingFrames: readonly number[];
  /** Frames that are the same as the one before, to the last bit of every pixel looked at. */
  readonly repeatedFrames: readonly number[];
  readonly tileColumns: number;
  readonly tileRows: number;
  /** Absent from what was measured before they were kept. */
  readonly tiles?: TileMaps;
  readonly exposure: ExposureReading;
  readonly flicker: FlickerReading;
  /** Absent where the clip has no colours, or none that are read. */
  readonly colour?: ColourReading;
  readonly focus: Focus;
  /** Absent where nothing that moves could be followed. */
  readonly motion?: MotionReading;
  /** Absent where nothing rises above quiet. */
  readonly action?: Action;
  /** A small light that came on, as where a rig is fired; absent where none did. */
  readonly signal?: Signal;
  /** How far the action reached; absent where nothing moved, and from what was measured before it was looked for. */
  readonly reach?: Reach;
  readonly shake: WindowShake;
  /** Absent where too little stands still. */
  readonly noise?: NoiseReading;
  readonly fixedPixels: readonly FixedPixel[];
  /** What follows is absent from what was measured before it was looked for. */
  readonly dust?: readonly DustSpot[];
  readonly fixedPattern?: FixedPattern;
  /** Three or more in the height of the picture, the deepest first; none is looked for in a picture that shakes or moves. */
  readonly bands?: readonly Bands[];
  /** The first of each pair of frames that seem to have changed places. */
  readonly swappedFrames?: readonly number[];
  readonly frames: FrameSeries;
}
