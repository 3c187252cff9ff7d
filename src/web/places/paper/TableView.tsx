import { holdUnits } from '../../../turnover/sheets/holdUnits.ts';
import type { BlankTableBlock, Cell, TableBlock } from '../../../turnover/sheets/sheet.ts';
import { StateShape } from '../../parts/StateWord.tsx';
import { useScrolls } from '../../parts/useScrolls.ts';

function CellView({ cell }: { readonly cell: Cell }) {
  const held = holdUnits(cell.words);
  const words = cell.isStrong ? <b>{held}</b> : held;
  return (
    <>
      {cell.state !== undefined && <StateShape standing={cell.state} />} {words}
      {cell.under !== undefined && <small>{holdUnits(cell.under)}</small>}
    </>
  );
}

/** A table whose head is repeated on every page it goes on to. */
export function TableView({ block }: { readonly block: TableBlock }) {
  const { name, columns, rows, total } = block;
  const scrolls = useScrolls<HTMLDivElement>(name);
  const row = (cells: readonly Cell[], key: string | number) => (
    <tr key={key}>
      {cells.map((cell, i) => (
        <td key={i} className={columns[i]?.align}>
          <CellView cell={cell} />
        </td>
      ))}
    </tr>
  );
  return (
    <div className="paper-scroll" {...scrolls}>
      <table className="paper-table">
        <caption className="hidden-text">{name}</caption>
        <thead>
          <tr>
            {columns.map(({ title, align }, i) => (
              <th key={i} scope="col" className={align}>
                {title === '' ? <span className="hidden-text">Number</span> : title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(row)}
          {total && row(total, 'total')}
        </tbody>
      </table>
    </div>
  );
}

/** A table to be written into by hand. */
export function BlankView({ block }: { readonly block: BlankTableBlock }) {
  const { name, columns, rowCount } = block;
  const rows = Array.from({ length: rowCount }, (_, i) => i);
  return (
    <table className="paper-blank">
      <caption className="hidden-text">{name}</caption>
      <thead>
        <tr>
          {columns.map(({ title, share }) => (
            <th key={title} scope="col" style={{ width: `${share * 100}%` }}>
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody aria-hidden="true">
        {rows.map((i) => (
          <tr key={i}>
            {columns.map(({ title }) => (
              <td key={title} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
