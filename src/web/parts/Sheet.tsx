import type { ReactNode, RefObject } from 'react';
import { useLater } from './useLater.ts';

export interface SheetProps {
  readonly isOpen: boolean;
  readonly title: string;
  readonly onClose: () => void;
  /** What has the cursor first; else whatever comes first. */
  readonly startAt?: RefObject<HTMLElement | null>;
  readonly children: ReactNode;
}

const loadBody = async () => (await import('./later/SheetBody.tsx')).SheetBody;

/** A sheet over the edge of the page for reading something in full; Escape puts it away. What shows it comes after the page. */
export function Sheet(props: SheetProps) {
  const SheetBody = useLater(loadBody);
  return SheetBody ? <SheetBody {...props} /> : null;
}
