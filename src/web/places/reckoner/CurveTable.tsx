import type { InputField, ResultField } from '../../../laws/law.ts';
import { tell, type Telling } from './cursor.ts';
import { typeValue } from './lawText.ts';
import { asInput } from './sample.ts';

export interface CurveTableProps {
  readonly over: InputField;
  readonly result: ResultField;
  /** Round values along the axis. */
  readonly values: readonly number[];
  readonly telling: Telling;
}

/** A curve in figures, for whoever would rather read, hear or print it. */
export function CurveTable({ over, result, values, telling }: CurveTableProps) {
  return (
    <details className="picture-table">
      <summary>The same as a table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{over.title}</th>
            <th scope="col">{result.title}</th>
          </tr>
        </thead>
        <tbody>
          {values.map((value) => {
            const told = tell(telling, { [over.name]: typeValue(over, asInput(over, value)) });
            return (
              <tr key={value}>
                <td>{told.where}</td>
                <td>{told.isRefused ? 'no answer' : told.says}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
