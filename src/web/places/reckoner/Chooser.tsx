import { lowered } from './refusal.ts';

export interface ChooserProps {
  /** The words before it, which it goes on from. */
  readonly label: string;
  /** What is chosen, for whoever hears it alone. */
  readonly says: string;
  readonly value: string;
  readonly choices: readonly { readonly name: string; readonly title: string }[];
  readonly onChoose: (name: string) => void;
}

/** What a picture is drawn over, chosen within the sentence that says it. */
export function Chooser({ label, says, value, choices, onChoose }: ChooserProps) {
  if (choices.length < 2)
    return (
      <span className="picture-chooser">
        {label} <b>{choices[0] && lowered(choices[0].title)}</b>
      </span>
    );
  return (
    <label className="picture-chooser">
      {label}{' '}
      <select aria-label={says} value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
        {choices.map(({ name, title }) => (
          <option key={name} value={name}>
            {lowered(title)}
          </option>
        ))}
      </select>
    </label>
  );
}
