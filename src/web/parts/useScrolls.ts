import { useEffect, useRef, useState, type RefObject } from 'react';

interface Scroller<Of extends HTMLElement> {
  readonly ref: RefObject<Of | null>;
  readonly role?: 'region';
  readonly tabIndex?: 0;
  readonly 'aria-label'?: string;
}

/** What makes a part that may be wider than its room reachable by keyboard: a named stop, only while it scrolls sideways. */
export function useScrolls<Of extends HTMLElement>(name: string): Scroller<Of> {
  const ref = useRef<Of>(null);
  const [isWide, setWide] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const watch = new ResizeObserver(() => setWide(element.scrollWidth > element.clientWidth));
    watch.observe(element);
    for (const child of element.children) watch.observe(child);
    return () => watch.disconnect();
  }, []);
  return { ref, ...(isWide ? { role: 'region', tabIndex: 0, 'aria-label': name } : {}) };
}
