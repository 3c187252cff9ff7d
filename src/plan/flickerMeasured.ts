/** Which measurement of a lamp holds as it stands: the one at this level, colour and supply, and no other. */
import { sayList } from '../base/sayList.ts';
import type { Lamp, MeasuredLamp, PlacedLamp, Shoot } from '../document/schema.ts';
import type { Waveform } from '../laws/flicker/waveform.ts';
import type { Missing } from './types.ts';
import { isUnread } from './unread.ts';
import { waveformsTold } from './waveforms.ts';

/** A measurement that holds. */
export interface MeasuredMatch {
  readonly path: string;
  readonly says: string;
  readonly waveform: Waveform;
  /** Of the file: two lamps measured by one record keep step as it does. */
  readonly sha256: string;
  readonly isMainsLocked: boolean;
}

export type Measured =
  | { readonly is: 'none' }
  | { readonly is: 'match'; readonly match: MeasuredMatch }
  | { readonly is: 'unknown'; readonly unknown: string; readonly missing: Missing };

export interface MeasuredAsked {
  readonly shoot: Shoot;
  readonly kitId: string;
  readonly lamp: Lamp;
  readonly placed: PlacedLamp;
  readonly title: string;
  readonly mains_Hz: number;
}

/** Levels are set, and measured, to about this. */
const SAME_LEVEL = 0.005;

/** A ripple this near to a multiple of the mains is one. */
const SAME_RIPPLE = 0.01;

/** Multiples of the mains that lamps ripple at. */
const MOST_MULTIPLE = 12;

/** Mains there are. */
const MAINS_Hz = [50, 60];

const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`;

/** The multiple of the mains that a period is, where it is one. */
export function multipleOf(period_s: number, mains_Hz: number): number | undefined {
  const times = 1 / (period_s * mains_Hz);
  const whole = Math.round(times);
  return whole >= 1 && whole <= MOST_MULTIPLE && Math.abs(times / whole - 1) <= SAME_RIPPLE ? whole : undefined;
}

/** The measurement of a lamp that holds as it is placed. */
export function measuredFor(asked: MeasuredAsked): Measured {
  const { shoot, kitId, lamp, placed, title } = asked;
  const all = Object.entries(lamp.measured);
  if (all.length === 0) return { is: 'none' };
  const level = placed.levelFraction ?? 1;
  const colour_K = placed.colourTemperature_K ?? lamp.colourTemperature_K;
  const supply = shoot.shoot.mains.supply ?? 'grid';
  const holds = (of: MeasuredLamp): boolean =>
    !['level', 'colour', 'supply'].some((key) => isUnread(of, key)) &&
    Math.abs((of.levelFraction ?? 1) - level) < SAME_LEVEL &&
    (of.colourTemperature_K ?? lamp.colourTemperature_K) === colour_K &&
    (of.supply ?? 'grid') === supply;
  const found = all.find(([, of]) => holds(of));
  const name = `${kitId}.measured`;
  if (!found) {
    const at = sayList(all.map(([, of]) => describe(of, lamp)));
    const here = describe({ levelFraction: level, colourTemperature_K: colour_K, supply }, {});
    const unknown = `measured at ${at}, not at ${here}: how it is set may change how it ripples`;
    return { is: 'unknown', unknown, missing: { name, title: `Light over time of ${title}, at ${here}`, path: `/kit/lamps/${kitId}/measured`, because: 'absent' } }; // prettier-ignore
  }
  return read(asked, ...found);
}

/** How a lamp is set, or was as it was measured. */
type SetAs = { readonly [K in 'levelFraction' | 'colourTemperature_K' | 'supply']?: MeasuredLamp[K] | undefined };

/** "full level, 5600 K, on a generator". */
function describe(
  { levelFraction = 1, colourTemperature_K, supply = 'grid' }: SetAs,
  lamp: Pick<Lamp, 'colourTemperature_K'>,
): string {
  const level = Math.abs(levelFraction - 1) < SAME_LEVEL ? 'full level' : percent(levelFraction);
  const colour_K = colourTemperature_K ?? lamp.colourTemperature_K;
  return [level, ...(colour_K === undefined ? [] : [`${colour_K} K`]), ...(supply === 'grid' ? [] : [`on a ${supply}`])].join(', ');
} // prettier-ignore

/** The period of a measurement, held to the mains where the lamp keeps step with them. */
function read({ shoot, kitId, title, lamp, mains_Hz }: MeasuredAsked, id: string, of: MeasuredLamp): Measured {
  const path = `/kit/lamps/${kitId}/measured/${id}`;
  const name = `${kitId}.measured`;
  const lack = (unknown: string, at: string, because: Missing['because'], what?: string): Measured => ({
    is: 'unknown',
    unknown,
    missing: { name, title: `Light over time of ${title}`, path: at, because, ...(what === undefined ? {} : { what }) },
  });
  const file = of.file === undefined ? undefined : shoot.files[of.file];
  if (!file) return lack('the file of its measurement is not named', `${path}/file`, isUnread(of, 'file') ? 'unread' : 'absent'); // prettier-ignore
  const { sha256 = '', name: fileName = of.file! } = file;
  const told = waveformsTold(shoot);
  const waveform = told?.files.get(sha256);
  if (!waveform) {
    const what = told?.unread.get(sha256) ?? `${fileName} has not been read here, or is no record of light over time`;
    return lack(what, `${path}/file`, 'refused', what);
  }
  const says = `as measured at ${describe(of, lamp)}`;
  const own = (): Measured => ({ is: 'match', match: { path, says, waveform, sha256, isMainsLocked: false } });
  if (of.hasOwnRate === true) return own();
  const multiple = multipleOf(waveform.period_s, mains_Hz);
  if (multiple !== undefined) {
    const locked = { period_s: 1 / (multiple * mains_Hz), samples: waveform.samples };
    return { is: 'match', match: { path, says, waveform: locked, sha256, isMainsLocked: true } };
  }
  const other_Hz = MAINS_Hz.find((of_Hz) => multipleOf(waveform.period_s, of_Hz) !== undefined);
  if (other_Hz === undefined) return own();
  const what = `it was measured on mains of ${other_Hz} Hz, and these are of ${mains_Hz} Hz; a lamp that keeps a rate of its own says so with ownRate`;
  return lack(what, `${path}/ownRate`, 'refused', what);
}
