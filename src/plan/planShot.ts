/** One shot planned: the answer found, its settings with reasons, every margin, and what else could have been chosen. */
import { ratioOf } from '../base/rational.ts';
import { printStopNumber } from '../base/stop.ts';
import { showShutter, writeQuantity } from '../base/quantity.ts';
import type { Shoot, Shot } from '../document/schema.ts';
import { realTimeAt_s } from '../laws/time/profile.ts';
import { answers, fill, kitsOf, tryAll, type Candidate, type Kit } from './candidates.ts';
import { cautionsOf } from './cautions.ts';
import { cameraGivens, deliverablesOf, fittingGivens, lensGivens, modeGivens, playRateOf, readsLuminance, shotGivens, structureOf, viewOf, withDefaults, type Givens } from './givens.ts'; // prettier-ignore
import { isUnread } from './unread.ts';
import { eventOf } from './events.ts';
import { heatGivens } from './heatGivens.ts';
import { heroLifeOf } from './heroLife.ts';
import { burnInNotes, lampNotes, lampTimesOf } from './lampTimes.ts';
import { hasLamps } from './lighting.ts';
import { correctionSaid, meteredLight, type MeteredLight } from './meter.ts';
import { assumptionsOf, judge, limitsInModel, limitsOf, missingOf, type JudgedLimit } from './limits.ts';
import { requiring, rootsOf, work, type Model } from './model.ts';
import { notesOf } from './notes.ts';
import type { Prepared, Worked } from './prepared.ts';
import { settableExposureAtOrBelow, settableIndexAtOrAbove, settableStopAtOrAbove } from './settable.ts';
import { flickerNotes, flickerTold, withFlicker } from './shotFlicker.ts';
import { shotModel } from './shotModel.ts';
import { timingGivens } from './timing/givens.ts';
import { timingNotes } from './timing/notes.ts';
import { timingNames, timingOf } from './timing/timing.ts';
import type { Alternative, Clocks, Crop, LampGiven, Margin, Missing, PatchOperation, Picture, Reason, SettingName, Settings, ShotPlan } from './types.ts'; // prettier-ignore

export type { Prepared, Worked };

/** Settings that stay as they are while inputs move within their bands. */
const HELD: readonly string[] = ['captureRate_fps', 'exposureTime_s', 'isoSpeed', 'postTriggerFraction'];

export function prepare(shoot: Shoot, shotId: string): Prepared {
  const effective = withDefaults(shoot, shotId);
  const givens: Givens = new Map([
    ...shotGivens(shoot, shotId, effective),
    ...fittingGivens(shoot, effective),
    ...heatGivens(shoot, effective),
    ...timingGivens(shoot, effective),
  ]);
  const kits = kitsOf(shoot, effective);
  return {
    shoot,
    shotId,
    effective,
    model: heeding(shotModel(structureOf(shoot, effective)), [givens, ...kits.map((kit) => kit.givens)]),
    givens,
    kits,
  };
}

/** The model in which a wish that is written and cannot be read is not passed over as if nobody had it. */
function heeding(model: Model, all: readonly Givens[]): Model {
  const unread = new Set<string>();
  for (const givens of all) for (const [name, { isUnread: isBad }] of givens) if (isBad === true) unread.add(name);
  if (unread.size === 0) return model;
  const isAbsent = (name: string): boolean => {
    const entries = all.flatMap((givens) => givens.get(name) ?? []);
    return entries.length > 0 && !unread.has(name) && entries.every(({ value }) => Number.isNaN(value));
  };
  return requiring(model, (input) => {
    const roots = rootsOf(model, input);
    return roots.some((name) => unread.has(name)) && !roots.some(isAbsent);
  });
} // prettier-ignore

function limitsFor({ shoot, effective, model, givens }: Prepared, kit: Givens): readonly JudgedLimit[] {
  const titles = deliverablesOf(shoot, effective.shot).map((id) => shoot.deliverables[id]?.title ?? id);
  return limitsInModel(model, limitsOf(structureOf(shoot, effective), titles), new Map([...givens, ...kit]));
}

