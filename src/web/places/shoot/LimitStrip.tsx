import { useMemo } from 'react';
import type { Margin } from '../../../plan/types.ts';
import { AXIS_MARKS, placeOnAxis, showSigned } from '../../parts/marginScale.ts';
import { StateShape } from '../../parts/StateWord.tsx';
import { layStrip } from './strip.ts';

const across = (fraction: number) => `${(fraction * 100).toFixed(2)}%`;

/** The numbers of the axis that all strips share. */
export function StripAxis() {
  return (
    <span className="strip-axis">
      {AXIS_MARKS.map((mark) => (
        <span key={mark} className={mark === 0 ? 'is-zero' : undefined} style={{ left: across(placeOnAxis(mark)) }}>
          {mark === 0 ? 'just enough' : showSigned(mark, 0)}
        </span>
      ))}
    </span>
  );
}

const STEP_px = 9;

function Beyond({ side, limits }: { readonly side: 'left' | 'right'; readonly limits: readonly string[] }) {
  if (limits.length === 0) return null;
  return (
    <span className={`strip-beyond ${side}`} title={limits.join('\n')}>
      {side === 'left' ? `‹${limits.length}` : `${limits.length}›`}
    </span>
  );
}

/** Every limit of a shot as a small mark on the one axis; what the marks say stands in words beside it. */
export function LimitStrip({ margins }: { readonly margins: readonly Margin[] }) {
  const { marks, worstShort, beyond } = useMemo(() => layStrip(margins), [margins]);
  return (
    <span className="strip" aria-hidden="true">
      {AXIS_MARKS.map((mark) => (
        <span
          key={mark}
          className={mark === 0 ? 'strip-line is-zero' : 'strip-line'}
          style={{ left: across(placeOnAxis(mark)) }}
        />
      ))}
      {worstShort !== undefined && (
        <span className="strip-short" style={{ left: across(worstShort), right: across(1 - placeOnAxis(0)) }} />
      )}
      {marks.map(({ id, says, standing, at, level }) => (
        <span
          key={id + says}
          className="strip-mark"
          title={says}
          style={{ left: across(at), top: `calc(50% + ${-level * STEP_px}px)` }}
        >
          <StateShape standing={standing} />
        </span>
      ))}
      <Beyond side="left" limits={beyond.left} />
      <Beyond side="right" limits={beyond.right} />
    </span>
  );
}
