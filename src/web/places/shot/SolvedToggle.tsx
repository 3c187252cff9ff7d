import type { Written } from '../../../document/written.ts';
import { clearingPatch, findWritten } from './shotEdits.ts';
import { useShot } from './shotContext.ts';

export interface SolvedToggleProps {
  readonly name: string;
  readonly label: string;
  /** What the plan found, as it would be written; absent when it found nothing. */
  readonly solved: Written | undefined;
}

/** Says whether a setting is solved or fixed, and turns one into the other. */
export function SolvedToggle({ name, label, solved }: SolvedToggleProps) {
  const { open, shotId, edits } = useShot();
  const { holder, text } = findWritten(open.written, shotId, name);
  const pointer = `/shots/${shotId}/${name}`;
  if (holder === 'defaults') return <span className="ask-origin">default</span>;
  const isFixed = holder === 'shot';
  return (
    <button
      type="button"
      className={`solved-toggle${isFixed ? ' is-fixed' : ''}`}
      aria-pressed={isFixed}
      aria-label={`${label}: ${isFixed ? 'fixed; press to let it be solved' : 'solved; press to fix it as it is'}`}
      disabled={!isFixed && solved === undefined}
      onClick={() =>
        isFixed
          ? edits.commit((written) => clearingPatch(written, [pointer]), `${label} no longer fixed at ${text}`)
          : edits.commit(() => [{ op: 'add', path: pointer, value: solved! }], `${label} fixed`)
      }
    >
      {isFixed ? 'fixed' : 'solved'}
    </button>
  );
}
