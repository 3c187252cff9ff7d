/**
 * Size of one frame in memory, its pixels packed row by row.
 *
 *     frame = ⌈⌈W·b / 8⌉ / A⌉ · A · H + header
 *
 * W, H pixels across and down        b bits a pixel        A row alignment, bytes
 *
 * Uncompressed frames only. Where 10 or 12 bits are kept in two whole bytes, give 16.
 *
 * @source packed-pixels two 12-bit pixels in three bytes, four 10-bit pixels in five
 */
import { requireCount, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface FrameFormat {
  readonly widthCount: number;
  readonly heightCount: number;
  readonly bitDepthCount: number;
  /** Rows are padded to a multiple of this. */
  readonly rowAlignment_B?: number;
  readonly frameHeader_B?: number;
}

/** Bytes of one frame. Throws RangeError unless inputs are whole, positive (the header may be 0), bits at most 64. */
export function frameBytes(format: FrameFormat): number {
  const { widthCount, heightCount, bitDepthCount, rowAlignment_B = 1, frameHeader_B = 0 } = format;
  requireCount({ widthCount, heightCount, bitDepthCount, rowAlignment_B }, 1);
  requireCount({ frameHeader_B });
  requireWithin(1, 64, { bitDepthCount });
  const row_B = Math.ceil(Math.ceil((widthCount * bitDepthCount) / 8) / rowAlignment_B) * rowAlignment_B;
  const frameSize_B = row_B * heightCount + frameHeader_B;
  requireCount({ frameSize_B }, 1);
  return frameSize_B;
}

export const frameSize = law(frameBytes, {
  id: 'frame-size',
  title: 'Size of a frame',
  says: 'How much memory one uncompressed frame takes.',
  equation: 'frame = ⌈⌈W · b / 8⌉ / A⌉ · A · H + header',
  takes: {
    widthCount: { title: 'Pixels across', as: 'count' },
    heightCount: { title: 'Pixels down', as: 'count' },
    bitDepthCount: { title: 'Bits a pixel', as: 'count', note: '16 where 10 or 12 bits are kept in two bytes' },
    rowAlignment_B: { title: 'Rows padded to a multiple of', default: 1 },
    frameHeader_B: { title: 'Header of each frame', default: 0 },
  },
  gives: { frameSize_B: 'Size of a frame' },
  holds: 'Uncompressed frames of one value a pixel, as a single-chip sensor gives.',
  sources: ['packed-pixels'],
  words: ['megabytes', 'raw', 'bit depth', 'packed', 'memory'],
  example: { widthCount: 1920, heightCount: 1080, bitDepthCount: 12 },
});
