/** Cautions that go with a shot: its own words, and those its figures call for. */
import type { Shot } from '../document/schema.ts';
import type { Margin, ShotPlan } from './types.ts';

/** White paper under this much light is as bright to look at as sunlit snow. */
const BRIGHT_lx = 50_000;

/** What a shot's figures call for, in words for whoever stands beside it; keys point into the safety page. */
export function cautionsOf(shot: Shot, margins: readonly Margin[]): ShotPlan['cautions'] {
  const light = margins.find(({ id, kind }) => id === 'light' && kind === 'illuminance');
  const brightest = Math.max(light?.need ?? 0, light?.have ?? 0);
  const own = shot.cautions.map((says) => ({ key: 'own', says }));
  return [
    ...own,
    ...(brightest > BRIGHT_lx
      ? [{ key: 'intense-light', says: 'Light to compare with full sun, or beyond it: light it only for focus and takes, do not look into lamps, keep skin and eyes out of the beam.' }]
      : []),
    ...(shot.rigs.length > 0 ? [{ key: 'moving-rigs', says: 'A rig moves: stand clear and agree who arms it, who fires it and what stops it.' }] : []),
    ...(shot.hero.life_s !== undefined ? [{ key: 'heat', says: 'Lamps this strong heat what they light: strike or dim them between takes.' }] : []),
  ];
} // prettier-ignore
