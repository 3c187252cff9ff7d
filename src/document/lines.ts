/** Lines of a text: where they begin and end, and which comments stand beside what. */

export function lineStart(text: string, at: number): number {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  return start === 0 && text.startsWith('\uFEFF') ? 1 : start;
}

/** Before the line end of the line that `at` is on. */
export function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  if (end < 0) return text.length;
  return end > at && text[end - 1] === '\r' ? end - 1 : end;
}

export function nextLine(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end + 1;
}

/** `at`, moved before the line end that it stands just after. */
export function beforeLineEnd(text: string, at: number): number {
  if (text[at - 1] !== '\n') return at;
  return text[at - 2] === '\r' ? at - 2 : at - 1;
}

export function columnOf(text: string, at: number): number {
  return at - lineStart(text, at);
}

/** Whether only blanks stand before `at` on its line. */
export function isFirstOnLine(text: string, at: number): boolean {
  return text.slice(lineStart(text, at), at).trim() === '';
}

/** Indentation of a line that holds nothing but a comment; undefined for any other line. */
function commentIndent(line: string): number | undefined {
  const match = /^( *)#/.exec(line);
  return match?.[1]?.length;
}

/** From a line's start, past the comment lines that follow, indented by `least` or more, blank lines among them included. */
export function pastComments(text: string, from: number, least: number): number {
  let end = from;
  for (let at = from; at < text.length;) {
    const next = nextLine(text, at);
    const line = text.slice(at, next);
    const indent = commentIndent(line);
    if (indent === undefined ? line.trim() !== '' : indent < least) break;
    at = next;
    if (indent !== undefined) end = at;
  }
  return end;
}

/** From a line's start, back over the comment lines directly above it that have its own indentation. */
export function backOverComments(text: string, from: number, indent: number): number {
  let start = from;
  while (start > 0) {
    const above = lineStart(text, start - 1);
    if (above >= start || commentIndent(text.slice(above, start)) !== indent) break;
    start = above;
  }
  return start;
}
