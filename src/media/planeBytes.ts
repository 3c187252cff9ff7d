/** How the bytes of a frame, whole or of some rows, are code values. */
import type { Plane } from '../measure/frameReader.ts';
import { rowsIn, type RowsRead } from '../measure/rowsRead.ts';
import { codesOfFloats } from './pixels.ts';
import type { Clip } from './probe.ts';

type Pictures = Pick<Clip, 'plane' | 'width' | 'height'>;

/** Bytes of a frame, whole or of these rows. */
export function bytesOf({ plane, width, height }: Pictures, rowsRead: RowsRead | undefined): number {
  const perPixel_B = plane.isFloat ? 4 : plane.bitDepth > 8 ? 2 : 1;
  return rowsIn(rowsRead, height) * width * perPixel_B;
}

/** What views the bytes of a frame as code values. */
export function viewOf(
  buffer: ArrayBuffer,
  { plane, width, height }: Pictures,
  rowsRead: RowsRead | undefined,
): () => Plane {
  const size = { width, height, ...(rowsRead && { rowsRead }) };
  if (plane.isFloat) {
    const light = new Float32Array(buffer);
    const data = new Uint16Array(light.length);
    return () => {
      codesOfFloats(light, data);
      return { data, ...size };
    };
  }
  const data = plane.bitDepth > 8 ? new Uint16Array(buffer) : new Uint8Array(buffer);
  return () => ({ data, ...size });
}
