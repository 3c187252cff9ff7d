/**
 * Measures a clip as its frames come by: each is looked at once and let go, and of it only a few numbers for each tile are
 * kept, so that a long clip takes little more room than a short one.
 *
 * A meter that looks at every frame joins by giving all that it remembers between frames from `state()`, in typed arrays and
 * plain values, and by taking it as its last argument; both are written into `meters` here and in measurerState.ts. Rows
 * kept of every frame go into `rows`. The test of going on then covers it.
 */
import { requireCount, requirePositive } from '../base/domain.ts';
import { medianOf, quantileInPlace } from '../base/median.ts';
import { actionOf, type Action } from './action.ts';
import { createActivityMeter, rootsOf } from './activity.ts';
import { KEPT_OF_WINDOW } from './anchors.ts';
import { createBandMeter } from './bands.ts';
import { createBlemishFinder } from './blemishes.ts';
import { flickerOf } from './flicker/flicker.ts';
import { focusOf } from './focus.ts';
import { colourOf } from './colour/colour.ts';
import { createColourMeter, type ColourOptions, type ColourSample } from './colour/meter.ts';
import { createFrameReader, type FrameReading, type Plane } from './frameReader.ts';
import { gridOf } from './grid.ts';
import { createGrowing } from './growing.ts';
import { requireState, STATE_FORM, type MeasurerState } from './measurerState.ts';
import { createMotionMeter } from './motion.ts';
import { movementAfter } from './movement.ts';
import { createNoiseMeter } from './noise.ts';
import { noiseReadingOf } from './noiseReading.ts';
import { createOrderMeter, outOfOrder } from './order.ts';
import { createPercentiles } from './percentiles.ts';
import { createReachMeter } from './reach.ts';
import { rowsIn, type RowsRead } from './rowsRead.ts';
import { windowShakeOf } from './shakeParts.ts';
import { createBrightest, signalOf, withoutSignal } from './signal.ts';
import { tileMapsOf } from './tileMaps.ts';
import { lightTable, type Coding, type TransferCurve } from './transfer.ts';
import type { ExposureReading, FrameSeries, Measurement, MotionReading } from './types.ts';

export interface MeasurerOptions {
  readonly width: number;
  readonly height: number;
  readonly coding: Coding;
  readonly curve: TransferCurve;
  /** On the set, and of the film. */
  readonly frameRate_fps: number;
  readonly playback_fps: number;
  /** Kept before and after the action, in screen time. */
  readonly handle_s?: number;
  /** Of the samples of colour that come with some frames; nothing is told of colour where it is left out. */
  readonly colour?: ColourOptions;
}

export interface Measurer {
  /** The next frame, or with its place among frames of which some are missing. Throws RangeError for a frame of another size. */
  readonly addFrame: (plane: Plane, place?: number) => void;
  /** Rows that are read of a frame, where not all are: the others may be left out. */
  readonly rowsRead?: RowsRead;
  /** A whole picture of a clip whose frames come without all of their rows: a few of them, far apart. */
  readonly addWhole: (plane: Plane) => void;
  /** A sample of a frame's colour, after that frame; one that nothing was told of is let go. Throws RangeError for one of another size. */
  readonly addColour: (sample: ColourSample) => void;
  /** All that can be said so far. Throws RangeError before the first frame. */
  readonly finish: () => Measurement;
  /** What is known so far, to be gone on from. It is what is written to: copy it, or put it away, before the next frame. */
  readonly save: () => MeasurerState;
}

/** Values kept of each frame, in this order. */
const KEPT = ['mean', 'darkest', 'middle', 'brightest', 'clippedFraction', 'crushedFraction', 'activity', 'activityNoise', 'x_px', 'y_px', 'isHeld', 'across_px', 'down_px', 'fastest_px', 'votes', 'change', 'changeOverTwo'] as const; // prettier-ignore
type Kept = (typeof KEPT)[number];

/** Missing frames that are worth keeping a place for: more are another clip. */
const MOST_MISSING = 100_000;
/** More repeated frames than this are how the clip is made, not faults of it. */
const MOST_REPEATED = 0.2;

