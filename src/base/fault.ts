/** Faults: failures a person can understand and mend. Anything else that throws is a bug. */

export interface FaultDetails {
  /** Stable, searchable name: `document.not-yaml`. Never reworded once released. */
  readonly code: string;
  /** One sentence of fact, with the numbers in it. */
  readonly what: string;
  /** The thing concerned: a document path, a file, a route. */
  readonly where: string;
  /** The next action, in the imperative. */
  readonly mend: string;
  /** Whether the same call may succeed if simply made again. */
  readonly retry?: boolean;
  readonly cause?: unknown;
}

export class Fault extends Error {
  override readonly name = 'Fault';
  readonly code: string;
  readonly what: string;
  readonly where: string;
  readonly mend: string;
  readonly retry: boolean;

  constructor({ code, what, where, mend, retry = false, cause }: FaultDetails) {
    super(`${what} (${where}). ${mend}`, { cause });
    this.code = code;
    this.what = what;
    this.where = where;
    this.mend = mend;
    this.retry = retry;
  }

  toJSON(): FaultDetails {
    const { code, what, where, mend, retry } = this;
    return { code, what, where, mend, retry };
  }
}
