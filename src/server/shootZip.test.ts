import { strFromU8, unzipSync, zipSync, type Zippable } from 'fflate';
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { faultIn, tempServer, type TempServer } from '../../test/tempServer.ts';
import { SMALL_SHOOT } from '../../test/tempStore.ts';
import type { ImportZipReply } from '../api/replies.ts';
import { exportPath, filePath, importZipPath } from '../api/routes.ts';
import { LARGEST_ZIP_B, MOST_ENTRIES } from './zipLimits.ts';

const PNG = Uint8Array.from(Buffer.from('\x89PNG\r\n\x1a\n PK\x03\x04 PK\x01\x02 PK\x05\x06', 'latin1'));
const CSV = Uint8Array.from(Buffer.from('t,lx\n0,41000\n'.repeat(40)));
const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

const WITH_FILES = `${SMALL_SHOOT}files:
  board-1: { name: Zoë 1.png, sha256: ${hashOf(PNG)}, size: ${PNG.length} B, kind: image/png }
  wave: { name: ../wave.csv, sha256: ${hashOf(CSV)}, size: ${CSV.length} B, kind: text/csv }
  lost: { name: lost.png, sha256: "${'0'.repeat(64)}", size: 9 B, kind: image/png }
`;

async function bringIn({ request }: TempServer, zip: Uint8Array, editId = 'import-0009') {
  const body = Uint8Array.from(zip);
  return request(importZipPath(editId), { method: 'POST', headers: { 'content-type': 'application/zip' }, body });
}

async function exported({ request }: TempServer, id = 's') {
  const answer = await request(exportPath(id, 'zip'));
  expect(answer.status).toBe(200);
  return { answer, bytes: Uint8Array.from(Buffer.from(await answer.arrayBuffer())) };
}

/** A zip with some of its bytes changed where they first stand after a mark. */
function tampered(zip: Uint8Array, mark: readonly number[], offset: number, bytes: readonly number[]): Uint8Array {
  const copy = Buffer.from(zip);
  const at = copy.indexOf(Buffer.from(mark));
  expect(at).toBeGreaterThanOrEqual(0);
  copy.set(bytes, at + offset);
  return copy;
}

const CENTRAL = [0x50, 0x4b, 1, 2];
const END = [0x50, 0x4b, 5, 6];
const four = (value: number) => [value & 255, (value >> 8) & 255, (value >> 16) & 255, (value >>> 24) & 255];

describe('taking a shoot away', () => {
  test.each([
    ['yaml', 'text/yaml; charset=utf-8'],
    ['json', 'application/json'],
    ['zip', 'application/zip'],
  ] as const)('as %s it is saved under a plain name made from its title', async (as, type) => {
    const { request } = await tempServer();
    const { headers } = await request(exportPath('s', as));
    expect(headers.get('content-type')).toBe(type);
    expect(headers.get('content-disposition')).toBe(
      `attachment; filename="milk-and-thunder.${as}"; filename*=UTF-8''milk-and-thunder.${as}`,
    );
    expect(headers.get('longsecond-revision')).toBe('0');
  });

  test('YAML is its very text, JSON its written form', async () => {
    const { request, store } = await tempServer();
    expect(await (await request(exportPath('s', 'yaml'))).text()).toBe(SMALL_SHOOT);
    expect(await (await request(exportPath('s', 'json'))).json()).toEqual(store.open('s').written);
  });

  test('a zip holds the text and each file that is here, under its hash and a plain name', async () => {
    const server = await tempServer({ text: WITH_FILES });
    for (const [name, bytes] of [['a.png', PNG], ['b.csv', CSV], ['not named.txt', PNG.slice(1)]] as const)
      await server.client('ada').upload('s', { name, type: '', bytes }); // prettier-ignore
    const { bytes } = await exported(server);
    const entries = unzipSync(bytes);
    expect(Object.keys(entries)).toEqual(['shoot.yaml', `files/${hashOf(PNG)}-Zoë 1.png`, `files/${hashOf(CSV)}--wave.csv`]);
    expect(strFromU8(entries['shoot.yaml']!)).toBe(WITH_FILES);
    expect(entries[`files/${hashOf(PNG)}-Zoë 1.png`]).toEqual(PNG);
    expect((await exported(server)).bytes).toEqual(bytes);
  }); // prettier-ignore

  test.each(['yaml ', 'exe', '', '../s'])('as %j is refused', async (as) => {
    const { request } = await tempServer();
    const answer = await request(`/api/shoots/s/export?as=${encodeURIComponent(as)}`);
    expect(await faultIn(answer)).toMatchObject({ status: 400, code: 'input.malformed' });
  });
});

