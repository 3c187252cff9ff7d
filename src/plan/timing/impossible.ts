/** What no luck can mend: rigs that can never meet, a memory that can never hold it, each with by how much. */
import { say } from '../ways/words.ts';
import type { Telling, Told } from './telling.ts';
import type { CueTiming, Meeting, ShotTiming } from './types.ts';

type Reasons = ShotTiming['impossible'];

const time = (value_s: number): string => say('time', value_s, 3);

/** Shorter than this no clock on a set can tell. */
const HAIR_s = 1e-9;

/** Why it can never be, each in a sentence with the place to change. */
export function impossibleOf(telling: Telling, told: Told & { readonly meeting: Meeting | undefined }): Reasons {
  return [
    ...refused(told),
    ...twiceTooSoon(telling, told),
    ...notKept(telling, told),
    ...outsideTheTake(telling, told),
  ];
}

/** A throw that turns back before it is there, and all else that a law refuses. */
function refused({ cues }: Told): Reasons {
  return cues.flatMap(({ title, missing }) =>
    missing.flatMap(({ because, what, path }) => (because === 'refused' ? [{ says: `${title} never arrives as it is written: ${what ?? 'no answer there'}.`, path }] : [])),
  ); // prettier-ignore
}

/** One rig that must fire again before it can. */
function twiceTooSoon({ prepared }: Telling, { cues }: Told): Reasons {
  const { shoot, effective } = prepared;
  const fired = cues.filter((cue): cue is CueTiming & { readonly rig: string; readonly fire_s: number; readonly moves_s: number } => cue.rig !== undefined && cue.fire_s !== undefined && cue.moves_s !== undefined);
  return fired.flatMap((cue, i) => {
    const next = fired.slice(i + 1).find(({ rig }) => rig === cue.rig);
    if (!next) return [];
    const rig = shoot.kit.rigs[cue.rig];
    // It can fire again once it has moved and been made ready.
    const free_s = cue.moves_s + (rig?.reload_s ?? 0);
    const short_s = free_s - next.fire_s;
    const path = `${effective.at('cues')}/cues/${next.id}/rig`;
    const says = `${cue.rigTitle} must fire for ${next.title} ${time(next.fire_s - cue.fire_s)} after ${cue.title}, and can only ${time(free_s - cue.fire_s)} after it: ${time(short_s)} too soon.`;
    return short_s > HAIR_s ? [{ says, path }] : [];
  });
} // prettier-ignore

/** An action longer than the memory, whatever the trigger. */
function notKept({ prepared, number }: Telling, { action_s, handle_s }: Told): Reasons {
  const recordTime_s = number('recordTime_s');
  const wanted_s = action_s + 2 * handle_s;
  if (recordTime_s === undefined || wanted_s <= recordTime_s + HAIR_s) return [];
  const { effective } = prepared;
  const path = handle_s > 0 && action_s <= recordTime_s ? `${effective.at('handles_s')}/handles` : effective.within('action', 'duration') + '/duration'; // prettier-ignore
  const handles = handle_s > 0 ? ' with its handles' : '';
  return [
    {
      says: `The memory holds ${time(recordTime_s)}, the action${handles} takes ${time(wanted_s)}: ${time(wanted_s - recordTime_s)} too long at any trigger setting.`,
      path,
    },
  ];
}

/** A meeting before or after all that is kept of the take. */
function outsideTheTake({ prepared }: Telling, { action_s, handle_s, meeting }: Told & { readonly meeting: Meeting | undefined }): Reasons {
  if (!meeting) return [];
  const late_s = meeting.at_s - (action_s + handle_s);
  if (late_s <= HAIR_s) return [];
  return [{ says: `They meet ${time(late_s)} after the end of all that is kept: the take shows them apart.`, path: `${prepared.effective.at('meeting')}/meeting/at` }];
} // prettier-ignore
