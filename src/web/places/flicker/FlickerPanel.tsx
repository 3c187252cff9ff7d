import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import { ratioOf } from '../../../base/rational.ts';
import { flickerPicture, lightGroupsOf } from '../../../plan/flickerPicture.ts';
import type { ShotFlicker, ShotPlan, Way } from '../../../plan/types.ts';
import { Button } from '../../parts/Button.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { StateWord } from '../../parts/StateWord.tsx';
import { useWidth } from '../../parts/useWidth.ts';
import { WayCard } from '../../parts/WayCard.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { useShot } from '../shot/shotContext.ts';
import { wayCardOf } from '../shot/wayCardOf.ts';
import { axesAround } from './chartGrid.ts';
import { ChartTable } from './ChartTable.tsx';
import { FlickerChart } from './FlickerChart.tsx';
import { FlickerPatch } from './FlickerPatch.tsx';
import { FrameClocks } from './FrameClocks.tsx';
import { framesShown, lightUpTo, windowsShown } from './frameClocks.ts';
import { LampShares } from './LampShares.tsx';
import { MOST_PLAY_s } from './patchPlay.ts';
import { pickedWay, type Picked } from './pickedWay.ts';
import { remedyWords, verdictFigures, verdictWord } from './verdictWords.ts';
import './flicker.css';
import '../reckoner/pictures.css';

export interface FlickerPanelProps {
  /** The way whose effect the page shows. */
  readonly shown: Way | undefined;
  readonly onShow: (way: Way | undefined) => void;
  readonly onApply: (way: Way) => void;
}

function Verdict({ flicker: { seen, verdict, lamps } }: { readonly flicker: ShotFlicker }) {
  if (!seen || !verdict) {
    const unknown = lamps.filter((lamp) => lamp.unknown !== undefined);
    return (
      <p className="flicker-says">
        Nobody can tell yet
        {unknown.length > 0 ? `: ${unknown.map(({ title, unknown: why }) => `${title}, ${why}`).join('; ')}.` : ': rate, shutter, length or a lamp’s share is not known. The margin above says which.'}
      </p>
    );
  }
  const { word, standing } = verdictWord(verdict);
  return (
    <>
      <p className="flicker-says">
        <StateWord standing={standing} word={word} /> {verdict.why}{' '}
        <span className="flicker-remedy">{remedyWords(verdict)}</span>
      </p>
      <dl className="flicker-figures">
        {verdictFigures(seen).map(({ title, shown, says }) => (
          <div key={title}>
            <dt>{title}</dt>
            <dd>
              <Figure {...shown} />
              {says !== undefined && <small>{says}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
} // prettier-ignore

/** What is shown: a moment behind what is typed, so that typing never waits for a drawing. */
interface Shown {
  readonly open: OpenShoot;
  readonly plan: ShotPlan;
}

function Frames({ open, plan }: Shown) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const { settings, flicker, clocks } = plan;
  const rate_fps = settings?.captureRate_fps ?? 0;
  const alias_Hz = flicker?.seen?.dominant?.alias_Hz ?? 0;
  const kept_s = clocks ? clocks.actionTime_s + 2 * clocks.handles_s : 0;
  const frameCount = framesShown({ rate_fps, alias_Hz, clipCount: kept_s * rate_fps });
  const picture = useMemo(() => {
    const whole = width > 0 ? flickerPicture(open.shoot, plan, { frameCount }) : undefined;
    if (!whole) return undefined;
    const fastest_Hz = Math.max(0, ...(flicker?.lamps ?? []).map(({ ripple_Hz }) => ripple_Hz));
    const count = windowsShown({ rate_fps, ripple_Hz: fastest_Hz, frameCount, width_px: width });
    return { ...whole, mixed: lightUpTo(whole.lamps, count / rate_fps), windows: whole.windows.slice(0, count) };
  }, [open.shoot, plan, flicker, rate_fps, frameCount, width]);
  const played = useMemo(() => {
    if (!clocks || width === 0) return undefined;
    const most = Math.min(MOST_PLAY_s * ratioOf(clocks.playRate), kept_s * rate_fps);
    return flickerPicture(open.shoot, plan, { frameCount: Math.max(1, Math.round(most)) });
  }, [open.shoot, plan, clocks, kept_s, rate_fps, width]);
  return (
    <div className="flicker-frames" ref={ref}>
      {picture && (
        <FrameClocks
          {...picture}
          says={`The lamps’ light with the shutter open on it ${picture.windows.length} times, and the light of those frames as they play. ${flicker?.verdict?.why ?? ''}`}
        />
      )}
      {played && <FlickerPatch frames={played.frames} play_fps={played.play_fps} />}
    </div>
  );
}

function Chart({ open, plan, shown, onShow, onApply }: FlickerPanelProps & Shown) {
  const { shotId, system } = useShot();
  const { settings, clocks, margins } = plan;
  const [picked, setPicked] = useState<Picked>();
  const groups = useMemo(() => lightGroupsOf(open.shoot, shotId), [open.shoot, shotId, plan]);
  const rate_fps = settings?.captureRate_fps ?? 0;
  const exposureTime_s = settings?.exposureTime_s ?? 0;
  // Of this limit the ceiling is what the format gives.
  const highest_fps = margins.find(({ id }) => id === 'frame-rate')?.need;
  const now = useMemo(() => ({ rate_fps, exposureTime_s }), [rate_fps, exposureTime_s]);
  const axes = useMemo(() => axesAround({ rate_fps, exposureTime_s }, highest_fps), [rate_fps, exposureTime_s, highest_fps]); // prettier-ignore
  const way = useMemo(
    () => picked && pickedWay({ written: open.written, shotId, plan }, picked),
    [picked, open.written, shotId, plan],
  );
  // Once the shot stands elsewhere, what was picked is no longer on offer.
  useEffect(() => setPicked(undefined), [now]);
  if (!groups || !clocks || !settings) return null;
  const playback_fps = ratioOf(clocks.playRate);
  const viewed = { groups, playback_fps, axes, now };
  return (
    <section className="flicker-chart pictures" aria-label="Over rate and shutter">
      <h3>Over rate and shutter</h3>
      <FlickerChart
        {...viewed}
        allowed_stops={margins.find(({ id }) => id === 'flicker')?.need}
        highest_fps={highest_fps}
        system={system}
        picked={picked}
        onPick={setPicked}
      />
      {way && (
        <div className="flicker-picked">
          <WayCard
            {...wayCardOf(way, 'flicker')}
            isShown={shown === way}
            onShow={() => onShow(way)}
            onHide={() => onShow(undefined)}
            onApply={() => {
              setPicked(undefined);
              onApply(way);
            }}
          />
          <Button look="quiet" onClick={() => setPicked(undefined)}>
            Leave it
          </Button>
        </div>
      )}
      <ChartTable {...viewed} />
    </section>
  );
}

/** What the lamps of the set-up do to the frames of a shot: judged, drawn, played if asked, and over other settings. */
export function FlickerPanel(props: FlickerPanelProps) {
  const { open, plan } = useShot();
  const shown = useDeferredValue(useMemo(() => ({ open, plan }), [open, plan]));
  const { flicker } = plan;
  if (!flicker) return null;
  return (
    <Panel title="Flicker" aside="what the lamps do to the frames" className="flicker-panel">
      <Verdict flicker={flicker} />
      {shown.plan.flicker?.seen && <Frames {...shown} />}
      <LampShares lamps={flicker.lamps} />
      {shown.plan.flicker?.seen && <Chart {...props} {...shown} />}
    </Panel>
  );
}
