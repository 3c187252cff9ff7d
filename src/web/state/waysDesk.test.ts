import { describe, expect, test } from 'vitest';
import { Fault } from '../../base/fault.ts';
import type { Progress } from '../../base/worker.ts';
import type { Plan, Way } from '../../plan/types.ts';
import type { Caller } from '../workers/connect.ts';
import type { WorkCalls } from '../workers/calls.ts';
import { openWaysDesk } from './waysDesk.ts';

const plan = () => ({}) as Plan;
const WAY = { title: 'Open the shutter' } as Way;

const fault = (code: string) => new Fault({ code, what: 'x', where: 'ways', mend: 'y' });

interface Call {
  readonly input: WorkCalls['ways']['input'];
  readonly progress: (progress: Progress) => void;
  readonly resolve: (ways: readonly Way[]) => void;
  readonly reject: (error: unknown) => void;
  isCancelled: boolean;
}

function bench() {
  const calls: Call[] = [];
  const waits: { wait_ms: number; run: () => void }[] = [];
  let changedCount = 0;
  const caller: Caller<WorkCalls> = {
    call: (_name, input, onProgress) => {
      let call: Call;
      const answer = new Promise<readonly Way[]>((resolve, reject) => {
        call = { input, progress: onProgress!, resolve, reject, isCancelled: false };
      });
      calls.push(call!);
      return {
        answer,
        cancel: () => {
          call.isCancelled = true;
          call.reject(fault('worker.cancelled'));
        },
      };
    },
  };
  const desk = openWaysDesk({
    caller,
    after: (wait_ms, run) => {
      const wait = { wait_ms, run };
      waits.push(wait);
      return () => void (waits.includes(wait) && waits.splice(waits.indexOf(wait), 1));
    },
    changed: () => (changedCount += 1),
  });
  return {
    desk,
    calls,
    waits,
    changedCount: () => changedCount,
    pass: async () => {
      waits.shift()?.run();
      for (let i = 0; i < 10; i += 1) await Promise.resolve();
    },
    settle: async () => {
      for (let i = 0; i < 10; i += 1) await Promise.resolve();
    },
  };
}

describe('ways', () => {
  test('asked for are worked out later, never while asking, and answered with the same value until they come', async () => {
    const { desk, calls, changedCount, pass, settle } = bench();
    desk.settle({ written: {}, plan: plan() });
    const first = desk.ask('pour', 'light');
    expect(first).toMatchObject({ state: 'working', ways: [] });
    expect(desk.ask('pour', 'light')).toBe(first);
    expect(calls).toHaveLength(0);
    expect(changedCount()).toBe(0);
    await pass();
    expect(calls[0]!.input).toEqual({ written: {}, shotId: 'pour', limit: 'light' });
    calls[0]!.progress({ done: 3, total: 9, unit: 'changes' });
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'working', done: 3, total: 9 });
    calls[0]!.resolve([WAY]);
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'done', ways: [WAY] });
    expect(calls).toHaveLength(1);
    expect(changedCount()).toBe(2);
  });

  test('of two limits are worked out one after the other', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: {}, plan: plan() });
    desk.ask('pour', 'light');
    desk.ask('pour', 'noise');
    await pass();
    expect(calls).toHaveLength(1);
    calls[0]!.resolve([WAY]);
    await settle();
    await pass();
    expect(calls[1]!.input.limit).toBe('noise');
    expect(desk.ask('pour', 'light').state).toBe('done');
  });

  test('are cancelled when the plan changes, and asked anew once typing rests', async () => {
    const { desk, calls, waits, pass, settle } = bench();
    desk.settle({ written: 'old', plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    desk.settle({ written: 'new', plan: plan() });
    expect(calls[0]!.isCancelled).toBe(true);
    expect(desk.ask('pour', 'light').state).toBe('working');
    await settle();
    expect(waits).toHaveLength(1);
    expect(waits[0]!.wait_ms).toBeGreaterThan(50);
    await pass();
    expect(calls[1]!.input.written).toBe('new');
  });

  test('of the plan before stay on the screen, marked as being worked out, until the new ones come', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: 'old', plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    calls[0]!.resolve([WAY]);
    await settle();
    desk.settle({ written: 'new', plan: plan() });
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'working', ways: [WAY] });
  });

  test('that fail say so, and are asked again with the next plan', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: {}, plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    calls[0]!.reject(fault('worker.failed'));
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'failed', ways: [] });
    desk.settle({ written: {}, plan: plan() });
    expect(desk.ask('pour', 'light').state).toBe('working');
  });

  test('that come too late for the plan they were for are dropped', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: 'old', plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    desk.settle({ written: 'new', plan: plan() });
    calls[0]!.resolve([WAY]);
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'working', ways: [] });
  });
});
