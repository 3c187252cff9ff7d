import { cloneElement, useLayoutEffect, useRef, useState } from 'react';
import type { MenuProps } from './menuProps.ts';
import { useLater } from './useLater.ts';

const loadList = async () => (await import('./later/MenuList.tsx')).MenuList;

/** A list to choose one thing from, opened by a button. What opens it comes after the page; the button stands at once. */
export function Menu(props: MenuProps) {
  const { trigger } = props;
  const [isWanted, setWanted] = useState(false);
  const MenuList = useLater(loadList);
  const holder = useRef<HTMLSpanElement>(null);
  const hadFocus = useRef(false);
  // The button is made anew when the list comes; whoever stood on it stays on it.
  useLayoutEffect(() => {
    if (MenuList && hadFocus.current && !isWanted) holder.current?.querySelector('button')?.focus();
  }, [MenuList, isWanted]);
  return (
    <span ref={holder} className="menu-holder">
      {MenuList ? (
        <MenuList {...props} isOpen={isWanted} />
      ) : (
        <span
          className="menu-holder"
          onFocus={() => (hadFocus.current = true)}
          onBlur={() => (hadFocus.current = false)}
        >
          {cloneElement(trigger, { onClick: () => setWanted(true), 'aria-haspopup': 'menu' })}
        </span>
      )}
    </span>
  );
}
