/** Where lamps may stand, which may stand there, and what each would give every shot at full level. */
import type { Lamp, PlacedLamp, Shoot } from '../document/schema.ts';
import type { Position } from '../document/shape.ts';
import { FAR_SIZES } from '../laws/light/area/nearness.ts';
import { largestDimension_m } from '../laws/light/photometry/photometry.ts';
import { acrossAxis, lightAt_lx, luminanceSeen_cd_per_m2, type LightSource } from '../laws/light/placed/source.ts';
import { lightOfSetup, towardsCamera, withSetup, type View } from '../plan/lighting.ts';
import { photometryOf } from '../plan/photometry.ts';
import { settablePlace } from '../plan/settable.ts';
import type { LightNeed } from './lightNeeds.ts';

/** The part of the space round the subject where stands may go. */
export interface PlaceBounds {
  /** Turned about the subject, 0 in front and 90 to its right; from may be above to, across 180. */
  readonly azimuthFrom_deg: number;
  readonly azimuthTo_deg: number;
  readonly elevationFrom_deg: number;
  readonly elevationTo_deg: number;
  readonly nearest_m: number;
  readonly farthest_m: number;
}

/** All round, from a little above the table to steep, as far as usual stands go; common practice, no source. */
export const USUAL_BOUNDS: PlaceBounds = {
  azimuthFrom_deg: -180,
  azimuthTo_deg: 180,
  elevationFrom_deg: 15,
  elevationTo_deg: 60,
  nearest_m: 0.8,
  farthest_m: 3,
};

/** Nearer than this no lamp is sent, whatever it is: heat, shadows and the lens are in the way. */
export const NEAREST_m = 0.4;

const STEP_deg = 30;
const STEP_UP_deg = 15;
const DISTANCES = 5;

export type Side = 'front' | 'right' | 'behind' | 'left';

/** One lamp at one place. */
export interface Candidate {
  readonly lamp: string;
  readonly at: Position;
  readonly floodFraction?: number;
  /** Seen from the first camera. */
  readonly side: Side;
  /** Of this many lamps one may stand: they would be in each other's way. */
  readonly direction: string;
  /** At full level, for each need in turn: lux or cd/m². */
  readonly gives: readonly number[];
  /** Illuminance at full level on the surface that counts, for each need in turn. */
  readonly illuminance_lx: readonly number[];
  /** Lies to the right of the first camera's axis, 1, to its left, −1, or neither, 0. */
  readonly hand: -1 | 0 | 1;
}

const RADIANS_per_deg = Math.PI / 180;

const turned = (angle_deg: number): number => ((((angle_deg + 180) % 360) + 360) % 360) - 180;

interface Place {
  readonly at: Position;
  readonly azimuth_deg: number;
  readonly distance_m: number;
  readonly direction: string;
}

function steps(from: number, to: number, step: number): readonly number[] {
  const count = Math.max(0, Math.ceil((to - from) / step - 1e-9));
  return Array.from({ length: count + 1 }, (_, i) => from + (count === 0 ? 0 : ((to - from) * i) / count));
}

