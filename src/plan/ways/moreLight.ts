/** Bring the set-up's light to what is needed. */
import { writeQuantity } from '../../base/quantity.ts';
import { hasLamps } from '../lighting.ts';
import { roundedUp } from '../settable.ts';
import { alsoLights, type Move } from './move.ts';
import { say } from './words.ts';

export const moreLight: Move = {
  id: 'more-light',
  closes: ['light', 'noise'],
  propose({ shoot, shotId, effective, margin, lack_stops, number }) {
    const setupId = effective.shot.lighting;
    const kind = Number.isNaN(number('lightNeeded_lx')) ? 'luminance' : 'illuminance';
    const have = number(kind === 'illuminance' ? 'illuminance_lx' : 'luminance_cd_per_m2');
    if (setupId === undefined || !(have > 0)) return [];
    // Lamps that nobody has read yet are moved, not wished brighter.
    const setup = shoot.lighting[setupId];
    if (hasLamps(setup) && (kind === 'illuminance' ? setup.illuminance_lx : setup.luminance_cd_per_m2) === undefined) return [];
    const need = margin.id === 'light' ? number(kind === 'illuminance' ? 'lightNeeded_lx' : 'lightNeeded_cd_per_m2') : have * 4 ** lack_stops;
    const light = roundedUp(need);
    const title = shoot.lighting[setupId]?.title ?? setupId;
    return [
      {
        title: `Bring ${title} to ${say(kind, light)}`,
        says: `lamps, power and heat to match${alsoLights({ shoot, shotId }, setupId)}`,
        patch: [
          { op: 'add', path: `/lighting/${setupId}/${kind}`, value: writeQuantity(kind, light) },
          // Light that is wished for has not been read on the set.
          ...(shoot.lighting[setupId]?.reading === 'metered' ? [{ op: 'add' as const, path: `/lighting/${setupId}/reading`, value: 'stated' }] : []),
        ],
        gives_stops: Math.log2(light / have),
      },
    ];
  },
}; // prettier-ignore
