import { useEffect, useRef } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useDrop } from '../shoot/dropPictures.ts';
import { itemAt, titleOf } from './kitEdits.ts';
import { useKit } from './kitContext.ts';
import { takeFilePatch } from './photometryEdits.ts';
import { PhotometryView } from './PhotometryView.tsx';
import { usePhotometryPreview, type Preview } from './usePhotometryPreview.ts';

export interface PhotometrySheetProps {
  readonly lampId: string;
  /** What was chosen or dropped; undefined while the sheet is closed. */
  readonly file: File | undefined;
  readonly onFile: (file: File) => void;
  readonly onClose: () => void;
}

export const PHOTOMETRY_ACCEPT = '.ies,.ldt,.txt';

/** Why a file is not taken, and that this changed nothing. */
function Refused({ preview }: { readonly preview: Preview & { readonly state: 'refused' } }) {
  const { name, refusal } = preview;
  const { what, line, mend } = refusal;
  return (
    <p className="photometry-refusal" role="alert">
      <b>
        {name}
        {line > 0 && `, line ${line}`}
      </b>
      : {what}. {mend} Nothing was changed.
    </p>
  );
}

function Looking({ lampId, file, onFile, onClose }: PhotometrySheetProps & { readonly file: File }) {
  const kit = useKit();
  const newest = useRef(kit);
  useEffect(() => {
    newest.current = kit;
  });
  const { preview, look, isSending, says, send } = usePhotometryPreview();
  const looks = useRef(look);
  useEffect(() => looks.current(file), [file]);
  const drop = useDrop(([other]) => other && onFile(other));
  const lamp = titleOf(lampId, itemAt(kit.open.written, 'lamps', lampId));
  const take = async () => {
    const sent = await send(kit.open.id);
    if (!sent) return;
    const { open, edit } = newest.current;
    edit(takeFilePatch(open.written, lampId, sent), `${lamp}: light by ${sent.name}`);
    onClose();
  };
  return (
    <div className={drop.isOver ? 'photometry-look is-over' : 'photometry-look'} {...drop.handlers}>
      {preview.state === 'reading' && <p role="status">Reading {preview.name}…</p>}
      {preview.state === 'refused' && <Refused preview={preview} />}
      {preview.state === 'read' && (
        <PhotometryView name={preview.name} photometry={preview.photometry} system={kit.system} />
      )}
      {says !== undefined && (
        <p className="field-problem" role="alert">
          {says}
        </p>
      )}
      <div className="photometry-acts">
        {preview.state === 'read' && (
          <Button look="main" disabled={isSending} onClick={() => void take()}>
            {isSending ? 'Sending…' : `Take it for ${lamp}`}
          </Button>
        )}
        <Button onClick={onClose}>{preview.state === 'read' ? 'Leave it' : 'Close'}</Button>
      </div>
    </div>
  );
}

/** A photometric file looked at before it is taken for a lamp. */
export function PhotometrySheet(props: PhotometrySheetProps) {
  const { file, onClose } = props;
  return (
    <Sheet isOpen={file !== undefined} title="A photometric file" onClose={onClose}>
      {file && <Looking {...props} file={file} />}
    </Sheet>
  );
}
