/**
 * Text to tree: YAML (or JSON, which is YAML) parsed once into nodes that know both their value and the characters
 * they stand on. Everything that is no plain shoot document is refused here.
 */
import {
  Composer,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  Parser,
  type CST,
  type Document,
  type Node,
  type Pair,
  type YAMLMap,
  type YAMLParseError,
  type YAMLSeq,
} from 'yaml';
import { Fault } from '../base/fault.ts';
import { DEEPEST, setMember, type Written } from './written.ts';

export const LARGEST_B = 5_000_000;
/** Keys, values and marks; a shoot of 40 full shots has some twenty thousand. */
const MOST_MARKS = 300_000;

export interface MapEntry {
  readonly key: string;
  /** Where the key begins and ends. */
  readonly start: number;
  readonly keyEnd: number;
  /** Just after the colon; undefined for a key in a flow map that has none. */
  readonly colonEnd: number | undefined;
  /** Written with `?`, or without a key. */
  readonly isOdd: boolean;
  readonly node: TextNode;
}

export interface ListItem {
  /** Where the dash stands, or in a flow list the item. */
  readonly start: number;
  readonly dashEnd: number;
  readonly node: TextNode;
}

interface NodeBase {
  readonly written: Written;
  /** The characters of the value itself: from its first to after its last. */
  readonly start: number;
  readonly end: number;
}

export interface ScalarNode extends NodeBase {
  readonly kind: 'scalar';
  readonly style: 'empty' | 'plain' | 'single' | 'double' | 'block';
  /** For block scalars, the end of `|` or `>` with its marks. */
  readonly headerEnd: number;
}

export interface MapNode extends NodeBase {
  readonly kind: 'map';
  /** `pair` is the map that `[a: 1]` stands for. */
  readonly style: 'block' | 'flow' | 'pair';
  readonly entries: readonly MapEntry[];
}

export interface ListNode extends NodeBase {
  readonly kind: 'list';
  readonly style: 'block' | 'flow';
  readonly items: readonly ListItem[];
}

export type TextNode = ScalarNode | MapNode | ListNode;

export interface TextTree {
  readonly text: string;
  readonly root: TextNode;
  readonly written: Written;
}

export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Tells line and column, counted from 1, of any place in a text. */
export function placesIn(text: string): (offset: number) => Place {
  const starts = [text.startsWith('\uFEFF') ? 1 : 0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    let [low, high] = [0, starts.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: Math.max(1, offset - starts[low]! + 1) };
  };
}

function refusal(code: string, what: string, text: string, offset: number, mend: string): Fault {
  const { line, column } = placesIn(text)(offset);
  return new Fault({ code, what, where: `line ${line}, column ${column}`, mend });
}

function tooLarge(what: string): Fault {
  const mend = 'Keep pictures and other content in files, and name them under files.';
  return new Fault({ code: 'document.too-large', what, where: 'the document', mend });
}

/** Bytes of a text in UTF-8. */
function sizeOf_B(text: string): number {
  let size = 0;
  for (let i = 0; i < text.length; i += 1) {
    const unit = text.charCodeAt(i);
    // Each half of a surrogate pair counts two of the pair's four bytes.
    size += unit < 0x80 ? 1 : unit < 0x800 || (unit >= 0xd800 && unit < 0xe000) ? 2 : 3;
  }
  return size;
}

function requireSize(text: string): void {
  const size_B = text.length > LARGEST_B ? text.length : text.length * 3 > LARGEST_B ? sizeOf_B(text) : 0;
  if (size_B > LARGEST_B)
    throw tooLarge(`The document holds ${(size_B / 1e6).toFixed(1)} MB, and the most is ${LARGEST_B / 1e6} MB`);
}

/** The concrete syntax, refused as soon as it is too deep or too much, before anything recurses into it. */
function tokensOf(text: string): CST.Token[] {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  let marks = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    marks += 1;
    if (marks > MOST_MARKS) throw tooLarge('The document holds more keys and values than any shoot');
    // The document itself is one level, and a scalar being read another.
    if (parser.stack.length > DEEPEST + 2) {
      const what = `Maps and lists stand more than ${DEEPEST} deep in one another`;
      throw refusal(
        'document.too-deep',
        what,
        text,
        parser.offset,
        'Take out the nesting; a shoot needs eight levels.',
      );
    }
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
}

