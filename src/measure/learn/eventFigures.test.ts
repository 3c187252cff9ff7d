import { describe, expect, test } from 'vitest';
import { measured } from '../../../test/footage/measured.ts';
import { synthetic, type Scene } from '../../../test/footage/synthetic.ts';
import type { Measurement } from '../types.ts';
import { eventFiguresOf, type EventFigureName, type EventReading } from './eventFigures.ts';

const PIXEL_m = 0.0005;

/** A drop that comes into the picture, falls through a part of it, and is gone. */
const falls = (more: Partial<Scene> = {}, { speed_px = 1.5, from = 60, to = 120 } = {}): Measurement =>
  measured(
    synthetic('falls', {
      width: 128,
      height: 144,
      rate_fps: 1000,
      frames: 200,
      exposure_s: 1 / 4000,
      seed: 8,
      lamps: [{ light: { kind: 'steady' } }],
      drop: {
        radius_px: 5,
        bright: 0.9,
        x_px: (t_s) => (1000 * t_s < from || 1000 * t_s > to ? -50 : 60),
        y_px: (t_s) => 20 + speed_px * (1000 * t_s - from),
      },
      ...more,
    }),
  );

const of = (reading: EventReading, name: EventFigureName) => reading.figures.find((figure) => figure.name === name);
const why = (reading: EventReading, name: EventFigureName) => reading.leftOut.find((left) => left.name === name)?.why;

describe('one take', () => {
  const reading = eventFiguresOf([{ name: 'take', measurement: falls(), pixel_m: PIXEL_m }]);

  test('gives its length, its speed and how far it reached, each with how well it was told', () => {
    const expected: Readonly<Record<EventFigureName, number>> = {
      duration: 0.061,
      speed: 1.5 * PIXEL_m * 1000,
      width: 10 * PIXEL_m,
      height: (90 + 10) * PIXEL_m,
    };
    for (const [name, value] of Object.entries(expected)) {
      const figure = of(reading, name as EventFigureName)!;
      expect(Math.abs(figure.value - value)).toBeLessThan(2 * figure.spread + 2 * PIXEL_m * (name === 'duration' ? 0 : 1));
      expect(figure.spread).toBeGreaterThan(0);
    }
    expect(reading.leftOut).toEqual([]);
  }); // prettier-ignore
});

test('several takes give the spread between them', () => {
  const takes = [1.2, 1.5, 1.8].map((speed_px, i) => ({ name: `take ${i}`, measurement: falls({ seed: i + 1 }, { speed_px, to: 110 }), pixel_m: PIXEL_m })); // prettier-ignore
  const speed = of(eventFiguresOf(takes), 'speed')!;
  expect(Math.abs(speed.value - 0.75)).toBeLessThan(0.05);
  expect(Math.abs(speed.spread - 1.2816 * 0.15)).toBeLessThan(0.05);
  expect(speed.clips).toEqual(['take 0', 'take 1', 'take 2']);
});

describe('what was not measured well is left out, and why', () => {
  const take = (measurement: Measurement, pixel_m: number | undefined = PIXEL_m) => eventFiguresOf([{ name: 'take', measurement, pixel_m }]); // prettier-ignore

  test('without a scale only the length is told', () => {
    const reading = eventFiguresOf([{ name: 'take', measurement: falls(), pixel_m: undefined }]);
    expect(reading.figures.map(({ name }) => name)).toEqual(['duration']);
    expect(why(reading, 'width')).toMatch(/not known/);
  });

  test('an action that runs past the clip has no length', () => {
    const reading = take(falls({ frames: 100 }));
    expect(of(reading, 'duration')).toBeUndefined();
    expect(why(reading, 'duration')).toMatch(/past its end/);
  });

  test('one that began before it has none either', () => {
    expect(why(take(falls({}, { from: -20 })), 'duration')).toMatch(/began before/);
  });

  test('what reaches the edge of the picture may reach beyond', () => {
    const reading = take(falls({ height: 72 }));
    expect(why(reading, 'height')).toMatch(/edge/);
    expect(of(reading, 'width')).toBeDefined();
  });

  test('a clip in which nothing happens teaches nothing', () => {
    const reading = take(falls({}, { from: 900, to: 901 }));
    expect(reading.figures).toEqual([]);
    expect(reading.leftOut).toHaveLength(4);
  });
});
