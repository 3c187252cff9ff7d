/** What a shot's model is given: each number with the key it was written under, its spread, or why it is assumed. */
import { ratioOf, type Rational } from '../base/rational.ts';
import { isLeftOut, spreadKey } from '../document/read.ts';
import {
  SHOT_FIELDS,
  type Attachment,
  type Camera,
  type Lens,
  type Mode,
  type Shoot,
  type Shot,
  type ShotDefaults,
} from '../document/schema.ts';
import type { FieldTable } from '../document/shape.ts';
import { realTimeOfProfile_s, slowestSpeed } from '../laws/time/profile.ts';
import { eventOf } from './events.ts';
import { hasGlare } from './eyes.ts';
import { warmsOf } from './heat.ts';
import { hasLamps, lightOfSetup, type View } from './lighting.ts';
import { correctionSaid, meteredLight, usualReadingSpread } from './meter.ts';
import { goodShare, keptTakes, piecesElsewhere, unreadTakes } from './takes.ts';
import type { Structure } from './shotModel.ts';
import { timingStructureOf } from './timing/structure.ts';
import { isUnread } from './unread.ts';

export interface GivenEntry {
  readonly title: string;
  /** NaN where nothing could be read. */
  readonly value: number;
  /** JSON Pointer of the key that holds it, or would. */
  readonly path: string;
  /** Half the width of its band, P10 to P90, in its own unit; zero for a figure that is exact. */
  readonly spread: number;
  /** Half a band that reaches up only, where the value is the least it can be. */
  readonly spreadAbove?: number;
  /** What else there is to say of a figure that is written. */
  readonly says?: string;
  /** Why it was taken, where nobody wrote it. */
  readonly assumed?: string;
  readonly isUnread?: boolean;
}

export type Givens = Map<string, GivenEntry>;

/** How far a figure usually is from the truth when nobody says: of itself, or in its own unit. */
type UsualSpread = { readonly ratio: number } | { readonly amount: number };

export interface Asked {
  readonly name: string;
  readonly title: string;
  /** Key in the written form. */
  readonly key: string;
  /** Value in the model's unit, or undefined where it is not written. */
  readonly value: number | undefined;
  readonly spread?: number | undefined;
  readonly usual?: UsualSpread;
  readonly says?: string | undefined;
  readonly otherwise?: { readonly value: number; readonly spread?: number; readonly why: string };
}

interface Holder {
  readonly unread?: readonly string[];
}

/** Puts one number among the givens: as it is written, as it could not be read, or as it is taken otherwise. */
export function put(givens: Givens, holder: Holder, at: string, asked: Asked): void {
  const { name, title, key, value, spread, usual, says, otherwise } = asked;
  const path = `${at}/${key}`;
  if (value !== undefined) {
    const own = usual === undefined ? 0 : 'ratio' in usual ? Math.abs(value) * usual.ratio : usual.amount;
    givens.set(name, { title, value, path, spread: spread ?? own, ...(says === undefined ? {} : { says }) });
  } else if (holder.unread?.includes(key.split('/').at(-1)!)) {
    givens.set(name, { title, value: NaN, path, spread: 0, isUnread: true });
  } else if (otherwise) {
    givens.set(name, { title, value: otherwise.value, path, spread: otherwise.spread ?? 0, assumed: otherwise.why });
  } else {
    givens.set(name, { title, value: NaN, path, spread: 0 });
  }
}

const EMPTY: Holder = {};

/** Records of a shot whose keys are taken from `defaults` one by one. */
type Nested = 'action' | 'hero';
const NESTED: readonly Nested[] = ['action', 'hero'];

/** A shot with the defaults put under it, remembering which of the two each key stands in. */
export interface Effective {
  readonly shot: Shot;
  /** JSON Pointer of the record that holds a key of the shot. */
  readonly at: (key: keyof ShotDefaults) => string;
  /** JSON Pointer of the record that holds a written key of the action or the hero. */
  readonly within: (record: Nested, key: string) => string;
}

const isEmpty = (value: unknown): boolean =>
  value === undefined ||
  (Array.isArray(value)
    ? isLeftOut(value)
    : typeof value === 'object' && Object.values(value as object).every(isEmpty));

