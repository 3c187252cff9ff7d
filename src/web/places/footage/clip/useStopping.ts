import { useEffect } from 'react';

/** Nothing flickers on unseen, and Escape stops it wherever the focus is. */
export function useStopping(isPlaying: boolean, stop: () => void): void {
  useEffect(() => {
    if (!isPlaying) return undefined;
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      stop();
    };
    const onHidden = () => document.visibilityState === 'hidden' && stop();
    window.addEventListener('keydown', onKey, { capture: true });
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      window.removeEventListener('keydown', onKey, { capture: true });
      document.removeEventListener('visibilitychange', onHidden);
    };
  }, [isPlaying, stop]);
}
