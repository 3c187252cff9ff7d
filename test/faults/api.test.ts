/** Whatever is sent to whichever route, the answer is a proper one, and a refusal leaves everything as it was. */
import fc from 'fast-check';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FaultReply } from '../../src/api/replies.ts';
import { createApp } from '../../src/server/app.ts';
import { openStore } from '../../src/store/openStore.ts';
import type { ShootStore } from '../../src/store/types.ts';
import { writtenValues } from '../documents.ts';
import { SMALL_SHOOT, steppingClock } from '../tempStore.ts';

const SHA = 'a'.repeat(64);

/** Stands for an edit id that was never sent. */
const NEW = '@new';
const editId = fc.constantFrom(NEW, NEW, NEW, NEW, 'sent-again-1');
/** Stands for the revision that the shoot is at when the body is sent. */
const NOW = '@now';
const revision = fc.constantFrom(NOW, NOW, NOW, 0, 1, 900);
const line = fc.string({ minLength: 1, maxLength: 20 });

const operations = fc.record({
  op: fc.constantFrom('add', 'replace', 'remove'),
  path: fc.oneof(
    fc.constantFrom('/shoot/seed', '/shoot/title', '/shots/splash', '/shots/splash/lens', '/kit/lenses/near', '/kit', '/longsecond', '/files', '/shots/new', '/order/shots/0', '/order/shots/-', '/shots/constructor', '/', '//', '/shots/a~1b'),
    line.map((key) => `/shots/${key}`),
  ),
  value: writtenValues,
}).map(({ op, path, value }) => (op === 'remove' ? { op, path } : { op, path, value })); // prettier-ignore

/** What each route takes: bodies that are right in form, whether or not they can be done. */
const TAKES = {
  edits: fc.record({ editId, revision, patch: fc.array(operations, { minLength: 1, maxLength: 3 }), summary: line }),
  step: fc.record({ editId }),
  restore: fc.record({ editId, revision, to: revision }),
  presence: fc.record({ at: fc.constantFrom('', '/shoot', '/shots/splash/lens'), place: line }, { requiredKeys: ['at'] }), // prettier-ignore
  standing: fc.record({ standing: fc.constantFrom('current', 'template', 'archived') }),
  duplicate: fc.record({ editId, title: line }),
  shoot: fc.record({ editId, text: fc.constantFrom(SMALL_SHOOT, 'longsecond: 1\n', 'longsecond: 9\n', 'a: [', '') }),
} satisfies Readonly<Record<string, fc.Arbitrary<object>>>;

const NOTHING = fc.constant({});

/** Every route there is, `:id` standing for the shoot, and what it takes. */
const ROUTES: readonly (readonly ['GET' | 'POST', string, fc.Arbitrary<object>])[] = [
  ['GET', '/api/shoots', NOTHING],
  ['POST', '/api/shoots', TAKES.shoot],
  ['GET', '/api/shoots/:id', NOTHING],
  ['GET', '/api/shoots/:id/text', NOTHING],
  ['GET', '/api/shoots/:id/at/0', NOTHING],
  ['GET', '/api/shoots/:id/journal', NOTHING],
  ['GET', '/api/shoots/:id/export', NOTHING],
  ['GET', '/api/shoots/:id/events', NOTHING],
  ['GET', `/api/shoots/:id/files/${SHA}`, NOTHING],
  ['POST', '/api/shoots/:id/files', NOTHING],
  ['POST', '/api/shoots/:id/edits', TAKES.edits],
  ['POST', '/api/shoots/:id/undo', TAKES.step],
  ['POST', '/api/shoots/:id/redo', TAKES.step],
  ['POST', '/api/shoots/:id/restore', TAKES.restore],
  ['POST', '/api/shoots/:id/presence', TAKES.presence],
  ['POST', '/api/shoots/:id/standing', TAKES.standing],
  ['POST', '/api/shoots/:id/duplicate', TAKES.duplicate],
];

const deep = (depth: number, open: string, close: string) => open.repeat(depth) + '1' + close.repeat(depth);

const badText = fc.oneof(
  fc.constantFrom('..', '../..', '..%2f..%2fetc%2fpasswd', '%', '%E0%A4%A', '%00', '%ff', 'a/b', 'a\\b', '__proto__', 'constructor', 'NaN', '-1', '1e9', '9'.repeat(20), ' ', '🎬', 's%0a', 's?x', 's#x', 'x'.repeat(3000)),
  fc.string({ maxLength: 20 }),
  fc.string({ unit: 'binary', maxLength: 8 }),
); // prettier-ignore