const readKeysOf = (fields: FieldTable): readonly (readonly [written: string, read: string])[] =>
  Object.entries(fields).map(([written, { readAs }]) => [written, readAs === '' ? written : readAs]);

const SHOT_KEYS = readKeysOf(SHOT_FIELDS);

/**
 * One level of defaults: what a shot leaves out is taken from `defaults`, key by key; a speed and a list are taken whole.
 * What is written and cannot be read is not left out: it stays unread, and no default steps in for it.
 */
export function withDefaults(shoot: Shoot, shotId: string): Effective {
  const own = shoot.shots[shotId]!;
  const known = merged.get(own);
  if (known?.under === shoot.defaults && known.shotId === shotId) return known.effective;
  const effective = mergeDefaults(own, shoot.defaults, shotId);
  merged.set(own, { under: shoot.defaults, shotId, effective });
  return effective;
}

/** Kept with the shot: one edit leaves the others as they were. */
const merged = new WeakMap<
  Shot,
  { readonly under: ShotDefaults; readonly shotId: string; readonly effective: Effective }
>();

function mergeDefaults(own: Shot, under: ShotDefaults, shotId: string): Effective {
  const whole: Record<string, unknown> = { ...own };
  const unread = new Set(own.unread);
  const fromDefaults = new Set<string>();
  for (const [written, key] of SHOT_KEYS as readonly (readonly [string, Exclude<keyof ShotDefaults, 'unread' | Nested>])[]) {
    if (NESTED.includes(written as Nested) || !isEmpty(own[key]) || own.unread?.includes(written)) continue;
    const isUnread = under.unread?.includes(written) === true;
    if (isUnread) unread.add(written);
    if (!isEmpty(under[key])) whole[key] = under[key];
    if (isUnread || !isEmpty(under[key])) fromDefaults.add(key);
  }
  for (const record of NESTED) {
    const nested = nestedDefaults(record, own, under);
    // Figures go with the event that they were written for.
    whole[record] = record === 'action' ? { ...nested.of, parameters: own.action.event === undefined ? (nested.of as Shot['action']).parameters ?? {} : own.action.parameters } : nested.of;
    for (const key of nested.fromDefaults) fromDefaults.add(`${record}/${key}`);
  }
  if (unread.size > 0) whole['unread'] = [...unread];
  const holder = (key: string): string => (fromDefaults.has(key) ? '/defaults' : `/shots/${shotId}`);
  return {
    shot: whole as Shot,
    at: holder,
    within: (record, key) => `${holder(`${record}/${key}`)}/${record}`,
  };
} // prettier-ignore

/** An action or a hero with the defaults put under it; a spread stays with the value it was written for. */
function nestedDefaults(record: Nested, own: Shot, under: ShotDefaults) {
  const of: Record<string, unknown> = {};
  const unread: string[] = [];
  const fromDefaults: string[] = [];
  const holders: readonly { readonly of: Readonly<Record<string, unknown>> & Holder; readonly isUnread: boolean }[] = [own, under].map((holder) => ({
    of: holder[record],
    isUnread: holder.unread?.includes(record) === true,
  }));
  for (const [written, key] of readKeysOf(SHOT_FIELDS[record].of.fields)) {
    const holder = holders.find(({ of: values, isUnread }) => isUnread || !isEmpty(values[key]) || values.unread?.includes(written));
    if (!holder) continue;
    if (holder !== holders[0]) fromDefaults.push(written);
    if (isEmpty(holder.of[key])) unread.push(written);
    for (const name of [key, spreadKey(key)]) if (name in holder.of) of[name] = holder.of[name];
  }
  return { of: unread.length > 0 ? { ...of, unread } : of, fromDefaults };
} // prettier-ignore

const WRITTEN_KEYS: ReadonlyMap<string, string> = new Map(SHOT_KEYS.map(([written, read]) => [read, written]));

const writtenKeyOf = (key: string): string => WRITTEN_KEYS.get(key) ?? key;

/** Rate at which the first deliverable plays. */
export function playRateOf(shoot: Shoot, shot: Shot): Rational | undefined {
  const [first] = deliverablesOf(shoot, shot);
  return first === undefined ? undefined : shoot.deliverables[first]?.rate;
}

/** The deliverables a shot is cut into: its own, or all of them. */
export function deliverablesOf(shoot: Shoot, shot: Shot): readonly string[] {
  return shot.deliverables.length > 0 ? shot.deliverables : Object.keys(shoot.deliverables);
}

