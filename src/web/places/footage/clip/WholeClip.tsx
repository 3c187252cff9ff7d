import { useCallback, useId, useMemo, useState, type CSSProperties } from 'react';
import type { ClipEntry } from '../../../../record/footage.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { PlayWarning } from '../../../parts/PlayWarning.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import type { Footage } from '../../../state/useFootage.ts';
import { LearnPanel } from '../learn/LearnPanel.tsx';
import { ClipProvider, type ClipContext } from './clipContext.ts';
import { ContactSheet } from './ContactSheet.tsx';
import { Controls } from './Controls.tsx';
import { CopyState } from './CopyState.tsx';
import { flashWarning, FLASHING_HARMS } from './flashWords.ts';
import { isSame, keptOf, suggestedOf, type Kept } from './kept.ts';
import { Picture } from './Picture.tsx';
import { createPlayhead } from './playhead.ts';
import { SpectrumPanel } from './SpectrumPanel.tsx';
import { Spots, SpotsChoice } from './Spots.tsx';
import { spotsOf, spotsSaid } from './spots.ts';
import { mapsOf, placesOf, type MapId } from './tileMap.ts';
import { TileOverlay } from './TileOverlay.tsx';
import { MapChoice, MapFigures } from './TileTools.tsx';
import { TimeAxis } from './TimeAxis.tsx';
import { usePlanned, useReply } from './usePlanned.ts';
import { useTransport } from './useTransport.ts';
import { Verdict } from './Verdict.tsx';

export interface WholeClipProps {
  readonly open: OpenShoot;
  readonly footage: Footage;
  readonly entry: ClipEntry;
  /** Of every frame. */
  readonly clip: MeasuredClip;
  readonly onGo: (href: string) => void;
}

/** A clip that was measured whole: played, drawn frame by frame, held against its plan. */
export function WholeClip({ open, footage, entry, clip, onGo }: WholeClipProps) {
  const { measurement } = clip;
  const { frameCount, playback_fps, width, height } = measurement;
  const { happen } = footage;
  const shot = usePlanned(open, entry.shotId);
  const reply = useReply(clip, shot)!;
  const suggested = useMemo(() => suggestedOf(measurement), [measurement]);
  const [draft, setDraft] = useState<Kept>();
  const told = useMemo(() => keptOf(entry.kept, suggested, frameCount), [entry.kept, suggested, frameCount]);
  const kept = draft ?? told;
  const [playhead] = useState(() => createPlayhead(measurement.action?.peak ?? 0));
  const warning = useMemo(() => flashWarning(measurement), [measurement]);
  const transport = useTransport({ playhead, frameCount, playback_fps, kept, isToWarn: warning !== undefined });
  const [line, setLine] = useState(0);
  const [mapId, setMapId] = useState<MapId>();
  const [opacity, setOpacity] = useState(0.7);
  const maps = useMemo(() => mapsOf(measurement, line), [measurement, line]);
  const places = useMemo(() => placesOf(measurement), [measurement]);
  const [isMarked, setMarked] = useState(true);
  const spots = useMemo(() => spotsOf(measurement), [measurement]);
  const map = maps.find(({ id }) => id === mapId);
  const prefix = `tiles${useId()}`;

  const onKeep = useCallback(
    (next: Kept | undefined) => {
      setDraft(undefined);
      if (next === undefined || !isSame(next, told)) happen({ kind: 'kept', clipId: entry.id, kept: next ?? null });
    },
    [happen, entry.id, told],
  );
  const context: ClipContext = { open, entry, measurement, reply, ...(shot && { shot }), playhead, transport, kept, suggested, onDraft: setDraft, onKeep, onGo }; // prettier-ignore
  const isWarning = transport.warning === 'warned' || transport.warning === 'asked-again';
  return (
    <ClipProvider value={context}>
      <div className="clip-top">
        <div className="clip-player" style={{ '--aspect': String(width / height) } as CSSProperties}>
          <Picture shootId={open.id} entry={entry} width={width} height={height} playhead={playhead} transport={transport}>
            {map && <TileOverlay map={map} places={places} opacity={opacity} prefix={prefix} />}
            {isMarked && spots.length > 0 && <Spots spots={spots} width={width} height={height} />}
          </Picture>
          <Controls
            more={
              <>
                <MapChoice maps={maps} chosen={map} opacity={opacity} onChoose={setMapId} onOpacity={setOpacity} />
                {spots.length > 0 && <SpotsChoice says={spotsSaid(measurement)} isMarked={isMarked} onMark={setMarked} />}
              </>
            }
          >
            {isWarning && warning !== undefined && <PlayWarning key={transport.warning} says={`${warning} ${FLASHING_HARMS}`} isAgain={transport.warning === 'asked-again'} playLabel="Play it" onPlay={() => transport.press('play')} onLeave={() => transport.press('stop')} />}
          </Controls>
          <CopyState entry={entry} onMake={() => footage.makeProxy(entry.id)} />
          {map && <MapFigures map={map} columns={measurement.tileColumns} />}
        </div>
        <Verdict open={open} reply={reply} onGo={onGo} {...(entry.brief?.isStale !== undefined && { note: entry.brief.isStale })} />
      </div>
      <TimeAxis />
      <SpectrumPanel
        open={open}
        measurement={measurement}
        reply={reply}
        shot={shot}
        chosen={line}
        onChoose={(chosen) => {
          setLine(chosen);
          setMapId('flicker');
        }}
        onGo={onGo}
      />
      <ContactSheet />
      <LearnPanel open={open} entry={entry} clips={footage.state?.clips ?? []} />
    </ClipProvider>
  );
} // prettier-ignore
