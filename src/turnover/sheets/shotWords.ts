/** What sheets say of one shot: takes, product, rigs, references, in the words of the set. */
import { sayShown } from '../../base/quantity.ts';
import { showQuantity } from '../../base/quantity.ts';
import { ratioOf } from '../../base/rational.ts';
import type { Shoot, Shot } from '../../document/schema.ts';
import { withDefaults } from '../../plan/givens.ts';
import { keptTakes, plannedTakes } from '../../plan/takes.ts';
import type { LimitId, Margin, ShotPlan } from '../../plan/types.ts';
import { settingsWords, type SettingsWords } from '../settingsWords.ts';
import { marginWords, said } from '../words.ts';
import { sayNumber, titleOf } from './say.ts';
import type { Source } from './sheet.ts';

/** The shot as planned: what it leaves out filled from the defaults. */
export const effectiveShot = (shoot: Shoot, { id }: Pick<ShotPlan, 'id'>): Shot => withDefaults(shoot, id).shot;

export const takesOf = (shoot: Shoot, { id }: Pick<ShotPlan, 'id'>) => ({
  plannedCount: plannedTakes(shoot, id),
  keptCount: keptTakes(shoot, id),
});

/** The settings in words; undefined while there is no answer. */
export const settingsOf = ({ shoot, system }: Source, { settings }: ShotPlan): SettingsWords | undefined =>
  settings && settingsWords(settings, shoot, system);

export const marginNamed = ({ margins }: Pick<ShotPlan, 'margins'>, id: LimitId): Margin | undefined =>
  margins.find((margin) => margin.id === id);

/** A figure of a margin, "62 klx", and undefined while it is not known. */
export function sideOf(margin: Margin | undefined, side: 'have' | 'need', { system }: Pick<Source, 'system'>): string | undefined {
  const shown = margin && marginWords(margin, system)[side];
  return shown && sayShown(shown);
} // prettier-ignore

/** How long the product lasts under the light, and how anybody knows; undefined where nothing says. */
export function lifeWords(source: Source, shot: ShotPlan): { readonly life: string; readonly says?: string } | undefined {
  const { life_s } = effectiveShot(source.shoot, shot).hero;
  const { heroLife } = shot;
  if (heroLife === undefined) {
    const life = sideOf(marginNamed(shot, 'hero-life'), 'have', source) ?? (life_s === undefined ? undefined : sayNumber(source, 'life_s', life_s));
    return life === undefined ? undefined : { life };
  }
  // An estimate, told in two figures.
  const [least, most] = [heroLife.life.low, heroLife.life.high].map((time_s) => said(showQuantity('time', time_s, { digits: 2 })));
  return { life: `at least ${least!}`, says: `worked out from the light${least === most ? '' : `; up to ${most!} is as credible`}` };
} // prettier-ignore

export const titlesOf = (items: Readonly<Record<string, { readonly title?: string }>>, ids: readonly string[]) =>
  ids.map((id) => titleOf(items[id], id));

/** What is fitted to the lens, by name. */
export const fittedWords = ({ shoot }: Source, shot: Shot): string =>
  titlesOf(shoot.kit.attachments, shot.attachments).join(', ');

/** Latency of a rig with its spread: "24 ms ± 2 ms". */
export function latencyWords(source: Source, rigId: string): string {
  const { latency_s, latencySpread_s } = source.shoot.kit.rigs[rigId] ?? {};
  const spread = latencySpread_s === undefined ? '' : ` ± ${sayNumber(source, 'latency_s', latencySpread_s)}`;
  return `${sayNumber(source, 'latency_s', latency_s)}${latency_s === undefined ? '' : spread}`;
}

/** The shots whose light comes from the same set-up, in the order of the plan. */
export function shotsBy<Key extends string>(
  { shoot, plan }: Source,
  keyOf: (shot: Shot) => readonly Key[],
): ReadonlyMap<Key, readonly ShotPlan[]> {
  const groups = new Map<Key, ShotPlan[]>();
  for (const shotPlan of plan.shots)
    for (const key of new Set(keyOf(effectiveShot(shoot, shotPlan))))
      groups.set(key, [...(groups.get(key) ?? []), shotPlan]);
  return groups;
}

/** Width over height of what is delivered first. */
export function firstAspect({ deliverables }: Shoot): number {
  const first = Object.values(deliverables).find(({ pixels }) => pixels !== undefined)?.pixels;
  return first ? ratioOf({ num: first.widthCount, den: first.heightCount }) : 16 / 9;
}
