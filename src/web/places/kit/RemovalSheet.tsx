import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { sayUses } from './kitEdits.ts';
import type { Removal } from './kitContext.ts';

export interface RemovalSheetProps {
  readonly removal: Removal | undefined;
  readonly onRemove: (removal: Removal) => void;
  readonly onClose: () => void;
}

/** Asked before something is taken out that a shot refers to. */
export function RemovalSheet({ removal, onRemove, onClose }: RemovalSheetProps) {
  return (
    <Sheet isOpen={removal !== undefined} title={removal ? `Take out ${removal.title}?` : ''} onClose={onClose}>
      {removal && (
        <div className="removal">
          <p>
            It is in use: <strong>{sayUses(removal.uses)}</strong>.
          </p>
          <p>
            Taking it out takes it out of there too. What a shot no longer fixes is solved for again. It can be undone.
          </p>
          <div className="paste-buttons">
            <Button onClick={() => onRemove(removal)}>Take it out</Button>
            <Button look="main" onClick={onClose}>
              Keep it
            </Button>
          </div>
        </div>
      )}
    </Sheet>
  );
}
