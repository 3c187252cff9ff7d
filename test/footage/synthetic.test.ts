import { describe, expect, test } from 'vitest';
import { BLACK_CODE, meanOf, synthetic, WHITE_CODE, type LampLight, type Scene } from './synthetic.ts';

const SCENE: Scene = {
  width: 40,
  height: 30,
  rate_fps: 1000,
  frames: 20,
  exposure_s: 0.0005,
  seed: 3,
  lamps: [{ light: { kind: 'steady' } }],
};

/** By many small steps, from the instant's light alone. */
function bySteps(light: LampLight, from_s: number, to_s: number): number {
  const steps = 200_000;
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const t_s = from_s + ((i + 0.5) * (to_s - from_s)) / steps;
    if (light.kind === 'steady') sum += 1;
    else if (light.kind === 'ripple')
      sum += 1 + light.depth * Math.cos(2 * Math.PI * light.f_Hz * t_s + (light.phase_rad ?? 0));
    else {
      const turns = light.f_Hz * t_s + (light.phase_rad ?? 0) / (2 * Math.PI);
      const low = light.low ?? 0;
      const now = turns - Math.floor(turns) < light.duty ? 1 : low;
      sum += now / (light.duty + (1 - light.duty) * low);
    }
  }
  return sum / steps;
}

test.each<LampLight>([
  { kind: 'ripple', f_Hz: 100, depth: 0.3, phase_rad: 0.7 },
  { kind: 'pulses', f_Hz: 1300, duty: 0.3, low: 0.1, phase_rad: 2 },
  { kind: 'pulses', f_Hz: 400, duty: 0.8 },
])('the light of an exposure under %j is its integral', (light) => {
  for (const from_s of [0, 0.0013, 0.0178]) expect(meanOf(light, from_s, from_s + 0.0021)).toBeCloseTo(bySteps(light, from_s, from_s + 0.0021), 4); // prettier-ignore
});

describe('a clip', () => {
  test('says that it is synthetic, and is the same every time', () => {
    const [one, other] = [synthetic('a card', SCENE), synthetic('a card', SCENE)];
    expect(one.title).toBe('SYNTHETIC a card');
    expect(one.planes).toEqual(other.planes);
    expect(synthetic('a card', { ...SCENE, seed: 4 }).planes[0]).not.toEqual(one.planes[0]);
  });

  test('has the noise of its photons and of its reading', () => {
    const { planes } = synthetic('a plain card', { ...SCENE, blobs: 0, card: 0.5, readNoise_e: 30, frames: 40 });
    const electrons = (code: number) => ((code - BLACK_CODE) / (WHITE_CODE - BLACK_CODE)) * 20_000;
    const values = planes.flatMap((plane) => [...plane].map(electrons));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    expect(mean / 8000).toBeCloseTo(1, 3);
    expect(variance / (8000 + 30 ** 2)).toBeCloseTo(1, 1);
  });

  test('counts photons one by one where they are few', () => {
    const { planes } = synthetic('near dark', { ...SCENE, blobs: 0, card: 1, white_e: 3, fullWell_e: 4031, readNoise_e: 0 });
    const counts = planes.flatMap((plane) => [...plane].map((code) => code - BLACK_CODE));
    const share = (n: number) => counts.filter((count) => count === n).length / counts.length;
    expect(share(0)).toBeCloseTo(Math.exp(-3), 2);
    expect(share(3)).toBeCloseTo((Math.exp(-3) * 27) / 6, 2);
  }); // prettier-ignore

  test('lays a drop where the truth says it is', () => {
    const drop = { radius_px: 4, bright: 1, x_px: (t_s: number) => 8 + 1200 * t_s, y_px: () => 15 };
    const { planes, truth } = synthetic('a drop', { ...SCENE, blobs: 0, card: 0.1, drop });
    const plane = planes[10]!;
    let [weight, across] = [0, 0];
    plane.forEach((code, i) => {
      const above = Math.max(0, code - 800);
      weight += above;
      across += above * (i % SCENE.width);
    });
    expect(across / weight).toBeCloseTo(truth[10]!.drop!.x_px, 0);
    expect(truth[10]!.drop!.smear_px).toBeCloseTo(0.6, 9);
  });

  test('clips at a full well', () => {
    const { planes } = synthetic('too bright', { ...SCENE, blobs: 0, card: 0.5, white_e: 200_000 });
    expect(new Set(planes[0])).toEqual(new Set([WHITE_CODE]));
  });
});
