import type { UnitSystem } from '../../../base/quantity.ts';
import type { Picture } from '../../../plan/types.ts';
import { StateWord } from '../../parts/StateWord.tsx';
import { strokeOf } from './FrameDrawing.tsx';
import { standingsOf, type CropStanding } from './frameLayout.ts';
import { leftWords, sizeWords } from './pictureWords.ts';

export interface CropTableProps {
  readonly picture: Picture;
  readonly system: UnitSystem;
}

function Standing({ state }: Pick<CropStanding, 'state'>) {
  if (state === 'unknown') return <StateWord standing="unknown" word="no reach" />;
  if (state === 'cut') return <StateWord standing="short" word="cut" />;
  return (
    <>
      <StateWord standing="spare" word="whole" />
      {state === 'over-safe' && <small>past its safe area</small>}
    </>
  );
}

/** The figures of every crop: what it shows, what is left beside the action, and whether it holds it. */
export function CropTable({ picture, system }: CropTableProps) {
  const { fieldWidth_m, fieldHeight_m, reachWidth_m, reachHeight_m } = picture;
  return (
    <table className="crop-table">
      <caption className="hidden-text">What each crop shows, and what is left beside the action</caption>
      <thead>
        <tr>
          <th scope="col">Crop</th>
          <th scope="col">Shows</th>
          <th scope="col">Left, each side</th>
          <th scope="col">above, below</th>
          <th scope="col" className="crop-state">
            <span className="hidden-text">Holds the action</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {standingsOf(picture).map(({ crop, leftAcross_m, leftUp_m, state }, i) => (
          <tr key={crop.deliverable} className={state === 'cut' ? 'is-cut' : undefined}>
            <th scope="row">
              <svg width="26" height="10" viewBox="0 0 26 10" aria-hidden="true">
                <path className="crop-stroke" d="M1 5h24" strokeDasharray={strokeOf(i)} />
              </svg>
              {crop.title}
              <span className="crop-state-beneath">
                <Standing state={state} />
              </span>
            </th>
            <td>{sizeWords(crop.width_m, crop.height_m, system)}</td>
            <td className={(leftAcross_m ?? 0) < 0 ? 'is-less' : undefined}>{leftWords(leftAcross_m, system)}</td>
            <td className={(leftUp_m ?? 0) < 0 ? 'is-less' : undefined}>{leftWords(leftUp_m, system)}</td>
            <td className="crop-state">
              <Standing state={state} />
            </td>
          </tr>
        ))}
        <tr className="crop-whole">
          <th scope="row">
            <svg width="26" height="10" viewBox="0 0 26 10" aria-hidden="true">
              <rect className="field-whole" x="1" y="1" width="24" height="8" />
            </svg>
            Recorded
          </th>
          <td>{sizeWords(fieldWidth_m, fieldHeight_m, system)}</td>
        </tr>
        {reachWidth_m !== undefined && reachHeight_m !== undefined && (
          <tr className="crop-reach">
            <th scope="row">
              <svg width="26" height="10" viewBox="0 0 26 10" aria-hidden="true">
                <rect className="reach-whole" x="1" y="1" width="24" height="8" />
                <rect className="reach-edge" x="1" y="1" width="24" height="8" rx="2" />
              </svg>
              Action
            </th>
            <td>{sizeWords(reachWidth_m, reachHeight_m, system)}</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}
