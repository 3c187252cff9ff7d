import { showSigned } from '../../../base/quantity.ts';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { lengthWords } from '../shot/pictureWords.ts';
import { addLamp, isThing, lampPath, switchLamps } from './lightEdits.ts';
import { LampCard } from './LampCard.tsx';
import { stopsOver, useLight } from './lightContext.ts';
import { lightSaid } from './lightWords.ts';
import { ShareBar } from './ShareBar.tsx';

/** One lamp of the set-up in a line: what it is, how far, what it gives, lit or not; its fields beneath while it is chosen. */
function LampRow({ index }: { readonly index: number }) {
  const { light, reference, system, selected, onSelect, only, onOnly, edit, open, setupId } = useLight();
  const lamp = light.lamps[index]!;
  const { id, title, isOff, illuminance_lx, spreadFraction, distance_m, lacks, notices } = lamp;
  const isChosen = isThing(selected, 'lamp', id);
  const isDim = isOff || (only !== undefined && only !== id);
  const stops = stopsOver(illuminance_lx, reference);
  return (
    <li className={`light-row${isChosen ? ' is-chosen' : ''}${isDim ? ' is-dim' : ''}`} data-row={id}>
      <div className="light-row-head">
        <button type="button" className="light-row-name" aria-expanded={isChosen} onClick={() => onSelect(isChosen ? undefined : { kind: 'lamp', id })}>
          <span className="light-row-number">{index + 1}</span>
          <span className="light-row-title">{title}</span>
        </button>
        <span className="light-row-figures">
          {isOff ? (
            'off'
          ) : lacks.length > 0 ? (
            <span className="is-short">lacks {lacks.length === 1 ? 'a figure' : `${lacks.length} figures`}</span>
          ) : (
            <>
              <b>{illuminance_lx > 0 ? lightSaid(illuminance_lx, system) : 'nothing on this side'}</b>
              {stops !== undefined && reference?.isNeed && <span>{showSigned(stops)}</span>}
              {Number.isFinite(distance_m) && <span>at {lengthWords(distance_m, system)}</span>}
            </>
          )}
        </span>
        <span className="light-row-switches no-print">
          <button type="button" className="light-word" aria-pressed={only === id} disabled={isOff} aria-label={`Only lamp ${index + 1}`} onClick={() => onOnly(only === id ? undefined : id)}>
            only
          </button>
          <button
            type="button"
            className="light-word"
            aria-pressed={isOff}
            aria-label={`Lamp ${index + 1} off`}
            onClick={() => edit(switchLamps(open.written, setupId, [id], !isOff), `${title} ${isOff ? 'lit' : 'off'}`)}
          >
            off
          </button>
        </span>
      </div>
      {reference && !isOff && illuminance_lx > 0 && <ShareBar value={illuminance_lx} spreadFraction={spreadFraction} reference={reference.value_lx} isDim={isDim} />}
      {!isChosen && notices.map((says) => <p key={says} className="light-notice">{says}.</p>)}
      {isChosen && <LampCard lamp={lamp} />}
    </li>
  );
} // prettier-ignore

/** Adds a lamp of the kit, or goes to the kit where there is none. */
function AddLamp() {
  const { open, setupId, edit, onSelect, title } = useLight();
  const lamps = Object.entries(open.shoot.kit.lamps);
  const add = (kitLampId: string | undefined, name: string) => {
    const { id, patch } = addLamp(open.written, setupId, kitLampId);
    edit(patch, `${name} added to ${title}`);
    onSelect({ kind: 'lamp', id });
  };
  return (
    <div className="light-add no-print">
      {lamps.length === 0 ? (
        <Button onClick={() => add(undefined, 'Lamp')}>Add a lamp</Button>
      ) : (
        <label className="light-choose">
          <span>Add a lamp</span>
          <select value="" onChange={({ currentTarget: { value } }) => value !== '' && add(value, open.shoot.kit.lamps[value]?.title ?? value)}>
            <option value="">from the kit</option>
            {lamps.map(([id, lamp]) => (
              <option key={id} value={id}>
                {lamp.title ?? id}
                {lamp.availability === 'hire' ? ' (to hire)' : lamp.availability === 'unwanted' ? ' (not wanted)' : ''}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
} // prettier-ignore

/** Every lamp of the set-up, as the drawing has them. */
export function LampList() {
  const { light, reference, only, onOnly, edit, open, setupId, title } = useLight();
  const off = light.lamps.filter(({ isOff }) => isOff);
  return (
    <Panel title="Lamps" aside={`in stops about the ${reference?.isNeed ? 'need' : 'whole'}${light.meters.length > 0 ? ', by the meter' : ''}`} className="light-lamps">
      {light.lamps.length === 0 && (
        <p className="light-says">
          No lamp stands here yet. Add one from the kit, then drag it where it goes: what it gives is worked out as it moves.
        </p>
      )}
      <ol>
        {light.lamps.map(({ id }, i) => (
          <LampRow key={lampPath(setupId, id)} index={i} />
        ))}
      </ol>
      <AddLamp />
      {(only !== undefined || off.length > 1) && (
        <p className="light-says no-print">
          {only !== undefined && (
            <Button look="quiet" onClick={() => onOnly(undefined)}>
              Look at all lamps again
            </Button>
          )}
          {off.length > 1 && (
            <Button look="quiet" onClick={() => edit(switchLamps(open.written, setupId, off.map(({ id }) => id), false), `All lamps of ${title} lit`)}>
              Light all {off.length} that are off
            </Button>
          )}
        </p>
      )}
    </Panel>
  );
} // prettier-ignore
