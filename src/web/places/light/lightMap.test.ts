import { expect, test } from 'vitest';
import { doorsOf } from '../../../laws/light/placed/doors.ts';
import { flagAt } from '../../../laws/light/placed/flag.ts';
import { acrossAxis, beamSource, lightAt_lx, scaledSource, type LightSource } from '../../../laws/light/placed/source.ts'; // prettier-ignore
import { extremesOf, inStops, shareAbove, stepsOf } from './bands.ts';
import { allOn_lx, normalOf, openMapDesk, type Sheet } from './lightMap.ts';
import { projectionOf, spread } from './projection.ts';

const lamp = (x: number, z = 1) =>
  beamSource({ at: [x, 0, z], axis: [0, 0, -1], intensity_cd: 1000, beamAngle_deg: 40, fieldAngle_deg: 70 });

const sheet: Sheet = {
  surface: 'table',
  projection: projectionOf('above', 0),
  normal: normalOf('table', [0, -1, 0]),
  from: { x: -1, y: -0.5 },
  to: { x: 1, y: 0.5 },
  columns: 21,
  rows: 11,
};

test('a map holds at every point what its lamps give there together', () => {
  const sources = [lamp(0), lamp(0.5)];
  const { work, grid } = openMapDesk().start(sources, sheet);
  expect(work(() => false)).toBe(true);
  const { values } = grid();
  // Column 13 of 0 to 20 from −1 m to 1 m lies at 0.3 m; row 2 of 0 to 10 at −0.3 m.
  const here_lx = allOn_lx(sources, 'table', spread(sheet.projection, { x: 0.3, y: -0.3 }), [0, 0, 1]);
  expect(values[2 * 21 + 13]).toBeCloseTo(here_lx, 6);
  expect(extremesOf(grid()).most).toBeGreaterThanOrEqual(1000);
});

test('work can be laid down between lamps, and what is done is not done again', () => {
  const desk = openMapDesk();
  const three = [lamp(0), lamp(0.3), lamp(0.6)];
  const first = desk.start(three, sheet);
  let asked = 0;
  const late = () => {
    asked += 1;
    return true;
  };
  expect(first.work(late)).toBe(false);
  expect(first.work(late)).toBe(false);
  expect(first.work(late)).toBe(true);
  expect(asked).toBe(3);
  const moved = desk.start([three[0]!, three[1]!, lamp(0.65)], sheet);
  expect(moved.work(late)).toBe(true);
  expect(asked).toBe(4);
});

test('a lamp dimmed, or all of them corrected by a meter, is not worked out again', () => {
  const desk = openMapDesk();
  const two = [lamp(0), lamp(0.5)];
  desk.start(two, sheet).work(() => false);
  let asked = 0;
  const dimmed = desk.start(
    two.map((source, i) => scaledSource(source, i === 0 ? 0.25 : 2)),
    sheet,
  );
  dimmed.work(() => (asked += 1) > 0);
  expect(asked).toBe(0);
  const here = [0, 1].map((i) => lightAt_lx(two[i]!, 0.3, -0.3, 0, 0, 0, 1));
  expect(dimmed.grid().values[2 * 21 + 13]).toBeCloseTo(0.25 * here[0]! + 2 * here[1]!, 9);
  // One put out by its level is none at all.
  expect(
    desk
      .start([scaledSource(two[0]!, 0)], sheet)
      .grid()
      .values.every((value) => value === 0),
  ).toBe(true);
});

test('a flag or a door moved is a map worked out anew, dark where it shades', () => {
  const desk = openMapDesk();
  const mapOf = (source: LightSource) => {
    const work = desk.start([source], sheet);
    work.work(() => false);
    return work.grid().values;
  };
  const open = mapOf(lamp(0));
  const flags = [flagAt({ centre: [0.25, 0, 0.5], facing: [0, 0, 1], width_m: 0.2, height_m: 0.4 })];
  const flagged = mapOf({ ...lamp(0), flags });
  // Halfway up, a flag from 0.15 m to 0.35 m shades twice as far out: columns 13 to 17 of the middle row.
  const middle = (values: Float64Array) => [...values.slice(5 * 21, 6 * 21)];
  expect(middle(flagged).map((value) => value === 0)).toEqual(middle(open).map((value, i) => value === 0 || (i >= 13 && i <= 17))); // prettier-ignore
  const { right, up } = acrossAxis([0, 0, -1]);
  const shut = mapOf({ ...lamp(0), doors: doorsOf({ right, up }, { right_deg: 10 }) });
  expect(middle(shut).map((value) => value > 0)).toEqual(middle(open).map((value, i) => value > 0 && i <= 11));
  expect(mapOf(lamp(0))).toEqual(open);
});

test('cards turned to each lamp get at least what the table gets', () => {
  const sources = [lamp(0.8)];
  const at = [0, 0, 0] as const;
  const table_lx = allOn_lx(sources, 'table', at, [0, 0, 1]);
  expect(allOn_lx(sources, 'cards', at, [0, 0, 1])).toBeCloseTo(table_lx * Math.hypot(0.8, 1), 6);
});

test('the steps of a map are whole stops about what is wanted, halves where it spans little, and none beyond it', () => {
  const stops = (values: readonly number[]) => inStops({ columns: values.length, rows: 1, values: Float64Array.from(values) }, 1000);
  expect(stepsOf(stops([250, 1000, 5000])).map(({ label }) => label)).toEqual(['−2', '−1', 'just enough', '+1', '+2']);
  expect(stepsOf(stops([900, 2100])).map(({ stops: at }) => at)).toEqual([0, 0.5, 1]);
  expect(stepsOf(stops([0, 0]))).toEqual([]);
  expect(shareAbove(stops([500, 1000, 2000, 4000]), 0)).toBe(0.75);
}); // prettier-ignore
