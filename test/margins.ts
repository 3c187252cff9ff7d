/** Margins for tests of what is printed of them. */
import type { Margin } from '../src/plan/types.ts';

/** A margin known and to spare, with whatever is given instead. */
export function marginLike(given: Partial<Margin> = {}): Margin {
  return {
    id: 'light',
    title: 'Light',
    isHard: false,
    state: 'spare',
    kind: 'illuminance',
    sense: 'at-least',
    have: 96_000,
    need: 41_000,
    spare: 55_000,
    stops: { value: 1.2, low: 1, high: 1.4 },
    path: '/lighting/key/illuminance',
    haveName: 'illuminance_lx',
    needName: 'lightNeeded_lx',
    missing: [],
    assumed: [],
    ...given,
  };
}

/** A margin that lacks one input. */
export function unknownMargin(given: Partial<Margin> = {}): Margin {
  const { have: _have, need: _need, spare: _spare, stops: _stops, ...rest } = marginLike(given);
  return {
    ...rest,
    state: 'unknown',
    missing: [{ name: 'frameWidth_m', title: 'Frame width', path: '/shots/a/frameWidth', because: 'absent' }],
    ...given,
  };
}
