import { useState } from 'react';
import { sayShown, showNumber, showQuantity } from '../../../base/quantity.ts';
import type { WrittenRecord } from '../../../document/written.ts';
import { waveformsTold } from '../../../plan/waveforms.ts';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { lightFigures } from '../flicker/lightFigures.ts';
import { PeriodDrawing } from '../flicker/PeriodDrawing.tsx';
import { titleOf } from './kitEdits.ts';
import { KitField } from './KitField.tsx';
import { useKit } from './kitContext.ts';
import { dropRecordPatch, measuredOf, measuredPath } from './recordEdits.ts';
import { RecordSheet } from './RecordSheet.tsx';

/** One period as its file holds it, or why that is not to be seen. */
function Period({ lampId, measuredId, title }: Readonly<Record<'lampId' | 'measuredId' | 'title', string>>) {
  const { open } = useKit();
  const fileId = open.shoot.kit.lamps[lampId]?.measured[measuredId]?.file;
  const file = fileId === undefined ? undefined : open.shoot.files[fileId];
  if (!file) return <p className="kit-says">Its file is not named here: choose it under File.</p>;
  const told = waveformsTold(open.shoot);
  const waveform = told?.files.get(file.sha256 ?? '');
  if (!waveform)
    return <p className="kit-says">{told?.unread.get(file.sha256 ?? '') ?? `${file.name ?? fileId} is not read yet`}.</p>;
  const { ripple_Hz, depthFraction } = lightFigures(waveform);
  const rate = ripple_Hz === undefined ? 'steady' : `ripples at ${sayShown(showQuantity('frequency', ripple_Hz, { digits: 4 }))}`;
  return (
    <>
      <PeriodDrawing
        waveform={waveform}
        says={`One period of ${title}, ${sayShown(showQuantity('time', waveform.period_s, { digits: 3 }))}`}
      />
      <p className="wave-says">
        {rate}, percent flicker {showNumber(100 * depthFraction, 2)} %
      </p>
    </>
  );
} // prettier-ignore

const KEYS = [
  ['title', 'Title', undefined],
  ['level', 'Level', 'full'],
  ['colour', 'Colour', 'as the lamp says'],
  ['supply', 'Supply', undefined],
  ['ownRate', 'Rate of its own', undefined],
  ['file', 'File', undefined],
] as const;

function Entry({ lampId, measuredId, entry }: Readonly<Record<'lampId' | 'measuredId', string>> & { readonly entry: WrittenRecord }) {
  const { open, edit } = useKit();
  const title = titleOf(measuredId, entry);
  return (
    <li className="measured">
      <div className="measured-fields">
        {KEYS.map(([key, label, placeholder]) => (
          <KitField
            key={key}
            path={`${measuredPath(lampId, measuredId)}/${key}`}
            label={label}
            {...(placeholder === undefined ? {} : { placeholder })}
          />
        ))}
        <Button
          look="quiet"
          onClick={() => edit(dropRecordPatch(open.written, lampId, measuredId), `${title} taken out`)}
        >
          Take {title} out
        </Button>
      </div>
      <div className="wave-shown">
        <Period lampId={lampId} measuredId={measuredId} title={title} />
      </div>
    </li>
  );
} // prettier-ignore

/** A lamp's light as it was measured, each for one level, colour and supply; and bringing in another. */
export function MeasuredList({ lampId }: { readonly lampId: string }) {
  const { open } = useKit();
  const [isBringing, setBringing] = useState(false);
  const entries = measuredOf(open.written, lampId);
  return (
    <Panel title="Its light as measured" className="lamp-light">
      {entries.length === 0 ? (
        <p className="kit-says">
          The best model of a lamp is the lamp. A second of its light from a photodiode tells what no data sheet does;
          it holds for that level, colour and supply.
        </p>
      ) : (
        <>
          <p className="kit-says">
            Plans use the record of the level, colour and supply that a lamp is set to. At any other nobody knows how it
            ripples, and they say so.
          </p>
          <ul className="measured-list">
            {entries.map(([id, entry]) => (
              <Entry key={id} lampId={lampId} measuredId={id} entry={entry} />
            ))}
          </ul>
        </>
      )}
      <Button className="no-print" onClick={() => setBringing(true)}>
        Bring in a light record…
      </Button>
      <p className="measured-care">
        Measuring near a burning lamp: keep its guards and safety glass in place, keep out of the beam, and let nothing
        hang over it. Arc lamps give ultraviolet.
      </p>
      <RecordSheet lampId={lampId} isOpen={isBringing} onClose={() => setBringing(false)} />
    </Panel>
  );
}
