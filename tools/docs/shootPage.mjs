/** The page on writing a shoot, made from the table that the reader itself uses. */

/** @typedef {import('../../src/document/shape.ts').Shape} Shape */
/** @typedef {import('../../src/document/shape.ts').FieldTable} FieldTable */
/** @typedef {import('../../src/document/shape.ts').RecordShape} RecordShape */
/** @typedef {import('../../src/document/shape.ts').QuantityShape} QuantityShape */
/** @typedef {import('../../src/base/kinds.ts').Kind} Kind */
/** @typedef {import('../../src/base/kinds.ts').KindName} KindName */

/**
 * @typedef {object} ShootPageParts
 * @property {RecordShape} shoot the form of the whole document
 * @property {Readonly<Record<string, Kind>>} kinds
 * @property {(kind: KindName, value: number) => string} writeQuantity
 * @property {string} example a whole shoot to begin with
 */

const cell = (/** @type {string} */ text) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

/**
 * @param {readonly string[]} head
 * @param {readonly (readonly string[])[]} rows
 */
function table(head, rows) {
  const line = (/** @type {readonly string[]} */ cells) => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

const code = (/** @type {string} */ text) => `\`${text}\``;

/**
 * How one value is written.
 * @param {Shape} of
 * @param {ShootPageParts} parts
 * @returns {string}
 */
function howWritten(of, parts) {
  switch (of.shape) {
    case 'quantity':
      return quantityWords(of, parts);
    case 'text':
      return 'text';
    case 'figure':
      return 'a quantity or a number';
    case 'number':
      return {
        ratio: 'a number, `1/40`, `0.025` or `2.5 %`',
        fraction: 'a fraction, `0.3` or `30 %`',
        count: 'a whole number',
        isoSpeed: 'an index, `800`',
      }[of.as];
    case 'rate':
      return 'an exact rate, `25` or `24000/1001`';
    case 'choice':
      return Object.entries(of.words)
        .map(([word, says]) => `${code(word)}: ${says}`)
        .join('; ');
    case 'flag':
      return '`yes` or `no`';
    case 'shutter':
      return 'a time, `1/2000 s`, or an angle, `172.8°`';
    case 'size':
      return 'pixels across and down, `4096 x 2304`';
    case 'position':
      return 'three lengths, right, away and up from the subject point, `0.8 m, -1.2 m, 1.5 m`';
    case 'clock':
      return "a time of day, `'07:30'`, after midnight `'25:15'`";
    case 'reference':
      return `an id of ${code(of.to)}`;
    case 'list':
      return `a list: ${of.of.shape === 'record' ? 'of maps, below' : howWritten(of.of, parts)}`;
    case 'map':
      return 'entries under ids, below';
    case 'record':
      return 'keys, below';
  }
}

/**
 * @param {QuantityShape} of
 * @param {ShootPageParts} parts
 */
function quantityWords({ kind: name, spread, least, above }, { kinds, writeQuantity }) {
  const kind = /** @type {Kind} */ (kinds[name]);
  const examples = kind.example.split(' or ').map(code).join(' or ');
  const floor = !above && least === 0 ? ', zero allowed' : least > 0 ? `, at least ${writeQuantity(name, least)}` : '';
  return `[${kind.name}](#${anchorOf(name)}), ${examples}${floor}${spread ? ', ± a spread' : ''}`;
}

const anchorOf = (/** @type {string} */ kind) =>
  `unit-${kind.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/**
 * The table of one map of keys, then those of what stands inside it.
 * @param {string} path
 * @param {FieldTable} fields
 * @param {ShootPageParts} parts
 * @returns {readonly string[]}
 */
function fieldTables(path, fields, parts) {
  const rows = Object.entries(fields).map(([key, { of, says }]) => [code(key), howWritten(of, parts), says]);
  const inside = Object.entries(fields).flatMap(([key, { of }]) =>
    tablesInside(path === '' ? key : `${path}.${key}`, of, parts),
  );
  return [table(['Key', 'Written as', 'What it is'], rows), ...inside];
}

/**
 * @param {string} path
 * @param {Shape} of
 * @param {ShootPageParts} parts
 * @returns {readonly string[]}
 */
function tablesInside(path, of, parts) {
  const heading = (/** @type {string} */ at) => `### \`${at}\``;
  if (of.shape === 'record') return [heading(path), ...fieldTables(path, of.fields, parts)];
  if ((of.shape !== 'map' && of.shape !== 'list') || of.of.shape !== 'record') return [];
  const at = of.shape === 'map' ? `${path}.<id>` : `${path}[]`;
  return [heading(at), ...fieldTables(at, of.of.fields, parts)];
}

