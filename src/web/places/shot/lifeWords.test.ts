import { expect, test } from 'vitest';
import type { HeroLife } from '../../../plan/types.ts';
import { lifeLines, saysLife } from './lifeWords.ts';

const LIFE: HeroLife = {
  warms: 'ice-cream',
  life: { value: 99, low: 99, high: 198 },
  lightOn_s: 40,
  heat: [
    { lamp: 'tungsten', illuminance_lx: 20_000, irradiance_W_per_m2: 738, absorbed_W_per_m2: 590.4 },
    { lamp: 'led', illuminance_lx: 60_000, irradiance_W_per_m2: 200, absorbed_W_per_m2: 160 },
  ],
  airHeat_W_per_m2: 400,
  start_degC: -18,
  changes_degC: -3,
  air_degC: 22,
  thickness_m: 0.002,
  isHeld: false,
  assumed: [],
};

test('the life is told with its band, the take beside it, and how many takes one piece stands', () => {
  expect(saysLife(LIFE)).toBe(
    'Like ice cream it lasts 1.6 min at the shortest, and up to 3.3 min is as credible. A take lights it for 40 s, so that one piece may stand 2 takes.',
  );
  expect(saysLife({ ...LIFE, lightOn_s: 120 })).toMatch(/A take lights it for 2 min\.$/);
});

test('a life that goes by how long it holds unlit says so, and a take that nobody wrote is named', () => {
  const { lightOn_s: _, ...unwritten } = { ...LIFE, life: { value: 60, low: 60, high: 60 }, isHeld: true };
  expect(saysLife(unwritten)).toBe(
    'Like ice cream it lasts 1 min at the shortest, by how long it holds with the lights off. How long a take lights it is not written.',
  );
});

test('what warms it is told lamp kind by lamp kind with what it takes up, then the air, each with the number it comes from', () => {
  const lines = lifeLines(LIFE, 'metric');
  expect(lines.map(({ label, value }) => [label, value])).toEqual([
    ['Light of hot filaments', '590 W/m²'],
    ['Light of light-emitting diodes', '160 W/m²'],
    ['Air', '400 W/m²'],
    ['Through', '2 mm'],
    ['From', '−18 °C'],
  ]);
  expect(lines[0]!.says).toBe('20 klx on its warmest side bring 738 W/m²; it takes up 80 % of that');
  expect(lifeLines({ ...LIFE, airHeat_W_per_m2: 0 }, 'imperial').map(({ name }) => name)).toEqual([
    'productTungsten_W_per_m2',
    'productLed_W_per_m2',
    'skin_m',
    'productStart_degC',
  ]);
});
