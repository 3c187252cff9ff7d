import { describe, expect, test } from 'vitest';
import { readLightRecord } from './lightRecord.ts';

const record = (count: number, lineOf: (time_s: number, light: number) => string, rate_Hz = 100) =>
  Array.from({ length: count }, (_, i) => {
    const time_s = i / 20_000;
    return lineOf(time_s, 2 + 0.6 * Math.cos(2 * Math.PI * rate_Hz * time_s));
  }).join('\n');

const comma = (time_s: number, light: number) => `${time_s.toFixed(6)},${light.toFixed(5)}`;

describe('a record that is good', () => {
  test('shows its period, and eight of them as they were recorded', () => {
    const { measured, trace } = readLightRecord(record(4100, comma));
    if (!measured.ok) throw new Error(measured.refusal.what);
    expect(measured.quality.periodCount).toBe(20);
    expect(measured.waveform.period_s).toBeCloseTo(0.01, 6);
    expect(trace!.to_s).toBeCloseTo(0.08, 5);
  });

  test('with decimal commas between semicolons is read as it is', () => {
    const { measured } = readLightRecord(record(4000, (t, v) => comma(t, v).replace(',', ';').replaceAll('.', ',')));
    expect(measured.ok).toBe(true);
  });
});

describe('a record that is refused', () => {
  test.each([
    ['with decimal commas between commas', record(400, (t, v) => `${t.toFixed(6).replace('.', ',')},${v.toFixed(5).replace('.', ',')}`).replace(/^/, 'time,light\n'), 'flicker.comma-twice', 2],
    ['of one column', record(400, (_, v) => v.toFixed(5)), 'flicker.no-numbers', 201],
    ['with a reading that is no number', record(400, comma).replace('0.000150,', '0.000150,NaN '), 'flicker.not-a-number', 4],
    ['of two periods only', record(400, comma), 'flicker.few-periods', 0],
    ['of nothing', '', 'flicker.no-numbers', 0],
  ] as const)('%s says the line and what to do', (_, text, code, line) => {
    const { measured } = readLightRecord(text);
    expect(measured).toMatchObject({ ok: false, refusal: { code, line } });
    if (!measured.ok) expect(measured.refusal.mend).toMatch(/^[A-Z].*\.$/);
  }); // prettier-ignore

  test('with a gap says so, and is drawn with it', () => {
    const gapped = [record(2000, comma), record(2000, (t, v) => comma(t + 5, v))].join('\n');
    const { measured, trace } = readLightRecord(gapped);
    expect(measured).toMatchObject({ ok: false, refusal: { code: 'flicker.uneven-times' } });
    expect(trace!.gaps).toHaveLength(1);
  });

  test('of two periods is still drawn, all of it', () => {
    expect(readLightRecord(record(400, comma)).trace!.to_s).toBeCloseTo(0.01995, 6);
  });

  test('whose text holds none has nothing to draw', () => {
    expect(readLightRecord('light\n1\n2\n').trace).toBeUndefined();
  });
});
