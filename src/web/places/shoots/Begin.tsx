import { useId, useState, type FormEvent } from 'react';
import type { ShootEntry } from '../../../api/replies.ts';
import { Button } from '../../parts/Button.tsx';

export interface BeginProps {
  readonly shoots: readonly ShootEntry[];
  readonly isBusy: boolean;
  /** Without an id the shoot begins blank. */
  readonly onBegin: (title: string, kitOf: string | undefined) => void;
}

/** Begins a shoot, blank or with the kit of another. */
export function Begin({ shoots, isBusy, onBegin }: BeginProps) {
  const id = useId();
  const [title, setTitle] = useState('');
  const [kitOf, setKitOf] = useState('');
  const begin = (event: FormEvent) => {
    event.preventDefault();
    onBegin(title.trim() === '' ? 'New shoot' : title.trim(), kitOf === '' ? undefined : kitOf);
  };
  return (
    <form className="shoots-form" onSubmit={begin}>
      <h2>Begin a shoot</h2>
      <label htmlFor={`${id}-title`}>Title</label>
      <input
        id={`${id}-title`}
        className="shoots-input"
        value={title}
        maxLength={200}
        autoComplete="off"
        placeholder="New shoot"
        onChange={(event) => setTitle(event.currentTarget.value)}
      />
      {shoots.length > 0 && (
        <>
          <label htmlFor={`${id}-kit`}>Kit, light and defaults</label>
          <select
            id={`${id}-kit`}
            className="shoots-input"
            value={kitOf}
            onChange={(event) => setKitOf(event.currentTarget.value)}
          >
            <option value="">none: begin blank</option>
            {shoots.map((shoot) => (
              <option key={shoot.id} value={shoot.id}>
                those of {shoot.title}
              </option>
            ))}
          </select>
        </>
      )}
      <Button type="submit" look="main" disabled={isBusy}>
        Begin
      </Button>
    </form>
  );
}
