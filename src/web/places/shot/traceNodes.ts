/** A trace of the plan as a tree to be read. */
import { showNumber, type UnitSystem } from '../../../base/quantity.ts';
import type { Trace } from '../../../plan/types.ts';
import type { TraceNode } from '../../parts/TraceTree.tsx';
import { saidShown, showNamed } from './showValue.ts';

function byOf({ origin }: Trace): string {
  switch (origin.by) {
    case 'law':
      return origin.refused === undefined ? origin.title : `${origin.title}: ${origin.refused}`;
    case 'choice':
      return origin.says;
    case 'document':
      return origin.says === undefined ? 'as written' : `as written: ${origin.says}`;
    case 'assumption':
      return 'not written';
  }
}

export function traceNode(trace: Trace, system: UnitSystem = 'metric', id = trace.name): TraceNode {
  const { name, title, value, kind, origin, inputs } = trace;
  const show = (amount: number) => showNamed({ name, value: amount, kind, system });
  const spread = 'spread' in origin ? origin.spread : undefined;
  const isScale = kind === 'stops' || kind === 'decibels' || kind === 'temperature';
  return {
    id,
    title,
    ...(value === undefined ? {} : { shown: show(value) }),
    by: byOf(trace),
    ...(origin.by === 'law' ? { equation: origin.equation } : {}),
    sources: origin.by === 'law' ? origin.sources : [],
    ...(origin.by === 'assumption' ? { assumed: origin.why } : {}),
    ...(spread === undefined || value === undefined
      ? {}
      : { spread: isScale || value === 0 ? saidShown(show(spread)) : `${showNumber((100 * spread) / value, 2)} %` }),
    ...('path' in origin ? { path: origin.path } : {}),
    inputs: inputs.map((input, i) => traceNode(input, system, `${id}/${i}`)),
  };
}
