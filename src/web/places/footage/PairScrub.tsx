import { useState, type ReactNode } from 'react';
import { proxyPath } from '../../../api/footageRoutes.ts';
import { sayShown, showQuantity } from '../../../base/quantity.ts';
import type { ClipBrief, ClipEntry } from '../../../record/footage.ts';
import { sayOffset } from '../../../turnover/sheets/cueSheet.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { PlayWarning } from '../../parts/PlayWarning.tsx';
import { CopyState } from './clip/CopyState.tsx';
import { FLASHING_HARMS } from './clip/flashWords.ts';
import { SpeedChoice } from './clip/SpeedChoice.tsx';
import { alignmentsOf, frameAt, reachOf, type Alignment } from './pairTime.ts';
import { SteadyStill } from './SteadyStill.tsx';
import { usePairPlay } from './usePairPlay.ts';

export interface PairScrubProps {
  readonly shootId: string;
  readonly entries: readonly [ClipEntry, ClipEntry];
  /** Of the pictures asked for, in pixels. */
  readonly width: number;
  readonly heads: readonly [ReactNode, ReactNode];
  /** What to warn of before they play; null where neither flashes, undefined as long as nobody knows. */
  readonly warning: string | null | undefined;
  readonly onMakeCopy: (clipId: string) => void;
}

const MOMENTS: Readonly<Record<Alignment, string>> = { peak: 'most movement', onset: 'first movement', first: 'first frame' }; // prettier-ignore

/** Before a clip is measured only its first frame is known. */
const UNMEASURED = { frameCount: 1, frameRate_fps: 1, playback_fps: 25 };

const briefOf = ({ brief }: ClipEntry): Pick<ClipBrief, 'frameCount' | 'frameRate_fps' | 'playback_fps' | 'action'> => brief ?? UNMEASURED; // prettier-ignore

const BEYOND = { before: 'before its first frame', after: 'after its last frame' } as const;

/** The pictures of two clips at one moment of the set, and what moves through both or plays them. */
export function PairScrub({ shootId, entries, width, heads, warning, onMakeCopy }: PairScrubProps) {
  const briefs = [briefOf(entries[0]), briefOf(entries[1])] as const;
  const possible = alignmentsOf(briefs);
  const [wanted, setWanted] = useState<Alignment>('peak');
  const alignment = possible.includes(wanted) ? wanted : 'first';
  const [at_s, setAt_s] = useState(0);
  const { from_s, to_s, step_s } = reachOf(briefs, alignment);
  const time_s = Math.min(to_s, Math.max(from_s, at_s));
  const { playback_fps } = briefs[0];
  const player = usePairPlay({ briefs, alignment, time_s, playback_fps, isToWarn: warning !== null, onTime: setAt_s });
  const [isBroken, setBroken] = useState(false);
  // One that plays beside one that stands would only mislead.
  const areCopies = !isBroken && entries.every(({ proxy, brief }) => proxy.state === 'ready' && brief !== undefined);
  const frames = briefs.map((brief) => frameAt(brief, alignment, time_s));
  const screen = entries[0].brief && (time_s * entries[0].brief.frameRate_fps) / playback_fps;
  const says = `${sayOffset(time_s)} from the ${MOMENTS[alignment]}; frames ${frames.map(({ frame }) => frame).join(' and ')}`;
  const step = (by: 1 | -1) => player.seek(Math.min(to_s, Math.max(from_s, time_s + by * step_s)));
  const isWarning = player.warning === 'warned' || player.warning === 'asked-again';
  return (
    <section className="pair-scrub" aria-label="Both clips at one moment">
      <div className="pair-pictures">
        {entries.map(({ id, name }, i) => {
          const { frame, beyond } = frames[i]!;
          return (
            <figure key={id} className={beyond ? 'is-beyond' : ''}>
              {heads[i]}
              <div className="footage-picture">
                {areCopies ? (
                  <video ref={player.videos[i]} className="footage-still" src={proxyPath(shootId, id)} aria-label={name} muted playsInline disablePictureInPicture preload="auto" onError={() => setBroken(true)} />
                ) : (
                  <SteadyStill shootId={shootId} clipId={id} frame={frame} width={width} alt={`Frame ${frame} of ${name}`} />
                )}
              </div>
              <figcaption className="footage-quiet">
                frame {frame}
                {beyond && `, ${BEYOND[beyond]}`}
              </figcaption>
            </figure>
          );
        })}
      </div>
      <div className="pair-moves no-print">
        <fieldset className="pair-align">
          <legend>Together at the</legend>
          {(['peak', 'onset', 'first'] as const).map((each) => (
            <label key={each}>
              <input type="radio" name="pair-align" checked={alignment === each} disabled={!possible.includes(each)} onChange={() => { player.seek(0); setWanted(each); }} />
              {MOMENTS[each]}
            </label>
          ))}
        </fieldset>
        <div className="pair-slide">
          <Button look="sign" aria-label="A frame back" title="A frame back" onClick={() => step(-1)}>
            <Icon name="frameBack" />
          </Button>
          <Button look="main" className="clip-play" disabled={!player.canPlay} aria-label={player.isPlaying ? 'Stop both' : 'Play both'} title={player.isPlaying ? 'Stop both' : 'Play both'} onClick={player.toggle}>
            <Icon name={player.isPlaying ? 'stop' : 'play'} />
          </Button>
          <Button look="sign" aria-label="A frame on" title="A frame on" onClick={() => step(1)}>
            <Icon name="frameOn" />
          </Button>
          <input
            type="range"
            aria-label="Moment of both clips"
            aria-valuetext={says}
            min={from_s}
            max={to_s}
            step={step_s}
            value={time_s}
            onChange={(event) => player.seek(Number(event.currentTarget.value))}
          />
          <SpeedChoice speed={player.speed} isOff={!player.canPlay} onChoose={player.setSpeed} />
        </div>
      </div>
      {isWarning && <PlayWarning key={player.warning} says={`${warning ?? 'Whether these clips flash is not known.'} ${FLASHING_HARMS}`} isAgain={player.warning === 'asked-again'} playLabel="Play both" onPlay={() => player.press('play')} onLeave={() => player.press('stop')} />}
      {!isBroken && entries.map((entry) => <CopyState key={entry.id} entry={entry} of={entry.name} onMake={() => onMakeCopy(entry.id)} />)}
      {isBroken && <p className="footage-quiet">This browser cannot play the small copies: stills instead.</p>}
      <p className="pair-time">
        <span className="is-set">{sayOffset(time_s)} on the set</span>
        {screen !== undefined && <span className="is-screen">{sayShown(showQuantity('time', screen, { digits: 2 }))} on the screen</span>}
        <span className="footage-quiet">from the {MOMENTS[alignment]}</span>
      </p>
    </section>
  );
} // prettier-ignore
