import type { ChartRow } from './marginRow.ts';
import { StateWord } from './StateWord.tsx';

export interface UnknownLineProps {
  readonly row: ChartRow;
  readonly onFollow: (path: string) => void;
}

/** Both figures of a limit may lack the same thing. */
const distinct = (missing: ChartRow['missing']): ChartRow['missing'] => [
  ...new Map(missing.map((item) => [`${item.path} ${item.title}`, item])).values(),
];

/** A limit that cannot be judged yet: no bar and no line, but what is missing and the way there. */
export function UnknownLine({ row, onFollow }: UnknownLineProps) {
  return (
    <div className="margin-line unknown">
      <span className="margin-name">
        {row.title}
        {row.detail !== undefined && <small>{row.detail}</small>}
      </span>
      <span className="margin-missing">
        <span>needs</span>
        {distinct(row.missing).map(({ title, path, says }) => (
          <button type="button" key={path + title} title={says} onClick={() => onFollow(path)}>
            {title}
          </button>
        ))}
      </span>
      <StateWord standing="unknown" />
    </div>
  );
}
