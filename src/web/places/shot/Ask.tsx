import { printRational } from '../../../base/rational.ts';
import { Panel } from '../../parts/Panel.tsx';
import { AskField } from './AskField.tsx';
import { ASK_GROUPS, type AskGroup, type AskLine } from './askFields.ts';
import { CameraFields } from './CameraFields.tsx';
import { EventFields } from './EventFields.tsx';
import { LightingFields } from './LightingFields.tsx';
import { isFilled } from './eventEdits.ts';
import { useEventNote } from './eventNote.tsx';
import { findWritten } from './shotEdits.ts';
import { useShot } from './shotContext.ts';
import { saidShown, showNamed } from './showValue.ts';
import { PlateFields } from './PlateFields.tsx';
import { SpeedFields } from './SpeedFields.tsx';

/** What the plan takes where nobody wrote anything. */
function useAssumed(): (key: string) => string | undefined {
  const { plan, shotId, system } = useShot();
  return (key) => {
    const found = plan.assumed.find(({ path, kind }) => path === `/shots/${shotId}/${key}` && kind !== undefined);
    return found && `${saidShown(showNamed({ ...found, system }))}, assumed`;
  };
}

function Lines({ lines }: { readonly lines: readonly AskLine[] }) {
  const assumed = useAssumed();
  const note = useEventNote();
  return lines.map(({ key, label }) => {
    const placeholder = assumed(key);
    const said = note(key);
    return (
      <AskField
        key={key}
        name={key}
        label={label}
        {...(placeholder === undefined ? {} : { placeholder })}
        {...(said === undefined ? {} : { note: said })}
      />
    );
  });
}

function Group({ id, title, lines }: AskGroup) {
  const { open, shotId } = useShot();
  const assumed = useAssumed();
  const isSaid = ({ key }: AskLine) =>
    findWritten(open.written, shotId, key).holder !== 'nobody' || (isFilled(key) && assumed(key) !== undefined);
  const shown = lines.filter((line) => line.isCore === true || isSaid(line));
  const more = lines.filter((line) => !shown.includes(line));
  return (
    <Panel title={title} className="ask-group">
      {id === 'light' && <LightingFields />}
      {id === 'camera' ? <CameraFields /> : <Lines lines={id === 'time' ? shown.slice(0, 1) : shown} />}
      {id === 'time' && (
        <>
          <SpeedFields />
          <EventFields />
          <Lines lines={shown.slice(1)} />
        </>
      )}
      {more.length > 0 && (
        <details className="ask-more">
          <summary>{more.length} more</summary>
          <Lines lines={more} />
        </details>
      )}
      {id === 'takes' && <PlateFields />}
    </Panel>
  );
}

/** What the shot is cut into: the shapes every crop is judged against. */
function CutInto() {
  const { open, shotId } = useShot();
  const own = open.shoot.shots[shotId]?.deliverables ?? [];
  const ids = own.length > 0 ? own : Object.keys(open.shoot.deliverables);
  if (ids.length === 0) return null;
  return (
    <Panel title="Cut into" className="ask-group">
      <ul className="ask-cuts">
        {ids.map((id) => {
          const { title, pixels, rate } = open.shoot.deliverables[id] ?? {};
          const size = pixels === undefined ? 'no size yet' : `${pixels.widthCount} × ${pixels.heightCount}`;
          return (
            <li key={id}>
              <span>{title ?? id}</span>
              <span>
                {size}
                {rate && `, ${printRational(rate)} fps`}
              </span>
            </li>
          );
        })}
      </ul>
    </Panel>
  );
}

/** Everything the shot asks for, as it is written. */
export function Ask() {
  return (
    <div className="ask">
      {ASK_GROUPS.map((group) => (
        <Group key={group.id} {...group} />
      ))}
      <CutInto />
    </div>
  );
}
