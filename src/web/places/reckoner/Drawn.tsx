import { useMemo, useState, type ReactNode } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import { resultsOf, type AnyLaw, type InputField, type ResultField } from '../../../laws/law.ts';
import { Button } from '../../parts/Button.tsx';
import type { Asked } from './address.ts';
import { isDrawable, numberOf, resultAxis, ticksOf, type Axis } from './axis.ts';
import { drawableInputs } from './chosen.ts';
import { Chooser } from './Chooser.tsx';
import { CurveChart } from './CurveChart.tsx';
import { CurveTable } from './CurveTable.tsx';
import { tell, type Cursor } from './cursor.ts';
import { LawMap } from './LawMap.tsx';
import { typeValue, type ReadTexts } from './lawText.ts';
import { Reading } from './Reading.tsx';
import { lowered } from './refusal.ts';
import { asInput, sampleCurve } from './sample.ts';
import { pickText, stepAlong } from './settable.ts';
import { useInputAxis } from './useInputAxis.ts';
import { useGrid, type GridAsk } from './useGrid.ts';

export interface DrawnProps {
  readonly law: AnyLaw;
  readonly read: ReadTexts;
  readonly asked: Asked;
  readonly system: UnitSystem;
  readonly result: ResultField;
  /** What a picture is of where nobody points at it. */
  readonly readingOf: string;
  readonly onAsk: (change: Partial<Asked>) => void;
}

const CURVE_POINTS = 181;
const COLUMNS = 73;
const ROWS = 49;

interface PictureProps {
  readonly title: string;
  readonly head: ReactNode;
  readonly children: ReactNode;
}

function Picture({ title, head, children }: PictureProps) {
  return (
    <section className="picture" aria-label={title}>
      <div className="picture-head">{head}</div>
      {children}
    </section>
  );
}

/** A law drawn over one input, and over two where it takes as many. */
export function Drawn({ law, read, asked, system, onAsk, result, readingOf }: DrawnProps) {
  const [reach, setReach] = useState(1);
  const [cursor, setCursor] = useState<Cursor>();
  const results = resultsOf(law).filter(isDrawable);
  const { given } = read;
  const asking = useMemo(() => ({ of: law, given, result: result.name }), [law, given, result.name]);
  // Chosen once, so that no picture turns into another while somebody types.
  const [fields] = useState(() => drawableInputs(asking));
  const over = fields.find(({ name }) => name === asked.over) ?? fields[0]!;
  const others = fields.filter(({ name }) => name !== over.name);
  const and = others.find(({ name }) => name === asked.and) ?? others[0] ?? over;
  const standing = (field: InputField) => numberOf(given[field.name] ?? field.default) ?? 0;
  const now = { over: standing(over), and: standing(and) };
  const overAxis = useInputAxis({ law, asking, field: over, value: now.over, reach });
  const andAxis = useInputAxis({ law, asking, field: and, value: now.and, reach });
  const curve = useMemo(
    () => sampleCurve(asking, { over, axis: overAxis, count: CURVE_POINTS }),
    [asking, over, overAxis],
  );
  const gridAsk = useMemo(
    (): GridAsk | undefined =>
      and === over ? undefined : { asking, across: { over, and, overAxis, andAxis, columns: COLUMNS, rows: ROWS } },
    [asking, over, and, overAxis, andAxis],
  );
  const drawn = useGrid(gridAsk);
  const telling = { of: law, given, fields: [over], result, system };
  const tellingBoth = { ...telling, fields: [over, and] };
  const nowTold = tell(telling);
  const upAxis = resultAxis(
    result,
    curve.runs.flat().map(({ value }) => value),
    { at: numberOf(nowTold.value), isAlongLog: overAxis.scale === 'log' },
  );
  const isBoth = Object.keys(cursor?.texts ?? {}).length > 1;

  const onStep = (isMap: boolean) => (field: InputField, axis: Axis, direction: 1 | -1) => {
    const textOf = (each: InputField) => cursor?.texts[each.name] ?? typeValue(each, asInput(each, standing(each)));
    const text = stepAlong(field, textOf(field), { axis, direction, system });
    const base = isMap ? { [over.name]: textOf(over), [and.name]: textOf(and) } : {};
    setCursor({ texts: { ...base, [field.name]: text }, isByKey: true });
  };
  const onPick = (texts: Readonly<Record<string, string>>) => onAsk({ texts: { ...asked.texts, ...texts } });
  const zoom = (
    <span className="picture-zoom no-print">
      <Button look="quiet" disabled={reach <= 0.25} onClick={() => setReach(reach / 2)}>
        Closer
      </Button>
      <Button look="quiet" disabled={reach >= 4} onClick={() => setReach(reach * 2)}>
        Wider
      </Button>
    </span>
  );
  const rows = ticksOf(over, overAxis, { most: 12, system }).ticks.map(({ value }) => value);

  return (
    <>
      <Picture
        title={`${result.title} over ${over.title}`}
        head={
          <>
            {results.length > 1 && (
              <Chooser
                label=""
                says="Result drawn"
                value={result.name}
                choices={results}
                onChoose={(name) => onAsk({ of: name })}
              />
            )}
            <Chooser
              label={results.length > 1 ? 'over' : 'Over'}
              says="Drawn over"
              value={over.name}
              choices={fields}
              onChoose={(name) => onAsk({ over: name, ...(name === and.name ? { and: over.name } : {}) })}
            />
            {zoom}
          </>
        }
      >
        <Reading
          told={isBoth ? nowTold : tell(telling, cursor?.texts)}
          cursor={isBoth ? undefined : cursor}
          of={readingOf}
        />
        {upAxis ? (
          <>
            <CurveChart
              over={over}
              result={result}
              overAxis={overAxis}
              resultAxis={upAxis}
              curve={curve}
              now={now.over}
              telling={telling}
              system={system}
              cursor={cursor}
              onCursor={setCursor}
              onStep={onStep(false)}
              onPick={onPick}
            />
            <CurveTable over={over} result={result} values={rows} telling={telling} />
          </>
        ) : (
          <p className="picture-none">
            From{' '}
            {tell(telling, { [over.name]: pickText(over, { axis: overAxis, at: 0, grain: 1 / 200, system }) }).where} to{' '}
            {tell(telling, { [over.name]: pickText(over, { axis: overAxis, at: 1, grain: 1 / 200, system }) }).where}{' '}
            this law has no answer with what else is given.
          </p>
        )}
      </Picture>
      {and !== over && (
        <Picture
          title={`${result.title} over ${over.title} and ${and.title}`}
          head={
            <Chooser
              label={`Over ${lowered(over.title)} and`}
              says="Drawn up the map"
              value={and.name}
              choices={others}
              onChoose={(name) => onAsk({ and: name })}
            />
          }
        >
          <Reading
            told={tell(tellingBoth, isBoth ? cursor?.texts : undefined)}
            cursor={isBoth ? cursor : undefined}
            of={readingOf}
          />
          {drawn ? (
            <LawMap
              drawn={drawn}
              result={result}
              now={now}
              telling={tellingBoth}
              system={system}
              cursor={cursor}
              onCursor={setCursor}
              onStep={onStep(true)}
              onPick={onPick}
            />
          ) : (
            <div className="picture-waiting" role="status">
              drawing
            </div>
          )}
        </Picture>
      )}
    </>
  );
}
