import fc from 'fast-check';
import { expect, test } from 'vitest';
import { madeBytes, MADE_FILES } from '../../../../test/photometry/files.ts';
import { intensityTowards_cd, peakOf } from './intensity.ts';
import { readIes } from './ies.ts';
import { readLdt } from './ldt.ts';
import type { Photometry } from './photometry.ts';
import { readPhotometry } from './read.ts';
import type { PhotometryRead } from './refusal.ts';
import { principalSpreads } from './spread.ts';

const FILES = MADE_FILES.map((name) => ({ name, bytes: madeBytes(name) }));

/** What real damage and ill will put into a file. */
const BITS = [
  '',
  '0',
  '-1',
  '1e999',
  '1e-999',
  '-0',
  '1e12',
  'NaN',
  '-Infinity',
  '0x1F',
  '1,5',
  '1.5.5',
  '99999999999999999999',
  '1000000',
  '360',
  '90',
  '\n',
  '\r\n',
  '\0',
  ' ',
  '\t',
  ',',
  '*',
  'TILT=INCLUDE\n',
  'TILT=../x\n',
  'IESNA91\n',
  '[MORE] ',
  '[',
  '\u001a',
  '\ufeff',
  '١٢',
  '9'.repeat(400),
  ' 1'.repeat(300),
];

interface Change {
  readonly at: number;
  readonly remove: number;
  readonly put: Uint8Array;
}

const encoder = new TextEncoder();
const put = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...BITS).map((bit) => encoder.encode(bit)) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 6 }) },
);
const change: fc.Arbitrary<Change> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  remove: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 2000 })),
  put,
});

function changed(bytes: Uint8Array, { at, remove, put: bits }: Change): Uint8Array {
  const from = Math.floor(at * bytes.length);
  const rest = bytes.subarray(from + remove);
  const file = new Uint8Array(from + bits.length + rest.length);
  file.set(bytes.subarray(0, from));
  file.set(bits, from);
  file.set(rest, from + bits.length);
  return file;
}

function requireSound(photometry: Photometry): void {
  const { planes_deg, gammas_deg, intensities_cd, flux_lm, opening, notices } = photometry;
  expect(intensities_cd.length).toBe(planes_deg.length * gammas_deg.length);
  for (const values of [planes_deg, gammas_deg, intensities_cd])
    expect(values.every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
  for (const angles of [planes_deg, gammas_deg])
    expect(angles.every((angle, i) => i === 0 || angle > angles[i - 1]!)).toBe(true);
  for (const value of [flux_lm, opening.width_m, opening.length_m, opening.height_m, photometry.ratedFlux_lm ?? 0])
    expect(Number.isFinite(value) && value >= 0).toBe(true);
  expect(notices.length).toBeLessThan(1100);
  const peak_cd = peakOf(photometry).intensity_cd;
  expect(peak_cd).toBeGreaterThan(0);
  for (const gamma_deg of [0, 33, 90, 180])
    expect(intensityTowards_cd(photometry, { plane_deg: 200, gamma_deg })).toBeLessThanOrEqual(peak_cd * (1 + 1e-9));
  for (const { beam, field } of Object.values(principalSpreads(photometry)))
    for (const spread of [beam, field]) expect(Number.isFinite(spread?.width_deg ?? 0)).toBe(true);
}

function requireAnswer(read: PhotometryRead): void {
  if (read.ok) return requireSound(read.photometry);
  const { code, line, where, what, mend } = read.refusal;
  expect(code).toMatch(/^photometry\.[a-z-]+$/);
  expect(Number.isInteger(line) && line >= 0).toBe(true);
  expect(where).toBe(line > 0 ? `line ${line}` : 'the file');
  expect(what).toMatch(/\S/);
  expect(mend).toMatch(/\.$/);
}

test('ten thousand damaged files each give finite light or a refusal with line and mend, and never hang', () => {
  const outcomes = { read: 0, refused: 0 };
  const codes = new Set<string>();
  let slowest_ms = 0;
  fc.assert(
    fc.property(fc.constantFrom(...FILES), fc.array(change, { minLength: 1, maxLength: 4 }), ({ bytes }, changes) => {
      const file = changes.reduce(changed, bytes);
      const before = performance.now();
      const read = readPhotometry(file);
      slowest_ms = Math.max(slowest_ms, performance.now() - before);
      requireAnswer(read);
      outcomes[read.ok ? 'read' : 'refused'] += 1;
      if (!read.ok) codes.add(read.refusal.code);
    }),
    { numRuns: 10_000 },
  );
  // The damage is such that both happen often, and that most refusals are met.
  expect(outcomes.read).toBeGreaterThan(500);
  expect(outcomes.refused).toBeGreaterThan(3000);
  expect(codes.size).toBeGreaterThan(12);
  expect(slowest_ms).toBeLessThan(2000);
}, 120_000);

test('each reader answers for the other’s files and for any bytes at all', () => {
  for (const { bytes } of FILES) for (const read of [readIes, readLdt]) requireAnswer(read(bytes));
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      for (const read of [readIes, readLdt, readPhotometry]) requireAnswer(read(bytes));
    }),
    { numRuns: 500 },
  );
});

test.each<readonly [string, string]>([
  ['one line of brackets', `IESNA91\n${'['.repeat(2e6)}\nTILT=NONE\n`],
  ['one line of spaces', `IESNA91\n${' '.repeat(2e6)}TILT=NONE\n1`],
  ['a version line without end', `IESNA:LM-63-${'-'.repeat(2e6)}`],
  ['a TILT without end', `TILT${' '.repeat(2e6)}`],
  ['one number without end', `TILT=NONE\n${'1'.repeat(2e6)}`],
  ['numbers without end', `TILT=NONE\n${'1 '.repeat(2e6)}`],
  ['commas and digits without end', `TILT=NONE\n${'1,'.repeat(2e6)}`],
  ['keywords without end', `IESNA91\n${'[MORE] x\n'.repeat(1e5)}`],
  ['EULUMDAT counts and then nothing', `x\n1\n0\n1000\n0\n1000\n${'0\n'.repeat(2e5)}`],
])('%s is answered at once', (_, text) => {
  const before = performance.now();
  for (const read of [readIes, readLdt, readPhotometry]) requireAnswer(read(text));
  // Time that grows with the square of such a line would be minutes.
  expect(performance.now() - before).toBeLessThan(10_000);
});
