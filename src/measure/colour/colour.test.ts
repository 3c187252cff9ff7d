import { describe, expect, test } from 'vitest';
import type { ColourScene, Light3 } from '../../../test/footage/colour.ts';
import { colourIn, meterOf, optionsOf, samplesOf } from '../../../test/footage/colourMeasured.ts';
import { createMeasurer } from '../measurer.ts';
import { codingOf } from '../transfer.ts';
import { chromaticityOf, xyzMatrix } from './chromaticity.ts';
import { colourOf } from './colour.ts';
import { createColourMeter } from './meter.ts';

const FRAMES = 160;
const WHITE: Light3 = [1, 1, 1];
const CARD: ColourScene = { width: 96, height: 54, frames: FRAMES, seed: 3, light: () => WHITE };
const EVERY = { every: 8 };
const RED: Light3 = [0.5, 0.1, 0.1];

/** Where a light lies, worked out apart from what is tested: by the matrix of the primaries alone. */
const placeOf = ([r, g, b]: Light3) => chromaticityOf(xyzMatrix('bt709'), r, g, b)!;
/** From the middle of the first tenth to that of the last, of the whole way. */
const SEEN_WAY = (FRAMES - 1 - 0.1 * (FRAMES - 1)) / FRAMES;

const drifting = (red: number, green: number, blue: number) => (frame: number): Light3 => [1 + (red * frame) / FRAMES, 1 + (green * frame) / FRAMES, 1 + (blue * frame) / FRAMES]; // prettier-ignore

describe('a grey card', () => {
  test('under a steady light is neutral, lies at the white of its coding, and is steady', () => {
    const { verdict, neutral, drift, leastDistance } = colourIn(CARD, EVERY);
    expect(verdict).toBe('steady');
    expect([neutral!.u, neutral!.v].map((of) => of.toFixed(4))).toEqual(['0.1978', '0.4683']);
    expect(neutral!.extentFraction).toBeGreaterThan(0.95);
    expect(Math.abs(neutral!.red_stops)).toBeLessThan(0.002);
    expect(drift!.distance).toBeLessThan(0.0002);
    expect(leastDistance).toBe(0.0011);
  });

  test('under a light of another colour lies where that does', () => {
    const light: Light3 = [1.08, 1, 0.93];
    const { neutral } = colourIn({ ...CARD, light: () => light }, EVERY);
    expect(neutral!.u).toBeCloseTo(placeOf(light).u, 4);
    expect(neutral!.v).toBeCloseTo(placeOf(light).v, 4);
    expect(neutral!.red_stops).toBeCloseTo(Math.log2(1.08), 2);
    expect(neutral!.blue_stops).toBeCloseTo(Math.log2(0.93), 2);
  });

  test.each([
    ['warmer', drifting(0.03, 0, -0.04), { warmer: 1, greener: 0 }],
    ['cooler', drifting(-0.03, 0, 0.04), { warmer: -1, greener: 0 }],
    ['greener', drifting(0, 0.04, 0), { warmer: 0, greener: 1 }],
    ['pinker', drifting(0, -0.04, 0), { warmer: 0, greener: -1 }],
  ] as const)('under a light that grows %s drifts so, by as much', (_, light, { warmer, greener }) => {
    const { verdict, drift } = colourIn({ ...CARD, light }, EVERY);
    expect(verdict).toBe('drifts');
    const [from, to] = [placeOf(light(0)), placeOf(light(FRAMES))];
    expect(drift!.u / (SEEN_WAY * (to.u - from.u))).toBeCloseTo(1, 0);
    expect(Math.abs(drift!.distance / (SEEN_WAY * Math.hypot(to.u - from.u, to.v - from.v)) - 1)).toBeLessThan(0.08);
    expect(drift!.distance).toBeGreaterThan(10 * drift!.deviation);
    if (warmer !== 0) expect(Math.sign(drift!.warmer_mired!)).toBe(warmer);
    if (warmer !== 0) expect(Math.abs(drift!.warmer_mired!)).toBeGreaterThan(3);
    if (greener !== 0) expect(Math.sign(drift!.greenerDuv!)).toBe(greener);
    if (greener !== 0) expect(Math.abs(drift!.warmer_mired!)).toBeLessThan(1);
  });

  test('whose light goes off and comes back strays', () => {
    const { verdict, drift, most } = colourIn({ ...CARD, light: (frame) => [1 + 0.08 * Math.sin((Math.PI * frame) / FRAMES), 1, 1] }, EVERY); // prettier-ignore
    expect(verdict).toBe('strays');
    expect(most!.distance).toBeGreaterThan(4 * drift!.distance);
  });

  test('only grows brighter, or pulses in all colours alike, without a drift of colour', () => {
    const brighter = colourIn(
      { ...CARD, light: (frame) => [1 + frame / 200, 1 + frame / 200, 1 + frame / 200] },
      EVERY,
    );
    expect(brighter.verdict).toBe('steady');
    const wave = (frame: number) => 1 + 0.2 * Math.cos(0.2 * Math.PI * frame);
    const pulsing = colourIn(
      { ...CARD, light: (frame) => [wave(frame), wave(frame), wave(frame)] },
      { beats_Hz: [100] },
    );
    expect(pulsing).toMatchObject({ verdict: 'steady', pulses: [] });
  });

  test('in a corner of a coloured set is found, with what drifts there', () => {
    const light = drifting(0.03, 0, -0.03);
    const patches = [{ from: [0.7, 0.6], to: [0.86, 0.85], reflects: [0.2, 0.2, 0.2] }] as const;
    const { verdict, neutral, drift } = colourIn({ ...CARD, card: RED, patches, light }, EVERY);
    expect(neutral!.extentFraction).toBeLessThan(0.05);
    expect(neutral!.tiles.every(({ tile }) => tile % 24 >= 15 && Math.floor(tile / 24) >= 6)).toBe(true);
    expect(verdict).toBe('drifts');
    expect(drift!.warmer_mired).toBeGreaterThan(3);
  });

  test('with a coloured drop before it that comes and goes, or comes and stays, is steady', () => {
    const at = (frame: number) => [0.3, Math.min(0.6, frame / FRAMES)] as const;
    for (const until of [FRAMES, FRAMES / 2]) {
      const drop = {
        radius: 0.18,
        reflects: [0.5, 0.2, 0.1] as const,
        at: (frame: number) => at(Math.min(frame, until)),
      };
      expect(colourIn({ ...CARD, drop }, EVERY).verdict).toBe('steady');
    }
  });
});

