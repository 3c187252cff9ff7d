import { useEffect, useRef, useState } from 'react';
import type { FileReply } from '../../../api/replies.ts';
import { Fault } from '../../../base/fault.ts';
import { boardOrder } from '../../../turnover/film.ts';
import type { OpenShoot } from '../../state/contract.ts';
import { server } from '../../state/page.ts';
import { framesOfPicturesPatch, givePicturePatch, isPicture } from './boardPictures.ts';
import { scalePicture } from './scalePicture.ts';

export interface Pictures {
  /** Sends a picture and gives it to a frame. */
  readonly give: (frameId: string, title: string, file: File) => void;
  /** Sends pictures and adds a frame for each. */
  readonly addFrames: (files: readonly File[]) => void;
  /** What is on its way, or why it is not. */
  readonly says: string | undefined;
  /** Pictures that wait in this page: sending them can be tried again. */
  readonly again: (() => void) | undefined;
  readonly putAway: () => void;
}

interface Waiting {
  readonly says: string;
  /** Absent where trying again would not help. */
  readonly again?: () => void;
}

const count = (files: readonly File[]) => (files.length === 1 ? 'The picture' : `The ${files.length} pictures`);

function faultWords(error: unknown): string | undefined {
  return error instanceof Fault && !error.retry ? `${error.what} (${error.where}). ${error.mend}` : undefined;
}

async function send(shootId: string, file: File): Promise<FileReply> {
  const small = await scalePicture(file);
  const bytes = new Uint8Array(await small.arrayBuffer());
  return server.upload(shootId, { name: small.name || 'picture', type: small.type, bytes });
}

/** Pictures on their way to the board: scaled, sent, and then named in one edit. What cannot be sent waits in the page. */
export function usePictures(open: OpenShoot): Pictures {
  const newest = useRef(open);
  useEffect(() => {
    newest.current = open;
  });
  const [waiting, setWaiting] = useState<Waiting>();

  const perform = async (files: readonly File[], done: (sent: readonly FileReply[]) => void): Promise<void> => {
    const wrong = files.find((file) => !isPicture(file));
    if (wrong) {
      setWaiting({ says: `${wrong.name} is no picture that a board can show. Choose a PNG, JPEG, WebP or GIF; nothing was changed.` });
      return;
    }
    setWaiting({ says: `${count(files)} ${files.length === 1 ? 'is' : 'are'} being sent…` });
    try {
      const sent: FileReply[] = [];
      for (const file of files) sent.push(await send(newest.current.id, file));
      done(sent);
      setWaiting(undefined);
    } catch (error) {
      const says = faultWords(error);
      if (says !== undefined) setWaiting({ says: `${says} Nothing was changed.` });
      else
        setWaiting({
          says: `${count(files)} could not be sent: pictures need the connection. ${files.length === 1 ? 'It waits' : 'They wait'} here; nothing is lost while this page stays open.`,
          again: () => void perform(files, done),
        });
    }
  };

  const again = waiting?.again;
  useEffect(() => {
    if (!again) return undefined;
    window.addEventListener('online', again, { once: true });
    return () => window.removeEventListener('online', again);
  }, [again]);

  return {
    give: (frameId, title, file) =>
      void perform([file], ([sent]) => {
        const { written, commit } = newest.current;
        if (sent) commit(givePicturePatch(written, frameId, sent), `${title}: picture`);
      }),
    addFrames: (files) =>
      void perform(files, (sent) => {
        const { written, shoot, commit } = newest.current;
        const summary = sent.length === 1 ? 'New frame with a picture' : `${sent.length} new frames with pictures`;
        commit(framesOfPicturesPatch(written, boardOrder(shoot), sent), summary);
      }),
    says: waiting?.says,
    again,
    putAway: () => setWaiting(undefined),
  };
} // prettier-ignore
