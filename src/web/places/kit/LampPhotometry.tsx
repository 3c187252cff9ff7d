import { useId, useState } from 'react';
import { photometryTold } from '../../../plan/photometry.ts';
import { Button } from '../../parts/Button.tsx';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { fieldId } from '../shot/shotContext.ts';
import { useDrop } from '../shoot/dropPictures.ts';
import { itemAt, titleOf } from './kitEdits.ts';
import { useKit } from './kitContext.ts';
import { dropFilePatch, filesOfOthers, giveFilePatch, photometryPath } from './photometryEdits.ts';
import { PHOTOMETRY_ACCEPT, PhotometrySheet } from './PhotometrySheet.tsx';
import { PhotometryView } from './PhotometryView.tsx';
import { problemAt } from './problemAt.ts';
import './photometry.css';

/** What the lamp's file holds, or why that is not to be seen. */
function Held({ lampId }: { readonly lampId: string }) {
  const { open, system } = useKit();
  const fileId = open.shoot.kit.lamps[lampId]?.file;
  const problem = problemAt(open, photometryPath(lampId));
  if (problem !== undefined) return <p className="field-problem">{problem}</p>;
  if (fileId === undefined)
    return (
      <p className="kit-says">
        None. With the maker’s file its light is known every way, and so how evenly it lights and where it falls off.
      </p>
    );
  const { name = fileId, sha256 = '' } = open.shoot.files[fileId] ?? {};
  const told = photometryTold(open.shoot);
  const photometry = told?.files.get(sha256);
  if (photometry) return <PhotometryView name={name} photometry={photometry} system={system} />;
  return <p role="status">{told?.unread.get(sha256) ?? `${name} is not known by its bytes: choose it again`}.</p>;
}

/** A file that another lamp has already, for this one too. */
function OfOthers({ lampId, title }: { readonly lampId: string; readonly title: string }) {
  const { open, edit } = useKit();
  const id = useId();
  const others = filesOfOthers(open.written, lampId);
  if (others.length === 0) return null;
  return (
    <ChoiceField
      id={id}
      label="Or as another lamp"
      value=""
      isGiven
      choices={[
        { value: '', label: 'none chosen' },
        ...others.map(({ fileId, name, lamps }) => ({ value: fileId, label: `${name}, of ${lamps.join(', ')}` })),
      ]}
      onChoose={(fileId) => {
        const name = others.find((other) => other.fileId === fileId)?.name;
        if (name !== undefined) edit(giveFilePatch(open.written, lampId, fileId), `${title}: light by ${name}`);
      }}
    />
  );
}

/** A lamp's photometric file: chosen or dropped, looked at before it is taken, seen, and taken out. */
export function LampPhotometry({ lampId }: { readonly lampId: string }) {
  const { open, edit } = useKit();
  const [file, setFile] = useState<File>();
  const drop = useDrop(([dropped]) => dropped && setFile(dropped));
  const item = itemAt(open.written, 'lamps', lampId);
  const title = titleOf(lampId, item);
  const has = item['file'] !== undefined;
  const inputId = fieldId(photometryPath(lampId));
  return (
    <Panel title="Its photometric file" aside="IES or EULUMDAT" className="lamp-light lamp-photometry">
      <div className={drop.isOver ? 'photometry-source is-over' : 'photometry-source'} {...drop.handlers}>
        <Held lampId={lampId} />
        <div className="photometry-acts no-print">
          <label className="file-button button plain" htmlFor={inputId}>
            {has ? 'Another file' : 'Choose a file'}
            <input
              id={inputId}
              className="hidden-text"
              type="file"
              accept={PHOTOMETRY_ACCEPT}
              aria-describedby={`${inputId}-says`}
              onChange={({ currentTarget }) => {
                const [chosen] = currentTarget.files ?? [];
                // The same file may be chosen again once it was mended.
                currentTarget.value = '';
                if (chosen) setFile(chosen);
              }}
            />
          </label>
          {has && (
            <Button look="quiet" onClick={() => edit(dropFilePatch(open.written, lampId), `${title}: photometric file taken out`)}>
              Take it out
            </Button>
          )}
          <p id={`${inputId}-says`}>
            An .ies or .ldt file, or one of them saved as .txt; or drop it here. You see what it holds before it is taken.
            {has && ' The reading and angles written above are not used with it.'}
          </p>
        </div>
        <OfOthers lampId={lampId} title={title} />
      </div>
      <PhotometrySheet lampId={lampId} file={file} onFile={setFile} onClose={() => setFile(undefined)} />
    </Panel>
  );
} // prettier-ignore
