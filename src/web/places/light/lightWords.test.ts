import { expect, test } from 'vitest';
import { bearingSaid, doorsSaid, edgesSaid, meterSaid, placeSaid, ratioSaid, stopsSaid } from './lightWords.ts';
import { bandOf, placeOfStops } from './stops.ts';

test('a place is told as three ways from the subject, and those of nothing are left out', () => {
  expect(placeSaid({ right_m: -0.8, away_m: -1.2, up_m: 1.5 }, 'metric')).toBe('800 mm left, 1.2 m in front, 1.5 m above');
  expect(placeSaid({ right_m: 0, away_m: 0.5, up_m: 0 }, 'metric')).toBe('500 mm behind');
  expect(placeSaid({ right_m: 0, away_m: 0, up_m: 0 }, 'metric')).toBe('at the subject');
}); // prettier-ignore

test('doors are told by where they cut, and open ones are left out', () => {
  expect(doorsSaid({ doorLeft_deg: 20, doorBottom_deg: 12.5 })).toBe('doors: left 20°, below 12.5°');
  expect(doorsSaid({})).toBe('');
});

test('where a lamp comes from is told as the camera sees it, whichever way round is shorter', () => {
  expect(bearingSaid({ right_m: 1, away_m: -1, up_m: 0 }, 0)).toBe('45° to the right of the camera, level');
  expect(bearingSaid({ right_m: 1, away_m: -1, up_m: 0 }, 350)).toBe('55° to the right of the camera, level');
  expect(bearingSaid({ right_m: 0, away_m: 2, up_m: 0 }, 0)).toBe('from straight behind, level');
  expect(bearingSaid({ right_m: 0, away_m: 0, up_m: 2 }, 0)).toBe('from overhead');
});

test('the meter is held against the lamps in stops', () => {
  expect(meterSaid(8122, 10_000)).toBe('The meter reads 0.3 stops less than these lamps promise.');
  expect(meterSaid(20_000, 10_000)).toBe('The meter reads 1.0 stops more than these lamps promise.');
  expect(meterSaid(10_100, 10_000)).toBe('The meter reads what these lamps promise.');
});

test('ratios, stops and edges are said as crews say them', () => {
  expect(ratioSaid({ ratio: 4 })).toBe('4:1');
  expect(ratioSaid({ ratio: 0.5 })).toBe('1:2');
  expect(stopsSaid(-1.04)).toBe('−1.0 stop');
  expect(stopsSaid(0.02)).toBe('just enough');
  expect(edgesSaid(['left', 'right'])).toBe('at the left and the right');
});

test('a bar of light is longer for more light, and its spread lies about its end', () => {
  const band = bandOf({ value: 500, spreadFraction: 0.2, reference: 1000 })!;
  expect(band.at).toBeCloseTo(placeOfStops(-1), 12);
  expect(band.from).toBeLessThan(band.at);
  expect(band.to).toBeGreaterThan(band.at);
  expect(bandOf({ value: 0, spreadFraction: 0.2, reference: 1000 })).toBeUndefined();
});
