import { placeOnAxis } from './marginScale.ts';
import type { Standing } from './StateWord.tsx';
import './miniMargin.css';

export interface MiniMarginProps {
  readonly stops: number;
  readonly standing: Standing;
}

/** A margin small enough to stand in a line: the same axis, without figures. The words beside it say the rest. */
export function MiniMargin({ stops, standing }: MiniMarginProps) {
  const zero = placeOnAxis(0) * 100;
  const at = placeOnAxis(stops) * 100;
  return (
    <svg className={`mini-margin ${standing}`} width="64" height="14" viewBox="0 0 100 14" preserveAspectRatio="none" aria-hidden="true">
      <rect className="mini-ground" x="0" y="6.25" width="100" height="1.5" />
      <rect className="mini-bar" x={Math.min(zero, at)} y="3.5" width={Math.max(1.5, Math.abs(at - zero))} height="7" />
      <rect className="mini-zero" x={zero - 1.2} y="0" width="2.4" height="14" />
    </svg>
  );
} // prettier-ignore
