/** Problems: what is written but cannot be used. They are listed and stored as typed, never thrown. */

export interface Problem {
  /** Stable, searchable name: `unit.missing`. Never reworded once released. */
  readonly code: string;
  /** JSON Pointer into the written shoot. */
  readonly path: string;
  /** One sentence: what was found and what was expected. */
  readonly what: string;
  /** The valid name nearest to what was found. */
  readonly near?: string;
  /** Where it stands in the text, counted from 1. */
  readonly line?: number;
  readonly column?: number;
}

/** One line for eyes: `line 12, column 5: /shots/pour-1/shutter: … (did you mean …?)`. */
export function showProblem({ path, what, near, line, column }: Problem): string {
  const place = line === undefined ? '' : `line ${line}${column === undefined ? '' : `, column ${column}`}: `;
  const meant = near === undefined ? '' : ` (did you mean ${near}?)`;
  return `${place}${path === '' ? 'the document' : path}: ${what}${meant}`;
}
