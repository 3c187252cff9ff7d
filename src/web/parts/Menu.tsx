import { Menu as Base } from '@base-ui/react/menu';
import type { ReactElement, ReactNode } from 'react';
import './menu.css';

export interface MenuItem {
  readonly id: string;
  readonly label: ReactNode;
  /** Said at the far end, quietly. */
  readonly note?: ReactNode;
  readonly isCurrent?: boolean;
}

export interface MenuProps {
  /** The button that opens it. */
  readonly trigger: ReactElement;
  readonly items: readonly MenuItem[];
  readonly onChoose: (id: string) => void;
  readonly align?: 'start' | 'end';
}

/** A list to choose one thing from, opened by a button. */
export function Menu({ trigger, items, onChoose, align = 'start' }: MenuProps) {
  return (
    <Base.Root>
      <Base.Trigger render={trigger} />
      <Base.Portal>
        <Base.Positioner className="menu-place" sideOffset={4} align={align}>
          <Base.Popup className="menu">
            {items.map(({ id, label, note, isCurrent = false }) => (
              <Base.Item
                key={id}
                className="menu-item"
                aria-current={isCurrent ? 'true' : undefined}
                onClick={() => onChoose(id)}
              >
                <span className="menu-label">{label}</span>
                {note !== undefined && <span className="menu-note">{note}</span>}
              </Base.Item>
            ))}
          </Base.Popup>
        </Base.Positioner>
      </Base.Portal>
    </Base.Root>
  );
}
