/** Which written figures each kind of waveform uses, and what stands in for those left out, as plans take them. */
import { sayShown, showNumber, showQuantity } from '../../../base/quantity.ts';
import { kindOfSuffix, unitSuffix } from '../../../base/kinds.ts';
import { fieldAt } from '../../../document/fieldAt.ts';
import { WAVEFORM_KINDS, type Shoot } from '../../../document/schema.ts';
import { memberOf, type WrittenRecord } from '../../../document/written.ts';
import { FLICKER_DEFAULTS } from '../../../laws/flicker/lamp.ts';
import type { FigureUsed } from '../../../plan/flickerFigures.ts';
import { flickerLamps, type LampTaken } from '../../../plan/flickerLamps.ts';

export type WaveformKind = keyof typeof WAVEFORM_KINDS;

export interface WaveformField {
  /** As it is written under `waveform`. */
  readonly key: string;
  readonly label: string;
  /** The fields that it takes the place of, once it is written. */
  readonly inPlaceOf?: string;
}

const DEPTH: WaveformField = { key: 'depth', label: 'Depth' };
const depthFor = (inPlaceOf: string): WaveformField => ({ key: 'depth', label: 'Depth, where known', inPlaceOf });
const RATE: WaveformField = { key: 'rate', label: 'Pulse rate' };
const LIT: readonly WaveformField[] = [
  { key: 'duty', label: 'Share lit' },
  { key: 'low', label: 'Light between pulses' },
  depthFor('the light between pulses'),
];

/** In the order in which they are asked. */
export const WAVEFORM_FIELDS: Readonly<Record<WaveformKind, readonly WaveformField[]>> = {
  steady: [],
  tungsten: [{ key: 'supply', label: 'Filament made for' }, depthFor('what its heat gives')],
  magnetic: [
    { key: 'floor', label: 'Light at its dimmest' },
    { key: 'exponent', label: 'Peakedness' },
    { key: 'imbalance', label: 'Halves differ by' },
    depthFor('the light at its dimmest'),
  ],
  square: [
    { key: 'rate', label: 'Square-wave rate' },
    { key: 'notch', label: 'Drop at each turn' },
    { key: 'recovery', label: 'Recovers in' },
    depthFor('the drop at each turn'),
  ],
  fluorescent: [{ key: 'lag', label: 'Phosphor glows on' }, depthFor('the glow of its phosphor')],
  'electronic-tube': [DEPTH],
  'led-steady': [DEPTH],
  'led-ripple': [DEPTH, { key: 'shape', label: 'Form of the ripple' }],
  'led-pulses': [RATE, ...LIT],
  'led-interleaved': [RATE, { key: 'channels', label: 'Channels' }, ...LIT],
};

export function kindNamed(written: unknown): WaveformKind | undefined {
  return typeof written === 'string' && Object.hasOwn(WAVEFORM_KINDS, written) ? (written as WaveformKind) : undefined;
}

export const wavePath = (lampId: string, key = '') => `/kit/lamps/${lampId}/waveform${key === '' ? '' : `/${key}`}`;

/** A lamp by itself at full level, as a plan would take it by what is written of it, measurements left aside. */
export function lampAlone(shoot: Shoot, lampId: string): LampTaken | undefined {
  const lamp = shoot.kit.lamps[lampId];
  if (!lamp) return undefined;
  const kit = { ...shoot.kit, lamps: { [lampId]: { ...lamp, measured: {} } } };
  const lighting = { alone: { lamps: { [lampId]: { lamp: lampId, modifiers: [], doors: {} } }, flags: {} } };
  return flickerLamps({ ...shoot, kit, lighting }, 'alone')[0];
}

export interface Standin {
  readonly text: string;
  readonly why: string;
}

/** A figure for eyes: "150 µs", "10 %", "2". */
export function sayFigure({ name, value }: Pick<FigureUsed, 'name' | 'value'>): string {
  const suffix = unitSuffix(name);
  const kind = kindOfSuffix(suffix);
  if (kind !== undefined) return sayShown(showQuantity(kind, value, { digits: 3 }));
  return name.endsWith('Fraction') ? `${showNumber(100 * value, 3)} %` : showNumber(value, 3);
}

/** Whether a figure of the plan is what a field asks for; what takes another's place is asked for nowhere else. */
const isAskedBy = ({ key, inPlaceOf }: WaveformField, lampId: string, { path }: FigureUsed) =>
  inPlaceOf === undefined && path === wavePath(lampId, key);

/** What a plan takes for a figure that is not written, and why; undefined where it is written, or nothing stands in. */
export function standinFor(taken: LampTaken | undefined, lampId: string, field: WaveformField): Standin | undefined {
  if (field.key === 'shape') {
    const { value, note } = FLICKER_DEFAULTS['led-ripple'].shape;
    const of = fieldAt(wavePath(lampId, field.key))?.of;
    return { text: (of?.shape === 'choice' ? memberOf(of.words, value) : undefined) ?? value, why: note };
  }
  const found = taken?.figures.find((figure) => figure.why !== undefined && isAskedBy(field, lampId, figure));
  return found && { text: sayFigure(found), why: found.why! };
}

/** Figures that stand in and have no field among those of the kind, each with where it would be written. */
export function standinsElsewhere(taken: LampTaken | undefined, lampId: string, kind: WaveformKind | undefined): readonly FigureUsed[] {
  const fields = kind === undefined ? [] : WAVEFORM_FIELDS[kind];
  return (taken?.figures ?? []).filter(
    (figure) => figure.why !== undefined && figure.why !== '' && !fields.some((field) => isAskedBy(field, lampId, figure)),
  );
} // prettier-ignore

/** Keys that are written and that this kind does not use. */
export function unusedKeys(kind: WaveformKind | undefined, written: WrittenRecord): readonly string[] {
  const used = new Set(['kind', ...(kind === undefined ? [] : WAVEFORM_FIELDS[kind].map(({ key }) => key))]);
  return Object.keys(written).filter((key) => !used.has(key));
}
