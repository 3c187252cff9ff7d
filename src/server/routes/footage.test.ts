import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { tempDesk } from '../../../test/footage/tempDesk.ts';
import { faultIn, tempServer } from '../../../test/tempServer.ts';
import { SMALL_SHOOT, tempFolder } from '../../../test/tempStore.ts';
import { createFootageClient } from '../../api/footageClient.ts';
import { footageFolderPath, footageLivePath, footagePath, measureClipPath, measuredClipPath, proxyPath, stillPath, stopClipPath } from '../../api/footageRoutes.ts'; // prettier-ignore
import type { MeasureInput } from '../../jobs/types.ts';
import type { FolderListing, FootageEvent, FootageState } from '../../record/footage.ts';
import { STATUS } from '../faults.ts';

const CLIP = 'clip-00001';
const ADDED: FootageEvent = { kind: 'added', clipId: CLIP, folder: 'day', path: 'a.mov' };

async function server() {
  const closing = new AbortController();
  const temp = await tempDesk({ text: SMALL_SHOOT });
  const { request, log } = await tempServer({ store: temp.store, footage: temp.desk, closing: closing.signal });
  const post = (path: string, body: unknown, headers: Readonly<Record<string, string>> = {}) =>
    request(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'longsecond-client': 'ada', ...headers },
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });
  const happen = (event: unknown, eventId = 'event-0001') => post(footagePath('s'), { eventId, event });
  return { ...temp, request, log, post, happen, closing };
}

const stateIn = async (answer: Response) => {
  expect(answer.status).toBe(200);
  return (await answer.json()) as FootageState;
};

/** With one clip, and a small copy of it of these bytes. */
async function withCopy(bytes = Buffer.from('0123456789')) {
  const temp = await server();
  await temp.happen(ADDED);
  const file = join(tempFolder(), 'copy.mp4');
  writeFileSync(file, bytes);
  const { path } = JSON.parse(temp.queue.asked.at(-1)!.input) as MeasureInput;
  temp.copies.set(path, file);
  return { ...temp, file };
}

describe('what happened', () => {
  test('is sent, kept with who did it and when, and answered with all there is', async () => {
    const { happen, request, store } = await server();
    const state = await stateIn(await happen(ADDED));
    expect(state.clips).toMatchObject([{ id: CLIP, name: 'a.mov', isHere: true, measuring: { state: 'waiting' } }]);
    expect(await stateIn(await request(footagePath('s')))).toEqual(state);
    const [first] = store.footage.happenings('s');
    expect([first?.number, first?.who, first?.at.slice(0, 17)]).toEqual([1, 'ada', '2027-03-09T07:30:']);
  });

  test('sent twice, it happens once', async () => {
    const { happen, store } = await server();
    const [first, second] = [await happen(ADDED), await happen(ADDED)];
    expect(await second.json()).toEqual(await first.json());
    expect(store.footage.happenings('s')).toHaveLength(1);
  });

  test('a clip is told of, marked with the part to keep, and set aside', async () => {
    const { happen } = await server();
    await happen(ADDED);
    const events: FootageEvent[] = [
      { kind: 'told', clipId: CLIP, shotId: 'splash', captureRate_fps: 1000, curve: 'gamma:2.4', blackCode: 64, note: ' the good one ' }, // prettier-ignore
      { kind: 'kept', clipId: CLIP, kept: { inFrame: 3, outFrame: 90 } },
      { kind: 'aside', clipId: CLIP, isAside: true },
    ];
    let answer: Response | undefined;
    for (const [i, event] of events.entries()) answer = await happen(event, `event-100${i}`);
    expect((await stateIn(answer!)).clips[0]).toMatchObject({ shotId: 'splash', captureRate_fps: 1000, curve: 'gamma:2.4', blackCode: 64, note: 'the good one', kept: { inFrame: 3, outFrame: 90 }, isAside: true }); // prettier-ignore
  });

  test('the client of the routes is answered by them', async () => {
    const { desk, store, folder } = await server();
    const { request } = await tempServer({ store, footage: desk });
    const client = createFootageClient({
      client: 'ada',
      send: async ({ method, path, headers, body }) => {
        const answer = await request(path, { method, headers: { ...headers }, ...(body !== undefined && { body }) });
        return { status: answer.status, text: await answer.text() };
      },
    });
    mkdirSync(join(folder, 'a & b?'));
    expect((await client.folder('s', { folder: 'day', path: 'a & b?' })).entries).toEqual([]);
    await client.happen('s', { eventId: 'event-0001', event: ADDED });
    expect((await client.measure('s', CLIP, { isAnew: true })).clips[0]?.measuring?.state).toBe('waiting');
    expect((await client.stop('s', CLIP)).clips[0]?.measuring?.state).toBe('stopped');
    expect((await client.makeProxy('s', CLIP)).clips[0]?.proxy.state).toBe('waiting');
    await expect(client.measured('s', CLIP)).rejects.toMatchObject({ code: 'footage.not-measured' });
    expect((await client.look('s')).clips).toHaveLength(1);
  });
});

