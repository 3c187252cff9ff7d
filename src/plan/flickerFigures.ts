/** The numbers that a lamp's ripple is worked out from, each with where it is written or why it is assumed. */
import { kindOfSuffix, unitSuffix } from '../base/kinds.ts';
import type { Lamp, Shoot } from '../document/schema.ts';
import type { Assumption, Missing } from './types.ts';
import { isUnread } from './unread.ts';

export interface FigureUsed {
  readonly name: string;
  readonly title: string;
  readonly value: number;
  readonly path: string;
  /** Why it was taken, where nobody wrote it. */
  readonly why?: string;
}

/** A figure that nobody wrote, as plans tell of it. */
export function assumptionOf({ name, title, value, path, why = '' }: FigureUsed): Assumption {
  return { name, title, value, kind: kindOfSuffix(unitSuffix(name)), why, path };
}

/** A number, or what is missing of it. */
export type Figure = FigureUsed | Missing;

export const isMissing = (figure: Figure): figure is Missing => 'because' in figure;

type Waveform = Lamp['waveform'];

/** Names of the waveform's numbers. */
export type WaveName = Exclude<
  { [K in keyof Waveform]-?: Exclude<Waveform[K], undefined> extends number ? K : never }[keyof Waveform],
  undefined
>;

export interface Otherwise {
  readonly value: number;
  readonly note: string;
}

export interface Wanted {
  readonly name: string;
  readonly title: string;
  readonly path: string;
  readonly value: number | undefined;
  readonly isUnread: boolean;
  readonly otherwise?: Otherwise | undefined;
}

/** A number as written, or as it is assumed, or missing. */
export function figureOf({ name, title, path, value, isUnread: isBad, otherwise }: Wanted): Figure {
  if (value !== undefined) return { name, title, path, value };
  if (isBad || !otherwise) return { name, title, path, because: isBad ? 'unread' : 'absent' };
  return { name, title, path, value: otherwise.value, why: otherwise.note };
}

/** The mains that lamps burn on; what nobody wrote is the 50 Hz of most of the world. */
export function mainsFigure({ shoot: { mains } }: Shoot): Figure {
  return figureOf({
    name: 'mains_Hz',
    title: 'Mains',
    path: '/shoot/mains/frequency',
    value: mains.frequency_Hz,
    isUnread: isUnread(mains, 'frequency'),
    otherwise: { value: 50, note: '50 Hz, while nobody wrote the mains: half the world’s are 60 Hz' },
  });
}

/** How far the mains may be off, by where they come from. @source flicker-practice */
const USUAL_DRIFT = { grid: 0.002, generator: 0.02 } as const;

/** Share of their frequency by which the mains may be off. */
export function mainsDrift({ shoot: { mains } }: Shoot, mains_Hz: number): number {
  if (mains.drift_Hz !== undefined) return Math.min(0.5, mains.drift_Hz / mains_Hz);
  return USUAL_DRIFT[mains.supply ?? 'grid'];
}

/** What laws call a figure, where the form calls it otherwise. */
const LAW_NAMES: Readonly<Record<string, string>> = { colourTemperature_K: 'colour_K', lampSupply_V: 'supply_V' };

/** Reads figures of a lamp's waveform one by one, and keeps them. */
export function waveReader(kitId: string, lamp: Lamp, because: string) {
  const figures: FigureUsed[] = [];
  const missing: Missing[] = [];
  const whose = lamp.title ?? kitId;
  const put = (figure: Figure): number => {
    if (isMissing(figure)) {
      missing.push(figure);
      return NaN;
    }
    figures.push(figure);
    return figure.value;
  };
  const noted = (otherwise: Otherwise | undefined) => otherwise && { ...otherwise, note: because + otherwise.note };
  return {
    figures,
    missing,
    put,
    /** A key of the lamp itself. */
    own: (key: string, read: 'power_W' | 'colourTemperature_K', title: string, otherwise?: Otherwise): number =>
      put(
        figureOf({
          name: `${kitId}.${LAW_NAMES[read] ?? read}`,
          title: `${title} of ${whose}`,
          path: `/kit/lamps/${kitId}/${key}`,
          value: lamp[read],
          isUnread: isUnread(lamp, key),
          otherwise,
        }),
      ),
    /** A key of its waveform. */
    wave: (key: string, read: WaveName, title: string, otherwise?: Otherwise): number =>
      put(
        figureOf({
          name: `${kitId}.${LAW_NAMES[read] ?? read}`,
          title: `${title} of ${whose}`,
          path: `/kit/lamps/${kitId}/waveform/${key}`,
          value: lamp.waveform[read],
          isUnread: isUnread(lamp.waveform, key),
          otherwise: noted(otherwise),
        }),
      ),
    /** Whether a key of its waveform is written, or meant to be. */
    has: (key: string, read: WaveName): boolean =>
      lamp.waveform[read] !== undefined || isUnread(lamp.waveform, key),
  };
} // prettier-ignore

export type WaveReader = ReturnType<typeof waveReader>;
