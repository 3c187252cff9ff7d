/** Where a number of a plan came from: the shot worked again, and the model walked back to what the person wrote. */
import type { Shoot } from '../document/schema.ts';
import { SWING } from './flickerMargin.ts';
import { flickerTrace } from './flickerTrace.ts';
import { kindOfGiven } from './limits.ts';
import { refusal } from './model.ts';
import { candidatesOf, prepare, workAt, type Prepared, type Worked } from './planShot.ts';
import { flickerWorked } from './shotFlicker.ts';
import type { Trace } from './types.ts';

/**
 * The trace of one number of a shot by its name in the model (`lightNeeded_lx`, `exposureTime_s`). Undefined when the
 * shot or the name is unknown.
 */
export function explain(shoot: Shoot, shotId: string, name: string): Trace | undefined {
  if (shoot.shots[shotId] === undefined) return undefined;
  const prepared = prepare(shoot, shotId);
  const [answer] = candidatesOf(prepared).best;
  const worked = workAt(prepared, answer);
  if (name === SWING) return ofFlicker(prepared, worked);
  return prepared.model.slotOf.has(name) || worked.givens.has(name) ? traceOf(prepared, worked, name) : undefined;
}

/** The swing of the frames, which no step of the model works out. */
function ofFlicker(prepared: Prepared, worked: Worked): Trace | undefined {
  const flicker = flickerWorked(prepared, worked);
  if (!flicker) return undefined;
  const { shoot, effective } = prepared;
  const setupId = effective.shot.lighting!;
  return flickerTrace({ ...flicker, shoot, setupId, traceOf: (name) => traceOf(prepared, worked, name) });
}

function traceOf(prepared: Prepared, worked: Worked, name: string): Trace {
  const { model } = prepared;
  const { values, givens } = worked;
  const slot = model.slotOf.get(name);
  const number = slot === undefined ? givens.get(name)?.value : values[slot];
  const value = number !== undefined && Number.isFinite(number) ? number : undefined;
  const step = model.stepOf.get(name);
  if (!step) {
    const entry = givens.get(name);
    const path = entry?.path ?? '';
    const spread = entry && entry.spread > 0 ? { spread: entry.spread } : {};
    return {
      name,
      title: entry?.title ?? name,
      value,
      kind: kindOfGiven(name),
      origin:
        entry?.assumed === undefined
          ? { by: 'document', path, ...spread, ...(entry?.says === undefined ? {} : { says: entry.says }) }
          : { by: 'assumption', why: entry.assumed, path, ...spread },
      inputs: [],
    };
  }
  const refused = value === undefined ? refusal(step, values) : undefined;
  return {
    name,
    title: step.title,
    value,
    kind: step.kind,
    ...(step.as === undefined ? {} : { as: step.as }),
    origin:
      step.origin.by === 'choice'
        ? step.origin
        : {
            by: 'law',
            law: step.origin.law.id,
            title: step.origin.law.title,
            equation: step.origin.law.equation,
            sources: step.origin.law.sources,
            ...(refused === undefined ? {} : { refused }),
          },
    inputs: step.inputs.map(([, input]) => traceOf(prepared, worked, input)),
  };
}
