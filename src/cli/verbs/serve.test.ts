import { spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { bundle, type Bundled } from '../../../test/bundled.ts';
import { captureCommand } from '../../../test/captureCommand.ts';
import { SMALL_SHOOT, tempFolder, tempStore } from '../../../test/tempStore.ts';
import type { FolderListing, FootageState } from '../../record/footage.ts';
import { setUpServe } from './serve.ts';

const VERBS = [{ name: 'serve', says: 'serve', load: () => Promise.resolve(setUpServe) }];

describe('refusals', () => {
  test.each(['x', '-1', '65536', '4460.5', ''])('a port of %j is bad input', async (port) => {
    const { code, err } = await captureCommand(['serve', `--port=${port}`, '--data', tempFolder()], VERBS);
    expect(code).toBe(2);
    expect(err).toContain('65535');
  });

  test('a port that another program has is bad input, and lets go of the shoots', async () => {
    const other = createServer();
    await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready));
    onTestFinished(() => void other.close());
    const { port } = other.address() as AddressInfo;
    const folder = tempFolder();
    const { code, err } = await captureCommand(['serve', '--port', String(port), '--data', folder], VERBS);
    expect(code).toBe(2);
    expect(err).toContain(`port ${port}`);
    expect((await tempStore(folder)).list().map(({ id }) => id)).toEqual(['demo']);
  });

  test('shoots that another process has are bad input, and it is named', async () => {
    const folder = tempFolder();
    await tempStore(folder);
    const { code, err } = await captureCommand(['serve', '--data', folder], VERBS);
    expect(code).toBe(2);
    expect(err).toContain(`process ${process.pid}`);
  });

  test('a folder that cannot be written is bad input', async () => {
    const file = join(tempFolder(), 'file');
    writeFileSync(file, '');
    const { code, err } = await captureCommand(['serve', '--data', file], VERBS);
    expect(code).toBe(2);
    expect(err).toContain('--data');
  });

  test('a shoot that is no shoot is bad input', async () => {
    const file = join(tempFolder(), 'bad.yaml');
    writeFileSync(file, 'a: [');
    expect((await captureCommand(['serve', '--data', tempFolder(), '--shoot', file], VERBS)).code).toBe(2);
  });
});

describe('the command as a process', () => {
  let command: Bundled;
  beforeAll(async () => {
    command = await bundle('src/cli/main.ts');
  }, 60_000);
  afterAll(() => command.remove());

  function start(args: readonly string[]) {
    const child = spawn(process.execPath, [command.file, 'serve', ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    onTestFinished(() => void child.kill('SIGKILL'));
    const heard = { out: '', err: '' };
    child.stderr.on('data', (bytes: Buffer) => (heard.err += bytes.toString()));
    const ended = new Promise<number | null>((resolve) => child.once('close', (code) => resolve(code)));
    const address = new Promise<string>((resolve, reject) => {
      child.stdout.on('data', (bytes: Buffer) => {
        heard.out += bytes.toString();
        const [found] = /http:\/\/localhost:\d+\//.exec(heard.out) ?? [];
        if (found && heard.out.includes('Ctrl-C')) resolve(found.replace('localhost', '127.0.0.1'));
      });
      void ended.then((code) => reject(new Error(`it ended with ${code}: ${heard.err}`)));
    });
    return { child, heard, ended, address };
  }

  test.runIf(process.platform !== 'win32').each(['SIGINT', 'SIGTERM'] as const)(
    'serves until %s, then ends live events, closes the store and exits with 0',
    async (signal) => {
      const folder = tempFolder();
      const file = join(tempFolder(), 'milk.yaml');
      writeFileSync(file, SMALL_SHOOT);
      const { child, heard, ended, address } = start(['--port', '0', '--data', folder, '--shoot', file]);
      const base = await address;
      expect(heard.out).toContain(folder);
      expect(await (await fetch(`${base}api/shoots/milk/text`)).text()).toBe(SMALL_SHOOT);
      const events = await fetch(`${base}api/shoots/milk/events`);
      const told = events.text();
      child.kill(signal);
      expect(await ended).toBe(0);
      expect(await told).toBe('retry: 1000\n\nevent: presence\ndata: {"present":[]}\n\n');
      expect(heard.err).toBe('');
      expect((await tempStore(folder)).open('milk').text).toBe(SMALL_SHOOT);
    },
    30_000,
  );

  test('folders named with --footage are told and open, those that are not there are told and no hindrance', async () => {
    const [data, takes] = [tempFolder(), join(tempFolder(), "day's takes")];
    mkdirSync(takes);
    writeFileSync(join(takes, 'a.mov'), 'footage');
    const gone = join(data, 'gone');
    const { child, heard, ended, address } = start(['--port', '0', '--data', data, '--footage', takes, gone, '--footage', takes]); // prettier-ignore
    const base = `${await address}api/shoots/demo/footage`;
    expect(heard.out).toContain(`footage in   ${takes}\n`);
    expect(heard.out).toMatch(new RegExp(`footage in +${gone}, which is no folder`));
    const { folders } = (await (await fetch(base)).json()) as FootageState;
    expect(folders).toEqual([{ name: "day's takes", isThere: true }, { name: 'gone', isThere: false }]); // prettier-ignore
    const listing = await fetch(`${base}/folder?${new URLSearchParams({ folder: "day's takes", path: '' })}`);
    expect(((await listing.json()) as FolderListing).entries.map(({ name }) => name)).toEqual(['a.mov']);
    expect((await fetch(`${base}/folder?${new URLSearchParams({ folder: 'gone', path: '' })}`)).status).toBe(404);
    // The demo's own folder is open only where none is named.
    expect((await fetch(`${base}/folder?folder=footage`)).status).toBe(404);
    child.kill('SIGTERM');
    expect([await ended, heard.err]).toEqual([0, '']);
  }, 30_000);

  test('the first start brings the demo in, and the second finds it there', async () => {
    const folder = tempFolder();
    for (const notes of [/demo was brought in/, /^(?!.*demo was brought in)/s]) {
      const { child, heard, ended, address } = start(['--port', '0', '--data', folder]);
      const reply = (await (await fetch(`${await address}api/shoots`)).json()) as { shoots: { id: string }[] };
      expect(reply.shoots.map(({ id }) => id)).toEqual(['demo']);
      expect(heard.out).toMatch(notes);
      child.kill('SIGTERM');
      await ended;
    }
  }, 30_000);
});
