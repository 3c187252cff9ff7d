import { useMemo, useState } from 'react';
import type { FootageEvent, FootageState } from '../../../record/footage.ts';
import { Button } from '../../parts/Button.tsx';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { makeId } from '../../state/browser.ts';
import type { OpenShoot } from '../../state/contract.ts';
import { zoneOf } from '../history/journal.ts';
import { above, rowsOf } from './folderRows.ts';
import { FolderList } from './FolderList.tsx';
import { NO_SHOT, shotChoices } from './shotChoices.ts';
import { useFolder, type FolderPlace } from './useFolder.ts';
import { whenWords } from './when.ts';

export interface AddClipsProps {
  readonly open: OpenShoot;
  readonly state: FootageState;
  /** The shot that is chosen at first. */
  readonly shotId: string | undefined;
  readonly onAdd: (added: readonly FootageEvent[], shotId: string | undefined) => void;
}

type Folders = FootageState['folders'];

function Opened({ folders, onOpen }: { readonly folders: Folders; readonly onOpen: (folder: string) => void }) {
  return (
    <ul className="folder-list">
      {folders.map(({ name, isThere }) => (
        <li key={name}>
          <button type="button" className="folder-row" disabled={!isThere} onClick={() => onOpen(name)}>
            <span className="folder-sign">
              <Icon name="forward" />
            </span>
            <span className="folder-name">{name}</span>
            {!isThere && <span className="folder-about">not there now: is its disk connected?</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Where one is, each folder above it a step back. */
function Trail({
  at,
  hasOthers,
  onGo,
}: {
  readonly at: FolderPlace;
  readonly hasOthers: boolean;
  readonly onGo: (at: FolderPlace | undefined) => void;
}) {
  const parts = at.path === '' ? [] : at.path.split('/');
  const step = (label: string, place: FolderPlace | undefined) => (
    <li key={label + (place?.path ?? '')}>
      <Button look="quiet" onClick={() => onGo(place)}>
        {label}
      </Button>
    </li>
  );
  return (
    <ol className="folder-trail" aria-label="Folders above">
      {hasOthers && step('All folders', undefined)}
      {parts.length > 0 && step(at.folder, { folder: at.folder, path: '' })}
      {parts.slice(0, -1).map((name, i) => step(name, { folder: at.folder, path: parts.slice(0, i + 1).join('/') }))}
      <li className="folder-here" aria-current="true">
        {parts.at(-1) ?? at.folder}
      </li>
    </ol>
  );
}

/** Chooses clips from the folders that were opened to the server, several at once, and the shot that they are takes of. */
export function AddClips({ open, state, shotId, onAdd }: AddClipsProps) {
  const { folders, clips } = state;
  const [only] = folders.length === 1 ? folders : [];
  const [at, setAt] = useState<FolderPlace | undefined>(only?.isThere ? { folder: only.name, path: '' } : undefined);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [shot, setShot] = useState(shotId ?? NO_SHOT);
  const { listing, failed, again } = useFolder(open.id, at);
  const rows = useMemo(() => (listing ? rowsOf(listing, clips) : []), [listing, clips]);
  const timeZone = zoneOf(open.shoot.shoot.timeZone);
  const goTo = (place: FolderPlace | undefined) => {
    setTicked(new Set());
    setAt(place);
  };
  const up = at && above(at.path);
  const chosen = rows.filter(({ at: path, isAdded }) => ticked.has(path) && !isAdded);
  const add = () => {
    const of = shot === NO_SHOT ? undefined : shot;
    // The oldest is added first, so that the newest stands on top of the list as well.
    const events = chosen.toReversed().map(({ at: path }): FootageEvent => ({ kind: 'added', clipId: makeId(), folder: at!.folder, path, ...(of !== undefined && { shotId: of }) }));
    onAdd(events, of);
  };
  return (
    <div className="add-clips">
      {at ? <Trail at={at} hasOthers={folders.length > 1} onGo={goTo} /> : <p>Clips are taken from the folders that were opened when Longsecond was started.</p>}
      {at && (
        <div className="folder-head">
          <p role="status">
            {failed ?? (listing === undefined ? 'Looking…' : rows.length === 0 ? 'Nothing that can be measured lies here: movies, numbered pictures and folders are shown.' : 'The newest first; looked at again every few seconds.')}
          </p>
          <Button look="quiet" onClick={again}>
            Look again
          </Button>
        </div>
      )}
      {at ? (
        <FolderList
          rows={rows}
          isEntered={folders.length > 1}
          ticked={ticked}
          sayWhen={(modified) => whenWords(modified, new Date(), { timeZone, hasSeconds: true })}
          onTick={(path, isTicked) => setTicked((before) => (isTicked ? new Set([...before, path]) : new Set([...before].filter((each) => each !== path))))}
          onInto={(path) => goTo({ folder: at.folder, path })}
          onUp={up !== undefined ? () => goTo({ folder: at.folder, path: up }) : folders.length > 1 ? () => goTo(undefined) : undefined}
        />
      ) : (
        <Opened folders={folders} onOpen={(folder) => goTo({ folder, path: '' })} />
      )}
      {listing !== undefined && listing.more > 0 && <p className="footage-quiet">{listing.more} more are not listed: open a folder within, or keep fewer in one folder.</p>}
      <div className="add-foot">
        <ChoiceField id="add-clips-shot" label="They are takes of" value={shot} choices={shotChoices(open.plan.shots)} onChoose={setShot} />
        <Button look="main" disabled={chosen.length === 0} onClick={add}>
          {chosen.length === 0 ? 'Tick what to add' : `Add ${chosen.length} ${chosen.length === 1 ? 'clip' : 'clips'}`}
        </Button>
      </div>
    </div>
  );
} // prettier-ignore
