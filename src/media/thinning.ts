/**
 * The rows that are read of a large picture, taken out of it before anything is copied: a filter that keeps every other row
 * only steps twice as far from one to the next. Some whole pictures, few and far apart, come aside.
 */
import type { RowsRead } from '../measure/rowsRead.ts';

/** Keeps of every so many rows, which is a power of two, the first after so many, which is less than four and than that. */
function everyOther(every: number, first: number): readonly string[] {
  const halvings = Math.log2(every);
  return Array.from({ length: halvings }, (_, i) => ((first >> i) & 1 ? 'field=bottom' : 'field=top'));
}

/**
 * Filters that leave those rows, kind after kind. Pictures are numbered anew, since those of one number are put together
 * again: their own times may be missing, or be the same.
 */
export function thinned({ step, judgedStep }: RowsRead, lift: string): string {
  const kind = (every: number, first: number) => [...everyOther(every, first), lift].join(',');
  const kinds = [kind(step, 0), kind(judgedStep, 1), kind(judgedStep, 2)];
  const taken = kinds.map((filters, i) => `[in${i}]${filters}[out${i}]`).join(';');
  return `settb=1,setpts=N,split=3[in0][in1][in2];${taken};[out0][out1][out2]vstack=3`;
}

/** Which frames come whole as well: from one on, the first, second, fourth, eighth …, counted from so many before reading begins. */
export interface Wholes {
  readonly before: number;
  readonly from: number;
}

export function isWhole({ before, from }: Wholes, frame: number): boolean {
  const at = frame + before;
  return at >= from && (at & (at + 1)) === 0;
}

/** The same for ffmpeg. */
export function selectWholes({ before, from }: Wholes): string {
  const at = `n+${before}`;
  return `select='gte(${at},${from})*not(bitand(${at},${at}+1))'`;
}