const hasProfile = ({ speed }: Shot): boolean => speed.knots.length > 0 || isUnread(speed, 'knots');

const hasSpeed = (shot: Shot): boolean =>
  hasProfile(shot) ||
  shot.speed.constantFraction !== undefined ||
  isUnread(shot.speed, 'constant') ||
  isUnread(shot, 'speed');

/** An event that is named gives a duration, or would if it could be read. */
const hasDuration = ({ action }: Shot): boolean =>
  action.duration_s !== undefined ||
  action.event !== undefined ||
  isUnread(action, 'duration') ||
  isUnread(action, 'event');

/** Whether what is seen through or mirrored in the subject counts, not the light that falls on it. */
export const readsLuminance = ({ seen }: Shot): boolean => seen === 'lit-through' || seen === 'by-reflection';

/** What decides the shape of a shot's model. A setting that was fixed and cannot be read is fixed all the same. */
export function structureOf(shoot: Shoot, { shot }: Effective): Structure {
  const shutter = isUnread(shot, 'shutter') ? { exposureTime_s: NaN } : shot.shutter;
  return {
    rateBy: shot.rate !== undefined || isUnread(shot, 'rate') ? 'fixed' : hasSpeed(shot) ? 'speed' : 'duration',
    coverBy: hasProfile(shot) ? 'profile' : !hasDuration(shot) && hasSpeed(shot) ? 'screen' : 'duration',
    shutterBy: shutter === undefined ? 'solved' : 'exposureTime_s' in shutter ? 'time' : 'angle',
    indexBy: shot.isoSpeed === undefined && !isUnread(shot, 'index') ? 'solved' : 'fixed',
    readBy: readsLuminance(shot) ? 'luminance' : 'illuminance',
    unsharpnessBy: shot.unsharpness_px === undefined && !isUnread(shot, 'unsharpness') ? 'diagonal' : 'pixels',
    deliverableCount: Math.max(1, deliverablesOf(shoot, shot).length),
    timing: timingStructureOf(shot),
    lifeBy: warmsOf(shoot, shot) ?? 'written',
    eyesBy: hasGlare(shoot, shot.lighting) ? 'lamps' : 'nothing',
  };
} // prettier-ignore

