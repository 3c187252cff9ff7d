import { useState } from 'react';
import type { Learning, Learnt } from '../../../../turnover/learn/learnt.ts';
import type { OpenShoot } from '../../../state/contract.ts';

export interface Taking {
  /** What is shown: as it was when it was taken, so that old and new still stand beside each other. */
  readonly shown: Learning;
  readonly isTaken: boolean;
  readonly take: (learnt: Learnt) => void;
  readonly onUndo: (() => void) | undefined;
}

/** Takes what was learnt as one edit, which is undone as any other is. */
export function useTaking(open: OpenShoot, learning: Learning): Taking {
  const [taken, setTaken] = useState<Learnt>();
  // Undone elsewhere it can be taken again; once something else was done it is no longer undone from here.
  const isUndone = taken !== undefined && open.redoSummary === taken.summary;
  const isNewest = taken !== undefined && open.undoSummary === taken.summary;
  return {
    shown: taken && !isUndone ? { ok: true, learnt: taken } : learning,
    isTaken: taken !== undefined && !isUndone,
    take: (learnt) => {
      setTaken(learnt);
      open.commit(learnt.patch, learnt.summary);
    },
    onUndo: isNewest
      ? () => {
          setTaken(undefined);
          open.undo();
        }
      : undefined,
  };
}
