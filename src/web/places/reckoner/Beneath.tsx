import type { UnitSystem } from '../../../base/quantity.ts';
import type { AnyLaw } from '../../../laws/law.ts';
import { isAssumed, SOURCES } from '../../../laws/sources.ts';
import { AssumedMark } from '../../parts/AssumedMark.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { CAUTIONS, WHAT_CAUTIONS_ARE } from './cautions.ts';
import { commandLine } from './lawText.ts';
import { HOW_SEEN, isUnseen } from './sourceWords.ts';

function Cautions({ keys }: { readonly keys: readonly string[] }) {
  return (
    <section className="law-cautions" aria-label="Cautions">
      <h2>Take care</h2>
      {keys.map((key) => {
        const caution = CAUTIONS[key];
        if (!caution) return <p key={key}>{key.replaceAll('-', ' ')}</p>;
        return (
          <div key={key}>
            <p>
              <b>{caution.title}.</b> {caution.says}
            </p>
            <ul>
              {caution.points.map((point) => (
                <li key={point}>{point}</li>
              ))}
            </ul>
          </div>
        );
      })}
      <p className="law-cautions-are">{WHAT_CAUTIONS_ARE}</p>
    </section>
  );
}

function Sources({ keys }: { readonly keys: readonly string[] }) {
  return (
    <Panel title="Sources" className="law-sources">
      <div id="law-rests-on">
        {isAssumed(keys) && (
          <p className="law-assumed">
            <AssumedMark /> <b>Assumed:</b> none of these sources was looked up, so every figure of this law is marked.
          </p>
        )}
        <ul>
          {keys.map((key) => {
            const source = SOURCES[key];
            return (
              <li key={key}>
                {source ? source.title : key}
                <span className="law-seen">
                  {source && isUnseen(source) && <AssumedMark />} {source ? HOW_SEEN[source.seen] : 'not listed'}
                </span>
              </li>
            );
          })}
        </ul>
      </div>
    </Panel>
  );
}

export interface BeneathProps {
  readonly law: AnyLaw;
  readonly texts: Readonly<Record<string, string>>;
  readonly system: UnitSystem;
}

/** Where the law holds, what to take care of, what it rests on, and the command that does the same. */
export function Beneath({ law, texts, system }: BeneathProps) {
  const { holds, cautions = [], sources } = law;
  return (
    <div className="law-beneath">
      <Panel title="Holds" className="law-holds">
        <p>{holds}</p>
      </Panel>
      {cautions.length > 0 && <Cautions keys={cautions} />}
      <Sources keys={sources} />
      <Panel title="The same on the command line" className="law-command no-print">
        <code>{commandLine(law, texts, system)}</code>
      </Panel>
    </div>
  );
}
