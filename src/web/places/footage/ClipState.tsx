import type { ClipEntry, ClipJob } from '../../../record/footage.ts';
import { StateWord } from '../../parts/StateWord.tsx';
import { standingOf } from './clipStanding.ts';
import { sayTimeLeft } from './timeLeft.ts';
import { useTimeLeft } from './useTimeLeft.ts';

function Progress({ job }: { readonly job: ClipJob }) {
  const left_s = useTimeLeft(job);
  const { done, total } = job;
  const share = total === undefined || total === 0 ? undefined : Math.min(1, done / total);
  const says = share === undefined ? `${done} frames` : `${Math.floor(100 * share)} %`;
  return (
    <span className="footage-progress">
      <progress max={1} aria-label="Measured" {...(share === undefined ? {} : { value: share })} />
      <span>
        measuring {says}
        {left_s !== undefined && `, ${sayTimeLeft(left_s)} left`}
      </span>
    </span>
  );
}

/** How a clip stands, and how far measuring it has come. */
export function ClipState({ clip }: { readonly clip: ClipEntry }) {
  const { standing, word, says } = standingOf(clip);
  const { measuring, isAside } = clip;
  const isRunning = measuring?.state === 'running' && !isAside;
  return (
    <div className="footage-state">
      {(clip.brief !== undefined || !isRunning) && <StateWord standing={standing} word={word} />}
      {isRunning && <Progress job={measuring} />}
      {clip.brief && measuring?.state === 'waiting' && <span className="footage-quiet">waiting to be measured</span>}
      {measuring?.state === 'stopped' && !isAside && <span className="footage-quiet">measuring was stopped</span>}
      {says !== undefined && <p className="footage-why">{says}</p>}
    </div>
  );
}
