/**
 * What stands between the items of a flow collection: commas, blanks and comments. Each comment is kept with the item
 * it belongs to, so that items can be taken out and put in.
 */

interface Piece {
  readonly start: number;
  readonly end: number;
}

/** An item of the collection as it will be: one that stands there already, or a new one's text. */
export type FlowItem = { readonly old: number } | { readonly text: string };

export interface Cut {
  readonly at: number;
  readonly end: number;
  readonly inserted: string;
}

interface Gap {
  readonly hasComma: boolean;
  /** The comment that ends the line of the item before. */
  readonly tail: string;
  /** What leads to the item after. */
  readonly lead: string;
}

/** The comma of a gap, if any, comments skipped. */
function commaIn(gap: string): number {
  for (let i = 0; i < gap.length; i += 1) {
    if (gap[i] === ',') return i;
    if (gap[i] === '#') {
      const end = gap.indexOf('\n', i);
      if (end < 0) return -1;
      i = end;
    }
  }
  return -1;
}

function gapOf(text: string): Gap {
  const comma = commaIn(text);
  const blanks = comma < 0 ? text : text.slice(0, comma) + text.slice(comma + 1);
  const newline = /\r?\n/.exec(blanks)?.index ?? -1;
  if (newline < 0) return { hasComma: comma >= 0, tail: '', lead: blanks };
  const line = blanks.slice(0, newline);
  return { hasComma: comma >= 0, tail: line.includes('#') ? line.trimEnd() : '', lead: blanks.slice(newline) };
}

/** The part of a lead that is not its item's own: comments set off by a blank line. */
function freePart(lead: string): string {
  const blank = [...lead.matchAll(/\n[ \t]*(?=\r?\n)/g)].at(-1);
  const free = blank ? lead.slice(0, blank.index) : '';
  return free.includes('#') ? free : '';
}

interface Collection {
  /** After its opening bracket. */
  readonly inside: number;
  /** At its closing bracket. */
  readonly close: number;
  readonly items: readonly Piece[];
}

/** The cuts that make the items of a flow collection into `wanted`, which keeps at least one of them, in order. */
export function flowCuts(
  text: string,
  { inside, close, items }: Collection,
  wanted: readonly FlowItem[],
): readonly Cut[] {
  const gaps = Array.from({ length: items.length + 1 }, (_, i) =>
    gapOf(text.slice(i === 0 ? inside : items[i - 1]!.end, items[i]?.start ?? close)),
  );
  const leads = gaps.slice(0, -1).map(({ lead }) => lead);
  const tailOf = (item: FlowItem): string => ('old' in item ? gaps[item.old + 1]!.tail : '');
  const newLead = newItemLead(leads);
  const leadOf = (item: FlowItem, place: number): string => {
    const isFirst = place === 0;
    if (!('old' in item)) return isFirst && !newLead.includes('\n') ? leads[0]! : newLead;
    const lead = leads[item.old]!;
    if (lead.includes('\n') || isFirst === (item.old === 0)) return lead;
    if (isFirst) return leads[0]!.includes('\n') ? lead : leads[0]!;
    return lead === '' ? newLead : lead;
  };
  const isKept = new Set(wanted.flatMap((item) => ('old' in item ? [item.old] : [])));
  const newline = /\r?\n/.exec(text.slice(inside, close))?.[0] ?? '\n';
  // A comment runs to the end of its line, so what follows one begins on the next.
  const after = (comments: string, lead: string): string =>
    /#[^\n]*$/.test(comments) && !/^\r?\n/.test(lead) ? comments + newline + lead : comments + lead;
  const cuts: Cut[] = [];
  let from = inside;
  let next = 0;
  let inserted = '';
  const orphansUpTo = (old: number): string => {
    let orphans = '';
    for (; next < old; next += 1) if (!isKept.has(next)) orphans += freePart(leads[next]!);
    return orphans;
  };
  wanted.forEach((item, place) => {
    const before = wanted[place - 1];
    const comments = before ? tailOf(before) : gaps[0]!.tail;
    if (before) inserted += ',';
    if ('old' in item) {
      const { start, end } = items[item.old]!;
      inserted += after(comments + orphansUpTo(item.old), leadOf(item, place));
      cuts.push({ at: from, end: start, inserted });
      [from, inserted, next] = [end, '', item.old + 1];
    } else inserted += after(comments, leadOf(item, place)) + item.text;
  });
  const last = gaps.at(-1)!;
  const comments = tailOf(wanted.at(-1)!) + orphansUpTo(items.length);
  inserted += (last.hasComma ? ',' : '') + after(comments, last.lead);
  cuts.push({ at: from, end: close, inserted });
  return cuts.filter((cut) => text.slice(cut.at, cut.end) !== cut.inserted);
}

/** How new items are set off: as the last of the old ones is. */
function newItemLead(leads: readonly string[]): string {
  const last = leads.at(-1) ?? '';
  const line = /\r?\n[^\n]*$/.exec(last)?.[0];
  if (line !== undefined) return line.includes('#') ? '\n' : line;
  return leads.length > 1 ? last : ' ';
}
