import type { ReactNode } from 'react';

export interface ExhibitProps {
  /** The part that is shown, by the name of its component. */
  readonly of: string;
  /** What to look for in it. */
  readonly says: ReactNode;
  /** It takes the whole width of the page. */
  readonly isWide?: boolean;
  readonly children: ReactNode;
}

/** One part in all of its states, under its name. */
export function Exhibit({ of, says, isWide = false, children }: ExhibitProps) {
  return (
    <section className={isWide ? 'exhibit is-wide' : 'exhibit'} data-part={of} aria-label={of}>
      <h3>{of}</h3>
      <p className="exhibit-says">{says}</p>
      {children}
    </section>
  );
}

/** One state of a part, with its name beside it. */
export function State({ says, children }: { readonly says: string; readonly children: ReactNode }) {
  return (
    <div className="exhibit-state">
      <span className="exhibit-state-says">{says}</span>
      <div>{children}</div>
    </div>
  );
}
