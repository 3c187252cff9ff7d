import { Menu as Base } from '@base-ui/react/menu';
import type { MenuProps } from '../menuProps.ts';
import '../menu.css';

/** The button of a menu with its list. */
export function MenuList({ trigger, items, onChoose, align = 'start' }: MenuProps) {
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
