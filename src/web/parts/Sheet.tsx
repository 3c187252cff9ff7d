import { Dialog } from '@base-ui/react/dialog';
import type { ReactNode, RefObject } from 'react';
import { Button } from './Button.tsx';
import { Icon } from './Icon.tsx';
import './sheet.css';

export interface SheetProps {
  readonly isOpen: boolean;
  readonly title: string;
  readonly onClose: () => void;
  /** What has the cursor first; else whatever comes first. */
  readonly startAt?: RefObject<HTMLElement | null>;
  readonly children: ReactNode;
}

/** A sheet over the edge of the page for reading something in full; Escape puts it away. */
export function Sheet({ isOpen, title, onClose, startAt, children }: SheetProps) {
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
