import { Sheet } from '../../parts/Sheet.tsx';
import { NameForm } from './NameForm.tsx';

/** Where one says or changes what one is called. */
export function NameSheet({ isOpen, onClose }: { readonly isOpen: boolean; readonly onClose: () => void }) {
  return (
    <Sheet isOpen={isOpen} title="Who you are" onClose={onClose}>
      <NameForm
        says="It stands beside your edits in the history, and others see it where you are working. It is kept in this browser; take it away by leaving the field empty."
        onDone={onClose}
      />
    </Sheet>
  );
}
