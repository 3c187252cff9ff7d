import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument, stringify, type Document } from 'yaml';
import { editDraws, fixtureText, MIXED_TEXT, patchOf, withComments, writtenKeys, writtenValues } from '../../test/documents.ts'; // prettier-ignore
import { applyPatch, type Operation, type Patch } from './patch.ts';
import { readShootText } from './text.ts';
import { applySplices, editText, undoSplices } from './textEdit.ts';
import { isRecord, isSame, memberOf, type Written, type WrittenRecord } from './written.ts';
import { parseTree } from './yamlTree.ts';

/** The text after one operation, or several. */
function edited(text: string, ...patch: Patch): string {
  return editText(text, patch).text;
}

const replace = (path: string, value: Written): Operation => ({ op: 'replace', path, value });
const add = (path: string, value: Written): Operation => ({ op: 'add', path, value });
const remove = (path: string): Operation => ({ op: 'remove', path });

const head = 'longsecond: 1\n';

interface Example {
  readonly title: string;
  readonly before: string;
  readonly patch: Patch;
  readonly after: string;
}

/** What stands after the first line, which all examples share. */
function examples(cases: readonly Example[]): void {
  test.each(cases)('$title', ({ before, patch, after }) => {
    expect(edited(head + before, ...patch)).toBe(head + after);
  });
}

describe('one value in place of another', () => {
  examples([
    { title: 'changes only its characters', before: 'a:\n  b:   1/2000 s   # fast\n  c: 1\n', patch: [replace('/a/b', '90°')], after: 'a:\n  b:   90°   # fast\n  c: 1\n' },
    { title: 'keeps double quotes', before: 'a: "x" # why\n', patch: [replace('/a', 'it\'s "so"')], after: 'a: "it\'s \\"so\\"" # why\n' },
    { title: 'keeps single quotes', before: "a: 'x'\n", patch: [replace('/a', "it's")], after: "a: 'it''s'\n" },
    { title: 'leaves single quotes where they cannot hold it', before: "a: 'x'\n", patch: [replace('/a', 'x\ty\n')], after: 'a: "x\\ty\\n"\n' },
    { title: 'drops quotes that a number must not have', before: 'a: "x"\n', patch: [replace('/a', 5)], after: 'a: 5\n' },
    { title: 'quotes text that would be read as a number', before: 'a: x\n', patch: [replace('/a', '5')], after: 'a: "5"\n' },
    { title: 'quotes text that would be read as nothing', before: 'a: x\n', patch: [replace('/a', '~')], after: 'a: "~"\n' },
    { title: 'quotes text that would begin a comment', before: 'a: x\n', patch: [replace('/a', 'b #c')], after: 'a: "b #c"\n' },
    { title: 'quotes with apostrophes where that needs no escapes', before: 'a: x\n', patch: [replace('/a', '"b": c')], after: `a: '"b": c'\n` },
    { title: 'writes feet and inches plain', before: 'a: x\n', patch: [replace('/a', `5'6"`)], after: `a: 5'6"\n` },
    { title: 'quotes commas in a flow map but not outside', before: 'a: x\nb: { c: x }\n', patch: [replace('/a', 'x, y'), replace('/b/c', 'x, y')], after: 'a: x, y\nb: { c: "x, y" }\n' },
    { title: 'fills a key that has none', before: 'a: # later\nb: 1\n', patch: [replace('/a', 'x')], after: 'a: x # later\nb: 1\n' },
    { title: 'fills a key without a colon in a flow map', before: 'a: { b, c: }\n', patch: [replace('/a/b', 1), replace('/a/c', 2)], after: 'a: { b: 1, c: 2 }\n' },
    { title: 'fills an item that says nothing', before: 'a:\n  -\n  - b\n', patch: [replace('/a/0', 'x')], after: 'a:\n  - x\n  - b\n' },
    { title: 'stays on the line after its key', before: 'a:\n  long text\n  over lines\nb: 1\n', patch: [replace('/a', 'short')], after: 'a: short\nb: 1\n' },
    { title: 'replaces a literal block by another', before: 'a: | # story\n  one\n  two\n\nb: 1\n', patch: [replace('/a', 'three\n\nfour\n')], after: 'a: | # story\n  three\n\n  four\n\nb: 1\n' },
    { title: 'replaces a literal block by a word', before: 'a: |- # story\n  one\n  two\nb: 1\n', patch: [replace('/a', 'x')], after: 'a: x # story\nb: 1\n' },
    { title: 'writes text of several lines as a literal block', before: 'a: x # why\nb: 1\n', patch: [replace('/a', 'one\ntwo')], after: 'a: |- # why\n  one\n  two\nb: 1\n' },
    { title: 'changes an item of a flow list', before: 'a: [b, "c" , d]\n', patch: [replace('/a/1', 'x')], after: 'a: [b, "x" , d]\n' },
    { title: 'changes an item of a block list', before: 'a:\n- b # first\n- c\n', patch: [replace('/a/0', 'x')], after: 'a:\n- x # first\n- c\n' },
    { title: 'changes a value of a map on a dash', before: 'a:\n  - b: 1\n    c: 2 # c\n', patch: [replace('/a/0/b', 5), replace('/a/0/c', 6)], after: 'a:\n  - b: 5\n    c: 6 # c\n' },
    { title: 'changes the pair of a list', before: 'a: [b: 1, c]\n', patch: [replace('/a/0/b', 2)], after: 'a: [b: 2, c]\n' },
    { title: 'changes the value of an explicit key', before: '? a\n: 1\n', patch: [replace('/a', 2)], after: '? a\n: 2\n' },
    { title: 'makes a map of a word, its comment staying on the line', before: 'a: x # why\nb: 1\n', patch: [replace('/a', { c: 1, d: { e: 'f' } })], after: 'a: # why\n  c: 1\n  d:\n    e: f\nb: 1\n' },
    { title: 'makes a word of a map', before: 'a: # why\n  c: 1 # one\n  # inside\nb: 1\n', patch: [replace('/a', 'x')], after: 'a: x # why\nb: 1\n' },
    { title: 'makes a list of a map', before: 'a:\n  c: 1\nb: 1\n', patch: [replace('/a', [{ d: 1 }, { e: [] }])], after: 'a:\n  - { d: 1 }\n  - e: []\nb: 1\n' },
    { title: 'makes a word of a map on a dash', before: 'a:\n  - b: 1\n    c: 2\n  - d\n', patch: [replace('/a/0', 'x')], after: 'a:\n  - x\n  - d\n' },
    { title: 'makes nests of an item', before: 'a:\n  - x\n', patch: [replace('/a/0', { b: { c: 1 }, d: 2 })], after: 'a:\n  - b:\n      c: 1\n    d: 2\n' },
  ]); // prettier-ignore
});

