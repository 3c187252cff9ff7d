/** The colour of clips in replies and sentences, alone and of two held against each other. */
import { describe, expect, test } from 'vitest';
import type { ColourScene, Light3 } from '../../test/footage/colour.ts';
import { optionsOf, samplesOf } from '../../test/footage/colourMeasured.ts';
import { measured } from '../../test/footage/measured.ts';
import { synthetic, type Scene } from '../../test/footage/synthetic.ts';
import { createMeasurer } from '../measure/measurer.ts';
import { codingOf } from '../measure/transfer.ts';
import type { Measurement } from '../measure/types.ts';
import { shiftWords } from './colourWords.ts';
import { PLAIN } from './lines.ts';
import { measurePair, pairLines, pairReply } from './measurePair.ts';
import { measureCsv } from './measureCsv.ts';
import { clipReply, measureReply, type MeasuredClip } from './measureReply.ts';
import { MeasureReply } from './measureSchema.ts';
import { clipLines } from './measureText.ts';

const FRAMES = 48;
const GREY = { from: [0.4, 0.2], to: [0.9, 0.9], reflects: [0.25, 0.25, 0.25] } as const;
/** A grey card in front of a red wall with stripes. */
const SCENE: ColourScene = {
  width: 96,
  height: 54,
  frames: FRAMES,
  seed: 4,
  card: [0.5, 0.08, 0.08],
  patches: [GREY, { from: [0.1, 0], to: [0.2, 1], reflects: [0.1, 0.3, 0.1] }],
  light: () => [1, 1, 1],
};
const growing = (red: number, green: number, blue: number) => (frame: number): Light3 => [1 + (red * frame) / FRAMES, 1 + (green * frame) / FRAMES, 1 + (blue * frame) / FRAMES]; // prettier-ignore

function measurementOf(scene: ColourScene, every = 1): Measurement {
  const { width, height } = scene;
  const measurer = createMeasurer({ width, height, coding: codingOf('video', 10), curve: { kind: 'rec709' }, frameRate_fps: 1000, playback_fps: 25, colour: optionsOf(scene) });
  for (const sample of samplesOf(scene)) {
    measurer.addFrame({ data: sample.planes[0], width, height }, sample.place);
    if (sample.place % every === 0) measurer.addColour(sample);
  }
  return measurer.finish();
} // prettier-ignore

const clipOf = (measurement: Measurement, name = 'SYNTHETIC.mkv'): MeasuredClip => ({ name, codec: 'ffv1', pixelFormat: 'yuv444p10le', measurement, frameRateBasis: 'given', curve: 'rec709', curveBasis: 'given', isWhole: true, notes: [] }); // prettier-ignore
const of = (change: Partial<ColourScene>, every = 2) => clipOf(measurementOf({ ...SCENE, ...change }, every));
const colourSays = (clip: MeasuredClip) => clipReply(clip).verdict.filter((says) => says.startsWith('Colour')).join(' '); // prettier-ignore

const steady = of({});
const warm = of({ seed: 9, light: () => [1.05, 1, 0.93] });

