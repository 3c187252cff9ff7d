/** Margins of a plan as rows of the chart, and another set of them as its ghosts. */
import type { UnitSystem } from '../../../base/quantity.ts';
import type { Margin } from '../../../plan/types.ts';
import { marginWords, missingWords } from '../../../turnover/words.ts';
import type { ChartRow, Ghost } from '../../parts/marginRow.ts';

/** The screen prints what the command prints: both figures as turnover puts them. */
function figuresOf(margin: Margin, system: UnitSystem): Pick<ChartRow, 'have' | 'need' | 'joint'> {
  const { have, need, joint } = marginWords(margin, system);
  return have && need ? { have, need, joint } : { joint };
}

export function chartRows(margins: readonly Margin[], system: UnitSystem = 'metric'): readonly ChartRow[] {
  return margins.map((margin) => ({
    id: margin.id,
    title: margin.title,
    ...(margin.detail === undefined ? {} : { detail: margin.detail }),
    isHard: margin.isHard,
    standing: margin.state,
    ...figuresOf(margin, system),
    ...(margin.stops === undefined ? {} : { stops: margin.stops }),
    missing: margin.missing.map(missingWords),
    isAssumed: margin.assumed.length > 0,
  }));
}

/** Where the rows would stand with other margins. */
export function ghostsOf(margins: readonly Margin[], system: UnitSystem = 'metric'): ReadonlyMap<string, Ghost> {
  return new Map(
    margins.flatMap((margin) =>
      margin.stops === undefined
        ? []
        : [[margin.id, { stops: margin.stops, standing: margin.state, ...figuresOf(margin, system) }] as const],
    ),
  );
}

/** The margin that binds: the shortest, else the tightest; none when nothing is short or tight. */
export function worstOf(margins: readonly Margin[]): Margin | undefined {
  const known = margins.filter(({ stops }) => stops !== undefined);
  const least = (state: Margin['state']) =>
    known
      .filter((margin) => margin.state === state)
      .reduce<Margin | undefined>((worst, margin) => (!worst || margin.stops!.value < worst.stops!.value ? margin : worst), undefined); // prettier-ignore
  return least('short') ?? least('tight');
}