describe('a key that is added', () => {
  examples([
    { title: 'stands on a line of its own at the end of its map', before: 'a:\n    b: 1\nc: 2\n', patch: [add('/a/d', 'x')], after: 'a:\n    b: 1\n    d: x\nc: 2\n' },
    { title: 'stands after the comments that end its map', before: 'a:\n  b: 1\n\n  # last of a\n# about c\nc: 2\n', patch: [add('/a/d', 1)], after: 'a:\n  b: 1\n\n  # last of a\n  d: 1\n# about c\nc: 2\n' },
    { title: 'stands in the outer map after what belongs to the inner', before: 'a:\n  b:\n    c: 1\n    # in b\n', patch: [add('/a/d', 1)], after: 'a:\n  b:\n    c: 1\n    # in b\n  d: 1\n' },
    { title: 'gives its document no line end it did not have', before: 'a:\n  b: 1', patch: [add('/a/c', 2), add('/d', { e: 3 })], after: 'a:\n  b: 1\n  c: 2\nd:\n  e: 3' },
    { title: 'stands before the end mark of the document', before: 'a: 1\n...\n', patch: [add('/b', 2)], after: 'a: 1\nb: 2\n...\n' },
    { title: 'takes the indentation of the document', before: 'a:\n    b: 1\n', patch: [add('/c', { d: { e: 1 } })], after: 'a:\n    b: 1\nc:\n    d:\n        e: 1\n' },
    { title: 'goes into an empty map', before: 'a: {} # none yet\n', patch: [add('/a/b', 1)], after: 'a: # none yet\n  b: 1\n' },
    { title: 'goes into a flow map on its line', before: 'a: {b: 1}\nc: { d: 1, }\n', patch: [add('/a/e', 2), add('/c/e', 2)], after: 'a: {b: 1, e: 2}\nc: { d: 1, e: 2, }\n' },
    { title: 'goes into a flow map over lines', before: 'a: {\n    b: 1 # one\n  }\n', patch: [add('/a/c', { d: [] })], after: 'a: {\n    b: 1, # one\n    c: {\n      d: []\n    }\n  }\n' },
    { title: 'stays in line where the flow map has no line for it', before: 'a: { b: 1,\n  c: 2 }\n', patch: [replace('/a/b', { d: 1 })], after: 'a: { b: { d: 1 },\n  c: 2 }\n' },
    { title: 'is quoted where it must be', before: 'a: 1\n', patch: [add('/b: c', 1), add('/5', 1)], after: 'a: 1\n"5": 1\n"b: c": 1\n' },
    { title: 'follows a literal block that keeps its blank lines', before: 'a: |+\n  x\n\n', patch: [add('/b', 1)], after: 'a: |+\n  x\n\nb: 1\n' },
    { title: 'written over another is a value in its place', before: 'a: 1\nb: 2\n', patch: [add('/a', 3)], after: 'a: 3\nb: 2\n' },
  ]); // prettier-ignore
});