describe('the colour of a clip', () => {
  test.each([
    ['steady', {}, /^Colour: steady, judged by [23]\d % of the picture that passes for grey; a drift from Δu′v′ 0\.0011 on would have been found\.$/],
    ['warmer', { light: growing(0.04, 0, -0.05) }, /^Colour drifts: from the first tenth to the last, what passes for grey \([23]\d % of the picture\) goes [78] mired warmer\.$/],
    ['cooler', { light: growing(-0.04, 0, 0.05) }, /goes [78] mired cooler\.$/],
    ['greener', { light: growing(0, 0.05, 0) }, /goes greener by Duv 0\.002\d\.$/],
    ['pinker and warmer', { light: growing(0.06, -0.04, 0) }, /goes \d+ mired warmer and pinker by Duv 0\.00\d\d\.$/],
    ['there and back', { light: (frame: number) => [1 + 0.1 * Math.sin((Math.PI * frame) / FRAMES), 1, 1] }, /^Colour strays: within the clip, what passes for grey \([23]\d % of the picture\) goes .* and comes back\.$/],
    ['a light that is warm throughout', { light: () => [1.06, 1, 0.9] }, /would have been found\. Against the white of its coding, what passes for grey is 1\d mired warmer\.$/],
    ['a set without grey', { patches: [] }, /^Colour: no neutral part to judge by: the picture mostly is coloured\.$/],
    ['a few frames', { frames: 6 }, /^Colour: a drift cannot be told\. 3 samples are too few to tell a drift\.$/],
  ] as const)('of %s is told so', (_, change, says) => {
    const clip = of(change as Partial<ColourScene>);
    expect(colourSays(clip)).toMatch(says);
    const whole = measureReply([clipReply(clip)], []);
    expect(JSON.stringify(MeasureReply.parse(JSON.parse(JSON.stringify(whole))))).toBe(JSON.stringify(whole));
    expect(clipLines(clipReply(clip), PLAIN).join(' ')).not.toMatch(/\b(?:NaN|undefined|Infinity)\b/);
  }); // prettier-ignore

  test('that pulses apart is told with its rate, where every frame was sampled', () => {
    const light = (frame: number): Light3 => {
      const wave = Math.cos(0.2 * Math.PI * frame);
      return [1 + 0.1 * wave, 1 + 0.1 * wave, 1 + 0.05 * wave];
    };
    const frames = 120;
    expect(colourSays(of({ frames, light }, 1))).toMatch(/Colours pulse apart at (?:99|100)[.\d]* Hz: red by 0\.0\d+ %, blue by 5(?:\.\d)? % against green/); // prettier-ignore
    expect(colourSays(of({ frames, light }, 2))).not.toContain('pulse apart');
  });

  test('of a clip without colours is not spoken of', () => {
    const gray = clipOf(measured(synthetic('gray', { ...GRAY_SCENE, frames: 30 })));
    expect(colourSays(gray)).toBe('');
    expect(clipReply(gray).colour).toBeUndefined();
  });
});

test('the table has the colour of the frames that were sampled, and nothing for others', () => {
  const lines = measureCsv([{ name: 'a.mkv', measurement: warm.measurement }])
    .trimEnd()
    .split('\r\n');
  expect(lines[0]).toMatch(/,redOverGreen_stops,blueOverGreen_stops$/);
  expect(lines[1]).toMatch(/,0\.0[67]\d*,-0\.\d+$/);
  expect(lines[2]).toMatch(/,,$/);
});

test.each([
  [{ distance: 0.0019, warmer_mired: 4.2, greenerDuv: 0.0001 }, '4 mired warmer'],
  [{ distance: 0.0019, warmer_mired: -12.4, greenerDuv: 0.0001 }, '12 mired cooler'],
  [{ distance: 0.004, warmer_mired: 5, greenerDuv: -0.0018 }, '5 mired warmer and pinker by Duv 0.0018'],
  [{ distance: 0.03 }, 'Δu′v′ 0.0300 off'],
])('a shift of %j is %s', (shift, says) => expect(shiftWords(shift)).toBe(says));

/** Frames of one plane, with texture to judge sharpness by. */
const GRAY_SCENE: Scene = { width: 160, height: 96, rate_fps: 1000, frames: 60, exposure_s: 1 / 2000, seed: 3, lamps: [{ light: { kind: 'steady' } }] }; // prettier-ignore
const gray = (change: Partial<Scene>) => clipOf(measured(synthetic('gray', { ...GRAY_SCENE, ...change })));

