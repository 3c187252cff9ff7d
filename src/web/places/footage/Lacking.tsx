import type { FootageState } from '../../../record/footage.ts';
import { EmptyPlace } from '../../parts/EmptyPlace.tsx';

/** What has to be there before a clip can be measured, and how to get it. */
export function FfmpegLack({ ffmpegMissing }: Pick<FootageState, 'ffmpegMissing'>) {
  if (!ffmpegMissing) return null;
  return (
    <section className="footage-lack" aria-label="Clips cannot be read yet">
      <h2>Clips cannot be read yet</h2>
      <p>
        {ffmpegMissing.what}. {ffmpegMissing.mend}
      </p>
    </section>
  );
}

function Start() {
  return (
    <div className="footage-start">
      <p>Start it with the folder that the camera saves to:</p>
      <pre>
        <code>longsecond serve --footage FOLDER</code>
      </pre>
      <p>or, from a checkout:</p>
      <pre>
        <code>npm start -- --footage FOLDER</code>
      </pre>
      <p>
        It may be said several times, for several folders. Nothing in them is changed, and nothing outside them is read.
      </p>
    </div>
  );
}

/** No folder was opened, and there is no clip either. */
export function NoFolder() {
  return (
    <EmptyPlace
      title="No folder of footage is open"
      says="Clips that come back from the camera are measured here, and held against the plan, while the set still stands. Longsecond reads only folders that it is given."
    >
      <Start />
    </EmptyPlace>
  );
}

/** There are clips, and folders that they came from are not open, or not there. */
export function FolderLack({ folders }: Pick<FootageState, 'folders'>) {
  const gone = folders.filter(({ isThere }) => !isThere);
  if (folders.length === 0)
    return (
      <section className="footage-lack no-print" aria-label="No folder is open">
        <h2>No folder is open</h2>
        <p>What was measured is kept. To look at the pictures, measure again or add clips, a folder has to be opened.</p>
        <Start />
      </section>
    );
  if (gone.length === 0) return null;
  return (
    <section className="footage-lack no-print" aria-label="A folder is not there">
      <p>
        {gone.map(({ name }) => name).join(', ')} {gone.length === 1 ? 'is' : 'are'} not there now. Is the disk connected? It
        is looked for again by itself.
      </p>
    </section>
  );
} // prettier-ignore
