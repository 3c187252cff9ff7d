/**
 * Edits carried into the text node by node. What the new shoot says differently is found by comparing it with the old,
 * and only those characters change; comments stay unless what they belong to is taken out. The result is read back:
 * where it would not say the same, the part around the edit is printed anew, so the text is never wrong.
 */
import { Fault } from '../base/fault.ts';
import { flowCuts, type Cut, type FlowItem } from './flowGaps.ts';
import { backOverComments, beforeLineEnd, columnOf, isFirstOnLine, lineEnd, lineStart, nextLine, pastComments } from './lines.ts'; // prettier-ignore
import { applyPatch, type Patch } from './patch.ts';
import { pointerTo } from './pointer.ts';
import { printBlock, printEntry, printFlow, printFlowLines, printItem, printKey, printScalar, type Printed, type PrintStyle, type Quotes } from './print.ts'; // prettier-ignore
import { applySplices, type Splice } from './splice.ts';
import { versionOf } from './versions.ts';
import { DEEPEST, depthOf, isList, isRecord, isSame, memberOf, tooDeep, type Written, type WrittenList, type WrittenRecord } from './written.ts'; // prettier-ignore
import { parseTree, type ListNode, type MapEntry, type MapNode, type TextNode, type TextTree } from './yamlTree.ts';

export { applySplices, undoSplices, type Splice } from './splice.ts';

export interface TextEdit {
  readonly text: string;
  /** What changed, in order: `applySplices(before, splices)` is the text, `undoSplices(splices)` takes it back. */
  readonly splices: readonly Splice[];
  /** What the text now says, sharing with `applyPatch`'s input all that did not change. */
  readonly written: Written;
}

/** Where a value stands: what it follows and how it is set. */
type Slot =
  | { readonly where: 'root' }
  | {
      readonly where: 'block';
      readonly isItem: boolean;
      /** Column of the key or dash. */
      readonly indent: number;
      /** After the colon or dash. */
      readonly after: number;
    }
  | {
      readonly where: 'flow';
      readonly after: number;
      readonly needsColon: boolean;
      readonly isOverLines: boolean;
    };

interface Work {
  readonly tree: TextTree;
  readonly text: string;
  readonly style: PrintStyle;
  readonly cuts: Cut[];
  /** The place to print anew whatever the difference, when carrying it node by node did not do. */
  readonly reprint: readonly string[] | undefined;
  /** Entries by their written value: what is moved takes its comments along. */
  readonly sources: ReadonlyMap<Written, MapEntry>;
}

const MOVE_OPS: ReadonlySet<string> = new Set(['move', 'copy']);

function isCarried(work: Work, path: readonly string[]): boolean {
  const { reprint } = work;
  return reprint === undefined || reprint.length > path.length || reprint.some((key, i) => key !== path[i]);
}

function cut({ cuts }: Work, at: number, end: number, inserted: string): void {
  cuts.push({ at, end, inserted });
}

/** Puts lines in at a line's start, or after the last line of a text that lacks its line end. */
function insertLines(work: Work, at: number, lines: readonly string[]): void {
  const { text, style } = work;
  if (lines.length === 0) return;
  const body = lines.join(style.lineEnd);
  const isAfterOpenLine = at === text.length && at > 0 && text[at - 1] !== '\n';
  cut(work, at, at, isAfterOpenLine ? style.lineEnd + body : body + style.lineEnd);
}

/** Takes whole lines out; the last line of a text without a line end takes the one before it along. */
function removeLines(work: Work, from: number, to: number): void {
  const { text } = work;
  const isOpenEnd = to === text.length && text[to - 1] !== '\n';
  cut(work, isOpenEnd ? beforeLineEnd(text, from) : from, to, '');
}

/** The lines of an entry or item that begins at `start`: comments of its own above it, its content, deeper comments below. */
function regionOf({ text }: Work, start: number, node: TextNode, least: number) {
  const indent = columnOf(text, start);
  const end = Math.max(beforeLineEnd(text, node.end), least);
  return {
    from: backOverComments(text, lineStart(text, start), indent),
    to: pastComments(text, nextLine(text, end), indent + 1),
  };
}

const entryRegion = (work: Work, entry: MapEntry) => regionOf(work, entry.start, entry.node, entry.colonEnd ?? entry.keyEnd); // prettier-ignore

/** The end of a block collection's last line, and of the comments under it that are indented like it. */
function endOfBlock({ text }: Work, node: TextNode, indent: number, least: number): number {
  return pastComments(text, nextLine(text, Math.max(beforeLineEnd(text, node.end), least)), indent);
}