const shootIds = fc.oneof(
  { weight: 12, arbitrary: fc.constant('s') },
  { weight: 1, arbitrary: fc.constantFrom('gone', 'api', 'kit', '..') },
  { weight: 2, arbitrary: badText },
);

const junk: fc.Arbitrary<unknown> = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom(null, '', 0, -1, 1e308, [], {}, true, '\ud83e', '/shoot/seed', '__proto__'),
);

/** Bodies that are right, and such as come near to it: a key of a right one made wrong or added. */
const bodiesOf = (taken: fc.Arbitrary<object>): fc.Arbitrary<string | Uint8Array> =>
  fc.oneof(
    { weight: 6, arbitrary: taken.map((body) => JSON.stringify(body)) },
    {
      weight: 6,
      arbitrary: fc
        .record({ body: taken, key: fc.nat(), extra: fc.option(fc.string({ maxLength: 5 })), value: junk })
        .map(({ body, key, extra, value }) => {
          const keys = Object.keys(body);
          return JSON.stringify({ ...body, [extra ?? keys[key % Math.max(1, keys.length)] ?? 'x']: value });
        }),
    },
    { weight: 1, arbitrary: junk.map((value) => JSON.stringify(value)) },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 200 }) },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 100 }).map((bytes) => Uint8Array.of(0x50, 0x4b, 3, 4, ...bytes, 0x50, 0x4b, 5, 6, ...new Array<number>(18).fill(0))) },
    { weight: 1, arbitrary: fc.constantFrom('', '{', '{"editId":', deep(20_000, '[', ']'), deep(3000, '{"a":', '}'), `{"patch":${deep(5000, '[', ']')}}`, '{"__proto__":{"polluted":1}}') },
  ); // prettier-ignore

/** Mostly what is right, so that what follows is reached. */
const mostly = <Value>(right: Value, wrong: fc.Arbitrary<Value>) =>
  fc.oneof({ weight: 8, arbitrary: fc.constant(right) }, { weight: 1, arbitrary: wrong });

const types = mostly('application/json', fc.constantFrom('application/json; charset=utf-16', 'text/plain', 'application/zip', 'application/octet-stream', 'image/png', 'image/svg+xml', 'multipart/form-data', '', ';', 'application/json, text/html', 'x'.repeat(500))); // prettier-ignore

/** Values that a header may carry at all. */
const headerText = fc.oneof(
  fc.constantFrom('Zo%C3%AB', '%', '%E0%A4%A', '%00', '%0d%0aset-cookie:x', '..%2f..%2fx', 'a%2Fb', '', ' ', 'x'.repeat(5000), 'Zo\xeb'),
  fc.string({ maxLength: 20 }).filter((text) => /^[\x20-\x7e]*$/.test(text)),
); // prettier-ignore

const headers = fc.record({
  'longsecond-client': mostly('ada', headerText),
  'longsecond-name': mostly('Ada', headerText),
  'longsecond-file-name': mostly('a-file', headerText),
  'last-event-id': mostly('', headerText),
  'content-type': types,
});

const queries = fc.oneof(
  fc.constantFrom('', '', '', '?', '?revision=0', '?revision=-1', '?before=0', '?before=9', '?before=1&after=1', '?limit=0', '?after=9', '?as=zip', '?as=yaml', '?as=json', '?as=../x', '?editId=import-0009', '?editId=%E0%A4%A', '?client=%00', '?client=ada&after=0', '?after=0&after=1', '?__proto__=1', '?as=zip&as=json', '?%ff=%ff'),
  badText.map((text) => `?revision=${text}&after=${text}&as=${text}&client=${text}`),
); // prettier-ignore

const hosts = mostly('localhost', fc.constantFrom('localhost:4460', 'rebound.example', 'localhost.example', '127.0.0.1.example', '192.168.1.9')); // prettier-ignore
const origins = mostly<string | undefined>(undefined, fc.constantFrom('null', 'https://page.example', 'http://localhost:1', 'file://')); // prettier-ignore

