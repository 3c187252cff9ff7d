import { describe, expect, test } from 'vitest';
import { changed, DEMO, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import { fieldAt } from '../document/fieldAt.ts';
import { writtenValueAt } from '../document/patch.ts';
import { lawNamed } from '../laws/catalogue.ts';
import { computeLaw } from '../laws/reckon.ts';
import { explain } from './explain.ts';
import { planShoot } from './plan.ts';
import { prepare } from './planShot.ts';
import type { Trace } from './types.ts';

const nodesOf = (trace: Trace): readonly Trace[] => [trace, ...trace.inputs.flatMap(nodesOf)];

const shoot = readSound(DEMO);
const SHOTS = planShoot(shoot).shots;
/** Every figure of every margin of the demo, walked back. */
const TRACES = SHOTS.flatMap(({ id, margins }) =>
  margins.flatMap(
    ({ id: limit, haveName, needName, have, need }) =>
    [[haveName, have] as const, [needName, need] as const].map(([name, shown]) => ({ id, limit, name, shown, trace: explain(shoot, id, name)! })), // prettier-ignore
  ),
);

test('every figure of every margin is explained as the value that the margin shows', () => {
  for (const { name, shown, trace } of TRACES) expect([name, trace.value]).toEqual([name, shown]);
});

test('every trace ends in keys of the document that are written, or in assumptions with a reason and a key to overrule them', () => {
  for (const { name, trace } of TRACES)
    for (const leaf of nodesOf(trace).filter(({ inputs }) => inputs.length === 0)) {
      const { origin } = leaf;
      expect([name, leaf.name, origin.by]).toEqual([
        name,
        leaf.name,
        expect.stringMatching(/^(?:document|assumption)$/),
      ]);
      if (origin.by !== 'document' && origin.by !== 'assumption') continue;
      expect([leaf.name, fieldAt(origin.path)]).toEqual([leaf.name, expect.anything()]);
      const isMissing = leaf.value === undefined || leaf.name === 'tubeLength_m' || leaf.name === 'filterLoss_stops' || leaf.name === 'stopIncludesExtension'; // prettier-ignore
      if (origin.by === 'document' && !isMissing) expect([leaf.name, writtenValueAt(DEMO, origin.path)]).toEqual([leaf.name, expect.anything()]); // prettier-ignore
      if (origin.by === 'assumption') expect(origin.why.length).toBeGreaterThan(3);
    }
});

test('every law of a trace, worked again from the inputs that the trace shows, gives the value it shows', () => {
  let workedCount = 0;
  for (const { id, trace } of TRACES) {
    const { stepOf } = prepare(shoot, id).model;
    for (const node of nodesOf(trace)) {
      if (node.origin.by !== 'law' || node.value === undefined) continue;
      const law = lawNamed(node.origin.law);
      const step = stepOf.get(node.name);
      if (step) expect(step.inputs.map(([, name]) => name)).toEqual(node.inputs.map(({ name }) => name));
      // What no step works out names its inputs as the law does, after whose they are.
      const given = Object.fromEntries(
        node.inputs.map(({ name, value }, i) => [step?.inputs[i]![0] ?? name.split('.').at(-1)!, value!]),
      );
      const worked = computeLaw(law!, given);
      expect([node.name, 'results' in worked && worked.results[0]!.value]).toEqual([node.name, node.value]);
      expect(node.origin).toMatchObject({ title: law!.title, equation: law!.equation, sources: law!.sources });
      workedCount += 1;
    }
  }
  expect(workedCount).toBeGreaterThan(300);
});

test('numbers carry their kind, or what a bare number is', () => {
  const isoSpeed = explain(shoot, 'honey', 'isoSpeed')!;
  expect(isoSpeed).toMatchObject({ kind: undefined, as: 'isoSpeed', origin: { by: 'choice' } });
  expect(explain(shoot, 'honey', 'lightNeeded_lx')).toMatchObject({ kind: 'illuminance' });
  expect(explain(shoot, 'honey', 'fNumber')).toMatchObject({ kind: 'fStop', as: 'fStop', origin: { by: 'law' } });
  expect(explain(shoot, 'honey', 'stop')).toMatchObject({ kind: 'tStop', origin: { by: 'assumption', path: '/shots/honey/stop' } }); // prettier-ignore
});

describe('a leaf', () => {
  const leaf = (name: string, changes = {}) => explain(readSound(changed(SMALL, changes)), 'one', name)!.origin;

  test('tells the spread that was written, the usual one where none was, and none where there is none', () => {
    expect(leaf('readNoise_e')).toEqual({ by: 'document', path: '/kit/cameras/body/readNoise', spread: 4 });
    expect(leaf('readNoise_e', { '/kit/cameras/body/readNoise': '20 e-' })).toMatchObject({ spread: 4 });
    expect(leaf('frameWidth_m')).toEqual({ by: 'document', path: '/shots/one/frameWidth' });
  });

  test('that nobody wrote says why it was taken, and how unsure it is', () => {
    const untold = { '/kit/lenses/macro/pupilMagnification': undefined };
    expect(leaf('pupilMagnificationRatio', untold)).toEqual({ by: 'assumption', why: 'a symmetrical lens', path: '/kit/lenses/macro/pupilMagnification', spread: 0.25 }); // prettier-ignore
  });

  test('that is not there has no value, and the key that it would stand under', () => {
    const written = changed(SMALL, { '/shots/one/frameWidth': undefined });
    expect(explain(readSound(written), 'one', 'frameWidth_m')).toMatchObject({ value: undefined, origin: { by: 'document', path: '/shots/one/frameWidth' } }); // prettier-ignore
  });
});

test('a law that refuses says so where its value would stand', () => {
  const trace = explain(
    readSound(changed(SMALL, { '/kit/cameras/body/deadTime': '1.5 ms' })),
    'one',
    'longestExposure_s',
  )!;
  expect(trace.value).toBeUndefined();
  expect(trace.origin).toMatchObject({ by: 'law', refused: expect.stringContaining('deadTime_s') as string });
});

test('without kit a trace still ends in the key that is waited for', () => {
  const untold = readSound(changed(SMALL, { '/kit/lenses': undefined }));
  const lens = nodesOf(explain(untold, 'one', 'depth_m')!).find(({ name }) => name === 'focalLength_mm');
  expect(lens).toMatchObject({ title: 'Focal length', value: undefined, origin: { by: 'document', path: '/kit/lenses' } }); // prettier-ignore
});

test('the names of settings are explained too, and what is no name is not', () => {
  const settings = planned(SMALL).settings!;
  for (const name of ['captureRate_fps', 'exposureTime_s', 'shutterAngle_deg', 'stop', 'isoSpeed', 'widthCount', 'focalLength_mm', 'workingDistance_m'] as const)
    expect([name, explain(readSound(SMALL), 'one', name)!.value]).toEqual([name, settings[name]]);
  expect(explain(readSound(SMALL), 'one', 'toString')).toBeUndefined();
  expect(explain(readSound(SMALL), 'nobody', 'stop')).toBeUndefined();
}); // prettier-ignore

test('margins name their figures so that both can be explained', () => {
  const { haveName, needName } = marginOf(planned(SMALL), 'light');
  expect([haveName, needName]).toEqual(['illuminance_lx', 'lightNeeded_lx']);
});
