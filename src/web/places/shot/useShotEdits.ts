import { useEffect, useRef } from 'react';
import type { PatchOperation } from '../../../plan/types.ts';
import type { Written } from '../../../document/written.ts';
import type { OpenShoot } from '../../state/contract.ts';

export type MakePatch = (written: Written) => readonly PatchOperation[];

export interface ShotEdits {
  /** Plans with it, without sending it. */
  readonly draft: (make: MakePatch) => void;
  /** Plans with it and sends it. */
  readonly commit: (make: MakePatch, summary: string) => void;
  readonly cancel: () => void;
}

/**
 * Edits of the open shoot. Every patch is made against the shoot without the draft that is on the screen, because that
 * is what it will be laid on.
 */
export function useShotEdits(open: OpenShoot): ShotEdits {
  const newest = useRef(open);
  const without = useRef(open.written);
  const isDrafting = useRef(false);
  useEffect(() => {
    newest.current = open;
    if (!isDrafting.current) without.current = open.written;
  });
  return {
    draft: (make) => {
      isDrafting.current = true;
      newest.current.draft(make(without.current));
    },
    commit: (make, summary) => {
      const patch = make(without.current);
      isDrafting.current = false;
      if (patch.length > 0) newest.current.commit(patch, summary);
      else newest.current.draft([]);
    },
    cancel: () => {
      isDrafting.current = false;
      newest.current.draft([]);
    },
  };
}
