/** The footage of shoots: clips taken from opened folders, measured one after the other, and told with their plan. */
import { Fault } from '../base/fault.ts';
import { clipsOf, type ClipRecord, type FootageEvent } from '../record/footage.ts';
import { parseCurve } from '../measure/curveText.ts';
import type { ShootStore } from '../store/types.ts';
import { basisOf } from './clipBrief.ts';
import { openEntries } from './clipEntries.ts';
import { findClip } from './clipMark.ts';
import { missingFfmpeg } from './missingFfmpeg.ts';
import { listFolder } from './folderListing.ts';
import type { Folders } from './folders.ts';
import { planShots } from './plannedShots.ts';
import type { Proxies, Queue, Stills } from './queueTypes.ts';
import { throttle } from './throttle.ts';
import type { FootageDesk, MeasureInput, ProxyInput } from './types.ts';

/** Four times a second. */
const EVERY_ms = 250;

export interface DeskParts {
  readonly store: ShootStore;
  readonly folders: Folders;
  /** Begins the work on clips, going on with what was left of it; that tells whenever anything of it changed. */
  readonly begin: (changed: (shootId: string) => void) => Queue;
  readonly proxies: Pick<Proxies, 'find'>;
  readonly stills: Stills;
}

function unknownClip(shootId: string, clipId: string): Fault {
  return new Fault({
    code: 'footage.clip-unknown',
    what: 'There is no such clip in this shoot',
    where: `${shootId}/${clipId}`,
    mend: 'Look at the footage again, and add the clip from its folder.',
  });
}

/** Throws where what is said to have happened cannot have. */
function requireLawful(shootId: string, event: FootageEvent, clips: readonly ClipRecord[]): void {
  const { clipId } = event;
  if (event.kind !== 'added') {
    if (!clips.some(({ id }) => id === clipId)) throw unknownClip(shootId, clipId);
    if (event.kind === 'told' && typeof event.curve === 'string') parseCurve(event.curve);
    return;
  }
  const there = clips.find(({ id, folder, path }) => id === clipId || (folder === event.folder && path === event.path));
  if (there)
    throw new Fault({
      code: 'footage.clip-here',
      what: there.isAside ? 'This clip was added before, and set aside' : 'This clip was added before',
      where: `${there.folder}: ${there.path}`,
      mend: there.isAside ? 'Take it back from those set aside.' : 'Find it among the clips of this shoot.',
    });
}

export function createFootageDesk({ store, folders, begin, proxies, stills }: DeskParts): FootageDesk {
  const shelf = store.footage;
  const watchers = new Set<(shootId: string) => void>();
  const news = throttle({
    every_ms: EVERY_ms,
    told: (shootId) => {
      for (const changed of [...watchers]) changed(shootId);
    },
  });
  const queue = begin(news.tell);
  const plans = planShots(store);
  const entries = openEntries({ shelf, folders, proxies });
  // Clips are held against the plan as it now is.
  const unwatch = store.watch(news.tell);

  const clipsIn = (shootId: string) => clipsOf(shelf.happenings(shootId));

  const clipNamed = (shootId: string, clipId: string): ClipRecord => {
    const clip = clipsIn(shootId).find(({ id }) => id === clipId);
    if (clip) return clip;
    throw unknownClip(shootId, clipId);
  };

  const look: FootageDesk['look'] = async (shootId) => {
    const clips = clipsIn(shootId);
    const measured = new Map(shelf.measured(shootId).map((of) => [of.clipId, of]));
    const jobs = queue.jobs(shootId);
    const planned = clips.some(({ shotId }) => shotId !== undefined) ? await plans(shootId) : undefined;
    const missing = await missingFfmpeg();
    return {
      clips: await Promise.all(
        clips.map((clip) => {
          const stored = { clip, jobs: jobs.filter(({ clipId }) => clipId === clip.id), measured: measured.get(clip.id) };
          return entries.entry(shootId, stored, planned);
        }),
      ),
      folders: await folders.look(),
      ...(missing && { ffmpegMissing: missing }),
    };
  }; // prettier-ignore

  const measure = async (shootId: string, clipId: string, isAnew: boolean): Promise<void> => {
    const clip = clipNamed(shootId, clipId);
    const { path, mark } = await findClip(folders, clip);
    const shot = clip.shotId === undefined ? undefined : (await plans(shootId)).shot(clip.shotId);
    const input: MeasureInput = { path, basis: basisOf(mark, clip, shot) };
    queue.ask({ shootId, clipId, kind: 'measure', input: JSON.stringify(input), isAnew });
    news.tell(shootId);
  };

  return {
    look,

    happen: async (shootId, act) => {
      const { eventId, event } = act;
      const isSent = () => shelf.happenings(shootId).some((happening) => happening.eventId === eventId);
      if (event.kind === 'added' && !isSent()) await findClip(folders, event);
      // Asked again, as the same may have come in meanwhile.
      if (!isSent()) requireLawful(shootId, event, clipsIn(shootId));
      shelf.addHappening(shootId, act);
      // What was cut off between the two is made good when it is sent again.
      const isAsked = () => queue.jobs(shootId).some(({ clipId, kind }) => clipId === event.clipId && kind === 'measure');
      if (event.kind === 'added' && !isAsked())
        await measure(shootId, event.clipId, false).catch((error: unknown) => {
          if (!(error instanceof Fault)) throw error;
        });
      news.tell(shootId);
      return look(shootId);
    },

    folder: async (shootId, place) => {
      store.open(shootId);
      return listFolder(folders, place);
    },

    measure: async (shootId, clipId, { isAnew }) => {
      await measure(shootId, clipId, isAnew);
      return look(shootId);
    },

    stop: async (shootId, clipId) => {
      clipNamed(shootId, clipId);
      queue.stop(shootId, clipId);
      news.tell(shootId);
      return look(shootId);
    },

    measured: async (shootId, clipId) => {
      clipNamed(shootId, clipId);
      return Promise.resolve(shelf.measurement(shootId, clipId)?.body);
    },

    mark: async (shootId, clipId) => JSON.stringify(await findClip(folders, clipNamed(shootId, clipId))),

    still: async (shootId, { clipId, frame, width }) => {
      const { path, mark } = await findClip(folders, clipNamed(shootId, clipId));
      return stills.still({ path, file: mark, frame, width });
    },

    proxyFile: async (shootId, clipId) => {
      const at = await entries.where(clipNamed(shootId, clipId));
      return at && proxies.find({ path: at.path, file: at.mark });
    },

    makeProxy: async (shootId, clipId) => {
      const { path, mark } = await findClip(folders, clipNamed(shootId, clipId));
      const input: ProxyInput = { path, file: mark };
      if ((await proxies.find(input)) === undefined)
        queue.ask({ shootId, clipId, kind: 'proxy', input: JSON.stringify(input), isAnew: false });
      news.tell(shootId);
      return look(shootId);
    },

    watch: (changed) => {
      watchers.add(changed);
      return () => void watchers.delete(changed);
    },

    close: async () => {
      unwatch();
      news.stop();
      await queue.close();
    },
  };
} // prettier-ignore
