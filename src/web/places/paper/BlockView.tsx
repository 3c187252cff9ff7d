import type { Block, FramesBlock, KeyFigure } from '../../../turnover/sheets/sheet.ts';
import { BarsView } from './BarsView.tsx';
import { ClocksView } from './ClocksView.tsx';
import { BlankView, TableView } from './TableView.tsx';

function KeyFigureView({ label, number, unit, note }: KeyFigure) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        <span>
          <b>{number}</b>
          {unit !== '' && <i> {unit}</i>}
        </span>
        {note !== undefined && <small>{note}</small>}
      </dd>
    </div>
  );
}

function FramesView({ block }: { readonly block: FramesBlock }) {
  return (
    <ul className="paper-frames">
      {block.frames.map(({ number, title, words, seconds, note }) => (
        <li key={number}>
          <span className="paper-picture" style={{ aspectRatio: String(block.aspect) }} />
          <b>
            {number} {title}
          </b>
          <small>{[seconds, note].filter((part) => part !== '').join(', ')}</small>
          {words !== '' && <small>{words}</small>}
        </li>
      ))}
    </ul>
  );
}

/** One block of a sheet. */
export function BlockView({ block }: { readonly block: Block }) {
  switch (block.block) {
    case 'heading': {
      const Heading = block.level === 2 ? 'h3' : 'h4';
      return (
        <Heading>
          {block.words} {block.aside !== undefined && <small>{block.aside}</small>}
        </Heading>
      );
    }
    case 'paragraph':
      return <p className={`paper-words ${block.tone}`}>{block.words}</p>;
    case 'figures':
      return (
        <dl className={`paper-figs ${block.size}`}>
          {block.figures.map((figure, i) => (
            <KeyFigureView key={i} {...figure} />
          ))}
        </dl>
      );
    case 'table':
      return <TableView block={block} />;
    case 'blank':
      return <BlankView block={block} />;
    case 'bars':
      return <BarsView block={block} />;
    case 'caution':
      return (
        <section className="paper-caution">
          <h3>
            <svg viewBox="0 0 20 18" aria-hidden="true">
              <path d="M10 0 20 18H0Z" />
              <path className="is-sign" d="M10 6v6M10 13.6v1.8" />
            </svg>
            {block.title}
          </h3>
          {block.says.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </section>
      );
    case 'ticks':
      return (
        <ul className="paper-ticks" aria-label={block.name}>
          {block.items.map(({ words, under }, i) => (
            <li key={i}>
              {words} {under !== undefined && <small>{under}</small>}
            </li>
          ))}
        </ul>
      );
    case 'lines':
      return (
        <div className="paper-lines">
          {block.labels.map((label) => (
            <span key={label}>{label}</span>
          ))}
        </div>
      );
    case 'frames':
      return <FramesView block={block} />;
    case 'clocks':
      return <ClocksView block={block} />;
    case 'rule':
      return <hr />;
    case 'break':
      return <div className="paper-break" />;
  }
}
