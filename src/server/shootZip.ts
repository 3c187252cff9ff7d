/** A shoot as one zip to be mailed: `shoot.yaml`, and each file that it names as `files/<sha256>-<name>`. */
import { createHash } from 'node:crypto';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { Fault } from '../base/fault.ts';
import { readShootText } from '../document/text.ts';
import { filesNamed } from '../store/filesNamed.ts';
import type { IncomingFile, OpenShoot, ShootStore } from '../store/types.ts';
import { savedName } from './disposition.ts';
import { kindOf } from './fileKind.ts';
import { readZip, type ZipEntry } from './unzip.ts';
import { LARGEST_UNPACKED_B, MOST_ENTRIES, ZIP_LIMITS } from './zipLimits.ts';

const SHOOT_NAMES = ['shoot.yaml', 'shoot.yml', 'shoot.json'] as const;

/** The same for every entry, so that the same shoot gives the same zip. */
const NO_TIME = new Date(2000, 0, 1);

interface Outgoing {
  readonly sha256: string;
  readonly name: string;
  readonly size_B: number;
}

function outgoing(store: ShootStore, shoot: OpenShoot): readonly Outgoing[] {
  const byHash = new Map<string, Outgoing>();
  for (const { sha256, name, size_B } of store.filesOf(shoot.id))
    if (sha256 !== undefined && size_B !== undefined && !byHash.has(sha256))
      byHash.set(sha256, { sha256, name: savedName(name ?? 'file'), size_B });
  const files = [...byHash.values()];
  const total_B = files.reduce((sum, { size_B }) => sum + size_B, Buffer.byteLength(shoot.text));
  if (files.length < MOST_ENTRIES && total_B <= LARGEST_UNPACKED_B) return files;
  throw new Fault({
    code: 'export.too-large',
    what: `The shoot and its ${files.length} files come to ${Math.ceil(total_B / 1e6)} MB; a zip may have ${ZIP_LIMITS}`,
    where: shoot.id,
    mend: 'Take the shoot away as YAML, and its files one by one.',
  });
}

/** Packs one file at a time, as the one who asks takes it. Throws Fault `export.too-large`. */
export function shootZip(store: ShootStore, shoot: OpenShoot): ReadableStream<Uint8Array> {
  const files = outgoing(store, shoot);
  let next = -1;
  let zip: Zip;
  return new ReadableStream<Uint8Array>({
    start: (controller) => {
      zip = new Zip((error, chunk, isLast) => {
        if (error) throw error;
        controller.enqueue(chunk);
        if (isLast) controller.close();
      });
    },
    pull: () => {
      const file = files[next];
      const entry = file ? new ZipPassThrough(`files/${file.sha256}-${file.name}`) : new ZipDeflate('shoot.yaml');
      if (next < files.length) {
        entry.mtime = NO_TIME;
        zip.add(entry);
        entry.push(file ? store.fileOf(shoot.id, file.sha256).bytes : Buffer.from(shoot.text), true);
      } else zip.end();
      next += 1;
    },
  });
}

/** `shoot.yaml` at the top, or in the one folder that somebody packed instead of what was in it. */
function shootEntry(entries: readonly ZipEntry[]): { readonly entry: ZipEntry; readonly folder: string } {
  const found = entries
    .filter(({ name }) => !name.startsWith('__MACOSX/'))
    .map((entry) => ({ entry, parts: entry.name.split('/') }))
    .filter(({ parts }) => parts.length <= 2 && SHOOT_NAMES.some((name) => name === parts.at(-1)))
    .sort((a, b) => a.parts.length - b.parts.length);
  const [first, second] = found;
  if (first && first.parts.length !== second?.parts.length)
    return { entry: first.entry, folder: first.parts.length === 1 ? '' : `${first.parts[0]}/` };
  throw new Fault({
    code: 'zip.no-shoot',
    what: first ? 'The zip holds more than one shoot' : 'The zip holds no shoot.yaml',
    where: 'the zip',
    mend: 'Pack one shoot.yaml at the top of the zip, and its files in a folder called files.',
  });
}

function textOf(entry: ZipEntry): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(entry.read());
  } catch (cause) {
    if (cause instanceof Fault) throw cause;
    throw new Fault({
      code: 'zip.not-text',
      what: `${entry.name} is not text in UTF-8`,
      where: 'the zip',
      mend: 'Save it as UTF-8 and pack it again; nothing was stored.',
      cause,
    });
  }
}

const CLAIM = /^([0-9a-f]{64})(?:-|$)/;

export interface ReadShootZip {
  readonly text: string;
  /** Those that the shoot names, unpacked as they are asked for. Throws Fault `zip.hash-differs`. */
  readonly files: Iterable<IncomingFile>;
}

/** What a zip brings in. Throws Faults named `zip.…`, and what reading the shoot throws. */
export function readShootZip(bytes: Uint8Array): ReadShootZip {
  const entries = readZip(bytes);
  const { entry: shoot, folder } = shootEntry(entries);
  const text = textOf(shoot);
  const names = new Map(filesNamed(readShootText(text).written).map(({ sha256, name }) => [sha256, name] as const));
  const files = function* (): Iterable<IncomingFile> {
    for (const entry of entries) {
      if (!entry.name.startsWith(`${folder}files/`)) continue;
      const content = entry.read();
      const sha256 = createHash('sha256').update(content).digest('hex');
      const own = entry.name.slice(`${folder}files/`.length);
      const claimed = CLAIM.exec(own)?.[1];
      if (claimed !== undefined && claimed !== sha256)
        throw new Fault({
          code: 'zip.hash-differs',
          what: `A file reads as ${sha256.slice(0, 12)}…, and its name says ${claimed.slice(0, 12)}…`,
          where: entry.name.slice(0, 200),
          mend: 'Make the zip again from where the shoot came from; nothing was stored.',
        });
      if (!names.has(sha256)) continue;
      yield { name: savedName(names.get(sha256) ?? own.replace(CLAIM, '')), kind: kindOf(content), bytes: content };
    }
  };
  return { text, files: { [Symbol.iterator]: () => files()[Symbol.iterator]() } };
}
