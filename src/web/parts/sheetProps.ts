/** What a sheet is given, apart from how it is shown. */
import type { ReactNode, RefObject } from 'react';

export interface SheetProps {
  readonly isOpen: boolean;
  readonly title: string;
  readonly onClose: () => void;
  /** What has the cursor first; else whatever comes first. */
  readonly startAt?: RefObject<HTMLElement | null>;
  readonly children: ReactNode;
}