/** A grid of places within bounds. Throws RangeError for bounds out of order. */
export function placesWithin(bounds: PlaceBounds): readonly Place[] {
  const { azimuthFrom_deg, azimuthTo_deg, elevationFrom_deg, elevationTo_deg, nearest_m, farthest_m } = bounds;
  if (!Object.values(bounds).every(Number.isFinite)) throw new RangeError('bounds must be finite');
  if (!(nearest_m > 0 && farthest_m >= nearest_m)) throw new RangeError(`distances must be positive and in order, got ${nearest_m} to ${farthest_m}`);
  if (!(elevationFrom_deg >= -90 && elevationTo_deg <= 90 && elevationTo_deg >= elevationFrom_deg))
    throw new RangeError(`elevations must lie within -90 to 90 in order, got ${elevationFrom_deg} to ${elevationTo_deg}`);
  const turn = azimuthTo_deg >= azimuthFrom_deg ? azimuthTo_deg - azimuthFrom_deg : azimuthTo_deg - azimuthFrom_deg + 360;
  const azimuths = new Set(steps(0, Math.min(360, turn), STEP_deg).map((by) => turned(azimuthFrom_deg + by)));
  const places: Place[] = [];
  for (const azimuth_deg of azimuths)
    for (const elevation_deg of steps(elevationFrom_deg, elevationTo_deg, STEP_UP_deg))
      for (let i = 0; i < DISTANCES; i += 1) {
        if (i > 0 && farthest_m === nearest_m) break;
        const distance_m = nearest_m * (farthest_m / nearest_m) ** (i / (DISTANCES - 1));
        const [x, y, z] = towardsCamera({ azimuth_deg, elevation_deg });
        const at = { right_m: settablePlace(x * distance_m), away_m: settablePlace(y * distance_m), up_m: settablePlace(z * distance_m) };
        places.push({ at, azimuth_deg, distance_m, direction: `${azimuth_deg}/${elevation_deg}` });
      }
  return places;
} // prettier-ignore

const behind = ({ azimuth_deg, elevation_deg }: View): string => `behind ${azimuth_deg}/${elevation_deg}`;

/** Places straight behind the subject, as a camera sees it. */
function placesBehind({ view }: LightNeed, { nearest_m, farthest_m }: PlaceBounds): readonly Place[] {
  const [x, y, z] = towardsCamera(view);
  return steps(0, 1, 1 / (DISTANCES - 1)).map((share) => {
    const distance_m = Math.max(NEAREST_m, nearest_m * (farthest_m / nearest_m) ** share);
    const at = { right_m: settablePlace(-x * distance_m), away_m: settablePlace(-y * distance_m), up_m: settablePlace(-z * distance_m) };
    return { at, azimuth_deg: turned(view.azimuth_deg + 180), distance_m, direction: behind(view) };
  });
} // prettier-ignore

/** How near a lamp may come: five times its face, or of its opening, where it is taken for a point. */
function nearestOf_m(shoot: Shoot, lamp: Lamp): number {
  const file = lamp.file === undefined ? undefined : shoot.files[lamp.file];
  if (file) {
    const grid = photometryOf(shoot)?.get(file.sha256 ?? '');
    return Math.max(NEAREST_m, grid ? FAR_SIZES * largestDimension_m(grid.opening) : 0);
  }
  const { faceWidth_m = 0, faceHeight_m = 0, luminance_cd_per_m2 } = lamp.face;
  const isFace = faceWidth_m > 0 && (luminance_cd_per_m2 !== undefined || lamp.beam_deg === undefined);
  return isFace ? NEAREST_m : Math.max(NEAREST_m, FAR_SIZES * Math.max(faceWidth_m, faceHeight_m));
} // prettier-ignore

/** The camera's own body and hands take up this much round its axis, seen from the subject; common practice, no source. */
const CAMERA_HALF_deg = 12;

/** Whether a lamp would be seen, stand before the lens, or shine into the camera's back. */
function isInTheWay({ right_m, away_m, up_m }: Position, size_m: number, need: LightNeed): boolean {
  const { view, settings, fieldWidth_m = 0, fieldHeight_m = 0 } = need;
  const axis = towardsCamera(view);
  const far = settings.sensorToSubject_m;
  const lamp = [right_m, away_m, up_m] as const;
  const along = lamp[0] * axis[0] + lamp[1] * axis[1] + lamp[2] * axis[2];
  const away = Math.hypot(...lamp);
  const fromAxis_m = Math.sqrt(Math.max(0, away ** 2 - along ** 2));
  const depth_m = far - along;
  if (depth_m > 0) {
    const half_m = (Math.hypot(fieldWidth_m, fieldHeight_m) / 2 / far) * depth_m;
    if (fromAxis_m < half_m + size_m / 2) return true;
  }
  return along > settings.workingDistance_m && fromAxis_m < away * Math.sin(CAMERA_HALF_deg * RADIANS_per_deg);
}

/** Of the light in the middle, what must be left at either edge of the picture: a stop less. */
const LEAST_AT_EDGE = 0.5;

