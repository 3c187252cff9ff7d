import { showQuantity, showSigned } from '../../../base/quantity.ts';
import { Figure } from '../../parts/Figure.tsx';
import { StateShape } from '../../parts/StateWord.tsx';
import { MISFIT_TOLD_FRACTION, sayMisfit, type ModeFit, type TimingGroup } from './modeTiming.ts';
import { WhatRows } from './WhatRows.tsx';

const percent = (fraction: number) => fraction * 100;

/** The plot reaches at least this far, so that nothing looks large that is not. */
const LEAST_REACH_fraction = 0.1;

function reachOf(fits: readonly ModeFit[]): number {
  const most = Math.max(LEAST_REACH_fraction, ...fits.map(({ misfitFraction }) => Math.abs(misfitFraction)));
  return Math.ceil(most * 20) / 20;
}

/** Each format as a dot: how much faster or slower than the model it is listed. */
function Misfits({ fits }: { readonly fits: readonly ModeFit[] }) {
  const reach = reachOf(fits);
  const placed = (fraction: number) => `${50 + (fraction / reach) * 50}%`;
  return (
    <div className="misfits">
      <div className="misfit is-scale" aria-hidden="true">
        <span />
        <span className="misfit-track">
          {[-reach, 0, reach].map((at) => (
            <span key={at} className="misfit-tick" style={{ left: placed(at) }}>
              {at === 0 ? 'as the model' : `${showSigned(percent(at), 0)} %`}
            </span>
          ))}
        </span>
        <span />
      </div>
      <ul>
        {fits.map(({ id, widthCount, heightCount, rate_fps, misfitFraction, isOff }) => (
          <li key={id} className={`misfit${isOff ? ' is-off' : ''}`}>
            <span className="misfit-name">
              {widthCount} × {heightCount} <Figure {...showQuantity('rate', rate_fps)} />
            </span>
            <span className="misfit-track" aria-hidden="true">
              <span
                className="misfit-band"
                style={{ left: placed(-MISFIT_TOLD_FRACTION), right: `${50 - (MISFIT_TOLD_FRACTION / reach) * 50}%` }}
              />
              <span className="misfit-zero" />
              <span className="misfit-dot" style={{ left: placed(misfitFraction) }} />
            </span>
            <span className="misfit-says">
              {showSigned(percent(misfitFraction), 1)} %
              {isOff && (
                <span className="misfit-word">
                  <StateShape standing="tight" /> check
                </span>
              )}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function titleOf({ binningCount, widthCount }: TimingGroup, isOnly: boolean): string {
  const parts = [
    widthCount !== undefined && !isOnly && `${widthCount} across`,
    binningCount > 1 && `binned by ${binningCount}`,
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'Against the rows model' : `Against the rows model, ${parts.join(', ')}`;
}

function Group({
  cameraId,
  group,
  isOnly,
}: {
  readonly cameraId: string;
  readonly group: TimingGroup;
  readonly isOnly: boolean;
}) {
  const { timing, fits, isTested } = group;
  const off = fits.filter(({ isOff }) => isOff);
  return (
    <section className="mode-timing">
      <h3>{titleOf(group, isOnly)}</h3>
      <p className="kit-says">
        A sensor read row by row takes one time for each row and some besides. Most of the listed rates agree on these:
      </p>
      <dl className="kit-figures">
        <div>
          <dt>Each row</dt>
          <dd>
            <Figure size="big" {...showQuantity('time', timing.rowTime_s)} />
          </dd>
        </div>
        <div>
          <dt>Each frame besides</dt>
          <dd>
            <Figure size="big" {...showQuantity('time', timing.overhead_s)} />
          </dd>
        </div>
        <div>
          <dt>Fitted to</dt>
          <dd>
            <Figure size="big" number={String(fits.length)} unit={fits.length === 1 ? 'format' : 'formats'} />
          </dd>
        </div>
      </dl>
      {isTested ? (
        <Misfits fits={fits} />
      ) : (
        <p className="kit-says">Two heights make the model and test nothing: a third would.</p>
      )}
      {off.map((fit) => (
        <p key={fit.id} className="misfit-sentence">
          <StateShape standing="tight" /> {sayMisfit(fit)}
        </p>
      ))}
      <WhatRows cameraId={cameraId} group={group} />
    </section>
  );
}

/** The formats of a camera held against the rows model, a group at a time. */
export function ModeTiming({ cameraId, groups }: { readonly cameraId: string; readonly groups: readonly TimingGroup[] }) {
  return groups.map((group) => (
    <Group
      key={`${group.binningCount} ${group.widthCount ?? ''}`}
      cameraId={cameraId}
      group={group}
      isOnly={groups.length === 1}
    />
  ));
} // prettier-ignore
