/**
 * Changing over from one shot to the next: what differs between them, and whose work that is. The set, the light and the
 * camera are changed side by side, and the longest counts; body, lens and format are one pair of hands. A set that is
 * built or changed has its light within its time.
 */
import { sayList } from '../../base/sayList.ts';
import type { Shoot, Shot } from '../../document/schema.ts';
import { withDefaults } from '../givens.ts';
import type { ShotPlan } from '../types.ts';

/** What has to be changed, in the order it is said. */
export const CHANGES = ['set', 'light', 'camera', 'lens', 'mode'] as const;

export type Change = (typeof CHANGES)[number];

/** What of a shot decides what must be changed for it. */
export interface Standing {
  readonly id: string;
  readonly title: string;
  readonly shot: Shot;
  /** What it shows; a plate shows what its shot does. */
  readonly product: string | undefined;
  readonly settings: ShotPlan['settings'];
}

export function standingOf(shoot: Shoot, { id, title, settings }: ShotPlan): Standing {
  const { shot } = withDefaults(shoot, id);
  const plateOf =
    shot.matches !== undefined && Object.hasOwn(shoot.shots, shot.matches)
      ? withDefaults(shoot, shot.matches).shot
      : undefined;
  return { id, title, settings, shot, product: shot.hero.product ?? plateOf?.hero.product };
}

/** Whether two shots are of one set: one is a plate for the other, or they show the same product, or both none in one light. */
function isOneSet(a: Standing, b: Standing): boolean {
  const [plateOfA, plateOfB] = [a.shot.matches ?? a.id, b.shot.matches ?? b.id];
  if (plateOfA === plateOfB) return true;
  if (a.product !== undefined || b.product !== undefined) return a.product === b.product;
  return a.shot.lighting !== undefined && a.shot.lighting === b.shot.lighting;
}

/** What differs between a shot and the one before it; before the first, everything has to be set up. */
export function changesTo(to: Standing, from: Standing | undefined): readonly Change[] {
  const kit: readonly Change[] = to.settings ? ['camera', 'lens', 'mode'] : [];
  if (!from) return ['set', 'light', ...kit];
  const isOther = (key: 'camera' | 'lens' | 'mode'): boolean => to.settings !== undefined && to.settings[key] !== from.settings?.[key];
  const hasOtherBody = isOther('camera');
  return CHANGES.filter((change) => {
    if (change === 'set') return !isOneSet(to, from);
    if (change === 'light') return to.shot.lighting !== from.shot.lighting;
    // Another body is set to its format and given its lens as it comes.
    return isOther(change) || (change !== 'camera' && hasOtherBody);
  });
} // prettier-ignore

/** The time all of it takes, each part as long as `timeOf` says. */
export function changeTime_s(changes: readonly Change[], timeOf: (change: Change) => number): number {
  const time = (change: Change): number => (changes.includes(change) ? timeOf(change) : 0);
  return Math.max(time('set'), time('light'), time('camera') + time('lens') + time('mode'));
}

const NOUNS: Readonly<Record<Change, string>> = { set: 'set', light: 'light', camera: 'camera', lens: 'lens', mode: 'format' }; // prettier-ignore

/** Why a shot stands where it does: what it shares with the shot before, or what it needs changed. */
export function becauseOf(to: Standing, from: Standing | undefined): string {
  if (!from) return 'first of the day';
  const changes = changesTo(to, from);
  const isKnown = to.settings !== undefined && from.settings !== undefined;
  const shared = CHANGES.filter((change) => !changes.includes(change) && (isKnown || change === 'set' || change === 'light')); // prettier-ignore
  if (shared.length === 0) return `shares nothing with ${from.title}`;
  return `same ${sayList(shared.map((change) => NOUNS[change]))} as ${from.title}`;
}