describe('every route', () => {
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-'));
  let store: ShootStore;
  const log: string[] = [];
  let request: (path: string, init: RequestInit) => Promise<Response>;

  beforeAll(async () => {
    writeFileSync(join(folder, 'index.html'), '<!doctype html>');
    store = await openStore({ folder });
    store.bringIn({ editId: 'import-0001', at: '2027-03-09T07:00:00.000Z', text: SMALL_SHOOT, id: 's' });
    const app = createApp({ store, webFolder: folder, clock: steppingClock(), log: (line) => log.push(line) });
    request = async (path, init) => app.request(path, init);
  });

  afterAll(() => {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const stored = () => JSON.stringify([store.list(), store.list().map(({ id }) => store.open(id).text)]);

  async function sendAndJudge(path: string, init: RequestInit & { readonly method: string }): Promise<Response> {
    const before = stored();
    log.length = 0;
    const answer = await request(path, init);
    expect(log).toEqual([]);
    expect(answer.status).toBeLessThan(500);
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    if (answer.ok) {
      await answer.body?.cancel();
      if (init.method === 'GET') expect(stored()).toBe(before);
      return answer;
    }
    const text = await answer.text();
    const fault = JSON.parse(text) as FaultReply;
    for (const key of ['code', 'what', 'where', 'mend'] as const) expect(fault[key]).toMatch(/\S/);
    expect(fault.code).toMatch(/^[a-z-]+\.[a-z-]+$/);
    expect(fault.mend).toMatch(/^[A-Z]\S* \S/);
    // Nothing of what was sent is told back at length, and nothing of what goes on inside.
    expect(text.length).toBeLessThan(12_000);
    expect(text).not.toMatch(/\.ts:\d|node_modules/);
    expect(stored()).toBe(before);
    expect(Object.prototype).not.toHaveProperty('polluted');
    return answer;
  }

  /** An address as a client could send it, which a URL must first make sense of. */
  const addressOf = (host: string, path: string): string | undefined => {
    try {
      return new URL(path, `http://${host}`).href;
    } catch {
      return undefined;
    }
  };

  /** Something to take back, to make again and to restore. */
  const prepare = (route: string) => {
    const at = '2027-03-09T07:00:00.000Z';
    const id = (count: number) => `${route.slice(-4)}-before-${count}`.replace(/[^A-Za-z0-9-]/g, 'x');
    for (let count = 0; count < 14; count += 1) {
      const { revision: now } = store.open('s');
      const patch = [{ op: 'add', path: '/shoot/note', value: `${route} ${count}` }] as const;
      store.edit('s', { editId: id(count), who: 'ada', at, revision: now, patch, summary: 'Before' });
    }
    for (let count = 14; count < 20; count += 1) store.undo('s', { editId: id(count), who: 'ada', at });
  };

  let sentCount = 0;
  const current = (body: string | Uint8Array) => {
    if (typeof body !== 'string') return Uint8Array.from(body);
    sentCount += 1;
    return body.replaceAll(NEW, `sent-once-${sentCount}`).replaceAll(`"${NOW}"`, String(store.open('s').revision));
  };

  test.each(ROUTES)('%s %s: nothing that is sent is a failure of ours, and what is refused changes nothing', async (method, route, taken) => {
    prepare(route);
    let takenCount = 0;
    await fc.assert(
      fc.asyncProperty(shootIds, queries, bodiesOf(taken), headers, hosts, origins, async (id, query, body, sent, host, origin) => {
        const address = addressOf(host, route.replace(':id', id) + query);
        if (address === undefined) return;
        const init = {
          method,
          headers: { ...sent, host, ...(origin === undefined ? {} : { origin }) },
          ...(method === 'GET' ? {} : { body: current(body) }),
        };
        const answer = await sendAndJudge(address, init);
        const isOurs = /^localhost(:4460)?$/.test(host);
        if (!isOurs || (method === 'POST' && origin !== undefined)) expect(answer.status).toBe(403);
        if (answer.ok && address.includes('/api/shoots')) takenCount += 1;
      }),
      { numRuns: 100 },
    );
    // Something gets through, or all this would have been refused at the door; there is no file to be had.
    if (!route.endsWith(SHA)) expect(takenCount).toBeGreaterThan(2);
  }, 120_000); // prettier-ignore

  test.each(ROUTES.filter(([method]) => method === 'POST'))('%s %s: a body beyond every limit is refused unread', async (method, route) => {
    const headers = { 'content-type': 'application/json', 'content-length': '300000000', 'longsecond-file-name': 'x' };
    const answer = await sendAndJudge(route.replace(':id', 's'), { method, headers, body: '{}' });
    expect(answer.status).toBe(413);
  }); // prettier-ignore

  test.each(['PUT', 'PATCH', 'DELETE', 'OPTIONS', 'PURGE'])('%s is refused at every address', async (method) => {
    for (const [, route] of ROUTES) {
      const answer = await sendAndJudge(route.replace(':id', 's'), { method });
      expect(answer.status).toBe(404);
    }
  });
});
