import { useMemo, useState } from 'react';
import type { ChartAxes, Standing } from './chartGrid.ts';
import { IN_STEP, swingTable, type Viewed } from './chartWords.ts';

function Table({ groups, playback_fps, axes, now }: Viewed & { readonly axes: ChartAxes; readonly now: Standing }) {
  const { rates, rows } = useMemo(
    () => swingTable({ groups, playback_fps }, axes, now),
    [groups, playback_fps, axes, now],
  );
  return (
    <div className="chart-table" tabIndex={0} role="region" aria-label="Swing of the frames as a table">
      <table>
        <caption className="hidden-text">Swing of the frames in stops, by shutter and frame rate</caption>
        <thead>
          <tr>
            <th scope="col">Shutter</th>
            {rates.map(({ value, label }) => (
              <th key={value} scope="col">
                {label} fps
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ shutter, cells }) => (
            <tr key={shutter}>
              <th scope="row">{shutter}</th>
              {cells.map((cell, i) => (
                <td key={i}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {rows.some(({ cells }) => cells.includes(IN_STEP)) && (
        <p className="chart-table-says">
          In step: every frame of a take gets the same light, takes can differ, and mains that drift show slowly.
        </p>
      )}
    </div>
  );
}

/** The chart as figures, for whoever reads rather than looks; worked out once it is opened. */
export function ChartTable(props: Viewed & { readonly axes: ChartAxes; readonly now: Standing }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="picture-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>As a table, in stops</summary>
      {isOpen && <Table {...props} />}
    </details>
  );
}
