import type { Shown } from '../../base/quantity.ts';
import { Figure } from './Figure.tsx';
import './traceTree.css';

/** One number and what it was made from. */
export interface TraceNode {
  readonly id: string;
  readonly title: string;
  readonly shown?: Shown;
  /** What worked it out, or who said it. */
  readonly by: string;
  readonly equation?: string;
  readonly sources: readonly string[];
  /** Why it had to be assumed, where nobody measured or published it. */
  readonly assumed?: string;
  readonly spread?: string;
  /** Where it is written. */
  readonly path?: string;
  readonly inputs: readonly TraceNode[];
}

export interface TraceTreeProps {
  readonly root: TraceNode;
  readonly onFollow: (path: string) => void;
}

/** Inputs below this depth are folded away until asked for. */
const OPEN_DEPTH = 3;

interface BranchProps {
  readonly node: TraceNode;
  readonly depth: number;
  readonly onFollow: (path: string) => void;
}

function Said({ node, onFollow }: Omit<BranchProps, 'depth'>) {
  return (
    <div className="trace-said">
      <div className="trace-line">
        <span className="trace-title">{node.title}</span>
        <span className="trace-value">
          {node.shown ? <Figure {...node.shown} /> : 'not known'}
          {node.spread !== undefined && <span className="trace-spread"> ± {node.spread}</span>}
        </span>
      </div>
      {node.equation !== undefined && <div className="trace-equation">{node.equation}</div>}
      <div className="trace-by">
        {node.assumed !== undefined && <span className="trace-assumed">assumed</span>}
        <span>{node.assumed ?? node.by}</span>
        {node.sources.length > 0 && <span className="trace-source">source: {node.sources.join(', ')}</span>}
        {node.path !== undefined && (
          <button type="button" className="trace-go" onClick={() => onFollow(node.path!)}>
            go to it
          </button>
        )}
      </div>
    </div>
  );
}

function Branch({ node, depth, onFollow }: BranchProps) {
  const inputs = node.inputs.length > 0 && (
    <ul className="trace-inputs">
      {node.inputs.map((input) => (
        <li key={input.id}>
          <Branch node={input} depth={depth + 1} onFollow={onFollow} />
        </li>
      ))}
    </ul>
  );
  if (inputs === false || depth < OPEN_DEPTH)
    return (
      <>
        <Said node={node} onFollow={onFollow} />
        {inputs}
      </>
    );
  return (
    <>
      <Said node={node} onFollow={onFollow} />
      <details className="trace-more">
        <summary>from {node.inputs.map(({ title }) => title.toLowerCase()).join(', ')}</summary>
        {inputs}
      </details>
    </>
  );
}

/** Where a number came from, down to what somebody wrote. */
export function TraceTree({ root, onFollow }: TraceTreeProps) {
  return (
    <div className="trace-tree">
      <Branch node={root} depth={0} onFollow={onFollow} />
    </div>
  );
}