/**
 * One section of the document.
 * @param {string} key
 * @param {Shape} of
 * @param {string} says
 * @param {ShootPageParts} parts
 */
function section(key, of, says, parts) {
  const heading = `## \`${key}\``;
  if (key === 'defaults')
    return [
      heading,
      says,
      'The keys are those of a shot, without `title` and `note`: see [shots](#shots). One level: a shot that has a key does not look here for it.',
    ];
  if (of.shape !== 'record' && of.shape !== 'map') return [heading, says, `Written as ${howWritten(of, parts)}.`];
  const fields = of.shape === 'record' ? of.fields : of.of.shape === 'record' ? of.of.fields : {};
  const under = of.shape === 'map' ? ['Each entry stands under an id of its own.'] : [];
  return [heading, says, ...under, ...fieldTables(of.shape === 'map' ? `${key}.<id>` : key, fields, parts)];
}

/** @param {Readonly<Record<string, Kind>>} kinds */
function unitTable(kinds) {
  const rows = Object.entries(kinds)
    .filter(([, { units }]) => units.length > 0)
    .map(([name, { name: title, units, example }]) => [
      `<a id="${anchorOf(name)}"></a>${title}`,
      units.map(({ symbol }) => symbol).join(', '),
      example.split(' or ').map(code).join(' or '),
    ]);
  const bare = Object.entries(kinds)
    .filter(([, { units }]) => units.length === 0)
    .map(([name, { name: title, example }]) => [`<a id="${anchorOf(name)}"></a>${title}`, '', code(example)]);
  return table(['Quantity', 'Units', 'Example'], [...rows, ...bare]);
}

/**
 * The page, as Markdown before it is formatted.
 * @param {ShootPageParts} parts
 */
export function shootPage(parts) {
  const { shoot, kinds, example } = parts;
  const sections = Object.entries(shoot.fields)
    .filter(([key]) => key !== 'longsecond')
    .flatMap(([key, { of, says }]) => section(key, of, says, parts));
  return [
    '# Writing a shoot',
    '<!-- Made by `npm run docs` from src/document/schema.ts and src/base/kinds.ts: edit those, not this page. -->',
    'A shoot is one text file, YAML or JSON, whose first line is `longsecond: 1`. This page lists every key it may have. Nothing in it has to be there: what is left out is worked out, or taken at a default that the plan names, or it leaves the limits that need it *unknown*. What is written is respected.',
    'Begin with this and change it; it is read and planned by the tests.',
    `\`\`\`yaml\n${example.trimEnd()}\n\`\`\``,
    'Then ask for its plan: `longsecond plan first-shoot.yaml`. What cannot be used is listed with its line, what was expected and the nearest name.',
    'Some keys are kept for work that no plan does yet: cables, circuits, the latency of rigs, liquids, links, the hours of the day. They are read and checked, and no limit rests on them so far.',
    '## How values are written',
    [
      '- A quantity carries its unit: `1/2000 s`, `41 klx`, `5\'6"`, `64 GiB`. A bare number where a unit is needed is a problem, and the message names the units. The units are listed at the [end of this page](#units).',
      '- A figure that was measured or guessed may carry its spread: `62 klx ± 8 %`, `1.5 m/s ± 0.2 m/s`. Eight cases in ten lie within it. Without one, the usual spread of such a figure is taken.',
      '- A frame rate is exact: `25`, `24000/1001`. A rounded name such as 23.976 is refused, and the message gives the rate it stands for.',
      '- A stop is written as engraved: `T5.6`, `T5.6⅓`, `T8`. T-stops, not f-stops: see the [glossary](../glossary.md).',
      '- An id is a letter, then letters, digits and hyphens. It never changes, as others refer to it; `title` is what people call the thing, and may change at any time.',
      '- A map of entries has no order. Where an order matters, `order` gives it.',
      '- Anchors, aliases, tags and a key written twice are refused: the file must mean to every reader what it means to you.',
      '- Comments stay where they are when a screen or a patch changes a value.',
    ].join('\n'),
    ...sections,
    '## Units',
    'A unit in another letter case is understood where it cannot be mistaken. Spaces may stand between thousands; the decimal sign is a point.',
    unitTable(kinds),
  ].join('\n\n');
} // prettier-ignore
