/** The lamps that stand in a set-up, each as laws work with it or with what it lacks. */
import type { Lamp, PlacedLamp, Shoot } from '../document/schema.ts';
import { FAR_SIZES } from '../laws/light/area/nearness.ts';
import { panelCorners, polygonFactor, roundCorners, type Vec3 } from '../laws/light/area/polygon.ts';
import { intensityOfReading_cd } from '../laws/light/lamp/intensity.ts';
import { usualFieldAngle_deg } from '../laws/light/lamp/lobe.ts';
import { lampAtBeam } from '../laws/light/lamp/zoom.ts';
import { combinedLoss_stops } from '../laws/light/modifiers/losses.ts';
import { largestDimension_m } from '../laws/light/photometry/photometry.ts';
import { acrossAxis, beamSource, towards, type LightSource } from '../laws/light/placed/source.ts';
import { doorsRead, standing, type PlacedFlag } from './flags.ts';
import { vecOf, type LampLack } from './lampLack.ts';
import { photometryTold } from './photometry.ts';
import { isUnread } from './unread.ts';

/** One lamp of a set-up, as it can be worked with or with what it lacks. */
export interface PlacedSource {
  readonly id: string;
  readonly title: string;
  readonly lamp: string | undefined;
  readonly isOff: boolean;
  /** With the flags that are in its way, and its doors. */
  readonly source?: LightSource;
  /** Its share of the light at the subject, where that was read: then what it gives follows from it. */
  readonly readFraction?: number;
  /** How far its light may be off, P10 to P90, as half a band and a share of it. */
  readonly spreadFraction: number;
  /** Power it draws at this level, where its lamp says; level is taken to scale it. */
  readonly power_W?: number;
  readonly lacks: readonly LampLack[];
  readonly notices: readonly string[];
}

/** How far a stated reading usually is from what a lamp does on the day: a fifth; common practice, no source. */
const USUAL_SPREAD = 0.2;

/** A lamp of the kind that a file was measured on: a tenth; common practice, no source. */
const MEASURED_SPREAD = 0.1;

const ORIGIN: Vec3 = [0, 0, 0];

type Reading = Pick<Lamp, 'illuminance_lx' | 'distance_m' | 'beam_deg' | 'field_deg' | 'unread'>;

/** Every lamp of a set-up behind its flags, with what it needs to be worked with. Never throws for what somebody wrote. */
export function sourcesOf(shoot: Shoot, setupId: string, flags: readonly PlacedFlag[]): readonly PlacedSource[] {
  const setup = shoot.lighting[setupId];
  if (!setup) return [];
  const inTheWay = standing(flags);
  return Object.entries(setup.lamps).map(([id, placed]) => {
    const of = placedSource(shoot, `/lighting/${setupId}/lamps/${id}`, id, placed);
    return of.source && inTheWay.length > 0 ? { ...of, source: { ...of.source, flags: inTheWay } } : of;
  });
}

