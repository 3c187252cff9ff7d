import { lowered } from './refusal.ts';

export interface ChooserProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly { readonly name: string; readonly title: string }[];
  readonly onChoose: (name: string) => void;
}

/** What a picture is drawn over, chosen within the sentence that says it. */
export function Chooser({ label, value, choices, onChoose }: ChooserProps) {
  if (choices.length < 2)
    return (
      <span className="picture-chooser">
        {label} <b>{choices[0] && lowered(choices[0].title)}</b>
      </span>
    );
  return (
    <label className="picture-chooser">
      {label}{' '}
      <select value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
        {choices.map(({ name, title }) => (
          <option key={name} value={name}>
            {lowered(title)}
          </option>
        ))}
      </select>
    </label>
  );
}
