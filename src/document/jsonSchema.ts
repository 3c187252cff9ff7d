/** The written form as a JSON Schema (2020-12), so that editors can complete and check a shoot while it is typed. */
import { KINDS, type Kind, type KindName } from '../base/kinds.ts';
import { CLOCK_PATTERN, ID_PATTERN, mayBeBare, RESERVED_IDS, SIZE_PATTERN } from './readValue.ts';
import { DOCUMENT_VERSION, SHOOT } from './schema.ts';
import type { Field, NumberShape, Shape } from './shape.ts';
import type { Written, WrittenRecord } from './written.ts';

/** Digits with spaces between thousands, decimals, an exponent, a vulgar fraction, a fraction bar. */
const NUMBER = '[+\\-−]?(?:\\d[\\d \\u00a0\\u202f]*(?:\\.\\d+)?(?:[eE][+-]?\\d{1,3})?|\\.\\d+)?\\s*[¼⅓½⅔¾⅛]?(?:\\s*/\\s*\\d+(?:\\.\\d+)?)?'; // prettier-ignore
const STOP = '\\d{1,4}(?:\\.\\d{1,18})?(?:\\s*[¼⅓½⅔¾]|\\s+[123]/[234])?';
const FEET_AND_INCHES = "\\d+\\s*(?:'|′|ft|foot|feet)\\s*[\\d.¼⅓½⅔¾⅛][\\d.\\s/¼⅓½⅔¾⅛]*(?:\"|″|''|in|inch|inches)";

const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');

/** A unit in either case, as the reader takes it. */
function eitherCase(symbol: string): string {
  return [...symbol]
    .map((letter) => {
      const [lower, upper] = [letter.toLowerCase(), letter.toUpperCase()];
      return lower !== upper && lower.length === 1 && upper.length === 1 ? `[${lower}${upper}]` : escaped(letter);
    })
    .join('');
}

/** What a quantity of a kind looks like; wider than what the reader takes, never narrower. */
function quantityPattern(name: KindName, takesSpread: boolean): string {
  const kind: Kind = KINDS[name];
  if (name === 'tStop') return `^\\s*(?:[Tt]\\s*/?\\s*)?${STOP}\\s*$`;
  if (name === 'fStop') return `^\\s*(?:[Ff]\\s*/?\\s*)?${STOP}\\s*$`;
  const spellings = kind.units.flatMap(({ symbol, also = [] }) => [symbol, ...also]);
  const units = [...new Set(spellings)].sort((a, b) => b.length - a.length).map(eitherCase);
  const unit = units.length === 0 ? '' : `(?:${units.join('|')})${mayBeBare(name) ? '?' : ''}`;
  const value = name === 'length' ? `(?:${NUMBER}\\s*${unit}|${FEET_AND_INCHES})` : `${NUMBER}\\s*${unit}`;
  if (!takesSpread) return `^\\s*${value}\\s*$`;
  const spread = `\\s*(?:±|\\+\\s*/\\s*[-−])\\s*(?:${value}|\\d*\\.?\\d+\\s*%)`;
  return `^\\s*(?:${value}|(?:${value}|${NUMBER})${spread})\\s*$`;
}

const definitionName = (kind: KindName, takesSpread: boolean): string => (takesSpread ? `${kind}-with-spread` : kind);

function quantityDefinition(name: KindName, takesSpread: boolean): WrittenRecord {
  const kind: Kind = KINDS[name];
  const symbols = kind.units.map(({ symbol }) => symbol).join(', ');
  const description = `${kind.name[0]!.toUpperCase()}${kind.name.slice(1)}${symbols === '' ? '' : ` in ${symbols}`}${takesSpread ? '; its spread may stand after ±' : ''}.`;
  const text = {
    type: mayBeBare(name) ? ['string', 'number', 'null'] : ['string', 'null'],
    description,
    pattern: quantityPattern(name, takesSpread),
  };
  // Two ways to write some, as in "64 GB or 64 GiB".
  const examples = kind.example.split(' or ');
  return { ...text, examples: takesSpread ? [...examples, `${examples[0]} ± 10 %`] : examples };
}

const PLAIN_NUMBER = '[+-]?(?:\\d{1,15}(?:\\.\\d{0,15})?|\\.\\d{1,15})(?:[eE][+-]?\\d{1,3})?(?:\\s*/\\s*\\d{1,15}(?:\\.\\d{1,15})?|\\s*%)?'; // prettier-ignore

function numberSchema({ as, least, most }: NumberShape): WrittenRecord {
  const prefix = as === 'isoSpeed' ? '(?:(?:[Ee][Ii]|[Ii][Ss][Oo])\\s*)?' : '';
  const examples = { ratio: [1.5, '1/40', '25 %'], fraction: [0.25, '25 %'], count: [12], isoSpeed: [800] }[as];
  return {
    type: ['number', 'string', 'null'],
    minimum: least,
    maximum: most,
    ...(as === 'count' ? { multipleOf: 1 } : {}),
    pattern: `^\\s*${prefix}${PLAIN_NUMBER}\\s*$`,
    examples,
  };
}