/** Everything a shot's model is given that does not depend on camera, mode or lens. */
export function shotGivens(shoot: Shoot, shotId: string, effective: Effective): Givens {
  const { shot, at, within } = effective;
  const givens: Givens = new Map();
  const from = (key: keyof ShotDefaults, asked: Omit<Asked, 'key'>) =>
    put(givens, shot, at(key), { key: writtenKeyOf(key), ...asked });
  const own = `/shots/${shotId}`;
  const hero = (asked: Asked) => put(givens, shot.hero, within('hero', asked.key), asked);

  addAction(givens, effective);
  from('screenTime_s', { name: 'screenTimeWanted_s', title: 'Time on screen', value: shot.screenTime_s });
  from('handles_s', { name: 'handles_s', title: 'Handle', value: shot.handles_s, otherwise: { value: 0, why: 'no handles asked for' } });
  from('frameWidth_m', { name: 'frameWidth_m', title: 'Frame width', value: shot.frameWidth_m });
  from('reframeFraction', { name: 'reframeFraction', title: 'Share held back for repositioning', value: shot.reframeFraction, otherwise: { value: 0, why: 'no repositioning asked for' } });
  from('depth_m', { name: 'depthWanted_m', title: 'Depth that must be sharp', value: shot.depth_m });
  from('blur_px', { name: 'blurWanted_px', title: 'Movement blur allowed', value: shot.blur_px });
  from('unsharpness_px', { name: 'unsharpnessWanted_px', title: 'Blur circle still called sharp', value: shot.unsharpness_px });
  from('diffraction_px', { name: 'diffractionWanted_px', title: 'Diffraction disc allowed', value: shot.diffraction_px, otherwise: { value: 2.5, why: 'two and a half pixels; common practice, no source' } });
  from('signalToNoise_dB', { name: 'signalToNoiseWanted_dB', title: 'Signal over noise wanted', value: shot.signalToNoise_dB });
  from('flickerAllowed_stops', { name: 'flickerAllowed_stops', title: 'Swing of the light allowed', value: shot.flickerAllowed_stops, otherwise: { value: 0.03, why: 'the gate of a grade, beyond which flicker is seen; common practice, no source' } });
  from('highlights_stops', { name: 'highlightsWanted_stops', title: 'Room wanted above middle grey', value: shot.highlights_stops });
  from('clearance_m', { name: 'clearanceWanted_m', title: 'Clearance asked for', value: shot.clearance_m });
  from('readingOffset_stops', { name: 'readingOffset_stops', title: 'Stops the metered tone stands above middle grey', value: shot.readingOffset_stops, otherwise: { value: 0, why: 'the reading stands for middle grey' } });
  givens.set('diagonalDivisor', { title: 'Sharp blur circles in the diagonal', value: 1500, path: `${own}/unsharpness`, spread: 0, assumed: 'a circle of the diagonal over 1500; common practice, no source' });

  if (hasProfile(shot)) addProfile(givens, shot, at('speed'));
  else put(givens, isUnread(shot, 'speed') ? { unread: ['constant'] } : shot.speed, `${at('speed')}/speed`, { name: 'slowestFraction', title: 'Playback speed', key: 'constant', value: shot.speed.constantFraction });

  if (shot.rate || isUnread(shot, 'rate')) from('rate', { name: 'captureRate_fps', title: 'Frame rate', value: shot.rate && ratioOf(shot.rate) });
  const shutter = shot.shutter;
  const angle = shutter && 'shutterAngle_deg' in shutter ? shutter.shutterAngle_deg : undefined;
  from('shutter', { name: 'angleWanted_deg', title: 'Shutter angle', value: angle, otherwise: { value: 180, why: 'half of each frame, for movement that looks natural; common practice, no source' } });
  if (isUnread(shot, 'shutter') || (shutter && 'exposureTime_s' in shutter)) from('shutter', { name: 'exposureTime_s', title: 'Shutter', value: shutter && 'exposureTime_s' in shutter ? shutter.exposureTime_s : undefined });
  if (shot.isoSpeed !== undefined || isUnread(shot, 'index')) from('isoSpeed', { name: 'isoSpeed', title: 'Exposure index', value: shot.isoSpeed });
  if (shot.stop !== undefined || isUnread(shot, 'stop')) from('stop', { name: 'stop', title: 'Stop', value: shot.stop });

  hero({ name: 'heroLife_s', title: 'How long the product lasts under the light', key: 'life', value: shot.hero.life_s, spread: shot.hero.lifeSpread_s, usual: { ratio: 0.3 } });
  hero({ name: 'lightOn_s', title: 'Light-on time of one take', key: 'lightOn', value: shot.hero.lightOn_s, spread: shot.hero.lightOnSpread_s, usual: { ratio: 0.2 } });

  addProduct(givens, shoot, shotId, effective);
  addLighting(givens, shoot, effective);
  addDeliverables(givens, shoot, effective);
  put(givens, shoot.shoot, '/shoot', { name: 'meterConstant_lx_s', title: 'Meter constant', key: 'meterConstant', value: shoot.shoot.meterConstant_lx_s, otherwise: { value: 250, why: 'the constant of a flat receptor' } });
  return givens;
} // prettier-ignore

