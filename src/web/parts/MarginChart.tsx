import { useRef, type KeyboardEvent } from 'react';
import { AXIS_MARKS, placeOnAxis, showSigned } from './marginScale.ts';
import { changeOf, type ChartRow, type Ghost } from './marginRow.ts';
import { MarginLine } from './MarginLine.tsx';
import { MarginTable } from './MarginTable.tsx';
import { UnknownLine } from './UnknownLine.tsx';
import './marginChart.css';

export interface MarginChartProps {
  /** What the chart is of, for whoever hears it. */
  readonly label: string;
  readonly rows: readonly ChartRow[];
  /** By row id: where each row would stand. Rows left out stay where they are. */
  readonly ghosts?: ReadonlyMap<string, Ghost>;
  readonly chosen?: string;
  readonly onChoose: (id: string) => void;
  /** Goes to where something missing would be written. */
  readonly onFollow: (path: string) => void;
  /** Explains a row; without it, rows have no sign to ask by. */
  readonly onHelp?: (id: string) => void;
}

function Axis() {
  return (
    <div className="margin-axis" aria-hidden="true">
      <span className="margin-axis-track">
        {AXIS_MARKS.map((mark) => (
          <span
            key={mark}
            className={mark === 0 ? 'axis-word is-zero' : 'axis-word'}
            style={{ left: `${placeOnAxis(mark) * 100}%` }}
          >
            {mark === 0 ? 'just enough' : showSigned(mark, 0)}
          </span>
        ))}
      </span>
    </div>
  );
}

/**
 * Every limit on one axis, in stops: short to the left of "just enough", spare to the right. Rows are chosen like
 * radio buttons, with the arrow keys too; ghosts draw where each bar would go.
 */
export function MarginChart({ label, rows, ghosts, chosen, onChoose, onFollow, onHelp }: MarginChartProps) {
  const lines = useRef<HTMLDivElement>(null);
  const known = rows.filter(({ stops }) => stops);
  const entry = known.some(({ id }) => id === chosen) ? chosen : known[0]?.id;

  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const at = known.findIndex(({ id }) => id === (event.target as HTMLElement).dataset.row);
    if (by === undefined || at < 0) return;
    event.preventDefault();
    const next = known[(at + by + known.length) % known.length]!;
    onChoose(next.id);
    lines.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(next.id)}"]`)?.focus();
  };

  return (
    <div className={`margin-chart${ghosts ? ' has-ghosts' : ''}${onHelp ? ' has-help' : ''}`}>
      <Axis />
      <div className="margin-lines" role="radiogroup" aria-label={label} ref={lines} onKeyDown={onKeyDown}>
        {rows.map((row) => (
          <div className="margin-row" key={row.id}>
            {row.stops ? (
              <MarginLine
                row={row}
                stops={row.stops}
                ghost={ghosts?.get(row.id)}
                change={changeOf(row, ghosts?.get(row.id))}
                isChosen={row.id === chosen}
                isEntry={row.id === entry}
                onChoose={onChoose}
              />
            ) : (
              <UnknownLine row={row} onFollow={onFollow} />
            )}
            {onHelp && (
              <button
                type="button"
                className="margin-help no-print"
                // One stop of the Tab key for the chosen row; the arrows lead to the others.
                {...(row.stops && row.id !== entry ? { tabIndex: -1 } : {})}
                aria-label={`What is this: ${row.title}`}
                onClick={() => onHelp(row.id)}
              >
                ?
              </button>
            )}
          </div>
        ))}
      </div>
      <MarginTable label={label} rows={rows} />
    </div>
  );
}
