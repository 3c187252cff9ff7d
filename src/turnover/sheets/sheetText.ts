/** A sheet as text for a terminal, in lines of at most a page's columns. */
import { columnsOf, onOneLine, padded, PAGE_COLUMNS, PLAIN, wrapped, type Ink } from '../lines.ts';
import { fitColumns } from './fitColumns.ts';
import { sayShown } from '../../base/quantity.ts';
import type { BarsBlock, Block, Cell, Column, Sheet, TableBlock } from './sheet.ts';

const MARKS = { short: '!', tight: '~', spare: ' ', unknown: '?' } as const;

const LINE = '_'.repeat(12);

/** The drawn axis in columns, four to a stop. */
const BAR_COLUMNS = 20;

/** Words broken within a width; a word too long for it is cut. */
function brokenAt(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of onOneLine(text).split(' ')) {
    if (line !== '' && columnsOf(line) + 1 + columnsOf(word) <= width) {
      line += ` ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    let rest = [...word];
    while (columnsOf(rest.join('')) > width) {
      let taken = 1;
      while (taken < rest.length && columnsOf(rest.slice(0, taken + 1).join('')) <= width) taken += 1;
      lines.push(rest.slice(0, taken).join(''));
      rest = rest.slice(taken);
    }
    line = rest.join('');
  }
  return [...lines, line];
}

const cellWords = ({ words, state }: Cell): string => (state === undefined ? words : `${MARKS[state]} ${words}`);

const cellLines = (cell: Cell, width: number): readonly string[] => [
  ...brokenAt(cellWords(cell), width),
  ...(cell.under === undefined ? [] : brokenAt(cell.under, width)),
];

const GAP = 2;

function tableLines({ columns, rows, total }: TableBlock, ink: Ink): readonly string[] {
  const all = [...rows, ...(total ? [total] : [])];
  const wishes = columns.map(({ title }, i) => {
    const texts = [
      title,
      ...all.flatMap((row) => [cellWords(row[i]!), row[i]!.under ?? '']).map((words) => onOneLine(words)),
    ];
    return {
      natural: Math.max(...texts.map(columnsOf)),
      least: Math.max(...texts.flatMap((text) => text.split(' ').map(columnsOf))),
    };
  });
  const widths = fitColumns(wishes, PAGE_COLUMNS - GAP * (columns.length - 1)).map((width) => Math.max(1, Math.floor(width))); // prettier-ignore
  const line = (texts: readonly string[]): string =>
    texts.map((text, i) => put(text, widths[i]!, columns[i]!)).join(' '.repeat(GAP));
  const rowLines = (row: readonly Cell[]): readonly string[] => {
    const cells = row.map((cell, i) => cellLines(cell, widths[i]!));
    const height = Math.max(...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, n) => line(cells.map((lines) => lines[n] ?? '')));
  };
  const heads = columns.map(({ title }, i) => brokenAt(title, widths[i]!));
  const headHeight = Math.max(...heads.map((lines) => lines.length));
  return [
    ...Array.from({ length: headHeight }, (_, n) => ink.faint(line(heads.map((lines) => lines[n] ?? '')))),
    ...rows.flatMap(rowLines),
    ...(total ? rowLines(total).map(ink.strong) : []),
  ];
}

function put(text: string, width: number, { align }: Column): string {
  return align === 'right' ? ' '.repeat(Math.max(0, width - columnsOf(text))) + text : padded(text, width);
}

function bar({ zero }: BarsBlock, place: BarsBlock['rows'][number]['place']): string {
  const at = (fraction: number) => Math.round(fraction * BAR_COLUMNS);
  const cells = Array.from({ length: BAR_COLUMNS + 1 }, () => ' ');
  if (place) {
    for (let i = at(place.from); i <= at(place.to); i += 1) cells[i] = '=';
    if (place.beyond === 'left') cells[0] = '<';
    if (place.beyond === 'right') cells[BAR_COLUMNS] = '>';
  }
  cells[at(zero)] = '|';
  return cells.join('');
}

function barLines(block: BarsBlock, ink: Ink): readonly string[] {
  const names = Math.min(30, Math.max(...block.rows.map(({ name }) => columnsOf(onOneLine(name)))));
  return block.rows.flatMap((row) => {
    const [first = '', ...more] = brokenAt(row.name, names);
    const rest = PAGE_COLUMNS - names - BAR_COLUMNS - 22;
    const words = `${row.figures}${row.isAssumed ? ' ≈' : ''}`;
    const figures = brokenAt(words, rest);
    const lines = Math.max(1 + more.length, figures.length);
    return Array.from({ length: lines }, (_, n) => {
      const name = padded([first, ...more][n] ?? '', names);
      if (n > 0) return `  ${name}  ${' '.repeat(BAR_COLUMNS + 1)}  ${figures[n] ?? ''}`;
      const state = ink[row.state](padded(row.stateWord, 9));
      return `${ink[row.state](MARKS[row.state])} ${name}  ${bar(block, row.place)}  ${padded(figures[0] ?? '', rest)} ${row.spare.padStart(5)} ${state}`;
    });
  });
}

function blockLines(block: Block, ink: Ink): readonly string[] {
  switch (block.block) {
    case 'heading':
      return ['', ...wrapped(onOneLine(block.words), 0).map(ink.strong), ...(block.aside === undefined ? [] : wrapped(onOneLine(block.aside), 0).map(ink.faint))]; // prettier-ignore
    case 'paragraph': {
      const lines = wrapped(onOneLine(block.words), 0);
      return block.tone === 'strong' ? lines.map(ink.strong) : block.tone === 'small' ? lines.map(ink.faint) : lines;
    }
    case 'figures':
      return block.figures.flatMap((figure) => {
        const note = figure.note === undefined ? '' : `, ${figure.note}`;
        return wrapped(onOneLine(`${padded(figure.label, 20)} ${sayShown(figure)}${note}`), 0, 22);
      });
    case 'table':
      return tableLines(block, ink);
    case 'blank':
      return [
        block.columns.map(({ title }) => title).join('   '),
        ...Array.from({ length: block.rowCount }, () => LINE.repeat(6)),
      ];
    case 'bars':
      return barLines(block, ink);
    case 'caution':
      return [ink.tight(block.title), ...block.says.flatMap((says) => wrapped(onOneLine(says), 2, 4))];
    case 'ticks':
      return block.items.flatMap(({ words, under }) =>
        wrapped(onOneLine(`[ ] ${words}${under === undefined ? '' : ` (${under})`}`), 0, 4),
      );
    case 'lines':
      return wrapped(block.labels.map((label) => `${label} ${LINE}`).join('   '), 0);
    case 'frames':
      return block.frames.flatMap(({ number, title, seconds, words, note }) => [
        ...wrapped(onOneLine(`Frame ${number}  ${title}, ${seconds}${note === '' ? '' : `, ${note}`}`), 0, 2),
        ...(words === '' ? [] : wrapped(onOneLine(words), 2)),
      ]);
    case 'clocks':
      return wrapped(onOneLine(block.says), 0);
    case 'rule':
      return ['-'.repeat(PAGE_COLUMNS)];
    case 'break':
      return [''];
  }
}

/** Blocks that stand apart from what comes before them. */
const STANDS_APART: ReadonlySet<Block['block']> = new Set(['figures', 'table', 'blank', 'caution', 'frames', 'clocks']);

/** One sheet as lines, without line ends and without blanks at their ends. */
export function sheetLines(sheet: Sheet, ink: Ink = PLAIN): readonly string[] {
  const { over, shoot, about, number, title, under, served, blocks } = sheet;
  const head = `${number === undefined ? '' : `${number}  `}${title}`;
  return [
    ...wrapped(
      onOneLine([over, ...(shoot === title ? [] : [shoot]), about].filter((part) => part !== '').join('   ')),
      0,
    ).map(ink.faint),
    ...wrapped(onOneLine(head), 0, 2).map(ink.strong),
    ...(under === undefined ? [] : wrapped(onOneLine(under), 0)),
    ...(served ? blockLines(served, ink) : []),
    ...blocks.flatMap((block, i) => [
      ...(STANDS_APART.has(block.block) && blocks[i - 1]?.block !== 'heading' ? [''] : []),
      ...blockLines(block, ink),
    ]),
  ].map((line) => line.trimEnd());
}
