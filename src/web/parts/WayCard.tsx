import { StateShape, type Standing } from './StateWord.tsx';
import { showSigned } from './marginScale.ts';
import { isMoving } from './pointer.ts';
import './wayCard.css';

export interface WayEffect {
  readonly title: string;
  readonly change: number;
  readonly standing: Standing;
}

export interface WayCardProps {
  readonly title: string;
  readonly says: string;
  /** Who proposes it, where it is not the plan itself. */
  readonly source?: string;
  readonly gain: number;
  /** Where the limit then stands. */
  readonly after: { readonly standing: Standing; readonly word: string };
  readonly effects: readonly WayEffect[];
  /** A warning in words, such as that it changes what the person fixed. */
  readonly warning?: string;
  /** Its effect is being shown elsewhere on the page. */
  readonly isShown: boolean;
  readonly onShow: () => void;
  readonly onHide: () => void;
  readonly onApply: () => void;
}

const MOST_EFFECTS = 4;

function Effects({ effects }: { readonly effects: readonly WayEffect[] }) {
  const more = effects.length - MOST_EFFECTS;
  return (
    <span className="way-effects">
      {effects.slice(0, MOST_EFFECTS).map((effect) => (
        <span key={effect.title} className={`way-effect ${effect.standing}`}>
          {effect.title} <b>{showSigned(effect.change)}</b>
          {(effect.standing === 'short' || effect.standing === 'tight') && ` ${effect.standing}`}
        </span>
      ))}
      {more > 0 && <span className="way-effect">and {more} more</span>}
    </span>
  );
}

/** One change on offer: what it is, what it gains, what it costs elsewhere. Pointing shows it; pressing does it. */
export function WayCard({
  title,
  says,
  source,
  gain,
  after,
  effects,
  warning,
  isShown,
  onShow,
  onHide,
  onApply,
}: WayCardProps) {
  return (
    <button
      type="button"
      className={`way-card${isShown ? ' is-shown' : ''}`}
      onPointerMove={(event) => isMoving(event) && onShow()}
      onPointerLeave={onHide}
      onFocus={onShow}
      onBlur={onHide}
      onClick={onApply}
    >
      <span className="way-title">{title}</span>
      <span className="way-gain">{showSigned(gain)}</span>
      <span className="way-body">
        {source !== undefined && <span className="way-source">{source}</span>}
        {says !== '' && <span className="way-says">{says}</span>}
        <Effects effects={effects} />
        {warning !== undefined && <span className="way-warning">{warning}</span>}
      </span>
      <span className={`way-after ${after.standing}`}>
        <StateShape standing={after.standing} />
        {after.word}
      </span>
    </button>
  );
}
