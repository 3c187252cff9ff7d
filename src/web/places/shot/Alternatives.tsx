import type { Alternative } from '../../../plan/types.ts';
import { MiniMargin } from '../../parts/MiniMargin.tsx';
import { showSigned } from '../../parts/marginScale.ts';
import { Panel } from '../../parts/Panel.tsx';
import { isMoving } from '../../parts/pointer.ts';
import { StateShape } from '../../parts/StateWord.tsx';
import { useShot } from './shotContext.ts';
import { worstOf } from './chartRows.ts';

export interface AlternativesProps {
  readonly shown: Alternative | undefined;
  readonly onShow: (alternative: Alternative | undefined) => void;
  readonly onApply: (alternative: Alternative) => void;
}

function Line({ alternative, shown, onShow, onApply }: AlternativesProps & { readonly alternative: Alternative }) {
  const worst = worstOf(alternative.margins);
  return (
    <button
      type="button"
      className={`alternative${alternative === shown ? ' is-shown' : ''}`}
      onPointerMove={(event) => isMoving(event) && onShow(alternative)}
      onPointerLeave={() => onShow(undefined)}
      onFocus={() => onShow(alternative)}
      onBlur={() => onShow(undefined)}
      onClick={() => onApply(alternative)}
    >
      <span className="alternative-differs">{alternative.differs}</span>
      <span className="alternative-worst">
        <StateShape standing={worst?.state ?? 'spare'} />{' '}
        {worst?.stops ? `${worst.title.toLowerCase()} ${showSigned(worst.stops.value)}` : 'all to spare'}
      </span>
      <MiniMargin stops={worst?.stops?.value ?? 2} standing={worst?.state ?? 'spare'} />
    </button>
  );
}

/** Other settings that came close: what differs, and the limit that would bind. */
export function Alternatives(props: AlternativesProps) {
  const { plan } = useShot();
  if (plan.alternatives.length === 0) return null;
  return (
    <Panel title="Otherwise" className="alternatives">
      <ul>
        {plan.alternatives.map((alternative, i) => (
          <li key={i}>
            <Line {...props} alternative={alternative} />
          </li>
        ))}
      </ul>
    </Panel>
  );
}