test('steady light is called steady, whatever the noise and whatever falls', () => {
  const verdicts = [0.005, 0.02, 0.05].flatMap((noise) => [1, 2, 3, 4].map((seed) => {
    const drop = { radius: 0.12, reflects: [0.6, 0.2, 0.1] as const, at: (frame: number) => [0.2 + frame / 250, 0.5] as const };
    return colourIn({ ...CARD, frames: 96, seed: 50 + seed, noise, drop }, EVERY).verdict;
  })); // prettier-ignore
  expect(new Set(verdicts)).toEqual(new Set(['steady']));
});

describe('colours that pulse apart', () => {
  const apart = (frame: number): Light3 => {
    const wave = Math.cos(0.2 * Math.PI * frame);
    return [1 + 0.1 * wave, 1 + 0.1 * wave, 1 + 0.04 * wave];
  };

  test('are told where every frame was sampled, by as much', () => {
    const { pulses } = colourIn({ ...CARD, light: apart }, { beats_Hz: [100] });
    expect(pulses).toHaveLength(1);
    expect(pulses[0]!.greenDepthFraction).toBeCloseTo(0.1, 2);
    // (1 + 0.04·w) / (1 + 0.1·w) swings by 0.06 to the first order.
    expect(pulses[0]!.blueDepthFraction).toBeCloseTo(0.06, 2);
    expect(pulses[0]!.redDepthFraction).toBeLessThan(0.001);
  });

  test('are not told of where only some frames were', () => {
    expect(colourIn({ ...CARD, light: apart }, { every: 2, beats_Hz: [100] }).pulses).toEqual([]);
  });
});

describe('no neutral part to judge by', () => {
  test.each([
    ['a set of one colour', { card: RED }, 'is coloured'],
    ['a set that is burnt out', { light: () => [4, 4, 4] }, 'is clipped or too dark'],
    ['one channel that is burnt out', { light: () => [3.2, 2.7, 2.7] }, 'is clipped or too dark'],
    ['a set that is dark', { light: () => [0.01, 0.01, 0.01] }, 'is clipped or too dark'],
  ] as const)('%s', (_, scene, why) => {
    const reading = colourIn({ ...CARD, ...(scene as Partial<ColourScene>) }, EVERY);
    expect(reading).toMatchObject({ verdict: 'cannot tell', why: `No neutral part to judge by: the picture mostly ${why}.` });
    expect(reading.neutral).toBeUndefined();
  }); // prettier-ignore

  test('a picture that moves all over', () => {
    const squares = (sample: (typeof samples)[number], place: number) => {
      const grey = Uint16Array.from({ length: 96 * 54 }, (_, i) => 300 + (((i % 96) * 37 + Math.floor(i / 96) * 59 + (i % 7) * place * 83) % 300)); // prettier-ignore
      return { place, planes: [grey, sample.planes[1], sample.planes[2]] as const };
    };
    const samples = samplesOf({ ...CARD, frames: 24 });
    const seen = meterOf(
      CARD,
      samples.map((sample, i) => (i < 4 ? sample : squares(sample, i))),
    ).seen();
    const { why } = colourOf({ seen, beats_Hz: [], frameRate_fps: 1000, frameWeights: new Float64Array(24).fill(1) });
    expect(why).toBe('No neutral part to judge by: the picture mostly moves.');
  });

  test('and too few samples, or none, tell no drift', () => {
    expect(colourIn({ ...CARD, frames: 30 }, EVERY)).toMatchObject({ verdict: 'cannot tell', why: '4 samples are too few to tell a drift.' });
    const seen = createColourMeter(optionsOf(CARD)).seen();
    expect(colourOf({ seen, beats_Hz: [], frameRate_fps: 1000, frameWeights: new Float64Array(9) }).why).toBe('No frame of it was sampled for colour.');
  }); // prettier-ignore
});

