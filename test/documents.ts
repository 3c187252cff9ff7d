/** Shoots, edits and comments made up for tests: every one drawn by fast-check, so that a failure can be replayed. */
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { KINDS, type Kind } from '../src/base/kinds.ts';
import { applyPatch, type Operation, type Patch } from '../src/document/patch.ts';
import { pointerTo } from '../src/document/pointer.ts';
import { readValue } from '../src/document/readValue.ts';
import type { QuantityShape, Shape } from '../src/document/shape.ts';
import { isList, isRecord, type Written, type WrittenRecord } from '../src/document/written.ts';

/** The frozen document of a version. */
export function fixtureText(version = 1): string {
  return readFileSync(new URL(`../src/document/fixtures/shoot-v${version}.yaml`, import.meta.url), 'utf8');
}

/** A small shoot that has every way of writing: block and flow, quotes, literals, comments in all places. */
export const MIXED_TEXT = `# head
longsecond: 1 # the version

shoot: { title: Mixed, day: { call: 07:30, meals: [12:30, 18:45] } } # in one line
deliverables:
  wide: {
    # how fast
    rate: 24000/1001, # exactly
    pixels: 4096 x 2160,

    # free in flow

    length: "30 s" # long
  }
  tall:
    rate: 25
    note: >-
      folded over
      two lines
# about the kit
kit:
  lenses:
    # own of macro
    macro:
      title: 'It''s "long"'
      focalLength: 100 mm # engraved

      # free in macro

      widest: T3.1
      # last in macro
  products:
    jar:
    cup: { pieces: 3 }
shots:
  pour-1:
    title: Pour
    note: |
      # no comment
      second line

    elements:
    - clean plate
    # own of matte
    - matte pass # on green
    speed:
      knots:
        - { at: 0 s, speed: 1 }
        - at: 1 s
          speed: 1/40 # slow
      between: smooth
    cautions: []
  splash-1:
    title: Splash
    attachments: [a, "b", 'c']
# tail
`;

/** Where every value of a written document stands; the document itself first. */
export function pointersOf(value: Written, keys: readonly (string | number)[] = []): readonly string[] {
  const here = pointerTo(keys);
  if (isList(value)) return [here, ...value.flatMap((item, i) => pointersOf(item, [...keys, i]))];
  if (isRecord(value)) return [here, ...Object.keys(value).flatMap((key) => pointersOf(value[key]!, [...keys, key]))];
  return [here];
}

const AWKWARD = [
  '1/2000 s', 'T5.6⅓', `5'6"`, 'yes', 'true', 'null', '~', '', ' x', 'x ', 'a: b', 'k:', '# no', 'x #y', 'a\nb\n', 'a\n\nb', '- a', '-', '{', '[a', ', ', 'é\u0301',
  '\u{1f600}', '\t', '|', '>', '"', "'", '&a', '*a', '!t', '12:30', '\r\n', 'a\rb', '0x1f', '0o7', '.inf', '.nan', '1e3', '---', '...', '%', '@', '`x`', 'a:b', 'two\nlines',
  '\ud800', '\u2028', '\u0085', '\ufeff', '\u0000', '<<', '=', '?', '? a', '5 #', '\\n', 'a\n b\n', '1_000', '+1', '07', '2031-03-14',
]; // prettier-ignore

const scalars: fc.Arbitrary<Written> = fc.oneof(
  fc.constantFrom(...AWKWARD),
  fc.string({ maxLength: 12 }),
  fc.string({ unit: 'binary', maxLength: 6 }),
  fc.integer(),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.boolean(),
  fc.constant(null),
);

const REFUSED = ['__proto__', 'constructor', 'prototype'];

export const writtenKeys: fc.Arbitrary<string> = fc
  .oneof(
    { weight: 4, arbitrary: fc.constantFrom('a', 'title', 'stop', 'x-1', 'note') },
    { weight: 1, arbitrary: fc.constantFrom(...AWKWARD) },
    { weight: 1, arbitrary: fc.string({ maxLength: 6 }) },
  )
  .filter((key) => !REFUSED.includes(key));

/** Any written value, awkward words and small nests of maps and lists among them. */
export const writtenValues: fc.Arbitrary<Written> = fc.letrec<{ value: Written }>((tie) => ({
  value: fc.oneof(
    { depthSize: 'small', maxDepth: 3 },
    scalars,
    fc.array(tie('value'), { maxLength: 4 }),
    fc.dictionary(writtenKeys, tie('value'), { maxKeys: 4, noNullPrototype: true }),
  ),
})).value;

/** A draw from which an edit of any document can be made. */
export interface EditDraw {
  readonly op: 'add' | 'addKey' | 'replace' | 'remove' | 'move' | 'copy';
  readonly here: number;
  readonly there: number;
  readonly key: string;
  readonly value: Written;
}

export const editDraws: fc.Arbitrary<EditDraw> = fc.record({
  op: fc.constantFrom('add', 'addKey', 'replace', 'remove', 'move', 'copy'),
  here: fc.nat(),
  there: fc.nat(),
  key: writtenKeys,
  value: writtenValues,
});

function valueAt(root: Written, pointer: string): Written {
  let value: Written = root;
  for (const key of pointer.split('/').slice(1))
    value = (value as WrittenRecord)[key.replaceAll('~1', '/').replaceAll('~0', '~')]!;
  return value;
}

