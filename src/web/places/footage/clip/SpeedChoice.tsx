import { useId } from 'react';
import { SPEEDS, type Speed } from './playback.ts';

export interface SpeedChoiceProps {
  readonly speed: Speed;
  readonly isOff: boolean;
  readonly onChoose: (speed: Speed) => void;
}

/** How fast it plays. */
export function SpeedChoice({ speed, isOff, onChoose }: SpeedChoiceProps) {
  const id = useId();
  return (
    <label className="clip-choice">
      <span id={id}>Speed</span>
      <select
        className="field-input"
        aria-labelledby={id}
        value={speed.id}
        disabled={isOff}
        onChange={(event) => onChoose(SPEEDS.find((each) => each.id === event.currentTarget.value) ?? SPEEDS[0]!)}
      >
        {SPEEDS.map((each) => (
          <option key={each.id} value={each.id}>
            {each.says}
          </option>
        ))}
      </select>
    </label>
  );
}
