/** One answer of the finder: its patch, and what planning again says it does. */
import { writeQuantity } from '../base/quantity.ts';
import { applyPatch, withParents, writtenValueAt } from '../document/patch.ts';
import { readShoot } from '../document/read.ts';
import type { Lamp, Shoot } from '../document/schema.ts';
import type { Position } from '../document/shape.ts';
import { writePosition } from '../document/write.ts';
import type { Written } from '../document/written.ts';
import { LAMP_EFFICACY_lm_per_W } from '../laws/heat/irradiance.ts';
import { CAUTION_WORDS } from '../plan/cautions.ts';
import { heatKindOf, warmsOf } from '../plan/heat.ts';
import { lightOfSetup, type SetupLight, withSetup } from '../plan/lighting.ts';
import { photometryOf, tellPhotometry } from '../plan/photometry.ts';
import { planShot } from '../plan/planShot.ts';
import type { Figure, MarginState, PatchOperation } from '../plan/types.ts';
import type { Chosen } from './lampProgram.ts';
import { holding, lightMargin, type LightNeed } from './lightNeeds.ts';

/** A lamp as an answer sets it up. */
export interface AnswerLamp {
  /** Under this id it stands in the set-up once the patch is made. */
  readonly id: string;
  readonly lamp: string;
  readonly title: string;
  readonly isHired: boolean;
  readonly at: Position;
  readonly distance_m: number;
  readonly levelFraction: number;
  readonly floodFraction?: number;
  readonly power_W?: number;
  /** For the first need of its kind: on the surface that counts. */
  readonly illuminance_lx: number;
}

/** What an answer gives one shot, planned again with the settings that its need was stated for. */
export interface ShotLight {
  readonly shotId: string;
  readonly title: string;
  readonly kind: 'illuminance' | 'luminance';
  readonly light: Figure;
  readonly need: number;
  readonly stops: Figure;
  readonly state: MarginState;
  /** Limits that are short once its free settings are chosen anew, and are not as the shoot stands. */
  readonly thenShort: readonly string[];
}

export interface LightAnswer {
  readonly patch: readonly PatchOperation[];
  readonly placed: readonly AnswerLamp[];
  readonly raised: Chosen['raised'];
  readonly shots: readonly ShotLight[];
  /** Whether every shot has the spare that was asked for at the low end of its band. */
  readonly reaches: boolean;
  /** Of all that burns in the set-up, and so its heat on the set; absent where a lamp does not say. */
  readonly power_W?: number;
  /** Heat that comes with the light on the subject, the shot with most of it. */
  readonly heat_W_per_m2: number;
  readonly lampCount: number;
  /** A day of what is hired; absent where one of them has no price. */
  readonly hirePrice?: number;
  /** Lamps to hire, by kit id, with how many pieces. */
  readonly toHire: readonly { readonly lamp: string; readonly title: string; readonly pieceCount: number }[];
  readonly keyToFillRatio?: number;
  readonly says: string;
  readonly notices: readonly string[];
  readonly cautions: readonly { readonly key: string; readonly says: string }[];
  /** Whether the solver proved that nothing costs less. */
  readonly isProven: boolean;
}

/** Full sun, beyond which the usual caution on intense light is shown. */
const BRIGHT_lx = 50_000;

/** From this much heat on the subject the caution on heat is shown: about that of full sun. From memory. */
const hotFrom_W_per_m2 = 1000;

const efficacyOf = (lamp: Lamp | undefined): number => LAMP_EFFICACY_lm_per_W[heatKindOf(lamp?.kind)];

/** Efficacy of a lamp's radiation, the least of its kind; of a hot filament where nobody says what it is. */
export const efficacyOfLamp_lm_per_W = efficacyOf;

export interface Setting {
  readonly shoot: Shoot;
  readonly written: Written;
  readonly setupId: string;
  readonly needs: readonly LightNeed[];
  /** Titles of the limits short as the shoot stands, for each need. */
  readonly shortNow: readonly ReadonlySet<string>[];
  readonly isKept: boolean;
  readonly spare_stops: number;
  readonly keyHand?: -1 | 1;
}

/** Ids that the set-up has never had, in order: numbers go on from the highest of the same name. */
function newIds(written: Written, setupId: string, lamps: readonly string[]): readonly string[] {
  const used = new Set(Object.keys((writtenValueAt(written, `/lighting/${setupId}/lamps`) ?? {}) as object));
  return lamps.map((lamp) => {
    for (let number = 1; ; number += 1) {
      const id = `${lamp}-${number}`;
      if (used.has(id)) continue;
      used.add(id);
      return id;
    }
  });
}

