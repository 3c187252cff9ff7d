import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { waveformOf, type LampFlicker } from './lamp.ts';
import { exposureTable, meanLight } from './exposure.ts';
import { readMeasuredWaveform } from './measured.ts';
import { depthOf } from './metrics.ts';

/** Noise between −1 and 1 that is the same in every run. */
const noise = (i: number) => {
  const x = Math.sin(12.9898 * (i + 1)) * 43758.5453;
  return 2 * (x - Math.floor(x)) - 1;
};

interface Recording {
  readonly lamp: LampFlicker;
  readonly count?: number;
  readonly rate_Hz?: number;
  readonly noiseRatio?: number;
  readonly line?: (time_s: number, value: number) => string;
}

function record({
  lamp,
  count = 4000,
  rate_Hz = 20_000,
  noiseRatio = 0.002,
  line = (t, v) => `${t.toFixed(7)},${v.toFixed(5)}`,
}: Recording) {
  const table = exposureTable(waveformOf(lamp));
  return Array.from({ length: count }, (_, i) => {
    const light = meanLight(table, { start_s: i / rate_Hz, exposureTime_s: 1e-6 });
    return line(i / rate_Hz, 2 * light + noiseRatio * noise(i));
  }).join('\n');
}

function good(text: string, options?: Parameters<typeof readMeasuredWaveform>[1]) {
  const read = readMeasuredWaveform(text, options);
  if (!read.ok) throw new Error(JSON.stringify(read.refusal));
  return read;
}

function refused(text: string, options?: Parameters<typeof readMeasuredWaveform>[1]) {
  const read = readMeasuredWaveform(text, options);
  if (read.ok) throw new Error('was read');
  return read.refusal;
}

const RIPPLE = { kind: 'led-ripple', mains_Hz: 50.015, depthFraction: 0.3 } as const;

describe('a record of a known lamp', () => {
  published('rate, Hz', (lamp: LampFlicker) => 1 / good(`s,V\n${record({ lamp, count: 20_000 })}`).waveform.period_s, [
    { source: 'flicker-numerics', at: '100.03 Hz recorded for a second', given: RIPPLE, expected: '100.03' },
  ]);

  test.each<[string, LampFlicker]>([
    ['a ripple', RIPPLE],
    ['an arc', { kind: 'magnetic', mains_Hz: 60.02 }],
    ['an arc with unlike electrodes', { kind: 'magnetic', mains_Hz: 50, imbalanceFraction: 0.2 }],
    ['pulses', { kind: 'led-pulses', pulse_Hz: 613.7, dutyFraction: 0.4, lowFraction: 0.2 }],
    ['a shallow filament', { kind: 'tungsten', power_W: 1000, mains_Hz: 50 }],
  ])('%s comes back with its period and its depth', (_, lamp) => {
    const { waveform, quality } = good(record({ lamp }));
    const truth = waveformOf(lamp);
    expect(waveform.period_s / truth.period_s).toBeCloseTo(1, 4);
    expect(depthOf(waveform)).toBeCloseTo(depthOf(truth), 1);
    expect(quality.periodErrorFraction).toBeLessThan(1e-4);
    expect(quality.residualFraction).toBeLessThan(lamp.kind === 'led-pulses' ? 0.15 : 0.02);
  });

  test('is cut to whole periods', () => {
    const { quality } = good(record({ lamp: { ...RIPPLE, mains_Hz: 50 }, count: 4150 }));
    expect(quality.periodCount).toBe(20);
    expect(Math.abs(quality.sampleCount - 4000)).toBeLessThanOrEqual(1);
  });

  test('loses its dark reading, without which the ripple looks shallower', () => {
    const text = record({ lamp: RIPPLE, line: (t, v) => `${t.toFixed(7)},${(v + 1).toFixed(5)}` });
    expect(depthOf(good(text, { dark: 1 }).waveform)).toBeCloseTo(0.3, 2);
    expect(depthOf(good(text).waveform)).toBeCloseTo(0.2, 2);
    expect(good(text).notices.join(' ')).toContain('No dark reading');
  });

  test('keeps its period through noise as strong as the ripple, and says how well', () => {
    const { waveform, quality } = good(record({ lamp: RIPPLE, noiseRatio: 0.6, count: 20_000 }));
    expect(quality.periodErrorFraction).toBeGreaterThan(1e-5);
    expect(Math.abs(waveform.period_s * 100.03 - 1)).toBeLessThan(4 * quality.periodErrorFraction);
  });
});

