import { describe, expect, test } from 'vitest';
import type { FromWorker, Progress, ToWorker } from '../../base/worker.ts';
import { connectWorker, isDropped, type ConnectOptions, type Port } from './connect.ts';

interface Work {
  readonly double: { readonly input: number; readonly output: number };
}

class FakePort implements Port {
  readonly sent: ToWorker[] = [];
  isEnded = false;
  onmessage: Port['onmessage'] = null;
  onerror: Port['onerror'] = null;
  postMessage(message: ToWorker) {
    this.sent.push(message);
  }
  terminate() {
    this.isEnded = true;
  }
  say(data: FromWorker) {
    this.onmessage?.({ data });
  }
}

function bench(options?: ConnectOptions) {
  const ports: FakePort[] = [];
  const caller = connectWorker<Work>(() => {
    const port = new FakePort();
    ports.push(port);
    return port;
  }, options);
  return { ports, caller };
}

const codeOf = (answer: Promise<unknown>) =>
  answer.then(
    () => 'ok',
    (fault: { code: string }) => fault.code,
  );

test('no worker is started before the first call, and one serves them all', async () => {
  const { ports, caller } = bench();
  expect(ports).toHaveLength(0);
  const a = caller.call('double', 2);
  const b = caller.call('double', 3);
  expect(ports).toHaveLength(1);
  ports[0]!.say({ id: 2, ok: 6 });
  ports[0]!.say({ id: 1, ok: 4 });
  expect(await a.answer).toBe(4);
  expect(await b.answer).toBe(6);
});

test('progress reaches whoever asked, and nobody once the call was cancelled', async () => {
  const { ports, caller } = bench();
  const seen: Progress[] = [];
  const { answer, cancel } = caller.call('double', 2, (progress) => seen.push(progress));
  ports[0]!.say({ id: 1, progress: { done: 1, total: 9, unit: 'plans' } });
  cancel();
  ports[0]!.say({ id: 1, progress: { done: 2, total: 9, unit: 'plans' } });
  expect(seen).toEqual([{ done: 1, total: 9, unit: 'plans' }]);
  expect(ports[0]!.sent).toEqual([
    { id: 1, call: 'double', input: 2 },
    { id: 1, cancel: true },
  ]);
  expect(await codeOf(answer)).toBe('worker.cancelled');
});

test('a superseded call is told apart from one that failed', async () => {
  const { ports, caller } = bench();
  const fault = { what: 'x', where: 'double', mend: 'y' };
  const old = caller.call('double', 1);
  const bad = caller.call('double', 2);
  ports[0]!.say({ id: 1, fault: { code: 'worker.superseded', ...fault } });
  ports[0]!.say({ id: 2, fault: { code: 'worker.failed', ...fault } });
  expect(await old.answer.catch(isDropped)).toBe(true);
  expect(await bad.answer.catch(isDropped)).toBe(false);
});

test('when the worker breaks, every open call fails and the next one starts a new worker', async () => {
  const { ports, caller } = bench();
  const lost = caller.call('double', 1);
  ports[0]!.onerror?.({ message: 'out of memory' });
  expect(await codeOf(lost.answer)).toBe('worker.failed');
  const found = caller.call('double', 5);
  expect(ports).toHaveLength(2);
  ports[1]!.say({ id: 2, ok: 10 });
  expect(await found.answer).toBe(10);
});

test('what is kept is sent once, before the first call, and again to a worker started later', async () => {
  const { ports, caller } = bench();
  const file = { name: 'flood.ies' };
  caller.keep('flood', file);
  expect(ports).toHaveLength(0);
  const lost = caller.call('double', 1);
  caller.keep('flood', file);
  caller.keep('spot', { name: 'spot.ies' });
  expect(ports[0]!.sent).toEqual([
    { keep: 'flood', value: file },
    { id: 1, call: 'double', input: 1 },
    { keep: 'spot', value: { name: 'spot.ies' } },
  ]);
  ports[0]!.onerror?.({});
  expect(await codeOf(lost.answer)).toBe('worker.failed');
  void caller.call('double', 2).answer;
  expect(ports[1]!.sent.map((message) => ('keep' in message ? message.keep : message))).toEqual([
    'flood',
    'spot',
    { id: 2, call: 'double', input: 2 },
  ]);
});

describe('a worker whose calls cannot be interrupted', () => {
  test('ends with the call that is cancelled, and a new one answers the next', async () => {
    const { ports, caller } = bench({ endsWorker: true });
    const long = caller.call('double', 1);
    long.cancel();
    expect(ports[0]!.isEnded).toBe(true);
    expect(await codeOf(long.answer)).toBe('worker.cancelled');
    expect(ports).toHaveLength(1);
    const next = caller.call('double', 5);
    expect(ports).toHaveLength(2);
    ports[1]!.say({ id: 2, ok: 10 });
    expect(await next.answer).toBe(10);
    expect(ports[1]!.isEnded).toBe(false);
  });

  test('lets a call that waited behind the cancelled one go on in the new worker', async () => {
    const { ports, caller } = bench({ endsWorker: true });
    const long = caller.call('double', 1);
    const other = caller.call('double', 3);
    long.cancel();
    expect(ports[1]!.sent).toEqual([{ id: 2, call: 'double', input: 3 }]);
    ports[1]!.say({ id: 2, ok: 6 });
    expect(await other.answer).toBe(6);
    expect(await codeOf(long.answer)).toBe('worker.cancelled');
  });

  test('goes on with its call when one that only waits is cancelled', async () => {
    const { ports, caller } = bench({ endsWorker: true });
    const long = caller.call('double', 1);
    const waits = caller.call('double', 3);
    waits.cancel();
    expect(ports[0]!.isEnded).toBe(false);
    expect(ports[0]!.sent.at(-1)).toEqual({ id: 2, cancel: true });
    expect(await codeOf(waits.answer)).toBe('worker.cancelled');
    ports[0]!.say({ id: 1, ok: 2 });
    expect(await long.answer).toBe(2);
  });
});
