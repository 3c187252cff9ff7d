import { Button } from '../../parts/Button.tsx';
import { KitField } from '../kit/KitField.tsx';
import { duplicateSetup, removeSetup, setupPath } from './lightEdits.ts';
import { useLight } from './lightContext.ts';
import { placeSaid } from './lightWords.ts';
import { PlaceField } from './PlaceField.tsx';

export interface SetupHeadProps {
  readonly hrefOf: (setupId?: string) => string;
}

/** The set-up's title and what can be done with all of it. */
export function SetupHead({ hrefOf }: SetupHeadProps) {
  const { open, setupId, title, edit, onGo, setup, shots, system } = useLight();
  return (
    <header className="light-head">
      <h1>{title}</h1>
      {setup.note !== undefined && <p className="light-note">{setup.note}</p>}
      <details className="light-more no-print">
        <summary>Change this set-up</summary>
        <KitField path={`${setupPath(setupId)}/title`} label="Title" placeholder={setupId} />
        <KitField path={`${setupPath(setupId)}/note`} label="Note" />
        <PlaceField
          path={`${setupPath(setupId)}/faces`}
          label="Lit surface faces"
          placeholder="the camera"
          note={`A place it faces, such as that of a lamp behind${setup.faces ? `; now ${placeSaid(setup.faces, system)}` : ''}`}
        />
        <div className="light-card-tools">
          <Button
            onClick={() => {
              const made = duplicateSetup(open.written, setupId, title);
              edit(made.patch, `${title} duplicated`);
              onGo(hrefOf(made.id));
            }}
          >
            Duplicate
          </Button>
          <Button
            onClick={() => {
              edit(removeSetup(open.written, setupId), `${title} taken out`);
              onGo(hrefOf());
            }}
          >
            Take out
          </Button>
        </div>
        {shots.length > 0 && (
          <p className="light-says">
            Taken out, {shots.length === 1 ? 'one shot is' : `${shots.length} shots are`} left without light. It can be
            undone.
          </p>
        )}
      </details>
    </header>
  );
}