describe('between code values', () => {
  const step = (noise: number) => colourIn({ ...CARD, noise }, EVERY);

  test('a drift may hide where there is no noise, and less than that is called steady', () => {
    // A step of ten bits in Cr is 0.0018 of signal: some hundredth of a stop on a card of a third.
    expect(step(0).drift!.deviation).toBeGreaterThan(0.0001);
    expect(step(0).leastDistance).toBe(0.0011);
    expect(step(0.01).drift!.deviation).toBeLessThan(0.0001);
  });

  test('what may hide in eight bits is four times that of ten, and with noise nothing does', () => {
    const hiddenIn = (bits: 8 | 10, noise: number) => {
      const scene = { ...CARD, noise };
      const codes = (of: Uint16Array) => (bits === 8 ? of.map((code) => Math.round(code / 4)) : of);
      const meter = createColourMeter({ ...optionsOf(scene), coding: codingOf('video', bits) });
      for (const { place, planes: [y, cb, cr] } of samplesOf(scene, 8)) meter.add({ place, planes: [codes(y as Uint16Array), codes(cb as Uint16Array), codes(cr as Uint16Array)] });
      return colourOf({ seen: meter.seen(), beats_Hz: [], frameRate_fps: 1000, frameWeights: new Float64Array(FRAMES).fill(1) });
    };
    const [eight, ten] = [hiddenIn(8, 0).drift!.deviation, hiddenIn(10, 0).drift!.deviation];
    expect(eight / ten).toBeCloseTo(4, 0);
    expect(hiddenIn(8, 0).leastDistance).toBeGreaterThan(0.0015);
    expect(hiddenIn(8, 0.04).drift!.deviation).toBeLessThan(eight / 4);
  }); // prettier-ignore
});

describe('a meter', () => {
  const scene: ColourScene = { ...CARD, frames: 40, light: drifting(0.2, 0, -0.2) };
  const samples = samplesOf(scene);

  test('gone on from where it was saved tells the same', () => {
    const state = structuredClone(meterOf(scene, samples.slice(0, 17)).state());
    const whole = meterOf(scene, samples).seen();
    expect(meterOf(scene, samples.slice(17), state).seen()).toEqual(whole);
  });

  test('of a clip without end takes the same room, and keeps samples from all of it', () => {
    const [width, height] = [16, 9];
    const small = { ...CARD, width, height, frames: 5, noise: 0 };
    const [sample] = samplesOf(small);
    const meter = createColourMeter(optionsOf(small));
    for (let place = 0; place < 5000; place += 1) meter.add({ ...sample!, place });
    const { places, isThinned } = meter.seen();
    expect(places.length).toBeGreaterThanOrEqual(250);
    expect(places.length).toBeLessThan(600);
    expect([places[0], isThinned]).toEqual([0, true]);
    expect(places.at(-1)!).toBeGreaterThan(4900);
    const steps = new Set([...places].slice(1).map((place, i) => place - places[i]!));
    expect(steps.size).toBe(1);
  });

  test('refuses a sample of another size', () => {
    const [sample] = samples;
    const short = { place: 0, planes: [sample!.planes[0], sample!.planes[1], new Uint16Array(3)] as const };
    expect(() => createColourMeter(optionsOf(scene)).add(short)).toThrow(/5184 values a plane/);
  });
});

test('a measurer with samples of colour, gone on from where it was saved, tells what it does in one go', () => {
  const scene: ColourScene = { ...CARD, width: 48, height: 27, frames: 60, light: drifting(0.2, 0, -0.2) };
  const { width, height } = scene;
  const options = { width, height, coding: codingOf('video', 10), curve: { kind: 'rec709' }, frameRate_fps: 1000, playback_fps: 25, colour: optionsOf(scene) } as const;
  const run = (stop?: number) => {
    let measurer = createMeasurer(options);
    for (const sample of samplesOf(scene)) {
      if (sample.place === stop) measurer = createMeasurer(options, structuredClone(measurer.save()));
      measurer.addFrame({ data: sample.planes[0], width, height }, sample.place);
      if (sample.place % 4 === 0) measurer.addColour(sample);
    }
    return measurer.finish();
  };
  const whole = run();
  expect(whole.colour!.verdict).toBe('drifts');
  for (const stop of [0, 1, 31, 32]) expect(run(stop)).toEqual(whole);
  const { colour: _, ...plain } = options;
  expect(createMeasurer(plain, undefined).save().meters.colour).toBeUndefined();
  expect(() => createMeasurer(options, structuredClone(createMeasurer(plain).save()))).toThrow(/another form/);
}); // prettier-ignore
