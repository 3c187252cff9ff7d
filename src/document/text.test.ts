import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixtureText, MIXED_TEXT } from '../../test/documents.ts';
import { Fault } from '../base/fault.ts';
import { showProblem } from './problem.ts';
import { readShootText } from './text.ts';
import { LARGEST_B } from './yamlTree.ts';

const laughs = `longsecond: 1
a: &a [lol, lol]
b: &b [*a, *a]
c: [*b, *b]
`;

describe('what is no shoot document is refused', () => {
  test.each<[title: string, text: string, code: string, line: number | undefined]>([
    ['a tab for indentation', 'longsecond: 1\nshots:\n\tpour-1: {}\n', 'document.not-yaml', 3],
    ['a map inside a line', 'longsecond: 1\nshoot: title: x\n', 'document.not-yaml', 2],
    ['junk', 'longsecond: 1\n]]]]\n', 'document.not-yaml', 2],
    ['a stray key', 'longsecond: 1\nshots:\n  pour-1: {}\n bad: 1\n', 'document.not-yaml', 4],
    ['a word where a key should be', 'longsecond: 1\nshots\nkit: {}\n', 'document.not-yaml', 2],
    ['two documents', 'longsecond: 1\n---\nlongsecond: 1\n', 'document.not-yaml', 2],
    ['another version of YAML', '%YAML 1.1\n---\nlongsecond: 1\n', 'document.not-yaml', 1],
    ['a list for a key', 'longsecond: 1\n? [a]\n: 1\n', 'document.not-yaml', 2],
    ['an anchor', 'longsecond: 1\nshoot: &a { title: x }\n', 'document.anchors', 2],
    ['an alias', 'longsecond: 1\nshoot: *a\n', 'document.anchors', 2],
    ['a merge of an anchor', 'longsecond: 1\nx: &a {}\ny: { <<: *a }\n', 'document.anchors', 2],
    ['a billion laughs', laughs, 'document.anchors', 2],
    ['a tag of another language', 'longsecond: 1\nx: !!python/object/apply:os.system [ls]\n', 'document.tags', 2],
    ['a plain tag', 'longsecond: 1\nx: ! 5\n', 'document.tags', 2],
    ['a tag on a key', 'longsecond: 1\n!!str x: 5\n', 'document.tags', 2],
    ['a named tag', '%TAG ! tag:x,2000:\n---\nlongsecond: 1\n', 'document.tags', 1],
    ['a key twice', 'longsecond: 1\nshots:\n  a: {}\n  a: {}\n', 'document.duplicate-key', 4],
    ['a key twice, once in quotes', 'longsecond: 1\nshots: { a: 1, "a": 2 }\n', 'document.duplicate-key', 2],
    ['a number and its text as keys', 'longsecond: 1\n1: a\n"1": b\n', 'document.duplicate-key', 3],
    ['JSON that breaks off', '{"longsecond": 1, "shots": {"a": {', 'document.truncated', 1],
    ['JSON that breaks off within a word', '{"longsecond": 1, "sho', 'document.truncated', 1],
    ['a quote never closed', 'longsecond: 1\nshoot:\n  title: "Honey\n', 'document.truncated', 4],
    ['a list never closed', 'longsecond: 1\nshoot:\n  day: { meals: [12:30', 'document.truncated', 3],
    ['a key cut short', 'longsecond: 1\nshoot:\n  title: x\n  pla', 'document.truncated', 4],
    ['nothing', '', 'document.not-a-shoot', undefined],
    ['comments alone', '# nothing yet\n', 'document.not-a-shoot', undefined],
    ['a word', 'hello', 'document.not-a-shoot', undefined],
    ['a list', '- longsecond: 1\n', 'document.not-a-shoot', undefined],
    ['a map of something else', 'title: x\n', 'document.not-a-shoot', undefined],
    ['a version that is none', 'longsecond: yes\n', 'document.not-a-shoot', undefined],
    ['version zero', 'longsecond: 0\n', 'document.not-a-shoot', undefined],
    ['a newer version', 'longsecond: 2\nshots: {}\n', 'document.newer-version', undefined],
    ['lists a hundred thousand deep', `longsecond: 1\nx: ${'['.repeat(100_000)}`, 'document.too-deep', 2],
    ['maps too deep in blocks', `longsecond: 1\nx:\n  ${'- '.repeat(200)}a`, 'document.too-deep', 3],
  ])('%s', (_title, text, code, line) => {
    const refused = expect.objectContaining({ name: 'Fault', code, where: line === undefined ? expect.any(String) as string : expect.stringMatching(new RegExp(`^line ${line}, column \\d+$`)) as string }) as Error; // prettier-ignore
    expect(() => readShootText(text)).toThrow(refused);
  });

  test('a newer version is named, with the version that can be read', () => {
    expect(() => readShootText('longsecond: 7\n')).toThrow(/version 7.*up to version 1/);
  });

  test('a document over 5 MB is refused, counted in bytes', () => {
    const filled = (letter: string, size_B: number) => `longsecond: 1\n#${letter.repeat(size_B)}\n`;
    const over = filled('x', LARGEST_B);
    const overInBytes = filled('é', LARGEST_B / 2);
    const within = filled('€', Math.floor(LARGEST_B / 3) - 20);
    for (const text of [over, overInBytes])
      expect(() => readShootText(text)).toThrow(expect.objectContaining({ code: 'document.too-large' }));
    expect(readShootText(within).problems).toEqual([]);
  });

  test('a document of more marks than any shoot is refused before it is built', () => {
    const text = `longsecond: 1\nx: [${'1,'.repeat(600_000)}]\n`;
    expect(() => readShootText(text)).toThrow(expect.objectContaining({ code: 'document.too-large' }));
  });
});

