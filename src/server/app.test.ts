import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from '../../test/tempStore.ts';
import { createClient, conflictOf, type Send } from '../api/client.ts';
import type { FaultReply, JournalReply, ShootReply } from '../api/replies.ts';
import { Fault } from '../base/fault.ts';
import { openStore } from '../store/openStore.ts';
import type { ShootStore } from '../store/shootStore.ts';
import { createApp } from './app.ts';
import { LARGEST_BODY_B } from './body.ts';
import { STATUS } from './faults.ts';

const INDEX = '<!doctype html><title>Longsecond</title>';

function webFolder(): string {
  const outer = tempFolder();
  const folder = join(outer, 'web');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(outer, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), INDEX);
  writeFileSync(join(folder, 'mark.svg'), '<svg/>');
  writeFileSync(join(folder, '.hidden'), 'secret');
  writeFileSync(join(folder, 'assets', 'index-BxT3_a1c.js'), 'export {};');
  if (process.platform !== 'win32') symlinkSync(join(outer, 'secret.txt'), join(folder, 'link.txt'));
  return folder;
}

async function server(store?: ShootStore, folder = webFolder()) {
  const kept = store ?? (await tempStore());
  if (!store) kept.bringIn({ editId: 'import-0001', at: '2027-03-09T07:00:00.000Z', text: SMALL_SHOOT, id: 's' });
  const log: string[] = [];
  const app = createApp({ store: kept, webFolder: folder, clock: steppingClock(), log: (line) => log.push(line) });
  const post = (path: string, body: unknown, headers: Readonly<Record<string, string>> = {}) =>
    app.request(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });
  return { app, store: kept, log, post };
}

const seed = (value: unknown) => [{ op: 'replace', path: '/shoot/seed', value }];
const edit = { editId: 'edit-00001', revision: 0, patch: seed(8), summary: 'Seed' };

describe('reading', () => {
  test('shoots are listed', async () => {
    const { app } = await server();
    const at = '2027-03-09T07:00:00.000Z';
    expect(await (await app.request('/api/shoots')).json()).toEqual({
      shoots: [{ id: 's', title: 'Milk and thunder', revision: 0, created: at, updated: at, standing: 'current' }],
    });
  });

  test('a shoot opens in its written form, and says what the one who asks could take back', async () => {
    const { app, post } = await server();
    await post('/api/shoots/s/edits', edit, { 'longsecond-client': 'ada' });
    const open = async (client: string) =>
      (await (await app.request('/api/shoots/s', { headers: { 'longsecond-client': client } })).json()) as ShootReply;
    const { written, ...rest } = await open('ada');
    expect(rest).toEqual({ id: 's', revision: 1, title: 'Milk and thunder', undoSummary: 'Seed' });
    expect(written).toMatchObject({ shoot: { seed: 8 }, shots: { splash: { shutter: '1/2000 s' } } });
    expect(await open('bo')).not.toHaveProperty('undoSummary');
  });

  test('the text comes as YAML, with its revision', async () => {
    const { app } = await server();
    const answer = await app.request('/api/shoots/s/text');
    expect(answer.headers.get('content-type')).toBe('text/yaml; charset=utf-8');
    expect(answer.headers.get('longsecond-revision')).toBe('0');
    expect(await answer.text()).toBe(SMALL_SHOOT);
  });

  test('the journal is told in pages', async () => {
    const { app, post } = await server();
    for (let n = 0; n < 3; n += 1)
      await post('/api/shoots/s/edits', { ...edit, editId: `edit-0000${n}`, revision: n, patch: seed(n) });
    const page = (await (await app.request('/api/shoots/s/journal?after=1&limit=1')).json()) as JournalReply;
    expect(page).toMatchObject({ revision: 3, rows: [{ number: 2, who: 'unnamed', kind: 'edit', patch: seed(1) }] });
    expect(page.rows[0]?.at).toMatch(/^2027-03-09T07:30:0\d\.000Z$/);
  });

  test('nothing of the data is cached', async () => {
    const { app } = await server();
    for (const path of ['/api/shoots', '/api/shoots/s', '/api/shoots/s/text', '/api/shoots/gone'])
      expect((await app.request(path)).headers.get('cache-control')).toBe('no-store');
  });
});

