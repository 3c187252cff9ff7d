import type { BarPlace, BarRow, BarsBlock } from '../../../turnover/sheets/sheet.ts';
import { StateShape } from '../../parts/StateWord.tsx';

const across = (fraction: number) => `${(fraction * 100).toFixed(2)}%`;
const between = (from: number, to: number) => ({ left: across(from), width: across(to - from) });

/** Bands narrower than this share of the axis are not drawn. */
const LEAST_BAND = 0.008;

function Bar({ place, row }: { readonly place: BarPlace; readonly row: BarRow }) {
  const { from, to, low, high, beyond } = place;
  const side = row.state === 'short' ? 'left' : 'right';
  return (
    <>
      <span className={`paper-bar ${row.state} ${side}${row.isHard ? ' wall' : ''}${beyond ? ' beyond' : ''}`} style={between(from, to)} />
      {!beyond && high - low > LEAST_BAND && <span className="paper-whisker" style={between(low, high)} />}
    </>
  );
} // prettier-ignore

/** Margins as bars in stops, each with its figures and its word. */
export function BarsView({ block }: { readonly block: BarsBlock }) {
  const grid = block.marks.map(({ at }) => (
    <span key={at} className={at === block.zero ? 'paper-mark is-zero' : 'paper-mark'} style={{ left: across(at) }} />
  ));
  return (
    <table className="paper-bars">
      <caption className="hidden-text">{block.name}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="hidden-text">Limit</span>
          </th>
          <th scope="col" className="paper-axis">
            <span className="hidden-text">In stops</span>
            {block.marks.map(({ at, words }) => (
              <span key={words} aria-hidden="true" style={{ left: across(at) }}>
                {words}
              </span>
            ))}
          </th>
          <th scope="col">
            <span className="hidden-text">Figures</span>
          </th>
          <th scope="col">
            <span className="hidden-text">Stops</span>
          </th>
          <th scope="col">
            <span className="hidden-text">State</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {block.rows.map((row) => (
          <tr key={row.name} className={row.state}>
            <th scope="row">{row.name}</th>
            {row.place ? (
              <>
                <td className="paper-track">
                  {grid}
                  <Bar place={row.place} row={row} />
                </td>
                <td className="paper-figures">
                  {row.figures}
                  {row.isAssumed && <abbr title="rests on something nobody measured or wrote"> ≈</abbr>}
                </td>
              </>
            ) : (
              <td className="paper-lacks" colSpan={2}>
                {row.figures}
              </td>
            )}
            <td className="paper-spare">{row.spare}</td>
            <td className="paper-state">
              <StateShape standing={row.state} /> {row.stateWord}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
