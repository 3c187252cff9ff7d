import { useId, useState, type FormEvent } from 'react';
import type { ShootEntry } from '../../../api/replies.ts';
import type { Fault } from '../../../base/fault.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { againTitle } from './sections.ts';

export interface DuplicateSheetProps {
  readonly shoot: ShootEntry | undefined;
  readonly isBusy: boolean;
  readonly fault: Fault | undefined;
  readonly onDuplicate: (shoot: ShootEntry, title: string) => void;
  readonly onClose: () => void;
}

function Body({ shoot, isBusy, fault, onDuplicate }: DuplicateSheetProps & { readonly shoot: ShootEntry }) {
  const id = useId();
  const isTemplate = shoot.standing === 'template';
  const [title, setTitle] = useState(isTemplate ? '' : againTitle(shoot.title));
  const send = (event: FormEvent) => {
    event.preventDefault();
    if (title.trim() !== '') onDuplicate(shoot, title.trim());
  };
  return (
    <form className="shoots-form" onSubmit={send}>
      <p>
        All of “{shoot.title}” as it stands, its pictures and other files with it, as a shoot of its own with a history
        of its own.
      </p>
      <label htmlFor={id}>Title of the new shoot</label>
      <input
        id={id}
        className="shoots-input"
        value={title}
        maxLength={200}
        required
        autoComplete="off"
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setTitle(event.currentTarget.value)}
      />
      {fault && (
        <p className="shoots-fault" role="alert">
          {fault.what}. {fault.mend}
        </p>
      )}
      <Button type="submit" look="main" disabled={isBusy || title.trim() === ''}>
        {isTemplate ? 'Begin' : 'Duplicate'}
      </Button>
    </form>
  );
}

/** Asks what a duplicate is to be called, then makes it. */
export function DuplicateSheet(props: DuplicateSheetProps) {
  const { shoot, onClose } = props;
  return (
    <Sheet isOpen={shoot !== undefined} title={shoot?.standing === 'template' ? 'Begin from a template' : 'Duplicate'} onClose={onClose}>
      {shoot && <Body key={shoot.id} {...props} shoot={shoot} />}
    </Sheet>
  );
} // prettier-ignore
