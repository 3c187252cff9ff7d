import { cloneElement, useEffect, useLayoutEffect, useRef } from 'react';
import type { MenuProps } from './menuProps.ts';
import { useLater } from './useLater.ts';

const loadList = async () => (await import('./later/MenuList.tsx')).MenuList;

/** A list to choose one thing from, opened by a button. What opens it comes after the page; the button stands at once. */
export function Menu(props: MenuProps) {
  const { trigger } = props;
  const MenuList = useLater(loadList);
  const holder = useRef<HTMLSpanElement>(null);
  const hadFocus = useRef(false);
  const wasPressed = useRef(false);
  // The button is made anew when the list comes: whoever stood on it stays on it, and whoever pressed it has pressed it.
  const press = (how: 'focus' | 'click') => holder.current?.querySelector('button')?.[how]();
  useLayoutEffect(() => {
    if (MenuList && hadFocus.current) press('focus');
  }, [MenuList]);
  useEffect(() => {
    if (MenuList && wasPressed.current) press('click');
  }, [MenuList]);
  const leave = () => {
    hadFocus.current = false;
    wasPressed.current = false;
  };
  return (
    <span ref={holder} className="menu-holder">
      {MenuList ? (
        <MenuList {...props} />
      ) : (
        <span className="menu-holder" onFocus={() => (hadFocus.current = true)} onBlur={leave}>
          {cloneElement(trigger, { onClick: () => (wasPressed.current = true), 'aria-haspopup': 'menu' })}
        </span>
      )}
    </span>
  );
}
