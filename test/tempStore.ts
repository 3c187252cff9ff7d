/** Stores in folders of their own, closed and removed when the test that asked for them is over. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openStore } from '../src/store/openStore.ts';
import type { ShootStore } from '../src/store/shootStore.ts';

export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export async function tempStore(folder = tempFolder()): Promise<ShootStore> {
  const store = await openStore({ folder });
  onTestFinished(() => store.close());
  return store;
}

/** Small, with what an editor of text could lose: comments, odd spacing, both kinds of map. */
export const SMALL_SHOOT = `longsecond: 1
# Bring the good whisk.
shoot:
  title: Milk and thunder   # working title
  seed: 7

kit:
  lenses:
    near: { title: Near one, focalLength: 100 mm,  widest: T2.8 }
    far:
      title: Far one
      focalLength: 180 mm

shots:
  splash:
    title: The splash
    shutter: 1/2000 s  # as tested
    lens: near
  crown: { title: The crown,   shutter: 172.8° }
`;

/** Moments a second apart, so that every row has a time of its own. */
export function steppingClock(start = '2027-03-09T07:30:00.000Z'): { readonly now: () => Date } {
  let count = 0;
  return { now: () => new Date(Date.parse(start) + 1000 * count++) };
}