describe('what is removed', () => {
  examples([
    { title: 'takes its line, the comment on it and those right above', before: 'a: 1\n# of b\n# too\nb: 2 # b\nc: 3\n', patch: [remove('/b')], after: 'a: 1\nc: 3\n' },
    { title: 'leaves comments that a blank line sets off', before: 'a: 1\n\n# a heading\n\nb: 2\nc: 3\n', patch: [remove('/b')], after: 'a: 1\n\n# a heading\n\nc: 3\n' },
    { title: 'leaves comments of another indentation', before: 'a:\n  b: 1\n  # in a\n# of c\nc: 3\nd: 4\n', patch: [remove('/c')], after: 'a:\n  b: 1\n  # in a\nd: 4\n' },
    { title: 'takes all that lies within it', before: 'a:\n  b:\n    c: 1\n\n    # in b\n  # of d\n  d: 2\n', patch: [remove('/a/b')], after: 'a:\n  # of d\n  d: 2\n' },
    { title: 'leaves an empty map where it was the last', before: 'a: # things\n  b: 1\nc: 2\n', patch: [remove('/a/b')], after: 'a: {} # things\nc: 2\n' },
    { title: 'leaves comments in the map that it empties', before: 'a:\n  # free\n\n  b: 1\nc: 2\n', patch: [remove('/a/b')], after: 'a: {}\n  # free\n\nc: 2\n' },
    { title: 'leaves an empty list where it was the last', before: 'a:\n  - b\nc: 2\n', patch: [remove('/a/0')], after: 'a: []\nc: 2\n' },
    { title: 'at the end leaves a document without a line end so', before: 'a: 1\nb: 2', patch: [remove('/b')], after: 'a: 1' },
    { title: 'closes the gap in a flow map', before: 'a: { b: 1, c: 2, d: 3 }\n', patch: [remove('/a/b')], after: 'a: { c: 2, d: 3 }\n' },
    { title: 'closes the gap at the end of a flow map', before: 'a: {b: 1, c: 2}\n', patch: [remove('/a/c')], after: 'a: {b: 1}\n' },
    { title: 'takes its own comments out of a flow map', before: 'a: {\n  b: 1, # b\n  # of c\n  c: 2, # c\n  d: 3 # d\n}\n', patch: [remove('/a/c')], after: 'a: {\n  b: 1, # b\n  d: 3 # d\n}\n' },
    { title: 'leaves the comment of the item before it', before: 'a: [\n  b, # b\n  c # c\n]\n', patch: [remove('/a/1')], after: 'a: [\n  b # b\n]\n' },
    { title: 'leaves comments set off in a flow map', before: 'a: {\n  b: 1,\n\n  # free\n\n  c: 2,\n  d: 3\n}\n', patch: [remove('/a/c')], after: 'a: {\n  b: 1,\n\n  # free\n  d: 3\n}\n' },
    { title: 'takes an item of a block list', before: 'a:\n- b # b\n# of c\n- c\n- d\n', patch: [remove('/a/1')], after: 'a:\n- b # b\n- d\n' },
    { title: 'takes the first key off a dash', before: 'a:\n  - b: 1\n    c: 2\n', patch: [remove('/a/0/b')], after: 'a:\n  - c: 2\n' },
    { title: 'takes the first keys off a dash and leaves the comments of the next', before: 'a:\n  - b: 1 # b\n    c: 2\n    # of d\n    d: 3\n', patch: [remove('/a/0/b'), remove('/a/0/c')], after: 'a:\n  -\n    # of d\n    d: 3\n' },
    { title: 'leaves blank lines after a literal block', before: 'a: |\n  x\n\nb: 1\n', patch: [remove('/a')], after: '\nb: 1\n' },
  ]); // prettier-ignore
});

