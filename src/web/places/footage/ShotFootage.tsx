import { footageHref } from '../../hrefs.ts';
import { Panel } from '../../parts/Panel.tsx';
import { StateWord } from '../../parts/StateWord.tsx';
import { useFootage } from '../../state/useFootage.ts';
import { GoLink } from '../GoLink.tsx';
import { useShot } from '../shot/shotContext.ts';
import { isSynthetic } from './clipGroups.ts';
import { standingOf, worstStanding } from './clipStanding.ts';
import './shotFootage.css';

const MOST_LISTED = 4;

/** The clips of a shot: how many, the worst that was found, and the way to each. */
export function ShotFootage() {
  const { open, shotId, go } = useShot();
  const { state } = useFootage(open);
  const clips = (state?.clips ?? []).filter((clip) => clip.shotId === shotId && !clip.isAside).toReversed();
  const worst = worstStanding(clips);
  if (!worst) return null;
  const more = clips.length - MOST_LISTED;
  return (
    <Panel
      title="Footage"
      className="shot-footage"
      aside={
        <>
          {clips.length === 1 ? '1 clip' : `${clips.length} clips`}
          {clips.length > 1 && (
            <>
              , at worst <StateWord standing={worst.standing} word={worst.word} />
            </>
          )}
        </>
      }
    >
      <ul>
        {clips.slice(0, MOST_LISTED).map((clip) => {
          const { standing, word } = standingOf(clip);
          return (
            <li key={clip.id}>
              <GoLink href={footageHref(open.id, clip.id)} onGo={go}>
                {clip.name}
              </GoLink>
              {isSynthetic(clip) && <span className="shot-footage-made">synthetic</span>}
              <StateWord standing={standing} word={word} />
            </li>
          );
        })}
      </ul>
      {more > 0 && (
        <GoLink href={footageHref(open.id)} onGo={go}>
          {more} more on Footage
        </GoLink>
      )}
    </Panel>
  );
}