/** Whether a lamp lights the picture of a shot from edge to edge. */
function coversPicture(source: LightSource, { view, fieldWidth_m }: LightNeed): boolean {
  if (fieldWidth_m === undefined || source.kind === 'face') return true;
  const camera = towardsCamera(view);
  const { right } = acrossAxis([-camera[0], -camera[1], -camera[2]]);
  const towardsLamp = Math.hypot(...source.at);
  const normal = source.at.map((value) => value / towardsLamp) as [number, number, number];
  const at = (offset_m: number) => lightAt_lx(source, right[0] * offset_m, right[1] * offset_m, right[2] * offset_m, ...normal);
  const middle = at(0);
  return Math.min(at(-fieldWidth_m / 2), at(fieldWidth_m / 2)) >= LEAST_AT_EDGE * middle;
} // prettier-ignore

/** Whether a face behind the subject fills the picture. */
function fillsPicture({ face }: Lamp, distance_m: number, { settings, fieldWidth_m, fieldHeight_m }: LightNeed): boolean {
  if (fieldWidth_m === undefined || fieldHeight_m === undefined) return false;
  const grown = (settings.sensorToSubject_m + distance_m) / settings.sensorToSubject_m;
  const [width_m, height_m] = [fieldWidth_m * grown, fieldHeight_m * grown];
  const { faceWidth_m = 0, faceHeight_m } = face;
  return faceHeight_m === undefined ? faceWidth_m >= Math.hypot(width_m, height_m) : faceWidth_m >= width_m && faceHeight_m >= height_m;
} // prettier-ignore

function sideOf(azimuth_deg: number, need: LightNeed): Side {
  const by = turned(azimuth_deg - need.view.azimuth_deg);
  return Math.abs(by) <= 45 ? 'front' : Math.abs(by) >= 135 ? 'behind' : by > 0 ? 'right' : 'left';
}

/** Nearer to the camera's axis than this share of its distance, a lamp lights both sides alike. */
const ON_AXIS = 0.17;

export function handOf({ right_m, away_m, up_m }: Position, { view }: LightNeed): -1 | 0 | 1 {
  const turn = view.azimuth_deg * RADIANS_per_deg;
  const across = right_m * Math.cos(turn) + away_m * Math.sin(turn);
  return Math.abs(across) < ON_AXIS * Math.hypot(right_m, away_m, up_m) ? 0 : across > 0 ? 1 : -1;
}

/** From spot to flood in these steps, the narrowest that covers the picture. */
const FLOODS = [0, 0.25, 0.5, 0.75, 1];

interface Tried {
  readonly id: string;
  readonly lamp: string;
  readonly place: Place;
  readonly floodFraction: number;
}

export interface Asked {
  readonly shoot: Shoot;
  readonly setupId: string;
  readonly needs: readonly LightNeed[];
  readonly bounds: PlaceBounds;
  /** Ids of kit lamps. */
  readonly lamps: readonly string[];
}

/** Every lamp at every place that is any use, with what it gives; in an order that depends on what is written alone. */
export function candidatesOf({ shoot, setupId, needs, bounds, lamps }: Asked): readonly Candidate[] {
  const around = placesWithin(bounds);
  const tried: Tried[] = [];
  for (const lamp of lamps) {
    const of = shoot.kit.lamps[lamp]!;
    const nearest_m = nearestOf_m(shoot, of);
    const size_m = Math.max(of.face.faceWidth_m ?? 0, of.face.faceHeight_m ?? 0);
    const floods = of.flood.illuminance_lx === undefined || of.file !== undefined ? [0] : FLOODS;
    const places = [
      ...around.filter(({ at, distance_m }) => distance_m >= nearest_m && !needs.some((need) => isInTheWay(at, size_m, need))),
      ...needs.filter(({ kind }) => kind === 'luminance').flatMap((need) => placesBehind(need, bounds).filter(({ distance_m }) => fillsPicture(of, distance_m, need))),
    ];
    for (const place of places) for (const floodFraction of floods) tried.push({ id: `c${tried.length}`, lamp, place, floodFraction });
  }
  return judged(shoot, setupId, needs, tried);
} // prettier-ignore

