/** Clips of a shoot by the shot that they are takes of. */
import type { ClipEntry } from '../../../record/footage.ts';
import type { ShotPlan } from '../../../plan/types.ts';

export interface ClipGroup {
  /** Absent for clips of no shot, or of one that is not in the shoot any more. */
  readonly shot?: Pick<ShotPlan, 'id' | 'number' | 'title'>;
  readonly key: string;
  readonly title: string;
  /** The one added last first. */
  readonly clips: readonly ClipEntry[];
}

type Shots = readonly Pick<ShotPlan, 'id' | 'number' | 'title'>[];

/** In the order of the shots; clips of shots that are gone, and then those of no shot, after them. */
export function groupClips(clips: readonly ClipEntry[], shots: Shots): readonly ClipGroup[] {
  const newest = clips.toReversed();
  const named = new Set(newest.flatMap(({ shotId }) => shotId ?? []));
  const gone = [...named].filter((id) => !shots.some((shot) => shot.id === id));
  const group = (key: string, title: string, shot?: Shots[number]): readonly ClipGroup[] => {
    const found = newest.filter(({ shotId = '' }) => shotId === key);
    return found.length > 0 ? [{ key, title, clips: found, ...(shot && { shot }) }] : [];
  };
  return [
    ...shots.flatMap((shot) => group(shot.id, `${shot.number} ${shot.title}`, shot)),
    ...gone.flatMap((id) => group(id, `${id}, which is not in the shoot any more`)),
    ...group('', 'Of no shot yet'),
  ];
}

/** Whether a clip was made up rather than filmed, as its name says. */
export const isSynthetic = ({ name }: Pick<ClipEntry, 'name'>): boolean => /synthetic/i.test(name);
