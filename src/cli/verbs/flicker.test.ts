import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { FlickerReply } from '../../turnover/flickerFactsSchema.ts';
import type { SetUpVerb, Verb } from '../command.ts';
import { flickerVerb } from './flicker.ts';
import { planVerb } from './plan.ts';

const folder = mkdtempSync(join(tmpdir(), 'longsecond-flicker-'));
afterAll(() => rmSync(folder, { recursive: true }));

const verbOf = (name: string, setUp: SetUpVerb): Verb => ({ name, says: name, load: () => Promise.resolve(setUp) });

function run(args: readonly string[], input: string | Buffer = '') {
  return captureCommand(['flicker', ...args], [verbOf('flicker', flickerVerb(Readable.from([Buffer.from(input)])))]);
}

interface Wave {
  readonly rate_Hz?: number;
  readonly sampleRate_Hz?: number;
  readonly count?: number;
  readonly depth?: number;
  readonly offset?: number;
}

/** A cosine about a mean of 1, sampled evenly, under a header that names milliseconds. */
function record({ rate_Hz = 100, sampleRate_Hz = 20_000, count = 20_000, depth = 0.4, offset = 0 }: Wave = {}): string {
  const lines = Array.from({ length: count }, (_, i) => {
    const light = offset + 1 + depth * Math.cos((2 * Math.PI * rate_Hz * i) / sampleRate_Hz);
    return `${((1000 * i) / sampleRate_Hz).toFixed(6)},${light.toFixed(6)}`;
  });
  return ['Time (ms),Light', ...lines, ''].join('\n');
}

function saved(name: string, text: string | Buffer): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

const SINE = saved('sine.csv', record());

async function reply(args: readonly string[], input: string | Buffer = '') {
  const { out, err, code } = await run([...args, '--json'], input);
  expect({ err, code }).toEqual({ err: '', code: 0 });
  return FlickerReply.parse(JSON.parse(out));
}

describe('a measured lamp', () => {
  test('is told with its record, its ripple and the figures made for rooms, named as such', async () => {
    const { out, err, code } = await run([SINE]);
    expect({ err, code }).toEqual({ err: '', code: 0 });
    expect(out).toMatch(/^ {2}Record +20000 samples, 20000 a second, 100 whole periods/m);
    expect(out).toMatch(/^ {2}Period +10 ms, 100 Hz, to under 0\.001 %/m);
    expect(out).toMatch(/^ {2}Swings by +40 %/m);
    expect(out).toMatch(/^Rated for people in a room, not for footage$/m);
    expect(out).toMatch(/No dark reading was taken away/);
    expect(out).not.toContain('What a camera sees');
    expect(out).not.toMatch(/\bsafe\b/i);
  });

  // Reference values of a sine of 0.4 at 100 Hz: percent flicker 40, index 0.127324, SVM 1.56082; levels 8 % and 3.33333 %.
  test('has the figures that the formulas give of its sine', async () => {
    const { ripple_Hz, room, swing_stops, harmonics } = await reply([SINE]);
    expect(ripple_Hz).toBeCloseTo(100, 4);
    expect(room.percentFlickerFraction).toBeCloseTo(0.4, 3);
    expect(room.flickerIndexRatio).toBeCloseTo(0.1273, 3);
    expect(room.stroboscopicRatio).toBeCloseTo(1.561, 2);
    expect(room.ieee1789).toMatchObject({ isWithinLowRisk: false, isWithinNoEffect: false });
    expect(room.ieee1789.lowRiskFraction).toBeCloseTo(0.08, 6);
    expect(room.ieee1789.noEffectFraction).toBeCloseTo(0.0333333, 6);
    expect(swing_stops).toBeCloseTo(Math.log2(1.4 / 0.6), 2);
    expect(harmonics[0]!.amplitudeFraction).toBeCloseTo(0.4, 3);
  });

  test('less the dark reading ripples deeper', async () => {
    const file = saved('offset.csv', record({ offset: 1 }));
    expect((await reply([file])).depthFraction).toBeCloseTo(0.2, 3);
    const { depthFraction, record: of, notices } = await reply([file, '--dark', '1']);
    expect([Number(depthFraction.toFixed(3)), of.darkRatio, notices]).toEqual([0.4, 1, []]);
  });

  test('has the unit of time that is given in place of the header’s', async () => {
    expect((await reply([SINE, '--unit', 's'])).ripple_Hz).toBeCloseTo(0.1, 6);
    expect((await reply([SINE, '--unit', 'us'])).ripple_Hz).toBeCloseTo(100_000, 0);
  });

  test('is read from standard input, and as other programs write text', async () => {
    expect((await reply(['-'], record())).name).toBe('standard input');
    const western = Buffer.concat([Buffer.from('Zeit (\xb5s);Licht\r\n', 'latin1'), Buffer.from(record().split('\n').slice(1).map((line) => { const [time, light] = line.split(','); return light === undefined ? '' : `${Number(time) * 1000};${light.replace('.', ',')}`; }).join('\r\n'))]); // prettier-ignore
    expect((await reply([saved('western.csv', western)])).ripple_Hz).toBeCloseTo(100, 3);
    const wide = Buffer.from(`\ufeff${record()}`, 'utf16le');
    expect((await reply([saved('wide.csv', wide)])).ripple_Hz).toBeCloseTo(100, 3);
  });
});

