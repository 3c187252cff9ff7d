import { useMemo, useState } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import { inputsOf, resultsOf, type AnyLaw } from '../../../laws/law.ts';
import type { Asked } from './address.ts';
import { isDrawable } from './axis.ts';
import { Drawn } from './Drawn.tsx';
import { exampleTexts, readTexts, type ReadTexts } from './lawText.ts';

export interface PicturesProps {
  readonly law: AnyLaw;
  readonly read: ReadTexts;
  readonly asked: Asked;
  readonly system: UnitSystem;
  readonly onAsk: (change: Partial<Asked>) => void;
}

/**
 * Pictures of a law around what is given: along one input, and over two. While an input is missing or cannot be read
 * they show what was given before or, before anything was, the worked example, plainly not of now.
 */
export function Pictures(props: PicturesProps) {
  const { law, read, asked } = props;
  const [before, setBefore] = useState<ReadTexts>();
  const isWhole = read.problems.size === 0 && read.missing.length === 0;
  if (isWhole && before !== read) setBefore(read);
  const isCleared = Object.keys(read.given).length === 0 && read.problems.size === 0;
  if (!isWhole && isCleared && before) setBefore(undefined);
  const example = useMemo(() => readTexts(law, { texts: exampleTexts(law), before: {}, system: 'metric' }), [law]);
  if (!inputsOf(law).some(isDrawable))
    return <p className="law-no-picture">Nothing this law takes can be drawn along an axis.</p>;
  const results = resultsOf(law).filter(isDrawable);
  const result = results.find(({ name }) => name === asked.of) ?? results[0]!;
  const readingOf = isWhole ? 'now' : before ? 'before' : 'in the example';
  return (
    <div className={isWhole ? 'pictures' : 'pictures is-waiting'} inert={!isWhole}>
      {!isWhole && (
        <p className="pictures-of">
          {before
            ? 'As it was before: drawn anew once every input can be read.'
            : 'The worked example, until every input is given.'}
        </p>
      )}
      <Drawn {...props} read={isWhole ? read : (before ?? example)} result={result} readingOf={readingOf} />
    </div>
  );
}