describe('writing', () => {
  test('an edit, its undo and its redo each answer the new revision and what to apply', async () => {
    const { post } = await server();
    const answers = [];
    for (const [path, body] of [
      ['edits', edit],
      ['undo', { editId: 'undo-00001' }],
      ['redo', { editId: 'redo-00001' }],
    ] as const)
      // prettier-ignore
      answers.push(await (await post(`/api/shoots/s/${path}`, body)).json());
    expect(answers).toEqual([
      { revision: 1, patch: seed(8), undoSummary: 'Seed' },
      { revision: 2, patch: seed(7), redoSummary: 'Seed' },
      { revision: 3, patch: seed(8), undoSummary: 'Seed' },
    ]);
  });

  test('sent twice, an edit answers its first result', async () => {
    const { post, store } = await server();
    const [first, second] = [await post('/api/shoots/s/edits', edit), await post('/api/shoots/s/edits', edit)];
    expect(await second.json()).toEqual(await first.json());
    expect(store.open('s').revision).toBe(1);
  });

  test('a shoot is brought in from its text, and answers as it opens', async () => {
    const { app, post } = await server();
    const answer = await post('/api/shoots', { editId: 'import-0002', text: SMALL_SHOOT });
    expect(answer.status).toBe(201);
    const reply = (await answer.json()) as ShootReply;
    expect(reply).toMatchObject({ id: 'milk-and-thunder', revision: 0 });
    expect(await (await app.request('/api/shoots/milk-and-thunder')).json()).toEqual(reply);
  });

  test('the largest shoot there may be fits through', async () => {
    const { post } = await server();
    const text = `${SMALL_SHOOT}# ${'a "long" remark, '.repeat(285_000)}\n`;
    expect(text.length).toBeGreaterThan(4_800_000);
    expect((await post('/api/shoots', { editId: 'import-0003', text })).status).toBe(201);
  }, 30_000);
});

interface Refusal {
  readonly path?: string;
  readonly method?: string;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  readonly status: number;
  readonly code: string;
}

