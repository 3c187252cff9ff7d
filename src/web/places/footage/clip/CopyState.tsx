import type { ClipEntry } from '../../../../record/footage.ts';
import { Button } from '../../../parts/Button.tsx';

export interface CopyStateProps {
  readonly entry: ClipEntry;
  readonly onMake: () => void;
}

/** How the small copy stands that the browser plays; nothing once it is there. */
export function CopyState({ entry, onMake }: CopyStateProps) {
  const { state, job } = entry.proxy;
  if (state === 'ready') return null;
  const share = job?.total ? ` ${Math.floor((100 * job.done) / job.total)} %` : '';
  const fault = job?.fault;
  return (
    <div className="clip-copy no-print">
      <p role="status">
        {state === 'making' && `Small copy:${share === '' ? ' being made' : share}. Stills until then.`}
        {state === 'waiting' && 'Small copy: waiting for other work. Stills until then.'}
        {state === 'failed' && `No small copy could be made. ${fault ? `${fault.what}. ${fault.mend}` : ''}`}
        {state === 'none' && (entry.isHere ? 'To play it, a small copy is made first.' : 'Its file is not here, so it cannot be played.')}
      </p>
      {(state === 'none' || state === 'failed') && entry.isHere && (
        <Button onClick={onMake}>{state === 'failed' ? 'Try again' : 'Make the small copy'}</Button>
      )}
    </div>
  );
} // prettier-ignore
