/** Light and places in words. */
import { sayList } from '../../../base/sayList.ts';
import { showNumber, showQuantity, showSigned, type UnitSystem } from '../../../base/quantity.ts';
import type { PlacedLamp } from '../../../document/schema.ts';
import type { Position } from '../../../document/shape.ts';
import { lengthWords } from '../shot/pictureWords.ts';
import { saidShown } from '../shot/showValue.ts';
import type { MeterCorrection } from '../../../plan/meter.ts';
import type { Edge, KeyRatio } from './findings.ts';
import { azimuth_deg, distance_m, elevation_deg } from './geometry.ts';

export const lightSaid = (illuminance_lx: number, system: UnitSystem): string =>
  saidShown(showQuantity('illuminance', illuminance_lx, { system }));

/** "41.2 klx, 3830 fc": both, for whoever reads either meter. */
export const bothLights = (illuminance_lx: number): string =>
  `${lightSaid(illuminance_lx, 'metric')}, ${lightSaid(illuminance_lx, 'imperial')}`;

export const luminanceSaid = (luminance_cd_per_m2: number, system: UnitSystem): string =>
  saidShown(showQuantity('luminance', luminance_cd_per_m2, { system }));

/** "+0.4 stops", "just enough". */
export function stopsSaid(stops: number): string {
  if (!Number.isFinite(stops)) return stops > 0 ? 'no end of stops' : 'no light';
  const text = showSigned(stops);
  return Number(text.replace('−', '-')) === 0 ? 'just enough' : `${text} ${Math.abs(stops) < 1.05 && Math.abs(stops) > 0.95 ? 'stop' : 'stops'}`;
} // prettier-ignore

const ways = (
  value: number,
  [positive, negative]: readonly [string, string],
  system: UnitSystem,
): string | undefined =>
  Math.abs(value) < 0.0005 ? undefined : `${lengthWords(Math.abs(value), system)} ${value > 0 ? positive : negative}`;

/** "800 mm right, 1.2 m in front, 1.5 m above". */
export function placeSaid({ right_m, away_m, up_m }: Position, system: UnitSystem): string {
  const parts = [
    ways(right_m, ['right', 'left'], system),
    ways(away_m, ['behind', 'in front'], system),
    ways(up_m, ['above', 'below'], system),
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? 'at the subject' : parts.join(', ');
}

const whole = (angle_deg: number): string => `${Math.abs(Math.round(angle_deg))}°`;

/** From where a lamp comes, as the camera sees it: "33° to the right of the camera, 32° up". */
export function bearingSaid(place: Position, cameraAzimuth_deg: number): string {
  const raw = azimuth_deg(place) - cameraAzimuth_deg;
  const turned = ((((raw + 180) % 360) + 360) % 360) - 180;
  const rise = elevation_deg(place);
  const round =
    Math.abs(rise) > 85
      ? ''
      : Math.round(turned) === 0
        ? 'from the camera'
        : Math.abs(Math.round(turned)) === 180
          ? 'from straight behind'
          : `${whole(turned)} to the ${turned > 0 ? 'right' : 'left'} of the camera`;
  const up = Math.round(rise) === 0 ? 'level' : `${whole(rise)} ${rise > 0 ? 'up' : 'down'}`;
  return round === '' ? (rise > 0 ? 'from overhead' : 'from below') : `${round}, ${up}`;
}

/** "3.2:1". */
export const ratioSaid = ({ ratio }: Pick<KeyRatio, 'ratio'>): string =>
  ratio >= 1 ? `${showNumber(ratio, 2)}:1` : `1:${showNumber(1 / ratio, 2)}`;

export const distanceSaid = (place: Position, system: UnitSystem): string => lengthWords(distance_m(place), system);

const EDGES: Readonly<Record<Edge, string>> = { left: 'left', right: 'right', top: 'top', bottom: 'bottom' };

/** "doors: left 20°, below 12°"; nothing where all are open. */
export function doorsSaid({ doorLeft_deg, doorRight_deg, doorTop_deg, doorBottom_deg }: PlacedLamp['doors']): string {
  const sides = [['left', doorLeft_deg], ['right', doorRight_deg], ['above', doorTop_deg], ['below', doorBottom_deg]] as const;
  const said = sides.flatMap(([side, angle_deg]) => (angle_deg === undefined ? [] : [`${side} ${showNumber(angle_deg, 3)}°`]));
  return said.length === 0 ? '' : `doors: ${said.join(', ')}`;
} // prettier-ignore

/** "at the left and the right". */
export function edgesSaid(edges: readonly Edge[]): string {
  if (edges.length === 4) return 'all round';
  return `at ${sayList(edges.map((edge) => `the ${EDGES[edge]}`))}`;
}

/** What the readings do to the map and the lamps: "The reading counts: map and lamps are drawn 0.2 stops darker than written." */
export function correctedSaid(meters: readonly Pick<MeterCorrection, 'kind' | 'stops'>[]): string {
  const parts = meters.flatMap(({ kind, stops }) => {
    const size = Math.abs(stops).toFixed(1);
    const what = kind === 'illuminance' ? 'map and lamps are' : 'the face behind is';
    return Number(size) === 0 ? [] : [`${what} shown ${size} ${size === '1.0' ? 'stop' : 'stops'} ${stops < 0 ? 'darker' : 'brighter'} than written`];
  });
  return parts.length === 0 ? 'The reading counts, and it confirms the lamps as written.' : `The reading counts: ${sayList(parts)}. Read it again once a lamp has moved.`;
} // prettier-ignore

/** What the meter says of the lamps: "The meter reads 0.3 stops less than these lamps promise." */
export function meterSaid(read: number, worked: number): string {
  const stops = Math.log2(read / worked);
  if (Math.abs(stops) < 0.05) return 'The meter reads what these lamps promise.';
  const more = stops > 0 ? 'more' : 'less';
  return `The meter reads ${Math.abs(stops).toFixed(1)} stops ${more} than these lamps promise.`;
}