/** The patch that sets up what was chosen. */
export function patchOf({ shoot, written, setupId, needs, isKept }: Setting, chosen: Chosen, ids: readonly string[]): readonly PatchOperation[] {
  const at = `/lighting/${setupId}`;
  const setup = shoot.lighting[setupId]!;
  const isWritten = (key: string) => (writtenValueAt(written, `${at}/${key}`) ?? null) !== null;
  // A figure that nobody read would hide the lamps; one that was read stays until the set is read again.
  const hiding = setup.reading === 'metered' ? [] : (['illuminance', 'luminance'] as const).filter((key) => isWritten(key) && needs.some(({ kind }) => kind === key));
  const operations: PatchOperation[] = [
    ...hiding.map((key): PatchOperation => ({ op: 'remove', path: `${at}/${key}` })),
    ...(isKept ? [] : Object.keys(setup.lamps).map((id): PatchOperation => ({ op: 'remove', path: `${at}/lamps/${id}` }))),
    ...chosen.raised.map(({ id, levelFraction }): PatchOperation => ({ op: 'add', path: `${at}/lamps/${id}/level`, value: `${Math.round(levelFraction * 100)} %` })),
    ...chosen.placed.map(({ candidate, levelFraction }, i): PatchOperation => ({
      op: 'add',
      path: `${at}/lamps/${ids[i]!}`,
      value: {
        lamp: candidate.lamp,
        at: writePosition(candidate.at),
        ...(candidate.floodFraction === undefined ? {} : { flood: `${Math.round(candidate.floodFraction * 100)} %` }),
        ...(levelFraction < 1 ? { level: `${Math.round(levelFraction * 100)} %` } : {}),
      },
    })),
  ];
  return withParents(written, operations);
} // prettier-ignore

/** The shoot with a patch made, and what its photometric files hold kept in mind. */
export function patched(shoot: Shoot, written: Written, patch: readonly PatchOperation[]): Shoot {
  const after = readShoot(applyPatch(written, patch)).shoot;
  const files = photometryOf(shoot);
  if (files && photometryOf(after) === undefined) tellPhotometry(after, files);
  return after;
}

/** Without a reading, so that the lamps are what is planned with. */
const unmetered = (shoot: Shoot, setupId: string): Shoot =>
  withSetup(shoot, setupId, ({ illuminance_lx: _e, luminance_cd_per_m2: _l, ...rest }) => rest);

/** Titles of the limits of a shot that are short. */
export const shortTitles = (shoot: Shoot, shotId: string): ReadonlySet<string> => new Set(planShot(shoot, shotId, 1).margins.flatMap(({ state, title }) => (state === 'short' ? [title] : []))); // prettier-ignore

type Tried = Omit<ShotLight, 'thenShort'>;

function triedOut(after: Shoot, need: LightNeed): Tried {
  const { shotId, title, kind } = need;
  const held = lightMargin(planShot(holding(after, need), shotId, 1));
  const { have = NaN, need: asked = need.need, stops = { value: -Infinity, low: -Infinity, high: -Infinity }, state = 'unknown' } = held ?? {};
  return { shotId, title, kind, light: { value: have, low: asked * 2 ** stops.low, high: asked * 2 ** stops.high }, need: asked, stops, state };
} // prettier-ignore

/** A choice planned again, before all is said about it. */
export interface Trial {
  readonly chosen: Chosen;
  readonly ids: readonly string[];
  readonly patch: readonly PatchOperation[];
  readonly after: Shoot;
  readonly shots: readonly Tried[];
  /** Whether every shot has the spare that was asked for at the low end of its band. */
  readonly reaches: boolean;
  readonly isProven: boolean;
}

/** Plans every shot again as it would be lit, with the settings that its need was stated for. */
export function trialOf(setting: Setting, chosen: Chosen, isProven: boolean): Trial {
  const { shoot, written, setupId, needs, spare_stops } = setting;
  const ids = newIds(written, setupId, chosen.placed.map(({ candidate }) => candidate.lamp));
  const patch = patchOf(setting, chosen, ids);
  const after = unmetered(patched(shoot, written, patch), setupId);
  const shots = needs.map((need) => triedOut(after, need));
  const reaches = shots.length > 0 && shots.every(({ stops }) => stops.low >= spare_stops - 1e-9);
  return { chosen, ids, patch, after, shots, reaches, isProven };
} // prettier-ignore

function ratioOf(light: SetupLight, hand: (id: string) => number, keyHand: -1 | 1): number | undefined {
  const side = (of: number) => light.lamps.reduce((sum, { id, illuminance_lx }) => sum + (hand(id) === of ? illuminance_lx : 0), 0);
  const fill = side(-keyHand);
  return fill > 0 ? side(keyHand) / fill : undefined;
} // prettier-ignore

/** Names with how many of each, in the order met. */
export function counted(titles: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const title of titles) counts.set(title, (counts.get(title) ?? 0) + 1);
  return [...counts].map(([title, count]) => (count > 1 ? `${count} × ${title}` : title)).join(' + ');
}

