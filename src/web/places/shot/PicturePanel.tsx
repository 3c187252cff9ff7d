import { Panel } from '../../parts/Panel.tsx';
import { CropTable } from './CropTable.tsx';
import { FrameDrawing } from './FrameDrawing.tsx';
import { sharpWords } from './pictureWords.ts';
import { useShot } from './shotContext.ts';
import { SideDrawing } from './SideDrawing.tsx';
import type { SideFigures } from './sideLayout.ts';
import './picture.css';

/** What the drawing's lines mean, where it has them. */
function Legend({ hasSafe, hasHeld }: { readonly hasSafe: boolean; readonly hasHeld: boolean }) {
  if (!hasSafe && !hasHeld) return null;
  return (
    <ul className="picture-legend">
      {hasSafe && (
        <li>
          <svg width="26" height="14" viewBox="0 0 26 14" aria-hidden="true">
            <rect className="crop-safe" x="1" y="1" width="24" height="12" />
          </svg>
          safe area, sure to be seen
        </li>
      )}
      {hasHeld && (
        <li>
          <svg width="26" height="14" viewBox="0 0 26 14" aria-hidden="true">
            <path className="legend-held" d="M-2 14 12 0M4 14 18 0M10 14 24 0M16 14 30 0M22 14 36 0" />
          </svg>
          held back: a crop may move this far
        </li>
      )}
    </ul>
  );
}

function NoReach() {
  const { shotId, follow } = useShot();
  return (
    <p className="picture-lacks">
      <button type="button" onClick={() => follow(`/shots/${shotId}/action/width`)}>
        How far the action reaches
      </button>{' '}
      is not written: the crops are drawn without it.
    </p>
  );
}

/** The shot as it will be framed, and as it stands from the side; nothing until there is a frame width and a mode. */
export function PicturePanels() {
  const { plan, system } = useShot();
  const { picture, settings, margins } = plan;
  if (!picture) return null;
  const { reachWidth_m, reachHeight_m, reframeFraction, crops } = picture;
  const depthWanted_m = margins.find(({ id }) => id === 'depth')?.need;
  const side: SideFigures | undefined =
    settings && settings.workingDistance_m > 0
      ? { ...picture, workingDistance_m: settings.workingDistance_m, ...(depthWanted_m === undefined ? {} : { depthWanted_m }) }
      : undefined;
  const sharp = side && sharpWords(side, system);
  return (
    <>
      <Panel title="The frame" aside="to scale, at the subject" className="picture-panel">
        <div className="picture-frame">
          <FrameDrawing picture={picture} system={system} />
          <div className="picture-figures">
            <CropTable picture={picture} system={system} />
            {reachWidth_m === undefined && reachHeight_m === undefined && <NoReach />}
            <Legend hasSafe={crops.some(({ safeFraction }) => safeFraction !== undefined)} hasHeld={reframeFraction > 0} />
          </div>
        </div>
      </Panel>
      {side && (
        <Panel title="From the side" {...(sharp === undefined ? {} : { aside: `sharp ${sharp}` })} className="picture-panel">
          <SideDrawing figures={side} system={system} />
        </Panel>
      )}
    </>
  );
} // prettier-ignore