function placedSource(shoot: Shoot, path: string, id: string, placed: PlacedLamp): PlacedSource {
  const lamp = placed.lamp === undefined ? undefined : shoot.kit.lamps[placed.lamp];
  const title = placed.title ?? lamp?.title ?? id;
  const lacks: LampLack[] = [];
  const lack = (what: string, at: string, unread = false) => lacks.push({ title: `${what} of ${title}`, path: at, isUnread: unread });
  const notices: string[] = [];
  const isOff = placed.isOff === true;
  if (!lamp) lack('Lamp', `${path}/lamp`, isUnread(placed, 'lamp'));
  if (!placed.at) lack('Place', `${path}/at`, isUnread(placed, 'at'));
  if (isUnread(placed, 'aim')) lack('Aim', `${path}/aim`, true);
  if (isUnread(placed, 'level')) lack('Level', `${path}/level`, true);
  if (isUnread(placed, 'modifiers')) lack('Modifiers', `${path}/modifiers`, true);
  const doors = doorsRead(placed);
  for (const side of doors.unread) lack(`Door at the ${side}`, `${path}/doors/${side}`, true);
  const losses: number[] = [];
  for (const modifier of placed.modifiers) {
    const of = shoot.kit.modifiers[modifier];
    if (of?.loss_stops === undefined) lack(`Loss of ${of?.title ?? modifier}`, `/kit/modifiers/${modifier}/loss`, of !== undefined && isUnread(of, 'loss'));
    else losses.push(of.loss_stops);
  }
  const share = (placed.levelFraction ?? 1) * 2 ** -combinedLoss_stops(losses);
  const power_W = lamp?.power_W === undefined ? undefined : isOff ? 0 : lamp.power_W * (placed.levelFraction ?? 1);
  let source: LightSource | undefined;
  let spreadFraction = USUAL_SPREAD;
  if (lamp && placed.at && lacks.length === 0) {
    try {
      const made = lampSource({ shoot, lamp, lampPath: `/kit/lamps/${placed.lamp!}`, placed, title, share });
      if ('lacks' in made) lacks.push(...made.lacks);
      else {
        ({ source, spreadFraction } = made);
        notices.push(...made.notices);
        if (doors.isAny && source.kind === 'face') notices.push(`${title} glows from a face, and doors are worked for a point: its doors are not counted; stand a flag where they are`);
        else if (doors.isAny && source.kind !== 'face') source = { ...source, doors: doors.about(source.axis) };
      }
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      lacks.push({ title: `Light of ${title}`, path: `/kit/lamps/${placed.lamp!}`, isUnread: false, what: error.message });
    }
  }
  const { shareFraction } = placed;
  const common = { id, title, lamp: placed.lamp, isOff, ...(source ? { source } : {}), spreadFraction, ...(power_W === undefined ? {} : { power_W }), notices };
  if (isUnread(placed, 'share')) return { ...common, lacks: isOff ? [] : [{ title: `Share of ${title}`, path: `${path}/share`, isUnread: true }] };
  // Whatever else is not known of it, its light is.
  if (shareFraction !== undefined) return { ...common, readFraction: shareFraction, lacks: [] };
  return { ...common, lacks: isOff ? [] : lacks };
} // prettier-ignore

interface Made {
  readonly source: LightSource;
  readonly spreadFraction: number;
  readonly notices: readonly string[];
}

interface LampGiven {
  readonly shoot: Shoot;
  readonly lamp: Lamp;
  readonly lampPath: string;
  readonly placed: PlacedLamp;
  readonly title: string;
  /** What level and modifiers leave of its light. */
  readonly share: number;
}

function lampSource(given: LampGiven): Made | { readonly lacks: readonly LampLack[] } {
  const { lamp, placed } = given;
  const at = vecOf(placed.at!);
  const axis = towards(at, placed.aim ? vecOf(placed.aim) : ORIGIN);
  if (lamp.file !== undefined || isUnread(lamp, 'file')) return gridOf(given, at, axis);
  const isFace = lamp.face.faceWidth_m !== undefined && (lamp.face.luminance_cd_per_m2 !== undefined || lamp.beam_deg === undefined);
  return isFace ? faceOf(given, at, axis) : beamOf(given, at, axis);
} // prettier-ignore

const lacking = (given: LampGiven, holder: { readonly unread?: readonly string[] }, key: string, what: string, under = ''): { readonly lacks: readonly LampLack[] } => ({
  lacks: [{ title: `${what} of ${given.title}`, path: `${given.lampPath}${under}/${key}`, isUnread: isUnread(holder, key) }],
}); // prettier-ignore

function cornersOf({ lamp: { face } }: LampGiven, centre: Vec3, facing: Vec3): Float64Array {
  const width_m = face.faceWidth_m!;
  const { faceHeight_m } = face;
  return faceHeight_m === undefined
    ? roundCorners({ centre, facing, width_m, height_m: width_m })
    : panelCorners({ centre, facing, width_m, height_m: faceHeight_m });
}

/** A panel: as bright as stated, or as bright as the reading on its axis says. */
function faceOf(given: LampGiven, at: Vec3, axis: Vec3): Made | { readonly lacks: readonly LampLack[] } {
  const { lamp, share } = given;
  const { luminance_cd_per_m2: stated, luminanceSpread_cd_per_m2: statedSpread } = lamp.face;
  const corners = cornersOf(given, at, axis);
  if (stated !== undefined) {
    const spreadFraction = statedSpread === undefined ? USUAL_SPREAD : statedSpread / stated;
    return { source: { kind: 'face', at, axis, corners, luminance_cd_per_m2: stated * share }, spreadFraction, notices: [] };
  }
  if (isUnread(lamp.face, 'luminance')) return lacking(given, lamp.face, 'luminance', 'Luminance of the face', '/face');
  if (lamp.illuminance_lx === undefined) return lacking(given, lamp, 'illuminance', 'Reading');
  if (lamp.distance_m === undefined) return lacking(given, lamp, 'distance', 'Distance of the reading');
  const flat = cornersOf(given, ORIGIN, [0, 0, 1]);
  const factor = polygonFactor(flat, 0, 0, lamp.distance_m, 0, 0, -1);
  const luminance_cd_per_m2 = (share * lamp.illuminance_lx) / (Math.PI * factor);
  return { source: { kind: 'face', at, axis, corners, luminance_cd_per_m2 }, spreadFraction: spreadOf(lamp), notices: [] };
} // prettier-ignore

