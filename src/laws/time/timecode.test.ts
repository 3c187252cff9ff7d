import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rational, ratioOf } from '../../base/rational.ts';
import { exactFrameTime, frameOfTimecode, nominalRate, timecodeOfFrame } from './timecode.ts';

const DF30 = { rate: rational(30_000, 1001), dropFrame: true };
const DF60 = { rate: rational(60_000, 1001), dropFrame: true };
const NDF24 = { rate: rational(24_000, 1001), dropFrame: false };

const FRAMES_IN_DAY = { df30: 2_589_408, df60: 5_178_816 };

describe('drop-frame at 30000/1001', () => {
  test.each([
    ['drop-frame-explained, 17,982 frames in ten minutes', 17_982, '00:10:00;00'],
    ['drop-frame-explained, 107,892 frames in an hour', 107_892, '01:00:00;00'],
    ['the rule worked by hand', 1799, '00:00:59;29'],
    ['the rule worked by hand', 1800, '00:01:00;02'],
    ['the rule worked by hand, the last frame of a day', 2_589_407, '23:59:59;29'],
  ])('agrees with %s: frame %i is %s', (_, frameCount, timecode) => {
    expect(timecodeOfFrame({ frameCount, ...DF30 })).toEqual({ timecode });
    expect(frameOfTimecode({ timecode, ...DF30 })).toEqual({ frameCount });
  });

  test('12:38:59;29 is followed by 12:39:00;02, as drop-frame-explained prints it', () => {
    const { frameCount } = frameOfTimecode({ timecode: '12:38:59;29', ...DF30 });
    expect(timecodeOfFrame({ frameCount: frameCount + 1, ...DF30 }).timecode).toBe('12:39:00;02');
  });

  test('a day of labels holds 2,589,408 frames and ends 86.4 ms before the day, worked by hand', () => {
    const day_s = ratioOf(exactFrameTime({ frameCount: FRAMES_IN_DAY.df30, rate: DF30.rate }).frameTime);
    expect(day_s).toBeCloseTo(86_399.9136, 7);
    expect(() => timecodeOfFrame({ frameCount: FRAMES_IN_DAY.df30, ...DF30 })).toThrow(
      'frameCount must be from 0 to 2589407, got 2589408',
    );
  });

  test('the two labels skipped at each minute that does not end in zero are refused, and only those', () => {
    let skipped = 0;
    for (let minute = 0; minute < 1440; minute += 1)
      for (const frames of ['00', '01', '02']) {
        const at = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00;${frames}`;
        if (minute % 10 !== 0 && frames !== '02') {
          skipped += 1;
          expect(() => frameOfTimecode({ timecode: at, ...DF30 })).toThrow(`it skips ${at}`);
        } else expect(timecodeOfFrame({ ...frameOfTimecode({ timecode: at, ...DF30 }), ...DF30 }).timecode).toBe(at);
      }
    expect(skipped).toBe(24 * 108);
  });
});

describe('drop-frame at 60000/1001', () => {
  test.each([
    ['drop-frame-explained, the first label of minute one', 3600, '00:01:00;04'],
    ['the rule worked by hand', 3599, '00:00:59;59'],
    ['the rule worked by hand', 35_964, '00:10:00;00'],
  ])('agrees with %s: frame %i is %s', (_, frameCount, timecode) => {
    expect(timecodeOfFrame({ frameCount, ...DF60 })).toEqual({ timecode });
    expect(frameOfTimecode({ timecode, ...DF60 })).toEqual({ frameCount });
  });

  test('00:01:00;03 is a label it skips', () => {
    expect(() => frameOfTimecode({ timecode: '00:01:00;03', ...DF60 })).toThrow('it skips 00:01:00;03');
  });
});

test.each([
  ['30000/1001', DF30],
  ['60000/1001', DF60],
])(
  'at %s drop-frame every frame of the first eleven minutes comes back from its label, and labels ascend',
  (_, counting) => {
    const faulty: string[] = [];
    let before = '';
    for (let frameCount = 0; frameCount < 11 * 60 * nominalRate(counting.rate); frameCount += 1) {
      const { timecode } = timecodeOfFrame({ frameCount, ...counting });
      if (timecode <= before || frameOfTimecode({ timecode, ...counting }).frameCount !== frameCount)
        faulty.push(timecode);
      before = timecode;
    }
    expect(faulty).toEqual([]);
  },
);

test('frames from a whole day come back from their labels, drop-frame or not', () => {
  const countings = [
    { ...DF30, frames: FRAMES_IN_DAY.df30 },
    { ...DF60, frames: FRAMES_IN_DAY.df60 },
    { ...NDF24, frames: 86_400 * 24 },
    { rate: rational(25), dropFrame: false, frames: 86_400 * 25 },
    { rate: rational(120), dropFrame: false, frames: 86_400 * 120 },
  ];
  const place = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
  for (const { frames, ...counting } of countings)
    fc.assert(
      fc.property(place, (at) => {
        const frameCount = Math.floor(at * frames);
        const { timecode } = timecodeOfFrame({ frameCount, ...counting });
        expect(frameOfTimecode({ timecode, ...counting }).frameCount).toBe(frameCount);
      }),
      { numRuns: 500 },
    );
});

test('drop-frame labels stay within two frames of the clock but for the 86.4 ms a day that the rule leaves', () => {
  const frame = fc.integer({ min: 0, max: FRAMES_IN_DAY.df30 - 1 });
  fc.assert(
    fc.property(frame, (frameCount) => {
      const [h, m, s, f] = timecodeOfFrame({ frameCount, ...DF30 })
        .timecode.split(/[:;]/)
        .map(Number) as [number, number, number, number];
      const clock_s = ratioOf(exactFrameTime({ frameCount, rate: DF30.rate }).frameTime);
      expect(Math.abs(3600 * h + 60 * m + s + f / 30 - clock_s)).toBeLessThan(2 / 30 + 0.0864);
    }),
  );
});

test('an hour of labels at 24000/1001 lasts 3603.6 s, worked by hand', () => {
  const { frameCount } = frameOfTimecode({ timecode: '01:00:00:00', ...NDF24 });
  expect(frameCount).toBe(86_400);
  expect(exactFrameTime({ frameCount, rate: NDF24.rate }).frameTime).toEqual({ num: 18_018, den: 5 });
});

test('rates count at their nominal whole number, in lowest terms or not', () => {
  expect(nominalRate(rational(24_000, 1001))).toBe(24);
  expect(nominalRate({ num: 60_000, den: 2002 })).toBe(30);
  expect(nominalRate(rational(60_000, 1001))).toBe(60);
  expect(nominalRate(rational(25))).toBe(25);
});

test('drop-frame is refused where there is none, naming the rate', () => {
  expect(() => timecodeOfFrame({ frameCount: 0, rate: rational(24_000, 1001), dropFrame: true })).toThrow(
    'dropFrame must be no except at 30000/1001 and 60000/1001, got 24000/1001',
  );
  expect(() => timecodeOfFrame({ frameCount: 0, rate: rational(30), dropFrame: true })).toThrow('got 30');
  expect(() => timecodeOfFrame({ frameCount: 0, rate: rational(48_000, 1001), dropFrame: true })).toThrow(
    'got 48000/1001',
  );
});

test('faults are refused by name', () => {
  const frame = (timecode: string) => () => frameOfTimecode({ timecode, ...DF30 });
  expect(frame('01:02:03')).toThrow('timecode must read HH:MM:SS:FF');
  expect(frame('')).toThrow('timecode must read HH:MM:SS:FF');
  expect(frame('24:00:00;00')).toThrow('timecode hours must be from 0 to 23, got 24');
  expect(frame('00:60:00;00')).toThrow('timecode minutes must be from 0 to 59');
  expect(frame('00:00:75;00')).toThrow('timecode seconds must be from 0 to 59');
  expect(frame('00:00:00;30')).toThrow('timecode frames must be from 0 to 29');
  expect(frame('00:00:00:10')).toThrow('timecode must have ";" before its frames');
  expect(() => frameOfTimecode({ timecode: '00:00:00;10', ...NDF24 })).toThrow(
    'timecode must have ":" before its frames',
  );
  expect(() => timecodeOfFrame({ frameCount: -1, ...DF30 })).toThrow('frameCount must be a whole number');
  expect(() => timecodeOfFrame({ frameCount: NaN, ...DF30 })).toThrow('frameCount must be a whole number');
  expect(() => timecodeOfFrame({ frameCount: 1e12, ...DF30 })).toThrow('frameCount must be from 0');
  expect(() => nominalRate(rational(25, 2))).toThrow('rate must be whole or N·1000/1001 to carry timecode, got 25/2');
  expect(() => nominalRate(rational(1000))).toThrow('nominal rate must be from 1 to 120, got 1000');
  expect(() => nominalRate({ num: 0, den: 1 })).toThrow('rate must be positive');
  expect(() => exactFrameTime({ frameCount: 0.5, rate: rational(24) })).toThrow('frameCount must be a whole number');
});
