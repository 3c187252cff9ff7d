import type { Sheet } from '../../../turnover/sheets/sheet.ts';
import { BlockView } from './BlockView.tsx';

/** One sheet as it is printed: its head, then its blocks. */
export function SheetView({ sheet, size }: { readonly sheet: Sheet; readonly size: 'a4' | 'letter' }) {
  const { id, kind, over, shoot, about, number, title, under, served, blocks } = sheet;
  const from = [over, ...(shoot === title ? [] : [shoot]), about].filter((part) => part !== '').join(', ');
  return (
    <article className={`paper-sheet ${size} ${kind}`} aria-labelledby={`sheet-${id}`}>
      <div className="paper-body">
        <header className="paper-head">
          <div>
            <small>{from}</small>
            <h2 id={`sheet-${id}`}>
              {number !== undefined && <span className="paper-number">{number}</span>}
              {title}
            </h2>
            {under !== undefined && <p>{under}</p>}
            {served?.frames.map((frame) => (
              <p key={frame.number}>
                <small>
                  Frame {frame.number}, {frame.title}, {frame.seconds}
                  {frame.words !== '' && `: ${frame.words}`}
                </small>
              </p>
            ))}
          </div>
          {served && <span className="paper-picture" style={{ aspectRatio: String(served.aspect) }} />}
        </header>
        {blocks.map((block, i) => (
          <BlockView key={i} block={block} />
        ))}
      </div>
    </article>
  );
}