/** Shapes that stand for many places are defined once and referred to. */
interface Definitions {
  readonly made: Record<string, Written>;
}

function referTo(definitions: Definitions, name: string, make: () => WrittenRecord): WrittenRecord {
  definitions.made[name] ??= make();
  return { $ref: `#/$defs/${name}` };
}

/** Three lengths; which unit each is in is for the reader to say. */
const POSITION_PATTERN = '^[^,]+,[^,]+,[^,]+$';

const RATE: WrittenRecord = {
  type: ['number', 'string', 'null'],
  description: 'A rate, exactly: 25, 12.5 or 24000/1001.',
  exclusiveMinimum: 0,
  pattern: '^\\s*\\d{1,15}(?:\\.\\d{1,6}|\\s*/\\s*\\d{1,9})?\\s*(?:[fF][pP][sS]|[fF]rames a second)?\\s*$',
  examples: [25, '24000/1001'],
};

const ID: WrittenRecord = {
  description: 'A permanent id: a letter, then letters, digits and hyphens.',
  pattern: ID_PATTERN,
  not: { enum: RESERVED_IDS },
};

function shutterSchema(): WrittenRecord {
  return {
    type: ['string', 'null'],
    description: 'A shutter as a time or as an angle.',
    anyOf: [
      { pattern: quantityPattern('time', false) },
      { pattern: quantityPattern('angle', false) },
      { type: 'null' },
    ],
    examples: ['1/2000 s', '172.8°'],
  };
}

function recordSchema(fields: Readonly<Record<string, Field>>, definitions: Definitions): WrittenRecord {
  const properties: Record<string, Written> = {};
  for (const [key, { of, says }] of Object.entries(fields))
    properties[key] = { ...schemaOf(of, definitions), description: says };
  return { type: ['object', 'null'], properties, additionalProperties: false };
}

function schemaOf(of: Shape, definitions: Definitions): WrittenRecord {
  switch (of.shape) {
    case 'quantity':
      return referTo(definitions, definitionName(of.kind, of.spread), () => quantityDefinition(of.kind, of.spread));
    case 'number':
      return numberSchema(of);
    case 'rate':
      return referTo(definitions, 'rate-exact', () => RATE);
    case 'shutter':
      return referTo(definitions, 'shutter', shutterSchema);
    case 'size':
      return { type: ['string', 'null'], pattern: SIZE_PATTERN, examples: ['4096 x 2304'] };
    case 'position':
      return { type: ['string', 'null'], pattern: POSITION_PATTERN, examples: ['0.8 m, -1.2 m, 1.5 m'] };
    case 'clock':
      return { type: ['string', 'null'], pattern: CLOCK_PATTERN, examples: ['07:30', '25:15'] };
    case 'choice':
      return { enum: [...Object.keys(of.words), null] };
    case 'flag':
      return { enum: [true, false, 'yes', 'no', null] };
    case 'text':
      return { type: ['string', 'null'], maxLength: of.longest };
    case 'figure':
      return { type: ['string', 'number', 'null'], maxLength: of.longest };
    case 'reference':
      return { type: ['string', 'null'], pattern: ID_PATTERN };
    case 'list':
      return { type: ['array', 'null'], items: withoutNull(schemaOf(of.of, definitions)), maxItems: of.most };
    case 'map':
      return {
        type: ['object', 'null'],
        propertyNames: referTo(definitions, 'id', () => ID),
        additionalProperties: schemaOf(of.of, definitions),
      };
    case 'record':
      return recordSchema(of.fields, definitions);
  }
}

/** An item of a list must say something: an empty key is left out, an empty item is a slip. */
function withoutNull(schema: WrittenRecord): WrittenRecord {
  const { type } = schema;
  return Array.isArray(type) ? { ...schema, type: type.filter((name) => name !== 'null') } : schema;
}

/** The JSON Schema of a written shoot, made from the table of its keys. */
export function shootJsonSchema(): WrittenRecord {
  const definitions: Definitions = { made: {} };
  const { longsecond, ...fields } = SHOOT.fields;
  const { properties, additionalProperties } = recordSchema(fields, definitions);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `urn:longsecond:shoot:${DOCUMENT_VERSION}`,
    title: 'Longsecond shoot',
    description: 'What is to be shot, with what, and how fast; the plan is worked out from it.',
    type: 'object',
    required: ['longsecond'],
    properties: {
      longsecond: { description: longsecond.says, const: DOCUMENT_VERSION },
      ...(properties as WrittenRecord),
    },
    additionalProperties: additionalProperties!,
    $defs: definitions.made,
  };
}

/** The schema as the file in the documentation holds it. */
export function shootJsonSchemaText(): string {
  return `${JSON.stringify(shootJsonSchema(), null, 2)}\n`;
}
