import { useState } from 'react';
import type { ClipEntry } from '../../../record/footage.ts';
import { pairNotes, pairRows } from '../../../turnover/pairRows.ts';
import { footageHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { EmptyPlace } from '../../parts/EmptyPlace.tsx';
import { Panel } from '../../parts/Panel.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { useMeasured, type Footage, type Measured } from '../../state/useFootage.ts';
import { GoLink } from '../GoLink.tsx';
import { flashWarning } from './clip/flashWords.ts';
import { usePlanned } from './clip/usePlanned.ts';
import { ClipState } from './ClipState.tsx';
import { isSynthetic } from './clipGroups.ts';
import { PairScrub } from './PairScrub.tsx';
import { besides } from './pairTime.ts';
import './clip/playing.css';
import './pair.css';

export interface PairViewProps {
  readonly open: OpenShoot;
  readonly footage: Footage;
  readonly clipIds: readonly [first: string, second: string];
  readonly onGo: (href: string) => void;
}

function Head({
  clip,
  which,
  open,
  onGo,
}: {
  readonly clip: ClipEntry;
  readonly which: string;
  readonly open: OpenShoot;
  readonly onGo: (href: string) => void;
}) {
  return (
    <div className="pair-head">
      <span className="footage-quiet">{which}</span>
      <h2>
        <GoLink href={footageHref(open.id, clip.id)} onGo={onGo}>
          {clip.name}
        </GoLink>
      </h2>
      {isSynthetic(clip) && <span className="footage-label">synthetic: made up, not filmed</span>}
      <ClipState clip={clip} />
    </div>
  );
}

/** What was measured with the shot that it is a take of, as that is planned now. */
function useHeld(open: OpenShoot, entry: ClipEntry): Measured {
  const measured = useMeasured(open.id, entry);
  const shot = usePlanned(open, entry.shotId);
  const { clip } = measured;
  return { ...measured, ...(clip && { clip: { ...clip, ...(shot && { shot }) } }) };
}

interface FiguresProps {
  readonly entries: readonly [ClipEntry, ClipEntry];
  readonly measured: readonly [Measured, Measured];
}

function Figures({ entries, measured: [first, second] }: FiguresProps) {
  const failed = first.failed ?? second.failed;
  if (!first.clip || !second.clip)
    return (
      <p role="status">
        {failed ??
          (entries.every(({ brief }) => brief)
            ? 'Reading what was measured…'
            : 'Figures stand here once both clips are measured.')}
      </p>
    );
  const pair = [first.clip, second.clip] as const;
  return (
    <>
      <table className="pair-table">
        <caption className="hidden-text">Figures of both clips, and how the second differs</caption>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col">First</th>
            <th scope="col">Second</th>
            <th scope="col">Difference</th>
          </tr>
        </thead>
        <tbody>
          {pairRows(pair).map(({ title, of: [a, b], differs, isSame }) => (
            <tr key={title} className={isSame ? 'is-same' : ''}>
              <th scope="row">{title}</th>
              <td data-of="First">{a}</td>
              <td data-of="Second">{b}</td>
              <td data-of="Difference">{differs}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {pairNotes(pair).map((note) => (
        <p key={note} className="footage-quiet">
          {note}
        </p>
      ))}
    </>
  );
}

/** The worse of what both would flash; null where neither does. */
function warningOf(measured: readonly [Measured, Measured]): string | null | undefined {
  if (!measured.every(({ clip }) => clip?.isWhole)) return undefined;
  const says = measured.flatMap(({ clip }) => flashWarning(clip!.measurement) ?? []);
  return says.length === 0 ? null : says.join(' ');
}

interface BothProps extends Pick<PairViewProps, 'open' | 'onGo'> {
  readonly entries: readonly [ClipEntry, ClipEntry];
  readonly width: number;
  readonly onMakeCopy: (clipId: string) => void;
}

function Both({ open, entries, width, onGo, onMakeCopy }: BothProps) {
  const measured = [useHeld(open, entries[0]), useHeld(open, entries[1])] as const;
  const [first, second] = entries;
  return (
    <>
      <PairScrub
        shootId={open.id}
        entries={entries}
        width={width}
        heads={[<Head key="first" clip={first} which="First" open={open} onGo={onGo} />, <Head key="second" clip={second} which="Second" open={open} onGo={onGo} />]}
        warning={warningOf(measured)}
        onMakeCopy={onMakeCopy}
      />
      <Panel title="What differs">
        <Figures entries={entries} measured={measured} />
      </Panel>
    </>
  );
} // prettier-ignore

/** Two clips beside each other, moved through together, and every figure of both with its difference. */
export function PairView({ open, footage, clipIds, onGo }: PairViewProps) {
  const { state, failed } = footage;
  const [width] = useState(() => Math.min(960, Math.round(window.innerWidth * Math.min(2, window.devicePixelRatio) * (window.innerWidth < 700 ? 1 : 0.5))));
  if (!state) return <div className="footage"><h1>Two clips</h1><p role="status">{failed ?? 'Looking for clips…'}</p></div>;
  const [first, second] = clipIds.map((id) => state.clips.find((clip) => clip.id === id));
  if (!first || !second)
    return (
      <EmptyPlace title="No such clip" says="One of the two is not among the clips of this shoot. Choose two in the list.">
        <Button look="main" onClick={() => onGo(footageHref(open.id))}>
          To the footage
        </Button>
      </EmptyPlace>
    );
  const others = besides(state.clips, first);
  const choices = (others.some(({ id }) => id === second.id) ? others : [second, ...others]).map(({ id, name }) => ({ value: id, label: name }));
  return (
    <div className="footage pair">
      <header className="footage-head">
        <div>
          <p className="footage-quiet">
            <GoLink className="footage-back" href={footageHref(open.id)} onGo={onGo}>
              Footage
            </GoLink>
          </p>
          <h1>Two clips</h1>
        </div>
        <div className="footage-tools no-print">
          <ChoiceField id="pair-second" label="Beside the first" value={second.id} choices={choices} onChoose={(id) => onGo(footageHref(open.id, first.id, id))} />
          <Button look="quiet" onClick={() => onGo(footageHref(open.id, second.id, first.id))}>
            Exchange
          </Button>
        </div>
      </header>
      {failed !== undefined && <p className="footage-lack" role="status">{failed}</p>}
      <Both key={`${first.id} ${second.id}`} open={open} entries={[first, second]} width={width} onGo={onGo} onMakeCopy={footage.makeProxy} />
    </div>
  );
} // prettier-ignore
