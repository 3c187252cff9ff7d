/** A shot's timing as a reply for programs: what the schema names, in its order. */
import type * as z from 'zod';
import { unitSuffix } from '../base/kinds.ts';
import type { SampledTiming, ShotTiming } from '../plan/timing/types.ts';
import type { Assumption } from '../plan/types.ts';
import { TIMING } from './planSchema.ts';
import { Sampled, Share } from './timingSchema.ts';

type Shape = { readonly shape: Readonly<Record<string, unknown>> };

/** The members that a schema names, in its order, those without a value left out. */
function named<T extends z.ZodType & Shape>(schema: T, of: object): z.infer<T> {
  const values = of as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.keys(schema.shape).flatMap((key) => (values[key] === undefined ? [] : [[key, values[key]]]))) as z.infer<T>;
} // prettier-ignore

const assumedReply = (assumed: readonly Assumption[]) =>
  assumed.map(({ name, title, value, why, path }) => ({ name, title, value, unit: unitSuffix(name), why, path }));

/** What is assumed, with the unit in place of its kind. */
const withUnits = <T extends { readonly assumed: readonly Assumption[] }>(of: T) => ({ ...of, assumed: assumedReply(of.assumed) }); // prettier-ignore

/** The timing of a shot, in the form of `docs/schema/plan.schema.json`. */
export function timingReply(timing: ShotTiming): z.infer<typeof TIMING.Timing> {
  const { cues, meeting, trigger, memory, safety } = timing;
  return named(TIMING.Timing, {
    ...timing,
    cues: cues.map((cue) => named(TIMING.Cue, withUnits(cue))),
    meeting: meeting && named(TIMING.Meeting, meeting),
    trigger: trigger && named(TIMING.Trigger, withUnits(trigger)),
    memory: memory && named(TIMING.Memory, { ...withUnits(memory), marks: memory.marks.map(({ title, at_s, frame }) => ({ title, at_s, frameCount: frame })) }),
    safety: safety.map((one) => named(TIMING.Safety, one)),
  });
} // prettier-ignore

/** The same for takes drawn by chance. */
export function sampledReply(sampled: SampledTiming): z.infer<typeof Sampled> {
  const share = (of: SampledTiming['all'] | undefined) => of && named(Share, { ...of, shareFraction: of.fraction });
  const { meets, inTheFrame, inDepth, inMemory, all } = sampled;
  return named(Sampled, {
    ...sampled,
    meets: share(meets),
    inTheFrame: share(inTheFrame),
    inDepth: share(inDepth),
    inMemory: share(inMemory),
    all: share(all),
  });
}
