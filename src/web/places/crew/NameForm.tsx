import { useId, useState, type FormEvent } from 'react';
import { LONGEST_NAME } from '../../../api/name.ts';
import { Button } from '../../parts/Button.tsx';
import { sayName, usePerson } from '../../state/person.ts';

export interface NameFormProps {
  /** What it is for, above the field. */
  readonly says?: string;
  readonly onDone?: () => void;
  /** Put off instead; without it there is nothing to put off. */
  readonly onLater?: () => void;
}

/** Where the person says what they are called: kept in this browser and sent with every edit. */
export function NameForm({ says, onDone, onLater }: NameFormProps) {
  const id = useId();
  const { name = '' } = usePerson();
  const [typed, setTyped] = useState<string>();
  const keep = (event: FormEvent) => {
    event.preventDefault();
    if (typed !== undefined) sayName(typed);
    setTyped(undefined);
    onDone?.();
  };
  return (
    <form className="name-form" onSubmit={keep}>
      {says !== undefined && <p id={`${id}-says`}>{says}</p>}
      <label htmlFor={id}>Your name on this shoot</label>
      <div className="name-line">
        <input
          id={id}
          className="name-input"
          value={typed ?? name}
          maxLength={LONGEST_NAME}
          autoComplete="nickname"
          placeholder="what the crew calls you"
          aria-describedby={says === undefined ? undefined : `${id}-says`}
          onChange={(event) => setTyped(event.currentTarget.value)}
        />
        <Button type="submit" look="main">
          Keep it
        </Button>
        {onLater && (
          <Button look="quiet" onClick={onLater}>
            Not now
          </Button>
        )}
      </div>
    </form>
  );
}
