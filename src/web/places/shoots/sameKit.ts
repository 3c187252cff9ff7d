/** The text of a shoot that begins where another left off. */
import { printEntry } from '../../../document/print.ts';
import { isRecord, memberOf, type Written, type WrittenRecord } from '../../../document/written.ts';

const STYLE = { isJson: false, step: 2, lineEnd: '\n' } as const;

/** Sections that the next job starts from as they stand. */
const KEPT_SECTIONS = ['crew', 'deliverables', 'kit', 'lighting'] as const;

/** What of the section `shoot` is about the crew and its ways rather than about one day. */
const KEPT_OF_SHOOT = ['timeZone', 'mains', 'units', 'meterConstant'] as const;

/** Defaults that speak of frames and shots which the new shoot does not have. */
const DROPPED_DEFAULTS: ReadonlySet<string> = new Set(['board', 'after']);

const record = (value: Written | undefined): WrittenRecord => (isRecord(value) ? value : {});

/** Files that the lamps of a kit name: their photometry, and their light as it was measured. */
function lampFiles(kit: WrittenRecord, files: WrittenRecord): WrittenRecord {
  const named = new Set(
    Object.values(record(memberOf(kit, 'lamps'))).flatMap((lamp) => {
      const measured = Object.values(record(memberOf(record(lamp), 'measured')));
      return [lamp, ...measured].map((each) => memberOf(record(each), 'file'));
    }),
  );
  return Object.fromEntries(Object.entries(files).filter(([id]) => named.has(id)));
}

/** A shoot without frames and shots, with the crew, the kit, the light, the deliverables and the defaults of another. */
export function sameKitText(title: string, from: Written): string {
  const source = record(from);
  const about = record(memberOf(source, 'shoot'));
  const ways = KEPT_OF_SHOOT.flatMap((key) => (about[key] === undefined ? [] : [[key, about[key]] as const]));
  const defaults = Object.entries(record(memberOf(source, 'defaults'))).filter(([key]) => !DROPPED_DEFAULTS.has(key));
  const files = lampFiles(record(memberOf(source, 'kit')), record(memberOf(source, 'files')));
  const sections: readonly (readonly [string, Written])[] = [
    ['longsecond', 1],
    ['shoot', { title, ...Object.fromEntries(ways) }],
    ...KEPT_SECTIONS.flatMap((key) => (source[key] === undefined ? [] : [[key, source[key]] as const])),
    ...(Object.keys(files).length === 0 ? [] : [['files', files] as const]),
    ...(defaults.length === 0 ? [] : [['defaults', Object.fromEntries(defaults)] as const]),
  ];
  return sections.map(([key, value]) => `${printEntry(key, value, 0, STYLE).join('\n')}\n`).join('\n');
}
