import { useState } from 'react';
import type { ClipEntry } from '../../../../record/footage.ts';
import { Button } from '../../../parts/Button.tsx';
import { Panel } from '../../../parts/Panel.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import { LearnSheet } from './LearnSheet.tsx';
import './learn.css';

export interface LearnPanelProps {
  readonly open: OpenShoot;
  readonly entry: ClipEntry;
  readonly clips: readonly ClipEntry[];
}

/** The way from a clip to what it teaches of the shoot. */
export function LearnPanel({ open, entry, clips }: LearnPanelProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <Panel title="What it teaches" className="learn-panel no-print">
      <p>
        How long, fast and far the action really went, how late a rig moved or how a lamp pulses, in place of what the
        plan assumes.
      </p>
      <Button onClick={() => setOpen(true)}>Take figures into the plan</Button>
      <LearnSheet
        open={open}
        clips={clips}
        shotId={entry.shotId}
        ticked={[entry.id]}
        isOpen={isOpen}
        onClose={() => setOpen(false)}
      />
    </Panel>
  );
}
