/** What every part of the view of a clip needs to know: the clip as it was measured, the frame it stands at, what is kept. */
import { createContext, use } from 'react';
import type { Measurement } from '../../../../measure/types.ts';
import type { ClipEntry } from '../../../../record/footage.ts';
import type { PlannedShot } from '../../../../turnover/measureAgainst.ts';
import type { ClipReply } from '../../../../turnover/measureReply.ts';
import type { OpenShoot } from '../../../state/contract.ts';
import type { Kept } from './kept.ts';
import type { Playhead } from './playhead.ts';
import type { Transport } from './useTransport.ts';

export interface ClipContext {
  readonly open: OpenShoot;
  readonly entry: ClipEntry;
  /** Of every frame. */
  readonly measurement: Measurement;
  /** In words, held against the plan as it now is. */
  readonly reply: ClipReply;
  /** Absent where nobody said which shot it is. */
  readonly shot?: PlannedShot;
  readonly playhead: Playhead;
  readonly transport: Transport;
  /** As it is being dragged. */
  readonly kept: Kept;
  readonly suggested: Kept;
  /** Shows what would be kept; nothing shows what is kept again. */
  readonly onDraft: (kept: Kept | undefined) => void;
  /** Nothing goes back to what is suggested. */
  readonly onKeep: (kept: Kept | undefined) => void;
  readonly onGo: (href: string) => void;
}

const Context = createContext<ClipContext | undefined>(undefined);

export const ClipProvider = Context.Provider;

export function useClip(): ClipContext {
  const clip = use(Context);
  if (!clip) throw new Error('A part of the view of a clip stands outside it');
  return clip;
}
