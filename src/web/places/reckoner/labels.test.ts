import { expect, test } from 'vitest';
import { placeLabels } from './labels.ts';

const AREA = { left: 0, right: 400, top: 0, bottom: 300 };
const level = (label: string, y: number) => ({
  label,
  width: 40,
  points: [
    { x: 0, y },
    { x: 400, y },
  ],
});

test('a label sits in the middle of its line', () => {
  expect(placeLabels([level('40 klx', 100)], AREA)).toEqual([{ label: '40 klx', x: 200, y: 100 }]);
});

test('labels of lines close together move apart, or the later one is left out', () => {
  const placed = placeLabels([level('a', 100), level('b', 104)], AREA);
  expect(placed).toHaveLength(2);
  expect(Math.abs(placed[0]!.x - placed[1]!.x)).toBeGreaterThan(40);
  const crowd = Array.from({ length: 30 }, (_, i) => level(String(i), 100 + i / 10));
  expect(placeLabels(crowd, AREA).length).toBeLessThan(12);
});

test('a label keeps off what must stay in sight, and inside the picture', () => {
  const avoid = [{ left: 150, right: 250, top: 80, bottom: 120 }];
  const [placed] = placeLabels([level('a', 100)], AREA, avoid);
  expect(placed!.x < 130 || placed!.x > 270).toBe(true);
  expect(placeLabels([level('edge', 2)], AREA)).toEqual([]);
});

test('a line too short for its label has none', () => {
  const points = [
    { x: 100, y: 100 },
    { x: 120, y: 100 },
  ];
  expect(placeLabels([{ label: 'a', width: 40, points }], AREA)).toEqual([]);
});