/** What a kit gives, by name and title, where there is none. */
const OF_KIT: Givens = new Map([
  ...cameraGivens('', { modes: {}, darkReference: [] }),
  ...modeGivens('', '', {}),
  ...lensGivens('', {}),
  ['stop', { title: 'Stop', value: NaN, path: '', spread: 0 }],
]);

/** Stands in for a kit, so that what it would give is missed by name, where the first lack would be mended. */
function noKit(prepared: Prepared): Givens {
  const [first] = lackOfKit(prepared);
  const { path = '', because } = first ?? {};
  return new Map([...OF_KIT].map(([name, { title }]) => [name, { title, value: NaN, path, spread: 0, isUnread: because === 'unread' }]));
} // prettier-ignore

/** Works the whole model at a kit and a stop; without a kit, as far as it goes. */
export function workAt(prepared: Prepared, candidate: Candidate | undefined): Worked {
  const { model } = prepared;
  const kit: Givens = candidate?.kit.givens ?? noKit(prepared);
  const givens: Givens = new Map([...kit, ...prepared.givens]);
  if (candidate && !givens.has('stop')) {
    const range = ['widestStop', 'narrowestStop'].map((name) => givens.get(name)!);
    const assumed = 'the stop that asks for least beyond what was asked for';
    const solved = { title: 'Stop', value: candidate.stop, path: `/shots/${prepared.shotId}/stop`, spread: 0, assumed };
    givens.set('stop', Number.isNaN(candidate.stop) ? (range.find(({ value }) => Number.isNaN(value)) ?? solved) : solved);
  }
  const values = new Float64Array(model.names.length).fill(NaN);
  fill(model, values, givens);
  work(model.steps, values);
  return { givens, values, limits: limitsFor(prepared, kit) };
} // prettier-ignore

/** What any of these kits gives, whichever of them: a limit counts for all as soon as one could break it. */
function anyOf(kits: readonly Kit[]): Givens {
  const any = new Map(kits[0]!.givens);
  for (const [name, { value }] of kits[0]!.givens) {
    if (!Number.isNaN(value)) continue;
    const other = kits.find(({ givens }) => !Number.isNaN(givens.get(name)?.value ?? NaN));
    if (other) any.set(name, other.givens.get(name)!);
  }
  return any;
}

/** The candidates of a shot, best first. */
export function candidatesOf(prepared: Prepared): { readonly best: readonly Candidate[]; readonly triedCount: number } {
  const { model, givens, kits } = prepared;
  if (kits.length === 0) return { best: [], triedCount: 0 };
  const tried = tryAll({ model, limits: limitsFor(prepared, anyOf(kits)), shotGivens: givens, kits });
  return { best: answers(tried), triedCount: tried.length };
}

/** Margins at a candidate, with their bands. */
export function marginsAt(prepared: Prepared, worked: Worked): readonly Margin[] {
  const { values, givens, limits } = worked;
  const solved = new Map([...givens].filter(([name, entry]) => name !== 'stop' || entry.assumed === undefined));
  const judged = judge({ model: prepared.model, values, givens: solved, limits, held: HELD });
  return withFlicker(prepared, worked, judged);
}

