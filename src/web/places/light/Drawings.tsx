import { useCallback, useMemo, useState } from 'react';
import { useWidth } from '../../parts/useWidth.ts';
import { Panel } from '../../parts/Panel.tsx';
import { stepLabel } from './bands.ts';
import { DrawingTools, type MapChoice } from './DrawingTools.tsx';
import { flagsDrawn, lampsDrawn } from './drawn.ts';
import { Legend } from './Legend.tsx';
import { allOn_lx, normalOf } from './lightMap.ts';
import { useLight } from './lightContext.ts';
import { readingSaid, sayMap, saySurface, spotSaid } from './mapWords.ts';
import { projectionOf, spread, type Flat } from './projection.ts';
import { SetDrawing } from './SetDrawing.tsx';
import type { Snap } from './useGrips.ts';
import type { DrawnMap } from './useLightMap.ts';
import { REACHES_m } from './viewport.ts';

interface Probe {
  readonly on: 'plan' | 'elevation';
  readonly spot: Flat;
  readonly isKept: boolean;
}

const planHeight = (width_px: number) => Math.min(Math.max(300, width_px * 0.5), 460);
const elevationHeight = (width_px: number) => Math.min(Math.max(230, width_px * 0.33), 320);

/** The set from above and level, to scale, with the light over a plane beneath, and what the meter would read. */
export function Drawings() {
  const { setup, light, only, selected, burning, reference: need, shot, system, view, facing, facingSaid } = useLight();
  const [looking, setLooking] = useState<'camera' | 'side'>('camera');
  const [map, setMap] = useState<MapChoice>('table');
  const [snap, setSnap] = useState<Snap>('free');
  const [reachIndex, setReachIndex] = useState(-1);
  const [probe, setProbe] = useState<Probe>();
  const [kept, setKept] = useState<Probe>();
  const [planMap, setPlanMap] = useState<DrawnMap>();
  const [pictureMap, setPictureMap] = useState<DrawnMap>();
  const [ref, width_px] = useWidth<HTMLDivElement>();

  const lamps = useMemo(() => lampsDrawn({ light, setup, only, selected }), [light, setup, only, selected]);
  const flags = useMemo(() => flagsDrawn({ light, setup, only, selected }), [light, setup, only, selected]);

  const onPlanMap = useCallback((drawn: DrawnMap | undefined) => setPlanMap(drawn), []);
  const onPictureMap = useCallback((drawn: DrawnMap | undefined) => setPictureMap(drawn), []);
  const drawn = map === 'picture' ? pictureMap : planMap;
  const surface = map === 'none' ? undefined : map;
  // Without a need, the light that falls on the very surface at the subject is what the rest is held against.
  const held_lx = useMemo(() => (surface === undefined ? 0 : allOn_lx(burning, surface, [0, 0, 0], normalOf(surface, facing))), [burning, surface, facing]);
  const mapped = useMemo(() => (need?.isNeed ? need : held_lx > 0 ? { value_lx: held_lx, isNeed: false } : undefined), [need, held_lx]);
  const zeroLabel = mapped?.isNeed === false ? 'as at the subject' : stepLabel(0);
  const elevation = map === 'picture' ? 'camera' : looking;
  const reach_m = reachIndex < 0 ? undefined : REACHES_m[reachIndex];

  const onProbe = (on: Probe['on']) => (spot: Flat | undefined, isKept: boolean) => {
    const isMapped = (map === 'picture') === (on === 'elevation');
    if (isKept && spot) setKept({ on, spot, isKept });
    setProbe(spot && isMapped ? { on, spot, isKept } : undefined);
  };
  const of = probe ?? kept;
  const isOnMap = of !== undefined && (map === 'picture') === (of.on === 'elevation');
  const held = surface !== undefined && isOnMap ? of : surface === undefined ? undefined : { on: map === 'picture' ? 'elevation' : 'plan', spot: { x: 0, y: 0 }, isKept: true } as const;
  const projection = held?.on === 'elevation' ? projectionOf('camera', view.azimuth_deg) : projectionOf('above', 0);
  const read_lx = held && surface ? allOn_lx(burning, surface, spread(projection, held.spot), normalOf(surface, facing)) : undefined;
  const keptOn = (on: Probe['on']) => (kept?.on === on ? kept.spot : (map === 'picture') === (on === 'elevation') ? { x: 0, y: 0 } : undefined);
  const isPartial = light.lamps.some(({ isOff, source }) => !isOff && !source);
  const common = { reach_m, snap, reference: mapped, zeroLabel, lamps, flags };
  return (
    <div className="light-drawings" ref={ref}>
      <DrawingTools
        map={map}
        onMap={setMap}
        snap={snap}
        onSnap={setSnap}
        reachIndex={reachIndex}
        onReach={setReachIndex}
      />
      <Panel title="From above" aside={shot ? `to scale; camera of ${shot.plan.title}` : 'to scale'} className="light-plan">
        <SetDrawing
          {...common}
          looking="above"
          label="The set from above: lamps and flags can be moved and aimed"
          heightOf={planHeight}
          surface={surface === 'picture' ? undefined : surface}
          probe={surface === 'picture' ? undefined : keptOn('plan')}
          onProbe={onProbe('plan')}
          onDrawn={onPlanMap}
        />
      </Panel>
      {surface !== undefined && (
        <div className="light-map-words">
          {drawn && mapped && width_px > 0 && <Legend drawn={drawn} reference_lx={mapped.value_lx} zeroLabel={zeroLabel} width_px={width_px} />}
          {held && read_lx !== undefined && (
            <p className="light-read no-print">
              <span>{held.spot.x === 0 && held.spot.y === 0 ? 'At the subject' : spotSaid(projection, held.spot, system)}</span>
              <b>{readingSaid(read_lx, mapped)}</b>
            </p>
          )}
          <p className="light-map-says">
            {drawn && mapped ? sayMap({ drawn, reference: mapped, system, facingSaid }) : `${saySurface(surface, facingSaid)}: ${burning.length === 0 ? 'no lamp burns that can be worked out' : 'no lamp lights the subject there'}.`}
            {isPartial && ' Lamps that lack figures, or of which only a share was read, are left out.'}
          </p>
        </div>
      )}
      <Panel
        title={elevation === 'camera' ? 'From the camera’s side' : 'From the side'}
        aside={
          <span className="light-sides no-print" role="group" aria-label="Look from">
            {(['camera', 'side'] as const).map((each) => (
              <button key={each} type="button" className="light-word" aria-pressed={elevation === each} disabled={map === 'picture' && each === 'side'} onClick={() => setLooking(each)}>
                {each === 'camera' ? 'camera' : 'side'}
              </button>
            ))}
          </span>
        }
        className="light-elevation"
      >
        <SetDrawing
          {...common}
          looking={elevation}
          label={`The set level, from the ${elevation === 'camera' ? 'camera’s side' : 'side, camera at the left'}: lamps and flags can be raised and lowered`}
          heightOf={elevationHeight}
          surface={surface === 'picture' ? surface : undefined}
          probe={surface === 'picture' ? keptOn('elevation') : undefined}
          onProbe={onProbe('elevation')}
          onDrawn={onPictureMap}
        />
      </Panel>
      <p className="light-key-help no-print" id="light-keys">
        Drag a lamp or a flag, or the ring it is aimed at or square to. Arrow keys move by 5 cm, with Shift by 1 cm; Page Up and Down raise and lower; [ and ] walk it round the subject by 15°. While dragging, Shift keeps to 5 cm and Alt to 15°. The dashed table is 1.2 × 0.8 m, for scale.
      </p>
    </div>
  );
} // prettier-ignore