function quotesOf(node: TextNode): Quotes {
  if (node.kind !== 'scalar') return 'plain';
  return node.style === 'single' || node.style === 'double' ? node.style : 'plain';
}

/** The text of a value in a flow collection, over several lines where the collection is. */
function flowText({ style }: Work, value: Written, isOverLines: boolean, indent: number): string {
  return isOverLines ? printFlowLines(value, indent, style) : printFlow(value, style.isJson);
}

function indentOfLine(text: string, at: number): number {
  const start = lineStart(text, at);
  return /^ */.exec(text.slice(start, at))![0].length;
}

function replaceInFlow(work: Work, slot: Slot & { readonly where: 'flow' }, node: TextNode, value: Written): void {
  const { text, style } = work;
  const isOverLines = slot.isOverLines || text.slice(node.start, node.end).includes('\n');
  const printed =
    typeof value === 'object' && value !== null
      ? flowText(work, value, isOverLines, indentOfLine(text, node.start))
      : printScalar(value, { isJson: style.isJson, isInFlow: true, quotes: quotesOf(node) });
  if (node.start < node.end) cut(work, node.start, node.end, printed);
  else cut(work, slot.after, slot.after, `${slot.needsColon ? ':' : ''} ${printed}`);
}

function printInBlock(
  { style, text }: Work,
  slot: Slot & { readonly where: 'block' },
  node: TextNode,
  value: Written,
): Printed {
  const quotes = quotesOf(node);
  if (typeof value === 'string' && quotes !== 'plain') return { head: ` ${printScalar(value, { quotes })}`, lines: [] };
  if (slot.isItem) {
    const [first = '', ...lines] = printItem(value, slot.indent, style);
    return { head: first.slice(slot.indent + 1), lines };
  }
  const isSameKind = (node.kind === 'map' && isRecord(value)) || (node.kind === 'list' && isList(value));
  const keepsIndent = isSameKind && node.style === 'block' && isFirstOnLine(text, node.start);
  return printBlock(value, keepsIndent ? columnOf(text, node.start) : slot.indent + style.step, style);
}

/** The characters a value in a block takes: on the line of its key or dash, and on lines of its own. */
function blockExtent({ text }: Work, { after, indent }: Slot & { readonly where: 'block' }, node: TextNode) {
  const last = Math.max(beforeLineEnd(text, node.end), after);
  const bodyEnd = beforeLineEnd(text, pastComments(text, nextLine(text, last), indent + 1));
  const headLineEnd = lineEnd(text, after);
  if (node.kind === 'scalar' && node.style === 'block' && node.headerEnd <= headLineEnd)
    return { headEnd: node.headerEnd, body: last > headLineEnd ? { from: headLineEnd, to: last } : undefined };
  if (node.start > headLineEnd) return { headEnd: after, body: { from: headLineEnd, to: bodyEnd } };
  const isCompact = node.kind !== 'scalar' && node.style === 'block';
  return { headEnd: isCompact ? bodyEnd : node.end, body: undefined };
}

function replaceInBlock(work: Work, slot: Slot & { readonly where: 'block' }, node: TextNode, value: Written): void {
  const { text, style } = work;
  const { head, lines } = printInBlock(work, slot, node, value);
  const { headEnd, body } = blockExtent(work, slot, node);
  const under = lines.map((line) => style.lineEnd + line).join('');
  const isInPlace = body === undefined && under === '' && node.start < node.end && node.start >= slot.after;
  if (isInPlace) cut(work, node.start, headEnd, head.trimStart());
  else cut(work, slot.after, headEnd, head);
  if (body) cut(work, body.from, body.to, under);
  else if (under !== '') {
    const at = lineEnd(text, headEnd);
    cut(work, at, at, under);
  }
}

function replaceRoot(work: Work, node: TextNode, value: Written): void {
  const { text, style } = work;
  const isBlock = node.kind !== 'scalar' && node.style === 'block' && isRecord(value) && Object.keys(value).length > 0;
  if (!isBlock) return cut(work, node.start, node.end, printFlowLines(value, 0, style));
  const lines = Object.entries(value).flatMap(([key, item]) => printEntry(key, item, 0, style));
  cut(work, lineStart(text, node.start), lineEnd(text, beforeLineEnd(text, node.end)), lines.join(style.lineEnd));
}