describe('two clips', () => {
  const rowOf = (pair: readonly [MeasuredClip, MeasuredClip], title: string) => measurePair(pair).rows.find((row) => row.title === title); // prettier-ignore

  test('of one card under another light differ by that light', () => {
    const { colour, scene } = measurePair([steady, warm]);
    expect(scene).toBe('same');
    expect(colour).toMatchObject({ isByShared: true });
    expect(colour!.warmer_mired).toBeGreaterThan(9);
    expect(colour!.warmer_mired).toBeLessThan(14);
    expect(colour!.distance).toBeGreaterThan(20 * colour!.deviation);
    expect(rowOf([steady, warm], 'Colour of what is neutral')!.differs).toMatch(/^the second 1\d mired warmer$/);
    expect(rowOf([warm, steady], 'Colour of what is neutral')!.differs).toMatch(/^the second 1\d mired cooler$/);
  });

  test('of one card under the same light are the same, and other parts are said to be others', () => {
    const again = of({ seed: 21 });
    expect(rowOf([steady, again], 'Colour of what is neutral')).toMatchObject({ differs: 'the same', isSame: true });
    const moved = of({ patches: [{ ...GREY, from: [0, 0], to: [0.3, 0.5] }], light: () => [1.05, 1, 0.93] });
    expect(measurePair([steady, moved]).colour).toMatchObject({ isByShared: false });
    expect(rowOf([steady, moved], 'Colour of what is neutral')!.differs).toContain('which may be another surface');
  });

  test('of which one has no neutral part, or no colours, cannot be told apart by it', () => {
    expect(rowOf([steady, of({ patches: [] })], 'Colour of what is neutral')).toMatchObject({ of: [expect.stringMatching(/^u′ 0\.19/), 'no neutral part'], differs: 'cannot be told' }); // prettier-ignore
    expect(rowOf([gray({}), gray({})], 'Colour of what is neutral')).toBeUndefined();
  });

  test('of one scene differ in exposure by what stands still, of others by their middle tones', () => {
    const dim = gray({ seed: 3, white_e: 8000 });
    expect(measurePair([dim, gray({})])).toMatchObject({ scene: 'same' });
    expect(measurePair([dim, gray({})]).exposure_stops).toBeCloseTo(1, 1);
    const other = gray({ seed: 77, white_e: 8000 });
    expect(measurePair([other, gray({})])).toMatchObject({ scene: 'other' });
    expect(measurePair([other, gray({})]).detailRatio).toBeUndefined();
  });

  test('of one scene, the blurred one has less detail; of other scenes nobody can say', () => {
    const blurred = gray({ focus_px: () => 1.2 });
    const sharp = gray({ focus_px: () => 0 });
    expect(measurePair([sharp, blurred]).detailRatio).toBeLessThan(0.75);
    expect(measurePair([blurred, sharp]).detailRatio).toBeGreaterThan(1.33);
    expect(measurePair([sharp, gray({})]).detailRatio).toBeCloseTo(1, 1);
    expect(rowOf([sharp, blurred], 'Detail of the set')!.differs).toMatch(/less|times/);
    expect(rowOf([sharp, gray({ seed: 77 })], 'Detail of the set')!.differs).toBe('cannot be told');
  });

  test('of a plain card cannot be told to be one scene', () => {
    const plain = gray({ blobs: 0 });
    expect(measurePair([plain, plain]).scene).toBe('cannot tell');
    expect(measurePair([plain, gray({ blobs: 0, seed: 12 })]).scene).toBe('cannot tell');
    expect(measurePair([plain, gray({ blobs: 0, width: 80, height: 48 })]).scene).toBe('cannot tell');
  });

  test('are told to programs in the form of the schema, and to eyes in lines', () => {
    const pair = measurePair([steady, warm]);
    const whole = measureReply([clipReply(steady), clipReply(warm)], [], pairReply(pair));
    expect(JSON.stringify(MeasureReply.parse(JSON.parse(JSON.stringify(whole))))).toBe(JSON.stringify(whole));
    const lines = pairLines(pair, ['a.mkv', 'b.mkv'], PLAIN);
    expect(lines[0]).toBe('b.mkv against a.mkv');
    expect(lines.filter((line) => line !== line.trimEnd() || line.length > 100)).toEqual([]);
    expect(lines.join('\n')).toMatch(/Colour of what is neutral: the second 1\d mired warmer\.\n {6}u′ /);
    expect(lines.join(' ')).not.toMatch(/\b(?:NaN|undefined|Infinity)\b|safe/);
  });
});