describe('items of a list', () => {
  examples([
    { title: 'are put in where they belong', before: 'a:\n  - b # b\n  # of c\n  - c\n', patch: [add('/a/1', 'x')], after: 'a:\n  - b # b\n  - x\n  # of c\n  - c\n' },
    { title: 'are put in at the end', before: 'a:\n  - b # b\nc: 1\n', patch: [add('/a/-', { d: 1 })], after: 'a:\n  - b # b\n  - { d: 1 }\nc: 1\n' },
    { title: 'are put in at the start of a flow list', before: 'a: [b, c]\n', patch: [add('/a/0', 'x')], after: 'a: [x, b, c]\n' },
    { title: 'go into an empty list', before: 'a: []\n', patch: [add('/a/-', 'x')], after: 'a: [x]\n' },
    { title: 'replaced as a whole keep what is alike at both ends', before: 'a:\n  - b # b\n  - c # c\n  - d # d\n', patch: [replace('/a', ['b', 'x', 'y', 'd'])], after: 'a:\n  - b # b\n  - x # c\n  - y\n  - d # d\n' },
    { title: 'in nested dashes are put in too', before: 'a:\n  - - b\n    - c\n', patch: [add('/a/0/-', 'd')], after: 'a:\n  - - b\n    - c\n    - d\n' },
  ]); // prettier-ignore
});

describe('what is moved', () => {
  examples([
    { title: 'takes its comments along', before: 'a:\n  # of b\n  b: # on b\n    c: 1 # one\n  d: 2\ne:\n    f: 1\n', patch: [{ op: 'move', from: '/a/b', path: '/e/g' }], after: 'a:\n  d: 2\ne:\n    f: 1\n    # of b\n    g: # on b\n      c: 1 # one\n' },
    { title: 'comes up a level too', before: 'a:\n  b:\n    c: { d: 1 } # one\n  e: 1\n', patch: [{ op: 'move', from: '/a/b/c', path: '/c' }], after: 'a:\n  b: {}\n  e: 1\nc: { d: 1 } # one\n' },
    { title: 'is written out when copied', before: 'a:\n  b: { c: 1 }\n', patch: [{ op: 'copy', from: '/a/b', path: '/a/d' }], after: 'a:\n  b: { c: 1 }\n  d: { c: 1 }\n' },
  ]); // prettier-ignore
});

describe('JSON', () => {
  const text = `{
  "longsecond": 1,
  "shots": {
    "a": { "stop": "T8" },
    "b": {}
  }
}
`;

  test('stays JSON, and changes only where it must', () => {
    expect(edited(text, replace('/shots/a/stop', 'T4'))).toBe(text.replace('T8', 'T4'));
    expect(edited(text, add('/shots/c', { title: 'x', rigs: [1] }))).toBe(
      text.replace('"b": {}', '"b": {},\n    "c": {\n      "title": "x",\n      "rigs": [1]\n    }'),
    );
    expect(edited(text, remove('/shots/b'))).toBe(text.replace(',\n    "b": {}', ''));
    expect(edited(text, add('/shots/a/index', 800))).toBe(text.replace('"T8" }', '"T8", "index": 800 }'));
    expect(edited('{"longsecond":1,"a":2}', add('/b', 'x'))).toBe('{"longsecond":1,"a":2,"b": "x"}');
  });

  test('in one line stays in one line', () => {
    expect(edited('{"longsecond": 1}', add('/shots', { a: {} }))).toBe('{"longsecond": 1, "shots": {"a": {}}}');
  });
});