/** Plans one shot. Never throws for a hard shoot: what cannot be worked out is named. */
export function planShot(shoot: Shoot, shotId: string, number: number): ShotPlan {
  const prepared = prepare(shoot, shotId);
  const { effective, model } = prepared;
  const { best, triedCount } = candidatesOf(prepared);
  const [answer, ...others] = best;
  const worked = workAt(prepared, answer);
  const { lighting } = effective.shot;
  const light = lighting !== undefined && hasLamps(shoot.lighting[lighting]) ? meteredLight(shoot, lighting, viewOf(effective.shot)) : undefined;
  const lampTimes = lampTimesOf(shoot, lighting);
  const margins = answer ? marginsAt(prepared, worked) : withoutKit(prepared, marginsAt(prepared, worked));
  const value = (name: string): number | undefined => known(model, worked.values, name);
  const timing = timingOf(prepared, worked);
  const settings = answer && settingsOf(model, worked.values, answer);
  // Worked out when first looked at: a shoot of many shots is planned at every keystroke, one shot is looked at.
  const alternatives = once(() => (settings ? others.flatMap((other) => alternative(prepared, other, settings)) : []));
  return {
    id: shotId,
    title: effective.shot.title ?? shotId,
    number,
    ...(settings ? { settings } : {}),
    reasons: reasonsOf(effective.shot, (name) => value(name) ?? worked.givens.get(name)?.value ?? NaN),
    margins,
    get alternatives() {
      return alternatives();
    },
    ...clocksOf(prepared, worked),
    ...pictureOf(prepared, worked),
    ...(timing ? { timing } : {}),
    ...flickerTold(prepared, worked),
    lamps: readsLuminance(effective.shot) ? [] : lampsGiven(light),
    lampTimes,
    ...heroLifeOf(shoot, effective.shot, { model, ...worked }),
    missing: answer ? unsettled(prepared, worked) : lackOfKit(prepared),
    assumed: [...assumptionsOf(model, worked.givens, [...worked.limits.flatMap(({ parts }) => parts.flatMap(({ part }) => [part.have, part.need])), ...timingNames(effective.shot), ...(prepared.givens.has('stop') ? [] : ['widestStop', 'narrowestStop'])]).filter(({ name }) => name !== 'stop'), ...margins.flatMap(({ id, assumed }) => (id === 'flicker' ? assumed : []))],
    cautions: cautionsOf(effective.shot, margins, light && { shoot, lamps: light.lamps }, shoot.kit.rigs),
    notes: [...eventNotes(effective.shot), ...(light ? lightNotes(light) : []), ...lampNotes(lampTimes), ...burnInNotes(shoot, effective.shot, lampTimes), ...flickerNotes(prepared, worked, settings), ...notesOf((name) => value(name) ?? NaN), ...timingNotes(timing)],
    ...(value('keptSize_B') === undefined ? {} : { keptSize_B: value('keptSize_B')! }),
    ...(value('saveTime_s') === undefined ? {} : { saveTime_s: value('saveTime_s')! }),
    triedCount,
  };
} // prettier-ignore

function lampsGiven(light: MeteredLight | undefined): readonly LampGiven[] {
  const lit = light?.lamps.filter(({ illuminance_lx, isOff }) => !isOff && Number.isFinite(illuminance_lx)) ?? [];
  return lit.map(({ id, title, illuminance_lx, shareFraction, distance_m }) => ({ id, title, illuminance_lx, shareFraction, distance_m }));
} // prettier-ignore

/** A reading further from what the lamps promise than this is worth a look. */
const ODD_READING_stops = 0.3;

/** What the lamps say beyond their light, and how a reading compares with them. */
function lightNotes({ lamps, meters }: MeteredLight): readonly string[] {
  return [
    ...lamps.flatMap(({ notices }) => notices.map((notice) => `${notice}.`)),
    ...meters.filter(({ stops }) => Math.abs(stops) > ODD_READING_stops).map(({ stops, kind }) => `The meter reads ${Math.abs(stops).toFixed(1)} stops ${stops < 0 ? 'less' : 'more'} than ${kind === 'illuminance' ? 'the lamps promise as they are' : 'the face behind promises as it is'} written: the reading counts, and the lamps are ${correctionSaid({ stops })}; check levels, places and filters.`),
  ];
} // prettier-ignore