const PROPERTY_FAULTS: Readonly<Record<string, readonly [code: string, what: string, mend: string]>> = {
  anchor: ['document.anchors', 'Anchors (&name) are not part of a shoot', 'Write the value out in both places.'],
  alias: ['document.anchors', 'Aliases (*name) are not part of a shoot', 'Write the value out in both places.'],
  tag: [
    'document.tags',
    'Tags (!name) are not part of a shoot',
    'Take the tag out; text that needs it goes in quotes.',
  ],
};

/** Refuses anchors, aliases, tags and directives wherever they stand. */
function requirePlain(tokens: readonly CST.Token[], text: string): void {
  const open: (CST.Token | null | undefined)[] = tokens.toReversed();
  while (open.length > 0) {
    const token = open.pop();
    if (!token) continue;
    const known = PROPERTY_FAULTS[token.type];
    if (known) throw refusal(known[0], known[1], text, token.offset, known[2]);
    if (token.type === 'directive') requireDirective(token, text);
    if (token.type === 'document') open.push(token.value, ...token.start.toReversed());
    if ('items' in token)
      for (const { start, key, sep, value } of token.items.toReversed())
        open.push(value, ...(sep ?? []), key, ...start);
  }
}

function requireDirective({ source, offset }: CST.Directive, text: string): void {
  const [name, version] = source.trim().split(/\s+/);
  if (name === '%YAML' && version === '1.2') return;
  const isTag = name === '%TAG';
  const what = isTag ? 'Tags are not part of a shoot' : `The directive ${source.trim()} is not known`;
  throw refusal(isTag ? 'document.tags' : 'document.not-yaml', what, text, offset, 'Take the line out.');
}

const isUnclosed = (error: YAMLParseError): boolean => /^Missing closing|must .*end with a [}\]]/.test(error.message);

/** Whether a syntax error is the text breaking off: something open at its very end, or a key cut on its last line. */
function isTruncated(error: YAMLParseError, text: string): boolean {
  const end = text.trimEnd().length;
  if (isUnclosed(error)) return error.pos[0] >= end - 1 || error.message.startsWith('Missing closing');
  return !text.endsWith('\n') && error.code === 'MISSING_CHAR' && error.pos[1] >= end;
}

function syntaxFault(error: YAMLParseError, text: string): Fault {
  const at = Math.min(error.pos[0], text.length);
  if (isTruncated(error, text)) {
    const what = `The document breaks off: ${error.message}`;
    return refusal('document.truncated', what, text, text.length, 'Fetch the whole document again.');
  }
  const isTab = error.code === 'TAB_AS_INDENT';
  const mend = isTab ? 'Indent with spaces.' : 'Mend this line; the one above may be the cause.';
  return refusal('document.not-yaml', error.message, text, at, mend);
}

const OPTIONS = { version: '1.2', schema: 'core', uniqueKeys: false, keepSourceTokens: true, prettyErrors: false } as const; // prettier-ignore

function compose(text: string): Document.Parsed | undefined {
  const tokens = tokensOf(text);
  requirePlain(tokens, text);
  const documents = [...new Composer(OPTIONS).compose(tokens)];
  const errors = documents.flatMap((document) => document.errors).sort((a, b) => a.pos[0] - b.pos[0]);
  if (errors[0]) throw syntaxFault(errors[0], text);
  const second = documents[1];
  if (second) {
    const what = 'A second document begins here';
    throw refusal('document.not-yaml', what, text, second.range[0], 'Keep one shoot in one document.');
  }
  return documents[0];
}

type Token = CST.Token | null | undefined;

/** After the last character of a token's own content, comments and line ends left out. */
function endOf(token: Token): number {
  if (!token) return 0;
  if (token.type === 'flow-collection') {
    const close = token.end[0];
    return close ? close.offset + close.source.length : token.offset;
  }
  if (token.type === 'block-map' || token.type === 'block-seq') {
    const items = token.items as readonly CST.CollectionItem[];
    for (let i = items.length - 1; i >= 0; i -= 1) {
      const end = itemEnd(items[i]!);
      if (end !== undefined) return end;
    }
    return token.offset;
  }
  if (token.type === 'block-scalar') return blockScalarEnd(token);
  return 'source' in token ? token.offset + token.source.length : token.offset;
}

