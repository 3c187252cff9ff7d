import { useEffect, useId, useMemo, useRef, useState, type PointerEvent } from 'react';
import { useWidth } from '../../parts/useWidth.ts';
import { SUBJECT } from './geometry.ts';
import type { FlagDrawn, LampDrawn } from './drawn.ts';
import { FlagMark } from './FlagMark.tsx';
import { AimMark, LampBeam, LampMark } from './LampMark.tsx';
import { normalOf, type Sheet, type Surface } from './lightMap.ts';
import { useLight, type Reference } from './lightContext.ts';
import { MapLayer } from './MapLayer.tsx';
import { ThingGrip } from './ThingGrip.tsx';
import { Camera, Rulers, Subject, TableHint } from './Marks.tsx';
import { cornersFlat, flatten, projectionOf, type Flat, type Looking } from './projection.ts';
import { towardsCamera, vecOf } from '../../../plan/lighting.ts';
import { pagePoint, useGrips, type Snap } from './useGrips.ts';
import { useLightMap, type DrawnMap } from './useLightMap.ts';
import { fitAbout, fitAll, fromPage, px, toPage, type Viewport } from './viewport.ts';

export interface SetDrawingProps {
  readonly looking: Looking;
  readonly label: string;
  /** How high the drawing is for a width. */
  readonly heightOf: (width_px: number) => number;
  /** How far it reaches about the subject; undefined for the whole set. */
  readonly reach_m: number | undefined;
  readonly snap: Snap;
  readonly surface: Surface | undefined;
  /** What the map is held against. */
  readonly reference: Reference | undefined;
  readonly zeroLabel: string;
  readonly lamps: readonly LampDrawn[];
  readonly flags: readonly FlagDrawn[];
  /** Where the meter is held, on the plane of the drawing. */
  readonly probe: Flat | undefined;
  readonly onProbe: (spot: Flat | undefined, isKept: boolean) => void;
  readonly onDrawn: (drawn: DrawnMap | undefined) => void;
}

const EDGE_px = 52;
/** Grid points of a map lie this far apart at rest, and while something moves. */
const FINE_px = 7;
const COARSE_px = 18;

const ARROWS: Readonly<Record<string, Flat>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

