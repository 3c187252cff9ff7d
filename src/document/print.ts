/** Written values printed as YAML or JSON, in the way of the text they go into. */
import { isList, isRecord, type Written } from './written.ts';

export type Quotes = 'plain' | 'single' | 'double';

export interface PrintStyle {
  /** The document is JSON and must stay so. */
  readonly isJson: boolean;
  /** Spaces of one level of indentation. */
  readonly step: number;
  readonly lineEnd: string;
}

/** What follows `key:` or `-`: the rest of that line, and the lines under it. */
export interface Printed {
  readonly head: string;
  readonly lines: readonly string[];
}

/** Words that YAML's core schema takes for something else than text. */
const NOT_TEXT =
  /^(?:~|null|Null|NULL|true|True|TRUE|false|False|FALSE|[-+]?\d+|0o[0-7]+|0x[\da-fA-F]+|[-+]?(?:\.\d+|\d+(?:\.\d*)?)(?:[eE][-+]?\d+)?|[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN))$/;
const NEEDS_ESCAPE = /[^\t\u0020-\u007e\u00a0-\ud7ff\ue000-\ufefe\uff00-\uffef]|[\u2028\u2029]/;
/** Well-formed pairs of surrogates, which need no escape though each half alone would. */
const PAIRS = /[\ud800-\udbff][\udc00-\udfff]/g;

function needsEscape(text: string): boolean {
  return NEEDS_ESCAPE.test(text.replace(PAIRS, ''));
}

function mayBePlain(text: string, isInFlow: boolean): boolean {
  if (text === '' || text.trim() !== text || NOT_TEXT.test(text) || needsEscape(text)) return false;
  if (/^(?:[,[\]{}#&*!|>'"%@`]|[-?:](?:\s|$)|---|\.\.\.)/.test(text)) return false;
  if (/:\s|:$|\s#|\t/.test(text)) return false;
  return !(isInFlow && /[,[\]{}]|^[-?:]|:[,[\]{}]/.test(text));
}

function printText(text: string, isInFlow: boolean, quotes: Quotes): string {
  if (quotes === 'plain' && mayBePlain(text, isInFlow)) return text;
  const maySingle = !needsEscape(text) && !text.includes('\t');
  const wantsSingle = quotes === 'single' || (quotes === 'plain' && /["\\]/.test(text) && !text.includes("'"));
  if (maySingle && wantsSingle) return `'${text.replaceAll("'", "''")}'`;
  return JSON.stringify(text);
}

export interface ScalarStyle {
  readonly isJson?: boolean;
  readonly isInFlow?: boolean;
  readonly quotes?: Quotes;
}

/** A scalar on one line. */
export function printScalar(
  value: null | boolean | number | string,
  { isJson = false, isInFlow = false, quotes = 'plain' }: ScalarStyle = {},
): string {
  if (typeof value !== 'string') return String(value);
  return isJson ? JSON.stringify(value) : printText(value, isInFlow, quotes);
}

export function printKey(key: string, isJson: boolean, isInFlow: boolean): string {
  return printScalar(key, { isJson, isInFlow });
}

const isScalarValue = (value: Written): value is null | boolean | number | string => typeof value !== 'object' || value === null; // prettier-ignore

/** A value on one line: `{ at: 0 s, speed: 1 }`, `[one, two]`. */
export function printFlow(value: Written, isJson: boolean): string {
  if (isScalarValue(value)) return printScalar(value, { isJson, isInFlow: true });
  if (isList(value)) return `[${value.map((item) => printFlow(item, isJson)).join(', ')}]`;
  const entries = Object.entries(value);
  if (entries.length === 0) return '{}';
  const inside = entries.map(([key, item]) => `${printKey(key, isJson, true)}: ${printFlow(item, isJson)}`).join(', ');
  return isJson ? `{${inside}}` : `{ ${inside} }`;
}

const LONGEST_LINE = 100;

/** Lists of plain values stand on one line while they are short. */
function isShortList(value: Written): boolean {
  return isList(value) && value.every(isScalarValue) && printFlow(value, false).length <= LONGEST_LINE;
}

/** A value in flow style over several lines, the first standing where the value goes, the others at `indent` and deeper. */
export function printFlowLines(value: Written, indent: number, { isJson, step, lineEnd }: PrintStyle): string {
  if (isScalarValue(value) || Object.keys(value).length === 0 || isShortList(value)) return printFlow(value, isJson);
  const pad = ' '.repeat(indent + step);
  const style = { isJson, step, lineEnd };
  const items = isList(value)
    ? value.map((item) => pad + printFlowLines(item, indent + step, style))
    : Object.entries(value).map(
        ([key, item]) => `${pad}${printKey(key, isJson, true)}: ${printFlowLines(item, indent + step, style)}`,
      );
  const [open, close] = isList(value) ? ['[', ']'] : ['{', '}'];
  return [open, items.join(`,${lineEnd}`), ' '.repeat(indent) + close].join(lineEnd);
}

/** Whether text of several lines can stand as a literal block that reads back the same. */
function mayBeLiteral(text: string): boolean {
  if (!/[^\n]\n/.test(text) || text.endsWith('\n\n') || /^\s/.test(text)) return false;
  return !needsEscape(text.replaceAll('\n', '')) && !/[ \t](?:\n|$)/.test(text);
}

function printLiteral(text: string, indent: number): Printed {
  const body = text.endsWith('\n') ? text.slice(0, -1) : text;
  const pad = ' '.repeat(indent);
  const lines = body.split('\n').map((line) => (line === '' ? '' : pad + line));
  return { head: text.endsWith('\n') ? ' |' : ' |-', lines };
}

/** Small flat maps in a list, such as knots, stand on one line each. */
function isShortItem(value: Written): boolean {
  return isRecord(value) && Object.values(value).every(isScalarValue) && printFlow(value, false).length <= LONGEST_LINE;
}

/** A value in block style, as it follows `key:`; lines under it are indented by `indent`. */
export function printBlock(value: Written, indent: number, style: PrintStyle): Printed {
  if (typeof value === 'string' && mayBeLiteral(value)) return printLiteral(value, indent);
  if (isScalarValue(value)) return { head: ` ${printScalar(value)}`, lines: [] };
  if (Object.keys(value).length === 0 || isShortList(value)) return { head: ` ${printFlow(value, false)}`, lines: [] };
  const lines = isList(value)
    ? value.flatMap((item) => printItem(item, indent, style))
    : Object.entries(value).flatMap(([key, item]) => printEntry(key, item, indent, style));
  return { head: '', lines };
}

/** `key: value` with the lines under it, at `indent`. */
export function printEntry(key: string, value: Written, indent: number, style: PrintStyle): readonly string[] {
  const { head, lines } = printBlock(value, indent + style.step, style);
  return [`${' '.repeat(indent)}${printKey(key, false, false)}:${head}`, ...lines];
}

/** `- value` with the lines under it, the dash at `indent`. */
export function printItem(value: Written, indent: number, style: PrintStyle): readonly string[] {
  const pad = ' '.repeat(indent);
  if (isShortItem(value)) return [`${pad}- ${printFlow(value, false)}`];
  const { head, lines } = printBlock(value, indent + 2, style);
  if (head !== '') return [`${pad}-${head}`, ...lines];
  const [first = '', ...rest] = lines;
  return [`${pad}- ${first.trimStart()}`, ...rest];
}
