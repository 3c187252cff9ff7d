import { useMemo } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { Photometry } from '../../../laws/light/photometry/photometry.ts';
import { labelWords, photometryFacts, photometryRows, sayNotice } from '../../../turnover/photometryFacts.ts';
import { PolarPlot } from './PolarPlot.tsx';
import './photometry.css';

export interface PhotometryViewProps {
  readonly name: string;
  readonly photometry: Photometry;
  readonly system: UnitSystem;
}

/** Labels shown before the rest is asked for; a file may have any number. */
const FIRST_LABELS = 4;

function Labels({ labels }: { readonly labels: readonly string[] }) {
  const rest = labels.slice(FIRST_LABELS);
  const list = (of: readonly string[]) => (
    <ul className="photometry-labels">
      {of.map((words, i) => (
        <li key={`${i} ${words}`}>{words}</li>
      ))}
    </ul>
  );
  return (
    <>
      {list(labels.slice(0, FIRST_LABELS))}
      {rest.length > 0 && (
        <details className="polar-figures">
          <summary>{rest.length} more that it says</summary>
          {list(rest)}
        </details>
      )}
    </>
  );
}

/** What a photometric file holds: what it says of itself, its figures, its light each way, and what was odd about it. */
export function PhotometryView({ name, photometry, system }: PhotometryViewProps) {
  const facts = useMemo(() => photometryFacts(name, photometry), [name, photometry]);
  const { peak, beam } = facts;
  const width = (deg: number | undefined) => (deg === undefined ? 'no edge' : `${Math.round(deg)}°`);
  const says = `How much light goes each way: at most ${Math.round(peak.intensity_cd)} cd; half of that within ${width(beam.c0_deg)} level, ${width(beam.c90_deg)} upright`;
  return (
    <div className="photometry">
      <div className="photometry-facts">
        <p className="photometry-name">
          <b>{name}</b> <span>{facts.format}</span>
        </p>
        <Labels labels={labelWords(facts)} />
        <dl>
          {photometryRows(facts, system).map(({ title, says: words }) => (
            <div key={title}>
              <dt>{title}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
        {facts.notices.length > 0 && (
          <ul className="photometry-notices" aria-label="What was odd about it">
            {facts.notices.map((notice, i) => (
              <li key={`${i} ${notice.code}`}>{sayNotice(notice)}</li>
            ))}
          </ul>
        )}
      </div>
      <PolarPlot photometry={photometry} says={says} />
    </div>
  );
} // prettier-ignore
