import { useCallback, useEffect, useRef, useState, type MouseEvent } from 'react';
import { isPlainClick } from './pointer.ts';
import './placeRow.css';

export interface PlaceLink {
  readonly label: string;
  readonly href: string;
  readonly isCurrent: boolean;
}

export interface PlaceRowProps {
  readonly places: readonly PlaceLink[];
  /** What the row is of, for whoever hears it. */
  readonly label: string;
  /** Goes to another place without loading the page anew. */
  readonly onGo: (href: string) => void;
}

/** Rounding of the browser's own. */
const LEAST_px = 2;

/** Links in a row. Where there is no room for all of them it scrolls by itself, with the current one in sight. */
export function PlaceRow({ places, label, onGo }: PlaceRowProps) {
  const row = useRef<HTMLElement>(null);
  const [more, setMore] = useState('');
  const look = useCallback(() => {
    const { scrollLeft, scrollWidth, clientWidth } = row.current!;
    const left = scrollLeft > LEAST_px ? 'before' : '';
    const right = scrollWidth - clientWidth - scrollLeft > LEAST_px ? 'after' : '';
    setMore([left, right].filter(Boolean).join(' '));
  }, []);
  const current = places.find(({ isCurrent }) => isCurrent)?.href;
  const count = places.length;
  useEffect(() => {
    const nav = row.current!;
    const watch = new ResizeObserver(look);
    watch.observe(nav);
    // Only the row itself is scrolled: bringing the link into view otherwise would move the page too.
    const link = nav.querySelector<HTMLElement>('[aria-current]');
    if (link) nav.scrollLeft = link.offsetLeft - nav.offsetLeft - (nav.clientWidth - link.offsetWidth) / 2;
    look();
    return () => watch.disconnect();
  }, [look, current, count]);
  const follow = (href: string) => (event: MouseEvent) => {
    if (!isPlainClick(event)) return;
    event.preventDefault();
    onGo(href);
  };
  return (
    <nav className="place-row no-print" aria-label={label} ref={row} data-more={more} onScroll={look}>
      {places.map(({ label: says, href, isCurrent }) => (
        <a key={href} href={href} aria-current={isCurrent ? 'page' : undefined} onClick={follow(href)}>
          {says}
        </a>
      ))}
    </nav>
  );
}
