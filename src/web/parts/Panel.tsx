import type { ReactNode } from 'react';
import { useId } from 'react';
import './panel.css';

export interface PanelProps {
  readonly title: string;
  /** Said beside the title, quietly. */
  readonly aside?: ReactNode;
  readonly className?: string;
  readonly children: ReactNode;
}

/** A part of a place under its own heading. */
export function Panel({ title, aside, className, children }: PanelProps) {
  const id = useId();
  return (
    <section className={['panel', className].filter(Boolean).join(' ')} aria-labelledby={id}>
      <div className="panel-head">
        <h2 id={id}>{title}</h2>
        {aside !== undefined && <div className="panel-aside">{aside}</div>}
      </div>
      {children}
    </section>
  );
}
