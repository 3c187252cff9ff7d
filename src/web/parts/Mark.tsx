import './mark.css';

/** The mark: a short stroke drawn out into a long one. */
export function Mark() {
  return (
    <svg className="mark" width="46" height="20" viewBox="0 0 46 20" aria-hidden="true">
      <path className="mark-thread" d="M17.5 4 3 16M20.8 4 15.5 16M25.2 4 30.5 16M28.5 4 43 16" />
      <path className="mark-real" d="M18 4h10" />
      <path className="mark-screen" d="M3 16h40" />
    </svg>
  );
}