describe('its text', () => {
  const period_ms = (text: string, options?: { readonly unit_s?: number }) =>
    1000 * good(text, options).waveform.period_s;
  const MS = (t: number, v: number) => `${(1000 * t).toFixed(4)}\t${v.toFixed(5)}`;

  test.each<[string, string]>([
    ['milliseconds named in the header', `Time (ms)\tLight\n${record({ lamp: RIPPLE, line: MS })}`],
    [
      'units on a line of their own',
      `Time,Channel A\n(ms),(V)\n\n${record({ lamp: RIPPLE, line: (t, v) => `${(1e3 * t).toFixed(4)},${v.toFixed(5)}` })}`,
    ],
    ['microseconds', `t_us;v\n${record({ lamp: RIPPLE, line: (t, v) => `${(1e6 * t).toFixed(1)};${v.toFixed(5)}` })}`],
    [
      'decimal commas',
      `Zeit [s];Licht\n${record({ lamp: RIPPLE, line: (t, v) => `${t.toFixed(7)};${v.toFixed(5)}`.replaceAll('.', ',') })}`,
    ],
    ['spaces', record({ lamp: RIPPLE, line: (t, v) => `  ${t.toFixed(7)}   ${v.toFixed(5)}` })],
    ['commas with spaces', record({ lamp: RIPPLE, line: (t, v) => `${t.toFixed(7)}, ${v.toFixed(5)}` })],
    [
      'quotes and columns to leave out',
      `"s","V","note"\n${record({ lamp: RIPPLE, line: (t, v) => `"${t.toFixed(7)}","${v.toFixed(5)}",""` })}`,
    ],
    [
      'Windows line ends and a byte order mark',
      `\ufeffs,V\r\n${record({ lamp: RIPPLE }).replaceAll('\n', '\r\n\r\n')}\r\n`,
    ],
    ['exponents', record({ lamp: RIPPLE, line: (t, v) => `${t.toExponential(6)},${v.toExponential(5)}` })],
  ])('may have %s', (_, text) => {
    expect(period_ms(text)).toBeCloseTo(1000 / 100.03, 2);
  });

  test('without a unit is in seconds, and says so; a unit given overrides', () => {
    const bare = record({ lamp: RIPPLE, line: MS });
    expect(good(bare).notices.join(' ')).toContain('seconds were taken');
    expect(period_ms(bare, { unit_s: 1e-3 })).toBeCloseTo(1000 / 100.03, 2);
  });

  test('with uneven steps is read at each sample’s own time, and says so', () => {
    const text = record({ lamp: { ...RIPPLE, mains_Hz: 50 }, line: (t, v) => `${t.toFixed(7)},${v.toFixed(5)}` })
      .split('\n')
      .filter((_, i) => i % 7 !== 3)
      .join('\n');
    expect(period_ms(`s,V\n${text}`)).toBeCloseTo(10, 3);
    expect(good(`s,V\n${text}`).notices.join(' ')).toContain('Steps in time vary');
  });
});

describe('is refused', () => {
  const TEXT = record({ lamp: RIPPLE });
  const withLine = (at: number, line: string) =>
    TEXT.split('\n')
      .toSpliced(at - 1, 1, line)
      .join('\n');

  test.each<[string, string, string, number]>([
    ['empty', '', 'flicker.no-numbers', 0],
    ['words only', 'hello\nworld', 'flicker.no-numbers', 0],
    ['hundreds of lines of words', 'hello\n'.repeat(500), 'flicker.no-numbers', 201],
    ['a word among the numbers', withLine(1234, '0.06165,OVER'), 'flicker.not-a-number', 1234],
    ['a line without a value', withLine(77, '0.0038'), 'flicker.not-a-number', 77],
    ['time that goes back', withLine(50, '0.0001,2'), 'flicker.time-backwards', 50],
    ['two kinds of comma', 'time,light\n0,001,2,5\n0,002,2,6', 'flicker.comma-twice', 2],
    ['a line without end', `s,V\n${'1'.repeat(5000)}`, 'flicker.long-line', 2],
    ['a handful of samples', '0,1\n1,2\n2,1', 'flicker.too-short', 0],
    ['darkness', TEXT.replaceAll(/,\d\.\d+/g, ',0'), 'flicker.no-light', 0],
    ['noise', record({ lamp: { kind: 'steady' }, noiseRatio: 0.5 }), 'flicker.no-period', 0],
    ['two periods', record({ lamp: RIPPLE, count: 500 }), 'flicker.few-periods', 0],
    [
      'six samples a period',
      record({ lamp: { kind: 'led-ripple', mains_Hz: 1713, depthFraction: 0.5 } }),
      'flicker.coarse',
      0,
    ],
    ['numbers beyond any', withLine(9, '0.0004,1e999'), 'flicker.not-a-number', 9],
  ])('%s, with its line and what to do', (_, text, code, line) => {
    const refusal = refused(text);
    expect(refusal).toMatchObject({ code, line });
    expect(refusal.mend).toMatch(/\.$/);
  });

  test('light below its dark reading', () => {
    expect(refused(TEXT, { dark: 5 }).code).toBe('flicker.no-light');
    expect(refused(TEXT, { dark: 1.8 }).code).toBe('flicker.below-dark');
  });

  test('a record with a hole in the middle', () => {
    const lines = TEXT.split('\n');
    expect(refused([...lines.slice(0, 500), ...lines.slice(3500)].join('\n')).code).toBe('flicker.uneven-times');
  });

  test('no text throws anything but a refusal', () => {
    const pieces = fc.constantFrom(
      '0',
      '1',
      '.',
      ',',
      ';',
      '\t',
      ' ',
      '\n',
      '\r',
      'e',
      '-',
      '"',
      's',
      '(ms)',
      '∞',
      '\0',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 200 }), (text) => {
        expect(() => readMeasuredWaveform(text.join(''))).not.toThrow();
      }),
    );
  });
});

test('a record of millions of samples is cut, and says so', () => {
  const text = record({ lamp: { ...RIPPLE, mains_Hz: 50 }, count: 265_000 });
  const { notices, quality } = good(text);
  expect(notices.join(' ')).toContain('The first 262144 samples are used');
  expect(quality.sampleCount).toBeLessThanOrEqual(262_144);
});
