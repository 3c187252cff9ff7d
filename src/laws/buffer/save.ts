/**
 * Moving a take out of the camera: how much is kept, how fast it can go, how long it takes.
 *
 *     kept = B·F·T        save time = size / min(link, media)        TCP over Ethernet = G·(MTU − 40 − 12) / (MTU + 38)
 *
 * B bytes a frame        F frame rate, fps        T real time kept, s        G line rate, bytes a second
 *
 * Of every Ethernet frame 38 bytes are wire, not content: preamble 8, header 14, check 4, gap 12. IPv4 and TCP take 40
 * more, TCP's timestamps 12. Ceilings all: a measured copy goes before any of them.
 *
 * @source ethernet-payload the sums, with their percentages
 * @source frame-rate-practice the rest
 */
import { requireCount, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import type { FrameStream } from './recordTime.ts';

/** Time to save, held up by the slower of link and medium. Throws RangeError outside positive inputs. */
export function saveTime_s(given: {
  readonly size_B: number;
  readonly linkRate_B_per_s: number;
  /** Left out where the medium keeps up with the link. */
  readonly mediaRate_B_per_s?: number;
}): number {
  const { size_B, linkRate_B_per_s, mediaRate_B_per_s = linkRate_B_per_s } = given;
  requirePositive({ size_B, linkRate_B_per_s, mediaRate_B_per_s });
  return size_B / Math.min(linkRate_B_per_s, mediaRate_B_per_s);
}

/** Size of what is kept of a take. Throws RangeError outside positive inputs. */
export function keptSize_B({
  frameSize_B,
  frameRate_fps,
  keptTime_s,
}: FrameStream & { readonly keptTime_s: number }): number {
  requirePositive({ frameSize_B, frameRate_fps, keptTime_s });
  return frameSize_B * frameRate_fps * keptTime_s;
}

/** Bytes a second that recording makes. Throws RangeError outside positive inputs. */
export function dataRate_B_per_s({ frameSize_B, frameRate_fps }: FrameStream): number {
  requirePositive({ frameSize_B, frameRate_fps });
  return frameSize_B * frameRate_fps;
}

const WIRE_B = 38;
const IPV4_TCP_B = 40;
const TIMESTAMPS_B = 12;

/** The most that TCP over IPv4 carries on an Ethernet link. Throws RangeError for a line rate not positive, or an MTU not whole or outside 68 to 65,535 bytes. */
export function ethernetPayload_B_per_s(given: {
  readonly lineRate_B_per_s: number;
  readonly mtu_B?: number;
  readonly timestamps?: boolean;
}): number {
  const { lineRate_B_per_s, mtu_B = 1500, timestamps = true } = given;
  requirePositive({ lineRate_B_per_s });
  requireCount({ mtu_B });
  requireWithin(68, 65_535, { mtu_B });
  const content_B = mtu_B - IPV4_TCP_B - (timestamps ? TIMESTAMPS_B : 0);
  return (lineRate_B_per_s * content_B) / (mtu_B + WIRE_B);
}

export const saveTime = law(saveTime_s, {
  id: 'save-time',
  title: 'Time to save',
  says: 'How long a take needs to leave the camera’s memory.',
  equation: 't = size / min(link, media)',
  takes: {
    size_B: 'Size to save',
    linkRate_B_per_s: 'Rate of the link',
    mediaRate_B_per_s: { title: 'Write rate of the medium', note: 'the link’s own rate where the medium keeps up' },
  },
  gives: { saveTime_s: 'Time to save' },
  holds: 'Steady rates; caches that fill up and disks that slow towards the middle make it longer.',
  sources: ['frame-rate-practice'],
  words: ['offload', 'download', 'transfer', 'reset', 'copy'],
  example: { size_B: 24e9, linkRate_B_per_s: 1.1768e9, mediaRate_B_per_s: 0.9e9 },
});

export const keptSize = law(keptSize_B, {
  id: 'kept-size',
  title: 'Size of what is kept',
  says: 'How much data the kept part of a take is.',
  equation: 'kept = B · F · T',
  takes: { frameSize_B: 'Size of a frame', frameRate_fps: 'Frame rate', keptTime_s: 'Time kept, on the set' },
  gives: { size_B: 'Size' },
  holds: 'Uncompressed frames of one size.',
  sources: ['frame-rate-practice'],
  words: ['trim', 'clip', 'storage', 'gigabytes'],
  example: { frameSize_B: 13_271_040, frameRate_fps: 1000, keptTime_s: 0.6 },
});

export const dataRate = law(dataRate_B_per_s, {
  id: 'data-rate',
  title: 'Data rate of recording',
  says: 'How many bytes a second the camera makes.',
  equation: 'rate = B · F',
  takes: { frameSize_B: 'Size of a frame', frameRate_fps: 'Frame rate' },
  gives: { dataRate_B_per_s: 'Data rate' },
  holds: 'Uncompressed frames of one size.',
  sources: ['frame-rate-practice'],
  words: ['bandwidth', 'gigabytes per second', 'throughput'],
  example: { frameSize_B: 3_110_400, frameRate_fps: 2000 },
});

export const ethernetPayload = law(ethernetPayload_B_per_s, {
  id: 'ethernet-payload',
  title: 'Most an Ethernet link carries',
  says: 'The best a copy over the network can do, before disks and drives hold it up.',
  equation: 'payload = G · (MTU − 40 − 12) / (MTU + 38)',
  takes: {
    lineRate_B_per_s: { title: 'Line rate', note: '10 Gb/s for ten-gigabit Ethernet' },
    mtu_B: { title: 'Largest packet', default: 1500, note: '9000 with jumbo frames' },
    timestamps: { title: 'TCP timestamps', as: 'flag', default: true },
  },
  gives: { payload_B_per_s: 'Payload' },
  holds: 'TCP over IPv4, no VLAN tag, every packet full, one link to itself; real copies reach 0.7 to 0.9 of it.',
  sources: ['ethernet-payload'],
  words: ['network', 'GbE', 'offload', 'bandwidth', 'jumbo frames'],
  example: { lineRate_B_per_s: 1.25e9 },
});