function replaceNode(work: Work, slot: Slot, node: TextNode, value: Written): void {
  if (slot.where === 'root') replaceRoot(work, node, value);
  else if (slot.where === 'flow') replaceInFlow(work, slot, node, value);
  else replaceInBlock(work, slot, node, value);
}

/** Keys that objects list first whatever their place in the text, so that their order says nothing. */
const isIndexLike = (key: string): boolean => /^\d+$/.test(key);

/** The keys that stay where they are, and those that come after them; an order that an edit changed is made at the end. */
function keptAndAdded(before: WrittenRecord, after: WrittenRecord) {
  const old = Object.keys(before);
  const wanted = Object.keys(after);
  const kept = new Set(wanted.filter((key) => isIndexLike(key) && Object.hasOwn(before, key)));
  let place = 0;
  for (const key of wanted.filter((candidate) => !isIndexLike(candidate))) {
    const found = old.indexOf(key, place);
    if (found < 0) break;
    place = found + 1;
    kept.add(key);
  }
  return { kept, added: wanted.filter((key) => !kept.has(key)) };
}

/** An entry that stands elsewhere, taken with its comments to a new key and indentation; undefined where that cannot be done. */
function movedLines(work: Work, key: string, value: Written, indent: number): readonly string[] | undefined {
  const { text, sources } = work;
  const entry = typeof value === 'object' ? sources.get(value) : undefined;
  if (!entry || !isFirstOnLine(text, entry.start)) return undefined;
  const { from, to } = entryRegion(work, entry);
  const shift = indent - columnOf(text, entry.start);
  const renamed = text.slice(from, entry.start) + printKey(key, false, false) + text.slice(entry.keyEnd, to);
  return renamed
    .replace(/\r?\n$/, '')
    .split(/\r?\n/)
    .map((line) => {
      if (line.trim() === '') return line;
      return shift >= 0 ? ' '.repeat(shift) + line : line.slice(Math.min(-shift, /^ */.exec(line)![0].length));
    });
}

/** One value's change: where it stands, its node, and what it says before and after. */
interface Change<Node extends TextNode, Value extends Written> {
  readonly slot: Slot;
  readonly node: Node;
  readonly before: Value;
  readonly after: Value;
  readonly path: readonly string[];
}

/** Takes the entries that are not kept out of a block map; false where that cannot be done by lines. */
function removeEntries(work: Work, entries: readonly MapEntry[], kept: ReadonlySet<string>): boolean {
  const { text } = work;
  const gone = entries.filter(({ key }) => !kept.has(key));
  if (gone.some(({ isOdd }) => isOdd)) return false;
  const first = entries[0]!;
  const isOnDash = !kept.has(first.key) && !isFirstOnLine(text, first.start);
  const stays = entries.findIndex(({ key }) => kept.has(key));
  if (isOnDash) {
    if (stays < 0) return false;
    removeFromDash(work, first, entries[stays - 1]!, entries[stays]!);
  }
  for (const entry of isOnDash ? gone.slice(stays) : gone) {
    const { from, to } = entryRegion(work, entry);
    removeLines(work, from, to);
  }
  return true;
}

/** Takes the entries from the one beside a dash to `last` out, and brings the next one up unless comments stand above it. */
function removeFromDash(work: Work, first: MapEntry, last: MapEntry, next: MapEntry): void {
  const { text } = work;
  const { to } = entryRegion(work, last);
  if (text.slice(to, next.start).trim() === '') return cut(work, first.start, next.start, '');
  const dash = text.slice(0, first.start).trimEnd().length;
  cut(work, dash, beforeLineEnd(text, to), '');
}

function carryBlockMap(work: Work, { slot, node, before, after, path }: Change<MapNode, WrittenRecord>): boolean {
  const { text, style } = work;
  const { kept, added } = keptAndAdded(before, after);
  const last = node.entries.at(-1);
  if (!last) return false;
  if (kept.size + added.length === 0) {
    if (slot.where !== 'block') return false;
    cut(work, slot.after, slot.after, ' {}');
  }
  const indent = columnOf(text, node.entries[0]!.start);
  if (!removeEntries(work, node.entries, kept)) return false;
  for (const entry of node.entries) {
    if (!kept.has(entry.key) || isSame(before[entry.key]!, after[entry.key]!)) continue;
    const change = { node: entry.node, before: before[entry.key]!, after: after[entry.key]! };
    const isInLine = entry.node.kind === 'scalar' && entry.node.style !== 'block' && typeof change.after !== 'object';
    if (entry.colonEnd === undefined || (entry.isOdd && !isInLine)) return false;
    const place: Slot = { where: 'block', isItem: false, indent, after: entry.colonEnd };
    carry(work, { ...change, slot: place, path: [...path, entry.key] });
  }
  const lines = added.flatMap(
    (key) => movedLines(work, key, after[key]!, indent) ?? printEntry(key, after[key]!, indent, style),
  );
  insertLines(work, endOfBlock(work, last.node, indent, last.colonEnd ?? last.keyEnd), lines);
  return true;
}

