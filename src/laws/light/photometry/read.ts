/** Which photometric format a file is of, by what is in it, and reading it so. */
import { Fault } from '../../../base/fault.ts';
import { readIes } from './ies.ts';
import { readLdt } from './ldt.ts';
import { reading, refuse, type PhotometryRead } from './refusal.ts';
import { linesOf } from './text.ts';
import { numberOf } from './words.ts';

/** Enough for any file's labels. */
const LOOKED_AT = 128 * 1024;

const whole = (line: string | undefined, least: number, most: number): boolean => {
  const value = numberOf((line ?? '').slice(0, 60).trim(), 'decimal');
  return value !== undefined && Number.isInteger(value) && value >= least && value <= most;
};

/** The first lines of a file; none of what is no text at all. */
function headOf(file: string | Uint8Array): readonly string[] {
  try {
    return linesOf(file.slice(0, LOOKED_AT)).lines;
  } catch (error) {
    if (error instanceof Fault) return [];
    throw error;
  }
}

/**
 * The format of a file by its content, whatever its name: a TILT line makes it IES; type, symmetry and counts on lines 2, 3,
 * 4 and 6 make it EULUMDAT; a version line makes it IES all the same; anything else is neither.
 */
export function photometryKind(file: string | Uint8Array): 'ies' | 'ldt' | undefined {
  const lines = headOf(file);
  if (lines.some((line) => /^\s{0,40}TILT\s{0,40}=/i.test(line.slice(0, 100)))) return 'ies';
  if (whole(lines[1], 0, 3) && whole(lines[2], 0, 4) && whole(lines[3], 1, 1e6) && whole(lines[5], 2, 1e6))
    return 'ldt';
  const first = lines.find((line) => line.trim() !== '') ?? '';
  return /^\s{0,40}IES(?:NA)?(?:[:\d\s]|$)/i.test(first.slice(0, 80)) ? 'ies' : undefined;
}

/** Reads a photometric file of either format; refuses what is neither. */
export function readPhotometry(file: string | Uint8Array): PhotometryRead {
  const kind = photometryKind(file);
  if (kind === 'ies') return readIes(file);
  if (kind === 'ldt') return readLdt(file);
  return reading(() =>
    refuse({
      code: 'photometry.unknown-format',
      what: 'The file is neither an IES nor a EULUMDAT file',
      line: 0,
      mend: 'Give the maker’s .ies or .ldt file, or describe the lamp by a reading in lux at a distance.',
    }),
  );
}
