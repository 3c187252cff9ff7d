import { request } from 'node:http';
import { createServer, type AddressInfo, type Server } from 'node:net';
import { connect } from 'node:net';
import { describe, expect, onTestFinished, test } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from '../../test/tempStore.ts';
import { LARGEST_BODY_B } from './body.ts';
import { serve } from './serve.ts';

async function parts() {
  const store = await tempStore();
  store.bringIn({ editId: 'import-0001', at: '2027-03-09T07:30:00.000Z', text: SMALL_SHOOT, id: 's' });
  return { store, webFolder: tempFolder(), clock: steppingClock(), log: () => undefined };
}

async function listening() {
  const server = await serve({ ...(await parts()), port: 0 });
  onTestFinished(() => server.close());
  return server;
}

async function occupied(): Promise<{ readonly port: number; readonly other: Server }> {
  const other = createServer();
  await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready));
  onTestFinished(() => void other.close());
  return { port: (other.address() as AddressInfo).port, other };
}

/** What comes back for bytes sent as they are, which `fetch` would put right first. */
function raw(port: number, text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    let answer = '';
    socket.on('data', (bytes) => (answer += bytes.toString()));
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
  });
}

describe('listening', () => {
  test('answers on this machine', async () => {
    const { port } = await listening();
    const answer = await fetch(`http://127.0.0.1:${port}/api/shoots`);
    expect(answer.status).toBe(200);
    expect(await answer.json()).toMatchObject({ shoots: [{ id: 's' }] });
  });

  test('a taken port is refused, naming it', async () => {
    const { port } = await occupied();
    await expect(serve({ ...(await parts()), port })).rejects.toMatchObject({
      code: 'port.taken',
      where: `port ${port}`,
    });
  });

  test('where it may move, the next free port is taken', async () => {
    const { port } = await occupied();
    const server = await serve({ ...(await parts()), port, mayMove: true });
    onTestFinished(() => server.close());
    expect(server.port).toBeGreaterThan(port);
    expect((await fetch(`http://127.0.0.1:${server.port}/api/shoots`)).status).toBe(200);
  });

  test.each([
    ['another host', 'GET /api/shoots HTTP/1.1\r\nHost: rebound.example\r\nConnection: close\r\n\r\n', 403],
    ['an absolute address of another host', 'GET http://rebound.example/api/shoots HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n', 403],
    ['no host', 'GET /api/shoots HTTP/1.1\r\nConnection: close\r\n\r\n', 400],
    ['two hosts', 'GET /api/shoots HTTP/1.1\r\nHost: localhost\r\nHost: rebound.example\r\nConnection: close\r\n\r\n', 403],
    ['a way out of the folder', 'GET /../../../../etc/passwd.txt HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n', 404],
    ['a write from another page', 'POST /api/shoots/s/undo HTTP/1.1\r\nHost: localhost\r\nOrigin: http://page.example\r\nContent-Type: application/json\r\nContent-Length: 2\r\nConnection: close\r\n\r\n{}', 403],
  ])('%s, as bytes on the wire, is refused', async (_, text, status) => {
    const { port } = await listening();
    expect(await raw(port, text)).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
  }); // prettier-ignore

  test('a body that does not end is cut off once it is too large', async () => {
    const { port } = await listening();
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const sending = request(
        {
          port,
          host: '127.0.0.1',
          path: '/api/shoots',
          method: 'POST',
          headers: { 'content-type': 'application/json' },
        },
        (answer) => {
          resolve(answer.statusCode);
          sending.destroy();
        },
      );
      sending.on('error', reject);
      for (let sent_B = 0; sent_B <= LARGEST_BODY_B; sent_B += 65_536) sending.write(Buffer.alloc(65_536, ' '));
    });
    expect(status).toBe(413);
  });
});

describe('closing', () => {
  test('ends live events, and then nothing listens', async () => {
    const server = await serve({ ...(await parts()), port: 0 });
    const address = `http://127.0.0.1:${server.port}/api/shoots/s/events`;
    const answer = await fetch(address);
    const text = answer.text();
    await server.close();
    expect(await text).toBe('retry: 1000\n\nevent: presence\ndata: {"present":[]}\n\n');
    await expect(fetch(address)).rejects.toThrow();
  });

  test('does not wait for a connection that says nothing', async () => {
    const server = await serve({ ...(await parts()), port: 0 });
    const socket = connect(server.port, '127.0.0.1');
    const ended = new Promise((resolve) => socket.once('close', resolve));
    await new Promise((resolve) => socket.once('connect', resolve));
    socket.resume();
    await server.close();
    await ended;
  });
});