/** Whether a flow collection has lines of its own for items such as the one at `item`, deep enough to hold more lines. */
function isOverLines(text: string, node: TextNode, item: number): boolean {
  return text.slice(node.start, node.end).includes('\n') && isFirstOnLine(text, item);
}

function carryFlowMap(work: Work, { node, before, after, path }: Change<MapNode, WrittenRecord>): boolean {
  const { text, style } = work;
  const { kept, added } = keptAndAdded(before, after);
  if (kept.size === 0 || node.entries.some(({ isOdd }) => isOdd)) return false;
  for (const { key, start, keyEnd, colonEnd, node: value } of node.entries) {
    if (!kept.has(key) || isSame(before[key]!, after[key]!)) continue;
    const slot: Slot = {
      where: 'flow',
      after: colonEnd ?? keyEnd,
      needsColon: colonEnd === undefined,
      isOverLines: isOverLines(text, node, start),
    };
    carry(work, { slot, node: value, before: before[key]!, after: after[key]!, path: [...path, key] });
  }
  if (kept.size === node.entries.length && added.length === 0) return true;
  if (node.style === 'pair') return false;
  const last = node.entries.at(-1)!.start;
  const [indent, overLines] = [indentOfLine(text, last), isOverLines(text, node, last)];
  const items = node.entries.map(({ start, node: { end }, keyEnd, colonEnd }) => ({
    start,
    end: Math.max(end, colonEnd ?? keyEnd),
  }));
  const wanted: FlowItem[] = [
    ...node.entries.flatMap(({ key }, old) => (kept.has(key) ? [{ old }] : [])),
    ...added.map((key) => ({
      text: `${printKey(key, style.isJson, true)}: ${flowText(work, after[key]!, overLines, indent)}`,
    })),
  ];
  work.cuts.push(...flowCuts(text, { inside: node.start + 1, close: node.end - 1, items }, wanted));
  return true;
}

interface ListChange {
  /** Items at the start that stay in their place, changed or not. */
  readonly kept: number;
  /** Items at the end that stay. */
  readonly tail: number;
}

/** Which items of a list stay: those alike at both ends, and between them as many as there are in both. */
function listChange(before: WrittenList, after: WrittenList): ListChange {
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && isSame(before[head]!, after[head]!)) head += 1;
  let tail = 0;
  while (tail < shorter - head && isSame(before[before.length - 1 - tail]!, after[after.length - 1 - tail]!)) tail += 1;
  return { kept: shorter - tail, tail };
}

function carryList(work: Work, change: Change<ListNode, WrittenList>): boolean {
  const { slot, node, before, after, path } = change;
  if (before.length === 0) return false;
  if (after.length === 0) {
    if (node.style === 'flow' || slot.where !== 'block') return false;
    cut(work, slot.after, slot.after, ' []');
    return changeBlockItems(work, node, 0, 0, []);
  }
  const { kept, tail } = listChange(before, after);
  const { text } = work;
  const isFlow = node.style === 'flow';
  for (let i = 0; i < kept; i += 1) {
    if (isSame(before[i]!, after[i]!)) continue;
    const { start, dashEnd, node: item } = node.items[i]!;
    const place: Slot = isFlow
      ? { where: 'flow', after: start, needsColon: false, isOverLines: isOverLines(text, node, start) }
      : { where: 'block', isItem: true, indent: columnOf(text, start), after: dashEnd };
    carry(work, { slot: place, node: item, before: before[i]!, after: after[i]!, path: [...path, String(i)] });
  }
  if (before.length === after.length) return true;
  const fresh = after.slice(kept, after.length - tail);
  if (!isFlow) return changeBlockItems(work, node, kept, tail, fresh);
  const items = node.items.map(({ start, node: { end } }) => ({ start, end: Math.max(start, end) }));
  const last = items.at(-1)!.start;
  const [indent, overLines] = [indentOfLine(text, last), isOverLines(text, node, last)];
  const wanted: FlowItem[] = [
    ...items.slice(0, kept).map((_, old) => ({ old })),
    ...fresh.map((value) => ({ text: flowText(work, value, overLines, indent) })),
    ...items.slice(items.length - tail).map((_, i) => ({ old: items.length - tail + i })),
  ];
  work.cuts.push(...flowCuts(text, { inside: node.start + 1, close: node.end - 1, items }, wanted));
  return true;
}

