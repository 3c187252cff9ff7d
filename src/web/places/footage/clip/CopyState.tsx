import { useEffect, useRef } from 'react';
import type { ClipEntry } from '../../../../record/footage.ts';
import { Button } from '../../../parts/Button.tsx';

export interface CopyStateProps {
  readonly entry: ClipEntry;
  /** Which clip it is, where there are several. */
  readonly of?: string;
  readonly onMake: () => void;
}

/** How the small copy stands that the browser plays, which is asked for as soon as somebody looks; nothing once it is there. */
export function CopyState({ entry, of, onMake }: CopyStateProps) {
  const { state, job } = entry.proxy;
  const isLacking = state === 'none' && entry.isHere;
  const make = useRef(onMake);
  useEffect(() => {
    make.current = onMake;
  });
  useEffect(() => {
    if (isLacking) make.current();
  }, [isLacking, entry.id]);
  if (state === 'ready') return null;
  const share = job?.total ? ` ${Math.floor((100 * job.done) / job.total)} %` : '';
  const fault = job?.fault;
  const which = of === undefined ? '' : ` of ${of}`;
  return (
    <div className="clip-copy no-print">
      <p role="status">
        {state === 'making' && `Small copy${which}:${share === '' ? ' being made' : share}. Stills until then.`}
        {state === 'waiting' && `Small copy${which}: waiting for other work. Stills until then.`}
        {state === 'failed' && `No small copy${which} could be made. ${fault ? `${fault.what}. ${fault.mend}` : ''}`}
        {state === 'none' && (entry.isHere ? `To play it, a small copy${which} is made first.` : `The file${which} is not here, so it cannot be played.`)}
      </p>
      {(isLacking || state === 'failed') && (
        <Button onClick={onMake}>{state === 'failed' ? 'Try again' : 'Make the small copy'}</Button>
      )}
    </div>
  );
} // prettier-ignore
