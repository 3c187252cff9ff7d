import type { ShootEntry } from '../../../api/replies.ts';
import { shootHref } from '../../hrefs.ts';
import { GoLink } from '../GoLink.tsx';

export interface ShootRowProps {
  readonly shoot: ShootEntry;
  readonly onGo: (href: string) => void;
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** One shoot of the list, and the way into it. */
export function ShootRow({ shoot: { id, title, updated, revision }, onGo }: ShootRowProps) {
  return (
    <li>
      <GoLink className="shoots-row" href={shootHref(id)} onGo={onGo}>
        <span className="shoots-title">{title}</span>
        <span className="shoots-when">
          {revision === 0 ? 'as brought in' : `revision ${revision}`}, {WHEN.format(new Date(updated))}
        </span>
      </GoLink>
    </li>
  );
}
