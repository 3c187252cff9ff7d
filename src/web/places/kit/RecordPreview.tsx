import { sayShown, showQuantity } from '../../../base/quantity.ts';
import { LightFacts } from '../flicker/LightFacts.tsx';
import { PeriodDrawing } from '../flicker/PeriodDrawing.tsx';
import type { LightRecord } from './lightRecord.ts';
import { qualityRows } from './recordWords.ts';
import type { Trace } from './recordTrace.ts';
import { TraceDrawing } from './TraceDrawing.tsx';

const time = (time_s: number) => sayShown(showQuantity('time', time_s, { digits: 3 }));

function gapWords({ gaps }: Trace): string | undefined {
  const [first] = gaps;
  if (!first) return undefined;
  const count = gaps.length === 1 ? 'One gap' : `${gaps.length} gaps, the first`;
  return `${count} from ${time(first.from_s)} to ${time(first.to_s)}.`;
}

function Recorded({ trace, dark, isWhole }: { readonly trace: Trace; readonly dark: number; readonly isWhole: boolean }) {
  const gap = gapWords(trace);
  const what = isWhole ? 'The record' : 'The record, its first eight periods';
  return (
    <section className="record-part" aria-label={what}>
      <h3>{what}</h3>
      <TraceDrawing trace={trace} dark={dark} says={`${what}: light over ${time(trace.to_s)}${gap === undefined ? '' : `. ${gap}`}`} />
      {gap !== undefined && <p className="record-gap">{gap}</p>}
    </section>
  );
} // prettier-ignore

/** What a light record holds before it is taken: the record, one period of it and how good it is; or why it is refused. */
export function RecordPreview({ record, dark }: { readonly record: LightRecord; readonly dark: number }) {
  const { measured, trace } = record;
  if (!measured.ok) {
    const { what, line, mend } = measured.refusal;
    return (
      <>
        <p className="field-problem record-refusal" role="alert">
          {line > 0 && <b>Line {line}. </b>}
          {what}. {mend}
        </p>
        {trace && <Recorded trace={trace} dark={dark} isWhole />}
      </>
    );
  }
  const { waveform, quality, notices } = measured;
  return (
    <>
      {trace && <Recorded trace={trace} dark={dark} isWhole={false} />}
      <section className="record-part" aria-label="One period of it">
        <h3>One period of it</h3>
        <PeriodDrawing waveform={waveform} says={`One period of the light, ${time(waveform.period_s)}`} />
        <LightFacts waveform={waveform} />
      </section>
      <section className="record-part" aria-label="How good it is">
        <h3>How good it is</h3>
        <dl className="record-quality">
          {qualityRows({ waveform, quality, dark }).map(({ title, says }) => (
            <div key={title}>
              <dt>{title}</dt>
              <dd>{says}</dd>
            </div>
          ))}
        </dl>
        {notices.length > 0 && (
          <ul className="record-notices">
            {notices.map((says) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        )}
      </section>
    </>
  );
}
