import { dayHref } from '../../hrefs.ts';
import type { OpenShoot } from '../../state/contract.ts';
import { useDay } from '../../state/useDay.ts';
import { GoLink } from '../GoLink.tsx';

export interface DaySentenceProps {
  readonly open: OpenShoot;
  readonly onGo: (href: string) => void;
}

/** When it is a wrap, as the day has it, and the way to the day. */
export function DaySentence({ open, onGo }: DaySentenceProps) {
  const { day, isUpdating } = useDay(open);
  const [first] = day?.says ?? [];
  return (
    <>
      {first !== undefined && <b className={isUpdating ? 'is-updating' : undefined}>{first}</b>}{' '}
      <GoLink href={dayHref(open.id)} onGo={onGo}>
        Shot by shot
      </GoLink>
    </>
  );
}
