/**
 * Planning forty shots: what was made quick, against the straightforward way of doing the same, in one run. The
 * straightforward search works every step of the model for every mode, lens and third of a stop; the straightforward
 * edit plans the whole shoot again; the straightforward text edit writes the whole document anew.
 */
import { readFileSync } from 'node:fs';
import { parseDocument } from 'yaml';
import { stopFromThirds } from '../src/base/stop.ts';
import { applyPatch } from '../src/document/patch.ts';
import { readShoot } from '../src/document/read.ts';
import { readShootText } from '../src/document/text.ts';
import { editText } from '../src/document/textEdit.ts';
import type { Written } from '../src/document/written.ts';
import { fill } from '../src/plan/candidates.ts';
import { stopsOf } from '../src/plan/limits.ts';
import { work } from '../src/plan/model.ts';
import { planShoot } from '../src/plan/plan.ts';
import { candidatesOf, planShot, prepare, workAt } from '../src/plan/planShot.ts';
import { waysFor } from '../src/plan/ways/ways.ts';
import { bench } from './harness.ts';

const SHOT_COUNT = 40;

/** The demo's shots, repeated under new ids until there are forty. */
function fortyShots(text: string): string {
  const document = parseDocument(text);
  const shots = document.toJS() as { shots: Record<string, object>; order: { shots: string[] } };
  const ids = Object.keys(shots.shots);
  for (let i = ids.length; i < SHOT_COUNT; i += 1)
    document.setIn(
      ['shots', `${ids[i % ids.length]!}-copy-${i}`],
      document.createNode(shots.shots[ids[i % ids.length]!]),
    );
  return document.toString();
}

const text = fortyShots(readFileSync('demo/shoot.yaml', 'utf8'));
const { written } = readShootText(text);
const { shoot } = readShoot(written);
const ids = Object.keys(shoot.shots);

let turn = 0;
const edited = (): Written =>
  applyPatch(written, [{ op: 'replace', path: '/shots/crown/frameWidth', value: `${80 + (turn++ % 20)} mm` }]);

/** Every mode, lens and third of a stop, the whole model each time. */
function searchedPlainly(shotId: string): number {
  const prepared = prepare(shoot, shotId);
  const { model, givens, kits } = prepared;
  const { limits } = workAt(prepared, candidatesOf(prepared).best[0]);
  const values = new Float64Array(model.names.length);
  let best = -Infinity;
  for (const kit of kits)
    for (let thirds = 0; thirds <= 30; thirds += 1) {
      values.fill(NaN);
      fill(model, values, givens);
      fill(model, values, kit.givens);
      values[model.slotOf.get('stop')!] = stopFromThirds(thirds);
      work(model.steps, values);
      const worst = Math.min(
        ...limits.flatMap(({ spec, parts }) =>
          parts.map(({ have, need }) => stopsOf(spec.measure, spec.sense, values[have]!, values[need]!)),
        ),
      );
      if (worst > best) best = worst;
    }
  return best;
}

planShoot(shoot);

await bench([
  {
    title: 'one key edited in 40 shots: read and planned',
    a: { name: 'what changed', run: () => planShoot(readShoot(edited()).shoot).totals.shortCount },
    b: { name: 'everything', run: () => ids.reduce((sum, id, i) => sum + planShot(readShoot(structuredClone(edited())).shoot, id, i).margins.length, 0) },
    budgetRatio: 0.1,
  },
  {
    title: '40 shots planned',
    a: { name: 'pruned search', run: () => ids.reduce((sum, id, i) => sum + planShot(shoot, id, i).margins.length, 0) },
    b: { name: 'plain search', run: () => ids.reduce((sum, id) => sum + searchedPlainly(id), 0) },
    budgetRatio: 0.5,
  },
  {
    title: 'first ways for a short margin',
    a: { name: 'ways', run: () => waysFor(shoot, written, 'crown', 'light').length },
    b: { name: '40 plain searches', run: () => ids.reduce((sum) => sum + searchedPlainly('crown'), 0) },
    budgetRatio: 0.5,
  },
  {
    title: 'a 40-shot text, one key edited',
    a: { name: 'edit in place', run: () => editText(text, [{ op: 'replace', path: '/shots/crown/frameWidth', value: `${80 + (turn++ % 20)} mm` }]).text.length },
    b: {
      name: 'parse and write all',
      run: () => {
        const document = parseDocument(text);
        document.setIn(['shots', 'crown', 'frameWidth'], `${80 + (turn++ % 20)} mm`);
        return document.toString().length;
      },
    },
  },
  {
    title: 'a 40-shot text read',
    a: { name: 'read with problems located', run: () => readShootText(text).problems.length },
    b: { name: 'YAML alone', run: () => Object.keys(parseDocument(text).toJS() as object).length },
  },
]); // prettier-ignore
