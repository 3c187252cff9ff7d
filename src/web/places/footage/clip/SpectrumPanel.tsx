import { useMemo } from 'react';
import { showNumber } from '../../../../base/quantity.ts';
import { spectrumOf } from '../../../../measure/flicker/spectrum.ts';
import type { Measurement } from '../../../../measure/types.ts';
import { withDefaults } from '../../../../plan/givens.ts';
import type { PlannedShot } from '../../../../turnover/measureAgainst.ts';
import type { ClipReply } from '../../../../turnover/measureReply.ts';
import { lightHref } from '../../../hrefs.ts';
import { Panel } from '../../../parts/Panel.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import { GoLink } from '../../GoLink.tsx';
import { SpectrumDrawing } from './SpectrumDrawing.tsx';
import { lampTicks, type LampTick } from './spectrumLayout.ts';

export interface SpectrumPanelProps {
  readonly open: OpenShoot;
  readonly measurement: Measurement;
  readonly reply: ClipReply;
  readonly shot: PlannedShot | undefined;
  readonly chosen: number;
  readonly onChoose: (line: number) => void;
  readonly onGo: (href: string) => void;
}

type LineReply = ClipReply['flicker']['lines'][number];

/** Where the lamps of a shot are placed. */
const setupOf = ({ shoot }: OpenShoot, shot: PlannedShot | undefined) =>
  shot && shoot.shots[shot.id] && withDefaults(shoot, shot.id).shot.lighting;

function Line({ line, number, isChosen, lightsAt, onChoose, onGo }: { readonly line: LineReply; readonly number: number; readonly isChosen: boolean; readonly lightsAt: string | undefined; readonly onChoose: () => void; readonly onGo: (href: string) => void }) {
  return (
    <li className={isChosen ? 'is-chosen' : undefined}>
      <button type="button" className="clip-line" aria-pressed={isChosen} onClick={onChoose}>
        <b>{number}</b>
        <span>{line.says}</span>
      </button>
      {lightsAt !== undefined && line.fits.length > 0 && (
        <p className="clip-line-links no-print">
          {line.fits.map(({ id, title, ripple_Hz, order, plannedDepthFraction }) => (
            <span key={id}>
              <GoLink href={lightsAt} onGo={onGo}>
                {title}
              </GoLink>{' '}
              <small>
                {order === 1 ? '' : `${order} × `}
                {showNumber(ripple_Hz, 4)} Hz, planned {showNumber(100 * plannedDepthFraction, 2)} % deep
              </small>
            </span>
          ))}
        </p>
      )}
    </li>
  );
} // prettier-ignore

function Lamps({ ticks }: { readonly ticks: readonly LampTick[] }) {
  if (ticks.length === 0) return null;
  return (
    <p className="clip-lamps">
      <i className="clip-lamp-sign" aria-hidden="true" /> The lamps of the plan, as the frames fold their ripples:{' '}
      {ticks.map(({ lamps, beat_Hz, ripple_Hz }) => `${lamps.map(({ title }) => title).join(', ')} ${showNumber(ripple_Hz, 4)} Hz at ${showNumber(beat_Hz, 4)} Hz`).join('; ')}.
    </p>
  );
} // prettier-ignore

/** What waves there are in the light, and what they may come from. */
export function SpectrumPanel({ open, measurement, reply, shot, chosen, onChoose, onGo }: SpectrumPanelProps) {
  const { frames, frameRate_fps, flicker } = measurement;
  const spectrum = useMemo(() => spectrumOf({ light: frames.mean, frameWeights: frames.weight, frameRate_fps }), [frames, frameRate_fps]); // prettier-ignore
  const ticks = useMemo(() => lampTicks(shot?.lamps ?? [], frameRate_fps), [shot, frameRate_fps]);
  const setupId = setupOf(open, shot);
  const lightsAt = setupId === undefined ? undefined : lightHref(open.id, setupId);
  return (
    <Panel title="Flicker" aside="depth of a wave of each rate in the light of the set" className="clip-flicker">
      {spectrum ? (
        <SpectrumDrawing spectrum={spectrum} frameRate_fps={frameRate_fps} lines={flicker.lines} chosen={chosen} lamps={ticks} />
      ) : (
        <p>Too short or too dark for a spectrum.</p>
      )}
      <Lamps ticks={ticks} />
      {reply.flicker.lines.length === 0 ? (
        <p className="clip-no-lines">{flicker.why}</p>
      ) : (
        <ol className="clip-lines" aria-label="Lines that were found: choosing one shows where it is over the picture">
          {reply.flicker.lines.map((line, i) => (
            <Line key={i} line={line} number={i + 1} isChosen={i === chosen} lightsAt={lightsAt} onChoose={() => onChoose(i)} onGo={onGo} />
          ))}
        </ol>
      )}
      {!shot && reply.flicker.lines.length > 0 && <p className="clip-hint">Say which shot this clip is, and its lamps are held against these lines.</p>}
    </Panel>
  );
} // prettier-ignore
