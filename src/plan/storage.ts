/** Whether the drives hold what will be kept. */
import type { Shoot } from '../document/schema.ts';
import { isUnread } from './unread.ts';
import { stopsOf } from './limits.ts';
import { keptTakes, unreadTakes } from './takes.ts';
import type { Margin, Missing, ShotPlan } from './types.ts';

/** The storage margin of the whole shoot, of the drives that recordings are saved to; none while no drive is named. */
export function storageMargin(shoot: Shoot, shots: readonly ShotPlan[]): readonly Margin[] {
  const here = Object.entries(shoot.kit.drives).filter(([, { availability }]) => availability === undefined || availability === 'here');
  const saves = here.filter(([, { holds }]) => holds !== 'copies');
  const drives = saves.length > 0 ? saves : here;
  const [firstId] = drives.map(([id]) => id);
  if (firstId === undefined || shots.length === 0) return [];
  const missing: Missing[] = [];
  let have = 0;
  for (const [id, drive] of drives) {
    // What cannot be read of the space used is not taken for an empty drive.
    const isUsedUnread = isUnread(drive, 'used');
    if (isUsedUnread) missing.push({ name: 'used_B', title: `What is on ${drive.title ?? id}`, path: `/kit/drives/${id}/used`, because: 'unread' });
    if (drive.capacity_B === undefined) missing.push({ name: 'capacity_B', title: `Capacity of ${drive.title ?? id}`, path: `/kit/drives/${id}/capacity`, because: isUnread(drive, 'capacity') ? 'unread' : 'absent' });
    else have += Math.max(0, drive.capacity_B - (drive.used_B ?? 0));
  }
  let need = 0;
  for (const { id, title, keptSize_B } of shots) {
    const unread = unreadTakes(shoot, id);
    if (unread !== undefined && missing.some(({ path }) => path === unread)) continue;
    if (unread !== undefined) missing.push({ name: 'keptTakeCount', title: `Takes saved of ${title}`, path: unread, because: 'unread' });
    else if (keptSize_B === undefined) missing.push({ name: 'keptSize_B', title: `What a take of ${title} weighs`, path: `/shots/${id}`, because: 'absent' });
    else need += keptSize_B * keptTakes(shoot, id);
  }
  const isKnown = missing.length === 0;
  const value = isKnown ? stopsOf('ratio', 'at-least', have, need) : NaN;
  return [
    {
      id: 'storage',
      title: 'Storage',
      isHard: true,
      state: !isKnown ? 'unknown' : value < 0 ? 'short' : 'spare',
      kind: 'bytes',
      sense: 'at-least',
      ...(isKnown ? { have, need, spare: have - need, stops: { value, low: value, high: value } } : {}),
      path: `/kit/drives/${firstId}/capacity`,
      haveName: 'capacity_B',
      needName: 'keptSize_B',
      missing,
      assumed: [],
    },
  ];
} // prettier-ignore
