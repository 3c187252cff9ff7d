/** The desk of footage with all that works for it: the queue of jobs, and folders in which copies and stills are kept. */
import { join } from 'node:path';
import type { ShootStore } from '../store/types.ts';
import { createFootageDesk } from './desk.ts';
import type { Folders } from './folders.ts';
import { createProxies } from './proxies.ts';
import { createQueue } from './queue.ts';
import type { Runners } from './queueTypes.ts';
import { createRunners } from './runners.ts';
import { createStills } from './stills.ts';
import { createTurns } from './turns.ts';
import type { FootageDesk } from './types.ts';

export interface OpenDeskParts {
  readonly store: ShootStore;
  readonly clock: { readonly now: () => Date };
  /** Folders that clips may be taken from. */
  readonly folders: Folders;
  /** Where small copies and stills are kept, which can be made again. */
  readonly keepIn: string;
  /** The measuring worker's program, where it is not the one built beside. */
  readonly worker?: URL;
}

/** What was left to do when other folders were open is not done now: of those nothing is read. */
function guarded(folders: Folders, { look, measure, proxy }: Runners): Runners {
  return {
    look: async (input, hooks) => {
      await folders.requireInside(input.path);
      return look(input, hooks);
    },
    measure: async (input, hooks) => {
      await folders.requireInside(input.path);
      return measure(input, hooks);
    },
    proxy: async (input, hooks) => {
      await folders.requireInside(input.path);
      return proxy(input, hooks);
    },
  };
}

/** Opens the desk and goes on with what was left to do. */
export function openDesk({ store, clock, folders, keepIn, worker }: OpenDeskParts): FootageDesk {
  // Of copies and stills together, two at once: measuring needs its share of the machine.
  const turns = createTurns(2);
  const proxies = createProxies({ folder: join(keepIn, 'copies'), turns });
  return createFootageDesk({
    store,
    folders,
    proxies,
    stills: createStills({ folder: join(keepIn, 'stills'), turns }),
    begin: (changed) =>
      createQueue({
        shelf: store.footage,
        runners: guarded(folders, createRunners({ proxies, ...(worker && { entry: worker }) })),
        clock: () => clock.now().toISOString(),
        changed,
      }),
  });
}
