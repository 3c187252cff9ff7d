import { clearingPatch } from './shotEdits.ts';
import { fieldId, useShot } from './shotContext.ts';

/** What is fitted to the lens, out of what the kit has: filters, tubes, glasses. */
export function FittedField() {
  const { open, shotId, edits } = useShot();
  const items = Object.entries(open.shoot.kit.attachments).filter(
    ([, { availability }]) => availability !== 'unwanted',
  );
  if (items.length === 0) return null;
  const pointer = `/shots/${shotId}/attachments`;
  const own = open.shoot.shots[shotId]?.attachments ?? [];
  const fitted = own.length > 0 ? own : open.shoot.defaults.attachments;
  const fit = (id: string, title: string, isOn: boolean) => {
    const next = isOn ? [...fitted, id] : fitted.filter((other) => other !== id);
    const summary = `${title} ${isOn ? 'fitted' : 'taken off'}`;
    if (next.length > 0) edits.commit(() => [{ op: 'add', path: pointer, value: next }], summary);
    else edits.commit((written) => clearingPatch(written, [pointer]), summary);
  };
  return (
    <fieldset className="ask-fitted" id={fieldId(pointer)} tabIndex={-1}>
      <legend>On the lens</legend>
      {items.map(([id, { title = id }]) => (
        <label key={id}>
          {title}
          <input
            type="checkbox"
            checked={fitted.includes(id)}
            onChange={(event) => fit(id, title, event.currentTarget.checked)}
          />
        </label>
      ))}
    </fieldset>
  );
}
