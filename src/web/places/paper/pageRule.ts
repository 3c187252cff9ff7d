/** The page that the browser prints on: its size, its margins, and a foot like that of the PDF. */

const SIZES = { a4: 'A4', letter: 'letter' } as const;

/** Words within a CSS string, on one line. */
function quoted(words: string): string {
  const escaped = words.replace(/[\\"]/g, '\\$&').replace(/[\p{Cc}<]/gu, ' ');
  return `"${escaped}"`;
}

export interface PageFoot {
  readonly size: 'a4' | 'letter';
  /** What is printed, of which revision. */
  readonly says: string;
}

export function pageRule({ size, says }: PageFoot): string {
  const type = "font: 8.2pt 'Atkinson Hyperlegible Next Variable', sans-serif; color: #474747;";
  return `@page {
  size: ${SIZES[size]} portrait;
  margin: 11mm 14mm 16mm;
  @bottom-left { content: ${quoted(says)}; ${type} }
  @bottom-right { content: counter(page) " of " counter(pages); ${type} }
}`;
}