/** Takes out the items between the first `kept` and the last `tail`, and puts `fresh` there. */
function changeBlockItems(work: Work, { items }: ListNode, kept: number, tail: number, fresh: WrittenList): boolean {
  const { text, style } = work;
  for (const item of items.slice(kept, items.length - tail)) {
    if (!isFirstOnLine(text, item.start)) return false;
    const { from, to } = regionOf(work, item.start, item.node, item.dashEnd);
    removeLines(work, from, to);
  }
  const indent = columnOf(text, items[0]!.start);
  const lines = fresh.flatMap((value) => printItem(value, indent, style));
  const next = items[items.length - tail];
  if (next && lines.length > 0) {
    if (!isFirstOnLine(text, next.start)) return false;
    insertLines(work, regionOf(work, next.start, next.node, next.dashEnd).from, lines);
  } else if (!next) {
    const last = items.at(-1)!;
    insertLines(work, endOfBlock(work, last.node, indent, last.dashEnd), lines);
  }
  return true;
}

function carryParts(work: Work, { slot, node, before, after, path }: Change<TextNode, Written>): boolean {
  if (node.kind === 'map' && isRecord(before) && isRecord(after))
    return (node.style === 'block' ? carryBlockMap : carryFlowMap)(work, { slot, node, before, after, path });
  if (node.kind === 'list' && isList(before) && isList(after))
    return carryList(work, { slot, node, before, after, path });
  return false;
}

/** Carries one value's change into its node: into its parts where it has any, else in its place. */
function carry(work: Work, change: Change<TextNode, Written>): void {
  if (isSame(change.before, change.after)) return;
  const made = work.cuts.length;
  if (isCarried(work, change.path) && carryParts(work, change)) return;
  work.cuts.length = made;
  replaceNode(work, change.slot, change.node, change.after);
}

/** Cuts in order, those that touch made one. */
function inOrder(cuts: readonly Cut[]): readonly Cut[] {
  const ordered = cuts.toSorted((a, b) => a.at - b.at || a.end - b.end);
  const merged: Cut[] = [];
  for (const next of ordered) {
    const last = merged.at(-1);
    if (last && next.at <= last.end)
      merged[merged.length - 1] = { at: last.at, end: Math.max(last.end, next.end), inserted: last.inserted + next.inserted }; // prettier-ignore
    else merged.push(next);
  }
  return merged;
}

const isLowHalf = (text: string, at: number): boolean => /[\udc00-\udfff]/.test(text[at] ?? '');

/** A cut as a splice of only the characters that differ, never of half a character. */
function spliceOf(text: string, { at, end, inserted }: Cut): Splice {
  const removed = text.slice(at, end);
  const most = Math.min(removed.length, inserted.length);
  let head = 0;
  while (head < most && removed[head] === inserted[head]) head += 1;
  if (head > 0 && (isLowHalf(removed, head) || isLowHalf(inserted, head))) head -= 1;
  let tail = 0;
  while (tail < most - head && removed.at(-1 - tail) === inserted.at(-1 - tail)) tail += 1;
  if (tail > 0 && isLowHalf(removed, removed.length - tail)) tail -= 1;
  return {
    at: at + head,
    removed: removed.slice(head, removed.length - tail),
    inserted: inserted.slice(head, inserted.length - tail),
  };
}

function isJsonText({ text, root }: TextTree): boolean {
  if (root.kind !== 'map' || root.style !== 'flow') return false;
  try {
    JSON.parse(text.replace(/^\uFEFF/, ''));
    return true;
  } catch {
    return false;
  }
}

/** Spaces that one level is indented by in this document. */
function stepOf({ text, root }: TextTree): number {
  if (root.kind !== 'map') return 2;
  if (root.style === 'flow') return Math.min(8, indentOfLine(text, root.entries[0]?.start ?? 0)) || 2;
  for (const { node, start } of root.entries)
    if (node.kind === 'map' && node.style === 'block')
      return Math.min(8, columnOf(text, node.start) - columnOf(text, start)) || 2;
  return 2;
}

function styleOf(tree: TextTree): PrintStyle {
  const newline = tree.text.indexOf('\n');
  return {
    isJson: isJsonText(tree),
    step: stepOf(tree),
    lineEnd: newline > 0 && tree.text[newline - 1] === '\r' ? '\r\n' : '\n',
  };
}

