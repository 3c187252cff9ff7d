import { sayShown, showNumber, showQuantity } from '../../../base/quantity.ts';
import type { FlickerLamp } from '../../../plan/types.ts';
import { AssumedMark } from '../../parts/AssumedMark.tsx';

const percent = (fraction: number) => `${showNumber(100 * fraction, 2)} %`;

function rippleWords({ ripple_Hz, depthFraction, unknown }: FlickerLamp): string {
  if (unknown !== undefined) return unknown;
  if (ripple_Hz === 0) return 'steady';
  return `${percent(depthFraction)} deep, ${sayShown(showQuantity('frequency', ripple_Hz, { digits: 4 }))}`;
}

/** Every burning lamp with its share of the light, what it is taken for, and how sure that is. */
export function LampShares({ lamps }: { readonly lamps: readonly FlickerLamp[] }) {
  return (
    <div className="lamp-shares">
      <table>
        <caption className="hidden-text">The lamps, their share of the light, and how each ripples by itself</caption>
        <thead>
          <tr>
            <th scope="col">Lamp</th>
            <th scope="col">Share</th>
            <th scope="col">Taken for</th>
            <th scope="col">By itself</th>
          </tr>
        </thead>
        <tbody>
          {lamps.map((lamp) => (
            <tr key={lamp.id} className={lamp.unknown === undefined ? undefined : 'is-unknown'}>
              <th scope="row">{lamp.title}</th>
              <td className="lamp-share">
                <span className="lamp-share-bar" aria-hidden="true">
                  <span style={{ inlineSize: `${Math.min(100, 100 * lamp.shareFraction)}%` }} />
                </span>
                {percent(lamp.shareFraction)}
              </td>
              <td>
                {lamp.says}{' '}
                <span className={`lamp-basis is-${lamp.basis}`}>
                  {lamp.basis}
                  {lamp.assumed.length > 0 && lamp.basis !== 'assumed' && ', in part assumed'}
                  {lamp.assumed.length > 0 && <AssumedMark />}
                </span>
              </td>
              <td>{rippleWords(lamp)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