function judged(shoot: Shoot, setupId: string, needs: readonly LightNeed[], tried: readonly Tried[]): readonly Candidate[] {
  const [first] = needs;
  if (!first || tried.length === 0) return [];
  const placed = Object.fromEntries(tried.map(({ id, lamp, place, floodFraction }): [string, PlacedLamp] => [id, { lamp, at: place.at, modifiers: [], doors: {}, ...(floodFraction > 0 ? { floodFraction } : {}) }]));
  const trial = withSetup(shoot, setupId, (setup) => ({ ...setup, lamps: placed }));
  const lights = needs.map(({ view }) => lightOfSetup(trial, setupId, view));
  const sources = new Map(lights[0]!.lamps.map(({ id, source }) => [id, source]));
  const light = lights.map(({ lamps }) => new Map(lamps.map(({ id, illuminance_lx }) => [id, illuminance_lx])));
  const taken = new Set<string>();
  const candidates: Candidate[] = [];
  for (const { id, lamp, place, floodFraction } of tried) {
    const spot = `${lamp} ${place.at.right_m} ${place.at.away_m} ${place.at.up_m}`;
    const source = sources.get(id);
    if (!source || taken.has(spot)) continue;
    const illuminance_lx = needs.map((_, i) => light[i]!.get(id)!);
    const gives = needs.map((need, i) => (need.kind === 'illuminance' ? illuminance_lx[i]! : luminanceTo(source, place, need)));
    const isOfUse = gives.every(Number.isFinite) && gives.some((value) => value > 0);
    if (!isOfUse || !needs.every((need, i) => need.kind === 'luminance' || gives[i] === 0 || coversPicture(source, need))) continue;
    taken.add(spot);
    candidates.push({ lamp, at: place.at, ...(floodFraction > 0 ? { floodFraction } : {}), side: sideOf(place.azimuth_deg, first), direction: place.direction, gives, illuminance_lx, hand: handOf(place.at, first) });
  }
  return candidates;
} // prettier-ignore

/** What a face straight behind shows the camera of a shot past the flags; a lamp that is not a face shows nothing to count on. */
function luminanceTo(source: LightSource, { direction }: Place, { view }: LightNeed): number {
  if (direction !== behind(view)) return 0;
  const [x, y, z] = towardsCamera(view);
  return luminanceSeen_cd_per_m2([source], [0, 0, 0], [-x, -y, -z])?.luminance_cd_per_m2 ?? 0;
}

/** Directions kept of one lamp on one side and for one need: more would only be more of the same. */
const MOST_ALIKE = 3;

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const group = groups.get(keyOf(one));
    if (group) group.push(one);
    else groups.set(keyOf(one), [one]);
  }
  return [...groups.values()];
}

/**
 * What a search has to look at: of every lamp on every side, for every need, the best few directions at their strongest
 * place; and at their weakest, where less light than a dimmed lamp gives can be wished for.
 */
export function worthTrying(candidates: readonly Candidate[], { isDimmingOfUse }: { readonly isDimmingOfUse: boolean }): readonly Candidate[] {
  const kept = new Set<Candidate>();
  const needCount = candidates[0]?.gives.length ?? 0;
  for (const group of grouped(candidates, ({ lamp, side, hand }) => `${lamp} ${side} ${hand}`))
    for (let need = 0; need < needCount; need += 1) {
      const strongestFirst = (a: Candidate, b: Candidate) => b.gives[need]! - a.gives[need]!;
      const directions = grouped([...group].sort(strongestFirst), ({ direction }) => direction).slice(0, MOST_ALIKE);
      for (const ranked of directions)
        for (const candidate of isDimmingOfUse ? [ranked[0]!, ranked.at(-1)!] : [ranked[0]!])
          if (candidate.gives[need]! > 0) kept.add(candidate);
    }
  return candidates.filter((candidate) => kept.has(candidate));
} // prettier-ignore
