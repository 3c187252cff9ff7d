/** Let a setting that was fixed be worked out again. */
import type { LimitId } from '../types.ts';
import type { Move, MoveContext, Proposal } from './move.ts';

const FIXED: readonly { readonly key: string; readonly readKey: 'rate' | 'shutter' | 'stop' | 'isoSpeed' | 'mode' | 'lens' | 'camera'; readonly says: string }[] = [
  { key: 'rate', readKey: 'rate', says: 'the frame rate' },
  { key: 'shutter', readKey: 'shutter', says: 'the shutter' },
  { key: 'stop', readKey: 'stop', says: 'the stop' },
  { key: 'index', readKey: 'isoSpeed', says: 'the exposure index' },
  { key: 'mode', readKey: 'mode', says: 'the mode' },
  { key: 'lens', readKey: 'lens', says: 'the lens' },
]; // prettier-ignore

const ANY: readonly LimitId[] = ['frame-rate', 'screen-time', 'shutter', 'stop-range', 'index-range', 'light', 'highlights', 'noise', 'depth', 'blur', 'diffraction', 'picture-size', 'in-the-picture', 'coverage', 'focus', 'clearance', 'buffer', 'trigger-catch']; // prettier-ignore

export const letItBeSolved: Move = {
  id: 'let-it-be-solved',
  closes: ANY,
  propose({ effective }: MoveContext): readonly Proposal[] {
    const { shot, at } = effective;
    return FIXED.filter(({ readKey }) => shot[readKey] !== undefined).map(({ key, readKey, says }) => ({
      title: `Let ${says} be worked out`,
      says: at(readKey) === '/defaults' ? 'it was fixed for every shot that does not say otherwise' : 'it was fixed',
      patch: [{ op: 'remove', path: `${at(readKey)}/${key}` }],
      gives_stops: 0.3,
      touchesFixed: true,
    }));
  },
};
