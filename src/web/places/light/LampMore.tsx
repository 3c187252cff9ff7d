import { useState } from 'react';
import type { PlacedLamp } from '../../../document/schema.ts';
import { KitField } from '../kit/KitField.tsx';

const DOORS = { left: 'Left', right: 'Right', top: 'Above', bottom: 'Below' } as const;

export interface LampMoreProps {
  readonly path: string;
  readonly placed: PlacedLamp | undefined;
  /** A glowing face has no point that doors would cut about. */
  readonly isFace: boolean;
  readonly kitColour: string | undefined;
}

/** Barn doors, and what few lamps need said: colour, phase, a share that was read. */
export function LampMore({ path, placed, isFace, kitColour }: LampMoreProps) {
  const hasDoors = Object.values(placed?.doors ?? {}).some((angle) => typeof angle === 'number');
  const hasMore = placed?.colourTemperature_K !== undefined || placed?.mainsPhaseCount !== undefined || placed?.shareFraction !== undefined;
  // As it was when the card came up: a fold that closed under typing hands would lose the field.
  const [starts] = useState({ doors: hasDoors, more: hasMore });
  return (
    <>
      {(!isFace || hasDoors) && (
        <details className="light-more" open={starts.doors}>
          <summary>Barn doors</summary>
          <p className="light-says">
            {isFace
              ? 'This lamp glows from a face, and doors are worked for a point: they are not counted. Stand a flag where they are.'
              : 'Angles off its axis beyond which each cuts, looking the way it shines. What is left out is open.'}
          </p>
          <div className="light-quiet light-pair">
            {Object.entries(DOORS).map(([key, label]) => (
              <KitField key={key} path={`${path}/doors/${key}`} label={label} placeholder="open" />
            ))}
          </div>
        </details>
      )}
      <details className="light-more" open={starts.more}>
        <summary>More</summary>
        <KitField path={`${path}/colour`} label="Colour setting" placeholder={kitColour ?? 'as the kit says'} />
        <KitField path={`${path}/phase`} label="Phase of the mains" placeholder="the first" />
        <KitField path={`${path}/share`} label="Share, as read" placeholder="worked out" note="Of the light at the subject, such as that of house lights. With it nothing else of this lamp need be known; read it again once the others change." />
      </details>
    </>
  );
} // prettier-ignore
