/** Which limits stand otherwise once something is changed: the shoot planned before and after, margin by margin. */
import type { Shoot } from '../../document/schema.ts';
import { planShoot } from '../../plan/plan.ts';
import type { Margin, Plan } from '../../plan/types.ts';
import { marginWords, type MarginWords } from '../words.ts';

export interface MarginChange {
  /** Of a shot; absent for the whole shoot. */
  readonly shotId?: string;
  readonly shotTitle?: string;
  readonly name: string;
  /** Absent where the limit was not judged before, or is not after. */
  readonly before?: MarginWords;
  readonly after?: MarginWords;
  /** By how much its spare changes; absent where it is not known on both sides. */
  readonly change_stops?: number;
  /** Short, tight, spare or unknown: another than before. */
  readonly isOther: boolean;
}

/** Changes smaller than this are not told. */
const TOLD_STOPS = 0.05;

function changesOf(before: readonly Margin[], after: readonly Margin[], shot: Pick<MarginChange, 'shotId' | 'shotTitle'>): readonly MarginChange[] {
  // Each limit is judged once, for whatever binds it most.
  const old = new Map(before.map((margin) => [margin.id, margin]));
  const now = new Map(after.map((margin) => [margin.id, margin]));
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((key): readonly MarginChange[] => {
    const [was, is] = [old.get(key), now.get(key)];
    const change_stops = was?.stops && is?.stops ? is.stops.value - was.stops.value : undefined;
    const isOther = was?.state !== is?.state;
    if (!isOther && !(change_stops !== undefined && Math.abs(change_stops) >= TOLD_STOPS)) return [];
    const words = { ...(was && { before: marginWords(was) }), ...(is && { after: marginWords(is) }) };
    const name = (words.after ?? words.before)!.name;
    return [{ ...shot, name, ...words, ...(change_stops !== undefined && { change_stops }), isOther }];
  });
} // prettier-ignore

const shotsOf = ({ shots }: Plan) => new Map(shots.map((shot) => [shot.id, shot]));

/** The limits that change between two shoots, those that change their state first. */
export function marginsChanged(before: Shoot, after: Shoot): readonly MarginChange[] {
  const [was, is] = [planShoot(before), planShoot(after)];
  const old = shotsOf(was);
  const changes = [
    ...is.shots.flatMap((shot) => changesOf(old.get(shot.id)?.margins ?? [], shot.margins, { shotId: shot.id, shotTitle: shot.title })),
    ...changesOf(was.margins, is.margins, {}),
  ];
  return [...changes.filter(({ isOther }) => isOther), ...changes.filter(({ isOther }) => !isOther)];
} // prettier-ignore

/** "Pour into the glass, blur: tight, was spare (2.9 px of 3 px)." */
export function marginChangeWords({ shotTitle, name, before, after, isOther, change_stops = 0 }: MarginChange): string {
  const what = shotTitle === undefined ? name : `${shotTitle}, ${name.charAt(0).toLowerCase()}${name.slice(1)}`;
  const figures = after?.figures ? ` (${after.figures})` : '';
  const by = `${change_stops >= 0 ? '+' : '−'}${Math.abs(change_stops).toFixed(1)} stops`;
  if (isOther) return `${what}: ${after?.state ?? 'no longer judged'}, was ${before?.state ?? 'not judged'}${figures}.`;
  return `${what}: still ${after?.state ?? 'not judged'}, ${by}${figures}.`;
}
