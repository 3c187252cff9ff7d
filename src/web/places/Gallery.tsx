import { useEffect, useState, type ReactNode } from 'react';
import { KeyHelp } from '../actions/KeyHelp.tsx';
import { useActions } from '../actions/useActions.ts';
import { GALLERY_HREF, reckonerHref, SHOOTS_HREF } from '../hrefs.ts';
import { Notice } from '../parts/Notice.tsx';
import { Shell } from '../parts/Shell.tsx';
import { Buttons, Fields } from './gallery/Controls.tsx';
import { Holders, Overlays } from './gallery/Frames.tsx';
import { Charts, Rows, useWays, Words } from './gallery/Limits.tsx';
import { InTime } from './gallery/InTime.tsx';
import { Clocks, Traces } from './gallery/Times.tsx';
import { useBench } from './gallery/useBench.ts';
import { fieldId } from './shot/shotContext.ts';
import './gallery/gallery.css';

const SECTIONS = [
  ['fields', 'Fields'],
  ['buttons', 'Buttons and signs'],
  ['words', 'Figures and words'],
  ['rows', 'Rows of a chart'],
  ['charts', 'Charts and ways'],
  ['clocks', 'Clocks'],
  ['time', 'In time'],
  ['traces', 'Traces'],
  ['overlays', 'Menus, sheets and notices'],
  ['holders', 'Frames'],
] as const;

type SectionId = (typeof SECTIONS)[number][0];

/** Every part that the screens are made of, in every state, drawn from a small shoot that is planned in this page. */
export function Gallery({ onGo }: { readonly onGo: (href: string) => void }) {
  const bench = useBench();
  const help = useActions({ go: onGo });
  const [said, setSaid] = useState<string>();
  useEffect(() => {
    document.title = 'Gallery, Longsecond';
  }, []);
  const light = bench.planOf('drop').margins.find(({ id }) => id === 'light');
  const [way] = useWays(bench, light);
  const follow = (path: string) => {
    const field = document.getElementById(fieldId(path));
    field?.focus();
    if (!field) setSaid(`That is written in the gallery’s own shoot, at ${path.split('/').slice(1).join(', ')}`);
  };
  const shown: Readonly<Record<SectionId, ReactNode>> = {
    fields: <Fields bench={bench} />,
    buttons: <Buttons />,
    words: <Words bench={bench} />,
    rows: <Rows bench={bench} onFollow={follow} way={way} />,
    charts: <Charts bench={bench} onFollow={follow} />,
    clocks: <Clocks bench={bench} />,
    time: <InTime />,
    traces: <Traces bench={bench} onFollow={follow} />,
    overlays: <Overlays bench={bench} />,
    holders: <Holders onGo={onGo} />,
  };
  const step = (summary: string | undefined, onPress: () => void) => ({
    ...(summary === undefined ? {} : { summary }),
    onPress,
  });
  return (
    <Shell
      places={[
        { label: 'All shoots', href: SHOOTS_HREF, isCurrent: false },
        { label: 'Reckoner', href: reckonerHref(), isCurrent: false },
      ]}
      onGo={onGo}
      title={bench.plan.title}
      standing={{
        word: bench.changeCount === 0 ? 'as it came' : `${bench.changeCount} changed, kept nowhere`,
        isSettled: bench.changeCount === 0,
        href: GALLERY_HREF,
        isCurrent: true,
      }}
      undo={step(bench.undoSummary, bench.undo)}
      redo={step(bench.redoSummary, bench.redo)}
    >
      <div className="gallery">
        <header className="gallery-head">
          <h1>Gallery</h1>
          <p>Every part that the screens are made of, in every state, drawn from one small shoot. Nothing is kept.</p>
          <nav aria-label="Parts">
            <ul>
              {SECTIONS.map(([id, title]) => (
                <li key={id}>
                  <a href={`#${id}`}>{title}</a>
                </li>
              ))}
            </ul>
          </nav>
        </header>
        {SECTIONS.map(([id, title]) => (
          <section key={id} className="gallery-section" aria-labelledby={id}>
            <h2 id={id} tabIndex={-1}>
              {title}
            </h2>
            <div className="gallery-parts">{shown[id]}</div>
          </section>
        ))}
      </div>
      {said !== undefined && <Notice says={said} onDismiss={() => setSaid(undefined)} />}
      <KeyHelp {...help} />
    </Shell>
  );
}