/** A lamp by its measured file, whose zero lies along its axis. */
function gridOf(given: LampGiven, at: Vec3, axis: Vec3): Made | { readonly lacks: readonly LampLack[] } {
  const { shoot, lamp, share, title, lampPath } = given;
  const file = lamp.file === undefined ? undefined : shoot.files[lamp.file];
  if (!file) return lacking(given, lamp, 'file', 'Photometric file');
  const { name = lamp.file!, sha256 = '' } = file;
  const told = photometryTold(shoot);
  const grid = told?.files.get(sha256);
  if (!grid) {
    const what = told?.unread.get(sha256) ?? `${name} has not been read here, or is no photometric file`;
    return { lacks: [{ title: `Photometric file of ${title}`, path: `${lampPath}/file`, isUnread: false, what }] };
  }
  const { right, up } = acrossAxis(axis);
  const source: LightSource = { kind: 'grid', at, axis, c0: right, c90: up, grid, share };
  return { source, spreadFraction: MEASURED_SPREAD, notices: nearness(title, at, largestDimension_m(grid.opening)) };
}

/** Too near for a point, where it is. */
function nearness(title: string, at: Vec3, size_m: number): readonly string[] {
  if (!(Math.hypot(...at) < FAR_SIZES * size_m)) return [];
  return [`${title} stands nearer than five times its face: taken for a point, it promises more than it gives`];
}

const spreadOf = ({ illuminance_lx, illuminanceSpread_lx }: Lamp): number =>
  illuminanceSpread_lx === undefined ? USUAL_SPREAD : illuminanceSpread_lx / illuminance_lx!;

/** A lamp with a beam: by its readings, between spot and flood where it has both. */
function beamOf(given: LampGiven, at: Vec3, axis: Vec3): Made | { readonly lacks: readonly LampLack[] } {
  const { lamp, placed, share, title } = given;
  const setting = (reading: Reading, under: string) => {
    for (const [key, read, what] of [
      ['illuminance', 'illuminance_lx', 'Reading'],
      ['distance', 'distance_m', 'Distance of the reading'],
      ['beam', 'beam_deg', 'Beam angle'],
    ] as const)
      if (reading[read] === undefined) return lacking(given, reading, key, under === '' ? what : `${what} at flood`, under);
    if (isUnread(reading, 'field')) return lacking(given, reading, 'field', 'Field angle', under);
    const beamAngle_deg = reading.beam_deg!;
    const intensity_cd = intensityOfReading_cd({ illuminance_lx: reading.illuminance_lx!, distance_m: reading.distance_m! });
    return { beamAngle_deg, intensity_cd, fieldAngle_deg: reading.field_deg ?? usualFieldAngle_deg({ beamAngle_deg }) };
  };
  const spot = setting(lamp, '');
  if ('lacks' in spot) return spot;
  const flood = placed.floodFraction ?? 0;
  let now = spot;
  if (isUnread(placed, 'flood')) return { lacks: [{ title: `Flood of ${title}`, path: given.lampPath, isUnread: true }] };
  if (flood > 0) {
    const wide = setting(lamp.flood, '/flood');
    if ('lacks' in wide) return wide;
    const beamAngle_deg = spot.beamAngle_deg * (wide.beamAngle_deg / spot.beamAngle_deg) ** flood;
    now = { beamAngle_deg, ...lampAtBeam([spot, wide], beamAngle_deg) };
  }
  const source = beamSource({ at, axis, intensity_cd: now.intensity_cd * share, beamAngle_deg: now.beamAngle_deg, fieldAngle_deg: now.fieldAngle_deg });
  const size_m = Math.max(lamp.face.faceWidth_m ?? 0, lamp.face.faceHeight_m ?? 0);
  return { source, spreadFraction: spreadOf(lamp), notices: nearness(title, at, size_m) };
} // prettier-ignore
