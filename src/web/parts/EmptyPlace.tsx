import type { ReactNode } from 'react';
import './emptyPlace.css';

export interface EmptyPlaceProps {
  readonly title: string;
  /** 2 where the page has its heading already. */
  readonly level?: 1 | 2;
  /** What goes here, and how to start. */
  readonly says: string;
  /** The buttons that start it. */
  readonly children?: ReactNode;
}

/** A place with nothing in it yet. */
export function EmptyPlace({ title, level = 1, says, children }: EmptyPlaceProps) {
  const Heading = `h${level}` as const;
  return (
    <section className="empty-place">
      <svg viewBox="0 0 120 44" width="120" height="44" aria-hidden="true">
        <path className="empty-real" d="M48 8h24" />
        <path className="empty-thread" d="M48 8 8 36M54 8 31 36M60 8v28M66 8l23 28M72 8l40 28" />
        <path className="empty-screen" d="M8 36h104" />
      </svg>
      <Heading>{title}</Heading>
      <p>{says}</p>
      {children !== undefined && <div className="empty-start">{children}</div>}
    </section>
  );
}