/** The set drawn to scale from one side, with lamps, flags and aims to move, over a map of the light where one is asked for. */
export function SetDrawing(props: SetDrawingProps) {
  const { looking, label, heightOf, reach_m, snap, surface, reference, zeroLabel, lamps, flags, probe, onProbe, onDrawn } = props;
  const { view, facing, shot, system, moves, burning } = useLight();
  const id = useId();
  const [ref, width_px] = useWidth<HTMLDivElement>();
  const height_px = Math.round(heightOf(width_px));
  const [cursor, setCursor] = useState('default');
  const azimuth_deg = looking === 'above' ? 0 : view.azimuth_deg;
  const projection = useMemo(() => projectionOf(looking, azimuth_deg), [looking, azimuth_deg]);
  const settings = shot?.plan.settings;
  const picture = shot?.plan.picture;
  const camera_m = settings && settings.workingDistance_m > 0 ? settings.workingDistance_m : undefined;

  const isMoving = moves.now !== undefined;
  const frozen = useRef<Viewport>(undefined);
  const fresh = useMemo(() => {
    const room = { width_px, height_px, edge_px: EDGE_px };
    if (reach_m !== undefined) return fitAbout(reach_m, room);
    const facing = towardsCamera(view);
    const camera = camera_m === undefined ? [] : [flatten(projection, [facing[0] * camera_m, facing[1] * camera_m, facing[2] * camera_m])];
    const places = lamps.flatMap(({ at, aim, source }) => [...[at, aim ?? SUBJECT].map((place) => flatten(projection, vecOf(place))), ...(source?.kind === 'face' ? cornersFlat(projection, source.corners) : [])]);
    const plates = flags.flatMap(({ at, flag }) => [flatten(projection, vecOf(at)), ...(flag ? cornersFlat(projection, flag.corners) : [])]);
    return fitAll([...camera, ...places, ...plates], room);
  }, [width_px, height_px, reach_m, view, camera_m, projection, lamps, flags]);
  // Under a moving hand the ground stays where it is.
  const hold = frozen.current;
  const isHeld = isMoving && hold?.width_px === width_px && hold.height_px === height_px;
  const candidate = isHeld ? hold : fresh;
  const { perMetre_px, middle } = candidate;
  const viewport = useMemo((): Viewport => ({ width_px, height_px, perMetre_px, middle: { x: middle.x, y: middle.y } }), [width_px, height_px, perMetre_px, middle.x, middle.y]);
  useEffect(() => {
    frozen.current = viewport;
  }, [viewport]);

  const sheet = useMemo((): Sheet | undefined => {
    if (surface === undefined || width_px === 0) return undefined;
    const grain = isMoving ? COARSE_px : FINE_px;
    return {
      surface,
      projection,
      normal: normalOf(surface, facing),
      from: fromPage(viewport, { x: 0, y: height_px }),
      to: fromPage(viewport, { x: width_px, y: 0 }),
      columns: Math.max(8, Math.round(width_px / grain)),
      rows: Math.max(8, Math.round(height_px / grain)),
    };
  }, [surface, projection, facing, viewport, width_px, height_px, isMoving]);
  const drawn = useLightMap(burning, sheet);
  useEffect(() => onDrawn(drawn), [drawn, onDrawn]);

  const things = useMemo(() => [...lamps, ...flags], [lamps, flags]);
  const grips = useGrips({ things, viewport, projection, snap, onGround: (page) => onProbe(fromPage(viewport, page), true) });
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    if (grips.onPointerMove(event)) return;
    const page = pagePoint(event, event.currentTarget, viewport);
    setCursor(grips.gripAt(page, 15) ? 'grab' : surface === undefined ? 'default' : 'crosshair');
    onProbe(fromPage(viewport, page), false);
  };
  const chosen = things.find(({ isSelected }) => isSelected);
  const held = { onKey: grips.onKey, onBlur: grips.onBlurGrip };
  const marks = { viewport, projection };
  const avoid = useMemo(() => [...things.map(({ at }) => vecOf(at)), [0, 0, 0] as const].map((point) => toPage(viewport, flatten(projection, point))), [things, viewport, projection]);
  const meter = probe && toPage(viewport, probe);
  return (
    <div className="light-drawing" ref={ref}>
      {width_px > 0 && (
        <svg
          width={width_px}
          height={height_px}
          viewBox={`0 0 ${width_px} ${height_px}`}
          role="group"
          aria-label={label}
          style={{ cursor: isMoving ? 'grabbing' : cursor }}
          onPointerDown={grips.onPointerDown}
          onPointerMove={onPointerMove}
          onPointerUp={grips.onPointerUp}
          onPointerCancel={grips.onPointerCancel}
          onPointerLeave={() => onProbe(undefined, false)}
        >
          <clipPath id={`${id}clip`}>
            <rect width={width_px} height={height_px} rx="6" />
          </clipPath>
          <g clipPath={`url(#${id}clip)`}>
            <rect className="light-ground" width={width_px} height={height_px} />
            {drawn && reference && <MapLayer drawn={drawn} viewport={viewport} reference_lx={reference.value_lx} zeroLabel={zeroLabel} hasLabels={!isMoving} avoid={avoid} />}
            <TableHint {...marks} />
            {lamps.map((lamp) => <LampBeam key={lamp.id} lamp={lamp} {...marks} />)}
            {camera_m !== undefined && picture && <Camera {...marks} view={view} distance_m={camera_m} fieldWidth_m={picture.fieldWidth_m} />}
            <Subject
              {...marks}
              azimuth_deg={view.azimuth_deg}
              reach={{
                ...(picture?.reachWidth_m === undefined ? {} : { width_m: picture.reachWidth_m }),
                ...(picture?.reachHeight_m === undefined ? {} : { height_m: picture.reachHeight_m }),
                ...(picture?.reachTowardsLens_m === undefined ? {} : { towardsLens_m: picture.reachTowardsLens_m }),
              }}
            />
            <Rulers viewport={viewport} system={system} />
            {surface !== undefined && meter && (
              <g
                className="light-meter"
                tabIndex={0}
                role="button"
                aria-label="Meter: arrow keys move it over the map"
                onKeyDown={(event) => {
                  const arrow = ARROWS[event.key];
                  if (!arrow) return;
                  event.preventDefault();
                  const step_m = event.shiftKey ? 0.01 : 0.05;
                  onProbe({ x: probe.x + arrow.x * step_m, y: probe.y + arrow.y * step_m }, true);
                }}
              >
                <circle cx={px(meter.x)} cy={px(meter.y)} r="6" />
                <path d={`M${px(meter.x) - 11} ${px(meter.y)}h7m8 0h7M${px(meter.x)} ${px(meter.y) - 11}v7m0 8v7`} />
              </g>
            )}
            {flags.map((flag) => (
              <ThingGrip key={flag.id} thing={flag} moved="at" {...held}>
                <FlagMark flag={flag} {...marks} />
              </ThingGrip>
            ))}
            {lamps.map((lamp) => (
              <ThingGrip key={lamp.id} thing={lamp} moved="at" {...held}>
                <LampMark lamp={lamp} {...marks} />
              </ThingGrip>
            ))}
            {/* Over the others; a mark that changed its place among them would lose the keyboard. */}
            {chosen && <g aria-hidden="true">{chosen.kind === 'lamp' ? <LampMark lamp={chosen} {...marks} /> : <FlagMark flag={chosen} {...marks} />}</g>}
            {chosen && (
              <ThingGrip thing={chosen} moved="aim" {...held}>
                <AimMark thing={chosen} {...marks} />
              </ThingGrip>
            )}
          </g>
        </svg>
      )}
    </div>
  );
} // prettier-ignore
