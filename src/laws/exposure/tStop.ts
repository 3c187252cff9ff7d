/**
 * T-stops: the f-number of a lens without loss that would pass as much light.
 *
 *     T = N / √τ        N = T · √τ
 *
 * T T-stop        N f-number        τ transmittance of the lens
 *
 * Exposure goes by T. Depth of field and diffraction go by N.
 *
 * @source f-number-article the relation, worked
 * @source t-number-dictionary the same, worked at one stop
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

function transmittanceRoot(transmittanceFraction: number): number {
  requirePositive({ transmittanceFraction });
  requireWithin(0, 1, { transmittanceFraction });
  return Math.sqrt(transmittanceFraction);
}

/** The T-stop of a lens at an f-number. Throws RangeError outside positive inputs or for a transmittance above 1. */
export function tStop({
  fNumber,
  transmittanceFraction,
}: {
  readonly fNumber: number;
  readonly transmittanceFraction: number;
}): number {
  requirePositive({ fNumber });
  return fNumber / transmittanceRoot(transmittanceFraction);
}

/** The f-number of a lens at a T-stop. Throws RangeError outside positive inputs or for a transmittance above 1. */
export function fNumberOfT({
  tStop: marked,
  transmittanceFraction,
}: {
  readonly tStop: number;
  readonly transmittanceFraction: number;
}): number {
  requirePositive({ tStop: marked });
  return marked * transmittanceRoot(transmittanceFraction);
}

const TRANSMITTANCE = { title: 'Transmittance of the lens', as: 'fraction' } as const;
const COMMON = {
  holds: 'On the axis. Towards the edge vignetting takes more.',
  sources: ['f-number-article', 't-number-dictionary'],
  words: ['T-stop', 'f-stop', 'transmission', 'lens loss'],
};

export const tStopOfLens = law(tStop, {
  id: 't-stop',
  title: 'T-stop of an f-number',
  says: 'The stop that exposes, once the glass has taken its share.',
  equation: 'T = N / √τ',
  takes: { fNumber: { title: 'f-number', as: 'fStop' }, transmittanceFraction: TRANSMITTANCE },
  gives: { tStop: { title: 'T-stop', as: 'tStop' } },
  example: { fNumber: 2, transmittanceFraction: 0.75 },
  ...COMMON,
});

export const fNumberOfLens = law(fNumberOfT, {
  id: 'f-number',
  title: 'f-number of a T-stop',
  says: 'The stop that makes depth and diffraction, from the one that exposes.',
  equation: 'N = T · √τ',
  takes: { tStop: { title: 'T-stop', as: 'tStop' }, transmittanceFraction: TRANSMITTANCE },
  gives: { fNumber: { title: 'f-number', as: 'fStop' } },
  example: { tStop: 2 ** 1.5, transmittanceFraction: 0.8 },
  ...COMMON,
});
