/** Which sheets are printed for what was asked. */
import { Fault } from '../../base/fault.ts';
import { nearestName } from '../../base/nearest.ts';
import { emptyCard, shotCard } from './shotCard.ts';
import { DUTY_NAMES, morningSheet, peopleOf, personFor } from './morningSheet.ts';
import { planSheet } from './planSheet.ts';
import type { Sheet, Source } from './sheet.ts';

export type Asked =
  /** The card of one shot, or of all of them. */
  | { readonly sheet: 'card'; readonly shot?: string | undefined }
  | { readonly sheet: 'plan' }
  /** For one person or duty, or for everybody. */
  | { readonly sheet: 'morning'; readonly duty?: string | undefined };

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

/** The sheets asked for. Throws Fault `sheet.unknown-shot` or `sheet.unknown-duty`. */
export function sheetsFor(source: Source, asked: Asked): readonly Sheet[] {
  const { plan, shoot } = source;
  switch (asked.sheet) {
    case 'plan':
      return [planSheet(source)];
    case 'card': {
      const { shot: id } = asked;
      const shots = plan.shots.filter((shot) => id === undefined || shot.id === id);
      if (shots.length > 0) return shots.map((shot) => shotCard(source, shot));
      if (id === undefined) return [emptyCard(source)];
      const ids = plan.shots.map((shot) => shot.id);
      throw unknown('sheet.unknown-shot', 'shot', id, ids, 'This shoot has no shots yet.');
    }
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