describe('the bytes around an edit', () => {
  test('an empty patch, and one that says nothing new, return the same text', () => {
    for (const text of [fixtureText(), MIXED_TEXT, `\uFEFF${head}`]) {
      expect(editText(text, [])).toMatchObject({ text, splices: [] });
      expect(editText(text, [replace('/longsecond', 1)])).toMatchObject({ text, splices: [] });
    }
  });

  test('Windows line ends and a byte order mark stay, and new lines have them too', () => {
    const text = `\uFEFF${fixtureText().replaceAll('\n', '\r\n')}`;
    const patch = [
      add('/shots/splash-1/depth', '8 mm'),
      remove('/kit/liquids/honey'),
      replace('/deliverables/wide/note', 'one\ntwo\n'),
      replace('/shots/pour-1/hero', 'x'),
    ];
    const plain = edited(fixtureText(), ...patch);
    expect(edited(text, ...patch)).toBe(`\uFEFF${plain.replaceAll('\n', '\r\n')}`);
  });

  test('a splice never holds half a character', () => {
    const { splices } = editText(`${head}a: x\u{1f600}y\n`, [replace('/a', 'x\u{1f601}y')]);
    expect(splices).toEqual([{ at: 18, removed: '\u{1f600}', inserted: '\u{1f601}' }]);
  });

  test('the splices name only what differs', () => {
    const { splices } = editText(fixtureText(), [replace('/shots/splash-1/shutter', '1/2500 s')]);
    expect(splices).toEqual([{ at: fixtureText().indexOf('1/2000 s') + 3, removed: '0', inserted: '5' }]);
  });
});

test('where a part cannot be printed in its place, the part around it is printed anew, and no more', () => {
  const text = `${head}# of a\na: { b: {\n  c: 1 }, d: 2 }\ne: 3 # kept\n`;
  const patch = [replace('/a/b', { x: { y: 1 } })];
  expect(edited(text, ...patch)).toBe(`${head}# of a\na:\n  b:\n    x:\n      y: 1\n  d: 2\ne: 3 # kept\n`);
});

test('a copy whose lines cannot stand in the new place is printed there, and all else keeps its comments', () => {
  const text = withComments(MIXED_TEXT, [0, 0, 0, 0, 0, 0, 0]);
  const after = edited(text, { op: 'copy', from: '/deliverables/wide', path: '/a' }).split('\n');
  expect(text.split('\n').filter((line) => !after.includes(line))).toEqual([]);
  expect(after).toContain('a:');
});

describe('edits that no text could hold are refused', () => {
  test.each<[title: string, code: string, patch: Patch]>([
    ['a document without its version', 'document.not-a-shoot', [remove('/longsecond')]],
    ['a document of a newer version', 'document.newer-version', [replace('/longsecond', 2)]],
    ['a document that is a list', 'document.not-a-shoot', [replace('', [])]],
    ['a value nested too deep', 'document.too-deep', [add('/x', JSON.parse('['.repeat(64) + ']'.repeat(64)) as Written)]],
    ['a key longer than YAML takes', 'edit.key-too-long', [add(`/${'k'.repeat(1100)}`, 1)]],
    ['a document that grows too large', 'document.too-large', [add('/x', 'x'.repeat(5_000_000))]],
    ['a place that is not there', 'patch.path-missing', [remove('/x')]],
  ])('%s', (_title, code, patch) => {
    expect(() => editText(head, patch)).toThrow(expect.objectContaining({ name: 'Fault', code }));
  }); // prettier-ignore

  test('the whole document may be another shoot', () => {
    const { text, written } = editText(MIXED_TEXT, [replace('', { longsecond: 1, shots: { a: { title: 'x' } } })]);
    expect(readShootText(text).written).toEqual(written);
    expect(text).toContain('# tail');
  });
});

/** Edits, carries them into the text, and holds the result against what they mean. */
function expectCarried(text: string, patch: Patch): string {
  const before = parseTree(text).written;
  const edit = editText(text, patch);
  const wanted = applyPatch(before, patch);
  expect(isSame(parseTree(edit.text).written, wanted), edit.text).toBe(true);
  expect(isSame(edit.written, wanted)).toBe(true);
  expect(applySplices(text, edit.splices)).toBe(edit.text);
  expect(applySplices(edit.text, undoSplices(edit.splices))).toBe(text);
  return edit.text;
}

