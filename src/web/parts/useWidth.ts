import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** The width of an element in CSS pixels, kept up to date; zero before it is known. */
export function useWidth<Of extends HTMLElement>(): readonly [RefObject<Of | null>, number] {
  const ref = useRef<Of>(null);
  const [width_px, setWidth_px] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    setWidth_px(element.clientWidth);
    const watch = new ResizeObserver(() => setWidth_px(element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [ref, width_px];
}
