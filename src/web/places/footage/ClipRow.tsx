import { showNumber } from '../../../base/quantity.ts';
import type { ClipBrief, ClipEntry } from '../../../record/footage.ts';
import { footageHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import { GoLink } from '../GoLink.tsx';
import { AgainstChips } from './AgainstChips.tsx';
import { isSynthetic } from './clipGroups.ts';
import { ClipState } from './ClipState.tsx';
import { sentencesOf } from './clipStanding.ts';
import { saySize } from './saySize.ts';
import { Still } from './Still.tsx';

export interface ClipRowProps {
  readonly shootId: string;
  readonly clip: ClipEntry;
  /** When it was added, in words. */
  readonly when: string;
  /** The clip that one is being chosen to stand beside; this one, perhaps. */
  readonly pairing: ClipEntry | undefined;
  readonly onGo: (href: string) => void;
  readonly onPair: () => void;
  readonly onCorrect: () => void;
  readonly onMeasure: (isAnew: boolean) => void;
  readonly onStop: () => void;
  readonly onAside: (isAside: boolean) => void;
}

const BASES: Readonly<Record<ClipBrief['frameRateBasis'], string>> = {
  given: 'as you said',
  plan: 'by the plan',
  file: 'by its file, and nobody has said so',
};

function About({ clip, when }: Pick<ClipRowProps, 'clip' | 'when'>) {
  const { brief, size_B } = clip;
  const facts = [
    when,
    size_B !== undefined && saySize(size_B),
    brief && `${brief.width} × ${brief.height}, ${showNumber(brief.frameCount, 6)} frames`,
  ].filter(Boolean);
  return (
    <p className="footage-about">
      {facts.join(' · ')}
      {brief && (
        <>
          {' · '}
          <span className={brief.frameRateBasis === 'file' ? 'is-guess' : ''}>
            taken at {showNumber(brief.frameRate_fps, 5)} fps, {BASES[brief.frameRateBasis]}
          </span>
        </>
      )}
    </p>
  );
}

function MeasureButton({ clip, onMeasure, onStop }: Pick<ClipRowProps, 'clip' | 'onMeasure' | 'onStop'>) {
  const state = clip.measuring?.state;
  const of = (word: string) => ({ 'aria-label': `${word}: ${clip.name}`, children: word });
  if (state === 'running' || state === 'waiting') return <Button {...of('Stop')} onClick={onStop} />;
  if (!clip.isHere) return null;
  if (state === 'stopped') return <Button {...of('Go on measuring')} onClick={() => onMeasure(false)} />;
  const look = clip.brief?.isStale === undefined && clip.brief?.isWhole === true ? 'quiet' : 'plain';
  return <Button look={look} {...of(clip.brief ? 'Measure again' : 'Measure')} onClick={() => onMeasure(true)} />;
}

/** One clip: how it looks at its peak, how it stands, what was found in it, and what can be done with it. */
export function ClipRow({ shootId, clip, when, pairing, onGo, onPair, onCorrect, onMeasure, onStop, onAside }: ClipRowProps) {
  const { id, name, brief, note, isAside, isUnsent } = clip;
  const href = footageHref(shootId, id);
  const frame = brief?.action?.peak ?? 0;
  const isChosen = pairing?.id === id;
  return (
    <li className={`footage-clip${isAside ? ' is-aside' : ''}${isChosen ? ' is-chosen' : ''}`}>
      <GoLink className="footage-picture" href={href} onGo={onGo} tabIndex={-1} aria-hidden="true">
        {isUnsent ? <span className="footage-no-still">not sent yet</span> : <Still shootId={shootId} clipId={id} frame={frame} width={384} alt="" />}
      </GoLink>
      <div className="footage-said">
        <h3>
          <GoLink href={href} onGo={onGo}>
            {name}
          </GoLink>
          {isSynthetic(clip) && <span className="footage-label">synthetic: made up, not filmed</span>}
        </h3>
        <About clip={clip} when={when} />
        <ClipState clip={clip} />
        {brief && !isAside && (
          <>
            <ul className="footage-verdict">
              {sentencesOf(brief).map((says) => (
                <li key={says}>{says}</li>
              ))}
            </ul>
            <AgainstChips against={brief.against} />
          </>
        )}
        {note !== undefined && <p className="footage-note">{note}</p>}
      </div>
      <div className="footage-do no-print">
        {isAside ? (
          <Button aria-label={`Take back: ${name}`} onClick={() => onAside(false)}>
            Take back
          </Button>
        ) : (
          <>
            <MeasureButton clip={clip} onMeasure={onMeasure} onStop={onStop} />
            <Button look="quiet" aria-label={`Correct: ${name}`} onClick={onCorrect}>
              Correct
            </Button>
            {brief && (
              <Button
                look={pairing && !isChosen ? 'main' : 'quiet'}
                aria-label={pairing && !isChosen ? `Beside ${pairing.name}: ${name}` : `Compare: ${name}`}
                aria-pressed={isChosen}
                onClick={onPair}
              >
                {pairing && !isChosen ? 'Beside the other' : 'Compare'}
              </Button>
            )}
            <Button look="quiet" aria-label={`Set aside: ${name}`} onClick={() => onAside(true)}>
              Set aside
            </Button>
          </>
        )}
      </div>
    </li>
  );
} // prettier-ignore