describe('what is written is read as YAML’s core schema has it', () => {
  const written = (text: string) => readShootText(`longsecond: 1\n${text}`).written;

  test('times of day, dates and fractions stay text; numbers are numbers', () => {
    expect(written('a: 12:30\nb: 2031-03-14\nc: 1/2000 s\nd: 25\ne: yes\nf: 1e3\ng: 0x1f\nh: ~')).toEqual({
      longsecond: 1, a: '12:30', b: '2031-03-14', c: '1/2000 s', d: 25, e: 'yes', f: 1000, g: 31, h: null,
    }); // prettier-ignore
  });

  test('numbers that JSON lacks stay the text they are', () => {
    expect(written('a: .inf\nb: -.INF\nc: .nan\nd: 1e999\ne: -0')).toEqual({
      longsecond: 1, a: '.inf', b: '-.INF', c: '.nan', d: '1e999', e: 0,
    }); // prettier-ignore
  });

  test('a key is the text it is written as', () => {
    expect(written('1.0: a\ntrue: b\n~: c')).toEqual({ longsecond: 1, '1.0': 'a', true: 'b', '~': 'c' });
  });

  test('a key named __proto__ is a key like others, and a problem', () => {
    const { written: value, problems } = readShootText('longsecond: 1\nshots:\n  __proto__: { x: 1 }\n');
    expect(JSON.stringify(value)).toBe('{"longsecond":1,"shots":{"__proto__":{"x":1}}}');
    expect(problems).toMatchObject([{ code: 'id.malformed', path: '/shots/__proto__', line: 3, column: 3 }]);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  });

  test('JSON is read too, indented by tabs or not', () => {
    const value = { longsecond: 1, shots: { 'pour-1': { title: 'a\u{1f600}"\\/', stop: 5.6 } } };
    for (const indent of [0, 2, '\t']) {
      const { written: read, problems } = readShootText(JSON.stringify(value, null, indent));
      expect(read).toEqual(value);
      expect(problems).toEqual([]);
    }
  });

  test('a byte order mark and Windows line ends change nothing', () => {
    const text = fixtureText();
    const { written: value } = readShootText(text);
    expect(readShootText(`\uFEFF${text}`).written).toEqual(value);
    expect(readShootText(text.replaceAll('\n', '\r\n')).written).toEqual(value);
  });
});

describe('problems stand where they are written', () => {
  const text = `longsecond: 1
shots:
  pour-1:
    shuter: 1/2000 s
    stop: T5.6
    depth: 8
    lens: [a]
    hero:
  2nd: {}
  pour-2: { camera: tall, index: lots }
`;

  test('each with line and column, in the order of the text', () => {
    const { problems } = readShootText(text);
    expect(problems.map(({ code, path, line, column }) => [code, path, line, column])).toEqual([
      ['key.unknown', '/shots/pour-1/shuter', 4, 5],
      ['unit.missing', '/shots/pour-1/depth', 6, 12],
      ['value.wrong-type', '/shots/pour-1/lens', 7, 11],
      ['id.malformed', '/shots/2nd', 9, 3],
      ['reference.missing', '/shots/pour-2/camera', 10, 21],
      ['number.unreadable', '/shots/pour-2/index', 10, 34],
    ]);
  });

  test('columns are counted from one with a byte order mark and Windows line ends too', () => {
    const { problems } = readShootText(`\uFEFF${text.replaceAll('\n', '\r\n')}`);
    expect(problems[1]).toMatchObject({ line: 6, column: 12 });
    expect(readShootText('\uFEFFlongsecond: 1\nx: 1').problems[0]).toMatchObject({ line: 2, column: 1 });
  });

  test('a line for eyes has place, path, finding and nearest name', () => {
    const [first] = readShootText(text).problems;
    expect(showProblem(first!)).toBe(
      'line 4, column 5: /shots/pour-1/shuter: Found the key "shuter", which means nothing here (did you mean shutter?)',
    );
    expect(showProblem({ code: 'x', path: '', what: 'Found nothing' })).toBe('the document: Found nothing');
  });
});

test('what did not change since is the same object, and so is what was read from it', () => {
  const before = readShootText(fixtureText());
  const after = readShootText(fixtureText().replace('172.8°', '90°'), before.written);
  expect(after.shoot.shots['pour-1']).not.toBe(before.shoot.shots['pour-1']);
  expect(after.shoot.shots['splash-1']).toBe(before.shoot.shots['splash-1']);
  expect(after.shoot.kit).toBe(before.shoot.kit);
});

/** Reads, and lets nothing but a Fault be thrown. */
function readOrRefuse(text: string): void {
  try {
    readShootText(text);
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
  }
}

describe('whatever the text', () => {
  test('arbitrary text is read or refused by a Fault', () => {
    const marks = fc.constantFrom(...'{}[]:,-?&*!|>\'"%@`#\n\t ~\\', '\r\n', '- ', ': ', '\n  ', 'longsecond: 1\n');
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.string({ unit: marks, maxLength: 40 })), readOrRefuse), // prettier-ignore
      { numRuns: 3000 },
    );
  });

  test('a shoot with a piece cut out or put in is read or refused by a Fault', () => {
    const piece = fc.oneof(fc.string({ maxLength: 4 }), fc.constantFrom(':', '\n', ' ', '\t', '"', "'", '{', ']', '- ', '#', '|', '&', '*', '!', '\r')); // prettier-ignore
    fc.assert(
      fc.property(fc.nat(), fc.nat({ max: 30 }), piece, (where, cut, put) => {
        const at = where % MIXED_TEXT.length;
        readOrRefuse(MIXED_TEXT.slice(0, at) + put + MIXED_TEXT.slice(at + cut));
      }),
      { numRuns: 1000 },
    );
  }, 60_000);
});
