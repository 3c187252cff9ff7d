/** Cautions that go with a shot: its own words, those of its event, and those its figures call for. */
import type { Cue, Shoot, Shot } from '../document/schema.ts';
import { eventNamed } from '../laws/events/catalogue.ts';
import type { LampShare } from './lighting.ts';
import { cuesOf } from './timing/structure.ts';
import type { LimitId, Margin, ShotPlan } from './types.ts';

/** White paper under this much light is as bright to look at as sunlit snow. */
const BRIGHT_lx = 50_000;

/** Each in a line for whoever stands beside it; the keys are the headings of the safety page. */
export const CAUTION_WORDS: Readonly<Record<string, string>> = {
  'intense-light':
    'Light to compare with full sun, or beyond it: light it only for focus and takes, do not look into lamps, keep skin and eyes out of the beam.',
  'moving-rigs': 'A rig moves: stand clear and agree who arms it, who fires it and what stops it.',
  heat: 'Lamps this strong heat what they light: strike or dim them between takes.',
  'liquids-near-power':
    'Liquid near lamps and mains: keep connectors above and away from where it can reach, and dry the floor before each take.',
  'splash-and-flying-parts':
    'Parts and liquid fly: eye protection nearby, a guard before the lens, nobody in the line.',
  glass: 'Glass breaks or is meant to: guard, gloves and eye protection, and count the pieces in and out.',
  flames: 'Open flame: somebody watches it with the right extinguisher, and the venue and local code allow it.',
  'powders-and-dust': 'Fine powder in the air burns and harms lungs: no flame or spark near it, masks on, air it out.',
  'pressure-and-projectiles':
    'Something under pressure lets go: nobody in its line, a guard that holds it, eye and ear protection.',
};

/** Said where a limit is short, under the heading of the safety page that has more of it. */
const SHORT_WORDS: Readonly<Partial<Record<LimitId, { readonly key: string; readonly says: string }>>> = {
  'eye-distance': {
    key: 'intense-light',
    says: 'From where people work, a lamp is brighter to look into than a published limit lets an eye rest on it for: turn it down or away while hands are in, backs to it, tinted eyewear for whoever must face it, and nobody looks in. This is an alert, not an assessment: the maker’s report on its class and a qualified person decide.',
  },
  'hero-life': {
    key: 'heat',
    says: 'The product may change before its take is over: strike or dim the lamps until the roll, and keep hands and everything that can burn away from what the beam heats.',
  },
};

/** An arc nearer than this gives enough ultraviolet to ask after its glass; common practice, no source. */
const NEAR_ARC_m = 1;

/** Said of an arc that stands near. */
const ARC_WORDS =
  'An arc stands within a metre: its front glass and filters stay on, whole and shut, because without them its ultraviolet burns eyes and skin within minutes and the lamp can burst. With a cracked glass it goes out of use. Glasses and filled vessels nearby warm and cool slowly, or they crack.';

/** Arcs that burn near the subject. */
const hasNearArc = ({ shoot, lamps }: LitBy): boolean =>
  lamps.some(({ lamp, isOff, distance_m }) => !isOff && distance_m < NEAR_ARC_m && shoot.kit.lamps[lamp ?? '']?.kind === 'discharge'); // prettier-ignore

/** What a rig sets going calls for beyond standing clear of it. */
const CUE_CAUTIONS: Readonly<Record<NonNullable<Cue['does']>, readonly string[]>> = {
  acts: [],
  falls: ['splash-and-flying-parts'],
  flies: ['pressure-and-projectiles', 'splash-and-flying-parts'],
  swings: [],
  pours: ['liquids-near-power'],
  moves: [],
  lights: ['intense-light'],
};

interface LitBy {
  readonly shoot: Shoot;
  readonly lamps: readonly LampShare[];
}

/** What a shot calls for, without repeating itself. */
export function cautionsOf(
  shot: Shot,
  margins: readonly Margin[],
  litBy?: LitBy,
  rigs: Shoot['kit']['rigs'] = {},
): ShotPlan['cautions'] {
  const light = margins.find(({ id, kind }) => id === 'light' && kind === 'illuminance');
  const brightest = Math.max(light?.need ?? 0, light?.have ?? 0);
  const keys = new Set([
    ...(brightest > BRIGHT_lx ? ['intense-light'] : []),
    ...(shot.rigs.length > 0 || cuesOf(shot).length > 0 ? ['moving-rigs'] : []),
    ...cuesOf(shot).flatMap(([, { does = 'acts', rig }]) => [
      ...CUE_CAUTIONS[does],
      ...(rigs[rig ?? '']?.kind === 'pneumatic' ? ['pressure-and-projectiles'] : []),
    ]),
    ...(shot.hero.life_s !== undefined || margins.some(({ id, have }) => id === 'hero-life' && have !== undefined)
      ? ['heat']
      : []),
    ...(shot.action.event === undefined ? [] : (eventNamed(shot.action.event)?.cautions ?? [])),
  ]);
  return [
    ...shot.cautions.map((says) => ({ key: 'own', says })),
    ...[...keys].flatMap((key) => (CAUTION_WORDS[key] === undefined ? [] : [{ key, says: CAUTION_WORDS[key] }])),
    ...margins.flatMap(({ id, state }) => (state === 'short' ? (SHORT_WORDS[id] ?? []) : [])),
    ...(litBy && hasNearArc(litBy) ? [{ key: 'intense-light', says: ARC_WORDS }] : []),
  ];
}