const meanOf = (values: Float32Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function isSame(a: Uint16Array, b: Uint16Array): boolean {
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return true;
}

/** The column of a value of every frame. */
function columnOf(kept: Float32Array, name: Kept): Float64Array {
  const at = KEPT.indexOf(name);
  return Float64Array.from({ length: kept.length / KEPT.length }, (_, frame) => kept[frame * KEPT.length + at]!);
}

const indexOfMost = (values: Float64Array): number =>
  values.reduce((best, value, i) => (value > values[best]! ? i : best), 0);

function exposureOf({ weight, mean, darkest, middle, brightest, clippedFraction, crushedFraction }: FrameSeries): ExposureReading {
  const counted = (values: Float64Array) => medianOf(values.filter((_, i) => weight[i]! > 0));
  const [clippedFrame, crushedFrame] = [indexOfMost(clippedFraction), indexOfMost(crushedFraction)];
  return {
    mean: counted(mean),
    darkest: counted(darkest),
    middle: counted(middle),
    brightest: counted(brightest),
    clippedFraction: clippedFraction[clippedFrame]!,
    clippedFrame,
    crushedFraction: crushedFraction[crushedFrame]!,
    crushedFrame,
  };
} // prettier-ignore

/** What moves, over the action where there is one. */
function motionOf(kept: Float32Array, action: Action | undefined): MotionReading | undefined {
  const [across, down, fastest, votes] = [columnOf(kept, 'across_px'), columnOf(kept, 'down_px'), columnOf(kept, 'fastest_px'), columnOf(kept, 'votes')]; // prettier-ignore
  const seen = [...votes.keys()].filter((i) => votes[i]! > 0 && (!action || (i >= action.onset && i <= action.end)));
  if (seen.length === 0) return undefined;
  const of = (values: (i: number) => number) => Float64Array.from(seen, values);
  const turn = Math.atan2(medianOf(of((i) => down[i]!)), medianOf(of((i) => across[i]!)));
  return {
    typical_px: medianOf(of((i) => Math.hypot(across[i]!, down[i]!))),
    fastest_px: quantileInPlace(of((i) => fastest[i]!), 0.9),
    direction_deg: (((turn * 180) / Math.PI) + 360) % 360,
    frames: seen.length,
  };
} // prettier-ignore

/**
 * A measurer for frames of one size, at the first frame or where it was saved. Throws RangeError for options without
 * meaning, and a Fault for what was saved by another measurer.
 */
export function createMeasurer(options: MeasurerOptions, saved?: MeasurerState): Measurer {
  if (saved) requireState(saved, createMeasurer(options).save());
  const { meters, rows: savedRows } = saved ?? {};
  const { width, height, coding, curve, frameRate_fps, playback_fps, handle_s } = options;
  requirePositive({ frameRate_fps, playback_fps });
  const table = lightTable(curve, coding);
  const grid = gridOf(width, height);
  const tiles = grid.columns * grid.rows;
  const reader = createFrameReader({ grid, table, clippedFrom: coding.clippedCode ?? coding.whiteCode, crushedTo: coding.blackCode });
  const activityMeter = createActivityMeter(grid, meters?.activity);
  const motionMeter = createMotionMeter(grid, meters?.motion);
  const noiseMeter = createNoiseMeter(coding, reader.places.length, meters?.noise);
  const blemishes = createBlemishFinder({ width, height, coding, table }, meters?.blemishes);
  const bandMeter = createBandMeter(grid, meters?.bands);
  const orderMeter = createOrderMeter(reader.places.length, coding.blackCode, meters?.order);
  const reachMeter = createReachMeter(grid, meters?.reach);
  const brightestOf = createBrightest(grid);
  const percentilesOf = createPercentiles(coding.bitDepth);
  const colourMeter = options.colour && createColourMeter(options.colour, meters?.colour);
  const roots = new Float32Array(grid.cellColumns * grid.cellRows);
  const sampleBefore = saved?.sampleBefore.slice() ?? new Uint16Array(reader.places.length);
  const light = createGrowing(tiles, savedRows?.light);
  const gradient = createGrowing(tiles, savedRows?.gradient);
  const laplacian = createGrowing(tiles, savedRows?.laplacian);
  const activity = createGrowing(tiles, savedRows?.activity);
  const brightest = createGrowing(tiles, savedRows?.brightest);
  const [across, down] = motionMeter.anchors;
  const windows = createGrowing(KEPT_OF_WINDOW * across * down, savedRows?.windows);
  const kept = createGrowing(KEPT.length, savedRows?.kept);
  const clippedMost = saved?.clippedMost.slice() ?? new Float32Array(tiles);
  const crushedSum = saved?.crushedSum.slice() ?? new Float64Array(tiles);
  const [missing, repeated] = [[...(saved?.missing ?? [])], [...(saved?.repeated ?? [])]];
  const [nothing, keptNothing] = [new Float32Array(tiles), new Float32Array(KEPT.length)];
  // Noise of one cell, from that of the mean activity of a tile of them.
  const perCell = Math.sqrt(roots.length / tiles / (2 - 4 / Math.PI));
  let { frameCount, looked } = saved ?? { frameCount: 0, looked: 0 };

  const skip = (): void => {
    bandMeter.breakOff();
    orderMeter.breakOff();
    missing.push(frameCount);
    for (const of of [light, gradient, laplacian, activity, brightest]) of.add(nothing);
    windows.add(new Float32Array(KEPT_OF_WINDOW * across * down));
    kept.add(keptNothing);
    frameCount += 1;
  };

  const keep = (reading: FrameReading, isRepeated: boolean): void => {
    // A frame that is the one before again is no step of anything.
    const change = isRepeated ? { one: 0, two: 0 } : orderMeter.next(reading.sample);
    if (!isRepeated) bandMeter.next(reading.cells);
    rootsOf(reading.cells, roots);
    const lively = activityMeter.next(roots);
    const motion = motionMeter.next(roots, activityMeter.differences, lively);
    const codes = percentilesOf(reading.sample);
    light.add(reading.light);
    gradient.add(reading.gradient);
    laplacian.add(reading.laplacian);
    activity.add(lively);
    brightest.add(brightestOf(reading.cells));
    windows.add(motion.windows);
    reachMeter.next(roots, activityMeter.differences, activityMeter.noise() * perCell);
    for (let tile = 0; tile < tiles; tile += 1) {
      clippedMost[tile] = Math.max(clippedMost[tile]!, reading.clipped[tile]!);
      crushedSum[tile]! += reading.crushed[tile]!;
    }
    const values: Readonly<Record<Kept, number>> = {
      mean: meanOf(reading.light),
      darkest: table[codes[0]]!,
      middle: table[codes[1]]!,
      brightest: table[codes[2]]!,
      clippedFraction: meanOf(reading.clipped),
      crushedFraction: meanOf(reading.crushed),
      activity: meanOf(lively),
      activityNoise: activityMeter.noise() / tiles,
      x_px: motion.x_px,
      y_px: motion.y_px,
      isHeld: motion.isHeld ? 1 : 0,
      across_px: motion.across_px,
      down_px: motion.down_px,
      fastest_px: motion.fastest_px,
      votes: motion.votes,
      change: change.one,
      changeOverTwo: change.two,
    };
    kept.add(KEPT.map((name) => values[name]));
  };

  const addFrame: Measurer['addFrame'] = (plane, place = frameCount) => {
    requireCount({ place }, frameCount);
    if (plane.width !== width || plane.height !== height || plane.data.length < width * rowsIn(plane.rowsRead, height))
      throw new RangeError(`a frame must be ${width} × ${height}, got ${plane.width} × ${plane.height}`);
    const { step, judgedStep } = plane.rowsRead ?? grid.rowsRead;
    if (step !== grid.rowsRead.step || judgedStep !== grid.rowsRead.judgedStep) throw new RangeError(`a frame must have the rows that are read, got one of every ${step}`); // prettier-ignore
    if (place - frameCount + missing.length > MOST_MISSING) throw new RangeError(`place must not leave out more than ${MOST_MISSING} frames, got ${place}`); // prettier-ignore
    while (frameCount < place) skip();
    const reading = reader.read(plane);
    const isRepeated = looked > 0 && isSame(reading.sample, sampleBefore);
    if (isRepeated) repeated.push(frameCount);
    else noiseMeter.next(reading.sample);
    sampleBefore.set(reading.sample);
    // Looked at after 1, 2, 4, 8 … frames: few, and far apart.
    if (!plane.rowsRead && (looked & (looked + 1)) === 0) blemishes.look(plane);
    keep(reading, isRepeated);
    looked += 1;
    frameCount += 1;
  };

  const weightsOf = (): Float64Array => {
    const weight = new Float64Array(frameCount).fill(1);
    for (const frame of missing) weight[frame] = 0;
    if (repeated.length <= MOST_REPEATED * looked) for (const frame of repeated) weight[frame] = 0;
    return weight;
  };

  const finish = (): Measurement => {
    if (looked === 0) throw new RangeError('a clip must have at least one frame');
    const [columns, rows, cell_px] = [grid.columns, grid.rows, grid.cell_px];
    const weight = weightsOf();
    const all = kept.all();
    const column = (name: Kept) => columnOf(all, name);
    const seen = { columns, rows, brightest: brightest.all(), light: light.all(), activity: activity.all(), weights: weight };
    const signal = signalOf(seen);
    const activities = signal ? withoutSignal(seen, signal) : column('activity');
    // A frame that is missing has the activity of the one before, so that it ends nothing.
    for (const frame of missing) activities[frame] = activities[frame - 1] ?? 0;
    const lostFraction = clippedMost.map((most, tile) => Math.max(most, crushedSum[tile]! / looked > 0.5 ? 1 : 0));
    const noise = noiseReadingOf(noiseMeter.levels(), table, medianOf(column('middle').filter((_, i) => weight[i]! > 0)));
    const focus = focusOf({ tiles, gradient: gradient.all(), laplacian: laplacian.all(), light: light.all(), activity: activity.all(), noiseVariance: noise.varianceAt, weights: weight });
    // One tile that strays by half of what noise does is nothing.
    const leastDeviation = medianOf(column('activityNoise').filter((_, i) => weight[i]! > 0)) / 2;
    const action = actionOf({ activity: activities, leastDeviation, playback_fps, ...(handle_s !== undefined && { handle_s }) });
    const movement = signal && movementAfter(seen, signal);
    const motion = motionOf(all, action);
    const reach = action && reachMeter.found(signal ? [signal.tile] : []);
    const held = column('isHeld');
    const frames: FrameSeries = {
      weight,
      mean: column('mean'),
      darkest: column('darkest'),
      middle: column('middle'),
      brightest: column('brightest'),
      clippedFraction: column('clippedFraction'),
      crushedFraction: column('crushedFraction'),
      sharpness: focus.sharpness,
      activity: activities,
      speed_px: column('across_px').map((across, i) => Math.hypot(across, column('down_px')[i]!)),
      fastest_px: column('fastest_px'),
      x_px: column('x_px'),
      y_px: column('y_px'),
    };
    const flicker = flickerOf({ columns, rows, frameRate_fps, light: light.all(), frameWeights: weight, lostFraction, activity: activity.all() });
    const beats_Hz = flicker.lines.flatMap(({ looksLike, beat_Hz }) => (looksLike === 'light' ? [beat_Hz] : []));
    const shake = windowShakeOf({ x_px: frames.x_px, y_px: frames.y_px, weights: weight.map((of, i) => of * held[i]!), frameRate_fps, cell_px, windows: windows.all(), across, down });
    return {
      width,
      height,
      frameRate_fps,
      playback_fps,
      frameCount,
      missingFrames: missing,
      repeatedFrames: repeated,
      tileColumns: columns,
      tileRows: rows,
      tiles: tileMapsOf({ tiles, activity: activity.all(), light: light.all(), clippedMost, weights: weight }),
      exposure: exposureOf(frames),
      flicker,
      ...(colourMeter && { colour: colourOf({ seen: colourMeter.seen(), beats_Hz, frameRate_fps, frameWeights: weight }) }),
      focus,
      ...(motion && { motion }),
      ...(action && { action }),
      ...(signal && { signal: { ...signal, ...(movement !== undefined && { movement }) } }),
      ...(reach && { reach }),
      shake,
      ...(noise.reading && { noise: noise.reading }),
      ...blemishes.found(),
      // What moves up or down with the picture would pass for bands.
      bands: shake.verdict === 'still' || shake.verdict === 'cannot tell' ? bandMeter.found(frameRate_fps) : [],
      swappedFrames: outOfOrder({ one: column('change'), two: column('changeOverTwo'), weights: weight }),
      frames,
    };
  };

  const save = (): MeasurerState => ({
    form: STATE_FORM,
    frameCount,
    looked,
    missing,
    repeated,
    sampleBefore,
    clippedMost,
    crushedSum,
    rows: { light: light.all(), gradient: gradient.all(), laplacian: laplacian.all(), activity: activity.all(), brightest: brightest.all(), windows: windows.all(), kept: kept.all() },
    keptNames: KEPT.join(' '),
    meters: { activity: activityMeter.state(), motion: motionMeter.state(), noise: noiseMeter.state(), blemishes: blemishes.state(), bands: bandMeter.state(), order: orderMeter.state(), reach: reachMeter.state(), ...(colourMeter && { colour: colourMeter.state() }) },
  });
  const addColour = (sample: ColourSample): void => colourMeter?.add(sample);
  const addWhole = (plane: Plane): void => blemishes.look(plane);
  return { ...(grid.rowsRead.step > 1 && { rowsRead: grid.rowsRead }), addFrame, addWhole, addColour, finish, save };
} // prettier-ignore