/** What happens: as the person wrote it, and where they wrote nothing, as the event they named usually is. */
function addAction(givens: Givens, { shot: { action }, within }: Effective): void {
  const reading = eventOf(action);
  const { event, figures, spread, problems = [] } = reading ?? {};
  const [problem] = problems;
  const putOf = (asked: Asked, ofEvent?: { readonly value: number | undefined; readonly spread?: number | undefined }) => {
    const isLeft = asked.value === undefined && !isUnread(action, asked.key);
    const { name, title } = asked;
    if (isLeft && problem)
      givens.set(name, { title, value: NaN, path: `${within('action', 'event')}/${problem.at}`, spread: 0, isUnread: true });
    else if (isLeft && isUnread(action, 'event'))
      givens.set(name, { title, value: NaN, path: `${within('action', 'event')}/event`, spread: 0, isUnread: true });
    else if (event && ofEvent?.value !== undefined)
      put(givens, action, within('action', asked.key), { ...asked, otherwise: { value: ofEvent.value, spread: ofEvent.spread ?? 0, why: `${whyEvent(action)} of the event ${event.title}` } });
    else put(givens, action, within('action', asked.key), asked);
  };
  putOf({ name: 'actionTime_s', title: 'Duration of the action', key: 'duration', value: action.duration_s, spread: action.durationSpread_s, usual: { ratio: 0.1 } }, { value: figures?.duration_s, spread: spread?.duration_s });
  putOf({ name: 'speed_m_per_s', title: 'Speed across the picture', key: 'speed', value: action.speed_m_per_s, spread: action.speedSpread_m_per_s, usual: { ratio: 0.1 } }, { value: figures?.speed_m_per_s, spread: spread?.speed_m_per_s });
  putOf({ name: 'reachWidth_m', title: 'Width the action reaches', key: 'width', value: action.reachWidth_m }, { value: figures?.reachWidth_m });
  putOf({ name: 'reachHeight_m', title: 'Height the action reaches', key: 'height', value: action.reachHeight_m }, { value: figures?.reachHeight_m });
  putOf({ name: 'reachTowardsLens_m', title: 'How far the action flies towards the lens', key: 'towardsLens', value: action.reachTowardsLens_m }, { value: figures?.reachTowardsLens_m });
} // prettier-ignore

const whyEvent = ({ parameters }: Shot['action']): string =>
  Object.keys(parameters).length > 0 ? 'worked out from the figures' : 'as usual';

