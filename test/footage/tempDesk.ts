/** A desk of footage over a store and a folder of its own, with a queue that does nothing but what a test has it do. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { createFootageDesk } from '../../src/jobs/desk.ts';
import { openFolders } from '../../src/jobs/folders.ts';
import type { JobAsked, Proxies, Queue, StillFrom, Stills } from '../../src/jobs/queueTypes.ts';
import type { FootageDesk, MeasureInput } from '../../src/jobs/types.ts';
import type { JobRow } from '../../src/store/footageTypes.ts';
import type { ShootStore } from '../../src/store/types.ts';
import { writeKept } from '../../src/turnover/keptMeasurement.ts';
import type { MeasuredClip } from '../../src/turnover/measureReply.ts';
import { tempFolder, tempStore } from '../tempStore.ts';
import { measured } from './measured.ts';
import { synthetic } from './synthetic.ts';

const AT = '2027-03-09T07:30:00.000Z';

let kept: MeasuredClip['measurement'] | undefined;

/** A drop at 1,000 fps, measured once for all. */
export function measuredDrop(): MeasuredClip {
  const drop = { radius_px: 6, bright: 0.9, x_px: () => 60, y_px: (t_s: number) => -12 + 1500 * Math.max(0, t_s - 0.04) }; // prettier-ignore
  kept ??= measured(synthetic('drop', { width: 120, height: 72, rate_fps: 1000, frames: 140, exposure_s: 0.0005, seed: 3, lamps: [{ light: { kind: 'steady' } }], drop })); // prettier-ignore
  return {
    name: 'SYNTHETIC drop.mkv',
    codec: 'ffv1',
    pixelFormat: 'gray12le',
    measurement: kept,
    frameRateBasis: 'plan',
    curve: 'linear',
    curveBasis: 'given',
    isWhole: true,
    notes: [],
  };
}

export interface HeldQueue extends Queue {
  readonly asked: JobAsked[];
  /** Changes how the job of a clip stands. */
  readonly set: (clipId: string, change: Partial<JobRow>) => void;
  /** As if the clip had been measured just now with what was asked. */
  readonly measure: (clipId: string, clip?: Partial<MeasuredClip>) => void;
}

function heldQueue(store: ShootStore, changed: (shootId: string) => void): HeldQueue {
  const { footage: shelf } = store;
  const asked: JobAsked[] = [];
  const jobOf = (clipId: string) => shelf.jobs().find((job) => job.clipId === clipId && job.kind === 'measure')!;
  const set: HeldQueue['set'] = (clipId, change) => {
    const job = { ...jobOf(clipId), ...change };
    shelf.putJob(job);
    changed(job.shootId);
  };
  return {
    asked,
    set,
    ask: (job) => {
      asked.push(job);
      const { shootId, clipId, kind, input } = job;
      const row: JobRow = { id: `${shootId}/${clipId}/${kind}`, shootId, clipId, kind, state: 'waiting', input, done: 0, at: AT };
      shelf.putJob(row);
      return row;
    },
    stop: (_, clipId) => set(clipId, { state: 'stopped' }),
    jobs: (shootId) => shelf.jobs(shootId),
    close: () => Promise.resolve(),
    measure: (clipId, clip = {}) => {
      const { shootId, input } = jobOf(clipId);
      const { basis } = JSON.parse(input) as MeasureInput;
      const whole = { ...measuredDrop(), ...clip };
      shelf.keepMeasurement(shootId, clipId, { at: AT, isWhole: whole.isWhole, basis: JSON.stringify(basis), body: writeKept(whole) });
      set(clipId, { state: 'done' });
    },
  };
} // prettier-ignore

export interface TempDesk {
  readonly desk: FootageDesk;
  readonly store: ShootStore;
  readonly queue: HeldQueue;
  /** The one folder that is open, called `day`: a.mov, b.mov and takes/c.mov. */
  readonly folder: string;
  readonly stillsAsked: StillFrom[];
  /** Small copies that are there, by the path of their clip. */
  readonly copies: Map<string, string>;
}

export async function tempDesk({ store, text }: { readonly store?: ShootStore; readonly text: string }): Promise<TempDesk> {
  const held = store ?? (await tempStore());
  if (!store) held.bringIn({ editId: 'import-0001', at: AT, text, id: 's' });
  const folder = join(tempFolder(), 'day');
  mkdirSync(join(folder, 'takes'), { recursive: true });
  for (const name of ['a.mov', 'b.mov', 'takes/c.mov']) writeFileSync(join(folder, name), name);
  const stillsAsked: StillFrom[] = [];
  const copies = new Map<string, string>();
  const proxies: Pick<Proxies, 'find'> = { find: ({ path }) => Promise.resolve(copies.get(path)) };
  const stills: Stills = {
    still: (asked) => {
      stillsAsked.push(asked);
      return Promise.resolve(Uint8Array.of(0xff, 0xd8, asked.frame, 0xff, 0xd9));
    },
  };
  let queue: HeldQueue | undefined;
  const desk = createFootageDesk({
    store: held,
    folders: openFolders([folder]),
    begin: (changed) => (queue = heldQueue(held, changed)),
    proxies,
    stills,
  });
  onTestFinished(() => desk.close());
  return { desk, store: held, queue: queue!, folder, stillsAsked, copies };
} // prettier-ignore
