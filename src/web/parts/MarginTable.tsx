import { sayFigures, type ChartRow } from './marginRow.ts';
import { showSigned } from './marginScale.ts';

/** The chart once more as a table, for whoever cannot see it. */
export function MarginTable({ label, rows }: { readonly label: string; readonly rows: readonly ChartRow[] }) {
  return (
    <div className="hidden-text">
      <table>
        <caption>{label}</caption>
        <thead>
          <tr>
            <th scope="col">Limit</th>
            <th scope="col">State</th>
            <th scope="col">Stops</th>
            <th scope="col">Low to high</th>
            <th scope="col">Figures</th>
            <th scope="col">Kind</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.detail === undefined ? row.title : `${row.title}, ${row.detail}`}</th>
              <td>{row.standing}</td>
              <td>{row.stops ? showSigned(row.stops.value) : ''}</td>
              <td>{row.stops ? `${showSigned(row.stops.low)} to ${showSigned(row.stops.high)}` : ''}</td>
              <td>{row.stops ? sayFigures(row) : `missing: ${row.missing.map(({ title }) => title).join(', ')}`}</td>
              <td>{row.isHard ? 'hard' : 'taste'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
