import { bandOf, placeOfStops } from './stops.ts';

export interface ShareBarProps {
  readonly value: number;
  readonly spreadFraction: number;
  readonly reference: number;
  readonly isDim?: boolean;
}

/** A light as a bar in stops, from next to nothing up to what is wanted and beyond, with its spread. */
export function ShareBar({ value, spreadFraction, reference, isDim = false }: ShareBarProps) {
  const band = bandOf({ value, spreadFraction, reference });
  const zero = placeOfStops(0) * 100;
  return (
    <svg className={`share-bar${isDim ? ' is-dim' : ''}`} viewBox="0 0 100 14" preserveAspectRatio="none" aria-hidden="true">
      <rect className="share-ground" x="0" y="6.5" width="100" height="1" />
      {[-5, -4, -3, -2, -1, 1].map((stops) => (
        <rect key={stops} className="share-tick" x={placeOfStops(stops) * 100 - 0.2} y="4.5" width="0.4" height="5" />
      ))}
      {band && (
        <>
          <rect className="share-bar-fill" x="0" y="3.5" width={band.at * 100} height="7" />
          <rect className="share-whisker" x={band.from * 100} y="6.4" width={Math.max(0.4, (band.to - band.from) * 100)} height="1.2" />
        </>
      )}
      <rect className="share-zero" x={zero - 0.5} y="0" width="1" height="14" />
    </svg>
  );
} // prettier-ignore
