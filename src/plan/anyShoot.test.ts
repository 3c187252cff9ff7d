/** What holds for whatever a person may have written, however wrong. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pointersOf } from '../../test/documents.ts';
import { changed, DEMO } from '../../test/shoots.ts';
import { fieldAt } from '../document/fieldAt.ts';
import { applyPatch } from '../document/patch.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { explain } from './explain.ts';
import { planShoot } from './plan.ts';
import type { Margin, Missing, Plan, Trace } from './types.ts';

/** The demo with few shots and modes, so that many of its kind can be planned. */
const BASE = changed(DEMO, {
  '/order/shots': ['pour-1', 'honey', 'ramp'],
  ...Object.fromEntries(['shots/crown', 'shots/quinces', ...['half', 'hd', 'wide', 'strip'].map((mode) => `kit/cameras/heron/modes/${mode}`)].map((path) => [`/${path}`, undefined])),
}); // prettier-ignore

const JUNK: readonly Written[] = [
  null, '', '?', 0, -1, 1, 1e308, true, [], {}, [1, 2], { what: 'else' }, 'film', 'heron', 'macro-65', 'nobody', 'lit-through', 'by-reflection', 'hire', 'unwanted', 'metered',
  '0 mm', '1e-9 mm', '2 m', '1e300 s', '1e-9 s', '1 h', '1/1000 s', '180°', '360°', '5 px', '1e6 px', 'T1', 'T64', '1 lx', '100000000 lx', '1 cd/m²', '-3 stops', '20 stops', '9 dB', '190 dB', '50 %', '1/3',
  '25', '24000/1001', '1 fps', '10000000 fps', '1 x 1', '999999 x 2', '8192 x 4320', '1 B', '1 kB/s', '0.5 m ± 0.4 m', '60 ms ± 59 ms', '1 m/s ± 90 %',
]; // prettier-ignore

const mutated: fc.Arbitrary<Written> = fc
  .array(fc.tuple(fc.nat(), fc.option(fc.constantFrom(...JUNK), { nil: undefined })), { minLength: 1, maxLength: 5 })
  .map((changes) =>
    changes.reduce<Written>((written, [pick, value]) => {
      const paths = pointersOf(written).slice(1);
      const path = paths[pick % paths.length]!;
      return applyPatch(written, [value === undefined ? { op: 'remove', path } : { op: 'replace', path, value }]);
    }, BASE),
  );

function numbersIn(value: unknown, at = ''): readonly (readonly [string, number])[] {
  if (typeof value === 'number') return [[at, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => numbersIn(item, `${at}/${key}`));
}

const marginsOf = ({ shots, margins }: Plan): readonly Margin[] => [
  ...shots.flatMap((shot) => shot.margins),
  ...margins,
];

const missedIn = (plan: Plan): readonly Missing[] =>
  [...plan.shots, ...marginsOf(plan)].flatMap(({ missing }) => missing);

test('is planned without a throw, and holds no number that JSON lacks', () => {
  fc.assert(
    fc.property(mutated, (written) => {
      const plan = planShoot(readShoot(written).shoot);
      expect(numbersIn(plan).filter(([, value]) => !Number.isFinite(value))).toEqual([]);
    }),
    { numRuns: 50 },
  );
});

test('planned a second time from a copy, has the same plan', () => {
  fc.assert(
    fc.property(mutated, (written) => {
      const again = planShoot(readShoot(structuredClone(written)).shoot);
      expect(again).toEqual(planShoot(readShoot(written).shoot));
    }),
    { numRuns: 20 },
  );
});

test('names what is missing wherever something is unknown, once, by a key that the form has', () => {
  fc.assert(
    fc.property(mutated, (written) => {
      const plan = planShoot(readShoot(written).shoot);
      for (const { settings, missing, id } of plan.shots)
        expect([id, missing.length > 0]).toEqual([id, settings === undefined]);
      for (const margin of marginsOf(plan)) {
        expect([margin.id, margin.missing.length > 0]).toEqual([margin.id, margin.state === 'unknown']);
        const named = margin.missing.map(({ name, path }) => `${name} ${path}`);
        expect(new Set(named).size).toBe(named.length);
      }
      const astray = [...missedIn(plan), ...marginsOf(plan)].filter(({ path }) => path === '' || fieldAt(path) === undefined);
      expect(astray).toEqual([]);
    }),
    { numRuns: 60 },
  ); // prettier-ignore
});

test('has margins whose state is what their band says, and whose band holds their figure', () => {
  fc.assert(
    fc.property(mutated, (written) => {
      for (const { id, state, stops, spare, have, need } of marginsOf(planShoot(readShoot(written).shoot))) {
        if (!stops) {
          expect([id, state]).toEqual([id, 'unknown']);
          continue;
        }
        expect(stops.low).toBeLessThanOrEqual(stops.value);
        expect(stops.high).toBeGreaterThanOrEqual(stops.value);
        expect([id, state]).toEqual([id, stops.value < -1e-9 ? 'short' : stops.low < -1e-9 ? 'tight' : 'spare']);
        expect(Math.sign(Number((spare! / Math.max(Math.abs(have!), Math.abs(need!), 1e-300)).toFixed(9))) * stops.value).toBeGreaterThanOrEqual(-1e-6); // prettier-ignore
      }
    }),
    { numRuns: 50 },
  );
});

const leavesOf = (trace: Trace): readonly Trace[] =>
  trace.inputs.length > 0 ? trace.inputs.flatMap(leavesOf) : [trace];

test('can explain both figures of every margin, down to keys that the form has', () => {
  fc.assert(
    fc.property(mutated, fc.nat(), (written, pick) => {
      const { shoot } = readShoot(written);
      const { shots } = planShoot(shoot);
      const shot = shots[pick % Math.max(1, shots.length)];
      for (const { haveName, needName, have, need } of shot?.margins ?? [])
        for (const [name, value] of [[haveName, have], [needName, need]] as const) {
          const trace = explain(shoot, shot!.id, name)!;
          expect([name, trace.value]).toEqual([name, value]);
          const astray = leavesOf(trace).filter(({ origin }) => !('path' in origin) || fieldAt(origin.path) === undefined || origin.path === '');
          expect(astray.map((leaf) => leaf.name)).toEqual([]);
        }
    }),
    { numRuns: 20 },
  ); // prettier-ignore
});
