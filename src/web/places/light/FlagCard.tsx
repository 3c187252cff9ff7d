import type { PlacedFlag } from '../../../plan/lighting.ts';
import { Button } from '../../parts/Button.tsx';
import { KitField } from '../kit/KitField.tsx';
import { movedBy, SNAP_deg, SUBJECT, turnedBy } from './geometry.ts';
import { duplicateThing, flagPath, placeThing, type Thing } from './lightEdits.ts';
import { useLight } from './lightContext.ts';
import { bearingSaid, placeSaid } from './lightWords.ts';
import { LackList } from './LackList.tsx';
import { PlaceField } from './PlaceField.tsx';

export interface FlagCardProps {
  readonly flag: PlacedFlag;
  /** "Flag A". */
  readonly mark: string;
}

/** Everything about one flag: where it stands, what it is square to, how large it is, what it lacks. */
export function FlagCard({ flag: { id, title, lacks }, mark }: FlagCardProps) {
  const { open, setup, setupId, view, system, edits, edit, onSelect } = useLight();
  const path = flagPath(setupId, id);
  const thing: Thing = { kind: 'flag', id };
  const { at, faces } = setup.flags[id] ?? {};
  const name = title === id ? mark : title;
  const walk = (by_deg: number, says: string) => {
    if (at) edits.commit(() => placeThing(setupId, thing, 'at', turnedBy(at, by_deg)), says);
  };
  return (
    <div className="light-card">
      <LackList lacks={lacks} />
      <PlaceField path={`${path}/at`} label="Place" placeholder="right, away, up" note={at && `${placeSaid(at, system)}; ${bearingSaid(at, view.azimuth_deg)}`} />
      <PlaceField path={`${path}/faces`} label="Square to" placeholder="the subject" note={faces && placeSaid(faces, system)} />
      {at && (
        <div className="light-turns no-print" role="group" aria-label="Round the subject">
          <span>Round the subject</span>
          <Button look="quiet" aria-label="Walk it 15° to the left" onClick={() => walk(-SNAP_deg, `${name} walked 15° to the left`)}>−15°</Button>
          <Button look="quiet" aria-label="Walk it 15° to the right" onClick={() => walk(SNAP_deg, `${name} walked 15° to the right`)}>+15°</Button>
        </div>
      )}
      <div className="light-quiet light-pair">
        <KitField path={`${path}/width`} label="Width" placeholder="not said" />
        <KitField path={`${path}/height`} label="Height" placeholder="not said" />
      </div>
      <div className="light-quiet">
        <KitField path={`${path}/title`} label="Called" placeholder={mark} />
      </div>
      <div className="light-card-tools no-print">
        <Button
          look="quiet"
          onClick={() => {
            const made = duplicateThing(open.written, setupId, thing, at ? turnedBy(at, SNAP_deg) : movedBy(SUBJECT, { away_m: -1 }));
            edit(made.patch, `${name} stood there once more`);
            onSelect({ kind: 'flag', id: made.id });
          }}
        >
          Another like it
        </Button>
        <Button
          look="quiet"
          onClick={() => {
            onSelect(undefined);
            edit([{ op: 'remove', path }], `${name} taken out`);
          }}
        >
          Take out
        </Button>
      </div>
    </div>
  );
} // prettier-ignore
