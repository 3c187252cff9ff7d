import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { faultIn, tempServer } from '../../../test/tempServer.ts';
import type { FileReply } from '../../api/replies.ts';
import { filePath, filesPath } from '../../api/routes.ts';
import { LARGEST_FILE_B } from '../fileKind.ts';

const PICTURES = {
  'image/png': '\x89PNG\r\n\x1a\n…',
  'image/jpeg': '\xff\xd8\xff\xe0 JFIF',
  'image/gif': 'GIF89a,',
  'image/webp': 'RIFF\x10\x00\x00\x00WEBPVP8 ',
} as const;

const bytesOf = (text: string) => Uint8Array.from(Buffer.from(text, 'latin1'));

async function server() {
  const temp = await tempServer();
  const send = (body: Uint8Array<ArrayBuffer>, { type = 'application/octet-stream', name = 'a-file' }: { readonly type?: string; readonly name?: string } = {}) =>
    temp.request(filesPath('s'), { method: 'POST', headers: { 'content-type': type, 'longsecond-file-name': name }, body });
  return { ...temp, send };
} // prettier-ignore

describe('sending a file', () => {
  test.each(Object.entries(PICTURES))('a picture of type %s is known by its bytes', async (kind, text) => {
    const { client, request } = await server();
    const bytes = bytesOf(text);
    const reply = await client('ada').upload('s', { name: 'Zoë 1.bin', type: '', bytes });
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    expect(reply).toEqual({ sha256, size_B: bytes.length, name: 'Zoë 1.bin', kind });
    const answer = await request(filePath('s', sha256));
    expect(Uint8Array.from(Buffer.from(await answer.arrayBuffer()))).toEqual(bytes);
    expect(answer.headers.get('content-type')).toBe(kind);
    expect(answer.headers.get('content-disposition')).toBe(
      `inline; filename="Zo_ 1.bin"; filename*=UTF-8''Zo%C3%AB%201.bin`,
    );
  });

  test('whatever a picture is sent as, it is kept as what it is', async () => {
    const { send } = await server();
    const answer = await send(bytesOf(PICTURES['image/png']), { type: 'image/jpeg' });
    expect(answer.status).toBe(201);
    expect((await answer.json()) as FileReply).toMatchObject({ kind: 'image/png' });
  });

  test.each([
    ['<svg xmlns="http://www.w3.org/2000/svg"/>', 'application/octet-stream'],
    ['<!doctype html><script>alert(1)</script>', 'text/html'],
    ['', 'application/octet-stream'],
  ])('%j is kept as bytes that no browser runs', async (text, type) => {
    const { send, request } = await server();
    const reply = (await (await send(bytesOf(text), { type, name: 'x.html' })).json()) as FileReply;
    expect(reply.kind).toBe('application/octet-stream');
    const { headers } = await request(filePath('s', reply.sha256));
    expect(Object.fromEntries(['content-type', 'x-content-type-options', 'content-security-policy', 'cache-control', 'content-disposition', 'cross-origin-resource-policy'].map((name) => [name, headers.get(name)]))).toEqual({
      'content-type': 'application/octet-stream',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'; sandbox",
      'cache-control': 'private, max-age=31536000, immutable',
      'content-disposition': `attachment; filename="x.html"; filename*=UTF-8''x.html`,
      'cross-origin-resource-policy': 'same-origin',
    });
  }); // prettier-ignore

  test('a file of the largest size fits through, and one byte more does not', async () => {
    const { send, store } = await server();
    const largest = new Uint8Array(LARGEST_FILE_B);
    expect((await send(largest)).status).toBe(201);
    const fault = await faultIn(await send(new Uint8Array(LARGEST_FILE_B + 1), { name: 'more' }));
    expect(fault).toMatchObject({ status: 413, code: 'input.too-large' });
    expect(fault.what).toContain('32.0 MB');
    expect(store.list()).toHaveLength(1);
  }, 60_000);

  test.each([
    ['an SVG drawing', { type: 'image/svg+xml' }, '<svg/>', 415, 'file.svg-refused'],
    ['a page that poses as a picture', { type: 'image/png' }, '<!doctype html>', 415, 'file.not-a-picture'],
    ['a form', { type: 'multipart/form-data; boundary=x' }, '--x', 415, 'input.wrong-type'],
    ['a path', { name: '..%2Fsecret' }, 'x', 400, 'input.malformed'],
    ['a path by the other slash', { name: 'a%5Cb' }, 'x', 400, 'input.malformed'],
    ['the folder itself', { name: '..' }, 'x', 400, 'input.malformed'],
    ['a name with a nought in it', { name: 'a%00b' }, 'x', 400, 'input.malformed'],
    ['a name that is not encoded', { name: 'Zo\xeb' }, 'x', 400, 'input.malformed'],
    ['a name that is half encoded', { name: 'a%E0%A4%A' }, 'x', 400, 'input.malformed'],
    ['no name', { name: '' }, 'x', 400, 'input.malformed'],
    ['a name beyond all measure', { name: 'x'.repeat(256) }, 'x', 400, 'input.malformed'],
  ])('%s is refused', async (_, how, text, status, code) => {
    const { send } = await server();
    expect(await faultIn(await send(bytesOf(text), how))).toMatchObject({ status, code });
  });

  test('to a shoot that is not there is refused', async () => {
    const { request } = await server();
    const answer = await request(filesPath('gone'), { method: 'POST', headers: { 'longsecond-file-name': 'x' }, body: 'x' }); // prettier-ignore
    expect(await faultIn(answer)).toMatchObject({ status: 404, code: 'shoot.unknown' });
  });
});

describe('asking for a file', () => {
  test('of no hash, or of another shoot, is refused', async () => {
    const { request, store, client } = await server();
    const { sha256 } = await client('ada').upload('s', { name: 'x', type: '', bytes: bytesOf('x') });
    store.bringIn({ editId: 'import-0002', at: '2027-03-09T07:00:00.000Z', text: 'longsecond: 1\n', id: 'other' });
    expect(await faultIn(await request(filePath('other', sha256)))).toMatchObject({ status: 404, code: 'file.unknown' }); // prettier-ignore
    expect(await faultIn(await request(filePath('s', 'f'.repeat(64))))).toMatchObject({ status: 404, code: 'file.unknown' }); // prettier-ignore
    expect(await faultIn(await request(filePath('s', '../x')))).toMatchObject({ status: 400, code: 'input.malformed' });
  });
});
