import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { modesOf } from './modeEdits.ts';
import type { ModeKey } from './modeKeys.ts';
import { ModeGrid } from './ModeGrid.tsx';
import { ModeTiming } from './ModeTiming.tsx';
import { PasteSheet } from './PasteSheet.tsx';
import { useKit } from './kitContext.ts';
import { timingGroups } from './modeTiming.ts';

/** Where a block was pasted, and what it was. */
interface Pasted {
  readonly text: string;
  readonly row?: number;
  readonly key?: ModeKey;
}

/** The picture formats of a camera: written in a grid, pasted as a table, held against the rows model. */
export function CameraFormats({ cameraId }: { readonly cameraId: string }) {
  const { open, edit } = useKit();
  const [pasted, setPasted] = useState<Pasted>();
  const modes = modesOf(open.written, cameraId);
  const camera = open.shoot.kit.cameras[cameraId];
  const groups = camera ? timingGroups(camera) : [];
  return (
    <Panel
      title="Formats"
      aside={modes.length === 0 ? 'none yet' : `${modes.length}, each with its highest rate`}
      className="kit-formats"
    >
      <p className="kit-says">
        One line a format. Paste a block from a spreadsheet into any cell, or a whole table with its headings.
      </p>
      <ModeGrid cameraId={cameraId} modes={modes} groups={groups} onPasteBlock={setPasted} />
      <Button className="no-print" onClick={() => setPasted({ text: '' })}>
        Paste a table…
      </Button>
      {camera && <ModeTiming cameraId={cameraId} groups={groups} />}
      <PasteSheet
        key={pasted === undefined ? 'closed' : 'open'}
        cameraId={cameraId}
        modes={modes}
        pasted={pasted}
        onApply={(patch, summary) => {
          setPasted(undefined);
          edit(patch, summary);
        }}
        onClose={() => setPasted(undefined)}
      />
    </Panel>
  );
}