function operationOf(written: Written, { op, here, there, key, value }: EditDraw): Operation | undefined {
  const all = pointersOf(written).slice(1);
  const holders = pointersOf(written).filter((at) => typeof valueAt(written, at) === 'object' && valueAt(written, at));
  const path = all[here % all.length];
  const holder = holders[there % holders.length];
  if (path === undefined || holder === undefined) return undefined;
  const parent = valueAt(written, holder);
  const target = isList(parent) ? `${holder}/${here % (parent.length + 1)}` : holder + pointerTo([key]);
  if ([path, target].includes('/longsecond')) return undefined;
  switch (op) {
    case 'remove':
      return { op, path };
    case 'move':
    case 'copy':
      return { op, from: path, path: target };
    case 'addKey':
      return { op: 'add', path: target, value };
    default:
      return { op, path, value };
  }
}

/** The edits of a document that draws stand for; those that cannot be done are left out. */
export function patchOf(written: Written, draws: readonly EditDraw[]): Patch {
  const patch: Operation[] = [];
  let now = written;
  for (const draw of draws) {
    const operation = operationOf(now, draw);
    if (!operation) continue;
    try {
      now = applyPatch(now, [operation]);
      patch.push(operation);
    } catch {
      // A move into itself, for one: the draw made no edit.
    }
  }
  return patch;
}

/** The text with numbered comments: above lines, at their ends, and set off by blank lines. */
export function withComments(text: string, marks: readonly number[]): string {
  let count = 0;
  const comment = (): string => `# mark ${(count += 1)}.`;
  let inScalar = -1;
  return text
    .split('\n')
    .flatMap((line, i) => {
      const indent = /^ */.exec(line)![0];
      if (line.trim() !== '' && indent.length <= inScalar) inScalar = -1;
      if (line.trim() === '' || line.trim().startsWith('#') || inScalar >= 0) return [line];
      if (/[|>][-+]?$/.test(line)) {
        inScalar = indent.length;
        return [line];
      }
      switch (marks[i % marks.length]! % 8) {
        case 0:
          return [indent + comment(), line];
        case 1:
          return [line.includes('#') ? line : `${line} ${comment()}`];
        case 2:
          return ['', indent + comment(), '', line];
        default:
          return [line];
      }
    })
    .join('\n');
}

function quantityTexts(of: QuantityShape): fc.Arbitrary<Written> {
  const kind: Kind = KINDS[of.kind];
  const least = Math.max(of.least, of.most * 1e-9, 1e-9);
  const size = fc.double({ min: Math.log(least), max: Math.log(of.most * 0.999), noNaN: true }).map(Math.exp);
  const digits = fc.integer({ min: 2, max: 15 });
  const percent = fc.option(fc.integer({ min: 0, max: 99 }));
  const unit = kind.units.length === 0 ? fc.constant({ symbol: '', per: 1, offset: 0 }) : fc.constantFrom(...kind.units); // prettier-ignore
  return fc
    .tuple(size, digits, unit, percent)
    .map(([value, count, { symbol, per, offset = 0 }, spread]) => {
      if (of.kind === 'tStop') return `T${Number(value.toFixed(3))}`;
      const number = Number(((value - offset) / per).toPrecision(count));
      return `${number} ${symbol}`.trim() + (of.spread && spread !== null ? ` ± ${spread} %` : '');
    })
    .filter((text) => readValue(of, '', text).ok);
}

const IDS = ['a', 'b-1'];

/** Written values that a shape reads without a problem; every map has the same ids, so references hold. */
export function writtenBy(of: Shape): fc.Arbitrary<Written> {
  switch (of.shape) {
    case 'quantity':
      return quantityTexts(of);
    case 'number': {
      const top = Math.min(of.most, 1e6);
      if (of.as === 'count') return fc.integer({ min: Math.ceil(of.least), max: Math.floor(top) });
      return fc.double({ min: of.least, max: top, noNaN: true });
    }
    case 'rate':
      return fc.oneof(fc.integer({ min: 1, max: 20_000 }), fc.constantFrom('24000/1001', '12.5', 25.5));
    case 'shutter':
      return fc.oneof(
        fc.integer({ min: 1, max: 500_000 }).map((over) => `1/${over} s`),
        fc.integer({ min: 1, max: 360 }).map((angle) => `${angle}°`),
      );
    case 'size':
      return fc
        .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 9999 }))
        .map((two) => two.join(' x '));
    case 'position':
      return fc
        .tuple(...([1, 2, 3].map(() => fc.integer({ min: -900, max: 900 })) as [fc.Arbitrary<number>]))
        .map((parts) => parts.map((part) => `${part} cm`).join(', '));
    case 'clock':
      return fc.constantFrom('07:30', '00:00', '35:59', '24:00');
    case 'choice':
      return fc.constantFrom(...Object.keys(of.words));
    case 'flag':
      return fc.boolean();
    case 'text':
      return fc.oneof(fc.constantFrom(...IDS), fc.string({ maxLength: Math.min(of.longest, 20) }));
    case 'figure':
      return fc.oneof(fc.constantFrom('0.5 m', '12 ms', '3'), fc.string({ maxLength: 20 }));
    case 'reference':
      return fc.constantFrom(...IDS);
    case 'list':
      return fc.uniqueArray(writtenBy(of.of), { maxLength: 2, selector: (item) => JSON.stringify(item) });
    case 'map':
      return fc.tuple(writtenBy(of.of), writtenBy(of.of)).map(([a, b]) => ({ a, 'b-1': b }));
    case 'record': {
      const fields = Object.entries(of.fields).map(([key, field]) => [key, writtenBy(field.of)] as const);
      return fc.record(Object.fromEntries(fields), { requiredKeys: [] }) as fc.Arbitrary<WrittenRecord>;
    }
  }
}
