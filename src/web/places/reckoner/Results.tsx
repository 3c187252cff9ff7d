import { sayList } from '../../../base/sayList.ts';
import type { UnitSystem } from '../../../base/quantity.ts';
import { resultsOf, type AnyLaw } from '../../../laws/law.ts';
import { isAssumed } from '../../../laws/sources.ts';
import { AssumedMark } from '../../parts/AssumedMark.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { sayAlso, sayValue, type ReadTexts } from './lawText.ts';
import { lowered } from './refusal.ts';
import type { Worked } from './work.ts';

export interface ResultsProps {
  readonly law: AnyLaw;
  readonly read: ReadTexts;
  readonly worked: Worked;
  readonly system: UnitSystem;
}

/** Why there is no result yet. */
function reasonOf(law: AnyLaw, { problems, missing }: ReadTexts, worked: Worked): string {
  const titleOf = (name: string) => {
    const taken = law.takes[name]!;
    return lowered(typeof taken === 'string' ? taken : taken.title);
  };
  if (problems.size > 0) return `Cannot be read yet: ${sayList([...problems.keys()].map(titleOf))}.`;
  if (missing.length > 0) return `Still to give: ${sayList(missing.map(({ title }) => lowered(title)))}.`;
  return `No answer: ${lowered(worked.refusal ?? '')}.`;
}

/** What the law gives, in figures to be read from across the set; or why it gives nothing. */
export function Results({ law, read, worked, system }: ResultsProps) {
  const { values } = worked;
  return (
    <section className="law-results" aria-label="Result" role="status">
      {resultsOf(law).map((field) => {
        const value = values?.[field.name];
        const also = value === undefined ? '' : sayAlso(field, value, system);
        return (
          <div className="law-result" key={field.name}>
            <span className="law-result-title">{field.title}</span>
            <span className="law-result-figure">
              {value === undefined ? (
                <span className="law-result-none" aria-label="none yet">
                  –
                </span>
              ) : (
                <Figure {...sayValue(field, value, system)} size="big" />
              )}
              {value !== undefined && isAssumed(law.sources) && (
                <a href="#law-rests-on" className="law-result-assumed">
                  <AssumedMark /> assumed
                </a>
              )}
            </span>
            {also !== '' && <span className="law-result-also">{also}</span>}
          </div>
        );
      })}
      {!values && (
        <p className={worked.refusal === undefined ? 'law-reason' : 'law-reason is-refused'}>
          {reasonOf(law, read, worked)}
        </p>
      )}
    </section>
  );
}
