/** What a menu is given, apart from how it is shown. */
import type { ReactElement, ReactNode } from 'react';

export interface MenuItem {
  readonly id: string;
  readonly label: ReactNode;
  /** Said at the far end, quietly. */
  readonly note?: ReactNode;
  readonly isCurrent?: boolean;
}

export interface MenuProps {
  /** The button that opens it. */
  readonly trigger: ReactElement<{ readonly onClick?: () => void; readonly 'aria-haspopup'?: 'menu' }>;
  readonly items: readonly MenuItem[];
  readonly onChoose: (id: string) => void;
  readonly align?: 'start' | 'end';
}