/** What the event of the action says beyond its figures, while they are the ones in use. */
function eventNotes({ action }: Shot): readonly string[] {
  const remark = eventOf(action)?.figures?.remark;
  return remark === undefined ? [] : [remark];
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

function known(model: Model, values: Float64Array, name: string): number | undefined {
  const slot = model.slotOf.get(name);
  const value = slot === undefined ? NaN : values[slot]!;
  return Number.isFinite(value) ? value : undefined;
}

const NUMBERS = [
  'captureRate_fps', 'exposureTime_s', 'shutterAngle_deg', 'stop', 'isoSpeed', 'widthCount', 'heightCount', 'focalLength_mm',
  'magnificationRatio', 'sensorToSubject_m', 'workingDistance_m',
] as const satisfies readonly SettingName[]; // prettier-ignore

/** The settings at a candidate, or undefined while one of them cannot be worked out. */
function settingsOf(model: Model, values: Float64Array, { kit }: Candidate): Settings | undefined {
  const numbers = NUMBERS.map((name) => [name, known(model, values, name)] as const);
  if (numbers.some(([, value]) => value === undefined)) return undefined;
  const { camera, mode, lens } = kit;
  return { camera, mode, lens, ...(Object.fromEntries(numbers) as Record<(typeof NUMBERS)[number], number>) };
}

/** What keeps the settings from being worked out. */
function unsettled({ model }: Prepared, { values, givens }: Worked): readonly Missing[] {
  const all = NUMBERS.flatMap((name) => missingOf(model, values, givens, name));
  return [...new Map(all.map((missing) => [missing.name, missing])).values()];
}

/** What keeps every camera, mode and lens from being tried; not empty where none can be. */
function lackOfKit({ shoot, effective }: Prepared): readonly Missing[] {
  const { shot, at } = effective;
  const { cameras, lenses } = shoot.kit;
  const lack = (name: 'camera' | 'mode' | 'lens', title: string, path: string): Missing => ({ name, title, path, because: isUnread(shot, name) ? 'unread' : 'absent' });
  const named = (name: 'camera' | 'mode' | 'lens') => lack(name, `The ${name} this shot names`, `${at(name)}/${name}`);
  const here = (items: Readonly<Record<string, { readonly availability?: string }>>) =>
    Object.keys(items).filter((id) => (items[id]!.availability ?? 'here') === 'here');
  const bodies = shot.camera === undefined ? here(cameras) : [shot.camera];
  const lacks: Missing[] = [];
  if (isUnread(shot, 'camera')) lacks.push(named('camera'));
  else if (bodies.length === 0) lacks.push(lack('camera', 'A camera that is here', '/kit/cameras'));
  else if (isUnread(shot, 'mode')) lacks.push(named('mode'));
  else if (!bodies.some((id) => Object.keys(cameras[id]!.modes).some((mode) => (shot.mode ?? mode) === mode)))
    lacks.push(shot.mode === undefined ? lack('mode', 'A mode of the camera', `/kit/cameras/${bodies[0]!}/modes`) : named('mode'));
  if (isUnread(shot, 'lens')) lacks.push(named('lens'));
  else if (shot.lens === undefined && here(lenses).length === 0) lacks.push(lack('lens', 'A lens that is here', '/kit/lenses'));
  return lacks;
} // prettier-ignore

/** Margins where no kit can be tried: all that a kit would give is one thing missing, the kit. */
function withoutKit(prepared: Prepared, margins: readonly Margin[]): readonly Margin[] {
  const lacks = lackOfKit(prepared);
  const isOfKit = ({ name, path }: Missing): boolean => OF_KIT.has(name) && path === lacks[0]?.path;
  return margins.map((margin) => {
    const others = margin.missing.filter((missing) => !isOfKit(missing));
    return others.length === margin.missing.length ? margin : { ...margin, missing: [...others, ...lacks] };
  });
}

function reasonsOf(shot: Shot, number: (name: string) => number): Partial<Record<SettingName, Reason>> {
  const reason = (isFixed: boolean, says: string): Reason => ({ isFixed, says: isFixed ? 'fixed' : says });
  const speed = shot.speed.knots.length > 0 ? 'from the slowest moment of the speed profile' : shot.speed.constantFraction !== undefined ? 'from the playback speed' : 'from the action’s length and its time on screen';
  return {
    camera: reason(shot.camera !== undefined, 'lacks least of those here'),
    mode: reason(shot.mode !== undefined, 'lacks least of its formats'),
    lens: reason(shot.lens !== undefined, 'lacks least of those here'),
    captureRate_fps: reason(shot.rate !== undefined, speed),
    exposureTime_s: reason(shot.shutter !== undefined, whyExposure(number)),
    stop: reason(shot.stop !== undefined, whyStop(number)),
    isoSpeed: reason(shot.isoSpeed !== undefined, whyIndex(number)),
    sensorToSubject_m: reason(false, 'from the frame width and the focal length'),
  };
} // prettier-ignore

/** Further apart than rounding. */
const exceeds = (a: number, b: number): boolean => a > b * (1 + 1e-6);

function whyExposure(number: (name: string) => number): string {
  const [byBlur, byAngle, longest] = [number('exposureByBlur_s'), number('exposureByAngle_s'), number('longestExposure_s')];
  const wanted = Math.min(byAngle, longest, Number.isNaN(byBlur) ? Infinity : byBlur);
  if (exceeds(number('exposureTime_s'), settableExposureAtOrBelow(wanted))) return 'the shortest the camera makes';
  if (byBlur === wanted) return 'the longest the blur allows';
  return exceeds(byAngle, longest) ? 'as long as the frame allows' : 'half of each frame';
} // prettier-ignore

function whyStop(number: (name: string) => number): string {
  const forDepth = number('fNumberForDepth') / Math.sqrt(number('transmittanceFraction'));
  const stop = number('stop');
  if (!(forDepth > 0) || exceeds(forDepth, stop)) return 'the one that lacks least';
  return exceeds(stop, Math.max(settableStopAtOrAbove(forDepth), number('widestStop')))
    ? 'the one that lacks least'
    : 'the widest that holds the depth';
}

function whyIndex(number: (name: string) => number): string {
  const [index, needed] = [number('isoSpeed'), number('isoSpeedNeeded')];
  if (Number.isNaN(needed)) return 'the base index, while no light is read';
  if (exceeds(needed, index)) return exceeds(number('highestIsoSpeed'), index) ? 'the highest that is quiet enough' : 'the highest of the camera';
  if (!exceeds(index, settableIndexAtOrAbove(needed))) return 'the lowest the light allows';
  return exceeds(index, number('lowestIsoSpeed')) ? 'the lowest with room for highlights' : 'the lowest of the camera';
} // prettier-ignore

/** Written values that fix a candidate's settings. */
export function fixingPatch(shotId: string, kit: Kit, stop: number): readonly PatchOperation[] {
  const add = (key: string, value: string): PatchOperation => ({ op: 'add', path: `/shots/${shotId}/${key}`, value });
  return [
    add('camera', kit.camera),
    add('mode', kit.mode),
    add('lens', kit.lens),
    add('stop', writeQuantity('tStop', stop)),
  ];
}

function alternative(prepared: Prepared, candidate: Candidate, answer: Settings): readonly Alternative[] {
  const worked = workAt(prepared, candidate);
  const settings = settingsOf(prepared.model, worked.values, candidate);
  if (!settings) return [];
  return [
    {
      settings,
      margins: marginsAt(prepared, worked),
      differs: differenceOf(prepared.shoot, answer, settings),
      patch: fixingPatch(prepared.shotId, candidate.kit, candidate.stop),
    },
  ];
}

/** What another answer changes, in the order a crew would say it. */
function differenceOf(shoot: Shoot, from: Settings, to: Settings): string {
  const camera = shoot.kit.cameras[to.camera];
  const words = [
    to.camera === from.camera ? '' : (camera?.title ?? to.camera),
    to.widthCount === from.widthCount && to.heightCount === from.heightCount
      ? ''
      : `${to.widthCount} × ${to.heightCount}`,
    to.lens === from.lens ? '' : (shoot.kit.lenses[to.lens]?.title ?? to.lens),
    Math.abs(to.stop / from.stop - 1) < 1e-6 ? '' : `T${printStopNumber(to.stop)}`,
    Math.abs(to.exposureTime_s / from.exposureTime_s - 1) < 1e-6 ? '' : `${showShutter(to.exposureTime_s).number} s`,
    to.isoSpeed === from.isoSpeed ? '' : `EI ${to.isoSpeed}`,
  ].filter((word) => word !== '');
  return words.length > 0 ? words.join(', ') : 'another mode of the same size';
}

/** How far the action goes, how far it is sharp, and how far the lens is to stay away. */
const REACH = [
  'reachWidth_m',
  'reachHeight_m',
  'reachTowardsLens_m',
  'sharpNear_m',
  'sharpFar_m',
  'clearanceWanted_m',
] as const satisfies readonly (keyof Picture)[];

/** What the recorded picture and each crop of it show, once the frame and a mode are known. */
function pictureOf({ shoot, effective, model }: Prepared, { values, givens }: Worked): { readonly picture?: Picture } {
  const number = (name: string) => known(model, values, name);
  const [fieldWidth_m, fieldHeight_m] = [number('capturedField_m'), number('capturedFieldHeight_m')];
  if (fieldWidth_m === undefined || fieldHeight_m === undefined) return {};
  const crops = deliverablesOf(shoot, effective.shot).flatMap((deliverable, i): readonly Crop[] => {
    const [width_m, height_m] = [number(`fieldWidth${i}_m`), number(`fieldHeight${i}_m`)];
    if (width_m === undefined || height_m === undefined) return [];
    const { title = deliverable, safeFraction } = shoot.deliverables[deliverable] ?? {};
    return [{ deliverable, title, width_m, height_m, ...(safeFraction === undefined ? {} : { safeFraction }) }];
  });
  const reach = REACH.flatMap((name) => {
    const value = number(name);
    return value === undefined ? [] : [[name, value] as const];
  });
  const [frame_m, across] = [number('frameWidth_m'), number('deliveredWidth0_px')];
  const pixel = frame_m === undefined || across === undefined ? {} : { deliveredPixel_m: frame_m / across };
  const reframeFraction = givens.get('reframeFraction')?.value ?? 0;
  return { picture: { fieldWidth_m, fieldHeight_m, reframeFraction, ...pixel, crops, ...Object.fromEntries(reach) } };
}

const CLOCK_SAMPLES = 48;

/** The shot on its two clocks, once its rate and its length are known. */
function clocksOf({ shoot, effective, model }: Prepared, { values }: Worked): { readonly clocks?: Clocks } {
  const { shot } = effective;
  const playRate = playRateOf(shoot, shot);
  const captureRate_fps = known(model, values, 'captureRate_fps');
  const actionTime_s = known(model, values, 'coveredTime_s');
  const handles_s = known(model, values, 'handles_s') ?? 0;
  if (!playRate || captureRate_fps === undefined || actionTime_s === undefined) return {};
  const recordTime_s = known(model, values, 'recordTime_s');
  const common = { actionTime_s, handles_s, playRate, ...(recordTime_s === undefined ? {} : { recordTime_s }) };
  const knots = shot.speed.knots as readonly { readonly screenTime_s: number; readonly speedFraction: number }[];
  if (knots.length > 0) {
    const start = knots[0]!.screenTime_s;
    const end = knots[knots.length - 1]!.screenTime_s;
    const length = end - start;
    const shape = shot.speed.between ?? 'linear';
    const samples = Array.from({ length: CLOCK_SAMPLES + 1 }, (_, i) => {
      const screenTime_s = (length * i) / CLOCK_SAMPLES;
      return { screenTime_s, realTime_s: realTimeAt_s(knots, shape, Math.min(end, start + screenTime_s)) };
    });
    const speeds = knots.map(({ speedFraction }) => speedFraction);
    return { clocks: { ...common, screenTime_s: length, samples, slowestFraction: Math.min(...speeds), fastestFraction: Math.max(...speeds) } };
  }
  const fraction = ratioOf(playRate) / captureRate_fps;
  const screenTime_s = actionTime_s / fraction;
  const samples = [
    { screenTime_s: 0, realTime_s: 0 },
    { screenTime_s, realTime_s: actionTime_s },
  ];
  return { clocks: { ...common, screenTime_s, samples, slowestFraction: fraction, fastestFraction: fraction } };
} // prettier-ignore
