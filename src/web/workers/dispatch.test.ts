import { describe, expect, test } from 'vitest';
import { Fault } from '../../base/fault.ts';
import type { FromWorker } from '../../base/worker.ts';
import { createDispatcher, type Handlers, type Running } from './dispatch.ts';

interface Work {
  readonly double: { readonly input: number; readonly output: number };
  readonly slow: { readonly input: string; readonly output: string };
}

function bench(handlers: Partial<Handlers<Work>>) {
  const out: FromWorker[] = [];
  const turns: (() => void)[] = [];
  const kept: (readonly [string, unknown])[] = [];
  const receive = createDispatcher<Work>({
    handlers: handlers as Handlers<Work>,
    post: (message) => out.push(message),
    later: (run) => turns.push(run),
    keep: (name, value) => kept.push([name, value]),
  });
  const settle = async () => {
    for (let i = 0; i < 10; i += 1) await Promise.resolve();
  };
  return {
    receive,
    kept,
    out,
    answers: () => out.filter((message) => !('progress' in message)),
    codes: () => out.map((message) => ('fault' in message ? message.fault.code : 'ok' in message ? 'ok' : 'progress')),
    turn: async () => {
      turns.shift()?.();
      await settle();
    },
    settle,
  };
}

describe('a worker', () => {
  test('answers a call with its result under the same id', async () => {
    const { receive, out, turn } = bench({ double: (n) => n * 2 });
    receive({ id: 7, call: 'double', input: 21 });
    await turn();
    expect(out).toEqual([{ id: 7, ok: 42 }]);
  });

  test('sends progress before its one answer', async () => {
    const { receive, out, turn } = bench({
      double: (n, { report }) => {
        report({ done: 1, total: 2, unit: 'plans' });
        return n * 2;
      },
    });
    receive({ id: 1, call: 'double', input: 2 });
    await turn();
    expect(out).toEqual([
      { id: 1, progress: { done: 1, total: 2, unit: 'plans' } },
      { id: 1, ok: 4 },
    ]);
  });

  test('works out only the newest of several calls that wait, and answers the older as superseded', async () => {
    const worked: number[] = [];
    const { receive, out, turn } = bench({
      double: (n) => {
        worked.push(n);
        return n * 2;
      },
    });
    for (const id of [1, 2, 3]) receive({ id, call: 'double', input: id });
    await turn();
    expect(worked).toEqual([3]);
    expect(out.map(({ id }) => id)).toEqual([1, 2, 3]);
    expect(out[0]).toMatchObject({ fault: { code: 'worker.superseded' } });
    expect(out[2]).toEqual({ id: 3, ok: 6 });
  });

  test('takes what is sent to be kept before any call that was sent after it', async () => {
    const heard: unknown[] = [];
    const { receive, kept, out, turn } = bench({
      double: (n) => {
        heard.push(...kept);
        return n * 2;
      },
    });
    receive({ keep: 'flood', value: 7 });
    receive({ id: 1, call: 'double', input: 2 });
    await turn();
    expect(heard).toEqual([['flood', 7]]);
    expect(out).toEqual([{ id: 1, ok: 4 }]);
  });

  test('lets calls of different names wait for each other rather than replace each other', async () => {
    const { receive, out, turn } = bench({ double: (n) => n * 2, slow: (word) => word.toUpperCase() });
    receive({ id: 1, call: 'double', input: 4 });
    receive({ id: 2, call: 'slow', input: 'pour' });
    await turn();
    await turn();
    expect(out).toEqual([
      { id: 1, ok: 8 },
      { id: 2, ok: 'POUR' },
    ]);
  });

  test('answers a cancelled call once, whether it waited or was running', async () => {
    let finish: (word: string) => void = () => undefined;
    let seen: Running | undefined;
    const { receive, answers, turn, settle } = bench({
      slow: (_word, running) => {
        seen = running;
        return new Promise<string>((resolve) => (finish = resolve));
      },
      double: (n) => n,
    });
    receive({ id: 1, call: 'slow', input: 'pour' });
    await turn();
    receive({ id: 2, call: 'double', input: 5 });
    receive({ id: 2, cancel: true });
    expect(answers()).toMatchObject([{ id: 2, fault: { code: 'worker.cancelled' } }]);
    expect(seen?.isStale()).toBe(false);
    receive({ id: 1, cancel: true });
    expect(seen?.isStale()).toBe(true);
    finish('late');
    await settle();
    expect(answers()).toMatchObject([{ id: 2 }, { id: 1, fault: { code: 'worker.cancelled' } }]);
  });

  test('a newer call makes a running one stale, and both are answered once', async () => {
    const finish: ((word: string) => void)[] = [];
    const { receive, answers, codes, turn, settle } = bench({
      slow: () => new Promise<string>((resolve) => finish.push(resolve)),
    });
    receive({ id: 1, call: 'slow', input: 'a' });
    await turn();
    receive({ id: 2, call: 'slow', input: 'b' });
    finish[0]!('a done');
    await settle();
    await turn();
    finish[1]!('b done');
    await settle();
    expect(codes()).toEqual(['worker.superseded', 'ok']);
    expect(answers()).toMatchObject([{ id: 1 }, { id: 2, ok: 'b done' }]);
  });

  test('passes a fault on as it is, and names anything else that throws a failure of the program', async () => {
    const { receive, out, turn } = bench({
      double: () => {
        throw new Fault({ code: 'plan.no-shot', what: 'No such shot', where: 'pour', mend: 'Choose another.' });
      },
      slow: () => {
        throw new RangeError('stop must be positive');
      },
    });
    receive({ id: 1, call: 'double', input: 1 });
    receive({ id: 2, call: 'slow', input: 'x' });
    receive({ id: 3, call: 'toString', input: 0 });
    await turn();
    await turn();
    await turn();
    expect(out).toMatchObject([
      { id: 1, fault: { code: 'plan.no-shot', where: 'pour' } },
      { id: 2, fault: { code: 'worker.failed', what: 'stop must be positive' } },
      { id: 3, fault: { code: 'worker.failed' } },
    ]);
  });
});
