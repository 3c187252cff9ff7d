import { writtenValueAt } from '../../../document/patch.ts';
import { Panel } from '../../parts/Panel.tsx';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { stepWritten } from '../../parts/stepping.ts';
import { problemAt } from '../kit/problemAt.ts';
import { checkTyped, completeUnit } from '../shot/shotEdits.ts';
import { fieldId } from '../shot/shotContext.ts';
import { readingPatch, setupPath } from './lightEdits.ts';
import { useLight } from './lightContext.ts';
import { correctedSaid, lightSaid, luminanceSaid, meterSaid } from './lightWords.ts';

function ReadingField({ name, label }: { readonly name: 'illuminance' | 'luminance'; readonly label: string }) {
  const { open, edits, setupId, title } = useLight();
  const path = `${setupPath(setupId)}/${name}`;
  const value = writtenValueAt(open.written, path);
  const text = typeof value === 'string' || typeof value === 'number' ? String(value) : '';
  const problem = problemAt(open, path);
  const patchOf = (typed: string) => (written: typeof open.written) =>
    readingPatch(written, setupId, name, completeUnit(path, typed, text));
  return (
    <QuantityField
      key={path}
      id={fieldId(path)}
      label={label}
      text={text}
      placeholder="not read"
      {...(problem === undefined ? {} : { problem })}
      check={(typed) => checkTyped(path, typed, text)}
      step={stepWritten}
      onDraft={(typed) => edits.draft(patchOf(typed))}
      onCommit={(typed) =>
        edits.commit(patchOf(typed), `${label} of ${title}: ${completeUnit(path, typed, text).trim() || 'taken away'}`)
      }
      onCancel={edits.cancel}
    />
  );
}

/** What the meter read on the set, and what the lamps should have given it. */
export function Reading() {
  const { setup, light, system, setupId, open, edits, title } = useLight();
  const { illuminance_lx, luminance_cd_per_m2, reading } = setup;
  const meterOf = (kind: 'illuminance' | 'luminance') => light.meters.find((meter) => meter.kind === kind);
  const worked_lx = meterOf('illuminance')?.worked ?? light.illuminance_lx;
  const behind = meterOf('luminance')?.worked ?? light.luminance?.luminance_cd_per_m2;
  const isRead = illuminance_lx !== undefined || luminance_cd_per_m2 !== undefined;
  const hasLamps = light.lamps.length > 0;
  const mark = `${setupPath(setupId)}/reading`;
  return (
    <Panel title="On the meter" aside={isRead ? 'the plan goes by it' : 'the plan goes by the lamps'} className="light-reading">
      <ReadingField name="illuminance" label="Reading at the subject" />
      {hasLamps && worked_lx > 0 && (
        <p className="light-worked">
          worked out from the lamps: <b>{lightSaid(worked_lx, system)}</b>
          {illuminance_lx !== undefined && <strong>{meterSaid(illuminance_lx, worked_lx)}</strong>}
        </p>
      )}
      <ReadingField name="luminance" label="Brightness behind" />
      {behind !== undefined && (
        <p className="light-worked">
          worked out from the face: <b>{luminanceSaid(behind, system)}</b>
          {luminance_cd_per_m2 !== undefined && <strong>{meterSaid(luminance_cd_per_m2, behind)}</strong>}
        </p>
      )}
      {light.meters.length > 0 && <p className="light-corrected">{correctedSaid(light.meters)}</p>}
      {isRead && (
        <label className="light-tick">
          <input
            type="checkbox"
            checked={reading === 'metered'}
            onChange={({ currentTarget: { checked } }) =>
              edits.commit(
                () => [{ op: 'add', path: mark, value: checked ? 'metered' : 'stated' }],
                `${title}: ${checked ? 'read on the set' : 'intended, not yet read'}`,
              )
            }
          />
          read on the set{reading === 'metered' ? '' : '; now only intended'}
        </label>
      )}
      {open.shoot.lighting[setupId]?.unread?.includes('reading') && <p className="field-problem">What is written of where it comes from cannot be read.</p>}
    </Panel>
  );
} // prettier-ignore
