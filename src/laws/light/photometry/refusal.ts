/** Refusals of a photometric file: which line, why, and what to do. */
import { Fault, type FaultDetails } from '../../../base/fault.ts';
import type { Photometry } from './photometry.ts';

export interface Refusal extends FaultDetails {
  /** The line of the file concerned, from 1; 0 where it is the file as a whole. */
  readonly line: number;
}

export type PhotometryRead =
  { readonly ok: true; readonly photometry: Photometry } | { readonly ok: false; readonly refusal: Refusal };

/** Stops reading with a fault that names the line. */
export function refuse({ line, ...details }: Omit<Refusal, 'where'>): never {
  throw new Fault({ ...details, where: line > 0 ? `line ${line}` : 'the file', cause: { line } });
}

function lineOf({ cause }: Fault): number {
  return typeof cause === 'object' && cause !== null && 'line' in cause ? Number(cause.line) : 0;
}

/** Runs a reader; a refusal becomes a value. Anything else that throws is a bug and goes on. */
export function reading(read: () => Photometry): PhotometryRead {
  try {
    return { ok: true, photometry: read() };
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    const { code, what, where, mend } = error;
    return { ok: false, refusal: { code, what, where, mend, line: lineOf(error) } };
  }
}
