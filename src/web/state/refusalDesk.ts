/** Refused edits of one shoot, kept until the person says what is to become of each. */
import { Fault } from '../../base/fault.ts';
import { shareUnchanged, type Written } from '../../document/written.ts';
import type { PatchOperation } from '../../plan/types.ts';
import { bringBackPatch, canApply } from './bringBack.ts';
import type { Refusal } from './contract.ts';
import type { Keep } from './keep.ts';
import { tryPatch } from './outbox.ts';
import type { Refused } from './refused.ts';

export interface RefusalDesk {
  /** Whether anything waits to be decided or read. */
  readonly isEmpty: () => boolean;
  readonly add: (refused: Refused) => void;
  readonly drop: (id: string) => void;
  /** What could only be read is overtaken by going on; what is left to decide stays. */
  readonly goOn: () => void;
  /** Drops what is there already: where somebody else wrote the very same there is nothing left to decide. */
  readonly settle: (on: Written) => void;
  /** All of them, each with what can still be done about it on the shoot as it is. */
  readonly on: (written: Written) => readonly Refusal[];
  /** The edit that puts one in again; rejects where what it needs cannot be fetched or put back. */
  readonly again: (id: string, on: () => Written) => Promise<Again | undefined>;
}

export interface Again {
  readonly patch: readonly PatchOperation[];
  readonly summary: string;
}

export interface RefusalNeeds {
  readonly shootId: string;
  readonly keep: Pick<Keep, 'refused' | 'setRefused'>;
  /** The shoot as it was at a revision. */
  readonly at: (revision: number) => Promise<Written>;
}

const beyondBack = (shootId: string, path: string) =>
  new Fault({
    code: 'edit.beyond-bringing-back',
    what: 'What this edit needs is gone and cannot be put back by itself',
    where: `${shootId}${path}`,
    mend: 'Look in the history for when it was there, and restore that revision or write it anew.',
  });

export function openRefusals({ shootId, keep, at }: RefusalNeeds): RefusalDesk {
  let refused = keep.refused(shootId);

  const set = (next: readonly Refused[]) => {
    if (next.length === refused.length && next.every((each, i) => each === refused[i])) return;
    refused = next;
    keep.setRefused(shootId, next);
  };

  return {
    isEmpty: () => refused.length === 0,
    add: (each) => set([...refused, each]),
    drop: (id) => set(refused.filter((each) => each.id !== id)),
    goOn: () => set(refused.filter(({ edit }) => edit)),
    settle: (on) => {
      const isThere = ({ edit }: Refused) =>
        edit !== undefined && canApply(on, edit.patch) && shareUnchanged(on, tryPatch(on, edit.patch)) === on;
      set(refused.filter((each) => !isThere(each)));
    },
    on: (written) =>
      refused.map((each) => {
        if (!each.edit) return each;
        if (canApply(written, each.edit.patch)) return { ...each, use: 'again' };
        return each.met ? { ...each, use: 'bring-back' } : each;
      }),
    again: async (id, on) => {
      const it = refused.find((each) => each.id === id);
      if (!it?.edit) return undefined;
      if (canApply(on(), it.edit.patch)) return it.edit;
      if (!it.met) return undefined;
      const then = await at(it.met.number - 1);
      const patch = bringBackPatch({ then, now: on(), patch: it.edit.patch });
      if (!patch) throw beyondBack(shootId, it.met.path);
      return { patch, summary: `${it.edit.summary}, and what it needs brought back` };
    },
  };
}
