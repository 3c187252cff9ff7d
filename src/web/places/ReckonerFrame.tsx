import type { ReactNode } from 'react';
import { KeyHelp } from '../actions/KeyHelp.tsx';
import { useActions } from '../actions/useActions.ts';
import { Shell } from '../parts/Shell.tsx';
import { reckonerHref, SHOOTS_HREF } from '../hrefs.ts';

export interface ReckonerFrameProps {
  readonly onGo: (href: string) => void;
  readonly children: ReactNode;
}

/** The frame of the Reckoner where no shoot is open. */
export function ReckonerFrame({ onGo, children }: ReckonerFrameProps) {
  const help = useActions({ go: onGo });
  const places = [
    { label: 'All shoots', href: SHOOTS_HREF, isCurrent: false },
    { label: 'Reckoner', href: reckonerHref(), isCurrent: true },
  ];
  return (
    <Shell places={places} onGo={onGo}>
      {children}
      <KeyHelp {...help} />
    </Shell>
  );
}
