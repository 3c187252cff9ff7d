/** Strips onto pages: kept with what they belong to, heads repeated overleaf, room filled where that is wanted. */
import { moved, unread, type Op } from './ops.ts';
import type { Strip } from './strip.ts';

export interface PageRoom {
  readonly top_pt: number;
  readonly bottom_pt: number;
}

/** Strips up to and with the first that need not hold on to the next. */
function chunksOf(strips: readonly Strip[]): readonly (readonly Strip[])[] {
  const chunks: Strip[][] = [];
  let open: Strip[] = [];
  for (const strip of strips) {
    open.push(strip);
    if (strip.holdsNext === true) continue;
    chunks.push(open);
    open = [];
  }
  return open.length > 0 ? [...chunks, open] : chunks;
}

const SLACK_pt = 0.01;

/** The drawing of each page. What is taller than a page alone runs off it, so whoever makes strips keeps them lower. */
export function paginate(strips: readonly Strip[], { top_pt, bottom_pt }: PageRoom): readonly (readonly Op[])[] {
  const pages: Op[][] = [[]];
  let y = top_pt;
  let last: Strip | undefined;
  const isFresh = () => y === top_pt;
  const turn = () => {
    pages.push([]);
    y = top_pt;
  };
  const heightOf = (chunk: readonly Strip[]): number =>
    chunk.reduce((sum, strip, i) => sum + strip.height_pt + (i === 0 && isFresh() ? 0 : strip.before_pt), 0);
  const place = (strip: Strip) => {
    const page = pages[pages.length - 1]!;
    const { head } = strip;
    if (isFresh() && head && last !== undefined && (last === head || last.head === head)) {
      page.push(...unread(moved(head.ops, y)));
      y += head.height_pt;
    } else if (!isFresh()) y += strip.before_pt;
    page.push(...moved(strip.ops, y));
    y += strip.height_pt;
    last = strip;
  };
  for (const chunk of chunksOf(strips)) {
    const [first] = chunk;
    if (first?.breaks === true && !isFresh()) turn();
    if (!isFresh() && y + heightOf(chunk) > bottom_pt + SLACK_pt) {
      if (first?.isOptional === true) continue;
      turn();
    }
    for (const strip of chunk) {
      if (!isFresh() && y + strip.before_pt + strip.height_pt > bottom_pt + SLACK_pt) turn();
      place(strip);
    }
    const end = chunk[chunk.length - 1]!;
    if (end.fills === true) while (y + end.before_pt + end.height_pt <= bottom_pt + SLACK_pt) place(end);
  }
  return pages;
}
