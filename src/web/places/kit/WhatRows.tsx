import { useId, useState } from 'react';
import { itemAt, itemPath } from './kitEdits.ts';
import { addMode } from './modeEdits.ts';
import { rateOfRows, type TimingGroup } from './modeTiming.ts';
import { useKit } from './kitContext.ts';
import { Button } from '../../parts/Button.tsx';
import { Figure } from '../../parts/Figure.tsx';

const MOST_ROWS = 100_000;

/** The highest rate of a height nobody published, from the model; it may be added, and says of itself what it is. */
export function WhatRows({ cameraId, group }: { readonly cameraId: string; readonly group: TimingGroup }) {
  const { open, edit } = useKit();
  const id = useId();
  const widths = [...new Set(group.fits.map(({ widthCount }) => widthCount))].sort((a, b) => b - a);
  const [typed, setTyped] = useState('');
  const [width, setWidth] = useState<number>();
  const widthCount = width !== undefined && widths.includes(width) ? width : widths[0]!;
  const rowCount = /^\s*\d{1,6}\s*$/.test(typed) ? Number(typed) : undefined;
  const isRight = rowCount !== undefined && rowCount >= 1 && rowCount <= MOST_ROWS;
  const worked = isRight ? rateOfRows(group, rowCount) : undefined;

  const add = (rate_fps: number, rows: number) => {
    const title = `${widthCount} × ${rows}, worked out`;
    const binning = group.binningCount > 1 ? { binning: String(group.binningCount) } : {};
    const mode = addMode(open.written, cameraId, { title, pixels: `${widthCount} x ${rows}`, rate: `${rate_fps} fps`, ...binning });
    const { note } = itemAt(open.written, 'cameras', cameraId);
    const said = `${widthCount} × ${rows} at ${rate_fps} fps is worked out from the row time of the listed formats, not published: try it before it is planned with.`;
    const path = `${itemPath('cameras', cameraId)}/note`;
    const value = typeof note === 'string' && note.trim() !== '' ? `${note.trim()}\n${said}` : said;
    edit([...mode.patch, { op: 'add', path, value }], `Format added: ${title}`);
    setTyped('');
  };

  return (
    <div className="what-rows no-print">
      <label htmlFor={id}>What would</label>
      <input
        id={id}
        className="field-input"
        inputMode="numeric"
        autoComplete="off"
        placeholder="900"
        value={typed}
        aria-describedby={`${id}-says`}
        aria-invalid={typed.trim() !== '' && !isRight}
        onChange={(event) => setTyped(event.currentTarget.value)}
      />
      <label htmlFor={`${id}-width`}>rows do, at</label>
      <select
        id={`${id}-width`}
        className="field-input"
        value={widthCount}
        onChange={(event) => setWidth(Number(event.currentTarget.value))}
      >
        {widths.map((each) => (
          <option key={each} value={each}>
            {each} across
          </option>
        ))}
      </select>
      <div className="what-says" id={`${id}-says`} role="status">
        {worked && (
          <>
            <Figure size="big" number={String(worked.rate_fps)} unit="fps" />
            <span>
              worked out, not published
              {worked.isBeyond && '; beyond every listed height, where the camera may not go'}
            </span>
            <Button onClick={() => add(worked.rate_fps, rowCount!)}>Add it as a format</Button>
          </>
        )}
        {typed.trim() !== '' && !isRight && (
          <span className="field-problem">Rows are a whole number, 1 to {MOST_ROWS}.</span>
        )}
      </div>
    </div>
  );
} // prettier-ignore
