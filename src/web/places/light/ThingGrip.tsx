import type { KeyboardEvent, ReactNode } from 'react';
import type { ThingDrawn } from './drawn.ts';
import { SUBJECT } from './geometry.ts';
import type { Moved } from './lightEdits.ts';
import { useLight } from './lightContext.ts';
import { placeSaid } from './lightWords.ts';
import type { Grip } from './useGrips.ts';

export interface ThingGripProps {
  readonly thing: ThingDrawn;
  readonly moved: Moved;
  readonly onKey: (event: KeyboardEvent, grip: Grip) => void;
  readonly onBlur: (grip: Grip) => void;
  readonly children: ReactNode;
}

const AIMS = { lamp: 'Aim of', flag: 'What is faced by' } as const;

/** A mark that the keyboard can hold: it says what it is and where, and moves by keys. */
export function ThingGrip({ thing, moved, onKey, onBlur, children }: ThingGripProps) {
  const { system, onSelect } = useLight();
  const { kind, id, mark, at, aim, isDim, isSelected } = thing;
  const grip: Grip = { thing: { kind, id }, moved };
  const dim = isDim ? (kind === 'lamp' ? ', not lit' : ', taken away') : '';
  const told =
    moved === 'at'
      ? { 'aria-pressed': isSelected, 'aria-label': `${mark}, ${placeSaid(at, system)}${dim}`, [`data-${kind}`]: id, onFocus: () => onSelect(grip.thing) }
      : { 'aria-label': `${AIMS[kind]} ${mark.charAt(0).toLowerCase()}${mark.slice(1)}, ${placeSaid(aim ?? SUBJECT, system)}` };
  return (
    <g className="light-grip" tabIndex={0} role="button" aria-describedby="light-keys" {...told} onKeyDown={(event) => onKey(event, grip)} onBlur={() => onBlur(grip)}>
      {children}
    </g>
  );
} // prettier-ignore
