import { useId } from 'react';
import { Button } from './Button.tsx';
import './playWarning.css';

export interface PlayWarningProps {
  /** What will be seen, and whom it may harm. */
  readonly says: string;
  /** It was confirmed once, and this device asks for less motion. */
  readonly isAgain: boolean;
  readonly playLabel: string;
  readonly onPlay: () => void;
  readonly onLeave: () => void;
}

/** Stands before anything that flashes is played; leaving it is what the Enter key does. */
export function PlayWarning({ says, isAgain, playLabel, onPlay, onLeave }: PlayWarningProps) {
  const id = useId();
  return (
    <div className="play-warning" role="alertdialog" aria-label="Before it plays" aria-describedby={id}>
      <p id={id}>{isAgain ? 'This device asks for less motion. Play it all the same?' : says}</p>
      <div className="play-warning-buttons">
        <Button onClick={onPlay}>{isAgain ? 'Play it all the same' : playLabel}</Button>
        <Button look="main" autoFocus onClick={onLeave}>
          Leave it
        </Button>
      </div>
    </div>
  );
}