function sourcesOf(node: TextNode, into = new Map<Written, MapEntry>()): ReadonlyMap<Written, MapEntry> {
  if (node.kind !== 'map' || node.style !== 'block') return into;
  for (const entry of node.entries) {
    if (typeof entry.node.written === 'object' && entry.node.written !== null) into.set(entry.node.written, entry);
    sourcesOf(entry.node, into);
  }
  return into;
}

/** The innermost place that holds every difference. */
function placeOfChange(before: Written, after: Written): readonly string[] {
  if (!isRecord(before) || !isRecord(after)) return [];
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  const changed = [...keys].filter((key) => {
    const [old, now] = [memberOf(before, key), memberOf(after, key)];
    return old === undefined || now === undefined || !isSame(old, now);
  });
  const [only, ...others] = changed;
  if (only === undefined || others.length > 0 || !Object.hasOwn(before, only) || !Object.hasOwn(after, only)) return [];
  return [only, ...placeOfChange(before[only]!, after[only]!)];
}

function says(text: string, written: Written, isJson: boolean): boolean {
  try {
    if (isJson) JSON.parse(text.replace(/^\uFEFF/, ''));
    return isSame(parseTree(text).written, written);
  } catch (error) {
    if (error instanceof Fault && error.code !== 'document.too-large') return false;
    if (error instanceof SyntaxError) return false;
    throw error;
  }
}

const LONGEST_KEY = 1000;

/** Refuses what could be written as JSON but not be read back as a shoot's text. */
function requireWritable(written: Written, path = ''): void {
  if (typeof written !== 'object' || written === null) return;
  for (const [key, value] of Object.entries(written)) {
    if (!isList(written) && key.length > LONGEST_KEY)
      throw new Fault({
        code: 'edit.key-too-long',
        what: `A key has ${key.length} characters, and the most is ${LONGEST_KEY}`,
        where: path === '' ? 'the document' : path,
        mend: 'Choose a shorter key.',
      });
    requireWritable(value, `${path}/${key.slice(0, 40)}`);
  }
}

function attempt(work: Work, after: Written): TextEdit | undefined {
  const { tree, text, style, cuts } = work;
  carry(work, { slot: { where: 'root' }, node: tree.root, before: tree.written, after, path: [] });
  const splices = inOrder(cuts)
    .map((made) => spliceOf(text, made))
    .filter(({ removed, inserted }) => removed !== inserted);
  const edited = applySplices(text, splices);
  return says(edited, after, style.isJson) ? { text: edited, splices, written: after } : undefined;
}

/**
 * Carries a patch into the text of a shoot. An empty patch returns the same text; one changed value changes only its
 * characters; comments survive all that is not removed. Reading the result gives exactly what `applyPatch` gives. Throws
 * the Faults of `parseTree`, `applyPatch` and `versionOf`, `edit.key-too-long` and `edit.not-carried`; then nothing has
 * changed.
 */
export function editText(text: string, patch: Patch): TextEdit {
  const tree = parseTree(text);
  const after = applyPatch(tree.written, patch);
  if (isSame(tree.written, after)) return { text, splices: [], written: tree.written };
  versionOf(after);
  if (depthOf(after) > DEEPEST) throw tooDeep('the document');
  requireWritable(after);
  const style = styleOf(tree);
  const sources = patch.some(({ op }) => MOVE_OPS.has(op)) ? sourcesOf(tree.root) : new Map<Written, MapEntry>();
  const carriedFrom = (from: Work['sources']) =>
    attempt({ tree, text, style, cuts: [], reprint: undefined, sources: from }, after);
  // Lines moved as they stand may not be read the same in another place: then they are printed there.
  const carried = carriedFrom(sources) ?? (sources.size > 0 ? carriedFrom(new Map()) : undefined);
  if (carried) return carried;
  const place = placeOfChange(tree.written, after);
  for (let depth = place.length; depth >= 0; depth -= 1) {
    const printed = attempt({ tree, text, style, cuts: [], reprint: place.slice(0, depth), sources: new Map() }, after);
    if (printed) return printed;
  }
  // No text is known for which even the whole, printed anew, says something else; a wrong text would be worse than none.
  throw new Fault({
    code: 'edit.not-carried',
    what: 'The edit could not be carried into the text',
    where: place.length === 0 ? 'the document' : pointerTo(place),
    mend: 'Make this change in the text itself.',
  });
}