describe('refusals', () => {
  const toEdits = { path: '/api/shoots/s/edits', method: 'POST' };
  const badPatch = (operation: unknown) => ({
    ...toEdits,
    body: { ...edit, patch: [operation] },
    status: 400,
    code: 'input.malformed',
  });
  const deep = (depth: number): unknown => JSON.parse('['.repeat(depth) + ']'.repeat(depth));
  const refusals: Readonly<Record<string, Refusal>> = {
    'an unknown shoot': { path: '/api/shoots/gone', status: 404, code: 'shoot.unknown' },
    'the text of an unknown shoot': { path: '/api/shoots/gone/text', status: 404, code: 'shoot.unknown' },
    'the journal of an unknown shoot': { path: '/api/shoots/gone/journal', status: 404, code: 'shoot.unknown' },
    'the events of an unknown shoot': { path: '/api/shoots/gone/events', status: 404, code: 'shoot.unknown' },
    'an edit to an unknown shoot': { ...toEdits, path: '/api/shoots/gone/edits', body: edit, status: 404, code: 'shoot.unknown' },
    'an id that is none': { path: '/api/shoots/..%2f..%2fetc', status: 400, code: 'input.malformed' },
    'an id of another alphabet': { path: '/api/shoots/%00', status: 400, code: 'input.malformed' },
    'an unknown route': { path: '/api/shots', status: 404, code: 'route.unknown' },
    'the bare root of the routes': { path: '/api', status: 404, code: 'route.unknown' },
    'a method that the route has not': { path: '/api/shoots/s', method: 'DELETE', body: {}, status: 404, code: 'route.unknown' },
    'an edit of another type': { ...toEdits, body: edit, headers: { 'content-type': 'text/plain' }, status: 415, code: 'input.wrong-type' },
    'an edit of a form': { ...toEdits, body: 'a=1', headers: { 'content-type': 'application/x-www-form-urlencoded' }, status: 415, code: 'input.wrong-type' },
    'an edit in another alphabet': { ...toEdits, body: edit, headers: { 'content-type': 'application/json; charset=utf-16' }, status: 415, code: 'input.wrong-type' },
    'what is not JSON': { ...toEdits, body: '{"editId":', status: 400, code: 'input.not-json' },
    'an empty body': { ...toEdits, body: '', status: 400, code: 'input.not-json' },
    'a body that is not an object': { ...toEdits, body: '[]', status: 400, code: 'input.malformed' },
    'an edit without an id': { ...toEdits, body: { ...edit, editId: undefined }, status: 400, code: 'input.malformed' },
    'an edit with a key too many': { ...toEdits, body: { ...edit, who: 'somebody else' }, status: 400, code: 'input.malformed' },
    'an edit of nothing': { ...toEdits, body: { ...edit, patch: [] }, status: 400, code: 'input.malformed' },
    'a revision below nought': { ...toEdits, body: { ...edit, revision: -1 }, status: 400, code: 'input.malformed' },
    'a summary over lines': { ...toEdits, body: { ...edit, summary: 'a\nb' }, status: 400, code: 'input.malformed' },
    'an operation that moves': badPatch({ op: 'move', from: '/shots/splash', path: '/shots/other' }),
    'an edit of the whole': badPatch({ op: 'replace', path: '', value: {} }),
    'a path that is none': badPatch({ op: 'replace', path: 'shoot/seed', value: 1 }),
    'a path with a broken escape': badPatch({ op: 'replace', path: '/shoot/~2', value: 1 }),
    'a path into what objects inherit': badPatch({ op: 'add', path: '/__proto__/polluted', value: 1 }),
    'a value that would pose as inherited': { ...toEdits, body: JSON.stringify({ ...edit, patch: [{ op: 'add', path: '/shots/x', value: { KEY: { polluted: 1 } } }] }).replace('KEY', '__proto__'), status: 400, code: 'input.malformed' },
    'an operation without its value': badPatch({ op: 'replace', path: '/shoot/seed' }),
    'half a character': badPatch({ op: 'replace', path: '/shoot/title', value: '\ud83e' }),
    'a value deeper than any stack': { ...toEdits, body: JSON.stringify(edit).replace('"value":8', `"value":${'['.repeat(50_000)}${']'.repeat(50_000)}`), status: 400, code: 'input.malformed' },
    'a value deeper than any shoot': badPatch({ op: 'add', path: '/shots/x', value: deep(70) }),
    'a path into what every object has': { ...toEdits, body: { ...edit, patch: [{ op: 'add', path: '/shots/constructor/prototype', value: 1 }] }, status: 422, code: 'patch.path-refused' },
    'a place that is not there': { ...toEdits, body: { ...edit, patch: [{ op: 'remove', path: '/shots/gone' }] }, status: 422, code: 'patch.path-missing' },
    'a text that is malformed': { path: '/api/shoots', method: 'POST', body: { editId: 'import-0002', text: 'a: [' }, status: 422, code: 'document.truncated' },
    'a text of another kind': { path: '/api/shoots', method: 'POST', body: { editId: 'import-0002', text: 'a: 1' }, status: 422, code: 'document.not-a-shoot' },
    'an id that is taken': { path: '/api/shoots', method: 'POST', body: { editId: 'import-0002', text: SMALL_SHOOT, id: 's' }, status: 409, code: 'shoot.id-taken' },
    'a revision to come': { ...toEdits, body: { ...edit, revision: 7 }, status: 409, code: 'edit.revision-unknown' },
    'an undo of nothing': { path: '/api/shoots/s/undo', method: 'POST', body: { editId: 'undo-00001' }, status: 409, code: 'undo.none' },
    'a redo of nothing': { path: '/api/shoots/s/redo', method: 'POST', body: { editId: 'redo-00001' }, status: 409, code: 'redo.none' },
    'a client name that is none': { path: '/api/shoots/s', headers: { 'longsecond-client': 'a b' }, status: 400, code: 'input.malformed' },
    'a name that is half encoded': { ...toEdits, body: edit, headers: { 'longsecond-name': '%E0%A4%A' }, status: 400, code: 'input.malformed' },
    'a name that is not encoded': { ...toEdits, body: edit, headers: { 'longsecond-name': 'Zo\xeb' }, status: 400, code: 'input.malformed' },
    'a name over lines': { ...toEdits, body: edit, headers: { 'longsecond-name': 'a%0Ab' }, status: 400, code: 'input.malformed' },
    'a name of 61 characters': { ...toEdits, body: edit, headers: { 'longsecond-name': encodeURIComponent('🎬'.repeat(61)) }, status: 400, code: 'input.malformed' },
    'a text to come': { path: '/api/shoots/s/text?revision=1', status: 404, code: 'revision.unknown' },
    'a text of no revision': { path: '/api/shoots/s/text?revision=new', status: 400, code: 'input.malformed' },
    'a shoot as it will be': { path: '/api/shoots/s/at/1', status: 404, code: 'revision.unknown' },
    'a shoot as it was at no revision': { path: '/api/shoots/s/at/-1', status: 400, code: 'input.malformed' },
    'a journal both ways': { path: '/api/shoots/s/journal?after=1&before=4', status: 400, code: 'input.malformed' },
    'a restore of what is there': { path: '/api/shoots/s/restore', method: 'POST', body: { editId: 'restore-001', revision: 0, to: 0 }, status: 409, code: 'restore.same' },
    'a restore of what is to come': { path: '/api/shoots/s/restore', method: 'POST', body: { editId: 'restore-001', revision: 0, to: 1 }, status: 404, code: 'revision.unknown' },
    'a restore of nothing': { path: '/api/shoots/s/restore', method: 'POST', body: { editId: 'restore-001', revision: 0 }, status: 400, code: 'input.malformed' },
    'a standing that there is none of': { path: '/api/shoots/s/standing', method: 'POST', body: { standing: 'deleted' }, status: 400, code: 'input.malformed' },
    'a duplicate without a title': { path: '/api/shoots/s/duplicate', method: 'POST', body: { editId: 'copy-00001', title: ' ' }, status: 400, code: 'input.malformed' },
    'a duplicate of nothing': { path: '/api/shoots/gone/duplicate', method: 'POST', body: { editId: 'copy-00001', title: 'x' }, status: 404, code: 'shoot.unknown' },
    'presence in an unknown shoot': { path: '/api/shoots/gone/presence', method: 'POST', body: { at: '' }, status: 404, code: 'shoot.unknown' },
    'a shoot under the address of another place': { path: '/api/shoots', method: 'POST', body: { editId: 'import-0002', text: SMALL_SHOOT, id: 'paper' }, status: 409, code: 'shoot.id-reserved' },
    'a shoot of a type that there is none of': { path: '/api/shoots', method: 'POST', body: 'x', headers: { 'content-type': 'application/x-zip' }, status: 415, code: 'input.wrong-type' },
    'a journal from nowhere': { path: '/api/shoots/s/journal?after=-1', status: 400, code: 'input.malformed' },
    'too much of the journal': { path: '/api/shoots/s/journal?limit=501', status: 400, code: 'input.malformed' },
    'events from nowhere': { path: '/api/shoots/s/events', headers: { 'last-event-id': 'abc' }, status: 400, code: 'input.malformed' },
    'a body that says it is huge': { ...toEdits, body: edit, headers: { 'content-length': '99999999' }, status: 413, code: 'input.too-large' },
    'a body that is huge': { ...toEdits, body: ' '.repeat(LARGEST_BODY_B + 1), status: 413, code: 'input.too-large' },
    'a foreign host': { path: '/api/shoots', headers: { host: 'rebound.example' }, status: 403, code: 'host.refused' },
    'a foreign host with our port': { path: '/', headers: { host: 'rebound.example:4460' }, status: 403, code: 'host.refused' },
    'a host that begins like ours': { path: '/api/shoots', headers: { host: 'localhost.example' }, status: 403, code: 'host.refused' },
    'a host that ends like ours': { path: '/api/shoots', headers: { host: 'not-localhost' }, status: 403, code: 'host.refused' },
    'an address of the network': { path: '/api/shoots', headers: { host: '192.168.1.20:4460' }, status: 403, code: 'host.refused' },
    'an address that names another host': { path: 'http://rebound.example/api/shoots', headers: { host: 'localhost' }, status: 403, code: 'host.refused' },
    'a write from another page': { ...toEdits, body: edit, headers: { origin: 'https://page.example' }, status: 403, code: 'origin.refused' },
    'a write from another port': { ...toEdits, body: edit, headers: { host: 'localhost:4460', origin: 'http://localhost:3000' }, status: 403, code: 'origin.refused' },
    'a write from a page without origin': { ...toEdits, body: edit, headers: { origin: 'null' }, status: 403, code: 'origin.refused' },
    'a write that another site started': { ...toEdits, body: edit, headers: { 'sec-fetch-site': 'cross-site' }, status: 403, code: 'origin.refused' },
    'a bringing in from another page': { path: '/api/shoots', method: 'POST', body: { editId: 'import-0002', text: SMALL_SHOOT }, headers: { origin: 'https://page.example' }, status: 403, code: 'origin.refused' },
    'a page that is not there': { path: '/assets/gone-AAAAAAAA.js', status: 404, code: 'page.unknown' },
    'a way out of the folder': { path: '/..%2fsecret.txt', status: 404, code: 'page.unknown' },
    'a way out, twice disguised': { path: '/%252e%252e/secret.txt', status: 404, code: 'page.unknown' },
    'a way out by the other slash': { path: '/..%5csecret.txt', status: 404, code: 'page.unknown' },
    'an absolute path': { path: '//etc/passwd.txt', status: 404, code: 'page.unknown' },
    'a hidden file': { path: '/.hidden', status: 404, code: 'page.unknown' },
    'a file behind a link': { path: '/link.txt', status: 404, code: 'page.unknown' },
    'a name with a nought in it': { path: '/index.html%00.js', status: 404, code: 'page.unknown' },
  }; // prettier-ignore

  // One for all, which each of them must leave as it was.
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-'));
  let shared: ShootStore;
  beforeAll(async () => {
    shared = await openStore({ folder });
    shared.bringIn({ editId: 'import-0001', at: '2027-03-09T07:00:00.000Z', text: SMALL_SHOOT, id: 's' });
  });
  afterAll(() => {
    shared.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test.each(Object.entries(refusals))('%s is refused with status, code and how to mend it', async (_, refusal) => {
    const { path = '/', method = 'GET', body, headers = {}, status, code } = refusal;
    const { app, store, log } = await server(shared);
    const answer = await app.request(path, {
      method,
      headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const fault = (await answer.json()) as FaultReply;
    expect({ status: answer.status, code: fault.code }).toEqual({ status, code });
    expect(fault.mend).toMatch(/^[A-Z]\S* .+/);
    expect(fault.what).not.toBe('');
    expect(fault.where).not.toBe('');
    expect(answer.headers.get('content-type')).toBe('application/json');
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'self'");
    expect(store.list()).toHaveLength(1);
    expect(store.open('s')).toMatchObject({ revision: 0, text: SMALL_SHOOT });
    expect(log).toEqual([]);
    expect(Object.prototype).not.toHaveProperty('polluted');
  });

  test('a conflict carries both values and whose the other is', async () => {
    const { post } = await server();
    await post('/api/shoots/s/edits', edit, { 'longsecond-client': 'ada' });
    const answer = await post('/api/shoots/s/edits', { ...edit, editId: 'edit-00002', patch: seed(9) });
    expect(answer.status).toBe(409);
    expect(await answer.json()).toMatchObject({
      code: 'edit.conflict',
      where: 's/shoot/seed',
      conflict: { path: '/shoot/seed', yours: 9, theirs: 8, number: 1, who: 'ada', summary: 'Seed' },
    });
  });

  test('an undo that others have crossed says who and what', async () => {
    const { post } = await server();
    await post('/api/shoots/s/edits', edit, { 'longsecond-client': 'ada' });
    await post('/api/shoots/s/edits', { ...edit, editId: 'edit-00002', revision: 1, patch: seed(9), summary: 'Lucky' });
    const answer = await post('/api/shoots/s/undo', { editId: 'undo-00001' }, { 'longsecond-client': 'ada' });
    expect(answer.status).toBe(409);
    expect(await answer.json()).toMatchObject({
      code: 'undo.touched-since',
      conflict: { yours: 7, theirs: 9, who: 'unnamed', summary: 'Lucky' },
    });
  });

  test('our own failure is answered without what went on inside, which is in the log', async () => {
    const store = await tempStore();
    const { app, log } = await server({ ...store, list: () => { throw new TypeError('the shelf of /home/somebody fell') } }); // prettier-ignore
    const answer = await app.request('/api/shoots');
    expect(answer.status).toBe(500);
    const reply = await answer.text();
    expect(reply).not.toMatch(/shelf|\.ts|somebody/);
    const fault = JSON.parse(reply) as FaultReply;
    expect(fault).toMatchObject({ code: 'bug', where: 'GET /api/shoots' });
    const [reference = ''] = /[0-9a-f]{8}/.exec(fault.mend) ?? [];
    expect(log.join()).toContain(reference);
    expect(log.join()).toMatch(/the shelf of[^]*app\.test\.ts/);
  });

  test('a full disk is told as one, and may be tried again', async () => {
    const store = await tempStore();
    const full = new Fault({ code: 'store.full', what: 'Full', where: 'disk', mend: 'Make room.', retry: true });
    const { app } = await server({ ...store, list: () => { throw full } }); // prettier-ignore
    const answer = await app.request('/api/shoots');
    expect(answer.status).toBe(507);
    expect(await answer.json()).toMatchObject({ code: 'store.full', retry: true });
  });

  test('every fault that a request can meet has its status', () => {
    const atStart = /^(store\.(locked|newer|no-sqlite)|port\.|shoot\.(unreadable-file|not-text))/;
    const src = resolve(import.meta.dirname, '..');
    const files = ['store', 'server', 'server/routes'].flatMap((folder) =>
      readdirSync(join(src, folder)).map((name) => join(src, folder, name)),
    );
    const codes = files
      .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
      .flatMap((file) => [...readFileSync(file, 'utf8').matchAll(/code: '([a-z.-]+)'/g)].map(([, code = '']) => code));
    expect(codes.length).toBeGreaterThan(15);
    expect(codes.filter((code) => !atStart.test(code) && STATUS[code] === undefined)).toEqual([]);
  });
});

describe('who may write', () => {
  test.each([
    ['our own page', { host: 'localhost:4460', origin: 'http://localhost:4460', 'sec-fetch-site': 'same-origin' }],
    ['our own page by number', { host: '127.0.0.1:4460', origin: 'http://127.0.0.1:4460' }],
    ['our own page by the longer number', { host: '[::1]:4460', origin: 'http://[::1]:4460' }],
    ['a program that is no browser', { host: 'localhost:4460' }],
  ])('%s may', async (_, headers) => {
    const { post } = await server();
    expect((await post('/api/shoots/s/edits', edit, headers)).status).toBe(200);
  });
});

describe('screens', () => {
  test.each([
    ['/', INDEX, 'text/html; charset=utf-8', 'no-store'],
    ['/index.html', INDEX, 'text/html; charset=utf-8', 'no-store'],
    ['/shoots/demo/shots/pour-1', INDEX, 'text/html; charset=utf-8', 'no-store'],
    ['/reckoner?law=light-needed', INDEX, 'text/html; charset=utf-8', 'no-store'],
    ['/mark.svg', '<svg/>', 'image/svg+xml', 'no-cache'],
    ['/assets/index-BxT3_a1c.js', 'export {};', 'text/javascript; charset=utf-8', 'public, max-age=31536000, immutable'],
  ])('%s answers with its bytes, its type and how long to keep it', async (path, body, type, keeping) => {
    const { app } = await server();
    const answer = await app.request(path);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe(body);
    expect(answer.headers.get('content-type')).toBe(type);
    expect(answer.headers.get('cache-control')).toBe(keeping);
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  }); // prettier-ignore

  test('HEAD answers as GET does, without the body', async () => {
    const { app } = await server();
    const answer = await app.request('/mark.svg', { method: 'HEAD' });
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-length')).toBe('6');
    expect(await answer.text()).toBe('');
  });

  test('where the screens have not been built, it says so', async () => {
    const { app } = await server(undefined, join(tempFolder(), 'nowhere'));
    const answer = await app.request('/');
    expect(answer.status).toBe(503);
    expect(await answer.json()).toMatchObject({ code: 'screens.not-built' });
  });
});

describe('the client', () => {
  async function client(name = 'ada', called?: () => string | undefined) {
    const { app } = await server();
    const send: Send = async ({ method, path, headers, body }) => {
      const answer = await app.request(path, {
        method,
        headers: { ...headers },
        ...(body === undefined ? {} : { body }),
      });
      return { status: answer.status, text: await answer.text() };
    };
    return createClient({ send, client: name, ...(called ? { name: called } : {}) });
  }

  test('goes through every route', async () => {
    const api = await client();
    expect((await api.list()).shoots.map(({ id }) => id)).toEqual(['s']);
    const patch = [{ op: 'replace', path: '/shoot/seed', value: 8 }] as const;
    expect(await api.edit('s', { editId: 'edit-00001', revision: 0, patch, summary: 'Seed' })).toMatchObject({ revision: 1 });
    expect(await api.undo('s', { editId: 'undo-00001' })).toMatchObject({ revision: 2, redoSummary: 'Seed' });
    expect(await api.redo('s', { editId: 'redo-00001' })).toMatchObject({ revision: 3, undoSummary: 'Seed' });
    expect((await api.journal('s', 1)).rows.map(({ who, kind }) => [who, kind])).toEqual([['ada', 'undo'], ['ada', 'redo']]);
    expect(await api.text('s')).toBe(SMALL_SHOOT.replace('seed: 7', 'seed: 8'));
    expect(await api.bringIn({ editId: 'import-0002', text: SMALL_SHOOT, id: 'other' })).toMatchObject({ id: 'other' });
    expect(await api.open('other')).toMatchObject({ revision: 0, title: 'Milk and thunder' });
    expect(await api.text('s', 0)).toBe(SMALL_SHOOT);
    expect(await api.at('s', 0)).toEqual({ id: 's', revision: 0, title: 'Milk and thunder', written: (await api.open('other')).written });
    expect((await api.history('s')).rows.map(({ number }) => number)).toEqual([3, 2, 1]);
    expect((await api.history('s', { before: 3, limit: 1 })).rows.map(({ number }) => number)).toEqual([2]);
    expect(await api.restore('s', { editId: 'restore-001', revision: 3, to: 0 })).toEqual({ revision: 4, patch: seed(7), undoSummary: 'Restored revision 0' });
    expect(await api.setStanding('s', 'template')).toMatchObject({ id: 's', standing: 'template', revision: 4 });
    expect(await api.duplicate('s', { editId: 'copy-00001', title: 'Cream' })).toMatchObject({ id: 'cream', title: 'Cream', revision: 0 });
    expect((await api.present('s', { at: '/shoot/seed' })).present).toMatchObject([{ who: 'ada', at: '/shoot/seed' }]);
    expect(await api.upload('s', { name: 'a.csv', type: 'text/csv', bytes: Uint8Array.of(1, 2) })).toMatchObject({ name: 'a.csv', size_B: 2 });
  }); // prettier-ignore

  test('says what the person is called, as they are called at the time', async () => {
    let called: string | undefined = ' Zoë\n🎬 ';
    const api = await client('ada', () => called);
    const patch = (value: number) => [{ op: 'replace', path: '/shoot/seed', value }] as const;
    await api.edit('s', { editId: 'edit-00001', revision: 0, patch: patch(8), summary: 'Seed' });
    called = undefined;
    await api.edit('s', { editId: 'edit-00002', revision: 1, patch: patch(9), summary: 'Seed' });
    const { rows } = await api.journal('s');
    expect(rows.map(({ name }) => name)).toEqual(['Zoë 🎬', undefined]);
    expect((await api.present('s', { at: '' })).present).toHaveLength(1);
  });

  test('rejects with the server’s own fault, and with what it ran into', async () => {
    const api = await client();
    const patch = [{ op: 'replace', path: '/shoot/seed', value: 8 }] as const;
    await api.edit('s', { editId: 'edit-00001', revision: 0, patch, summary: 'Seed' });
    const fault: unknown = await api.edit('s', { editId: 'edit-00002', revision: 0, patch, summary: 'Seed' }).catch((error: unknown) => error); // prettier-ignore
    if (!(fault instanceof Fault)) throw new Error('it was not refused');
    expect(fault.code).toBe('edit.conflict');
    expect(conflictOf(fault)).toMatchObject({ yours: 8, theirs: 8, who: 'ada' });
  });

  test.each([
    [200, '<html>a proxy</html>'],
    [502, '<html>a proxy</html>'],
    [404, 'null'],
    [404, '{}'],
  ])('an answer with status %i that is not ours is told as such: %s', async (status, text) => {
    const api = createClient({ send: () => Promise.resolve({ status, text }), client: 'ada' });
    await expect(api.list()).rejects.toMatchObject({ code: 'server.strange', retry: status >= 500 });
  });
});
