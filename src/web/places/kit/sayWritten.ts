/** Written values put into the units a person is shown, and items into the few figures that tell them apart. */
import { KINDS, unitSuffix, type Kind, type KindName } from '../../../base/kinds.ts';
import { showQuantity, type UnitSystem } from '../../../base/quantity.ts';
import { fieldAt, isCollectionShape } from '../../../document/fieldAt.ts';
import { readValue } from '../../../document/readValue.ts';
import type { Field, Size } from '../../../document/shape.ts';
import { isRecord, memberOf, type Written, type WrittenRecord } from '../../../document/written.ts';
import { saidShown } from '../shot/showValue.ts';

/** Below this nobody says inches. */
const FINEST_IMPERIAL_m = 1e-4;

/** What lenses and sensors are engraved in stays in millimetres for everybody. */
function systemFor(kind: KindName, readAs: string, value: number, system: UnitSystem): UnitSystem {
  const isEngraved = unitSuffix(readAs) === 'mm' || (kind === 'length' && Math.abs(value) < FINEST_IMPERIAL_m);
  return isEngraved ? 'metric' : system;
}

/** A written value for eyes, in a person's units; as it is written where it cannot be read or has none. */
export function sayWritten({ of, readAs }: Field, written: Written, system: UnitSystem): string {
  if (isCollectionShape(of) || typeof written === 'object') return '';
  // Read without its key, a quantity comes in the unit its kind has in code.
  const read = readValue(of, '', written);
  if (!read.ok) return String(written);
  if (of.shape === 'size') {
    const { widthCount, heightCount } = read.value as Size;
    return `${widthCount} × ${heightCount}`;
  }
  if (of.shape !== 'quantity') return String(written);
  const value = read.value as number;
  const as = systemFor(of.kind, readAs, value, system);
  const said = saidShown(showQuantity(of.kind, value, { system: as }));
  return read.spread === undefined
    ? said
    : `${said} ± ${saidShown(showQuantity(of.kind, read.spread, { system: as }))}`;
}

const IMPERIAL_ONLY = (kind: Kind) => kind.show.imperial.filter((symbol) => !kind.show.metric.includes(symbol));

/** The value in the person's units, where it is written in units of the other system. */
export function otherUnits(field: Field, written: Written, system: UnitSystem): string | undefined {
  const { of, readAs } = field;
  if (of.shape !== 'quantity' || typeof written !== 'string') return undefined;
  const kind: Kind = KINDS[of.kind];
  const theirs = IMPERIAL_ONLY(kind);
  const read = readValue(of, '', written);
  if (theirs.length === 0 || !read.ok) return undefined;
  const spellings = kind.units.filter(({ symbol }) => theirs.includes(symbol)).flatMap(({ symbol, also = [] }) => [symbol, ...also]);
  const body = written.split(/±|\+\s*\//)[0]!.trim().toLowerCase();
  const isImperial = spellings.some((spelling) => body.endsWith(spelling.toLowerCase()));
  const as = systemFor(of.kind, readAs, read.value as number, system);
  return isImperial === (as === 'imperial') ? undefined : sayWritten(field, written, system);
} // prettier-ignore

export interface ItemSay {
  readonly kindKey: string;
  readonly item: WrittenRecord;
  readonly system: UnitSystem;
}

/** The few figures that tell an item from its neighbours, in the order a crew asks for them. */
export function figuresOf({ kindKey, item, system }: ItemSay): readonly string[] {
  const say = (key: string): string | undefined => {
    const field = fieldAt(`/kit/${kindKey}/-/${key}`);
    const value = memberOf(item, key);
    const said = field && value !== undefined && value !== null ? sayWritten(field, value, system) : '';
    return said === '' ? undefined : said;
  };
  const range = (from: string, to: string) => [say(from), say(to)].filter((part) => part !== undefined).join(' to ') || undefined; // prettier-ignore
  const prefixed = (before: string, key: string) => (say(key) === undefined ? undefined : `${before} ${say(key)}`);
  const suffixed = (key: string, after: string) => (say(key) === undefined ? undefined : `${say(key)} ${after}`);
  const word = (key: string) => {
    const named = say(key);
    return named !== undefined && named.length <= 2 ? named.toUpperCase() : named;
  };
  const modes = memberOf(item, 'modes');
  const modeCount = isRecord(modes) ? Object.keys(modes).length : 0;
  const of: Readonly<Record<string, () => readonly (string | undefined)[]>> = {
    cameras: () => [
      say('activeArea'),
      modeCount === 0 ? 'no formats' : `${modeCount} ${modeCount === 1 ? 'format' : 'formats'}`,
      say('memory'),
    ],
    lenses: () => [say('focalLength'), range('widest', 'narrowest'), prefixed('from', 'closeFocus')],
    attachments: () => [word('kind'), say('length'), say('loss')],
    lamps: () => [say('power'), say('colour'), prefixed('beam', 'beam')],
    products: () => [item['pieces'] === 1 ? 'one piece' : suffixed('pieces', 'pieces')],
    drives: () => [say('capacity'), suffixed('used', 'used'), say('writeRate')],
    rigs: () => [prefixed('answers in', 'latency')],
  };
  const told = memberOf(of, kindKey)?.() ?? quantitiesOf(kindKey).map(say);
  return told.filter((figure) => figure !== undefined);
}

const MOST_FIGURES = 3;

/** The first few quantities of a kind that says nothing of its own about what matters. */
function quantitiesOf(kindKey: string): readonly string[] {
  const of = fieldAt(`/kit/${kindKey}/-`)?.of;
  if (of?.shape !== 'record') return [];
  const keys = Object.keys(of.fields).filter((key) => of.fields[key]!.of.shape === 'quantity');
  return keys.slice(0, MOST_FIGURES);
}
