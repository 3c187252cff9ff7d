import { lazy, Suspense } from 'react';
import type { OpenShoot } from '../state/contract.ts';
import { useFootage } from '../state/useFootage.ts';
import { FootageList } from './footage/FootageList.tsx';
import './footage/footage.css';

export interface FootageProps {
  readonly open: OpenShoot;
  /** Absent for the list. */
  readonly clipId: string | undefined;
  /** The clip that it stands beside. */
  readonly withId: string | undefined;
  readonly onGo: (href: string) => void;
}

const PairView = lazy(() => import('./footage/PairView.tsx').then(({ PairView: of }) => ({ default: of })));

const Clip = lazy(() => import('./Clip.tsx').then(({ Clip: of }) => ({ default: of })));

/** Clips that came back: all of them, one, or two beside each other. */
export function Footage({ open, clipId, withId, onGo }: FootageProps) {
  const footage = useFootage(open);
  if (clipId === undefined) return <FootageList open={open} footage={footage} onGo={onGo} />;
  return (
    <Suspense fallback={null}>
      {withId === undefined ? (
        <Clip open={open} footage={footage} clipId={clipId} onGo={onGo} />
      ) : (
        <PairView open={open} footage={footage} clipIds={[clipId, withId]} onGo={onGo} />
      )}
    </Suspense>
  );
}
