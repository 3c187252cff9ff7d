import { lazy, Suspense, useEffect } from 'react';
import { useShootList } from '../state/hooks.ts';

/** Whoever comes to work opens a shoot: the list of them, and all that is done with whole shoots, comes when it is shown. */
const Shoots = lazy(() => import('./Shoots.tsx').then(({ Shoots: place }) => ({ default: place })));

export interface HomeProps {
  readonly onGo: (href: string) => void;
  /** There is one shoot: whoever comes here means that one. */
  readonly onOnly: (shootId: string) => void;
}

/** Where one starts: the only shoot, or the list of them. */
export function Home({ onGo, onOnly }: HomeProps) {
  const { list } = useShootList();
  const only = list.state === 'listed' && list.shoots.length === 1 ? list.shoots[0]!.id : undefined;
  useEffect(() => {
    if (only !== undefined) onOnly(only);
  });
  if (list.state === 'loading' || only !== undefined) return null;
  return (
    <Suspense fallback={null}>
      <Shoots onGo={onGo} />
    </Suspense>
  );
}
