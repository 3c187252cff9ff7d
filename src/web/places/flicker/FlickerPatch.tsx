import { useEffect, useMemo, useRef, useState } from 'react';
import { showNumber } from '../../../base/quantity.ts';
import { Button } from '../../parts/Button.tsx';
import { PlayWarning } from '../../parts/PlayWarning.tsx';
import { useWidth } from '../../parts/useWidth.ts';
import { isMotionReduced } from '../../state/browser.ts';
import { FrameCells } from './FrameCells.tsx';
import { PatchPlayer } from './PatchPlayer.tsx';
import { afterPress, FLASH, MOST_PLAY_s, patchOf, type PatchPress, type PatchStep } from './patchPlay.ts';
import { useBrightest } from './useBrightest.ts';

export interface FlickerPatchProps {
  /** Light of each frame that would play, 1 the mean. */
  readonly frames: Float64Array;
  readonly play_fps: number;
}

/** Frames of the strip that stands in for a patch that is not played. */
const MOST_CELLS = 40;

function Strip({ frames }: { readonly frames: Float64Array }) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const shown = frames.subarray(0, Math.min(MOST_CELLS, Math.max(8, Math.floor(width / 16))));
  const cells = Array.from(shown, (light, i) => ({
    from_px: (i / shown.length) * width,
    to_px: ((i + 1) / shown.length) * width,
    light,
  }));
  return (
    <div className="patch-strip" ref={ref}>
      {width > 0 && (
        <svg width={width} height={44} viewBox={`0 0 ${width} 44`} role="img" aria-label={`${shown.length} frames side by side, each as light as it is`}>
          <FrameCells cells={cells} top={0} bottom={44} />
        </svg>
      )}
    </div>
  );
} // prettier-ignore

const warningOf = (change: string) =>
  `A small patch of light will flicker for ${MOST_PLAY_s} s, by ${change} of its brightest. Flickering light can set off seizures, migraine or sickness in people who are sensitive to it, at any strength. Look away and press Stop or Escape at the first discomfort; do not play it where others cannot choose.`;

/** The flicker at the speed it will play, as a patch: never unasked, never beyond what the flash threshold allows. */
export function FlickerPatch({ frames, play_fps }: FlickerPatchProps) {
  const brightest = useBrightest();
  const [step, setStep] = useState<PatchStep>('off');
  const begin = useRef<HTMLButtonElement>(null);
  const patch = useMemo(() => patchOf({ frames, play_fps, brightest }), [frames, play_fps, brightest]);
  // Another flicker is another question: nothing goes on playing, and no press counts for it.
  useEffect(() => setStep('off'), [patch]);
  const press = (what: PatchPress) => {
    const next = afterPress(step, what, { isMotionReduced: isMotionReduced() });
    setStep(next);
    if (next === 'off') setTimeout(() => begin.current?.focus(), 0);
  };
  const change = `${showNumber(100 * patch.changeFraction, 2)} %`;
  return (
    <section className="patch no-print" aria-label="The flicker played">
      {patch.refused !== undefined ? (
        <>
          <p className="patch-refused">{patch.refused}</p>
          {patch.flashCount > FLASH.mostASecond && <Strip frames={frames} />}
        </>
      ) : (
        <>
          {step === 'off' && (
            <div className="patch-off">
              <Button ref={begin} onClick={() => press('begin')}>
                See it flicker…
              </Button>
              <span>as a small patch, as fast as the film will play; it warns first</span>
            </div>
          )}
          {(step === 'warned' || step === 'asked-again') && (
            <PlayWarning
              key={step}
              says={warningOf(change)}
              isAgain={step === 'asked-again'}
              playLabel={`Play it for ${MOST_PLAY_s} s`}
              onPlay={() => press('play')}
              onLeave={() => press('stop')}
            />
          )}
          {step === 'playing' && (
            <div className="patch-playing">
              <PatchPlayer levels={patch.levels} play_fps={play_fps} onEnd={() => press('stop')} />
              <Button look="main" autoFocus onClick={() => press('stop')}>
                Stop
              </Button>
              <span role="status">Playing, at most {MOST_PLAY_s} s. Escape stops it.</span>
            </div>
          )}
        </>
      )}
    </section>
  );
}