describe('work on a clip', () => {
  test('is asked for, stopped, asked for anew, and its measurement comes as it is kept', async () => {
    const { happen, post, request, queue } = await server();
    await happen(ADDED);
    expect((await stateIn(await post(stopClipPath('s', CLIP), {}))).clips[0]?.measuring?.state).toBe('stopped');
    await post(measureClipPath('s', CLIP), {});
    await post(measureClipPath('s', CLIP), { isAnew: true });
    expect(queue.asked.map(({ isAnew }) => isAnew)).toEqual([false, false, true]);
    queue.measure(CLIP);
    const answer = await request(measuredClipPath('s', CLIP));
    expect(answer.headers.get('content-type')).toBe('application/json');
    expect(await answer.text()).toMatch(/^\{"form":1,/);
  });
});

describe('a folder', () => {
  test('is listed, and places below it', async () => {
    const { request } = await server();
    const look = async (path: string) =>
      (await (await request(footageFolderPath('s', 'day', path))).json()) as FolderListing;
    expect((await look('')).entries.map(({ name, kind }) => [name, kind])).toEqual([['takes', 'folder'], ['a.mov', 'movie'], ['b.mov', 'movie']]); // prettier-ignore
    expect((await look('takes')).entries).toMatchObject([{ name: 'c.mov', kind: 'movie', size_B: 11 }]);
  });
});

describe('a still', () => {
  test('is a JPEG that nothing runs in, and is asked for again only where its clip changed', async () => {
    const { happen, request, folder, stillsAsked } = await server();
    await happen(ADDED);
    const answer = await request(stillPath('s', CLIP, 7, 640));
    expect(answer.status).toBe(200);
    expect([...new Uint8Array(await answer.arrayBuffer())]).toEqual([0xff, 0xd8, 7, 0xff, 0xd9]);
    expect(stillsAsked).toMatchObject([{ frame: 7, width: 640, file: { size_B: 5 } }]);
    expect(Object.fromEntries(['content-type', 'cache-control', 'content-security-policy', 'x-content-type-options', 'content-length'].map((name) => [name, answer.headers.get(name)]))).toEqual({
      'content-type': 'image/jpeg',
      'cache-control': 'private, no-cache',
      'content-security-policy': "default-src 'none'; sandbox",
      'x-content-type-options': 'nosniff',
      'content-length': '5',
    }); // prettier-ignore
    const again = () => request(stillPath('s', CLIP, 7, 640), { headers: { 'if-none-match': answer.headers.get('etag')! } }); // prettier-ignore
    expect([(await again()).status, stillsAsked.length]).toEqual([304, 1]);
    writeFileSync(join(folder, 'a.mov'), 'written to since');
    expect([(await again()).status, stillsAsked.length]).toEqual([200, 2]);
  });
});

describe('the small copy', () => {
  test('comes whole where no part is asked for', async () => {
    const { request } = await withCopy();
    const answer = await request(proxyPath('s', CLIP));
    expect([answer.status, await answer.text()]).toEqual([200, '0123456789']);
    expect(answer.headers.get('content-type')).toBe('video/mp4');
    expect(answer.headers.get('accept-ranges')).toBe('bytes');
    expect(answer.headers.get('content-length')).toBe('10');
  });

  test.each([
    ['bytes=0-3', '0123', 'bytes 0-3/10'],
    ['bytes=4-', '456789', 'bytes 4-9/10'],
    ['bytes=0-', '0123456789', 'bytes 0-9/10'],
    ['bytes=-3', '789', 'bytes 7-9/10'],
    ['bytes=-30', '0123456789', 'bytes 0-9/10'],
    ['bytes=9-9', '9', 'bytes 9-9/10'],
    ['bytes=8-400', '89', 'bytes 8-9/10'],
    [' bytes=1-1 ', '1', 'bytes 1-1/10'],
  ])('of the range %j it comes in part', async (range, text, told) => {
    const { request } = await withCopy();
    const answer = await request(proxyPath('s', CLIP), { headers: { range } });
    expect([answer.status, await answer.text(), answer.headers.get('content-range')]).toEqual([206, text, told]);
    expect(answer.headers.get('content-length')).toBe(String(text.length));
  });

  test.each(['bytes=0-1,4-5', 'bytes=-', 'bytes=5-2', 'bytes=a-b', 'items=0-3', 'bytes 0-3', 'bytes=0x1-3', 'bytes=-1-3', ''])(
    'of the range %j, which asks for no one part, it comes whole',
    async (range) => {
      const { request } = await withCopy();
      const answer = await request(proxyPath('s', CLIP), { headers: { range } });
      expect([answer.status, await answer.text()]).toEqual([200, '0123456789']);
      expect(answer.headers.get('content-range')).toBeNull();
    },
  ); // prettier-ignore

  test.each(['bytes=10-', 'bytes=10-20', 'bytes=999999999999999-', 'bytes=-0'])('of the range %j there is nothing', async (range) => {
    const { request } = await withCopy();
    const answer = await request(proxyPath('s', CLIP), { headers: { range } });
    expect(answer.headers.get('content-range')).toBe('bytes */10');
    expect(await faultIn(answer)).toMatchObject({ status: 416, code: 'footage.range-beyond' });
  }); // prettier-ignore

  test('a part of what was made anew since is not taken for a part of what it was', async () => {
    const { request, file } = await withCopy();
    const etag = (await request(proxyPath('s', CLIP))).headers.get('etag')!;
    const part = () => request(proxyPath('s', CLIP), { headers: { range: 'bytes=0-3', 'if-range': etag } });
    expect(await (await part()).text()).toBe('0123');
    expect((await request(proxyPath('s', CLIP), { headers: { 'if-none-match': etag } })).status).toBe(304);
    writeFileSync(file, 'another, and longer');
    expect(await (await part()).text()).toBe('another, and longer');
  });

  test('to HEAD it says how long it is, and gives nothing', async () => {
    const { request } = await withCopy();
    const answer = await request(proxyPath('s', CLIP), { method: 'HEAD' });
    expect([answer.status, answer.headers.get('content-length'), await answer.text()]).toEqual([200, '10', '']);
    const part = await request(proxyPath('s', CLIP), { method: 'HEAD', headers: { range: 'bytes=2-' } });
    expect([part.status, part.headers.get('content-length'), part.headers.get('content-range')]).toEqual([206, '8', 'bytes 2-9/10']); // prettier-ignore
  });

  test('is asked for, and is not there until it is made', async () => {
    const { happen, request, post, queue } = await server();
    await happen(ADDED);
    expect(await faultIn(await request(proxyPath('s', CLIP)))).toMatchObject({ status: 404, code: 'footage.no-copy' });
    expect((await stateIn(await post(proxyPath('s', CLIP), {}))).clips[0]?.proxy.state).toBe('waiting');
    expect(queue.asked.at(-1)?.kind).toBe('proxy');
  });

  test('that was cleared away just now is not there', async () => {
    const { request, copies } = await withCopy();
    for (const path of copies.keys()) copies.set(path, '/gone/copy.mp4');
    const fault = await faultIn(await request(proxyPath('s', CLIP)));
    expect(fault).toMatchObject({ status: 404, code: 'footage.no-copy' });
    expect(fault.where).not.toContain('/gone');
  });
});

describe('live', () => {
  /** Reads event after event; the first block says how to reconnect. */
  async function listening() {
    const temp = await server();
    await temp.happen(ADDED);
    const answer = await temp.request(footageLivePath('s'));
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    const reader = answer.body!.pipeThrough(new TextDecoderStream()).getReader();
    let rest = '';
    const block = async (): Promise<string | undefined> => {
      for (;;) {
        const end = rest.indexOf('\n\n');
        if (end !== -1) {
          const found = rest.slice(0, end);
          rest = rest.slice(end + 2);
          return found;
        }
        const { done, value } = await reader.read();
        if (done) return undefined;
        rest += value;
      }
    };
    const state = async () => {
      const [event, data] = (await block())!.split('\n');
      expect(event).toBe('event: footage');
      return JSON.parse(data!.replace('data: ', '')) as FootageState;
    };
    expect(await block()).toBe('retry: 1000');
    return { ...temp, block, state, stop: () => reader.cancel() };
  }

  test('begins with all there is, and tells it whole after every change', async () => {
    const { state, queue, happen, stop } = await listening();
    expect((await state()).clips).toMatchObject([{ id: CLIP, measuring: { state: 'waiting', done: 0 } }]);
    queue.set(CLIP, { state: 'running', done: 40 });
    expect((await state()).clips[0]?.measuring).toMatchObject({ state: 'running', done: 40 });
    await happen({ ...ADDED, clipId: 'clip-00002', path: 'takes/c.mov' }, 'event-0002');
    expect((await state()).clips.map(({ id }) => id)).toEqual([CLIP, 'clip-00002']);
    await stop();
  });

  test('a slow reader is told what is so, not all that was so in between', async () => {
    const { state, queue, stop } = await listening();
    await state();
    for (let done = 1; done <= 50; done += 1) queue.set(CLIP, { state: 'running', done });
    await new Promise((later) => setTimeout(later, 300));
    expect((await state()).clips[0]?.measuring?.done).toBe(50);
    await stop();
  });

  test('ends when the server closes', async () => {
    const { block, state, closing } = await listening();
    await state();
    const last = block();
    closing.abort();
    expect(await last).toBeUndefined();
  });

  test('once a reader has left, nobody listens for it any more', async () => {
    const temp = await tempDesk({ text: SMALL_SHOOT });
    const watching = new Set<unknown>();
    const counted = {
      ...temp.desk,
      watch: (changed: (shootId: string) => void) => {
        watching.add(changed);
        const stop = temp.desk.watch(changed);
        return () => {
          watching.delete(changed);
          stop();
        };
      },
    };
    const { request } = await tempServer({ store: temp.store, footage: counted });
    const answer = await request(footageLivePath('s'));
    const reader = answer.body!.getReader();
    await reader.read();
    await reader.read();
    expect(watching.size).toBe(1);
    await reader.cancel();
    expect(watching.size).toBe(0);
    // Asked for its head alone, a stream that nobody reads is never begun.
    await request(footageLivePath('s'), { method: 'HEAD' });
    expect(watching.size).toBe(0);
  });
});

describe('refusals', () => {
  const event = (of: unknown) => ({
    method: 'POST',
    path: footagePath('s'),
    body: { eventId: 'event-0009', event: of },
  });
  const refusals = {
    'the footage of an unknown shoot': { path: footagePath('gone'), status: 404, code: 'shoot.unknown' },
    'the folders of an unknown shoot': { path: footageFolderPath('gone', 'day', ''), status: 404, code: 'shoot.unknown' },
    'live events of an unknown shoot': { path: footageLivePath('gone'), status: 404, code: 'shoot.unknown' },
    'a happening in an unknown shoot': { ...event(ADDED), path: footagePath('gone'), status: 404, code: 'shoot.unknown' },
    'a shoot id that is none': { path: footagePath('..'), status: 404, code: 'route.unknown' },
    'a happening of no kind': { ...event({ kind: 'removed', clipId: CLIP }), status: 400, code: 'input.malformed' },
    'a happening with a key too many': { ...event({ ...ADDED, who: 'somebody else' }), status: 400, code: 'input.malformed' },
    'a happening without an id': { method: 'POST', path: footagePath('s'), body: { event: ADDED }, status: 400, code: 'input.malformed' },
    'a clip id that is none': { ...event({ ...ADDED, clipId: '../../etc' }), status: 400, code: 'input.malformed' },
    'a path of nothing': { ...event({ ...ADDED, path: '' }), status: 400, code: 'input.malformed' },
    'a path with a nought': { ...event({ ...ADDED, clipId: 'clip-00002', path: 'b.mov\0' }), status: 403, code: 'footage.path-refused' },
    'a path that leads out': { ...event({ ...ADDED, clipId: 'clip-00002', path: '../secret.mov' }), status: 403, code: 'footage.path-refused' },
    'a rate of nothing': { ...event({ kind: 'told', clipId: CLIP, captureRate_fps: 0 }), status: 400, code: 'input.malformed' },
    'a rate that is no number': { ...event({ kind: 'told', clipId: CLIP, captureRate_fps: '1000' }), status: 400, code: 'input.malformed' },
    'a curve that is none': { ...event({ kind: 'told', clipId: CLIP, curve: 'film' }), status: 422, code: 'measure.bad-curve' },
    'a part that ends before it begins': { ...event({ kind: 'kept', clipId: CLIP, kept: { inFrame: 9, outFrame: 3 } }), status: 400, code: 'input.malformed' },
    'something that happens to an unknown clip': { ...event({ kind: 'aside', clipId: 'clip-00009', isAside: true }), status: 404, code: 'footage.clip-unknown' },
    'a clip that is here already': { ...event({ ...ADDED, clipId: 'clip-00002' }), status: 409, code: 'footage.clip-here' },
    'an event id that was used': { method: 'POST', path: footagePath('s'), body: { eventId: 'event-0001', event: { kind: 'aside', clipId: CLIP, isAside: true } }, status: 409, code: 'footage.id-reused' },
    'what is not JSON': { method: 'POST', path: footagePath('s'), body: '{"eventId":', status: 400, code: 'input.not-json' },
    'a form': { method: 'POST', path: footagePath('s'), body: 'a=1', headers: { 'content-type': 'application/x-www-form-urlencoded' }, status: 415, code: 'input.wrong-type' },
    'a write from another page': { ...event(ADDED), headers: { origin: 'https://page.example' }, status: 403, code: 'origin.refused' },
    'a foreign host': { path: footagePath('s'), headers: { host: 'rebound.example' }, status: 403, code: 'host.refused' },
    'a folder that is not open': { path: footageFolderPath('s', 'night', ''), status: 404, code: 'footage.folder-unknown' },
    'a way up': { path: footageFolderPath('s', 'day', '..'), status: 403, code: 'footage.path-refused' },
    'a way out of the folder by an absolute path': { path: footageFolderPath('s', 'day', '/etc'), status: 403, code: 'footage.path-refused' },
    'a folder that is a file': { path: footageFolderPath('s', 'day', 'a.mov'), status: 422, code: 'footage.not-a-folder' },
    'a folder that is not there': { path: footageFolderPath('s', 'day', 'gone'), status: 404, code: 'footage.path-unknown' },
    'a listing of no folder': { path: `${footagePath('s')}/folder`, status: 400, code: 'input.malformed' },
    'a listing of two things': { path: `${footageFolderPath('s', 'day', '')}&shot=x`, status: 400, code: 'input.malformed' },
    'measuring an unknown clip': { method: 'POST', path: measureClipPath('s', 'clip-00009'), body: {}, status: 404, code: 'footage.clip-unknown' },
    'measuring in a way that there is none of': { method: 'POST', path: measureClipPath('s', CLIP), body: { isAnew: 'yes' }, status: 400, code: 'input.malformed' },
    'stopping an unknown clip': { method: 'POST', path: stopClipPath('s', 'clip-00009'), body: {}, status: 404, code: 'footage.clip-unknown' },
    'what was measured of nothing': { path: measuredClipPath('s', CLIP), status: 404, code: 'footage.not-measured' },
    'a still of an unknown clip': { path: stillPath('s', 'clip-00009', 0, 320), status: 404, code: 'footage.clip-unknown' },
    'a still of no clip id': { path: stillPath('s', 'a', 0, 320), status: 400, code: 'input.malformed' },
    'a still before the first': { path: stillPath('s', CLIP, -1, 320), status: 400, code: 'input.malformed' },
    'a still between two frames': { path: stillPath('s', CLIP, 0.5, 320), status: 400, code: 'input.malformed' },
    'a still of no width': { path: stillPath('s', CLIP, 0, 1), status: 400, code: 'input.malformed' },
    'a still wider than any screen': { path: stillPath('s', CLIP, 0, 1e6), status: 400, code: 'input.malformed' },
    'a copy of an unknown clip': { path: proxyPath('s', 'clip-00009'), status: 404, code: 'footage.clip-unknown' },
  }; // prettier-ignore

  test.each(Object.entries(refusals))('%s is refused with status, code and how to mend it', async (_, refusal) => {
    const { request, happen, store, log } = await server();
    await happen(ADDED);
    const { path, status, code, method = 'GET', body, headers = {} } = refusal as { path: string; status: number; code: string; method?: string; body?: unknown; headers?: Record<string, string> }; // prettier-ignore
    const answer = await request(path, {
      method,
      headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const fault = await faultIn(answer);
    expect({ status: fault.status, code: fault.code }).toEqual({ status, code });
    expect(fault.mend).toMatch(/^[A-Z]\S* .+/);
    expect(fault.what).not.toBe('');
    expect(store.footage.happenings('s')).toHaveLength(1);
    expect(log).toEqual([]);
  });

  test('every fault of footage that may be thrown has a status of its own', () => {
    const codes = ['jobs', 'store', 'server', 'server/routes'].flatMap((folder) => {
      const path = fileURLToPath(new URL(`../../${folder}/`, import.meta.url));
      const files = readdirSync(path).filter((name) => /(?<!\.test)\.ts$/.test(name));
      const texts = files.map((name) => readFileSync(join(path, name), 'utf8'));
      return texts.flatMap((text) => [...text.matchAll(/'(footage\.[a-z-]+)'/g)].map(([, code]) => code!));
    });
    expect(codes.length).toBeGreaterThan(20);
    for (const code of codes) expect(Object.keys(STATUS)).toContain(code);
  });

  test('where no footage is served, nothing answers', async () => {
    const { request } = await tempServer();
    expect(await faultIn(await request(footagePath('s')))).toMatchObject({ status: 404, code: 'route.unknown' });
  });
});