function itemEnd({ start, key, sep, value }: CST.CollectionItem): number | undefined {
  if (value) return endOf(value);
  const colon = sep?.findLast(({ type }) => type === 'map-value-ind');
  if (colon) return colon.offset + 1;
  if (key) return endOf(key);
  const mark = start.findLast(({ type }) => type === 'seq-item-ind' || type === 'explicit-key-ind');
  return mark && mark.offset + 1;
}

function headerEndOf({ props, offset }: CST.BlockScalar): number {
  const header = props.find(({ type }) => type === 'block-scalar-header') as CST.SourceToken | undefined;
  return header ? header.offset + header.source.length : offset;
}

/** Blank lines after a block scalar are its own only when it keeps them (`|+`). */
function blockScalarEnd(token: CST.BlockScalar): number {
  const headerEnd = headerEndOf(token);
  const last = token.props.at(-1);
  const start = last && 'source' in last ? last.offset + last.source.length : headerEnd;
  const header = token.props.find(({ type }) => type === 'block-scalar-header') as CST.SourceToken | undefined;
  if (header?.source.includes('+')) return start + token.source.length;
  // A last line of blanks alone may be content, so only empty lines are left out.
  const content = token.source.replace(/[\r\n]+$/, '');
  return content === '' ? headerEnd : start + content.length;
}

const SCALAR_STYLES: Readonly<Record<string, ScalarNode['style']>> = {
  scalar: 'plain',
  'single-quoted-scalar': 'single',
  'double-quoted-scalar': 'double',
  'block-scalar': 'block',
};

/** A scalar as JSON has it; a number that JSON cannot hold stays the text that it is. */
function scalarValue(node: Node | null): Written {
  if (!isScalar(node)) return null;
  const { value, source } = node;
  if (typeof value === 'number') return Number.isFinite(value) ? value + 0 : (source ?? String(value));
  return typeof value === 'string' || typeof value === 'boolean' ? value : null;
}

function scalarNode(node: Node | null, token: Token, emptyAt: number): ScalarNode {
  const written = scalarValue(node);
  if (!token || !('source' in token) || (token.type === 'scalar' && token.source === ''))
    return { kind: 'scalar', style: 'empty', written, start: emptyAt, end: emptyAt, headerEnd: emptyAt };
  const style = SCALAR_STYLES[token.type] ?? 'plain';
  const headerEnd = token.type === 'block-scalar' ? headerEndOf(token) : token.offset;
  return { kind: 'scalar', style, written, start: token.offset, end: endOf(token), headerEnd };
}

const isMark = ({ type }: CST.SourceToken): boolean => type !== 'space' && type !== 'newline' && type !== 'comment';

/** Where an item of a flow collection begins: after the comma, blanks and comments before it. */
function flowItemStart({ start, key, sep, value }: CST.CollectionItem): number {
  const mark = start.find((token) => isMark(token) && token.type !== 'comma');
  return mark?.offset ?? key?.offset ?? sep?.find(isMark)?.offset ?? value?.offset ?? 0;
}

function keyText(key: Node | null, text: string, offset: number): string {
  if (key === null) return '';
  if (isScalar(key)) return typeof key.value === 'string' ? key.value : (key.source ?? '');
  const what = 'A key is a word, and this one is a list or a map';
  throw refusal('document.not-yaml', what, text, offset, 'Write the key as plain text.');
}

function mapEntry(pair: Pair<Node, Node | null>, isFlow: boolean, text: string): MapEntry {
  const item = pair.srcToken as CST.CollectionItem;
  const colon = item.sep?.find(({ type }) => type === 'map-value-ind');
  const isExplicit = item.start.some(({ type }) => type === 'explicit-key-ind');
  const start = isFlow ? flowItemStart(item) : (item.key?.offset ?? colon?.offset ?? 0);
  const colonEnd = colon && colon.offset + 1;
  const keyEnd = item.key ? endOf(item.key) : start;
  return {
    key: keyText(pair.key, text, start),
    start,
    keyEnd,
    colonEnd,
    isOdd: isExplicit || !item.key || item.key.type === 'block-scalar' || (!isFlow && !colon),
    node: nodeOf(pair.value, text, colonEnd ?? keyEnd),
  };
}

