import { useEffect, useMemo } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import { isDrawable } from './axis.ts';
import { resultsOf, type AnyLaw } from '../../../laws/law.ts';
import { Button } from '../../parts/Button.tsx';
import { Beneath } from './Beneath.tsx';
import { LawFields } from './LawFields.tsx';
import { exampleTexts, readTexts } from './lawText.ts';
import { Pictures } from './Pictures.tsx';
import { Results } from './Results.tsx';
import { UnitSwitch } from './UnitSwitch.tsx';
import { useAsked } from './useAsked.ts';
import { work } from './work.ts';

export interface LawSheetProps {
  readonly law: AnyLaw;
  readonly search: Readonly<Record<string, string>>;
  /** The units of whoever has not chosen any here. */
  readonly usual: UnitSystem;
  readonly onUnits: (system: UnitSystem) => void;
  readonly onAddress: (pairs: Readonly<Record<string, string>>) => void;
}

/** One law as a form that answers at every keystroke, with a picture over one input and over two. */
export function LawSheet({ law, search, usual, onUnits, onAddress }: LawSheetProps) {
  const desk = useAsked(law, search, onAddress);
  const { asked, texts, strays } = desk;
  const system = asked.units ?? usual;
  const read = useMemo(() => readTexts(law, { texts, before: asked.texts, system }), [law, texts, asked.texts, system]);
  const worked = useMemo(() => work(law, read, system), [law, read, system]);
  const isEmpty = Object.values(texts).every((text) => text.trim() === '');
  const canDraw = resultsOf(law).some(isDrawable);
  useEffect(() => {
    document.title = `${law.title}, Reckoner, Longsecond`;
  }, [law]);

  return (
    <article className="law" aria-labelledby="law-title">
      <header className="law-head">
        <h1 id="law-title">{law.title}</h1>
        <p className="law-says">{law.says}</p>
        <p className="law-equation">
          {law.equation.split(/(?<=[,;]) /).map((part) => (
            <span key={part}>{part} </span>
          ))}
        </p>
      </header>
      <Results law={law} read={read} worked={worked} system={system} />
      <div className="law-form">
        <div className="law-form-head">
          <h2>Given</h2>
          <UnitSwitch
            system={system}
            onChoose={(units) => {
              onUnits(units);
              desk.ask({ units });
            }}
          />
        </div>
        <LawFields law={law} desk={desk} read={read} system={system} />
        {strays.length > 0 && (
          <p className="law-strays" role="alert">
            The address also says {strays.join(', ')}, which this law does not take.
          </p>
        )}
        <div className="law-starts no-print">
          <Button look={isEmpty ? 'main' : 'plain'} onClick={() => desk.ask({ texts: exampleTexts(law) })}>
            Worked example
          </Button>
          {!isEmpty && (
            <Button look="quiet" onClick={() => desk.ask({ texts: {} })}>
              Clear
            </Button>
          )}
        </div>
      </div>
      {canDraw ? (
        <Pictures law={law} read={read} asked={asked} system={system} onAsk={desk.ask} />
      ) : (
        <p className="law-no-picture">This law answers in words or exact text, which no curve can show.</p>
      )}
      <Beneath law={law} texts={texts} system={system} />
    </article>
  );
}
