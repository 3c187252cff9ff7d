import './assumedMark.css';

/** Stands after a figure that rests on something nobody measured or published. */
export function AssumedMark() {
  return (
    <svg className="assumed-sign" width="11" height="9" viewBox="0 0 11 9" aria-hidden="true">
      <path d="M1 3.2c1.6-2 3-2 4.5-.7S8.4 3.8 10 1.8M1 7.2c1.6-2 3-2 4.5-.7S8.4 7.8 10 5.8" />
    </svg>
  );
}