function mapNode(node: YAMLMap<Node, Node | null>, token: Token, text: string): MapNode {
  const isFlow = node.flow === true;
  const entries = node.items.map((pair) => mapEntry(pair, isFlow, text));
  const written: Record<string, Written> = {};
  for (const { key, node: value, start } of entries) {
    if (Object.hasOwn(written, key)) {
      const what = `The key ${JSON.stringify(key)} stands twice in one map`;
      throw refusal('document.duplicate-key', what, text, start, 'Keep one of the two.');
    }
    setMember(written, key, value.written);
  }
  const [first, last] = [entries[0], entries.at(-1)];
  if (token) return { kind: 'map', style: isFlow ? 'flow' : 'block', written, entries, start: token.offset, end: endOf(token) }; // prettier-ignore
  return { kind: 'map', style: 'pair', written, entries, start: first?.start ?? 0, end: last?.node.end ?? 0 };
}

function listNode(node: YAMLSeq<Node | null>, token: Token, text: string): ListNode {
  const isFlow = node.flow === true;
  const tokens = ((token && 'items' in token ? token.items : []) as readonly CST.CollectionItem[]).filter(
    (item) => itemEnd(item) !== undefined || item.start.some((t) => isMark(t) && t.type !== 'comma'),
  );
  const items = node.items.map((value, i): ListItem => {
    const item = tokens[i]!;
    const dash = item.start.find(({ type }) => type === 'seq-item-ind');
    const start = isFlow ? flowItemStart(item) : (dash?.offset ?? 0);
    const dashEnd = isFlow || !dash ? start : dash.offset + 1;
    return { start, dashEnd, node: nodeOf(value, text, dashEnd) };
  });
  const written = items.map((item) => item.node.written);
  const [start, end] = [token?.offset ?? 0, endOf(token)];
  return { kind: 'list', style: isFlow ? 'flow' : 'block', written, items, start, end };
}

function nodeOf(node: Node | null, text: string, emptyAt: number): TextNode {
  const token = node?.srcToken;
  if (isMap<Node, Node | null>(node)) return mapNode(node, token, text);
  if (isSeq<Node | null>(node)) return listNode(node, token, text);
  return scalarNode(node, token, emptyAt);
}

/** The trees of the last texts: an edit reads its own result back, and the next edit begins with that text. */
const KEPT_TREES = 2;
let kept: readonly TextTree[] = [];

/**
 * Parses a document, or finds it again when it is one of the last two. Throws a Fault, with the line, for what is no
 * shoot document at all: `document.not-yaml`, `.truncated`, `.anchors`, `.tags`, `.duplicate-key`, `.too-large`,
 * `.too-deep`.
 */
export function parseTree(text: string): TextTree {
  const known = kept.find((tree) => tree.text === text);
  if (known) return known;
  requireSize(text);
  const document = compose(text);
  const root = nodeOf(document?.contents ?? null, text, text.length);
  const tree: TextTree = { text, root, written: root.written };
  kept = [tree, ...kept].slice(0, KEPT_TREES);
  return tree;
}

const entryIndexes = new WeakMap<MapNode, ReadonlyMap<string, MapEntry>>();

function entryNamed(node: MapNode, key: string): MapEntry | undefined {
  let index = entryIndexes.get(node);
  if (!index) entryIndexes.set(node, (index = new Map(node.entries.map((entry) => [entry.key, entry]))));
  return index.get(key);
}

/** The node a path of keys leads to, as far as it is written; with the key itself where it is a map's. */
export function nodeAt(
  root: TextNode,
  keys: readonly string[],
): { readonly node: TextNode; readonly entry?: MapEntry } {
  let found: { node: TextNode; entry?: MapEntry } = { node: root };
  for (const key of keys) {
    const { node } = found;
    if (node.kind === 'map') {
      const entry = entryNamed(node, key);
      if (!entry) return found;
      found = { node: entry.node, entry };
    } else if (node.kind === 'list') {
      const item = node.items[Number(key)];
      if (!item) return found;
      found = { node: item.node };
    } else return found;
  }
  return found;
}
