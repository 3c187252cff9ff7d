import { describe, expect, test } from 'vitest';
import { accepted, MADE_FILES, madeBytes, type MadeFile } from '../../../../test/photometry/files.ts';
import { readPhotometry } from '../../../laws/light/photometry/read.ts';
import { circleStep_cd, polarLayout, polarTable } from './polarLayout.ts';

const made = (name: MadeFile) => accepted(readPhotometry(madeBytes(name)));

const pointsOf = (d: string) =>
  d.slice(1, -1).split('L').map((end) => end.split(' ').map(Number) as [number, number]); // prettier-ignore

describe('a polar plot', () => {
  test('of a matte disc is a circle that touches the centre, as cosines are', () => {
    const { paths, centre, radius, circles, isHalf } = polarLayout(made('lambert-1000cd.ies'), 400)!;
    expect(isHalf).toBe(true);
    expect(circles.map(({ intensity_cd }) => intensity_cd)).toEqual([500, 1000]);
    expect(paths).toHaveLength(1);
    for (const [x, y] of pointsOf(paths[0]!.d))
      // Linear between grid points 2.5° apart, and a tenth of a pixel.
      expect(Math.hypot(x - centre.x - radius / 2, y - centre.y)).toBeCloseTo(radius / 2, -0.5);
  });

  test('of light that goes all ways is drawn whole, and circles about the lamp', () => {
    const { paths, centre, isHalf, spokes, circles } = polarLayout(made('generated-2019.ies'), 400)!;
    expect(isHalf).toBe(false);
    expect(spokes.map(({ angle_deg }) => angle_deg).sort((a, b) => a - b)).toEqual([0, 30, 30, 60, 60, 90, 90, 120, 120, 150, 150, 180]); // prettier-ignore
    const outer = circles.at(-1)!;
    expect(outer.intensity_cd).toBe(100);
    for (const [x, y] of pointsOf(paths[0]!.d)) expect(Math.hypot(x - centre.x, y - centre.y)).toBeCloseTo(outer.radius, 0); // prettier-ignore
  });

  test('of an oval light has two curves, the wider one across', () => {
    // 600 cd · cos γ · (1 + ½ cos 2C · sin² γ)
    const { paths, centre, radius, circles } = polarLayout(made('oval-0.ldt'), 400)!;
    expect(paths.map(({ plane_deg }) => plane_deg)).toEqual([0, 90]);
    const [across, up] = paths.map(({ d }) => Math.max(...pointsOf(d).map(([, y]) => centre.y - y)));
    const outermost_cd = circles.at(-1)!.intensity_cd;
    const most = (half: number) => Math.max(...Array.from({ length: 91 }, (_, deg) => { const g = (deg * Math.PI) / 180; return 600 * Math.cos(g) * (1 + half * Math.sin(g) ** 2) * Math.sin(g); })); // prettier-ignore
    expect(across).toBeCloseTo((radius * most(0.5)) / outermost_cd, -0.5);
    expect(up).toBeCloseTo((radius * most(-0.5)) / outermost_cd, -0.5);
  });

  test.each(MADE_FILES)('of %s stays within its room at every width', (name) => {
    for (const width of [260, 390, 900]) {
      const { width: drawn, height, paths, spokes } = polarLayout(made(name), width)!;
      expect(drawn).toBeLessThanOrEqual(width);
      for (const [x, y] of [...paths.flatMap(({ d }) => pointsOf(d)), ...spokes.map(({ x: sx, y: sy }) => [sx, sy] as const)]) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(drawn);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(height);
      }
    } // prettier-ignore
  });

  test('of a lamp that is dark in both planes is none', () => {
    const dark = made('lambert-1000cd.ies');
    expect(polarLayout({ ...dark, intensities_cd: dark.intensities_cd.map(() => 0) }, 400)).toBeUndefined();
  });
});

test.each([
  [1000, 500],
  [1001, 500],
  [100, 50],
  [4, 1],
  [9.9, 5],
  [0.03, 0.01],
  [123_456, 50_000],
])('circles up to %d cd are %d cd apart', (peak_cd, step_cd) => {
  expect(circleStep_cd(peak_cd)).toBeCloseTo(step_cd, 9);
  expect(Math.ceil(peak_cd / step_cd)).toBeLessThanOrEqual(4);
});

describe('the same in figures', () => {
  test('names the sides that the file tells apart', () => {
    expect(polarTable(made('lambert-1000cd.ies')).sides.map(({ title }) => title)).toEqual(['all round']);
    expect(polarTable(made('quarter-1995.ies')).sides.map(({ title }) => title)).toEqual(['C0 and C180', 'C90 and C270']); // prettier-ignore
    expect(polarTable(made('lean-c0-2.ldt')).sides).toHaveLength(3);
    expect(polarTable(made('lean-c90-0.ldt')).sides.map(({ title }) => title)).toEqual(['C0', 'C180', 'C90', 'C270']);
  });

  test('goes by steps that reach the end of the light', () => {
    const { rows } = polarTable(made('lambert-1000cd.ies'));
    expect(rows.map(({ angle_deg }) => angle_deg)).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90]);
    expect(rows[6]!.intensities_cd[0]).toBeCloseTo(500, 6);
    // 10,000 cd · cos¹⁰ γ is below a third of a per cent at 56°.
    const narrow = polarTable(made('cos10-10000cd-crlf.ies')).rows;
    expect(narrow[1]!.angle_deg).toBe(5);
    expect(narrow.at(-1)!.angle_deg).toBe(60);
    expect(polarTable(made('generated-2019.ies')).rows.at(-1)!.angle_deg).toBe(180);
  });

  test.each(MADE_FILES)('has room for %s', (name) => {
    const { rows, sides } = polarTable(made(name));
    expect(rows.length).toBeLessThanOrEqual(14);
    for (const { intensities_cd } of rows) expect(intensities_cd).toHaveLength(sides.length);
  });
});
