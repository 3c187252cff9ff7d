/**
 * Where recordings go in the day: how fast they leave each camera, how fast they are copied and verified, and which
 * drives fill. One recording is saved at a time over one link, and one is copied at a time: read once, written to every
 * copy, then read back from all of them.
 */
import { ethernetPayload_B_per_s } from '../../laws/buffer/save.ts';
import type { Shoot } from '../../document/schema.ts';
import { isUnread } from '../unread.ts';
import { assume, miss, type Gathered } from './usual.ts';

type Drive = Shoot['kit']['drives'][string];

export interface DriveAt {
  readonly id: string;
  readonly title: string;
  readonly holds: 'saves' | 'copies';
  /** NaN where its capacity is not known. */
  readonly free_B: number;
}

export interface DayData {
  /** Drives that take what leaves the cameras, in the order they fill. */
  readonly saves: readonly DriveAt[];
  /** Drives of each copy, in the order they fill. */
  readonly copies: readonly (readonly DriveAt[])[];
  /** Copies asked for. */
  readonly copyCount: number;
  /** Seconds a byte: copied to all, then verified on all. Zero where none is made, or it is not known. */
  readonly copy_s_per_B: number;
  /** Half the width of the band of saving, of itself, by camera; and the rate, NaN where not known. */
  readonly saveRateOf: (camera: string) => { readonly rate_B_per_s: number; readonly spreadFraction: number };
  /** Names the one thing after the other goes over, so that what shares it waits. */
  readonly linkOf: (camera: string) => string;
}

const isHere = ({ availability }: Drive): boolean => availability === undefined || availability === 'here';

function driveAt(id: string, drive: Drive): DriveAt {
  const isKnown = drive.capacity_B !== undefined && !isUnread(drive, 'used');
  const free_B = isKnown ? Math.max(0, drive.capacity_B - (drive.used_B ?? 0)) : NaN;
  return { id, title: drive.title ?? id, holds: drive.holds ?? 'saves', free_B };
}

const slowest = (rates: readonly (number | undefined)[]): number => Math.min(...rates.map((rate) => rate ?? Infinity));

/** Line rates of Ethernet, in gigabits a second. */
const ETHERNET_Gb_per_s = [1, 2.5, 5, 10, 25, 40, 50, 100];
const SAME = 1e-6;

/** What a link carries. One that is written with the rate of an Ethernet line carries what TCP leaves of it. */
function carried_B_per_s(shoot: Shoot, id: string | undefined, gathered: Gathered): number {
  const link = id === undefined ? undefined : shoot.kit.links[id];
  const rate = link?.rate_B_per_s;
  if (id === undefined || rate === undefined) return Infinity;
  if (!ETHERNET_Gb_per_s.some((line) => Math.abs(rate / (line * 1.25e8) - 1) < SAME)) return rate;
  const payload = ethernetPayload_B_per_s({ lineRate_B_per_s: rate });
  const title = `What ${link!.title ?? id} carries`;
  assume(gathered, {
    name: 'rate_B_per_s',
    title,
    value: payload,
    kind: 'byteRate',
    why: 'its rate is that of an Ethernet line, of which TCP leaves this at most',
    path: `/kit/links/${id}/rate`,
  });
  return payload;
}

/** How fast streams go over the links they share: each its part of the slowest. */
function linkShare(shoot: Shoot, ends: readonly Drive[], gathered: Gathered): number {
  const streams = new Map<string, number>();
  for (const { link } of ends) if (link !== undefined) streams.set(link, (streams.get(link) ?? 0) + 1);
  return slowest([...streams].map(([link, count]) => carried_B_per_s(shoot, link, gathered) / count));
}

const DEFAULT_SPREAD = 0.1;

/** The drives, links and rates of a shoot as its day uses them. */
export function dataOf(shoot: Shoot, gathered: Gathered): DayData {
  const { drives, cameras } = shoot.kit;
  const here = Object.entries(drives).filter(([, drive]) => isHere(drive));
  const saves = here.filter(([, { holds }]) => holds !== 'copies').map(([id, drive]) => driveAt(id, drive));
  const forCopies = here.filter(([, { holds }]) => holds === 'copies').map(([id, drive]) => driveAt(id, drive));
  const copyCount = shoot.shoot.day.copyCount ?? Math.min(2, forCopies.length);
  const made = Math.min(copyCount, forCopies.length);
  const copies = Array.from({ length: made }, (_, copy) => forCopies.filter((_drive, i) => i % made === copy));
  const source = saves[0] ? drives[saves[0].id] : undefined;
  const targets = copies.map(([first]) => drives[first!.id]!);
  const copyRate_B_per_s = source ? slowest([source.readRate_B_per_s ?? source.writeRate_B_per_s, ...targets.map(({ writeRate_B_per_s }) => writeRate_B_per_s), linkShare(shoot, [source, ...targets], gathered)]) : Infinity;
  const verifyRate_B_per_s = slowest([...targets.map((target) => target.readRate_B_per_s ?? target.writeRate_B_per_s), linkShare(shoot, targets, gathered)]);
  for (const { id, title, free_B } of [...saves, ...copies.flat()]) {
    const [drive, at] = [drives[id]!, `/kit/drives/${id}`];
    const lack = (name: string, what: string, key: string): void => miss(gathered, { name, title: what, path: `${at}/${key}`, because: isUnread(drive, key) ? 'unread' : 'absent' });
    if (Number.isNaN(free_B)) lack('capacity_B', `Free room on ${title}`, isUnread(drive, 'used') ? 'used' : 'capacity');
    if (targets.includes(drive) && drive.writeRate_B_per_s === undefined) lack('writeRate_B_per_s', `How fast ${title} writes`, 'writeRate');
  }
  const perByte = (rate: number): number => (made > 0 && Number.isFinite(rate) ? 1 / rate : 0);
  return {
    saves,
    copies,
    copyCount,
    copy_s_per_B: perByte(copyRate_B_per_s) + perByte(verifyRate_B_per_s),
    saveRateOf: (id) => {
      const camera = cameras[id];
      const rate = camera?.saveRate_B_per_s;
      if (rate === undefined) return { rate_B_per_s: NaN, spreadFraction: 0 };
      const rate_B_per_s = slowest([rate, source?.writeRate_B_per_s, carried_B_per_s(shoot, camera?.link, gathered), carried_B_per_s(shoot, source?.link, gathered)]);
      const spread = camera?.saveRateSpread_B_per_s;
      return { rate_B_per_s, spreadFraction: spread === undefined ? DEFAULT_SPREAD : spread / rate };
    },
    linkOf: (id) => source?.link ?? cameras[id]?.link ?? `camera ${id}`,
  };
} // prettier-ignore
