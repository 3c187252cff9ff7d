/** Where the swing of a shot's frames came from: lamp by lamp, down to what somebody wrote, measured or assumed. */
import { kindOfSuffix, unitSuffix } from '../base/kinds.ts';
import type { Shoot } from '../document/schema.ts';
import { exposedRipple } from '../laws/flicker/exposure.ts';
import { tungstenDepth } from '../laws/flicker/filament.ts';
import type { AnyLaw } from '../laws/law.ts';
import { shotFlickerOf } from './flicker.ts';
import type { FigureUsed } from './flickerFigures.ts';
import { gather, seenOf } from './flickerGroups.ts';
import type { LampTaken } from './flickerLamps.ts';
import { SWING, swingSaid } from './flickerMargin.ts';
import type { FlickerWorked } from './shotFlicker.ts';
import type { FlickerLamp, Trace } from './types.ts';

export interface FlickerTraced extends FlickerWorked {
  readonly shoot: Shoot;
  readonly setupId: string;
  /** The trace of a number of the shot's model. */
  readonly traceOf: (name: string) => Trace;
}

/** Numbers of the shot that decide how its frames meet the light. */
const ASKED = ['captureRate_fps', 'exposureTime_s', 'playRate_fps', 'recordedTime_s'] as const;

const choice = (says: string): Trace['origin'] => ({ by: 'choice', says });
const written = (path: string): Trace['origin'] => ({ by: 'document', path });

function node(name: string, title: string, value: number | undefined, origin: Trace['origin'], inputs: readonly Trace[] = []): Trace {
  const suffix = unitSuffix(name);
  const plain = name.endsWith('Count') ? 'count' : 'fraction';
  return { name, title, value, kind: kindOfSuffix(suffix), ...(suffix === '' ? { as: plain } : {}), origin, inputs };
} // prettier-ignore

/** A number that a law gives from these, each named as the law names it after the last point. */
function byLaw({ id, title, equation, sources, compute }: AnyLaw, name: string, says: string, inputs: readonly Trace[], result?: string): Trace {
  const given = Object.fromEntries(inputs.map((input) => [input.name.split('.').at(-1)!, input.value ?? NaN]));
  const worked = (compute as (of: object) => number | Readonly<Record<string, number>>)(given);
  const value = typeof worked === 'number' ? worked : worked[result!];
  return node(name, says, value, { by: 'law', law: id, title, equation, sources }, inputs);
} // prettier-ignore

function figureTrace({ name, title, value, path, why }: FigureUsed): Trace {
  return node(name, title, value, why === undefined ? written(path) : { by: 'assumption', why, path });
}

/** What a lamp does by itself, before any exposure. */
function rippleTrace(taken: LampTaken, { depthFraction, says, title: whose }: FlickerLamp): Trace {
  const { kitId, figures, measuredPath } = taken;
  const name = `${taken.id}.depthFraction`;
  const title = `Ripple of ${whose} by itself: ${says}`;
  const inputs = figures.map(figureTrace);
  if (measuredPath !== undefined) return node(name, title, depthFraction, written(measuredPath));
  if (inputs.length === 0) return node(name, title, depthFraction, written(`/kit/lamps/${kitId}/waveform/kind`));
  const named = (of: string): Trace | undefined => inputs.find((input) => input.name === of);
  const filament = ['power_W', 'supply_V', 'colour_K'].map((key) => named(`${kitId}.${key}`));
  const [mains, level] = [named('mains_Hz'), named(`${kitId}.levelFraction`)];
  if (!mains || level || filament.includes(undefined)) return node(name, title, depthFraction, choice('the waveform of its kind, from the figures below'), inputs); // prettier-ignore
  const [power, supply, colour] = filament as [Trace, Trace, Trace];
  const bound = byLaw(tungstenDepth, `${taken.id}.boundDepthFraction`, 'What the heat balance gives it, at most', [power, mains, supply, colour], 'depthFraction'); // prettier-ignore
  return node(name, title, depthFraction, choice('the share of it that handbooks print'), [bound, named(`${kitId}.boundFraction`)!]); // prettier-ignore
}

/** How often it ripples. */
function rateTrace(taken: LampTaken, { ripple_Hz, title }: FlickerLamp): Trace {
  const name = `${taken.id}.ripple_Hz`;
  const [mains] = taken.figures.filter((figure) => figure.name === 'mains_Hz');
  const own = taken.figures.find((figure) => figure.name === `${taken.kitId}.ownRate_Hz`);
  const of = own ?? mains;
  if (taken.measuredPath !== undefined || !of) return node(name, `Ripple of ${title}`, ripple_Hz, written(taken.measuredPath ?? `/kit/lamps/${taken.kitId}/waveform/kind`)); // prettier-ignore
  const says = taken.hasUnknownRate === true ? 'the rate near it that this exposure shows most' : own ? 'as its kind ripples at that rate' : 'as its kind ripples on these mains'; // prettier-ignore
  return node(name, `Ripple of ${title}`, ripple_Hz, choice(says), [figureTrace(of)]);
}

function lampTrace(of: FlickerTraced, taken: LampTaken, told: FlickerLamp): Trace {
  const { found, at, shoot, setupId, traceOf } = of;
  const { id, title } = told;
  const placed = shoot.lighting[setupId]?.lamps[id];
  const isRead = placed?.shareFraction !== undefined;
  const path = `/lighting/${setupId}/lamps`;
  const share = node(`${id}.shareFraction`, `Share of ${title} in the light that counts`, found.shares.get(id) ?? (found.shares.size > 0 ? 0 : undefined), written(isRead ? `${path}/${id}/share` : path)); // prettier-ignore
  const name = `${id}.swing_stops`;
  const head = `${title}, ${told.basis}`;
  if (told.unknown !== undefined) return node(name, head, undefined, choice(`not known: ${told.unknown}`), [share]);
  const phase = placed?.mainsPhaseCount === undefined ? [] : [node(`${id}.mainsPhaseCount`, `Phase of the mains that feeds ${title}`, taken.phase + 1, written(taken.phasePath))]; // prettier-ignore
  const inputs = [share, ...phase, rippleTrace(taken, told)];
  const lit = found.lit.find(({ taken: { id: of_id } }) => of_id === id);
  if (!lit || !at) return node(name, head, undefined, choice('it gives no light there, or not every lamp is known'), inputs); // prettier-ignore
  const alone = gather([{ ...lit, shareFraction: 1 }], 'lamp', at, found.mains_Hz);
  const swing_stops = swingSaid(seenOf(alone, at).worst);
  const left = told.ripple_Hz > 0 ? [byLaw(exposedRipple, `${id}.exposedFraction`, 'Share of its ripple that the shutter leaves', [rateTrace(taken, told), traceOf('exposureTime_s')])] : []; // prettier-ignore
  return node(name, `${head}, alone`, swing_stops, choice('its light summed over every exposure, from the dimmest to the brightest frame'), [...inputs, ...left]); // prettier-ignore
}

/** The trace of the swing of a shot's frames. */
export function flickerTrace(of: FlickerTraced): Trace {
  const { found, at, traceOf } = of;
  const told = shotFlickerOf(found, at).lamps;
  return node(
    SWING,
    'Swing of the light from frame to frame',
    found.seen && swingSaid(found.seen.worst),
    choice('each lamp’s light summed over every exposure; from the dimmest to the brightest frame, where the first falls worst; lamps that keep no step at their worst together'), // prettier-ignore
    [...ASKED.map(traceOf), ...found.lamps.map((taken, i) => lampTrace(of, taken, told[i]!))],
  );
}