describe('what a camera sees', () => {
  test('is told for the rate, shutter and playback that are asked', async () => {
    const { out } = await run([SINE, '--at', '960', '--shutter', '1/2000 s', '--play', '24']);
    expect(out).toMatch(/^What a camera sees of it$/m);
    expect(out).toMatch(/^ {2}Frames +960 fps at 1\/2000 s, played at 24 fps$/m);
    expect(out).toMatch(/2\.5 times a second on the screen/);
    expect(out).toMatch(/^ {2}Null shutters +none: a period is longer than the frame$/m);
  });

  // Reference value: a sine of 0.4 at 100 Hz in 2 ms swings by 1.1348 stops.
  test('has the swing that the formula gives, and the cures that exist', async () => {
    const { camera } = await reply([SINE, '--at', '37', '--shutter', '2 ms', '--frames', '100000']);
    expect(camera!.seen.worst_stops).toBeCloseTo(1.1348, 2);
    expect(camera!.nullShutters.map(({ exposureTime_s }) => Number(exposureTime_s.toFixed(5)))).toEqual([0.01, 0.02]);
    expect(camera!.lockedRates_fps.map((rate) => Number(rate.toFixed(3)))).toEqual(expect.arrayContaining([50, 100]));
    expect(Math.max(...camera!.lockedRates_fps)).toBeLessThan(100.001);
  });

  test('has half of each frame open where nobody says', async () => {
    const { camera } = await reply([SINE, '--at', '1000']);
    expect(camera).toMatchObject({ exposureTime_s: 0.0005, playback_fps: 25 });
    expect((await reply([SINE, '--at', '1000', '--shutter', '90°'])).camera!.exposureTime_s).toBe(0.00025);
  });

  test.each([
    [['--shutter', '1/500s'], /says nothing without a frame rate/],
    [['--at', '1000', '--shutter', '1/500s'], /longer than a frame/],
    [['--at', 'fast'], /--at takes/],
    [['--at', '0'], /more than nothing/],
    [['--dark', 'much'], /plain number/],
    [['--at', '1000', '--frames', '1.5'], /whole number/],
    [['--unit', 'years'], /Allowed choices/i],
  ])('is refused for %j', async (args, says) => {
    const { code, out, err } = await run([SINE, ...args]);
    expect([code, out]).toEqual([2, '']);
    expect(err.replace(/\s+/g, ' ')).toMatch(says);
  });
});

describe('a record that is no lamp', () => {
  test.each([
    ['words', 'Time,Light\nthen,now\n', /no line of a time and a value/i],
    ['a broken line', `${record({ count: 200 })}0.5;x\n`, /broken\.csv:202\b/],
    ['noise', record({ depth: 0 }), /Nothing in the record repeats|leaves no/],
    ['zero bytes', 'Time\0', /zero bytes/],
    ['an endless line', 'x'.repeat(5000), /characters, more than/],
    ['nothing', '', /no line of a time and a value/],
  ])('is refused: %s', async (_, text, says) => {
    const { code, out, err } = await run([saved('broken.csv', text)]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(says);
  });

  test('is refused where there is no file, or a folder', async () => {
    expect((await run([join(folder, 'nowhere.csv')])).err).toMatch(/no such file/);
    expect((await run([folder])).err).toMatch(/a folder, not a file/);
  });
});

describe('a record longer than is kept', () => {
  test('is used as far as its first samples, where the lamp repeats in them often enough', async () => {
    const file = saved('long.csv', record({ count: 300_000, sampleRate_Hz: 1e6 }));
    const { record: of, notices, ripple_Hz } = await reply([file]);
    expect(of.sampleCount).toBeLessThanOrEqual(262_144);
    expect(notices).toContain('The first 262144 samples are used.');
    expect(ripple_Hz).toBeCloseTo(100, 3);
  });

  test('is read whole and thinned where it does not', async () => {
    const file = saved('slow.csv', record({ count: 1_200_000, sampleRate_Hz: 8e6 }));
    const { record: of, notices, ripple_Hz, depthFraction } = await reply([file]);
    expect(notices[0]).toMatch(/^Each sample is the mean of 8 of the record/);
    expect(of.periodCount).toBeGreaterThanOrEqual(14);
    expect(ripple_Hz).toBeCloseTo(100, 2);
    expect(depthFraction).toBeCloseTo(0.4, 3);
  });

  test('of standard input is used as far as it was read, and says what it lacks', async () => {
    const { code, err } = await run(['-'], record({ count: 300_000, sampleRate_Hz: 8e6 }));
    expect(code).toBe(2);
    expect(err).toMatch(/holds 3 whole periods .* fewer than 5/);
  });
});

test('the guide shows what the commands print', async () => {
  const guide = fileURLToPath(new URL('../../../docs/guide/', import.meta.url));
  const shown = [...readFileSync(`${guide}flicker.md`, 'utf8').matchAll(/```text\n\$ longsecond (.+)\n([\s\S]*?)```/g)];
  expect(shown.length).toBe(2);
  const verbs = [verbOf('flicker', flickerVerb(Readable.from([]))), verbOf('plan', planVerb(Readable.from([])))];
  for (const [, args = '', text = ''] of shown) {
    const words = args.split(' ').map((word) => (/\.(csv|yaml)$/.test(word) ? `${guide}${word}` : word));
    const { out, err } = await captureCommand(words, verbs);
    expect(err).toBe('');
    const printed = out.split('\n').map((line) => line.trimEnd());
    for (const line of text.split('\n').filter((each) => each.trim() !== '' && each.trim() !== '…')) expect(printed, args).toContain(line.trimEnd()); // prettier-ignore
  }
});
