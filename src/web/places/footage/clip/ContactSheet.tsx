import { useMemo, useState } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { Panel } from '../../../parts/Panel.tsx';
import { Still } from '../Still.tsx';
import { useClip } from './clipContext.ts';
import { sayFrame, timesOf } from './clipTimes.ts';
import { contactFrames, type ContactOf } from './contact.ts';
import { keptOf } from './kept.ts';

const STILL_px = 480;

const OF: readonly { readonly of: ContactOf; readonly says: string }[] = [
  { of: 'kept', says: 'What is kept' },
  { of: 'peak', says: 'About the peak' },
];

/** Twelve frames of a clip with their times, for the screen and for paper. */
export function ContactSheet() {
  const { open, entry, measurement, suggested, transport } = useClip();
  const { action, frameCount, width, height } = measurement;
  const [of, setOf] = useState<ContactOf>(action ? 'peak' : 'kept');
  // What was kept, and not what is being dragged: each of these pictures is work for the server.
  const kept = useMemo(() => keptOf(entry.kept, suggested, frameCount), [entry.kept, suggested, frameCount]);
  const frames = contactFrames(of, { kept, peak: action?.peak, frameCount });
  const said = (frame: number) => (frame === action?.peak ? 'most moves' : frame === kept.inFrame ? 'first kept' : frame === kept.outFrame ? 'last kept' : undefined); // prettier-ignore
  return (
    <Panel
      title="Contact sheet"
      className="clip-contact"
      aside={
        <span className="clip-tools no-print" role="group" aria-label="Frames of the contact sheet">
          {OF.map(({ of: each, says }) => (
            <Button key={each} look="quiet" aria-pressed={of === each} disabled={each === 'peak' && !action} onClick={() => setOf(each)}>
              {says}
            </Button>
          ))}
          <Button look="quiet" onClick={() => window.print()}>
            Print
          </Button>
        </span>
      }
    >
      <ol className="contact-sheet">
        {frames.map((frame) => {
          const { real, screen } = timesOf(frame, measurement);
          return (
            <li key={frame}>
              <button type="button" className="contact-picture" style={{ aspectRatio: `${width} / ${height}` }} aria-label={`Go to ${sayFrame(frame, measurement)}`} onClick={() => transport.seek(frame)}>
                <Still shootId={open.id} clipId={entry.id} frame={frame} width={STILL_px} alt="" />
              </button>
              <p>
                <b>{frame}</b> <span className="is-real">{real}</span> <span className="is-screen">{screen}</span>
                {said(frame) !== undefined && <em>{said(frame)}</em>}
              </p>
            </li>
          );
        })}
      </ol>
    </Panel>
  );
} // prettier-ignore
