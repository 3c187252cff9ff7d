import { useEffect, useRef, type ReactNode } from 'react';
import { offerPlayer } from '../../../actions/player.ts';
import { Button } from '../../../parts/Button.tsx';
import { Icon, type IconName } from '../../../parts/Icon.tsx';
import { useClip } from './clipContext.ts';
import { withEnd } from './kept.ts';
import { Readout } from './Readout.tsx';
import { SpeedChoice } from './SpeedChoice.tsx';

interface SignProps {
  readonly icon: IconName;
  readonly says: string;
  readonly isOff?: boolean;
  readonly onPress: () => void;
}

function Sign({ icon, says, isOff = false, onPress }: SignProps) {
  return (
    <Button look="sign" aria-label={says} title={says} disabled={isOff} onClick={onPress}>
      <Icon name={icon} />
    </Button>
  );
}

export interface ControlsProps {
  /** Further things to set, beside the speed. */
  readonly more: ReactNode;
  /** What must be said before it plays. */
  readonly children: ReactNode;
}

/** The hands on the clip, for pointer and finger; keys do the same, and are offered while this is on the page. */
export function Controls({ more, children }: ControlsProps) {
  const { transport, playhead, measurement, kept, onKeep } = useClip();
  const { isPlaying, canPlay, speed, isLooped, warning, toggle, stepBy, seek, setSpeed, setLooped } = transport;
  const { frameCount, action } = measurement;
  const peak = action?.peak;
  const playButton = useRef<HTMLButtonElement>(null);
  // Once the warning is answered, what had the focus is gone.
  const wasWarned = useRef(false);
  const isWarning = warning === 'warned' || warning === 'asked-again';
  useEffect(() => {
    if (wasWarned.current && !isWarning) playButton.current?.focus();
    wasWarned.current = isWarning;
  }, [isWarning]);
  useEffect(
    () =>
      offerPlayer({
        toggle,
        stepBy,
        setLooped,
        toIn: () => seek(kept.inFrame),
        toOut: () => seek(kept.outFrame),
        ...(peak !== undefined && { toPeak: () => seek(peak) }),
        keepFromHere: () => onKeep(withEnd(kept, 'in', playhead.frame(), frameCount)),
        keepToHere: () => onKeep(withEnd(kept, 'out', playhead.frame(), frameCount)),
      }),
    [toggle, stepBy, setLooped, seek, kept, peak, onKeep, playhead, frameCount],
  );
  return (
    <>
      <div className="clip-hands">
        <Readout />
        <div className="clip-signs no-print" role="group" aria-label="Player">
          <Sign icon="frameBack" says="One frame back" onPress={() => stepBy(-1)} />
          <Button ref={playButton} look="main" className="clip-play" disabled={!canPlay} aria-label={isPlaying ? 'Stop' : 'Play'} title={isPlaying ? 'Stop' : 'Play'} onClick={toggle}>
            <Icon name={isPlaying ? 'stop' : 'play'} />
          </Button>
          <Sign icon="frameOn" says="One frame on" onPress={() => stepBy(1)} />
          <Sign icon="toIn" says="To the first frame kept" onPress={() => seek(kept.inFrame)} />
          <Sign icon="toPeak" says="To where most moves" isOff={peak === undefined} onPress={() => seek(peak ?? 0)} />
          <Sign icon="toOut" says="To the last frame kept" onPress={() => seek(kept.outFrame)} />
        </div>
      </div>
      {children}
      <div className="clip-how no-print">
        <SpeedChoice speed={speed} isOff={!canPlay} onChoose={setSpeed} />
        <label className="clip-check">
          <input type="checkbox" checked={isLooped} disabled={!canPlay} onChange={(event) => setLooped(() => event.currentTarget.checked)} />
          <span>Loop what is kept</span>
        </label>
        {more}
      </div>
    </>
  );
} // prettier-ignore