describe('bringing a zip in', () => {
  test('gives the same shoot with its files, and says which are missing', async () => {
    const from = await tempServer({ text: WITH_FILES });
    for (const [name, bytes] of [
      ['a.png', PNG],
      ['b.csv', CSV],
    ] as const)
      await from.client('ada').upload('s', { name, type: '', bytes });
    const { bytes } = await exported(from);
    const to = await tempServer();
    const reply = await to.client('bo').bringInZip({ editId: 'import-0009', bytes });
    expect(reply).toMatchObject({ id: 'milk-and-thunder', revision: 0, title: 'Milk and thunder' });
    expect(reply.missingFiles).toEqual([{ id: 'lost', name: 'lost.png', sha256: '0'.repeat(64) }]);
    expect(await to.client('bo').text(reply.id)).toBe(WITH_FILES);
    const picture = await to.request(filePath(reply.id, hashOf(PNG)));
    expect(picture.headers.get('content-type')).toBe('image/png');
    expect(Uint8Array.from(Buffer.from(await picture.arrayBuffer()))).toEqual(PNG);
    expect((await exported(to, reply.id)).bytes).toEqual(bytes);
  });

  test('twice under one id brings one in', async () => {
    const server = await tempServer();
    const zip = zipSync({ 'shoot.yaml': Buffer.from(SMALL_SHOOT) });
    const [first, second] = [await bringIn(server, zip), await bringIn(server, zip)];
    expect(await second.json()).toEqual(await first.json());
    expect(server.store.list()).toHaveLength(2);
  });

  test('takes one whose folder was packed instead of what was in it, and files without their hash in front', async () => {
    const server = await tempServer();
    const zip = zipSync({
      'my shoot/': new Uint8Array(),
      'my shoot/shoot.yaml': Buffer.from(WITH_FILES),
      'my shoot/files/board.png': PNG,
      'my shoot/files/other.txt': Buffer.from('not named'),
      '__MACOSX/shoot.yaml': Buffer.from('x'),
      'my shoot/read me.txt': Buffer.from('x'),
    });
    const reply = (await (await bringIn(server, zip)).json()) as ImportZipReply;
    expect(reply.missingFiles.map(({ id }) => id)).toEqual(['wave', 'lost']);
    const notNamed = await server.request(filePath(reply.id, hashOf(Buffer.from('not named'))));
    expect(notNamed.status).toBe(404);
  });

  const plain = (more: Zippable = {}) => zipSync({ 'shoot.yaml': [Buffer.from(SMALL_SHOOT), { level: 6 }], ...more });
  const bomb = zipSync({ 'shoot.yaml': [Buffer.from(SMALL_SHOOT), { level: 0 }], 'files/zeros': [new Uint8Array(20_000_000), { level: 9 }] }); // prettier-ignore
  /** The directory's entry for the zeros, after that for the shoot. */
  const declaring = (size_B: number) => {
    const copy = Buffer.from(bomb);
    const first = copy.indexOf(Buffer.from(CENTRAL));
    copy.set(four(size_B), copy.indexOf(Buffer.from(CENTRAL), first + 4) + 24);
    return copy;
  };
  const hostile: Readonly<Record<string, readonly [() => Uint8Array, number, string]>> = {
    'nothing at all': [() => new Uint8Array(), 422, 'zip.malformed'],
    'what is no zip': [() => Buffer.alloc(5000, 'no zip'), 422, 'zip.malformed'],
    'one cut short at its end': [() => plain().slice(0, -3), 422, 'zip.malformed'],
    'one cut short in front': [() => plain().slice(9), 422, 'zip.malformed'],
    'an empty one': [() => zipSync({}), 422, 'zip.no-shoot'],
    'one without a shoot': [() => zipSync({ 'a.txt': new Uint8Array(3) }), 422, 'zip.no-shoot'],
    'one with two shoots': [() => plain({ 'shoot.json': Buffer.from('{}') }), 422, 'zip.no-shoot'],
    'a shoot that is no text': [() => zipSync({ 'shoot.yaml': Uint8Array.of(0xff, 0xfe) }), 422, 'zip.not-text'],
    'a shoot that is malformed': [() => zipSync({ 'shoot.yaml': Buffer.from('a: [') }), 422, 'document.truncated'],
    'a way out': [() => plain({ '../evil': new Uint8Array(1) }), 422, 'zip.path-refused'],
    'a way out further down': [() => plain({ 'files/../../evil': new Uint8Array(1) }), 422, 'zip.path-refused'],
    'a way out by the other slash': [() => plain({ '..\\evil': new Uint8Array(1) }), 422, 'zip.path-refused'],
    'an absolute path': [() => plain({ '/etc/passwd': new Uint8Array(1) }), 422, 'zip.path-refused'],
    'a path with a drive': [() => plain({ 'C:/evil': new Uint8Array(1) }), 422, 'zip.path-refused'],
    'a name with a nought in it': [() => plain({ 'files/a\0.png': new Uint8Array(1) }), 422, 'zip.path-refused'],
    'too many entries': [() => plain(Object.fromEntries(Array.from({ length: MOST_ENTRIES }, (_, i) => [`files/${i}`, new Uint8Array(1)]))), 422, 'zip.too-many'],
    'an entry that declares more than any file may have': [() => declaring(0x7fffffff), 413, 'zip.too-large'],
    'an entry that unpacks to more than it declares': [() => declaring(1000), 422, 'zip.larger-than-declared'],
    'an entry that unpacks to nothing it declares': [() => declaring(0), 422, 'zip.larger-than-declared'],
    'an entry that unpacks to less than it declares': [() => declaring(20_000_001), 422, 'zip.malformed'],
    'many that together declare too much': [() => plain(Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`files/${i}`, [new Uint8Array(30_000_000), { level: 1 }] as const]))), 413, 'zip.too-large'],
    'a password': [() => tampered(plain(), CENTRAL, 8, [1]), 422, 'zip.unsupported'],
    'another way of packing': [() => tampered(plain(), CENTRAL, 10, [12]), 422, 'zip.unsupported'],
    'the form for more than 4 GB': [() => tampered(plain(), CENTRAL, 20, [255, 255, 255, 255]), 422, 'zip.unsupported'],
    'a wrong checksum': [() => tampered(plain(), CENTRAL, 16, [1, 2, 3, 4]), 422, 'zip.malformed'],
    'bytes that do not unpack': [() => tampered(plain(), [0x50, 0x4b, 3, 4], 45, [255, 255, 255, 255, 255]), 422, 'zip.malformed'],
    'an entry that is elsewhere': [() => tampered(plain(), CENTRAL, 42, four(9)), 422, 'zip.malformed'],
    'an entry beyond its end': [() => tampered(plain(), CENTRAL, 42, four(0x7ffffff0)), 422, 'zip.malformed'],
    'an entry longer than it': [() => tampered(plain(), CENTRAL, 20, four(0x00ffffff)), 422, 'zip.malformed'],
    'a directory that is elsewhere': [() => tampered(plain(), END, 16, four(3)), 422, 'zip.malformed'],
    'a directory beyond its end': [() => tampered(plain(), END, 16, four(0x7fffffff)), 422, 'zip.malformed'],
    'a count that is too large': [() => tampered(plain(), END, 10, [9, 0]), 422, 'zip.malformed'],
    'a file whose name gives another hash': [() => plain({ [`files/${'a'.repeat(64)}-x.png`]: PNG }), 422, 'zip.hash-differs'],
  }; // prettier-ignore

  test.each(Object.entries(hostile))('%s is refused, and nothing is stored', async (_, [make, status, code]) => {
    const server = await tempServer();
    const fault = await faultIn(await bringIn(server, make()));
    expect(fault).toMatchObject({ status, code });
    expect(fault.mend).toMatch(/^[A-Z]\S* .+/);
    expect(server.store.list()).toHaveLength(1);
    expect(server.log).toEqual([]);
  });

  test('one that says it is larger than any may be is not even read', async () => {
    const { request } = await tempServer();
    const headers = { 'content-type': 'application/zip', 'content-length': String(LARGEST_ZIP_B + 1) };
    const answer = await request(importZipPath('import-0009'), { method: 'POST', headers, body: 'x' });
    expect(await faultIn(answer)).toMatchObject({ status: 413, code: 'input.too-large' });
  });

  test('without an id of its own is refused', async () => {
    const { request } = await tempServer();
    const answer = await request('/api/shoots', { method: 'POST', headers: { 'content-type': 'application/zip' }, body: Uint8Array.from(plain()) }); // prettier-ignore
    expect(await faultIn(answer)).toMatchObject({ status: 400, code: 'input.malformed' });
  });
});
