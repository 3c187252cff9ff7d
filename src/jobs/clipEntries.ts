/** Clips with all that is known of them: whether they are there, what is being done to them, and what was found. */
import { basename } from 'node:path';
import { Fault } from '../base/fault.ts';
import type { ClipBrief, ClipEntry, ClipJob, ClipRecord } from '../record/footage.ts';
import type { FootageShelf, JobRow, KeptMeasurement } from '../store/footageTypes.ts';
import type { PlannedShot } from '../turnover/measureAgainst.ts';
import { basisOf, briefOf, staleness } from './clipBrief.ts';
import { findClip } from './clipMark.ts';
import type { Folders } from './folders.ts';
import type { PlannedShots } from './plannedShots.ts';
import type { Proxies } from './queueTypes.ts';
import type { ClipAt, MeasureBasis } from './types.ts';

/** What a file is like is asked again only after this long: many look, and pictures of a sequence are counted. */
const MARK_HOLDS_ms = 1000;

type Measured = Omit<KeptMeasurement, 'body'>;

/** To find a copy counts as asking for it, which is written down: not at every look. */
const COPY_HOLDS_ms = 5000;

/** What the store has of a shoot's clips. */
export interface Stored {
  readonly clip: ClipRecord;
  readonly jobs: readonly JobRow[];
  readonly measured: Measured | undefined;
}

export interface Entries {
  /** Where a clip is; undefined where it is not there now. */
  readonly where: (clip: ClipRecord) => Promise<ClipAt | undefined>;
  readonly entry: (shootId: string, stored: Stored, planned: PlannedShots | undefined) => Promise<ClipEntry>;
}

export interface EntriesParts {
  readonly shelf: FootageShelf;
  readonly folders: Folders;
  readonly proxies: Pick<Proxies, 'find'>;
}

function jobFor({ kind, state, done, total, fault }: JobRow): ClipJob {
  return {
    kind,
    state,
    done,
    ...(total !== undefined && { total }),
    ...(fault && { fault: { code: fault.code, what: fault.what, where: fault.where, mend: fault.mend } }),
  };
}

/** Of a small copy that is not there, what comes of it. */
const MAKING = { waiting: 'waiting', running: 'making', failed: 'failed', done: 'none', stopped: 'none' } as const;

export function openEntries({ shelf, folders, proxies }: EntriesParts): Entries {
  const places = new Map<string, { readonly until_ms: number; readonly at: Promise<ClipAt | undefined> }>();
  const briefs = new Map<string, { readonly of: string; readonly brief: ClipBrief | undefined }>();

  const where = ({ folder, path }: ClipRecord): Promise<ClipAt | undefined> => {
    const key = `${folder}\0${path}`;
    const known = places.get(key);
    if (known && performance.now() < known.until_ms) return known.at;
    const at = findClip(folders, { folder, path }).catch((error: unknown) => {
      if (error instanceof Fault) return undefined;
      throw error;
    });
    places.set(key, { until_ms: performance.now() + MARK_HOLDS_ms, at });
    return at;
  };

  const copies = new Map<string, number>();

  const hasCopy = async ({ path, mark }: ClipAt): Promise<boolean> => {
    const key = JSON.stringify([path, mark]);
    if (performance.now() < (copies.get(key) ?? -Infinity)) return true;
    const isThere = (await proxies.find({ path, file: mark })) !== undefined;
    if (isThere) copies.set(key, performance.now() + COPY_HOLDS_ms);
    else copies.delete(key);
    return isThere;
  };

  /** Nothing where it was kept in a form that is no longer read: it is then measured again as if for the first time. */
  const made = (shootId: string, clipId: string, shot: PlannedShot | undefined): ClipBrief | undefined => {
    const kept = shelf.measurement(shootId, clipId);
    try {
      return kept && briefOf(kept, shot);
    } catch (error) {
      if (error instanceof Fault) return undefined;
      throw error;
    }
  };

  const brief = (shootId: string, { clip, measured }: Stored, planned: PlannedShots | undefined, at: ClipAt | undefined) => {
    if (!measured) return undefined;
    const shot = planned?.shot(clip.shotId);
    // Most edits leave a shot as it is planned; reading a measurement again would take longer than all the rest.
    const of = JSON.stringify([measured.at, measured.isWhole, shot]);
    const key = `${shootId}\0${clip.id}`;
    let known = briefs.get(key);
    if (known?.of !== of) {
      known = { of, brief: made(shootId, clip.id, shot) };
      briefs.set(key, known);
    }
    const then = JSON.parse(measured.basis) as MeasureBasis;
    const isStale = staleness(then, basisOf(at?.mark ?? then.file, clip, shot));
    return known.brief && { ...known.brief, ...(isStale !== undefined && { isStale }) };
  }; // prettier-ignore

  const entry: Entries['entry'] = async (shootId, stored, planned) => {
    const { clip, jobs } = stored;
    const at = await where(clip);
    const ofKind = (kind: JobRow['kind']): ClipJob | undefined => {
      const row = jobs.findLast((job) => job.kind === kind);
      return row && jobFor(row);
    };
    const [measuring, copying] = [ofKind('measure'), ofKind('proxy')];
    const isReady = at !== undefined && (await hasCopy(at));
    const found = brief(shootId, stored, planned, at);
    return {
      ...clip,
      name: basename(clip.path),
      isHere: at !== undefined,
      ...(at && at.mark.pictures === undefined && { size_B: at.mark.size_B }),
      ...(measuring && { measuring }),
      proxy: { state: isReady ? 'ready' : copying ? MAKING[copying.state] : 'none', ...(copying && { job: copying }) },
      ...(found && { brief: found }),
    };
  };

  return { where, entry };
}