function addProfile(givens: Givens, shot: Shot, holder: string): void {
  const path = `${holder}/speed/knots`;
  const knots = shot.speed.knots;
  const shape = shot.speed.between ?? 'linear';
  let slowest = NaN;
  let fastest = NaN;
  let time = NaN;
  if (knots.every(({ screenTime_s, speedFraction }) => screenTime_s !== undefined && speedFraction !== undefined)) {
    const whole = knots as readonly { readonly screenTime_s: number; readonly speedFraction: number }[];
    try {
      slowest = slowestSpeed(whole);
      fastest = Math.max(...whole.map(({ speedFraction }) => speedFraction));
      time = realTimeOfProfile_s(whole, shape);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  const isBroken = Number.isNaN(time);
  givens.set('slowestFraction', {
    title: 'Slowest playback speed of the profile',
    value: slowest,
    path,
    spread: 0,
    isUnread: isBroken,
  });
  givens.set('fastestFraction', {
    title: 'Fastest playback speed of the profile',
    value: fastest,
    path,
    spread: 0,
    isUnread: isBroken,
  });
  givens.set('profileTime_s', {
    title: `Real time that the profile uses, ${shape} between knots`,
    value: time,
    path,
    spread: 0,
    isUnread: isBroken,
  });
  givens.set('screenTime_s', {
    title: 'Time on screen of the profile',
    value: isBroken ? NaN : knots.at(-1)!.screenTime_s! - knots[0]!.screenTime_s!,
    path,
    spread: 0,
    isUnread: isBroken,
  });
}

/** The product that takes use up; nothing is asked while none is named. */
function addProduct(givens: Givens, shoot: Shoot, shotId: string, { shot, at, within }: Effective): void {
  const id = shot.hero.product;
  const product = id === undefined ? undefined : shoot.kit.products[id];
  const path = within('hero', 'product');
  if (product) put(givens, product, `/kit/products/${id!}`, { name: 'pieceCount', title: 'Pieces on hand', key: 'pieces', value: product.pieceCount });
  else givens.set('pieceCount', { title: 'Pieces on hand', value: NaN, path: `${path}/product`, spread: 0, ...(isUnread(shot.hero, 'product') ? { isUnread: true } : {}) });
  put(givens, shot.hero, within('hero', 'perTake'), { name: 'perTakeCount', title: 'Pieces that a take uses', key: 'perTake', value: shot.hero.perTakeCount, otherwise: { value: 1, why: 'one piece a take' } });
  givens.set('piecesElsewhereCount', { title: 'Pieces that other shots need', value: id === undefined ? 0 : piecesElsewhere(shoot, shotId, id), path: `${path}/product`, spread: 0 });
  const bad = unreadTakes(shoot, shotId);
  const good = shot.goodTakeFraction;
  const [kept, share] = ['Good takes wanted', 'Share of takes that come out good'];
  if (bad === undefined) {
    put(givens, shot, at('keptTakeCount'), { name: 'goodTakeCount', title: kept, key: 'kept', value: keptTakes(shoot, shotId) });
    put(givens, shot, at('goodTakeFraction'), { name: 'goodTakeFraction', title: share, key: 'good', value: good, otherwise: { value: goodShare(shoot, shotId), why: 'the takes kept over the takes planned' } });
  } else {
    givens.set('goodTakeCount', { title: kept, value: NaN, path: bad, spread: 0, isUnread: true });
    givens.set('goodTakeFraction', { title: share, value: good ?? NaN, path: bad, spread: 0, ...(good === undefined ? { isUnread: true } : {}) });
  }
} // prettier-ignore

function addLighting(givens: Givens, shoot: Shoot, { shot, at }: Effective): void {
  const id = shot.lighting;
  const setup = id === undefined ? undefined : shoot.lighting[id];
  const read = (name: string, title: string, key: 'illuminance' | 'luminance', value?: number, spread?: number) => {
    // Whether illuminance or luminance counts is not known while `seen` cannot be read.
    if (isUnread(shot, 'seen')) put(givens, shot, at('seen'), { name, title, key: 'seen', value: undefined });
    else if (!setup) put(givens, shot, at('lighting'), { name, title, key: 'lighting', value: undefined });
    else if (value === undefined && !isUnread(setup, key) && hasLamps(setup)) givens.set(name, ofLamps(shoot, id!, shot, key));
    else put(givens, setup, `/lighting/${id!}`, { name, title, key, value, says: correcting(shoot, id!, shot, key), spread, usual: { ratio: usualReadingSpread(setup) } });
  };
  read('illuminance_lx', 'Illuminance on the subject', 'illuminance', setup?.illuminance_lx, setup?.illuminanceSpread_lx);
  read('luminance_cd_per_m2', 'Luminance behind or mirrored in the subject', 'luminance', setup?.luminance_cd_per_m2, setup?.luminanceSpread_cd_per_m2);
} // prettier-ignore

/** What a reading does to the lamps that it is read of, where it does. */
function correcting(shoot: Shoot, setupId: string, shot: Shot, key: 'illuminance' | 'luminance'): string | undefined {
  const setup = shoot.lighting[setupId];
  if (setup?.reading !== 'metered' || !hasLamps(setup)) return undefined;
  const meter = meteredLight(shoot, setupId, viewOf(shot)).meters.find(({ kind }) => kind === key);
  return meter && `the reading counts, and its lamps are ${correctionSaid(meter)}`;
}

/** Where a shot's camera looks from; level and in front where nobody says. */
export function viewOf({ azimuth_deg = 0, elevation_deg = 0 }: Shot): View {
  return { azimuth_deg, elevation_deg };
}

/** Light that nobody read, as the lamps of the set-up give it; what a lamp lacks is what the light lacks. */
function ofLamps(shoot: Shoot, setupId: string, shot: Shot, key: 'illuminance' | 'luminance'): GivenEntry {
  const path = `/lighting/${setupId}/lamps`;
  const light = lightOfSetup(shoot, setupId, viewOf(shot));
  const title = key === 'illuminance' ? 'Illuminance on the subject, from its lamps' : 'Luminance of the face behind the subject';
  const [lack] = light.lacks;
  if (lack) return { title: lack.what === undefined ? lack.title : `${lack.title}: ${lack.what}`, value: NaN, path: lack.path, spread: 0, ...(lack.isUnread ? { isUnread: true } : {}) };
  if (isUnread(shot, 'azimuth') || isUnread(shot, 'elevation')) return { title, value: NaN, path, spread: 0, isUnread: true };
  if (key === 'illuminance') return { title, value: light.illuminance_lx, path, spread: light.spread_lx };
  if (light.luminance && shot.seen === 'lit-through') return { title, value: light.luminance.luminance_cd_per_m2, path, spread: light.luminance.spread_cd_per_m2 };
  return { title: shot.seen === 'lit-through' ? 'A glowing face behind the subject, or its luminance' : title, value: NaN, path: `/lighting/${setupId}/luminance`, spread: 0 };
} // prettier-ignore

function addDeliverables(givens: Givens, shoot: Shoot, { shot, at }: Effective): void {
  const ids = deliverablesOf(shoot, shot);
  // One of them unread, and nobody knows which crops count nor which of them frames the shot.
  const list = isUnread(shot, 'deliverables') ? `${at('deliverables')}/deliverables` : ids.length === 0 ? '/deliverables' : undefined;
  for (let i = 0; i < Math.max(1, ids.length); i += 1) {
    const id = ids[i] ?? '';
    const deliverable = shoot.deliverables[id];
    const { pixels, rate } = deliverable ?? {};
    const title = deliverable?.title ?? (id || 'the deliverable');
    const from = (asked: Asked) => {
      if (list === undefined) put(givens, deliverable ?? EMPTY, `/deliverables/${id}`, asked);
      else givens.set(asked.name, { title: asked.title, value: NaN, path: list, spread: 0, isUnread: ids.length > 0 });
    };
    from({ name: `aspect${i}Ratio`, title: `Shape of ${title}`, key: 'pixels', value: pixels && pixels.widthCount / pixels.heightCount });
    from({ name: `deliveredWidth${i}_px`, title: `Pixels across ${title}`, key: 'pixels', value: pixels?.widthCount });
    if (i === 0) from({ name: 'playRate_fps', title: 'Rate it plays at', key: 'rate', value: rate && ratioOf(rate) });
  }
} // prettier-ignore

/** What a camera body gives. */
export function cameraGivens(id: string, camera: Camera): Givens {
  const givens: Givens = new Map();
  const at = `/kit/cameras/${id}`;
  const from = (asked: Asked) => put(givens, camera, at, asked);
  from({ name: 'pixelPitch_m', title: 'Pixel pitch', key: 'pitch', value: camera.pixelPitch_m });
  from({ name: 'deadTime_s', title: 'Dead time in each frame', key: 'deadTime', value: camera.deadTime_s, otherwise: { value: 1e-6, why: 'a microsecond, where the maker states none' } });
  from({ name: 'shortestExposure_s', title: 'Shortest exposure', key: 'shortestExposure', value: camera.shortestExposure_s });
  from({ name: 'baseIsoSpeed', title: 'Base exposure index', key: 'baseIndex', value: camera.baseIsoSpeed });
  from({ name: 'lowestIsoSpeed', title: 'Lowest exposure index', key: 'lowestIndex', value: camera.lowestIsoSpeed });
  from({ name: 'highestIsoSpeed', title: 'Highest exposure index', key: 'highestIndex', value: camera.highestIsoSpeed });
  from({ name: 'headroomAtBase_stops', title: 'Stops from middle grey to clipping', key: 'headroom', value: camera.headroom_stops, spread: camera.headroomSpread_stops, usual: { amount: 0.25 } });
  from({ name: 'readNoise_e', title: 'Read noise', key: 'readNoise', value: camera.readNoise_e, spread: camera.readNoiseSpread_e, usual: { ratio: 0.2 } });
  from({ name: 'quantumEfficiencyFraction', title: 'Electrons for each photon, filters included', key: 'quantumEfficiency', value: camera.quantumEfficiencyFraction, usual: { ratio: 0.15 }, otherwise: { value: 0.2, spread: 0.06, why: 'usual for one colour of a mosaic sensor; from memory' } });
  from({ name: 'memory_B', title: 'Memory of the camera', key: 'memory', value: camera.memory_B });
  from({ name: 'partitionCount', title: 'Partitions', key: 'partitions', value: camera.partitionCount, otherwise: { value: 1, why: 'the memory is not divided' } });
  from({ name: 'saveRate_B_per_s', title: 'Rate of saving', key: 'saveRate', value: camera.saveRate_B_per_s, spread: camera.saveRateSpread_B_per_s, usual: { ratio: 0.1 } });
  return givens;
} // prettier-ignore

/** What a mode of a camera gives. */
export function modeGivens(cameraId: string, id: string, mode: Mode): Givens {
  const givens: Givens = new Map();
  const from = (asked: Asked) => put(givens, mode, `/kit/cameras/${cameraId}/modes/${id}`, asked);
  from({ name: 'widthCount', title: 'Pixels across', key: 'pixels', value: mode.pixels?.widthCount });
  from({ name: 'heightCount', title: 'Pixels down', key: 'pixels', value: mode.pixels?.heightCount });
  from({ name: 'maxRate_fps', title: 'Highest rate of the mode', key: 'rate', value: mode.maxRate_fps });
  from({ name: 'binningCount', title: 'Photosites along a picture pixel', key: 'binning', value: mode.binningCount, otherwise: { value: 1, why: 'the mode reads a window' } });
  from({ name: 'bitDepthCount', title: 'Bits a pixel', key: 'bits', value: mode.bitDepthCount, otherwise: { value: 12, why: 'twelve bits, packed' } });
  return givens;
} // prettier-ignore

/** What a lens gives. */
export function lensGivens(id: string, lens: Lens): Givens {
  const givens: Givens = new Map();
  const from = (asked: Asked) => put(givens, lens, `/kit/lenses/${id}`, asked);
  const focal_m = (lens.focalLength_mm ?? NaN) / 1000;
  from({ name: 'focalLength_mm', title: 'Focal length', key: 'focalLength', value: lens.focalLength_mm });
  from({ name: 'widestStop', title: 'Widest stop', key: 'widest', value: lens.widestStop, otherwise: { value: Math.min(2 ** 1.5, lens.narrowestStop ?? Infinity), why: 'T2.8, usual for close work; from memory' } });
  from({ name: 'narrowestStop', title: 'Narrowest stop', key: 'narrowest', value: lens.narrowestStop, otherwise: { value: Math.max(2 ** 4.5, lens.widestStop ?? 0), why: 'T22, usual for close work; from memory' } });
  from({ name: 'transmittanceFraction', title: 'Light the lens passes', key: 'transmittance', value: lens.transmittanceFraction, otherwise: { value: 0.85, spread: 0.07, why: 'usual for a coated lens; from memory' } });
  from({ name: 'closeFocus_m', title: 'Close focus of the lens', key: 'closeFocus', value: lens.closeFocus_m });
  from({ name: 'pupilMagnificationRatio', title: 'Pupil magnification', key: 'pupilMagnification', value: lens.pupilMagnificationRatio, otherwise: { value: 1, spread: 0.25, why: 'a symmetrical lens' } });
  from({ name: 'imageCircle_m', title: 'Image circle', key: 'imageCircle', value: lens.imageCircle_mm === undefined ? undefined : lens.imageCircle_mm / 1000 });
  from({ name: 'frontToSensor_m', title: 'Front of the lens to the sensor', key: 'frontToSensor', value: lens.frontToSensor_m, ...(Number.isNaN(focal_m) ? {} : { otherwise: { value: focal_m + 0.06, spread: 0.03, why: 'focal length plus 60 mm' } }) });
  const allows = lens.stopIncludesExtension;
  from({ name: 'stopIncludesExtension', title: 'Marked stop allows for close focus', key: 'stopIncludesExtension', value: allows === undefined ? undefined : Number(allows), otherwise: { value: 0, why: 'marked for distant focus, as most lenses are' } });
  return givens;
} // prettier-ignore

/** What is fitted to the lens gives: light lost, and length added by tubes. */
export function fittingGivens(shoot: Shoot, { shot, at }: Effective): Givens {
  const list = `${at('attachments')}/attachments`;
  const givens: Givens = new Map();
  const add = (name: string, title: string, key: 'loss' | 'length', of: (fitting: Attachment) => number | undefined, share: number) => {
    const lacking = shot.attachments.find((id) => of(shoot.kit.attachments[id]!) === undefined);
    const sum = shot.attachments.reduce((total, id) => total + (of(shoot.kit.attachments[id]!) ?? NaN), 0);
    const spread = share * Math.abs(sum);
    if (isUnread(shot, 'attachments')) givens.set(name, { title, value: NaN, path: list, spread: 0, isUnread: true });
    else if (lacking === undefined) givens.set(name, { title, value: sum, path: list, spread });
    else put(givens, shoot.kit.attachments[lacking]!, `/kit/attachments/${lacking}`, { name, title: `${title}: ${shoot.kit.attachments[lacking]!.title ?? lacking}`, key, value: undefined });
  };
  add('filterLoss_stops', 'Light lost in filters', 'loss', ({ kind, loss_stops }) => (kind === 'tube' ? 0 : loss_stops), 0.1);
  add('tubeLength_m', 'Length of the tubes', 'length', ({ kind, length_m }) => (kind === 'tube' ? length_m : 0), 0);
  return givens;
} // prettier-ignore
