/** Synthetic footage in colour handed to the meter of colour, as samples of every so many frames. */
import { colourOf, type ColourReading } from '../../src/measure/colour/colour.ts';
import {
  createColourMeter,
  type ColourMeter,
  type ColourOptions,
  type ColourSample,
  type ColourState,
} from '../../src/measure/colour/meter.ts';
import { codingOf } from '../../src/measure/transfer.ts';
import { lightOfScene, planesOf, type ColourScene } from './colour.ts';

export const optionsOf = ({ width, height }: ColourScene): ColourOptions => ({
  width,
  height,
  form: { kind: 'ycbcr', matrix: 'bt709', range: 'video' },
  coding: codingOf('video', 10),
  curve: { kind: 'rec709' },
  primaries: 'bt709',
});

/** Every so many frames of a scene, in ten bits with every colour whole. */
export function samplesOf(scene: ColourScene, every = 1): readonly ColourSample[] {
  return [...lightOfScene(scene)].flatMap((picture, place) => {
    if (place % every !== 0) return [];
    const [first, second, third] = planesOf(picture, scene, { pixels: 'yuv444p10le' }).map((of) =>
      Uint16Array.from(of),
    );
    return [{ place, planes: [first!, second!, third!] as const }];
  });
}

export function meterOf(scene: ColourScene, samples: readonly ColourSample[], saved?: ColourState): ColourMeter {
  const meter = createColourMeter(optionsOf(scene), saved);
  for (const sample of samples) meter.add(sample);
  return meter;
}

/** The colour of a scene taken at 1000 frames a second. */
export function colourIn(scene: ColourScene, { every = 1, beats_Hz = [] }: { readonly every?: number; readonly beats_Hz?: readonly number[] } = {}): ColourReading {
  const seen = meterOf(scene, samplesOf(scene, every)).seen();
  return colourOf({ seen, beats_Hz, frameRate_fps: 1000, frameWeights: new Float64Array(scene.frames).fill(1) });
} // prettier-ignore
