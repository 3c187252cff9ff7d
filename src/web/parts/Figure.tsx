import type { Shown } from '../../base/quantity.ts';
import './figure.css';

export interface FigureProps extends Shown {
  readonly size?: 'body' | 'big';
}

/** A number with its unit beside it. */
export function Figure({ number, unit, size = 'body' }: FigureProps) {
  return (
    <span className={`figure ${size}`}>
      <span className="figure-number">{number}</span>
      {unit !== '' && <span className="figure-unit">{unit === '°' ? unit : ` ${unit}`}</span>}
    </span>
  );
}