/** Texts that say something, in many ways of writing it. */
const marks = fc.array(fc.nat(), { minLength: 7, maxLength: 40 });
const mixed = marks.map((at) => withComments(MIXED_TEXT, at));
const printed = fc
  .record({
    value: fc.dictionary(writtenKeys, writtenValues, { maxKeys: 5, noNullPrototype: true }),
    indent: fc.constantFrom(2, 3, 4),
    indentSeq: fc.boolean(),
    collectionStyle: fc.constantFrom('any', 'block', 'flow'),
    defaultStringType: fc.constantFrom('PLAIN', 'QUOTE_DOUBLE', 'QUOTE_SINGLE', 'BLOCK_LITERAL', 'BLOCK_FOLDED'),
    lineWidth: fc.constantFrom(0, 30, 80),
  } as const)
  .map(({ value, ...options }) => stringify({ longsecond: 1, ...value }, { ...options, aliasDuplicateObjects: false }));
const json = fc
  .tuple(fc.dictionary(writtenKeys, writtenValues, { maxKeys: 5, noNullPrototype: true }), fc.constantFrom(0, 2, '\t'))
  .map(([value, indent]) => JSON.stringify({ longsecond: 1, ...value }, null, indent));
const dressed = fc
  .tuple(fc.oneof(mixed, printed, json), fc.constantFrom('as is', 'crlf', 'bom', 'open'))
  .map(([text, dress]) => {
    if (dress === 'crlf') return text.replaceAll('\n', '\r\n');
    return dress === 'bom' ? `\uFEFF${text}` : dress === 'open' ? text.trimEnd() : text;
  })
  .filter((text) => isShoot(text));

function isShoot(text: string): boolean {
  try {
    const { written } = parseTree(text);
    return isRecord(written) && written['longsecond'] === 1;
  } catch {
    return false;
  }
}

describe('whatever the text and the edit', () => {
  test('reading the new text gives what the patch gives, and undoing it gives the same bytes', () => {
    fc.assert(
      fc.property(dressed, fc.array(editDraws, { minLength: 1, maxLength: 4 }), (text, draws) => {
        expectCarried(text, patchOf(parseTree(text).written, draws));
      }),
      { numRuns: 400 },
    );
  }, 120_000);

  test('a shoot with every section is edited again and again', () => {
    fc.assert(
      fc.property(marks, fc.array(editDraws, { minLength: 4, maxLength: 4 }), (at, draws) => {
        let text = withComments(fixtureText(), at);
        for (const draw of draws) text = expectCarried(text, patchOf(parseTree(text).written, [draw]));
      }),
      { numRuns: 10 },
    );
  }, 120_000);

  test('comments outside what is removed survive', () => {
    fc.assert(
      fc.property(marks, editDraws, (at, draw) => {
        const text = withComments(MIXED_TEXT, at);
        const patch = patchOf(parseTree(text).written, [draw]);
        const after = editText(text, patch);
        const gone = removedRanges(text, parseTree(text).written, after.written);
        for (const { offset, comment } of commentsOf(text)) {
          if (gone.some(([from, to]) => from <= offset && offset < to)) continue;
          expect(after.text.split(comment).length - 1, `${comment} after ${JSON.stringify(patch)}`).toBeGreaterThan(0);
        }
      }),
      { numRuns: 200 },
    );
  }, 120_000);
});

