import { useEffect } from 'react';
import { useShootList } from '../state/hooks.ts';
import { Shoots } from './Shoots.tsx';

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
  return list.state === 'loading' || only !== undefined ? null : <Shoots onGo={onGo} />;
}
