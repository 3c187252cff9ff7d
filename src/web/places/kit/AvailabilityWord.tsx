import type { Written } from '../../../document/written.ts';

const SHAPES = {
  here: 'M6 2.2a3.8 3.8 0 1 1 0 7.6 3.8 3.8 0 0 1 0-7.6z',
  hire: 'M6 1.2 10.8 6 6 10.8 1.2 6z',
  unwanted: 'M2.2 2.2 9.8 9.8M9.8 2.2 2.2 9.8',
} as const;

const WORDS = { here: 'here', hire: 'to hire', unwanted: 'not wanted' } as const;

type Availability = keyof typeof WORDS;

/** The plan takes what says nothing to be on the set. */
function availabilityOf(written: Written | undefined): Availability | undefined {
  if (written === undefined || written === null) return 'here';
  return typeof written === 'string' && Object.hasOwn(WORDS, written) ? (written as Availability) : undefined;
}

/** Whether a piece of kit is on the set, in a shape and a word. */
export function AvailabilityWord({ written }: { readonly written: Written | undefined }) {
  const availability = availabilityOf(written);
  if (availability === undefined) return <span className="kit-has is-unread">unread</span>;
  return (
    <span className={`kit-has is-${availability}`}>
      <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
        <path d={SHAPES[availability]} />
      </svg>
      {WORDS[availability]}
    </span>
  );
}