/** Everything there is to say about a trial. `handOf` tells on which side of the camera a place is. */
export function answerOf(setting: Setting, trial: Trial, handOf: (at: Position) => number): LightAnswer {
  const { shoot, setupId, needs, keyHand, shortNow } = setting;
  const { chosen, ids, patch, after, reaches, isProven } = trial;
  const shots = trial.shots.map((shot, i): ShotLight => ({ ...shot, thenShort: [...shortTitles(after, shot.shotId)].filter((title) => !shortNow[i]!.has(title)) }));
  const lights = needs.map(({ view }) => lightOfSetup(after, setupId, view));
  const [light] = lights;
  const burning = light?.lamps.filter(({ isOff }) => !isOff) ?? [];
  const powers = burning.map(({ power_W }) => power_W);
  const heat = lights.map(({ lamps }) => lamps.reduce((sum, { illuminance_lx, lamp }) => sum + (illuminance_lx > 0 ? illuminance_lx / efficacyOf(shoot.kit.lamps[lamp ?? '']) : 0), 0));
  const placed = chosen.placed.map(({ candidate, levelFraction }, i): AnswerLamp => {
    const { lamp, at, floodFraction } = candidate;
    const of = shoot.kit.lamps[lamp]!;
    return {
      id: ids[i]!, lamp, title: of.title ?? lamp, isHired: of.availability === 'hire', at, distance_m: Math.hypot(at.right_m, at.away_m, at.up_m), levelFraction,
      ...(floodFraction === undefined ? {} : { floodFraction }), ...(of.power_W === undefined ? {} : { power_W: of.power_W * levelFraction }),
      illuminance_lx: light?.lamps.find(({ id }) => id === ids[i])?.illuminance_lx ?? NaN,
    };
  });
  const hired = placed.filter(({ isHired }) => isHired);
  const prices = hired.map(({ lamp }) => shoot.kit.lamps[lamp]!.dayPrice);
  const toHire = [...new Map(hired.map(({ lamp, title }) => [lamp, title]))].map(([lamp, title]) => ({ lamp, title, pieceCount: hired.filter((each) => each.lamp === lamp).length }));
  const hands = new Map(Object.entries(after.lighting[setupId]!.lamps).map(([id, { at }]) => [id, at ? handOf(at) : 0]));
  const keyToFillRatio = light && keyHand !== undefined ? ratioOf(light, (id) => hands.get(id) ?? 0, keyHand) : undefined;
  const brightest = Math.max(0, ...lights.map(({ illuminance_lx }) => illuminance_lx));
  const heat_W_per_m2 = Math.max(0, ...heat);
  const isMetered = shoot.lighting[setupId]!.reading === 'metered' && needs.some(({ kind }) => shoot.lighting[setupId]![kind === 'illuminance' ? 'illuminance_lx' : 'luminance_cd_per_m2'] !== undefined);
  const caution = (key: string) => ({ key, says: CAUTION_WORDS[key] ?? ELECTRICITY });
  return {
    patch,
    placed,
    raised: chosen.raised,
    shots,
    reaches,
    ...(powers.every((power) => power !== undefined) ? { power_W: powers.reduce((sum, power) => sum + power, 0) } : {}),
    heat_W_per_m2,
    lampCount: placed.length,
    ...(prices.every((price) => price !== undefined) ? { hirePrice: prices.reduce((sum, price) => sum + price, 0) } : {}),
    toHire,
    ...(keyToFillRatio === undefined ? {} : { keyToFillRatio }),
    says: saysOf(placed, chosen),
    notices: [
      ...(isMetered ? ['The set-up has a reading from the set, and it counts until the set is read again: take it with these lamps.'] : []),
      ...new Set(burning.flatMap(({ notices }) => notices.map((notice) => `${notice}.`))),
    ],
    cautions: [
      ...(placed.length > 0 || chosen.raised.length > 0 ? [caution('electricity')] : []),
      ...(brightest > BRIGHT_lx ? [caution('intense-light')] : []),
      ...(heat_W_per_m2 > hotFrom_W_per_m2 || needs.some(({ shotId }) => shoot.shots[shotId]!.hero.life_s !== undefined || warmsOf(shoot, shoot.shots[shotId]!) !== undefined) ? [caution('heat')] : []),
    ],
    isProven,
  };
} // prettier-ignore

/** The safety page's first line on it, for the set. */
const ELECTRICITY =
  'More lamps draw more current: whoever holds the licence decides what each circuit and cable carries, under the code that holds there.';

function saysOf(placed: readonly AnswerLamp[], { raised }: Chosen): string {
  const up = raised.map(({ id, levelFraction }) => `${id} up to ${Math.round(levelFraction * 100)} %`);
  return (
    [counted(placed.map(({ title }) => title)), ...up].filter((words) => words !== '').join('; ') ||
    'What stands already is enough'
  );
}

/** A line for people: what is lacking at the worst shot. */
export function shortfallOf({ shots }: Pick<LightAnswer, 'shots'>, spare_stops: number): { readonly worst: ShotLight; readonly lack_stops: number; readonly lack: number } | undefined {
  const [worst] = [...shots].sort((a, b) => a.stops.low - b.stops.low);
  if (!worst) return undefined;
  return { worst, lack_stops: spare_stops - worst.stops.low, lack: Math.max(0, worst.need * 2 ** spare_stops - worst.light.low) };
} // prettier-ignore

/** Light with its unit, as a sentence has it: `41 klx`. */
export function sayLight(kind: 'illuminance' | 'luminance', value: number): string {
  return writeQuantity(kind, Number(value.toPrecision(2)));
}
