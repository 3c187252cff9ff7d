/** Cautions that go with a shot: its own words, those of its event, and those its figures call for. */
import type { Shot } from '../document/schema.ts';
import { eventNamed } from '../laws/events/catalogue.ts';
import type { Margin, ShotPlan } from './types.ts';

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

/** What a shot calls for, without repeating itself. */
export function cautionsOf(shot: Shot, margins: readonly Margin[]): ShotPlan['cautions'] {
  const light = margins.find(({ id, kind }) => id === 'light' && kind === 'illuminance');
  const brightest = Math.max(light?.need ?? 0, light?.have ?? 0);
  const keys = new Set([
    ...(brightest > BRIGHT_lx ? ['intense-light'] : []),
    ...(shot.rigs.length > 0 ? ['moving-rigs'] : []),
    ...(shot.hero.life_s !== undefined ? ['heat'] : []),
    ...(shot.action.event === undefined ? [] : (eventNamed(shot.action.event)?.cautions ?? [])),
  ]);
  return [
    ...shot.cautions.map((says) => ({ key: 'own', says })),
    ...[...keys].flatMap((key) => (CAUTION_WORDS[key] === undefined ? [] : [{ key, says: CAUTION_WORDS[key] }])),
  ];
}
