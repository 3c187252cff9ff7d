/** What is to be printed, as the address of the place carries it. */
import type { UnitSystem } from '../../../base/quantity.ts';
import type { Asked } from '../../../turnover/sheets/sheets.ts';

export interface PaperAsk {
  readonly sheet: Asked['sheet'];
  /** A shot, with cards and cue sheets; all of them where it is left out. */
  readonly shot?: string;
  /** A duty or a person, with morning sheets; everybody where it is left out. */
  readonly duty?: string;
  readonly size: 'a4' | 'letter';
  /** Left out, as the shoot prefers. */
  readonly units?: UnitSystem;
}

type Search = Readonly<Record<string, string>>;

const SHEETS = ['card', 'plan', 'morning', 'cues', 'day', 'dressing'] as const satisfies readonly Asked['sheet'][];

/** Sheets made for one shot at a time. */
const isOfShots = (sheet: Asked['sheet']): sheet is 'card' | 'cues' => sheet === 'card' || sheet === 'cues';

/** What an address asks for; what it says that cannot be printed is passed over. */
export function readAsk(search: Search, names: { readonly shots: readonly string[]; readonly people: readonly string[] }): PaperAsk {
  const sheet = SHEETS.find((name) => name === search['sheet']) ?? 'card';
  const { shot, duty, units } = search;
  return {
    sheet,
    ...(isOfShots(sheet) && shot !== undefined && names.shots.includes(shot) ? { shot } : {}),
    ...(sheet === 'morning' && duty !== undefined && names.people.includes(duty) ? { duty } : {}),
    size: search['size'] === 'letter' ? 'letter' : 'a4',
    ...(units === 'metric' || units === 'imperial' ? { units } : {}),
  };
} // prettier-ignore

/** The address that asks for it, without what goes unsaid. */
export function writeAsk({ sheet, shot, duty, size, units }: PaperAsk): Search {
  return {
    ...(sheet === 'card' ? {} : { sheet }),
    ...(isOfShots(sheet) && shot !== undefined ? { shot } : {}),
    ...(sheet === 'morning' && duty !== undefined ? { duty } : {}),
    ...(size === 'a4' ? {} : { size }),
    ...(units === undefined ? {} : { units }),
  };
}

export function sheetAsked({ sheet, shot, duty }: PaperAsk): Asked {
  if (isOfShots(sheet)) return { sheet, shot };
  return sheet === 'morning' ? { sheet, duty } : { sheet };
}
