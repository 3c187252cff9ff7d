/** The page of every law, made from the catalogue that the command and the screens use. */

/** @typedef {import('../../src/laws/law.ts').AnyLaw} AnyLaw */

/**
 * @typedef {object} LawsPageParts
 * @property {typeof import('../../src/laws/catalogue.ts').SUBJECTS} subjects
 * @property {Pick<typeof import('../../src/laws/law.ts'), 'inputsOf' | 'resultsOf' | 'exampleOf'>} law
 * @property {typeof import('../../src/laws/reckon.ts')} reckon
 * @property {typeof import('../../src/laws/sources.ts')} sources
 * @property {Pick<typeof import('../../src/cli/verbs/reckon.ts'), 'HOW_SEEN' | 'exampleLine' | 'whatItTakes'>} command
 */

const cell = (/** @type {string} */ text) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
const code = (/** @type {string} */ text) => `\`${text}\``;

/**
 * @param {readonly string[]} head
 * @param {readonly (readonly string[])[]} rows
 */
function table(head, rows) {
  const line = (/** @type {readonly string[]} */ cells) => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/**
 * @param {AnyLaw} of
 * @param {LawsPageParts} parts
 */
function inputTable(of, { law, reckon, command }) {
  const rows = law.inputsOf(of).map((field) => {
    const fallback = field.default === undefined ? '' : reckon.writeInput(field, field.default);
    const words = Object.entries(field.choices ?? {}).map(([word, says]) => `${code(word)}: ${says}`);
    const more = [...(field.note === undefined ? [] : [field.note]), ...words].join('; ');
    const takes = command.whatItTakes(field, undefined);
    return [code(field.name), more === '' ? field.title : `${field.title}. ${more}`, takes, fallback];
  });
  return table(['Takes', 'What it is', 'Written as', 'If left out'], rows);
}

/**
 * @param {AnyLaw} of
 * @param {LawsPageParts} parts
 */
function resultTable(of, { law, reckon }) {
  const worked = reckon.computeLaw(of, law.exampleOf(of));
  if (!('results' in worked)) throw new Error(`The example of ${of.id} does not work: ${worked.what}`);
  const rows = worked.results.map(({ name, title, shown }) => {
    const space = shown.unit === '' || shown.unit === '°' ? '' : ' ';
    return [code(name), title, `${shown.number}${space}${shown.unit}`];
  });
  return table(['Gives', 'What it is', 'In the example'], rows);
}

/**
 * @param {AnyLaw} of
 * @param {LawsPageParts} parts
 */
function lawSection(of, parts) {
  const { sources, command } = parts;
  const cited = of.sources.map((key) => {
    const source = sources.SOURCES[key];
    if (!source) throw new Error(`${of.id} cites ${key}, which docs/sources.yaml does not list`);
    return `- ${code(key)}: ${source.title} (${command.HOW_SEEN[source.seen]})`;
  });
  const standing = sources.isAssumed(of.sources) ? 'Sources, none of them looked up: what rests on this law alone is shown as assumed.' : 'Sources:';
  const cautions = (of.cautions ?? []).map((key) => `[${key}](../safety.md#${key})`);
  return [
    `### ${of.title}`,
    `${code(of.id)}. ${of.says}`,
    `\`\`\`text\n${of.equation}\n\`\`\``,
    inputTable(of, parts),
    resultTable(of, parts),
    `Holds: ${of.holds}`,
    `${standing}\n\n${cited.join('\n')}`,
    ...(cautions.length > 0 ? [`Cautions: ${cautions.join(', ')}.`] : []),
    `\`\`\`sh\n${command.exampleLine(of)}\n\`\`\``,
  ];
} // prettier-ignore

/**
 * The page, as Markdown before it is formatted.
 * @param {LawsPageParts} parts
 */
export function lawsPage(parts) {
  const { subjects } = parts;
  const count = subjects.reduce((sum, { laws }) => sum + laws.length, 0);
  const list = subjects.flatMap(({ title, laws }) => [
    `- ${title}: ${laws.map(({ id }) => code(id)).join(', ')}`,
  ]);
  return [
    '# The laws',
    '<!-- Made by `npm run docs` from the law catalogue: edit the laws, not this page. -->',
    `Every number of a plan is worked out by one of these ${count} laws, or chosen among what can be set. Each says what it takes and gives, where it holds, and which sources it was checked against and how each was seen: *read*, *read in part*, *from memory*, or *common practice*. Any of them can be worked out alone with \`longsecond reckon\`, on the command line with the example given.`,
    list.join('\n'),
    ...subjects.flatMap(({ title, laws }) => [`## ${title}`, ...laws.flatMap((of) => lawSection(of, parts))]),
  ].join('\n\n');
} // prettier-ignore