/** Every comment of a text that is no part of a scalar, by another reading of it than ours. */
function commentsOf(text: string): readonly { readonly offset: number; readonly comment: string }[] {
  const scalars: (readonly [number, number])[] = [];
  const document = parseDocument(text, { uniqueKeys: false });
  const visit = (node: unknown): void => {
    const { items, key, value, range } = node as { items?: unknown[]; key?: unknown; value?: unknown; range?: [number, number, number] }; // prettier-ignore
    if (items) items.forEach(visit);
    else if (key !== undefined) [key, value].filter((part) => part !== null).forEach(visit);
    else if (range) scalars.push([range[0], range[1]]);
  };
  visit(document.contents);
  const found: { offset: number; comment: string }[] = [];
  for (const match of text.matchAll(/(?<=^|\s)#[^\r\n]*/gm)) {
    const offset = match.index;
    const isFolded = scalars.some(([from, to]) => from < offset && offset < to && !isHeader(text, from, offset));
    if (!isFolded) found.push({ offset, comment: match[0].trimEnd() });
  }
  return found;
}

/** Whether an offset is on the first line of a block scalar, where a comment may stand. */
function isHeader(text: string, from: number, offset: number): boolean {
  return /^[|>]/.test(text.slice(from)) && !text.slice(from, offset).includes('\n');
}

type Range = readonly [from: number, to: number];

/** The characters of every value that is not there any more, with the comments that are its own; lists that change length count whole. */
function removedRanges(text: string, before: Written, after: Written): readonly Range[] {
  const document = parseDocument(text, { uniqueKeys: false });
  const ranges: Range[] = [];
  const walk = (path: readonly string[], old: Written, now: Written | undefined): void => {
    if (now !== undefined && isSame(old, now)) return;
    if (now !== undefined && isRecord(old) && isRecord(now) && isInOldOrder(old, now)) {
      for (const key of Object.keys(old)) walk([...path, key], old[key]!, memberOf(now, key));
    } else if (Array.isArray(old) && Array.isArray(now) && old.length === now.length) {
      old.forEach((item: Written, i) => walk([...path, String(i)], item, (now as Written[])[i]));
    } else ranges.push(rangeOf(text, document, path, now === undefined));
  };
  walk([], before, after);
  return ranges;
}

/** Whether the two have something in common, first and in the old order: else the edit wrote the map anew. */
function isInOldOrder(old: WrittenRecord, now: WrittenRecord): boolean {
  const both = Object.keys(old).filter((key) => Object.hasOwn(now, key));
  return both.length > 0 && both.every((key, i) => Object.keys(now)[i] === key);
}

type Ranged = { readonly range?: readonly [start: number, valueEnd: number, nodeEnd: number] };

function rangeOf(text: string, document: Document, path: readonly string[], isGone: boolean): Range {
  const keys = path.map((key) => (/^\d+$/.test(key) ? Number(key) : key));
  const node = document.getIn(keys, true) as Ranged | undefined;
  const parent = document.getIn(keys.slice(0, -1), true) as { items: { key?: Ranged & { readonly value: unknown } }[] };
  const key = parent.items.find((item) => item.key?.value === path.at(-1))?.key;
  const keyStart = key?.range?.[0] ?? node?.range?.[0] ?? 0;
  const [start, end] = [node?.range?.[0] ?? keyStart, node?.range?.[1] ?? keyStart];
  const lineOfKey = lineEndAfter(text, key?.range?.[1] ?? start);
  const isInLine = !isGone && start <= lineOfKey;
  if (isInLine && !/^[|>]/.test(text.slice(start))) return [start, end];
  // What stands on lines of its own takes the comments under it that are indented deeper, and what is gone those above.
  const column = keyStart - lineStart(text, keyStart);
  return [isGone ? aboveComments(text, keyStart, column) : lineOfKey, deeperComments(text, end, column)];
}

const lineEndAfter = (text: string, at: number): number => (text.indexOf('\n', at) + 1 || text.length + 1) - 1;
const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

function aboveComments(text: string, at: number, column: number): number {
  let start = at;
  for (;;) {
    const line = lineStart(text, start);
    const above = line === 0 ? '' : text.slice(lineStart(text, line - 1), line);
    if (!above.startsWith(`${' '.repeat(column)}#`)) return start;
    start = lineStart(text, line - 1);
  }
}

function deeperComments(text: string, at: number, column: number): number {
  let end = lineEndAfter(text, text[at - 1] === '\n' ? at - 1 : at);
  for (let next = end; next < text.length;) {
    const line = text.slice(next + 1, lineEndAfter(text, next + 1));
    const isComment = /^ *#/.test(line);
    if ((line.trim() !== '' && !isComment) || (isComment && line.indexOf('#') <= column)) break;
    next = lineEndAfter(text, next + 1);
    if (isComment) end = next;
  }
  return end;
}
