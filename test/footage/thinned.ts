/** Frames of which only the rows that are read are there, picked out of whole ones one by one. */
import type { Plane } from '../../src/measure/frameReader.ts';
import type { RowsRead } from '../../src/measure/rowsRead.ts';

type Codes = Uint8Array | Uint16Array;

/** The code values of those rows, kind after kind. */
export function thinnedCodes(data: Codes, width: number, height: number, { step, judgedStep }: RowsRead): Codes {
  const rows = Array.from({ length: height }, (_, y) => y);
  const taken = [
    ...rows.filter((y) => y % step === 0),
    ...rows.filter((y) => y % judgedStep === 1),
    ...rows.filter((y) => y % judgedStep === 2),
  ];
  const codes = data.slice(0, taken.length * width);
  taken.forEach((y, i) => codes.set(data.subarray(y * width, (y + 1) * width), i * width));
  return codes;
}

export function thinned({ data, width, height }: Plane, rowsRead: RowsRead): Plane {
  return { data: thinnedCodes(data, width, height, rowsRead), width, height, rowsRead };
}
