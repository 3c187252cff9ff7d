/** The event library: what a shot's action may name. */
import { balloonBurst, cork, glassCrack, glassShards, popcorn, powderBurst, waterBalloon } from './breaks.ts';
import { cavityAndJet, crown, dropImpact } from './drops.ts';
import type { FilmedEvent } from './event.ts';
import { fall, fallThroughAir, fruitIntoTank } from './falls.ts';
import { flame, matchStrike } from './fires.ts';
import { bubbleBurst, carbonation, egg, filmBurst, foam, pour, risingBubble, viscousCoiling } from './pours.ts';
import { airLaunch, arcTravel, projectile, railTravel, springLaunch } from './rigs.ts';

export const EVENTS: readonly FilmedEvent[] = [
  fall,
  fallThroughAir,
  fruitIntoTank,
  pour,
  viscousCoiling,
  dropImpact,
  crown,
  cavityAndJet,
  risingBubble,
  carbonation,
  foam,
  bubbleBurst,
  filmBurst,
  balloonBurst,
  waterBalloon,
  glassShards,
  glassCrack,
  egg,
  popcorn,
  powderBurst,
  cork,
  matchStrike,
  flame,
  springLaunch,
  airLaunch,
  projectile,
  railTravel,
  arcTravel,
];

const BY_ID: ReadonlyMap<string, FilmedEvent> = new Map(EVENTS.map((event) => [event.id, event]));

/** The event with this id, or undefined. */
export function eventNamed(id: string): FilmedEvent | undefined {
  return BY_ID.get(id);
}
