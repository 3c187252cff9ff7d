import type { Position } from '../../../document/shape.ts';
import type { LampShare } from '../../../plan/lighting.ts';
import { parseQuantity, showQuantity } from '../../../base/quantity.ts';
import { Button } from '../../parts/Button.tsx';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { stepWritten } from '../../parts/stepping.ts';
import { KitField } from '../kit/KitField.tsx';
import { checkTyped, completeUnit } from '../shot/shotEdits.ts';
import { saidShown } from '../shot/showValue.ts';
import { aimTurned, atDistance, movedBy, SNAP_deg, SUBJECT, turnedBy } from './geometry.ts';
import { duplicateThing, lampPath, placeThing, type Moved, type Thing } from './lightEdits.ts';
import { useLight } from './lightContext.ts';
import { LackList } from './LackList.tsx';
import { LampMore } from './LampMore.tsx';
import { PlaceField } from './PlaceField.tsx';
import { bearingSaid, distanceSaid, placeSaid } from './lightWords.ts';

/** From the subject along the line it stands on: what a tape is held to. */
function DistanceField({ lampId, name }: { readonly lampId: string; readonly name: string }) {
  const { setup, setupId, edits, system } = useLight();
  const at = setup.lamps[lampId]?.at;
  if (!at) return null;
  const text = distanceSaid(at, system);
  const placeOf = (typed: string) => {
    const read = parseQuantity('length', completeUnit('/kit/lamps/-/distance', typed, text));
    return read.ok ? atDistance(at, read.value) : undefined;
  };
  return (
    <QuantityField
      id={`light-distance-${lampId}`}
      label="From the subject"
      text={text}
      check={(typed) => {
        const checked = checkTyped('/kit/lamps/-/distance', typed, text);
        if (!checked.ok) return checked;
        return placeOf(typed) ? checked : { ok: false, why: 'A lamp stands some way from the subject, such as 1.2 m' };
      }}
      step={stepWritten}
      onDraft={() => undefined}
      onCommit={(typed) => {
        const place = placeOf(typed);
        if (place) edits.commit(() => placeThing(setupId, { kind: 'lamp', id: lampId }, 'at', place), `${name} moved to ${typed.trim()} from the subject`);
      }}
      onCancel={() => undefined}
    />
  );
} // prettier-ignore

export interface LampCardProps {
  readonly lamp: LampShare;
}

/** Everything about one placed lamp: where it stands, how it is set, what it lacks. */
export function LampCard({ lamp }: LampCardProps) {
  const { open, setup, setupId, view, system, edits, edit, onSelect, onOnly, only } = useLight();
  const { id, title, lacks, notices } = lamp;
  const path = lampPath(setupId, id);
  const placed = setup.lamps[id];
  const at = placed?.at;
  const aim = placed?.aim;
  const kitLamp = placed?.lamp === undefined ? undefined : open.shoot.kit.lamps[placed.lamp];
  const kitColour = kitLamp?.colourTemperature_K === undefined ? undefined : saidShown(showQuantity('colourTemperature', kitLamp.colourTemperature_K, { system }));
  const hasFlood = placed?.floodFraction !== undefined || kitLamp?.flood.beam_deg !== undefined || kitLamp?.flood.illuminance_lx !== undefined;
  const hasModifiers = Object.keys(open.shoot.kit.modifiers).length > 0 || (placed?.modifiers.length ?? 0) > 0;
  const thing: Thing = { kind: 'lamp', id };
  const put = (moved: Moved, place: Position, says: string) => edits.commit(() => placeThing(setupId, thing, moved, place), says);
  return (
    <div className="light-card">
      <LackList lacks={lacks} />
      {notices.map((says) => <p key={says} className="light-notice">{says}.</p>)}
      <div className="light-quiet">
        <KitField path={`${path}/lamp`} label="Lamp" />
      </div>
      <PlaceField path={`${path}/at`} label="Place" placeholder="right, away, up" note={at && `${placeSaid(at, system)}; ${bearingSaid(at, view.azimuth_deg)}`} />
      <DistanceField lampId={id} name={title} />
      <PlaceField path={`${path}/aim`} label="Aimed at" placeholder="the subject" note={aim && placeSaid(aim, system)} />
      {at && (
        <>
          <div className="light-turns no-print" role="group" aria-label="Round the subject">
            <span>Round the subject</span>
            <Button look="quiet" aria-label="Walk it 15° to the left" onClick={() => put('at', turnedBy(at, -SNAP_deg), `${title} walked 15° to the left`)}>−15°</Button>
            <Button look="quiet" aria-label="Walk it 15° to the right" onClick={() => put('at', turnedBy(at, SNAP_deg), `${title} walked 15° to the right`)}>+15°</Button>
          </div>
          <div className="light-turns no-print" role="group" aria-label="Pan">
            <span>Pan</span>
            <Button look="quiet" aria-label="Pan 5° to the left" onClick={() => put('aim', aimTurned({ at, aim: aim ?? SUBJECT, by_deg: 5 }), `${title} panned 5° to the left`)}>−5°</Button>
            <Button look="quiet" aria-label="Pan 5° to the right" onClick={() => put('aim', aimTurned({ at, aim: aim ?? SUBJECT, by_deg: -5 }), `${title} panned 5° to the right`)}>+5°</Button>
          </div>
        </>
      )}
      <div className="light-quiet">
        <KitField path={`${path}/level`} label="Level" placeholder="full" />
        {hasFlood && <KitField path={`${path}/flood`} label="Flood" placeholder="spot" />}
        {hasModifiers && <KitField path={`${path}/modifiers`} label="In front of it" />}
        <KitField path={`${path}/title`} label="Called" placeholder={kitLamp?.title ?? id} />
      </div>
      <LampMore path={path} placed={placed} isFace={lamp.source?.kind === 'face'} kitColour={kitColour} />
      <div className="light-card-tools no-print">
        <Button
          look="quiet"
          onClick={() => {
            const made = duplicateThing(open.written, setupId, thing, at ? turnedBy(at, SNAP_deg) : movedBy(SUBJECT, { away_m: -1 }));
            edit(made.patch, `${title} put up once more`);
            onSelect({ kind: 'lamp', id: made.id });
          }}
        >
          Another like it
        </Button>
        <Button
          look="quiet"
          onClick={() => {
            onSelect(undefined);
            if (only === id) onOnly(undefined);
            edit([{ op: 'remove', path }], `${title} taken out`);
          }}
        >
          Take out
        </Button>
      </div>
    </div>
  );
} // prettier-ignore
