import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

type Rgb = readonly [red: number, green: number, blue: number];
type Theme = 'light' | 'dark' | 'stage';

/** Linear sRGB of an OKLCH colour. Matrices: B. Ottosson, "A perceptual color space for image processing", from memory. */
function linearOf(lightness: number, chroma: number, hue_deg: number): Rgb {
  const a = chroma * Math.cos((hue_deg * Math.PI) / 180);
  const b = chroma * Math.sin((hue_deg * Math.PI) / 180);
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
}

const luminanceOf = ([red, green, blue]: Rgb) => 0.2126 * red + 0.7152 * green + 0.0722 * blue;

/** WCAG 2.2 contrast of two luminances. */
const contrast = (a: number, b: number) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);

const OKLCH = /oklch\(([\d.]+) ([\d.]+) ([\d.]+)\)/g;

function readTokens(): Record<Theme, Record<string, Rgb>> {
  const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');
  const themes: Record<Theme, Record<string, Rgb>> = { light: {}, dark: {}, stage: {} };
  for (const [, name = '', value = ''] of css.matchAll(/--([a-z0-9-]+):\s*((?:light-dark|oklch)\([^;]+);/g)) {
    const colours = [...value.matchAll(OKLCH)].map(([, l, c, h]) => linearOf(Number(l), Number(c), Number(h)));
    if (colours.length === 2) [themes.light[name], themes.dark[name]] = colours as [Rgb, Rgb];
    else themes.stage[name] = colours[0]!;
  }
  return themes;
}

const THEMES = readTokens();
const GROUNDS = ['ground', 'panel', 'raise'];
const WORDS = ['ink', 'ink-2', 'ink-3', 'set-ink', 'screen-ink', 'short-ink', 'tight-ink'];
const SHAPES = ['set', 'screen', 'short', 'edge'];

describe.each(['light', 'dark', 'stage'] as const)('in the %s theme', (theme) => {
  const tokens = THEMES[theme];
  const between = (a: string, b: string) => contrast(luminanceOf(tokens[a]!), luminanceOf(tokens[b]!));

  test.each(WORDS.flatMap((word) => GROUNDS.map((ground) => [word, ground] as const)))(
    'words in %s on %s reach a contrast of 4.5 to 1',
    (word, ground) => expect(between(word, ground)).toBeGreaterThanOrEqual(4.5),
  );

  test.each(SHAPES)('shapes in %s reach a contrast of 3 to 1 on the ground', (shape) =>
    expect(between(shape, 'ground')).toBeGreaterThanOrEqual(3),
  );

  test('every colour can be shown in sRGB', () => {
    for (const [name, rgb] of Object.entries(tokens))
      for (const channel of rgb) expect(channel, name).toSatisfy((value: number) => value > -0.003 && value < 1.003);
  });
});

test('no colour of the stage theme is brighter than a third of white', () => {
  for (const [name, rgb] of Object.entries(THEMES.stage)) expect(luminanceOf(rgb), name).toBeLessThan(0.33);
});

test('the stage theme sets every colour that the others set', () => {
  expect(Object.keys(THEMES.stage).sort()).toEqual(Object.keys(THEMES.dark).sort());
});
