import { explain } from '../../../plan/explain.ts';
import { TraceTree } from '../../parts/TraceTree.tsx';
import { PlannedClocks } from '../shot/ShotClocks.tsx';
import { traceNode } from '../shot/traceNodes.ts';
import { Exhibit, State } from './Exhibit.tsx';
import type { LimitsProps } from './Limits.tsx';

/** Time on its two rulers. */
export function Clocks({ bench }: Pick<LimitsProps, 'bench'>) {
  return (
    <Exhibit of="TwoClocks" isWide says="Real time above, screen time below, joined by threads that fan out as time is stretched.">
      <State says="one speed">
        <PlannedClocks clocks={bench.planOf('drop').clocks} />
      </State>
      <State says="a profile of speeds">
        <PlannedClocks clocks={bench.planOf('ramp').clocks} />
      </State>
      <State says="not known how long the memory holds">
        <PlannedClocks clocks={bench.planOf('bare').clocks} />
      </State>
      <State says="nothing to draw yet">
        <PlannedClocks clocks={bench.planOf('mistyped').clocks} />
      </State>
    </Exhibit>
  );
} // prettier-ignore

/** Where numbers come from. */
export function Traces({ bench, onFollow }: LimitsProps) {
  const light = bench.planOf('drop').margins.find(({ id }) => id === 'light');
  const names = light ? ([['as written', light.haveName], ['worked out', light.needName]] as const) : [];
  return (
    <Exhibit of="TraceTree" isWide says="A number, what worked it out, and so on down to what somebody wrote or nobody did. Deeper branches are folded away.">
      {names.map(([says, name]) => {
        const trace = explain(bench.shoot, 'drop', name);
        return (
          trace && (
            <State key={name} says={says}>
              <div className="exhibit-column">
                <TraceTree root={traceNode(trace)} onFollow={onFollow} />
              </div>
            </State>
          )
        );
      })}
    </Exhibit>
  );
} // prettier-ignore
