import type { Cursor, Told } from './cursor.ts';

export interface ReadingProps {
  readonly told: Told;
  readonly cursor: Cursor | undefined;
  /** What a reading without a cursor is of. */
  readonly of: string;
}

/** What a picture says where it is pointed at, or as things stand. */
export function Reading({ told, cursor, of }: ReadingProps) {
  return (
    <p className="picture-read" aria-live={cursor?.isByKey ? 'polite' : 'off'}>
      {!cursor && <span className="picture-now">{of}</span>} <b>{told.where}</b>
      {told.isRefused ? ': no answer. ' : ' gives '}
      {told.isRefused ? <span>{told.says}.</span> : <b>{told.says}</b>}
      {cursor && !told.isRefused && (
        <span className="picture-hint no-print"> {cursor.isByKey ? 'Enter sets it' : 'click to set it'}</span>
      )}
    </p>
  );
}
