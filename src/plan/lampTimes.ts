/** How the burning lamps of a set-up come up and stay: what whoever calls the roll, and whoever wants to put them out, must know. */
import { showQuantity } from '../base/quantity.ts';
import { sayList } from '../base/sayList.ts';
import type { Shoot, Shot } from '../document/schema.ts';
import { warmsOf } from './heat.ts';
import type { LampTimes } from './types.ts';

/** Changes of the light that nobody sees within an hour. */
const UNSEEN_stops = 0.02;

/** Lamps of a set-up that burn and say how they come up, strike again or drift, in the order written. */
export function lampTimesOf({ lighting, kit }: Shoot, setupId: string | undefined): readonly LampTimes[] {
  const setup = setupId === undefined ? undefined : lighting[setupId];
  return Object.entries(setup?.lamps ?? {}).flatMap(([id, { lamp, isOff, title }]): readonly LampTimes[] => {
    const of = lamp === undefined ? undefined : kit.lamps[lamp];
    if (isOff === true || !of) return [];
    const { warmUp_s, restrike_s, drift_stops } = of;
    const times = { ...(warmUp_s === undefined ? {} : { warmUp_s }), ...(restrike_s === undefined ? {} : { restrike_s }), ...(drift_stops === undefined ? {} : { drift_stops }) };
    return Object.keys(times).length === 0 ? [] : [{ id, title: title ?? of.title ?? lamp!, ...times }];
  });
} // prettier-ignore

function time(value_s: number): string {
  const { number, unit } = showQuantity('time', value_s, { digits: 2 });
  return `${number} ${unit}`;
}

const most = (lamps: readonly LampTimes[], of: 'warmUp_s' | 'restrike_s' | 'drift_stops'): number =>
  Math.max(0, ...lamps.map((lamp) => lamp[of] ?? 0));

const named = (lamps: readonly LampTimes[]): string => sayList([...new Set(lamps.map(({ title }) => title))]);

/**
 * What they mean for a product that warms. Lamps are taken to burn in on a stand-in, as crews do, so that their warming
 * up is no part of the light-on time of a take; where nobody wrote that time, the note says so.
 */
export function burnInNotes(shoot: Shoot, shot: Shot, lamps: readonly LampTimes[]): readonly string[] {
  const warmUp_s = most(lamps, 'warmUp_s');
  const isOnProduct = warmUp_s > 0 && warmsOf(shoot, shot) !== undefined && shot.hero.lightOn_s === undefined;
  return isOnProduct ? [`Let the lamps come to full on a stand-in: the light-on time of a take is not written, and on the product those ${time(warmUp_s)} would count as well.`] : [];
} // prettier-ignore

/** The same in sentences, for whoever looks after the light. */
export function lampNotes(lamps: readonly LampTimes[]): readonly string[] {
  const [warmUp_s, restrike_s, drift_stops] = [most(lamps, 'warmUp_s'), most(lamps, 'restrike_s'), most(lamps, 'drift_stops')];
  const slow = lamps.filter((lamp) => (lamp.warmUp_s ?? 0) > 0);
  const again = lamps.filter((lamp) => (lamp.restrike_s ?? 0) > 0);
  const drifting = lamps.filter((lamp) => (lamp.drift_stops ?? 0) > UNSEEN_stops);
  return [
    ...(warmUp_s > 0 ? [`Lamps to full ${time(warmUp_s)} before the roll: ${named(slow)} ${slow.length > 1 ? 'take' : 'takes'} ${slow.length > 1 ? 'up to ' : ''}that long to steady.`] : []),
    ...(restrike_s > 0 ? [`Do not put ${named(again)} out between takes: ${time(restrike_s)} before ${again.length > 1 ? 'the last of them lights' : 'it lights'} again. Flag or turn away instead.`] : []),
    ...(drift_stops > UNSEEN_stops ? [`${named(drifting)} still ${drifting.length > 1 ? 'change' : 'changes'} by up to ${drift_stops.toFixed(drift_stops < 0.1 ? 2 : 1)} stops in an hour: read the light again before what must match.`] : []),
  ];
} // prettier-ignore
