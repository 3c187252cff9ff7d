/** Every burning lamp of a set-up, and what its light is taken to do over time: measured, stated, assumed or unknown. */
import type { Lamp, PlacedLamp, Shoot } from '../document/schema.ts';
import type { LampFlicker } from '../laws/flicker/lamp.ts';
import { isMissing, mainsFigure, waveReader, type FigureUsed } from './flickerFigures.ts';
import { READ_KINDS, rectifiedRipple, type Made, type WaveKind } from './flickerKinds.ts';
import { measuredFor } from './flickerMeasured.ts';
import { burningLamps } from './flickerShares.ts';
import type { Missing } from './types.ts';
import { isUnread } from './unread.ts';

/** A lamp as it is worked with, whatever that rests on. */
export interface LampTaken {
  readonly id: string;
  readonly title: string;
  readonly kitId: string;
  readonly basis: 'measured' | 'stated' | 'assumed';
  readonly says: string;
  readonly figures: readonly FigureUsed[];
  /** Empty once `lamp` is known. */
  readonly missing: readonly Missing[];
  /** Why nobody knows how it ripples, in half a sentence. */
  readonly unknown?: string;
  /** Which of the mains' phases it burns on, from 0. */
  readonly phase: 0 | 1 | 2;
  readonly phasePath: string;
  /** Lamps of one name ripple in step where they burn on one phase; of others, nobody knows. */
  readonly inStepWith: string;
  readonly lamp?: LampFlicker;
  readonly atBest?: LampFlicker;
  readonly atWorst?: LampFlicker;
  readonly hasUnknownRate?: boolean;
  /** JSON Pointer of the measurement that holds. */
  readonly measuredPath?: string;
}

/** What a kind of lamp is taken for while nobody wrote how it ripples. */
const USUAL: Readonly<Record<NonNullable<Lamp['kind']>, readonly [kind: WaveKind, because: string]>> = {
  tungsten: ['tungsten', ''],
  discharge: ['square', 'nobody wrote how it ripples; taken for an electronic square-wave ballast: '],
  fluorescent: ['fluorescent', 'nobody wrote how it ripples; taken for a magnetic ballast: '],
  led: ['led-pulses', 'nobody wrote how it ripples; taken for pulses: '],
};

/** Kinds that follow the phase of the mains as their physics says; others by how they are made. */
const BY_PHYSICS: ReadonlySet<string> = new Set<WaveKind>(['tungsten', 'magnetic', 'fluorescent']);

/** Kinds that mains of whatever frequency leave alone. */
const OF_OWN_RATE: ReadonlySet<string> = new Set([
  'steady',
  'square',
  'led-pulses',
  'led-interleaved',
  'discharge',
  'led',
]);

const phaseOf = ({ mainsPhaseCount = 1 }: PlacedLamp) => Math.min(2, Math.max(0, Math.round(mainsPhaseCount) - 1)) as 0 | 1 | 2; // prettier-ignore

/** Every lamp of a set-up that burns. Never throws for what somebody wrote. */
export function flickerLamps(shoot: Shoot, setupId: string): readonly LampTaken[] {
  const setup = shoot.lighting[setupId];
  if (!setup) return [];
  return burningLamps(setup.lamps).map(([id, placed]) => lampTaken(shoot, `/lighting/${setupId}/lamps/${id}`, id, placed)); // prettier-ignore
}

function lampTaken(shoot: Shoot, path: string, id: string, placed: PlacedLamp): LampTaken {
  const kitId = placed.lamp ?? '';
  const lamp = shoot.kit.lamps[kitId];
  const title = placed.title ?? lamp?.title ?? id;
  const common = { id, title, kitId, phase: phaseOf(placed), phasePath: `${path}/phase`, inStepWith: kitId, figures: [], missing: [] }; // prettier-ignore
  const unknown = (why: string, missing: readonly Missing[]): LampTaken => ({ ...common, basis: 'assumed', says: 'nobody knows how it ripples', unknown: why, missing }); // prettier-ignore
  const lack = (name: string, what: string, at: string, isBad: boolean): LampTaken =>
    unknown(`${what} is ${isBad ? 'written, but cannot be read' : 'not written'}`, [{ name: `${id}.${name}`, title: `${what} of ${title}`, path: at, because: isBad ? 'unread' : 'absent' }]); // prettier-ignore
  if (!lamp) return lack('lamp', 'the lamp', `${path}/lamp`, isUnread(placed, 'lamp'));
  for (const key of ['level', 'colour', 'phase'] as const) if (isUnread(placed, key)) return lack(key, `its ${key}`, `${path}/${key}`, true); // prettier-ignore
  const mains = mainsFigure(shoot);
  const stated = lamp.waveform.kind;
  if (isMissing(mains) && (Object.keys(lamp.measured).length > 0 || !OF_OWN_RATE.has(stated ?? lamp.kind ?? ''))) return unknown('the mains are not known', [mains]); // prettier-ignore
  const mains_Hz = isMissing(mains) ? NaN : mains.value;
  const measured = measuredFor({ shoot, kitId, lamp, placed, title, mains_Hz });
  if (measured.is === 'unknown') return unknown(measured.unknown, [measured.missing]);
  if (measured.is === 'match') {
    const { waveform, isMainsLocked, says, sha256, path: measuredPath } = measured.match;
    const figures = isMainsLocked && !isMissing(mains) ? [mains] : [];
    return { ...common, basis: 'measured', says, figures, inStepWith: `file ${sha256}`, lamp: { kind: 'measured', waveform, isMainsLocked }, measuredPath }; // prettier-ignore
  }
  const at = `/kit/lamps/${kitId}/waveform`;
  if (isUnread(lamp, 'waveform') || isUnread(lamp.waveform, 'kind')) return lack('waveform', 'how it ripples', `${at}/kind`, true); // prettier-ignore
  if (stated === undefined && lamp.kind === undefined) return lack('waveform', 'how it ripples', `${at}/kind`, isUnread(lamp, 'kind')); // prettier-ignore
  const [kind, because] = stated === undefined ? USUAL[lamp.kind!] : [stated, ''];
  const reader = waveReader(kitId, lamp, because);
  const level = { value: placed.levelFraction ?? 1, path: `${path}/level`, title };
  const readKind = kind === 'led-ripple' && lamp.waveform.shape === 'rectified' ? rectifiedRipple : READ_KINDS[kind];
  const make = readKind({ ...reader, kitId, mains_Hz, supply_V: shoot.shoot.mains.voltage_V, level });
  const made = reader.missing.length > 0 ? undefined : tryMake(make);
  if (!made || typeof made === 'string') {
    const missing: readonly Missing[] = made === undefined ? reader.missing : [{ name: `${kitId}.waveform`, title: `How ${title} ripples`, path: at, because: 'refused', what: made }]; // prettier-ignore
    return unknown(made ?? `${missing[0]!.title} is not known`, missing);
  }
  const figures = [...('mains_Hz' in made.lamp && !isMissing(mains) ? [mains] : []), ...reader.figures];
  return { ...common, basis: stated === undefined && lamp.kind !== 'tungsten' ? 'assumed' : 'stated', inStepWith: BY_PHYSICS.has(kind) ? kind : kitId, figures, ...made }; // prettier-ignore
}

/** What a law refuses is told, not thrown. */
function tryMake(make: () => Made): Made | string {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
}
