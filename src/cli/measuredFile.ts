/** A measured record read line by line from a file or from standard input, in memory that does not grow with it. */
import { createReadStream } from 'node:fs';
import { TextDecoder } from 'node:util';
import { Fault } from '../base/fault.ts';
import { measuredWaveformOf, type MeasuredWaveform } from '../laws/flicker/measured.ts';
import { measuredReader, MOST_LINE, refuseLongLine, type MeasuredReading, type MeasuredRecord } from '../laws/flicker/measuredText.ts'; // prettier-ignore
import { STANDARD_INPUT, unreadable } from './shootFile.ts';

export interface MeasuredFileOptions {
  readonly unit_s?: number;
  readonly dark?: number;
}

/** Bytes as text, chunk by chunk: UTF-16 where it says so, UTF-8, else Western European, whose digits are the same. */
function textDecoder(): (chunk: Uint8Array) => string {
  let decoder: TextDecoder | undefined;
  return (chunk) => {
    decoder ??= new TextDecoder(encodingOf(chunk), { fatal: true });
    try {
      return decoder.decode(chunk, { stream: true });
    } catch {
      decoder = new TextDecoder('windows-1252');
      return decoder.decode(chunk, { stream: true });
    }
  };
}

function encodingOf([first, second]: Uint8Array): 'utf-16le' | 'utf-16be' | 'utf-8' {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  return first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
}

/** Lines of a stream one by one, whatever ends them. Throws a Fault for what is no text. */
async function* linesOfStream(bytes: AsyncIterable<Uint8Array>, name: string): AsyncGenerator<string> {
  const decoded = textDecoder();
  let rest = '';
  let line = 1;
  for await (const chunk of bytes) {
    const text = decoded(chunk);
    if (text.includes('\0')) throw notText(name);
    // A return at the very end may be the first half of a line's end.
    const parts = (rest + text).split(/\r\n|\n|\r(?!$)/);
    rest = parts.pop()!;
    if (rest.length > MOST_LINE) refuseLongLine(line + parts.length, rest.length);
    for (const part of parts) {
      if (part.length > MOST_LINE) refuseLongLine(line, part.length);
      yield part;
      line += 1;
    }
  }
  yield* rest.split('\r');
}

const notText = (where: string): Fault =>
  new Fault({ code: 'flicker.not-text', what: 'The file holds zero bytes, and is no text', where, mend: 'Save the record as text: a line for each time and value.' }); // prettier-ignore

async function recordOf(bytes: AsyncIterable<Uint8Array>, name: string, reading: MeasuredReading): Promise<() => MeasuredRecord> {
  const reader = measuredReader(reading);
  try {
    for await (const line of linesOfStream(bytes, name)) if (!reader.take(line)) break;
  } catch (error) {
    // What the record is refused for is told with the rest; what the disk does is not.
    if (error instanceof Fault && error.code !== 'flicker.not-text') return () => { throw error; };
    throw error;
  }
  return () => reader.record();
} // prettier-ignore

/** Refusals that a longer stretch of the record may answer. */
const TOO_SHORT: readonly string[] = ['flicker.few-periods', 'flicker.no-period'];

/**
 * The light over time that a file holds. Its first samples are enough for a lamp that repeats within them; where it does
 * not, the whole file is read again and thinned. Throws a Fault for a file that cannot be read, or is no text.
 */
export async function readMeasuredFile(
  file: string,
  input: AsyncIterable<Uint8Array>,
  { unit_s, dark = 0 }: MeasuredFileOptions,
): Promise<MeasuredWaveform> {
  const isInput = file === STANDARD_INPUT;
  const name = isInput ? 'standard input' : file;
  const unit = unit_s === undefined ? {} : { unit_s };
  try {
    const record = await recordOf(isInput ? input : createReadStream(file), name, unit);
    const first = measuredWaveformOf(record, { dark });
    if (first.ok || isInput || !TOO_SHORT.includes(first.refusal.code) || !record().isCut) return first;
    return measuredWaveformOf(await recordOf(createReadStream(file), name, { ...unit, isThinned: true }), { dark });
  } catch (error) {
    throw error instanceof Fault ? error : unreadable(file, error);
  }
}
