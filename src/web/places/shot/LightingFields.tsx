import { SHOT_FIELDS } from '../../../document/schema.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { hasLamps } from '../../../plan/lighting.ts';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { stepWritten } from '../../parts/stepping.ts';
import { AskChoice } from './AskChoice.tsx';
import { checkTyped, completeUnit, findWritten, writingPatch } from './shotEdits.ts';
import { fieldId, useShot } from './shotContext.ts';

const SEEN = Object.keys(SHOT_FIELDS.seen.of.words).map((value) => ({ value, label: value.replaceAll('-', ' ') }));

/** The reading of a set-up, which belongs to every shot that it lights. */
function Reading({ setup, name }: { readonly setup: string; readonly name: 'illuminance' | 'luminance' }) {
  const { open, edits, problemAt } = useShot();
  const pointer = `/lighting/${setup}/${name}`;
  const value = writtenValueAt(open.written, pointer);
  const text = typeof value === 'string' || typeof value === 'number' ? String(value) : '';
  const problem = problemAt(pointer);
  const shots = Object.values(open.shoot.shots).filter(({ lighting }) => lighting === setup).length;
  const isMetered = open.shoot.lighting[setup]?.reading === 'metered';
  const standing = text === '' ? [] : [isMetered ? 'metered' : 'intended, not metered'];
  const note = [...standing, ...(shots > 1 ? [`lights ${shots} shots`] : [])].join('; ');
  const patchOf = (typed: string) => (written: typeof open.written) =>
    writingPatch(written, pointer, completeUnit(pointer, typed, text));
  return (
    <QuantityField
      key={pointer}
      id={fieldId(pointer)}
      label={name === 'illuminance' ? 'Reading' : 'Brightness behind'}
      text={text}
      placeholder={hasLamps(open.shoot.lighting[setup]) ? 'from its lamps' : 'not read yet'}
      note={note}
      {...(problem === undefined ? {} : { problem })}
      check={(typed) => checkTyped(pointer, typed, text)}
      step={stepWritten}
      onDraft={(typed) => edits.draft(patchOf(typed))}
      onCommit={(typed) =>
        edits.commit(
          patchOf(typed),
          `Reading of ${setup}: ${completeUnit(pointer, typed, text).trim() || 'taken away'}`,
        )
      }
      onCancel={edits.cancel}
    />
  );
}

/** How the shot is lit, by which set-up, and what that set-up reads. */
export function LightingFields() {
  const { open, shotId } = useShot();
  const { lighting } = open.shoot;
  const setup = findWritten(open.written, shotId, 'lighting').text;
  const seen = findWritten(open.written, shotId, 'seen').text;
  const isByLuminance = seen === 'lit-through' || seen === 'by-reflection';
  return (
    <>
      <AskChoice name="seen" label="Seen" choices={SEEN} unsaid="lit on" />
      <AskChoice
        name="lighting"
        label="Set-up"
        choices={Object.entries(lighting).map(([value, { title }]) => ({ value, label: title ?? value }))}
        unsaid="none chosen"
      />
      {lighting[setup] !== undefined && <Reading setup={setup} name={isByLuminance ? 'luminance' : 'illuminance'} />}
    </>
  );
}
