import { describe, expect, test } from 'vitest';
import { marginLike, unknownMargin } from '../../test/margins.ts';
import { marginWords, missingWords, numberWords, said, wayOutcome } from './words.ts';

describe('the figures of a margin', () => {
  test('a floor reads have for need, each in the unit it is said in', () => {
    const { figures, joint } = marginWords(marginLike({ have: 41_000, need: 96_000 }));
    expect({ figures, joint }).toEqual({ figures: '41 klx for 96 klx', joint: 'for' });
  });

  test('a ceiling reads have of the most there may be', () => {
    const { figures } = marginWords(
      marginLike({ id: 'frame-rate', kind: 'rate', sense: 'at-most', have: 2084, need: 1131 }),
    );
    expect(figures).toBe('2084 fps of 1131 fps');
  });

  test.each([
    [2.93, 3, '2.93 px of 3.00 px'],
    [3.04, 3, '3.04 px of 3.00 px'],
    [3.0004, 3, '3.0004 px of 3.0000 px'],
    [3, 3, '3 px of 3 px'],
    [5.24, 8, '5.2 px of 8 px'],
  ])(
    'figures of %d and %d px are told with digits enough to see which is larger, and no more',
    (have, need, figures) => {
      expect(marginWords(marginLike({ id: 'blur', kind: 'pixels', sense: 'at-most', have, need })).figures).toBe(
        figures,
      );
    },
  );

  test('the width of a picture is told in whole pixels', () => {
    const { figures } = marginWords(marginLike({ id: 'picture-size', kind: 'pixels', have: 3792.4, need: 3840 }));
    expect(figures).toBe('3792 px for 3840 px');
  });

  test('close figures have as many decimals as one another', () => {
    const { figures } = marginWords(marginLike({ id: 'noise', kind: 'decibels', have: 24.52, need: 24 }));
    expect(figures).toBe('24.5 dB for 24.0 dB');
  });

  test('close figures in two units keep their own', () => {
    const { figures } = marginWords(marginLike({ id: 'buffer', kind: 'time', have: 1.02, need: 0.98 }));
    expect(figures).toBe('1.02 s for 980 ms');
  });

  test('a shutter is told as a fraction of a second', () => {
    const margin = marginLike({ id: 'shutter', kind: 'time', sense: 'at-most', have: 1 / 4000, need: 1 / 1100 });
    expect(marginWords(margin).figures).toBe('1/4000 s of 1/1100 s');
  });

  test('a shoot in feet and footcandles is told in them: 1 lx is 1/10.764 fc', () => {
    expect(marginWords(marginLike({ have: 10_764, need: 53_820 }), 'imperial').figures).toBe('1000 fc for 5000 fc');
  });
});

describe('spare and band', () => {
  test('both are in stops with their sign', () => {
    const { spare, band } = marginWords(marginLike({ stops: { value: -1.24, low: -1.4, high: -0.96 } }));
    expect({ spare, band }).toEqual({ spare: '−1.2', band: '−1.4 to −1.0' });
  });

  test('a band too narrow to be seen is left out', () => {
    expect(marginWords(marginLike({ stops: { value: 0.7, low: 0.69, high: 0.71 } })).band).toBe('');
  });

  test('the name says which of several it was judged for', () => {
    expect(marginWords(marginLike({ title: 'Picture size', detail: 'Square' })).name).toBe('Picture size, Square');
  });

  test('what is unknown has no figures, and names what it lacks and where that is written', () => {
    const { figures, spare, band, state, missing } = marginWords(unknownMargin());
    expect({ figures, spare, band, state }).toEqual({ figures: '', spare: '', band: '', state: 'unknown' });
    expect(missing).toMatchObject([{ name: 'Frame width', path: '/shots/a/frameWidth', says: 'not written yet' }]);
  });
});

describe('what is missing', () => {
  const missing = { name: 'depth_m', title: 'Depth', path: '/shots/a/depth' };

  test('what is written but unreadable says so', () => {
    expect(missingWords({ ...missing, because: 'unread' }).title).toBe('Depth: written, but cannot be read');
  });

  test('what a law refused is told in its words', () => {
    expect(missingWords({ ...missing, because: 'refused', what: 'must be positive' }).says).toBe('must be positive');
  });
});

describe('a number by its name', () => {
  test.each([
    ['focalLength_mm', 100, undefined, '100 mm'],
    ['frameWidth_m', 0.08, undefined, '80 mm'],
    ['exposureTime_s', 1 / 24_000, undefined, '1/24000 s'],
    ['actionTime_s', 0.06, undefined, '60 ms'],
    ['shutterAngle_deg', 31.26, undefined, '31.3°'],
    ['stop', 8, 'tStop', 'T8'],
    ['isoSpeed', 12_800, undefined, '12800'],
    ['magnificationRatio', 0.288, undefined, '0.288'],
  ] as const)('%s of %d is told in the unit its name ends in', (name, value, kind, text) => {
    expect(said(numberWords({ name, value, kind }))).toBe(text);
  });
});

test.each([
  [true, 0.2, 'closes it'],
  [false, -0.31, 'still 0.3 short'],
  [false, -0.02, 'still just short'],
])('a way with closes %s that leaves %d stops %s', (closes, stops, text) => {
  expect(wayOutcome({ closes, stops, breaks: [] })).toBe(text);
});

test('a way that closes its limit by breaking a hard one says so', () => {
  const breaks = [
    { id: 'clearance', title: 'Clearance' },
    { id: 'focus', title: 'Focus' },
  ] as const;
  expect(wayOutcome({ closes: true, stops: 0.2, breaks: breaks.slice(0, 1) })).toBe('closes it, but clearance is then short'); // prettier-ignore
  expect(wayOutcome({ closes: true, stops: 0.2, breaks })).toBe('closes it, but clearance and focus are then short');
});
