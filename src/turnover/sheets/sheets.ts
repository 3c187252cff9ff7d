/** Which sheets are printed for what was asked. */
import { Fault } from '../../base/fault.ts';
import { nearestName } from '../../base/nearest.ts';
import { cueSheet, hasCues, noCues } from './cueSheet.ts';
import { daySheet } from './daySheet.ts';
import { dressingSheet } from './dressingSheet.ts';
import { emptyCard, shotCard } from './shotCard.ts';
import { DUTY_NAMES, morningSheet, peopleOf, personFor } from './morningSheet.ts';
import { planSheet } from './planSheet.ts';
import type { DayPlan } from '../../plan/day/types.ts';
import type { ShotPlan } from '../../plan/types.ts';
import type { Sheet, Source } from './sheet.ts';

export type Asked =
  /** The card of one shot, or of all of them. */
  | { readonly sheet: 'card'; readonly shot?: string | undefined }
  | { readonly sheet: 'plan' }
  /** For one person or duty, or for everybody. */
  | { readonly sheet: 'morning'; readonly duty?: string | undefined }
  /** The cues of one shot, or of every shot that has some. */
  | { readonly sheet: 'cues'; readonly shot?: string | undefined }
  | { readonly sheet: 'day' }
  /** What must be camera-ready when. */
  | { readonly sheet: 'dressing' };

function unknown(code: string, word: string, asked: string, names: readonly string[], none: string): Fault {
  const near = nearestName(asked, names);
  return new Fault({
    code,
    what: `There is no ${word} "${asked.slice(0, 100)}"`,
    where: 'the sheet asked for',
    mend:
      names.length === 0
        ? none
        : near === undefined
          ? `There are ${names.slice(0, 40).join(', ')}${names.length > 40 ? ' and more' : ''}.`
          : `Did you mean ${near}?`,
  });
}

/** The shot of an id, or those that the sheet is made for when none is named. Throws Fault `sheet.unknown-shot`. */
function shotsFor({ plan }: Source, id: string | undefined, all: (shot: ShotPlan) => boolean): readonly ShotPlan[] {
  if (id === undefined) return plan.shots.filter(all);
  const named = plan.shots.filter((shot) => shot.id === id);
  if (named.length > 0) return named;
  const ids = plan.shots.map((shot) => shot.id);
  throw unknown('sheet.unknown-shot', 'shot', id, ids, 'This shoot has no shots yet.');
}

/** The day of a source. Throws Fault `sheet.no-day` where nobody works it out. */
function dayOf({ day }: Source): DayPlan {
  if (day) return day();
  throw new Fault({
    code: 'sheet.no-day',
    what: 'The day has not been worked out',
    where: 'the sheet asked for',
    mend: 'Work the day out first, then print its sheets.',
  });
}

/** The sheets asked for. Throws Fault `sheet.unknown-shot` or `sheet.unknown-duty`. */
export function sheetsFor(source: Source, asked: Asked): readonly Sheet[] {
  const { shoot } = source;
  switch (asked.sheet) {
    case 'plan':
      return [planSheet(source)];
    case 'card': {
      const shots = shotsFor(source, asked.shot, () => true);
      return shots.length > 0 ? shots.map((shot) => shotCard(source, shot)) : [emptyCard(source)];
    }
    case 'cues': {
      const shots = shotsFor(source, asked.shot, hasCues);
      return shots.length > 0 ? shots.map((shot) => cueSheet(source, shot)) : [noCues(source)];
    }
    case 'day':
      return [daySheet(source, dayOf(source))];
    case 'dressing':
      return [dressingSheet(source, dayOf(source))];
    case 'morning': {
      const { duty } = asked;
      if (duty === undefined) return peopleOf(shoot).map((person) => morningSheet(source, person));
      const person = personFor(shoot, duty);
      if (person) return [morningSheet(source, person)];
      const names = [...DUTY_NAMES, ...Object.keys(shoot.crew)];
      throw unknown('sheet.unknown-duty', 'duty or person', duty, names, '');
    }
  }
}
