/** The gallery's own shoot: edited, planned and taken back in this page alone, so that its parts can be tried. */
import { useState } from 'react';
import { applyPatch, withParents } from '../../../document/patch.ts';
import type { Written } from '../../../document/written.ts';
import type { PatchOperation, ShotPlan } from '../../../plan/types.ts';
import { deriveShoot, type Derived } from '../../state/derive.ts';
import { GALLERY_SHOOT } from './shoot.ts';

interface Step {
  readonly written: Written;
  readonly summary: string;
}

interface Steps {
  readonly past: readonly Step[];
  readonly written: Written;
  readonly future: readonly Step[];
}

export interface Bench extends Derived {
  /** As it stands, with what is just being typed. */
  readonly written: Written;
  readonly changeCount: number;
  readonly planOf: (shotId: string) => ShotPlan;
  readonly draft: (patch: readonly PatchOperation[]) => void;
  readonly commit: (patch: readonly PatchOperation[], summary: string) => void;
  readonly undoSummary: string | undefined;
  readonly redoSummary: string | undefined;
  readonly undo: () => void;
  readonly redo: () => void;
}

const laidOn = (written: Written, patch: readonly PatchOperation[]) => applyPatch(written, withParents(written, patch));

export function useBench(): Bench {
  const [{ past, written, future }, setSteps] = useState<Steps>({ past: [], written: GALLERY_SHOOT, future: [] });
  const [typed, setTyped] = useState<readonly PatchOperation[]>([]);
  const now = typed.length === 0 ? written : laidOn(written, typed);
  const derived = deriveShoot(now);
  const last = past.at(-1);
  const next = future.at(-1);
  return {
    ...derived,
    written: now,
    changeCount: past.length,
    planOf: (shotId) => {
      const plan = derived.plan.shots.find(({ id }) => id === shotId);
      if (!plan) throw new RangeError(`the gallery has no shot ${shotId}`);
      return plan;
    },
    draft: setTyped,
    commit: (patch, summary) => {
      setTyped([]);
      if (patch.length === 0) return;
      setSteps((steps) => ({
        past: [...steps.past, { written: steps.written, summary }],
        written: laidOn(steps.written, patch),
        future: [],
      }));
    },
    undoSummary: last?.summary,
    redoSummary: next?.summary,
    undo: () => {
      if (!last) return;
      setTyped([]);
      setSteps({
        past: past.slice(0, -1),
        written: last.written,
        future: [...future, { written, summary: last.summary }],
      });
    },
    redo: () => {
      if (!next) return;
      setTyped([]);
      setSteps({
        past: [...past, { written, summary: next.summary }],
        written: next.written,
        future: future.slice(0, -1),
      });
    },
  };
}
