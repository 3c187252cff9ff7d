import type { MissingFile } from '../../../api/replies.ts';
import { Button } from '../../parts/Button.tsx';

export interface BroughtInProps {
  readonly title: string;
  readonly missing: readonly MissingFile[];
  readonly onOpen: () => void;
  readonly onDismiss: () => void;
}

/** A shoot came in, but not all the files that it names. */
export function BroughtIn({ title, missing, onOpen, onDismiss }: BroughtInProps) {
  return (
    <section className="shoots-refused is-note" role="status">
      <h2>Brought in: {title}</h2>
      <p>
        {missing.length === 1 ? 'One file that it names is not in the zip' : `${missing.length} files that it names are not in the zip`}.
        What needs {missing.length === 1 ? 'it' : 'them'} is not known until {missing.length === 1 ? 'it is' : 'they are'} given again.
      </p>
      <ul className="shoots-where">
        {missing.map(({ id, name }) => (
          <li key={id}>{name === undefined ? id : `${name} (${id})`}</li>
        ))}
      </ul>
      <div className="shoots-acts">
        <Button look="main" onClick={onOpen}>
          Open it
        </Button>
        <Button look="quiet" onClick={onDismiss}>
          Put this away
        </Button>
      </div>
    </section>
  );
} // prettier-ignore
