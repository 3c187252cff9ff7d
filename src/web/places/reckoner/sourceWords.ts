/** How a source was seen, in words. */
import type { Source } from '../../../laws/sources.ts';

export const HOW_SEEN: Readonly<Record<Source['seen'], string>> = {
  opened: 'read',
  excerpt: 'read in part',
  memory: 'from memory, not looked up',
  practice: 'common practice, no source',
};

export const isUnseen = ({ seen }: Source): boolean => seen === 'memory' || seen === 'practice';
