import { describe, expect, test } from 'vitest';
import { filmedEvent, parametersOf, said } from './event.ts';
import { leastSure, surenessOf } from './sureness.ts';

const drip = filmedEvent({
  id: 'drip',
  title: 'Drip',
  says: 'Something drips.',
  typical: { speed_m_per_s: { low: 1, typical: 2, high: 3 }, duration_s: { low: 1, typical: 2, high: 3 } },
  parameters: {
    drip_m_per_s: { title: 'Speed', default: 0.5, note: 'at the tap' },
    dropCount: { title: 'Drops', default: 3, as: 'count' },
    spreadRatio: { title: 'Spread', default: 1 },
  },
  compute: ({ drip_m_per_s, dropCount, spreadRatio }) => ({
    speed_m_per_s: drip_m_per_s,
    duration_s: dropCount,
    reachWidth_m: spreadRatio,
  }),
  laws: [],
  frameRateReasoning: 'None.',
  frameRate_fps: { low: 100, high: 200 },
  sources: ['ev-table', 'iso-2720'],
  cautions: [],
});

describe('an event worked out', () => {
  test('takes what is not given from its defaults', () => {
    expect(drip.compute()).toEqual({ speed_m_per_s: 0.5, duration_s: 3, reachWidth_m: 1 });
    expect(drip.compute({ dropCount: 7 })).toEqual({ speed_m_per_s: 0.5, duration_s: 7, reachWidth_m: 1 });
  });

  test('refuses a parameter it does not have, naming those it has', () => {
    expect(() => drip.compute({ height_m: 1 })).toThrow(
      'drip has no height_m; it has drip_m_per_s, dropCount, spreadRatio',
    );
  });

  test('takes zero for zero, not for nothing given', () => {
    expect(drip.compute({ drip_m_per_s: 0 }).speed_m_per_s).toBe(0);
  });
});

describe('how sure an event is', () => {
  test('is how its least sure source was seen', () => {
    expect(surenessOf(drip).seen).toBe('memory');
    expect(leastSure(['ev-table'])).toBe('excerpt');
    expect(leastSure(['footcandle-entry', 'ev-table', 'index-rating', 'iso-2720'])).toBe('practice');
    expect(leastSure(['footcandle-entry'])).toBe('opened');
  });

  test('is assumed only when no source was read at all', () => expect(surenessOf(drip).isAssumed).toBe(false));

  test('cannot be told of no source or one that is not listed', () => {
    expect(() => leastSure([])).toThrow('sources must be at least 1, got 0');
    expect(() => leastSure(['ev-tabel'])).toThrow('sources must be listed, got ev-tabel');
  });
});

test('parameters say what they are by their names, or else by their descriptions', () => {
  expect(parametersOf(drip).map(({ name, kind, as, note, default: value }) => [name, kind, as, note, value])).toEqual([
    ['drip_m_per_s', 'speed', 'quantity', 'at the tap', 0.5],
    ['dropCount', undefined, 'count', undefined, 3],
    ['spreadRatio', undefined, 'ratio', undefined, 1],
  ]);
});

test('a remark says figures with their units', () => {
  expect(said('time', 0.0523)).toBe('52 ms');
  expect(said('length', 1.2849)).toBe('1.3 m');
});
