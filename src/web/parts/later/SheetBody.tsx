import { Dialog } from '@base-ui/react/dialog';
import { Button } from '../Button.tsx';
import { Icon } from '../Icon.tsx';
import type { SheetProps } from '../sheetProps.ts';
import '../sheet.css';

/** The sheet itself. */
export function SheetBody({ isOpen, title, onClose, startAt, children }: SheetProps) {
  return (
    <Dialog.Root open={isOpen} onOpenChange={(next) => next || onClose()}>
      <Dialog.Portal>
        <Dialog.Backdrop className="sheet-behind" />
        <Dialog.Popup className="sheet" {...(startAt ? { initialFocus: startAt } : {})}>
          <div className="sheet-head">
            <Dialog.Title className="sheet-title">{title}</Dialog.Title>
            <Dialog.Close
              render={
                <Button look="sign" aria-label="Close">
                  <Icon name="close" />
                </Button>
              }
            />
          </div>
          <div className="sheet-body">{children}</div>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
