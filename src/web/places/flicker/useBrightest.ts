import { useSyncExternalStore } from 'react';
import { onTheme, themeNow } from '../../parts/theme.ts';
import { BRIGHTEST } from './patchPlay.ts';

/** Relative luminance that the brightest grey may have: on a dark stage very little. */
export function useBrightest(): number {
  return useSyncExternalStore(onTheme, themeNow) === 'stage' ? BRIGHTEST.stage : BRIGHTEST.room;
}
