import { showNumber, showQuantity } from '../../../base/quantity.ts';
import { Figure } from '../../parts/Figure.tsx';
import { lightFigures } from './lightFigures.ts';
import type { Waveform } from '../../../laws/flicker/waveform.ts';

const percent = (fraction: number) => ({ number: showNumber(100 * fraction, 2), unit: '%' });

/** "0.012 stops" of a swing, which may be without limit. */
export const swingShown = (stops: number) =>
  stops === Infinity ? { number: 'no limit', unit: '' } : { number: showNumber(stops, 2), unit: 'stops' };

/** What a period of light comes to: its ripple and swing, and the two figures by which lamps are rated. */
export function LightFacts({ waveform }: { readonly waveform: Waveform }) {
  const { ripple_Hz, depthFraction, swing_stops, flickerIndexRatio } = lightFigures(waveform);
  return (
    <>
      <dl className="light-figures">
        <div>
          <dt>Ripple</dt>
          <dd>
            {ripple_Hz === undefined ? 'none' : <Figure {...showQuantity('frequency', ripple_Hz, { digits: 5 })} />}
          </dd>
        </div>
        <div>
          <dt>Dimmest to brightest</dt>
          <dd>
            <Figure {...swingShown(swing_stops)} />
          </dd>
        </div>
        <div>
          <dt>Percent flicker</dt>
          <dd>
            <Figure {...percent(depthFraction)} />
          </dd>
        </div>
        <div>
          <dt>Flicker index</dt>
          <dd>
            <Figure number={showNumber(flickerIndexRatio, 2)} unit="" />
          </dd>
        </div>
      </dl>
      <p className="light-for-people">
        Percent flicker and flicker index are for people in a room, not for footage: the frames are judged shot by shot.
      </p>
    </>
  );
}
